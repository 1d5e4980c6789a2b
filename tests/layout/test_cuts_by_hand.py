"""What each joint takes away, to the millimetre, worked by hand on the lapped stand: 600 by 300, legs 60 by 40."""

from __future__ import annotations

import attrs
import pytest
from stand import LAPPED, STAND

from benchjoin import Bearers, Boards, Butt, Clear, HalfLap, Level, Notch, Over, Rail, Stock, alter, lay_out
from benchjoin.errors import DescriptionError
from benchjoin.layout.joining import touching
from benchjoin.solids import Box

BATTEN = Stock("batten", thickness=20, width=40)
SLAT = Stock("slat", thickness=15, width=60)


def one(frame, **changes):
    return lay_out(attrs.evolve(frame, quantity=1, **changes))


def boxes(part, kind):
    return [(cut.mate, cut.box.low, cut.box.high) for cut in part.cuts if cut.kind == kind]


class TestLaps:
    """A share of a half: leg and rail give up 10 of 20 each; 1 mm of fit goes to the shoulder that is closed."""

    def test_of_a_rail_at_both_ends(self):
        rail = one(LAPPED, fit=1.0).part("low/front rail")
        assert boxes(rail, "half-lap") == [
            ("front left leg", (0, 10, 100), (61, 20, 160)),
            ("front right leg", (539, 10, 100), (600, 20, 160)),
        ]

    def test_of_a_leg(self):
        leg = one(LAPPED, fit=1.0).leg("front left")
        assert boxes(leg, "half-lap") == [("low/front rail", (0, 0, 100), (60, 10, 161))]

    def test_the_leg_at_the_back_gives_from_its_back(self):
        leg = one(LAPPED, fit=1.0).leg("back right")
        assert boxes(leg, "half-lap") == [("low/back rail", (540, 290, 100), (600, 300, 161))]

    def test_of_a_rail_thicker_than_the_leg_is_deep(self):
        """40 is all that a rail of 50 shares with the leg; a quarter is 10."""
        frame = alter(LAPPED, {"low.front": Rail(60, joint=HalfLap(share=0.25), stock=Stock("beam", thickness=50))})
        assert boxes(one(frame).leg("front left"), "half-lap") == [("low/front rail", (0, 0, 100), (60, 10, 160))]

    def test_of_a_rail_over_a_leg_in_the_middle_of_its_length(self):
        """A rail that reaches 30 over both ends laps at a distance from them: the fit goes away from its datum end."""
        frame = alter(LAPPED, {"low.front": Rail(60, joint=HalfLap(), overhang=30)})
        rail = one(frame, fit=1.0).part("low/front rail")
        assert boxes(rail, "half-lap") == [
            ("front left leg", (0, 10, 100), (61, 20, 160)),
            ("front right leg", (540, 10, 100), (601, 20, 160)),
        ]

    def test_of_bearers_that_cross_are_slots_open_to_both_sides(self):
        across = Bearers(BATTEN, run="across", joint=Butt(), at=[300], name="cross batten")
        along = Bearers(BATTEN, run="along", joint=Butt(), at=[150], crossing=HalfLap(), name="batten")
        level = attrs.evolve(STAND.stack[1], carries=[across, along])
        layout = one(STAND, stack=[STAND.stack[0], level, *STAND.stack[2:]])
        upper, lower = layout.part("low/batten 1"), layout.part("low/cross batten 1")
        (own,), (other,) = ([cut.box for cut in part.cuts if cut.kind == "half-lap"] for part in (upper, lower))
        assert sorted((own.size()[2], other.size()[2])) == [20, 20]
        assert {own.low[2], own.high[2], other.low[2], other.high[2]} == {120, 140, 160}


class TestRoundLegs:
    """The outer boards of a shelf along the stand are cut round its legs: 0 to 60, 270 to 330 and 540 to 600 along."""

    @staticmethod
    def board(clear, number=1):
        level = Level("low", front=60, back=60, ends=60, carries=[Boards(SLAT, gap=5, clear=clear)])
        layout = one(STAND, bays=[Clear(), Clear()], stack=[STAND.stack[0], level, *STAND.stack[2:]])
        return layout.part(f"low/board {number}")

    @pytest.mark.parametrize("clear", [0, 3])
    def test_what_is_taken_goes_right_through_and_keeps_clear_of_the_leg(self, clear):
        found = {cut.mate: (cut.box.low, cut.box.high) for cut in self.board(clear).cuts}
        assert found == {
            "front left leg": ((0, 0, 160), (60 + clear, 40 + clear, 175)),
            "front middle leg 1": ((270 - clear, 0, 160), (330 + clear, 40 + clear, 175)),
            "front right leg": ((540 - clear, 0, 160), (600, 40 + clear, 175)),
        }

    def test_a_corner_is_told_from_an_edge(self):
        kinds = {cut.mate: cut.kind for cut in self.board(2).cuts}
        assert kinds.pop("front middle leg 1") == "edge notch"
        assert set(kinds.values()) == {"corner notch"}
        assert len(kinds) == 2


class TestOver:
    def test_a_bearer_notched_over_its_rail_says_so(self):
        level = attrs.evolve(STAND.stack[1], carries=[Bearers(BATTEN, joint=Over(15), at=[300])])
        layout = one(STAND, stack=[STAND.stack[0], level, *STAND.stack[2:]])
        bearer = layout.part("low/bearer 1")
        assert {(cut.kind, cut.face) for cut in bearer.cuts} == {("over-notch", "bottom")}
        assert all((cut.box.low[2], cut.box.high[2]) == (145, 160) for cut in bearer.cuts)
        assert {joint.kind for joint in layout.joints if joint.guest == "low/bearer 1"} == {"over-notch"}


class TestTouching:
    """Two boxes meet on a face or in wood; an edge, a corner and a gap are no joint."""

    BOX = Box((0.0, 0.0, 0.0), (10.0, 10.0, 10.0))

    @pytest.mark.parametrize(
        "low, met",
        [
            ((5, 5, 5), True),
            ((10, 2, 2), True),
            ((10 + 0.9e-6, 2, 2), True),
            ((10 + 1.1e-6, 2, 2), False),
            ((10, 10, 2), False),
            ((10, 10 - 0.9e-6, 2), False),
            ((10, 10 - 1.1e-6, 2), True),
            ((10, 10, 10), False),
            ((12, 2, 2), False),
        ],
    )
    def test_of_two_boxes(self, low, met):
        other = Box(tuple(map(float, low)), tuple(at + 10.0 for at in low))
        assert (touching(self.BOX, other) is not None) is met
        assert (touching(other, self.BOX) is not None) is met


class TestOnAFace:
    def test_how_deep_is_told(self):
        layout = one(LAPPED)
        (lap,) = [cut for cut in layout.leg("front left").cuts_on("front") if cut.kind == "half-lap"]
        assert lap.told(layout.frame.tape.read) == "10 deep"

    def test_what_goes_right_through_is_told_so(self):
        thick = Rail(60, stock=Stock("beam", thickness=40))
        layout = one(STAND, stack=[STAND.stack[0], Level("low", front=thick), *STAND.stack[2:]])
        (cut,) = [c for c in layout.leg("front left").cuts_on("front") if c.mate == "low/front rail"]
        assert cut.through
        assert cut.told(str) == "right through"


@pytest.mark.parametrize("joint", [Notch, HalfLap, Over])
def test_a_joint_that_cannot_be_is_called_by_its_name(joint):
    with pytest.raises(DescriptionError, match=rf"^{joint.__name__} cannot be built as described"):
        joint("deep")
