"""Rules of layout against random frames of every kind."""

from __future__ import annotations

import re

import attrs
import pytest
from check_boards import UP
from hypothesis import example, given, seed, settings
from hypothesis import strategies as st
from manifold3d import Manifold
from samples import SAMPLES
from solid_wood import carved, clashing, sharing, solid
from strategies import CORNERS, SIDES, UNITS, frames

from benchjoin import Clear, HalfLap, Level, Pair, alter, lay_out

FEWER = settings(max_examples=40)


def near(value):
    return pytest.approx(value, abs=1e-6)


def pieces(layout):
    return [layout.piece(number) for number in range(1, layout.frame.quantity + 1)]


def met_by(frame, layout):
    """What a frame has met: joints and the faces they are at, corners, pairs, units, fit, quantity, measured wood."""
    slots = {slot.name: slot for slot in frame.rails()}
    of_rails = [joint for joint in layout.joints if joint.guest in slots]
    yield from ((joint.kind, slots[joint.guest].side, slots[joint.guest].of.face) for joint in of_rails)
    carried = {part.identity: part.slot for part in layout.parts if part.slot.run}
    for joint in (joint for joint in layout.joints if joint.guest in carried):
        slot = carried[joint.guest]
        on_bearers = joint.host in carried and slot.role.word == "bearer"
        yield (joint.kind, slot.role.word, "across each other" if on_bearers else "xyz"[slot.axes[0]])
    yield from (frame.corners, len(frame.pairs()), frame.tape.name, f"make {frame.quantity}")
    yield "fit" if frame.fit else "no fit"
    yield "measured" if frame.measured else "as drawn"
    yield type(frame.length).__name__
    yield f"depth {type(frame.depth).__name__}"
    yield "built" if not layout.errors() else "not built"
    yield from (finding.kind for finding in layout.errors())


LET_IN = {
    (kind, side, face)
    for kind in ("notch", "half-lap", "planted")
    for side in SIDES
    for face in (("left", "right") if side == "cross" else ("outer", "inner"))
}
BUTTED = {
    ("butt", side, face)
    for side in SIDES
    for face in (("outer", "middle", "left", "right") if side == "cross" else ("outer", "middle", "inner"))
}
OTHERS = {*CORNERS, 2, 3, 4, *UNITS, "make 1", "make 2", "fit", "no fit", "measured", "as drawn", "float", "Overall"}
OTHERS |= {"depth float", "depth Overall", "depth EndRails", "built", "not built", "clash", "no leg holds it"}


BEARERS = ("butt", "notch", "half-lap", "over-notch", "planted", "laid")
CARRIED = {(kind, "bearer", run) for kind in BEARERS for run in "xy"}
CARRIED |= {(kind, "bearer", "across each other") for kind in ("notch", "half-lap", "over-notch", "laid")}
CARRIED |= {("laid", "board", "x"), ("laid", "board", "y"), ("planted", "board", "z")}
CARRIED |= {("cut round", "board", run) for run in "xyz"}
CARRIED |= {"rests on nothing", "held at one end", "cut in two"}


WANTED = LET_IN | BUTTED | CARRIED | OTHERS


class TestWood:
    """design, rules of layout 3: "An overlap with no joint is a clash, and an error. After a layout without errors no
    two parts share any volume, and each part is its blank less the union of its cuts." """

    def test_parts_share_wood_where_a_clash_is_found_and_nowhere_else(self):
        met = set()

        def see(frame):
            layout = lay_out(frame)
            assert clashing(layout) == sharing(layout)
            met.update(met_by(frame, layout))

        for frame in (UP, *SAMPLES.values()):
            see(frame)
        for number in range(15):  # until every kind of crossing was met
            seed(number)(settings(max_examples=120)(given(frames())(see)))()
            if met >= WANTED:
                break
        assert WANTED - met == set()

    def test_the_halves_of_every_lap_add_up_to_the_full_section(self):
        met = set()

        @given(frames())
        @example(SAMPLES["egg crate"])
        def any_frame(frame):
            layout = lay_out(frame)
            for joint in (joint for joint in layout.joints if joint.kind == "half-lap"):
                names = joint.host, joint.guest
                host, guest = (layout.part(f"{joint.piece}/{name}") for name in names)
                shared = solid(host.blank) ^ solid(guest.blank)
                cuts = [cut for part in (host, guest) for cut in part.cuts if cut.mate in names]
                assert len(cuts) == 2
                given_up = sum((shared ^ solid(cut.box)).volume() for cut in cuts)
                assert given_up == pytest.approx(shared.volume(), rel=1e-6), joint
                met.add(host.slot.role.word)

        any_frame()
        assert met == {"leg", "rail", "bearer"}

    @given(frames())
    def test_a_part_is_its_blank_less_the_union_of_its_cuts(self, frame):
        for part in lay_out(frame).parts:
            blank, cuts = solid(part.blank), sum((solid(cut.box) for cut in part.cuts), Manifold())
            left = carved(part).volume()
            assert left == pytest.approx(blank.volume() - (blank ^ cuts).volume(), rel=1e-6)
            assert part.volume == pytest.approx(left, rel=1e-6)
            assert all((blank ^ solid(cut.box)).volume() > 1 for cut in part.cuts)


def mirrored(frame, length):
    """The frame as a mirror at one end shows it; length is that over the legs."""
    bays = [attrs.evolve(p, at=p.at and length - p.at) if isinstance(p, Pair) else p for p in frame.bays]
    stack = [_mirrored_level(item) if isinstance(item, Level) else item for item in frame.stack]
    clears = [attrs.evolve(c, at=SWAP.get(c.at, c.at)) if isinstance(c, Clear) else c for c in stack]
    measured = {mirrored_name(frame, name): sizes for name, sizes in frame.measured.items()}
    return attrs.evolve(frame, bays=bays[::-1], stack=clears, measured=measured)


SWAP = {"left": "right", "right": "left"}


def _mirrored_level(level):
    cross = level.cross and attrs.evolve(level.cross, face=SWAP.get(level.cross.face, level.cross.face))
    return attrs.evolve(level, left=level.right or level.ends, right=level.left or level.ends, ends=None, cross=cross)


def mirrored_name(frame, name):
    """The name of what a part is in the mirror: left is right, and counts run from the other end."""
    pairs = len(frame.pairs())
    most = {"leg ": pairs - 2, "cross rail ": pairs - 2, "front rail ": pairs - 1, "back rail ": pairs - 1}
    name = re.sub(r"(left|right)(?= (leg|rail)$)", lambda m: SWAP[m[1]], name)
    return re.sub(
        r"(middle leg |cross rail |front rail |back rail )(\d+)$",
        lambda m: f"{m[1]}{most[m[1].removeprefix('middle ')] + 1 - int(m[2])}",
        name,
    )


def shown(box, length):
    (x0, y0, z0), (x1, y1, z1) = box.low, box.high
    return (near(length - x1), near(y0), near(z0), near(length - x0), near(y1), near(z1))


def seen(box):
    return (*box.low, *box.high)


class TestMirror:
    """design, rules of layout 4 to 6 know no left or right that is not the maker's own."""

    @given(frames(fits=False, carried=False))
    def test_a_frame_described_from_the_other_end_is_its_mirror_image(self, frame):
        layout = lay_out(frame)
        length = max(part.blank.high[0] for part in layout.piece(1) if part.role == "leg")
        other = lay_out(mirrored(frame, length))
        assert {mirrored_name(frame, part.name) for part in layout.parts} == {part.name for part in other.parts}
        for part in layout.parts:
            twin = other.part(mirrored_name(frame, part.name))
            assert twin.size == tuple(map(near, part.size)), part.name
            assert seen(twin.blank) == shown(part.blank, length), part.name
            cuts = {cut.mate: cut for cut in twin.cuts}
            assert set(cuts) == {mirrored_name(frame, cut.mate) for cut in part.cuts}, part.name
            for cut in part.cuts:
                same = cuts[mirrored_name(frame, cut.mate)]
                assert seen(same.box) == shown(cut.box, length), (part.name, cut.mate)
                assert same.face == SWAP.get(cut.face, cut.face)
        assert sorted(f.kind for f in layout.findings) == sorted(f.kind for f in other.findings)


class TestNames:
    """design: "Identity survives edits: a new level renames nothing." """

    @FEWER
    @given(frames())
    def test_a_level_on_top_renames_and_moves_nothing(self, frame):
        stack = frame.stack if isinstance(frame.stack[-1], Level) else frame.stack[:-1]
        new = (Clear(130), Level("new", front="2 in", back="2 in"))
        before, after = lay_out(attrs.evolve(frame, stack=stack)), lay_out(attrs.evolve(frame, stack=(*stack, *new)))
        added = [part.name for part in after.parts if part.level == "new"]
        assert len(added) == 2 * frame.quantity
        assert [part.name for part in before.parts] == [part.name for part in after.parts if part.name not in added]
        for part in before.parts:
            twin = after.part(part.name)
            assert twin.blank == part.blank
            assert {c.mate for c in part.cuts} == {c.mate for c in twin.cuts} - {"new/front rail", "new/back rail"}

    @FEWER
    @given(frames(), st.integers(0, 3))
    def test_a_level_further_down_renames_nothing(self, frame, place):
        levels = [n for n, item in enumerate(frame.stack) if isinstance(item, Level)]
        at = levels[place % len(levels)]
        stack = [attrs.evolve(item, at=None) if isinstance(item, Clear) else item for item in frame.stack]
        new = (Level("new", front="2 in"), Clear(25))
        after = attrs.evolve(frame, stack=(*stack[:at], *new, *stack[at:]))
        assert set(after.part_names()) - set(frame.part_names()) == {"new/front rail"}
        assert [name for name in after.part_names() if name != "new/front rail"] == list(frame.part_names())


class TestOrder:
    """The order of what is measured, and of changes, has no meaning."""

    @FEWER
    @given(frames(), st.randoms(use_true_random=False))
    def test_measured_sizes_may_come_in_any_order(self, frame, random):
        sizes = {"1/front left leg.width": 44.0, "back right leg.thickness": 31.0}
        sizes |= {f"{name}.{field}": size for name, found in frame.measured.items() for field, size in found.items()}
        entries = list(sizes.items())
        one = attrs.evolve(frame, depth=500, measured=dict(entries))
        random.shuffle(entries)
        other = attrs.evolve(frame, depth=500, measured=dict(entries))
        assert one == other
        assert lay_out(one) == lay_out(other)

    @FEWER
    @given(frames(), st.randoms(use_true_random=False))
    def test_changes_may_come_in_any_order(self, frame, random):
        name = frame.levels()[0].name
        changes = [
            ("name", "Another"),
            ("front.wide", "end"),
            ("back.stock.thickness", "2 in"),
            (f"{name}.align", "tops"),
            ("bay 1.weight", 2),
            ("front left leg.width", 45),
            ("1/back right leg.size", (40, 50)),
            ("corners", "staggered"),
            ("quantity", 2),
        ]
        one = alter(frame, dict(changes))
        random.shuffle(changes)
        assert alter(frame, dict(changes)) == one
        assert (one.name, one.front.wide, one.back.stock.thickness) == ("Another", "end", 50.8)
        assert one.measured["1/back right leg"] == {"thickness": 40.0, "width": 50.0}

    @FEWER
    @given(frames())
    def test_no_change_is_no_change(self, frame):
        assert alter(frame, {}) == frame
        assert attrs.evolve(frame) == frame
        assert lay_out(attrs.evolve(frame)) == lay_out(frame)


def thinnest(slots, name, mates):
    """How thick the thinnest rail is that lies in the same level, of the same stock, by the same joint."""
    slot = slots[name]
    like = [s for s in slots.values() if (s.level, s.joint) == (slot.level, slot.joint)]
    like = [s for s in like if s.stock.thickness == slot.stock.thickness and s.name in mates]
    return min(mates[s.name].blank.size()[1 if s.long else 0] for s in like)


class TestNotches:
    """design, rules of layout 3, 4 and 8: "Fit goes on the shoulder away from the level's datum edge, all of it." """

    @given(frames())
    def test_a_notch_is_its_rail_and_the_fit_away_from_the_datum_edge(self, frame):
        layout = lay_out(frame)
        slots = {slot.name: slot for slot in frame.rails()}
        for parts in pieces(layout):
            mates = {part.identity: part for part in parts}
            for leg in (part for part in parts if part.role == "leg"):
                for notch in leg.notches:
                    bottom, top = (edge[2] for edge in (mates[notch.rail].blank.low, mates[notch.rail].blank.high))
                    if slots[notch.rail].level.align == "bottoms":
                        top += frame.fit
                    else:
                        bottom -= frame.fit
                    end = leg.blank.high[2]
                    assert (notch.bottom, notch.top) == (near(max(bottom, 0.0)), near(min(top, end)))
                    assert (notch.open_foot, notch.open_top) == (bottom <= 1e-6, top >= end - 1e-6)

    @given(frames())
    def test_a_notch_is_as_deep_as_its_rail_goes_into_the_leg(self, frame):
        layout = lay_out(frame)
        slots = {slot.name: slot for slot in frame.rails()}
        for parts in pieces(layout):
            mates = {part.identity: part for part in parts}
            for leg in (part for part in parts if part.role == "leg"):
                for notch in leg.notches:
                    rail, axis = mates[notch.rail].blank, 1 if notch.face in ("front", "back") else 0
                    low, high = leg.blank.low[axis], leg.blank.high[axis]
                    inner, outer = max(rail.low[axis], low), min(rail.high[axis], high)
                    joint = slots[notch.rail].joint
                    part_of = joint.share if isinstance(joint, HalfLap) else 1.0
                    depth = outer - inner
                    if isinstance(joint, HalfLap):  # one depth for the level: that of its thinnest lapped rail
                        depth = min(depth, thinnest(slots, notch.rail, mates))
                    skin = inner - low if notch.face in ("front", "left") else high - outer
                    assert notch.depth == near(part_of * depth)
                    assert skin == near(0), "a notch is cut from the face of its leg"


class TestSame:
    @FEWER
    @given(frames())
    def test_laying_out_twice_gives_the_same(self, frame):
        assert lay_out(frame) == lay_out(frame)
