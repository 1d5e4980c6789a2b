"""What moved: the report against a comparison of the two layouts that knows nothing of it.

Here a cut is read off the world's axes: shoulders from the part's low end along the way it runs, depth across the face.
"""

from __future__ import annotations

import random

import attrs
import pytest
from designs import plain_bench as bench
from designs import plain_rack as rack
from hypothesis import given, settings
from hypothesis import strategies as st
from samples import SAMPLES
from strategies import frames

from benchjoin import Clear, Frame, Leg, Level, Planted, Rail, Stock, alter, keep, lay_out, what_moved
from benchjoin.errors import RunError
from benchjoin.frame.identity import of_piece, piece_of

DESIGNS = {"bench": bench, "rack": rack, **SAMPLES}
ACROSS = {"front": 1, "back": 1, "left": 0, "right": 0, "top": 2, "bottom": 2}


def runs_along(part):
    """The axis along a part: of a leg up, of a rail by its side, of what is carried as its run says."""
    if part.slot.run:
        return {"along": 0, "across": 1, "up": 2}[part.slot.of.run]
    return 2 if part.role == "leg" else 0 if part.side in ("front", "back") else 1


def sizes(layout):
    """Every size that is marked or cut, by the part's full name and what it is."""
    found = {}
    for part in layout.parts:
        axis = runs_along(part)
        x = part.blank.size()
        thin, wide = sorted(size for n, size in enumerate(x) if n != axis)
        found |= {(part.name, "length"): x[axis], (part.name, "width"): wide, (part.name, "thickness"): thin}
        near, far, across = (
            ("bottom", "top", "height") if part.role == "leg" else ("near shoulder", "far shoulder", "length")
        )
        for cut in part.cuts:
            low, high = cut.box.low[axis] - part.blank.low[axis], cut.box.high[axis] - part.blank.low[axis]
            what = f"{cut.kind} for {cut.mate}, "
            found |= {
                (part.name, what + near): low,
                (part.name, what + far): min(high, x[axis]),
                (part.name, what + across): min(high, x[axis]) - max(low, 0.0),
                (part.name, what + "depth"): cut.box.size()[ACROSS[cut.face]],
            }
    return found | butts(layout)


def inside(contact, cut):
    return all(cut.low[n] - 0.01 <= contact.low[n] and contact.high[n] <= cut.high[n] + 0.01 for n in range(3))


def butts(layout):
    """Between which heights or lengths rails come to a part and take no wood: from the boxes of both alone."""
    found = {}
    for joint in layout.joints:
        if joint.cuts:
            continue
        part = layout.part(of_piece(joint.piece, joint.host))
        guest = layout.part(of_piece(joint.piece, joint.guest))
        axis = runs_along(part)
        flat = [
            n
            for n in range(3)
            if n != axis
            and min(part.blank.high[n], guest.blank.high[n]) - max(part.blank.low[n], guest.blank.low[n]) < 0.01
        ]
        gone = any(inside(joint.contact, cut.box) for cut in part.cuts)
        if not flat or gone:
            continue
        near, far = ("bottom", "top") if part.role == "leg" else ("near shoulder", "far shoulder")
        low = max(part.blank.low[axis], guest.blank.low[axis]) - part.blank.low[axis]
        high = min(part.blank.high[axis], guest.blank.high[axis]) - part.blank.low[axis]
        found |= {
            (part.name, f"{joint.kind} of {guest.identity}, {near}"): low,
            (part.name, f"{joint.kind} of {guest.identity}, {far}"): high,
        }
    return found


def compared(old, new, hair):
    """Sizes before and after, where they are not the same."""
    before, after = sizes(old), sizes(new)
    keys = set(before) | set(after)
    pairs = {key: (before.get(key), after.get(key)) for key in keys}
    return {key: pair for key, pair in pairs.items() if None in pair or abs(pair[1] - pair[0]) > hair}


def reported(moved, old, new):
    """The report's changes, one for each piece that they are true of."""
    pieces = range(1, max(old.frame.quantity, new.frame.quantity) + 1)
    found = {}
    for change in moved.changes:
        piece, identity = piece_of(change.part)
        for number in pieces if piece is None else (piece,):
            key = (of_piece(number, identity), change.what)
            assert key not in found, f"{key} is told twice"
            found[key] = (change.old, change.new)
    return found


def agree(old, new):
    moved = what_moved(old, new)
    found, wanted = reported(moved, old, new), compared(old, new, new.frame.tape.hair)
    assert set(found) == set(wanted)
    for key, pair in wanted.items():
        assert found[key] == pytest.approx(pair, abs=1e-5), key
    return moved


def changed(frame, rng):
    """A frame with some of its wood measured, and some of what was described changed."""
    drawn = {leg.name: (leg.stock.thickness, leg.stock.width) for leg in frame.legs()}
    drawn |= {slot.name: (slot.stock.thickness, slot.of.width) for slot in frame.rails()}
    changes = {}
    for name in rng.sample(sorted(drawn), k=rng.randint(1, 4)):
        piece = f"{rng.randint(1, frame.quantity)}/" if rng.random() < 0.5 else ""
        thickness, width = drawn[name]
        changes[f"{piece}{name}.size"] = (thickness - rng.choice([0, 0.05, 1]), width - rng.choice([0, 0.05, 0.5, 2]))
    if rng.random() < 0.5:
        changes["fit"] = rng.choice([0.3, 0.6])
    if rng.random() < 0.3 and isinstance(frame.depth, float):
        changes["depth"] = frame.depth + 10
    return alter(frame, changes)


@pytest.mark.parametrize("name", DESIGNS)
def test_it_agrees_with_a_direct_comparison_of_the_designs(name):
    old, rng, told = lay_out(DESIGNS[name]), random.Random(name), 0
    for _ in range(4):
        told += len(agree(old, lay_out(changed(DESIGNS[name], rng))).changes)
    assert told


@pytest.mark.slow
@settings(max_examples=30)
@given(frames(), st.randoms(use_true_random=False))
def test_it_agrees_with_a_direct_comparison_of_any_frame(frame, rng):
    old = lay_out(frame)
    try:
        new = lay_out(changed(frame, rng))
    except RunError:
        return  # measured so that its levels or bays do not come out any more: nothing to compare
    agree(old, new)
    agree(new, old)


class TestNothing:
    @pytest.mark.parametrize("name", DESIGNS)
    def test_is_said_when_nothing_changed(self, name):
        layout = lay_out(DESIGNS[name])
        assert what_moved(layout, lay_out(DESIGNS[name])).changes == ()

    def test_is_said_when_nothing_moved_by_more_than_a_hair(self):
        # an eighth of 1/16 in is 0.198 mm; half of it where the hook rail is in the middle
        new = lay_out(alter(bench, {"hook rail/back rail.width": 88.9 - 0.19, "length": 57 * 25.4 + 0.19}))
        moved = what_moved(lay_out(bench), new)
        assert moved.changes == ()
        assert "Nothing moved by more than a hair." in str(moved)

    def test_but_more_than_a_hair_is(self):
        new = lay_out(alter(bench, {"length": 57 * 25.4 + 0.2}))
        moved = what_moved(lay_out(bench), new)
        assert {change.what for change in moved.changes} == {"length"}
        assert [change.by for change in moved.changes] == pytest.approx([0.2] * 6)

    def test_the_hair_may_be_the_makers_own(self):
        new = lay_out(alter(bench, {"length": 57 * 25.4 + 0.2}))
        assert what_moved(lay_out(bench), new, hair=0.25).changes == ()
        assert len(what_moved(lay_out(bench), new, hair=0.1).changes) == 6


class TestTheBench:
    """The hook rail measured 3 7/16: half of the sixteenth is missing below it and half above, 0.79 mm each."""

    OLD = lay_out(bench)

    def test_like_pieces_are_told_once(self):
        moved = what_moved(self.OLD, lay_out(alter(bench, {"hook rail/back rail.width": "3 7/16 in"})))
        assert [(c.part, c.what) for c in moved.changes] == [
            *(
                (leg, f"notch for hook rail/back rail, {what}")
                for leg in ("back left leg", "back right leg")
                for what in ("bottom", "top", "height")
            ),
            ("hook rail/back rail", "width"),
        ]

    def test_a_piece_that_alone_moved_is_named(self):
        moved = what_moved(self.OLD, lay_out(alter(bench, {"2/hook rail/back rail.width": "3 7/16 in"})))
        assert {c.part for c in moved.changes} == {"2/back left leg", "2/back right leg", "2/hook rail/back rail"}

    def test_pieces_that_moved_differently_are_told_one_by_one(self):
        sizes = {"1/hook rail/back rail.width": "3 7/16 in", "hook rail/back rail.width": "3 3/8 in"}
        moved = what_moved(self.OLD, lay_out(alter(bench, sizes)))
        widths = {c.part: round(c.new, 3) for c in moved.changes if c.what == "width"}
        assert widths == {
            "1/hook rail/back rail": 87.312,
            "2/hook rail/back rail": 85.725,
            "3/hook rail/back rail": 85.725,
        }

    def test_it_reads_as_the_tape_does(self):
        table = what_moved(self.OLD, lay_out(alter(bench, {"hook rail/back rail.width": "3 7/16 in"}))).table()
        assert table.columns == ("Part", "What", "Old (in)", "New (in)", "By (in)")
        assert table.rows[0] == (
            "back left leg",
            "notch for hook rail/back rail, bottom",
            "48 3/8",
            "48 7/16 scant",
            "+0.031",
        )
        assert table.rows[-1] == ("hook rail/back rail", "width", "3 1/2", "3 7/16", "-0.063")

    def test_what_is_new_and_what_is_gone(self):
        tool_rail = (Clear("9 in"), Level("tool rail", back=Rail("2 in")))  # in place of the hook rail
        new = attrs.evolve(bench, stack=(*bench.stack[:4], *tool_rail, *bench.stack[6:]))
        rows = what_moved(self.OLD, lay_out(new)).table().rows
        assert ("tool rail/back rail", "length", "–", "57", "new") in rows
        assert ("hook rail/back rail", "length", "57", "–", "gone") in rows
        assert ("back left leg", "notch for tool rail/back rail, bottom", "–", "44 1/2", "new") in rows
        assert ("back left leg", "notch for hook rail/back rail, top", "51 7/8", "–", "gone") in rows
        assert {row[0] for row in rows if row[4] not in ("new", "gone")} == set()

    def test_one_more_piece_is_new_and_moves_nothing(self):
        changes = what_moved(self.OLD, lay_out(attrs.evolve(bench, quantity=4))).changes
        assert {piece_of(c.part)[0] for c in changes} == {4}
        assert {c.old for c in changes} == {None}
        assert {c.by for c in changes} == {None}

    def test_what_is_cut_is_not_in_it(self):
        cut = keep(self.OLD, "2/back left leg", "2/hook rail/back rail")
        moved = what_moved(self.OLD, lay_out(alter(cut, {"hook rail/back rail.width": "3 7/16 in"})))
        parts = {c.part for c in moved.changes}
        assert not parts & {"back left leg", "2/back left leg", "hook rail/back rail", "2/hook rail/back rail"}
        assert {"1/back left leg", "3/back left leg"} <= parts

    def test_a_lap_that_runs_out_at_the_end_of_a_rail_that_was_cut_too_short(self):
        # the laps of the tray rail, 900 long, are 45 wide; of a frame of 905 the right leg starts at 860
        old = lay_out(rack)
        new = lay_out(alter(keep(old, "tray 2/front rail", state="sized"), {"length": 905}))
        rows = {c.what: (c.old, c.new) for c in agree(old, new).changes if c.part == "tray 2/front rail"}
        assert rows == {
            "half-lap for front right leg, near shoulder": pytest.approx((855, 860)),
            "half-lap for front right leg, length": pytest.approx((45, 40)),
        }

    def test_parts_come_in_the_order_of_the_layout(self):
        new = lay_out(alter(bench, {"length": "60 in", "foot shelf.front.width": "3 in", "back.height": "71 in"}))
        order = list(dict.fromkeys(part.identity for part in new.parts))
        places = [order.index(c.part) for c in what_moved(self.OLD, new).changes]
        assert places == sorted(places)
        assert len(places) > 5


def test_a_planted_rail_that_goes_up_is_told_on_the_legs_that_it_stands_on():
    def rack(low):
        return Frame(
            name="Tool rack",
            length=900,
            depth=400,
            front=Leg(Stock("pine", thickness=40, width=60), height=800),
            back=Leg(Stock("pine", thickness=40, width=60), height=800),
            rail_stock=Stock("board", thickness=20),
            stack=[
                Clear(low),
                Level("low", front=Rail(80, joint=Planted()), back=80, ends=80),
                Clear(),
                Level("top", front=70, back=70, ends=70, flush="front leg top"),
            ],
        )

    moved = what_moved(lay_out(rack(100)), lay_out(rack(150)))
    told = {(change.part, change.what): (change.old, change.new) for change in moved.changes}
    for leg in ("front left leg", "front right leg"):
        assert told[leg, "planted of low/front rail, bottom"] == (100, 150)
        assert told[leg, "planted of low/front rail, top"] == (180, 230)
        assert told[leg, "butt of low/left rail, bottom" if "left" in leg else "butt of low/right rail, bottom"] == (
            100,
            150,
        )
