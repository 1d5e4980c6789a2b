"""A notch that runs out into another one is open there: a head goes right across, and no wood goes that should stay."""

import attrs
import pytest
from designs import plain_stand as stand
from samples import SAMPLES
from saw_model import wood_faults

from benchjoin import Level, Notch, Rail, Shop, alter, lay_out, settings
from benchjoin.layout.keeping import keep
from benchjoin.shop.settings import notching
from benchjoin.shop.settings.notching import notchings
from benchjoin.shop.settings.ways.chisel import kerfs


def at_the_corner(layout, leg="front left leg", level="boot rack"):
    """The notches of a leg for a level, by face."""
    return {n.up: n for n in notchings(layout) if n.part.name == f"1/{leg}" and n.level == level}


def with_front(width):
    stack = [
        attrs.evolve(level, front=width) if isinstance(level, Level) and level.name == "boot rack" else level
        for level in stand.stack
    ]
    return lay_out(attrs.evolve(stand, stack=stack))


@pytest.mark.parametrize("frame", [stand, SAMPLES["ends in wide faces"], SAMPLES["three pairs"]])
def test_a_corner_needs_no_router(frame):
    found = settings(lay_out(frame))
    assert {s.tool.way for s in found.notching} == {"dado head"}
    assert [f for f in found.findings if f.kind == "another way"] == []


def test_it_is_told_where_a_head_goes_right_across():
    found = settings(lay_out(stand))
    rows = [row[4] for row in found.table().rows if "boot rack" in row[4]]
    assert all("end face" in row and "right across" in row for row in rows)
    assert "Which of the two is cut first does not matter" in str(found)


@pytest.mark.parametrize("width, is_open", [(70, True), (90, True), (69.95, True), (69, False), (40, False)])
def test_it_is_open_only_over_the_whole_of_its_height(width, is_open):
    # the end rail is 70 high; rails share their bottom; 0.05 is less than the hair of the tape, an eighth of 1 mm
    layout = with_front(width)
    notch = at_the_corner(layout)["end face"]
    assert notch.across is is_open
    assert notch.into == (("boot rack/front rail",) if is_open else ())
    assert list(wood_faults(layout, settings(layout))) == []


def test_it_is_not_open_into_a_notch_that_is_less_deep():
    layout = with_front(Rail(70, joint=Notch(10)))
    assert at_the_corner(layout)["end face"].cut.low == 10.0  # the end rail's notch begins where the front rail ends
    assert at_the_corner(layout)["end face"].across
    end = attrs.evolve(
        at_the_corner(layout)["end face"].cut.cut, box=at_the_corner(lay_out(stand))["end face"].cut.cut.box
    )
    (leg,) = [part for part in layout.parts if part.name == "1/front left leg"]
    short = attrs.evolve(leg, cuts=tuple(end if cut.mate == end.mate else cut for cut in leg.cuts))
    apart = attrs.evolve(layout, parts=tuple(short if part is leg else part for part in layout.parts))
    assert not at_the_corner(apart)["end face"].across  # 8 mm of wood stand between the two


def test_it_is_not_open_into_a_notch_for_a_rail_that_is_gone():
    kept = keep(lay_out(stand), "1/front left leg", state="marked")
    assert at_the_corner(lay_out(kept))["end face"].across
    stack = [
        attrs.evolve(level, front=None) if isinstance(level, Level) and level.name == "boot rack" else level
        for level in kept.stack
    ]
    gone = lay_out(attrs.evolve(kept, stack=stack))
    assert set(at_the_corner(gone)) == {"end face"}
    assert not at_the_corner(gone)["end face"].across


def test_the_little_saw_sees_a_head_that_goes_where_a_notch_stops(monkeypatch):
    layout = lay_out(SAMPLES["overhangs"])
    assert list(wood_faults(layout, settings(layout))) == []
    monkeypatch.setattr(notching, "_runs_out_into", lambda part, cut, made, hair: () if cut.across else ("nothing",))
    assert any("cut away" in fault for fault in wood_faults(layout, settings(layout)))


def test_the_order_of_the_two_does_not_matter():
    layout = lay_out(stand)
    found = settings(layout)
    turned = attrs.evolve(found, notching=found.notching[::-1])
    assert list(wood_faults(layout, turned)) == []


def test_a_notch_that_truly_stops_still_goes_to_the_router():
    found = settings(lay_out(alter(SAMPLES["overhangs"], {"tape": "0.5 mm"})), Shop())
    (finding,) = [f for f in found.findings if f.kind == "another way"]
    assert "stops inside the face" in finding.sentence
    assert finding.parts


@pytest.mark.parametrize(
    "width, count",
    [
        (6.0, 1),  # no wider than two kerfs of 3: one slot is the notch
        (6.1, 2),  # a kerf at each line
        (15.0, 2),
        (15.1, 3),  # 12 mm apart at most: one in the middle
        (27.0, 3),
        (27.1, 4),
    ],
)
def test_kerfs_are_no_farther_apart_than_a_slice(width, count):
    """By hand: kerfs of 3 mm, slices of 12 from kerf to kerf; the first at one line, the last at the other."""
    assert kerfs(width, 3.0, 12.0) == count
