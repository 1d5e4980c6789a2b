"""Boards and bearers, worked by hand: the honey-house bench's foot shelf in inches, the others in millimetres.

The foot shelf: the front rail is 2 3/4 wide, from 7 to 9 3/4; the back rail 4 1/4, to 11 1/4, so it is a stop; the
end rails are 2 3/4. It covers 0 to 23 − 5/8 = 22 3/8. Eight boards of 2 1/2 take 20, and 2 3/8 is left for seven
gaps: 19/56 each.
"""

from fractions import Fraction

import attrs
import pytest
from boarded import BATTEN, BOARDED, CROSSINGS, EGG_CRATE, FOOT_SHELF, RAIL, SLAT, SLATTED_SEAT
from check_boards import carrying
from solid_wood import carved, sharing

from benchjoin import (
    Bearers,
    Boards,
    Butt,
    Clear,
    HalfLap,
    Notch,
    Over,
    Planted,
    Stock,
    alter,
    cut_list,
    keep,
    lay_out,
    milling_plan,
    settings,
    what_moved,
)
from benchjoin.errors import AddressError, DescriptionError, RunOverfull
from benchjoin.frame.address import value
from benchjoin.shop.weights import weights

INCH = 25.4
GAP = Fraction(19, 56)


def inches(*values):
    return pytest.approx([float(value) * INCH for value in values], abs=1e-9)


def edges(layout, name, axis):
    blank = layout.part(name).blank
    return [blank.low[axis], blank.high[axis]]


def kinds(frame):
    return {finding.kind for finding in lay_out(frame).findings}


class TestFootShelf:
    layout = lay_out(FOOT_SHELF)

    def test_eight_boards_go_in_and_seven_gaps_share_the_rest(self):
        for number in range(8):
            start = number * (Fraction(5, 2) + GAP)
            assert edges(self.layout, f"foot shelf/board {number + 1}", 1) == inches(start, start + Fraction(5, 2))
        assert "foot shelf/board 9" not in {part.identity for part in self.layout.parts}
        assert edges(self.layout, "foot shelf/board 8", 1) == inches(19.875, 22.375)

    def test_they_are_as_long_as_the_bench_and_lie_on_the_rails(self):
        for number in range(1, 9):
            assert edges(self.layout, f"foot shelf/board {number}", 0) == inches(0, 57)
            assert edges(self.layout, f"foot shelf/board {number}", 2) == inches(9.75, 10.5)

    def test_the_outer_boards_are_cut_round_the_legs(self):
        for number, deep in ((1, 1.3125), (8, 0.6875)):
            cuts = self.layout.part(f"foot shelf/board {number}").cuts_on("top")
            near, far = sorted(cuts, key=lambda cut: cut.start)
            assert [near.start, near.end, far.start, far.end] == inches(0, 3.25, 53.75, 57)
            assert [cut.high - cut.low for cut in (near, far)] == inches(deep, deep)
            assert {cut.kind for cut in cuts} == {"corner notch"}
        assert all(not self.layout.part(f"foot shelf/board {number}").cuts for number in range(2, 8))

    def test_bearers_butt_between_the_rails_with_their_tops_level(self):
        for number in (1, 2):
            assert self.layout.part(f"foot shelf/bearer {number}").length == pytest.approx(21.75 * INCH)
            assert edges(self.layout, f"foot shelf/bearer {number}", 2) == inches(8.25, 9.75)
        clear = Fraction(109, 2) / 3  # (57 − 2 × 5/8 of end rails − 2 × 5/8 of bearers) / 3
        assert edges(self.layout, "foot shelf/bearer 1", 0) == inches(Fraction(5, 8) + clear, Fraction(5, 4) + clear)

    def test_nothing_is_wrong_with_it(self):
        assert self.layout.findings == ()

    def test_lists_weights_and_machines_have_them(self):
        rows = {(row[0], row[7]): row for row in cut_list(self.layout).rows}
        plain, cut = rows["foot shelf: board", ""], rows["foot shelf: board", "2 corner notches"]
        assert (plain[1], cut[1]) == ("12", "2")  # two pieces; those cut in front and at the back are two kinds
        assert plain[2:5] == ("57", "2 1/2", "3/4")
        assert rows["foot shelf: bearer", ""][1:5] == ("4", "21 3/4", "1 1/2", "5/8")
        cut, whole = (self.layout.part(f"foot shelf/board {number}").volume for number in (1, 2))
        assert cut / whole == pytest.approx(1 - 2 * 1.3125 * 3.25 / (57 * 2.5))
        heavy = weights(lay_out(CROSSINGS)).parts
        notched = 1 - (45 + 6) * (70 + 2 * 6) / (60 * 1148)  # a leg of 70 × 45 in its edge, and 6 of clear
        assert heavy["1/tees/board 1"] / heavy["1/tees/board 2"] == pytest.approx(notched)
        items = [i.name for batch in milling_plan(self.layout).batches for line in batch.lines for i in line.items]
        assert {"2/foot shelf/board 8", "1/foot shelf/bearer 2"} <= set(items)
        assert any("bearer" in row[2] for row in settings(self.layout).crosscut_table().rows)

    def test_addresses_reach_them(self):
        assert value(FOOT_SHELF, "foot shelf.boards.gap") == pytest.approx(7.9375)
        wide = alter(FOOT_SHELF, {"foot shelf.boards.stock.width": "3 in", "foot shelf/board 3.width": "2 7/8 in"})
        assert lay_out(wide).part("foot shelf/board 3").width == pytest.approx(2.875 * INCH)
        with pytest.raises(AddressError, match=r"foot shelf\.boards\.gap"):
            alter(FOOT_SHELF, {"foot shelf.boards.gaps": 5})


class TestSpacing:
    ROOM = "20 3/8 in"

    def room(self, **more):
        """Boards of 2 1/2 across a room of 20 3/8: 1200 mm long, stopped short at the back."""
        slat = Stock("slat", thickness="3/4 in", width="2 1/2 in")
        depth = 20.375 * INCH
        return attrs.evolve(carrying(Boards(slat, **more)), depth=depth, tape="1/16 in")

    def test_six_spacers_of_a_half_inch_are_an_eighth_too_much(self):
        with pytest.raises(RunOverfull, match="1/8 in too much") as told:
            lay_out(self.room(count=7, gap="1/2 in", remainder="margins"))
        assert told.value.over == pytest.approx(INCH / 8)
        assert "6 boards" in str(told.value)

    def test_a_true_spacer_leaves_the_rest_to_both_margins(self):
        layout = lay_out(self.room(count=7, gap="7/16 in", remainder="margins"))
        margin = (Fraction(163, 8) - 7 * Fraction(5, 2) - 6 * Fraction(7, 16)) / 2  # 1/8
        assert edges(layout, "shelf/board 1", 1) == inches(margin, margin + Fraction(5, 2))
        assert edges(layout, "shelf/board 7", 1)[1] == pytest.approx(float(Fraction(163, 8) - margin) * INCH)

    def test_a_gap_that_comes_out_too_narrow_is_told_with_what_would_do(self):
        finding = next(f for f in lay_out(self.room(count=7, gap="1/2 in")).findings if f.kind == "gap too narrow")
        assert (finding.severity, finding.numbers["over"]) == ("error", pytest.approx(INCH / 8))
        assert "Take 6 boards" in finding.sentence

    def test_boards_ripped_to_suit_are_alike_and_fill_the_room(self):
        layout = lay_out(self.room(gap="1/2 in", remainder="rip"))
        boards = [part for part in layout.piece(1) if part.role == "board"]
        width = (Fraction(163, 8) - 6 * Fraction(1, 2)) / 7
        assert [part.width for part in boards] == inches(*[width] * 7)
        assert boards[-1].blank.high[1] == pytest.approx(20.375 * INCH)

    def test_one_odd_board_at_the_back_or_two_at_both_sides(self):
        back = lay_out(self.room(gap="1/2 in", remainder="back"))
        assert [round(part.width / INCH, 6) for part in back.piece(1) if part.role == "board"] == [*[2.5] * 6, 2.375]
        both = lay_out(self.room(gap="1/4 in", remainder="both"))
        odd = (Fraction(163, 8) - 6 * Fraction(5, 2) - 7 * Fraction(1, 4)) / 2
        widths = [part.width for part in both.piece(1) if part.role == "board"]
        assert widths == inches(odd, *[2.5] * 6, odd)

    def test_a_least_gap_says_how_many_go_in(self):
        assert len([p for p in lay_out(self.room(gap="1/2 in")).piece(1) if p.role == "board"]) == 6
        assert len([p for p in lay_out(self.room(gap="15/32 in")).piece(1) if p.role == "board"]) == 7

    def test_margins_differ_side_by_side(self):
        layout = lay_out(carrying(Boards(SLAT, count=6, front=20, back=-15, left=30, right=-40)))
        assert edges(layout, "shelf/board 1", 1)[0] == -20
        assert edges(layout, "shelf/board 6", 1)[1] == pytest.approx(485)
        assert edges(layout, "shelf/board 3", 0) == [-30, 1160]

    def test_boards_stand_a_stated_clear_off_the_legs(self):
        within = lay_out(carrying(Boards(SLAT, count=6, within="legs", clear=4)))
        assert edges(within, "shelf/board 1", 0) == [74, 1126]
        assert all(not part.cuts for part in within.piece(1) if part.role == "board")
        around = lay_out(carrying(Boards(SLAT, count=6, clear=4))).part("shelf/board 1")
        near = min(around.cuts_on("top"), key=lambda cut: cut.start)
        assert (near.end, near.high - near.low) == (74, 49)

    def test_a_fit_goes_to_the_joint_that_it_is_given_for(self):
        frame = carrying(Bearers(BATTEN, count=2, joint=Over()), Boards(SLAT, count=6))
        layout = lay_out(attrs.evolve(frame, fit={"over-notch": 1.5, "cut round": 3}))
        (slot,) = (cut for cut in layout.part("shelf/bearer 1").cuts if cut.mate == "shelf/front rail")
        assert (slot.box.low[1], slot.box.high[1]) == (0, 22 + 1.5)  # a rail of 22 in a notch that is open at its end
        near = min(layout.part("shelf/board 1").cuts_on("top"), key=lambda cut: cut.start)
        assert (near.end, near.high - near.low) == (70 + 3, 45 + 3)
        assert all(cut.top - cut.bottom == 70 for leg in layout.legs(1) for cut in leg.notches)  # none for the rails

    def test_a_fit_of_half_laps_widens_both_slots_of_a_cross_lap(self):
        runs = Bearers(BATTEN, run="along", count=1, name="long"), Bearers(BATTEN, count=2, joint=HalfLap())
        layout = lay_out(attrs.evolve(carrying(*runs), fit={"half-lap": 1}))
        mates = "shelf/long 1", "shelf/bearer 2"
        for part, mate, axis in ((*mates, 0), (*mates[::-1], 1)):
            (cut,) = (cut for cut in layout.part(part).cuts if cut.mate == mate)
            assert cut.box.high[axis] - cut.box.low[axis] == pytest.approx(20 + 1)
            assert cut.box.high[2] - cut.box.low[2] == pytest.approx(40 / 2)  # half of the height from each

    def test_a_middle_leg_takes_a_notch_out_of_the_edge(self):
        frame = attrs.evolve(carrying(Boards(SLAT, count=6, clear=1)), bays=(Clear(), Clear()))
        (cut,) = (cut for cut in lay_out(frame).part("shelf/board 1").cuts if "middle" in cut.mate)
        assert (cut.kind, cut.box.low[:2], cut.box.high[:2]) == ("edge notch", (564, 0), (636, 46))

    def test_boards_across_lie_on_front_and_back_rail(self):
        layout = lay_out(carrying(Boards(SLAT, run="across", count=15, left=-80, right=-80)))
        assert edges(layout, "shelf/board 1", 0) == [80, 140]
        assert edges(layout, "shelf/board 1", 1) == [0, 500]
        assert edges(layout, "shelf/board 15", 0) == [1060, 1120]
        assert layout.findings == ()

    def test_boards_up_stand_on_the_face_of_two_rails(self):
        layout = lay_out(SLATTED_SEAT)
        part = layout.part("seat/back slat 1")
        assert (part.slot.upright, edges(layout, "seat/back slat 1", 1)) == (True, [450, 470])
        assert edges(layout, "seat/back slat 1", 2) == [360, 885]  # seat's back rail from 350, crest to 900
        assert {j.host for j in layout.joints_of(1) if j.guest == part.identity} == {
            "seat/back rail",
            "crest/back rail",
        }


class TestBearers:
    def test_they_stand_at_places_by_count_or_by_the_widest_span(self):
        at = lay_out(carrying(Bearers(BATTEN, at=[300, 900])))
        assert edges(at, "shelf/bearer 2", 0) == [890, 910]
        count = lay_out(carrying(Bearers(BATTEN, count=2)))  # (1200 − 44 − 40) / 3 = 372
        assert edges(count, "shelf/bearer 1", 0) == [394, 414]
        span = lay_out(carrying(Bearers(BATTEN, span=300)))  # n of 20 leave (1156 − 20 n) / (n + 1) ≤ 300: 3
        assert len([part for part in span.piece(1) if part.role == "bearer"]) == 3
        none = lay_out(carrying(Bearers(BATTEN, span=1156)))
        assert not [part for part in none.piece(1) if part.role == "bearer"]

    def test_flat_or_on_edge_butted_with_their_tops_lowered(self):
        flat = lay_out(carrying(Bearers(BATTEN, count=1, flat=True, lowered=20)))
        assert edges(flat, "shelf/bearer 1", 2) == [230, 250]
        assert edges(flat, "shelf/bearer 1", 0) == [580, 620]

    @pytest.mark.parametrize(
        ("joint", "heights", "rail", "bearer"),
        [
            (Notch(), [230, 270], 40, 0),
            (Notch(25), [245, 285], 25, 0),
            (HalfLap(), [230, 270], 20, 20),
            (HalfLap(0.25), [230, 270], 10, 30),
            (Over(), [250, 290], 0, 20),
            (Over(12), [258, 298], 0, 12),
        ],
        ids=["let in flush", "let in part-way", "half-lapped", "a quarter", "over by half", "over by 12"],
    )
    def test_a_lap_is_placed_on_both_members(self, joint, heights, rail, bearer):
        layout = lay_out(carrying(Bearers(BATTEN, at=[300], joint=joint)))
        own, front = layout.part("shelf/bearer 1"), layout.part("shelf/front rail")
        assert edges(layout, "shelf/bearer 1", 2) == heights
        assert edges(layout, "shelf/bearer 1", 1) == [0, 500]
        assert [cut.depth for cut in front.cuts_on("top")] == [rail] * bool(rail)
        assert [(c.start, c.end, c.depth) for c in own.cuts_on("bottom")] == (
            [(0, 22, bearer), (478, 500, bearer)] if bearer else []
        )
        assert [(c.start, c.end) for c in front.cuts_on("top")] == [(290, 310)] * bool(rail)
        assert layout.findings == () or kinds(layout.frame) == {"long span"}

    def test_what_runs_past_its_rails_is_a_cross_lap(self):
        own = lay_out(carrying(Bearers(BATTEN, at=[300], joint=HalfLap(), front=30, back=30))).part("shelf/bearer 1")
        assert [(cut.start, cut.end) for cut in own.cuts_on("bottom")] == [(30, 52), (508, 530)]

    def test_a_rail_that_stands_higher_is_butted_against(self):
        layout = lay_out(carrying(Bearers(BATTEN, at=[300], joint=HalfLap()), back=100))
        assert edges(layout, "shelf/bearer 1", 1) == [0, 478]
        assert edges(layout, "shelf/bearer 1", 2) == [230, 270]
        assert layout.part("shelf/back rail").cuts == ()

    def test_ledgers_are_planted_inside_their_rails_between_the_legs(self):
        layout = lay_out(carrying(Bearers(BATTEN, run="along", joint=Planted(), lowered=20)))
        front, back = (layout.part(f"shelf/bearer {number}") for number in (1, 2))
        assert (front.blank.low, front.blank.high) == ((70, 22, 210), (1130, 42, 250))
        assert (back.blank.low, back.blank.high) == ((70, 458, 210), (1130, 478, 250))

    def test_an_egg_crate_gives_up_half_of_each_at_one_height(self):
        layout = lay_out(EGG_CRATE)
        for number in (1, 2):
            for cut in layout.part(f"gloves/divider {number}").cuts_on("top"):
                assert (cut.depth, cut.end - cut.start) == (40, pytest.approx(12.4))  # as wide as its mate, and the fit
        for number in range(1, 6):
            for cut in layout.part(f"gloves/bearer {number}").cuts_on("bottom"):
                assert (cut.depth, cut.end - cut.start) == (40, pytest.approx(12.4))
        assert {tuple(edges(layout, f"gloves/{name} 1", 2)) for name in ("divider", "bearer")} == {(260, 340)}

    @pytest.mark.parametrize("frame", BOARDED.values(), ids=BOARDED)
    def test_the_halves_of_every_lap_add_up_to_the_section_that_both_want(self, frame):
        layout = lay_out(frame)
        for joint in (joint for joint in layout.joints_of(1) if joint.kind == "half-lap"):
            host, guest = layout.joined(joint)
            deep = [part.on_face(cut).depth for part, cut in zip((host, guest), joint.cuts, strict=True)]
            assert sum(deep) == pytest.approx(joint.contact.size()[2])

    @pytest.mark.parametrize("frame", BOARDED.values(), ids=BOARDED)
    def test_no_two_parts_share_wood_in_another_kernel(self, frame):
        layout = lay_out(frame)
        assert sharing(layout) == set()
        for part in layout.piece(1):
            assert part.volume == pytest.approx(carved(part).volume(), rel=1e-6)


class TestSounder:
    """What is off is told with its numbers and a way out."""

    def told(self, frame, kind):
        return next(finding for finding in lay_out(frame).findings if finding.kind == kind)

    def test_boards_that_rest_on_nothing_or_tip(self):
        ledge = carrying(Boards(SLAT, count=5, within="legs"), ends=None)
        (found,) = [f for f in lay_out(ledge).findings if f.kind == "rests on nothing"]  # told once for all of them
        assert found.parts == ("shelf/board 2", "shelf/board 3", "shelf/board 4")  # the outer ones lie on a rail
        assert "shelf/board 2 rests on nothing" in found.sentence
        assert "2 more of its run" in found.sentence
        high = carrying(Boards(SLAT, run="across", count=5, left=-80, right=-80), back=100)
        assert "shelf/front rail" in self.told(high, "held at one end").sentence

    def test_a_span_that_is_long_for_its_thickness(self):
        finding = self.told(carrying(Boards(SLAT, count=5)), "long span")
        assert (finding.severity, finding.numbers) == ("warning", {"span": 1156, "most": 500})
        assert "long span" not in kinds(carrying(Bearers(BATTEN, count=2), Boards(SLAT, count=5)))

    def test_a_leg_that_goes_through_a_board_or_leaves_little_of_it(self):
        wide = Stock("wide board", thickness=20, width=100)
        through = carrying(Boards(wide, count=3, front=30))
        assert self.told(through, "leg through a board").numbers == {"before": 30, "after": 25}
        thin = carrying(Boards(SLAT, count=5))
        assert self.told(thin, "thin beside a leg").numbers == {"left": pytest.approx(15)}

    def test_supports_at_unequal_height(self):
        frame = carrying(Bearers(BATTEN, at=[300, 900], lowered=-4), Boards(SLAT, count=5))
        assert self.told(frame, "supports at unequal height").numbers["down"] == pytest.approx(4)

    def test_bearers_outside_the_level(self):
        finding = self.told(carrying(Bearers(BATTEN, at=[300, 1400])), "rests on nothing")
        assert finding.parts == ("shelf/bearer 2",)

    def test_a_notch_as_deep_as_the_rail(self):
        frame = carrying(Bearers(Stock("deep", thickness=20, width=90), at=[300], joint=Notch()))
        assert self.told(frame, "cut in two").parts == ("shelf/front rail",)

    def test_boards_wider_than_the_level(self):
        with pytest.raises(RunOverfull, match=r"9 boards take 540 mm, 40 mm too much\. Take 8 boards"):
            lay_out(carrying(Boards(SLAT, count=9)))
        with pytest.raises(RunOverfull, match=r"30 boards take 1800 mm, 1300 mm too much\. Take 8 boards"):
            lay_out(carrying(Boards(SLAT, count=30)))
        with pytest.raises(RunOverfull, match="nothing is left for boards between the margins"):
            lay_out(carrying(Boards(SLAT, gap=5, front=-250, back=-260)))
        with pytest.raises(RunOverfull, match="narrower board"):
            lay_out(carrying(Boards(Stock("sheet", thickness=18, width=600), gap=3)))

    def test_ripped_boards_wider_than_their_stock(self):
        assert self.told(carrying(Boards(SLAT, count=7, remainder="rip")), "wider than its stock").numbers == {
            "width": pytest.approx(500 / 7),
            "stock": 60,
        }

    @pytest.mark.parametrize(
        ("make", "words"),
        [
            (lambda: Boards(SLAT), "neither count nor gap"),
            (lambda: Boards(RAIL, gap=5), "has no width"),
            (lambda: Boards(SLAT, count=5, remainder="margins"), "thickness of the spacer"),
            (lambda: Boards(SLAT, count=5, to="seat"), "only boards that run up"),
            (lambda: Boards(SLAT, count=5, run="up", front=3), "boards that run up have none"),
            (lambda: Bearers(BATTEN), "none of count, at and span"),
            (lambda: Bearers(BATTEN, count=2, span=300), "count and span are given"),
            (lambda: Bearers(BATTEN, at=[300, 200]), "does not rise"),
            (lambda: Bearers(BATTEN, count=2, joint=Over(40)), "40 mm deep, and the bearer is 40 mm high"),
            (lambda: Bearers(BATTEN, count=2, joint=Notch(41)), "41 mm deep"),
            (lambda: Bearers(BATTEN, count=2, joint=HalfLap(), lowered=5), "Leave lowered out"),
            (lambda: Bearers(BATTEN, count=2, joint=Planted()), "Leave count out"),
            (lambda: Bearers(BATTEN, count=2, joint=Butt(), front=10), "Leave front out"),
            (lambda: Bearers(BATTEN, count=2, joint="butt"), "joint is 'butt'"),
            (lambda: carrying(Bearers(BATTEN, count=1), Bearers(BATTEN, count=1, run="along")), "Give one a name"),
            (lambda: carrying(Boards(SLAT, gap=5, name="front")), "which addresses use"),
            (lambda: carrying(Bearers(BATTEN, count=1), front=None, back=None), "there is none. Give front="),
            (lambda: carrying(Boards(SLAT, run="up", gap=5, to="crest")), "has no back rail"),
            (lambda: carrying("boards"), "Write Bearers"),
        ],
    )
    def test_what_cannot_be_meant_is_refused_with_a_way_out(self, make, words):
        with pytest.raises(DescriptionError, match=words):
            make()


def moved(old, changes):
    """What moved after a change, as the names of parts without their numbers."""
    found = what_moved(lay_out(old), lay_out(alter(old, changes))).changes
    return {change.part.rstrip("0123456789 ") for change in found}, found


class TestVariations:
    """A maker changes one thing, and nothing moves but what has to."""

    SHELF = "foot shelf/"

    def test_longer_by_300_mm(self):
        parts, found = moved(FOOT_SHELF, {"length": 57 * INCH + 300})
        long_rails = {f"{level}/{side} rail" for level in ("foot shelf", "bench") for side in ("front", "back")}
        assert parts <= {*long_rails, "head rail/back rail", "foot shelf/board"}
        boards = [change for change in found if "board" in change.part and change.what == "length"]
        assert [change.by for change in boards] == [pytest.approx(300)] * 8

    def test_wider_slats(self):
        parts, found = moved(FOOT_SHELF, {"foot shelf.boards.stock.width": "2 5/8 in"})
        assert parts <= {"foot shelf/board", "foot shelf/bearer", "foot shelf/left rail", "foot shelf/right rail",
                         "foot shelf/front rail"}  # fmt: skip
        assert all(
            "laid of" in change.what
            or "width" in change.what
            or "corner notch" in change.what
            or "board" in change.part
            for change in found
        )

    def test_one_bearer_less(self):
        parts, found = moved(FOOT_SHELF, {"foot shelf.bearers.count": 1})
        assert parts <= {"foot shelf/bearer", "foot shelf/front rail", "foot shelf/back rail"}
        assert all("bearer" in change.part or "bearer" in change.what for change in found)

    def test_thicker_boards(self):
        parts, found = moved(FOOT_SHELF, {"foot shelf.boards.stock.thickness": "7/8 in"})
        assert parts == {"foot shelf/board"}
        assert {change.what.partition(", ")[2] or change.what for change in found} == {"thickness", "depth"}


class TestWoodAsItIs:
    def test_a_measured_board_changes_gaps_and_no_names(self):
        wide = lay_out(alter(FOOT_SHELF, {"1/foot shelf/board 3.width": "2 5/8 in"}))
        assert len(wide.parts) == len(lay_out(FOOT_SHELF).parts)
        gap = (Fraction(19, 8) - Fraction(1, 8)) / 7
        assert edges(wide, "1/foot shelf/board 2", 1)[0] == pytest.approx(float(Fraction(5, 2) + gap) * INCH)
        assert edges(wide, "2/foot shelf/board 2", 1)[0] == pytest.approx(float(Fraction(5, 2) + GAP) * INCH)

    def test_where_another_board_would_go_in_now_it_is_told(self):
        narrow = {f"foot shelf/board {number}.width": "2 in" for number in range(1, 9)}
        layout = lay_out(alter(FOOT_SHELF, narrow))
        assert any(finding.kind == "another count" for finding in layout.findings)
        assert len([part for part in layout.piece(1) if part.role == "board"]) == 8

    def test_keeping_a_board_writes_the_count_down(self):
        kept = keep(lay_out(FOOT_SHELF), "foot shelf/board 1")
        assert value(kept, "foot shelf.boards.count") == 8
        deeper = lay_out(alter(kept, {"depth": "30 in"}))
        assert len([part for part in deeper.piece(1) if part.role == "board"]) == 8

    def test_a_measured_batten_keeps_its_top_at_the_rails(self):
        layout = lay_out(alter(FOOT_SHELF, {"foot shelf/bearer 1.width": "1 3/8 in"}))
        assert edges(layout, "foot shelf/bearer 1", 2) == inches(8.375, 9.75)

    def test_a_name_beyond_the_run_is_refused_where_the_count_is_given(self):
        with pytest.raises(DescriptionError, match="no part of this frame"):
            attrs.evolve(CROSSINGS, measured={"let in/board 13.width": 59})
