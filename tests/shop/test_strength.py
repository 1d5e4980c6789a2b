"""Will it stand: loads where they lie, what the wood feels of them, what nothing holds upright, and when it tips."""

from __future__ import annotations

import math

import attrs
import pytest
from designs import DESIGNS
from hypothesis import given, settings
from hypothesis import strategies as st

from benchjoin import (
    Butt,
    Case,
    Clear,
    Filled,
    Frame,
    Leg,
    Level,
    Line,
    Notch,
    Point,
    Push,
    Rail,
    Spread,
    Stock,
    alter,
    fasten,
    lay_out,
    nearness,
    strength,
    would_help,
)
from benchjoin.errors import LoadError, LumberError
from benchjoin.shop.strength.lists import stability_table
from benchjoin.shop.strength.loads import GRAVITY, newtons
from benchjoin.shop.strength.stability import Weighed, angle
from benchjoin.shop.weights import weights
from benchjoin.sweep import sweep

LEG = Stock("beech batten", thickness=30, width=75)
RAIL = Stock("beech lath", thickness=20)
WOOD = "western larch"


def stand(*, depth=16.0, low=4.0, ends=100, leg=LEG, length=1200.0, deep=500.0, rail=RAIL):
    """Back legs that go on above the seat, the back rail of the seat let in, the end rails between the legs."""
    return Frame(
        name="Hat stand",
        length=length,
        depth=deep,
        front=Leg(leg, height=860),
        back=Leg(leg, height=1400),
        rail_stock=rail,
        stack=[
            Clear(200),
            Level("low", front=80, back=Rail(80, joint=Notch(depth=low)), ends=80),
            Clear(),
            Level("seat", front=100, back=Rail(100, joint=Notch(depth=depth)), ends=ends, top=860),
        ],
    )


LOW = ["low/left rail", "low/right rail"]
SEAT = ["seat/left rail", "seat/right rail"]
"""End rails with corner blocks, which keep it from leaning front to back."""
PULL = Case("somebody hangs on the back", [Push("180 N", "back", height=1400, on="back")], "short")


def test_a_leg_that_its_end_rail_holds_bends_at_the_upper_shoulder_of_its_notch():
    """90 N at the top of each back leg, 540 mm over the end rail: 48.6 N·m on 14 × 75, 4.59 times the whole leg."""
    found = strength(lay_out(stand()), PULL, wood=WOOD, corner_blocks=SEAT)
    bent = next(one for one in found.of("back left leg") if one.kind == "bending")
    assert bent.place == pytest.approx(860.0)
    assert bent.moment == pytest.approx(48_600, rel=0.005)
    assert bent.felt == pytest.approx(19.8, rel=0.01)
    assert bent.felt / (bent.moment / (75 * 30**2 / 6)) == pytest.approx((30 / 14) ** 2, rel=0.005)
    assert "beside seat/left rail, which holds it" in bent.words


def test_a_leg_that_nothing_holds_there_bends_at_the_lower_shoulder():
    """No end rail at the seat: 640 mm over the lower shoulder 57.6 N·m."""
    found = strength(lay_out(stand(ends=None)), PULL, wood=WOOD, corner_blocks=LOW)
    bent = next(one for one in found.of("back left leg") if one.kind == "bending")
    assert bent.place == pytest.approx(760.0)
    assert bent.moment == pytest.approx(57_600, rel=0.005)
    assert bent.felt == pytest.approx(23.5, rel=0.01)
    assert "no joint holds it there" in bent.words


def test_it_would_pass_on_its_axial_load_alone():
    found = strength(lay_out(stand()), PULL, wood=WOOD, corner_blocks=SEAT)
    column = next(one for one in found.of("back left leg") if one.kind == "column")
    bent = next(one for one in found.of("back left leg") if one.kind == "bending")
    assert column.use < 1 < bent.use


def test_a_frame_whose_end_rails_only_butt_is_told_as_a_mechanism_and_not_solved():
    frame = stand()
    found = strength(lay_out(frame), PULL, wood=WOOD)
    assert [one.way for one in found.mechanisms] == ["across"]
    assert found.checks == ()
    assert found.solved == ()
    assert any("front to back" in one.sentence for one in found.findings)
    assert strength(lay_out(frame), PULL, wood=WOOD, corner_blocks=LOW).mechanisms == ()
    assert strength(lay_out(frame), PULL, wood=WOOD, braced=["across"]).mechanisms == ()


def test_a_load_may_be_light():
    assert newtons("0.5 N") == 0.5
    assert newtons(0) == 0.0


@pytest.mark.parametrize("load", [Spread("atttic", 10), Point("atttic", 10), Line("atttic", 10)])
def test_a_load_on_no_level_is_refused_with_those_there_are(load):
    with pytest.raises(LoadError, match="atttic") as error:
        strength(lay_out(stand()), Case("up", [load]), wood=WOOD, corner_blocks=SEAT)
    assert "There are low, seat" in str(error.value)


def test_what_presses_straight_down_between_its_feet_never_tips_it_on_level_ground():
    """Over the back edge it has a lever: the low back rail stands 16 proud of the legs."""
    found = strength(lay_out(stand()), Case("down", [Spread("seat", "50 kg")]), wood=WOOD, corner_blocks=SEAT)
    level = [one for one in found.tipped if one.case == "down" and one.ground == "level" and one.edge != "back"]
    assert {one.factor for one in level} == {math.inf}
    assert stability_table(found.layout, level, ()).rows[0][:2] == ("down", "never")


def test_long_rails_that_only_butt_let_it_lean_lengthwise():
    frame = stand()
    (low, seat) = frame.levels()
    butted = {level.name: {"front": Rail(80, joint=Butt()), "back": Rail(80, joint=Butt())} for level in (low, seat)}
    changes = {f"{name}.{side}": rail for name, sides in butted.items() for side, rail in sides.items()}
    found = strength(lay_out(alter(frame, changes)), PULL, wood=WOOD, corner_blocks=SEAT)
    assert [one.way for one in found.mechanisms] == ["along"]
    assert "leaning lengthwise" in found.mechanisms[0].words


@pytest.mark.parametrize("joint", ["half-lap", "laid", "over-notch", "rests"])
def test_a_corner_block_is_not_asked_for_where_there_is_no_room_for_one(joint):
    """Taken without a word, it would hold nothing."""
    with pytest.raises(LoadError, match=r"Write a list of .*butt.*notch, planted"):
        strength(lay_out(stand()), PULL, wood=WOOD, corner_blocks=[joint])


def test_without_fasteners_a_planted_rail_holds_nothing_upright():
    planted = stand()
    layout = lay_out(planted)
    glued = fasten(layout, {"butt": "glue"}, wood=WOOD)
    assert strength(layout, PULL, wood=WOOD, fastening=glued).mechanisms


def test_what_a_level_carries_comes_down_to_the_feet():
    """Loads and own weight stand on the feet, wherever they lie; nothing is lost on the way down."""
    layout = lay_out(DESIGNS["bench"])
    case = Case(
        "mixed", [Spread("bench", "90 kg"), Point("foot shelf", "30 kg", along="20 in"), Filled("bin", "12 kg")]
    )
    found = strength(layout, case, wood=WOOD, corner_blocks=["butt"])
    one = found.case("mixed")
    feet = sum(one.solution.held[node][2] for node in one.framed.feet.values())
    own = weights(layout, moisture=18, wood=WOOD).piece() * GRAVITY
    assert feet == pytest.approx(132 * GRAVITY + own, rel=0.002)


def test_a_heavy_left_side_stands_on_the_left_feet():
    layout = lay_out(DESIGNS["bench"])
    found = strength(layout, Case("left", [Point("bench", "80 kg", along="6 in")]), wood=WOOD, corner_blocks=["butt"])
    one = found.case("left")
    feet = {name: one.solution.held[node][2] for name, node in one.framed.feet.items()}
    left, right = (feet[f"front {side} leg"] + feet[f"back {side} leg"] for side in ("left", "right"))
    legs = {leg.identity: (leg.blank.low[0] + leg.blank.high[0]) / 2 for leg in layout.legs()}
    near, far = legs["front left leg"], legs["front right leg"]
    assert left - right == pytest.approx(80 * GRAVITY * (near + far - 2 * 152.4) / (far - near), rel=0.01)


class TestTipping:
    def test_a_push_tips_where_weight_by_half_depth_is_push_by_height(self):
        """By hand: W x = F H. The frame is symmetric across but for its higher back legs."""
        layout = lay_out(stand(depth=20.0, low=20.0))
        found = strength(layout, Case("push", [Push(10, "back", height=800)]), wood=WOOD)
        heavy = weights(layout, moisture=18, wood=WOOD)
        whole = heavy.piece() * GRAVITY
        middle = (
            sum(heavy.parts[p.name] * (p.blank.low[1] + p.blank.high[1]) / 2 for p in layout.piece(1)) * GRAVITY / whole
        )
        tipped = next(t for t in found.tipped if t.case == "push" and t.edge == "back" and t.ground == "level")
        assert tipped.factor == pytest.approx(whole * (500 - middle) / (10 * 800), rel=0.01)

    def test_a_load_inside_the_feet_never_tips_on_level_ground(self):
        found = strength(lay_out(stand(depth=20.0, low=20.0)), Case("seat", [Point("seat", "80 kg")]), wood=WOOD)
        level = [one for one in found.tipped if one.ground == "level" and one.case == "seat"]
        assert level
        assert all(one.factor == float("inf") for one in level)

    def test_a_wall_at_the_back_holds_the_back(self):
        found = strength(lay_out(stand()), PULL, wood=WOOD, walls=["back"])
        assert "back" not in {one.edge for one in found.tipped}

    def test_the_angle_is_that_of_the_middle_of_its_weight(self):
        """W 90 lb, feet 24 in apart, centred, 20 in high: 30.96 degrees, by arithmetic."""
        layout = lay_out(stand(deep=609.6, length=2000.0))
        side, degrees = angle(layout.legs(), [Weighed((0.0, 0.0, -400.0), (1000.0, 304.8, 508.0))])
        assert side in ("front", "back")
        assert degrees == pytest.approx(30.96, abs=0.01)

    @given(st.floats(350, 900), st.floats(20, 300))
    @settings(max_examples=15, deadline=None)
    def test_a_deeper_stance_is_never_sooner_over(self, deep, more):
        factors = [
            min(
                t.factor
                for t in strength(lay_out(stand(deep=d)), PULL, wood=WOOD, corner_blocks=LOW).tipped
                if t.edge == "back"
            )
            for d in (deep, deep + more)
        ]
        assert factors[1] >= factors[0] - 1e-9

    def test_trays_drawn_out_are_looked_at(self):
        found = strength(lay_out(DESIGNS["rack"]), Case("full", [Spread("tray 6", "10 kg")]), wood=WOOD)
        drawn = [
            one for one in found.tipped if one.state == "with every tray drawn out by half" and one.edge == "front"
        ]
        plain = [one for one in found.tipped if one.state == "as it stands" and one.edge == "front"]
        assert min(one.factor for one in drawn) < min(one.factor for one in plain)


class TestRules:
    """What must hold whatever the sizes."""

    @given(st.floats(13, 17), st.floats(0.5, 3))
    @settings(max_examples=10, deadline=None)
    def test_a_deeper_notch_is_never_stronger(self, depth, more):
        """One that governs; a shallower one may spare the notch below by a hair, since it bends more."""
        uses = []
        for own in (depth, depth + more):
            found = strength(lay_out(stand(depth=own)), PULL, wood=WOOD, corner_blocks=LOW)
            uses.append(next(one.use for one in found.of("back left leg") if one.kind == "bending"))
        assert uses[1] >= uses[0] - 1e-6

    @given(st.floats(700, 1600), st.floats(20, 400))
    @settings(max_examples=10, deadline=None)
    def test_a_longer_rail_is_never_stiffer(self, length, more):
        sags = []
        for own in (length, length + more):
            found = strength(
                lay_out(stand(length=own)), Case("seat", [Line("seat", 500.0)]), wood=WOOD, corner_blocks=LOW
            )
            sags.append(max(one.felt for one in found.checks if one.kind == "sag" and one.part == "seat/back rail"))
        assert sags[1] >= sags[0] - 1e-9

    @given(st.floats(50, 900), st.floats(1, 900))
    @settings(max_examples=10, deadline=None)
    def test_more_load_never_raises_a_margin(self, load, more):
        """Of what carries it; a leg may be bent the other way by its own weight."""
        cases = [Case("seat", [Spread("seat", own)]) for own in (load, load + more)]
        first, second = (strength(lay_out(stand()), case, wood=WOOD, braced=["across"]) for case in cases)
        uses = {(one.kind, one.part, one.mate): one.use for one in second.checks}
        carries = [
            one for one in first.checks if one.kind == "column" or one.part in ("seat/front rail", "seat/back rail")
        ]
        assert {one.kind for one in carries} >= {"column", "bending", "shear", "bearing", "sag", "turning"}
        for one in carries:
            assert uses[one.kind, one.part, one.mate] >= one.use - 1e-9

    def test_two_cases_at_once_are_both(self):
        both = Case("a", [Spread("seat", 100)], "long") + Case("b", [Push(50, "back")], "short")
        assert (both.name, both.time, len(both.loads)) == ("a and b", "short", 2)


class TestBadInput:
    LAYOUT = lay_out(stand())

    @pytest.mark.parametrize(
        ("load", "words"),
        [
            (lambda: Spread("attic", "10 kg"), "There are low, seat"),
            (lambda: Filled("crate", "10 kg"), "This frame has no bin"),
            (lambda: Push(10, "back", height=3000), "the highest ends at 1400"),
            (lambda: Point("seat", "10 kg", along=5000), "goes from 0 to 1200"),
            (lambda: Line("seat", "10 kg", start=500, end=500), "has to have a length"),
        ],
    )
    def test_loads_on_what_is_not_there_say_what_is(self, load, words):
        with pytest.raises(LoadError, match=words):
            strength(self.LAYOUT, Case("odd", [load()]), wood=WOOD)

    @pytest.mark.parametrize(
        "odd", ["-5 kg", -5, float("nan"), "10", "1e3 kg", "200 t", None, True, 10**9, "9999999 kg"]
    )
    def test_no_load_is_negative_absurd_or_without_a_unit(self, odd):
        with pytest.raises(LoadError):
            newtons(odd)

    def test_words_that_are_none_are_refused_with_those_there_are(self):
        with pytest.raises(LoadError, match=r"corner_blocks.*\n.*braced.*\n.*sound"):
            strength(self.LAYOUT, PULL, wood=WOOD, corner_blocks=["sofa"], braced=["up"], sound=2.0)
        with pytest.raises(LoadError, match="front, back, left, right"):
            Push(10, "up")
        with pytest.raises(LoadError, match="permanent, long"):
            Case("a", [], "forever")
        with pytest.raises(LoadError, match="called 'a'"):
            strength(self.LAYOUT, [Case("a", []), Case("a", [])], wood=WOOD)

    def test_no_numbers_where_the_wood_is_not_known(self):
        with pytest.raises(LumberError, match="does not say its species"):
            strength(self.LAYOUT, PULL)
        with pytest.raises(LumberError, match="glass"):
            strength(self.LAYOUT, PULL, wood="glass")


def test_what_would_help_is_worked_out_again():
    found = strength(lay_out(stand()), PULL, wood=WOOD, corner_blocks=LOW)
    helps = {one.what: one for one in would_help(found)}
    thicker = helps["back legs thicker by 5 mm"]
    frame = attrs.evolve(stand(), back=Leg(attrs.evolve(LEG, thickness=35), height=1400))
    again = strength(lay_out(frame), PULL, wood=WOOD, corner_blocks=LOW)

    def nearest(one):
        return max(c.use for c in one.checks if c.part == thicker.part and c.kind != "sag")

    assert thicker.before == pytest.approx(nearest(found))
    assert thicker.use == pytest.approx(nearest(again))
    assert thicker.whole == pytest.approx(again.use)
    assert thicker.use < thicker.before
    assert helps["seat/back rail let in 3 mm less"].use < thicker.before


def test_a_sweep_says_how_near_the_limit_a_length_comes():
    lengths = [800.0, 1200.0, 1800.0]
    case = Case("seat", [Spread("seat", "120 kg")])
    swept = sweep(stand(), {"length": lengths}, want=[nearness(case, wood=WOOD, corner_blocks=LOW)])
    uses = swept["use"]["bending"]
    assert list(uses) == sorted(uses)
    alone = strength(lay_out(stand(length=1800.0)), case, wood=WOOD, corner_blocks=LOW)
    assert swept["use"]["whole"][2] == pytest.approx(alone.use)


def test_words_of_the_result_never_call_it_safe():
    found = strength(lay_out(DESIGNS["bench"]), wood=WOOD, corner_blocks=["butt"])
    said = " ".join([found.table().text(), found.stability().text(), found.loads().text(), *map(str, found.findings)])
    assert "not an engineering design" in said
    assert "safe" not in said.lower()
    assert "complies" not in said.lower()
