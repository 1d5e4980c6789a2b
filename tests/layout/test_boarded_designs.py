"""Boards and bearers of the gallery's designs, worked by hand: the bench in inches, the stand and the rack in mm.

Honey-house bench: the foot shelf's rails are 2 3/4 wide from 7, but the back one, 4 1/4, which stands up as a stop. The
shelf covers 0 to 23 − 5/8 = 22 3/8; eight boards of 2 1/2 take 20 and leave 2 3/8 for seven gaps.

Boot-room stand: pairs at 0, 1070 and 1730, cross rails of 18 at 1105 ± 9, end rails of 18 at both ends. The boot rack's
boards stop 45 short of the front and of the back: 420 − 90 = 330. Six of 45 leave 60 for five gaps.

Drying rack: slats lie across, on the front and back rails, between end rails of 20 and 28 short of both:
900 − 2 × 48 = 804. Twelve of 34 take 408 and leave 396 for eleven gaps.
"""

from fractions import Fraction

import pytest
from boarded_designs import bench, rack, stand
from designs import DESIGNS

from benchjoin import cut_list, lay_out
from benchjoin.layout.spacing import spacings

INCH = 25.4
BENCH, RACK, STAND = (lay_out(frame) for frame in (bench, rack, stand))


def ends(layout, name, axis):
    blank = layout.part(name).blank
    return [blank.low[axis], blank.high[axis]]


def mm(*values):
    return pytest.approx([float(value) for value in values], abs=1e-9)


def inches(*values):
    return mm(*(Fraction(value) * Fraction(254, 10) for value in values))


def of_run(layout, run, piece=1):
    return [part for part in layout.piece(piece) if part.slot.run == run]


class TestHoneyHouseBench:
    @pytest.mark.parametrize("number", range(1, 9))
    def test_board(self, number):
        """Gaps are 2 3/8 / 7 = 19/56."""
        start = (number - 1) * (Fraction(5, 2) + Fraction(19, 56))
        for piece in (1, 2, 3):
            name = f"{piece}/foot shelf/board {number}"
            assert ends(BENCH, name, 1) == inches(start, start + Fraction(5, 2))
            assert ends(BENCH, name, 0) == inches(0, 57)
            assert ends(BENCH, name, 2) == inches(Fraction(39, 4), Fraction(21, 2))

    def test_the_last_board_ends_at_the_back_rail(self):
        assert ends(BENCH, "foot shelf/board 8", 1) == inches(Fraction(159, 8), Fraction(179, 8))
        assert len(of_run(BENCH, "boards")) == 8

    def test_the_outer_boards_are_cut_round_the_legs(self):
        for number, deep in ((1, Fraction(21, 16)), (8, Fraction(11, 16))):
            near, far = sorted(BENCH.part(f"foot shelf/board {number}").cuts_on("top"), key=lambda cut: cut.start)
            assert [near.start, near.end, far.start, far.end] == inches(0, Fraction(13, 4), Fraction(215, 4), 57)
            assert [near.high - near.low, far.high - far.low] == inches(deep, deep)
        assert not any(BENCH.part(f"foot shelf/board {number}").cuts for number in range(2, 8))

    @pytest.mark.parametrize("number", [1, 2])
    def test_bearer(self, number):
        """Two of 5/8 between end rails of 5/8: (57 − 4 × 5/8) / 3 = 18 1/6 clear; 22 3/8 − 5/8 = 21 3/4 long."""
        start = Fraction(5, 8) + number * Fraction(109, 6) + (number - 1) * Fraction(5, 8)
        assert ends(BENCH, f"foot shelf/bearer {number}", 0) == inches(start, start + Fraction(5, 8))
        assert ends(BENCH, f"foot shelf/bearer {number}", 1) == inches(Fraction(5, 8), Fraction(179, 8))
        assert ends(BENCH, f"foot shelf/bearer {number}", 2) == inches(Fraction(33, 4), Fraction(39, 4))

    def test_it_has_no_findings(self):
        assert BENCH.findings == ()

    def test_the_list_counts_boards_by_kind_with_the_mark_that_they_share(self):
        rows = [row for row in cut_list(BENCH).rows if row[0].startswith(("foot shelf: bear", "foot shelf: boa"))]
        assert [(row[0], row[1]) for row in rows] == [
            ("foot shelf: bearer", "6"),
            ("foot shelf: board", "3"),
            ("foot shelf: board", "18"),
            ("foot shelf: board", "3"),
        ]
        assert len({part.mark for part in of_run(BENCH, "boards")[1:-1]}) == 1


class TestBootRoomStand:
    @pytest.mark.parametrize("number", range(1, 7))
    def test_board_of_the_boot_rack(self, number):
        """They begin at 45, 45 wide with gaps of 12, between the legs' 42 in front and behind; 180 to 200 high."""
        start = 45 + (number - 1) * 57
        assert ends(STAND, f"boot rack/board {number}", 1) == mm(start, start + 45)
        assert ends(STAND, f"boot rack/board {number}", 0) == mm(0, 1800)
        assert ends(STAND, f"boot rack/board {number}", 2) == mm(180, 200)

    def test_bearers_of_the_boot_rack_leave_no_span_over_500(self):
        """Left: 1096 − 18 = 1078; two of 20 leave 1038 / 3 = 346. Right: 1782 − 1114 = 668; one leaves 324."""
        starts = [ends(STAND, f"boot rack/bearer {number}", 0)[0] for number in (1, 2, 3)]
        assert starts == mm(18 + 346, 18 + 346 + 20 + 346, 1114 + 324)
        assert len(of_run(STAND, "bearers")) == 3

    @pytest.mark.parametrize("number", range(1, 14))
    def test_divider_of_the_glove_rack(self, number):
        """Thirteen of 15 between end rails: (1800 − 2 × 18 − 13 × 15) / 14 = 1569 / 14 clear."""
        clear = Fraction(1569, 14)
        start = 18 + number * clear + (number - 1) * 15
        assert ends(STAND, f"glove rack/divider {number}", 0) == mm(start, start + 15)
        assert ends(STAND, f"glove rack/divider {number}", 1) == mm(18, 402)

    @pytest.mark.parametrize("number", [1, 2])
    def test_long_divider(self, number):
        """(420 − 2 × 18 − 2 × 15) / 3 = 118 clear; from end rail to end rail."""
        start = 18 + number * 118 + (number - 1) * 15
        assert ends(STAND, f"glove rack/long divider {number}", 1) == mm(start, start + 15)
        assert ends(STAND, f"glove rack/long divider {number}", 0) == mm(18, 1782)

    def test_dividers_give_up_half_their_width_where_they_cross(self):
        for number in range(1, 14):
            cuts = STAND.part(f"glove rack/divider {number}").cuts
            assert len(cuts) == 2
            assert all(cut.box.size() == mm(15, 15, 45) for cut in cuts)
        assert len(STAND.part("glove rack/long divider 1").cuts) == 13

    def test_it_has_no_findings(self):
        assert STAND.findings == ()


class TestDryingRack:
    @pytest.mark.parametrize("tray", range(1, 7))
    def test_slats_of_a_tray(self, tray):
        """Gaps of 396 / 11 = 36; they lie on side rails of 45, whose clears are (1750 − 160 − 6 × 90) / 5 = 210."""
        high = 160 + (tray - 1) * 300 + 45
        for number in range(1, 13):
            start = 48 + (number - 1) * 70
            assert ends(RACK, f"tray {tray}/board {number}", 0) == mm(start, start + 34)
            assert ends(RACK, f"tray {tray}/board {number}", 1) == mm(0, 500)
            assert ends(RACK, f"tray {tray}/board {number}", 2) == mm(high, high + 20)
        assert f"tray {tray}/board 13" not in {part.identity for part in RACK.parts}

    def test_they_stand_clear_of_the_posts(self):
        """Posts are 45: 48 − 45 = 3 clear, and no slat is cut; so all 72 share a mark."""
        boards = of_run(RACK, "boards")
        assert not any(part.cuts for part in boards)
        assert (len(boards), len({part.mark for part in boards})) == (72, 1)

    def test_it_has_no_findings(self):
        assert RACK.findings == ()


def test_runs_that_are_spaced_evenly_are_known_by_first_last_and_gap():
    (boards,) = spacings(BENCH.piece(1))  # two bearers are told one by one
    assert (boards.axis, len(boards.lines)) == (1, 8)
    assert boards.told == inches(0, Fraction(5, 2), Fraction(179, 8))
    assert boards.gap == pytest.approx(19 / 56 * INCH)
    assert len(spacings(RACK.piece(1))) == 6
    assert {len(one.lines) for one in spacings(STAND.piece(1))} == {6, 13}  # bearers of two bays are not even
    assert not spacings(lay_out(DESIGNS["tools"]).piece(1))
