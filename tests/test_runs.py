"""The accumulator: hand-worked runs, and errors that name the run, both pins and the amount over."""

from __future__ import annotations

import numpy as np
import pytest

from benchjoin.errors import RunError, RunMismatch, RunOverfull
from benchjoin.readings import Tape
from benchjoin.runs import Member, Pin, edges, larger, lay_run, least, most, over_pieces, smaller

OPEN = np.nan
INCH_TAPE, MM_TAPE = Tape("1/16 in"), Tape("1 mm")


def inches(*values):
    return [25.4 * value for value in values]


def test_levels_of_the_honey_house_bench_come_out_as_by_hand():
    # by hand, inches from the foot: shelf 7 to 11 1/4, bench 32 to 35 1/2; 70 − 35 1/2 − 3 1/2 − 5 1/4 = 25 3/4 is left
    # for two clears, 12 7/8 each: hook rail 48 3/8 to 51 7/8, head rail 64 3/4 to 70
    found = edges(inches(7, 4.25, OPEN, 3.5, OPEN, 3.5, OPEN, 5.25), pins={4: 35.5 * 25.4, 8: 70 * 25.4})
    assert found == pytest.approx(inches(0, 7, 11.25, 32, 35.5, 48.375, 51.875, 64.75, 70), abs=1e-9)


BY_HAND = {
    "nothing": ([], {}, [0]),
    "fixed sizes add up": ([10, 20, 30], {}, [0, 10, 30, 60]),
    "an open size fills what is left": ([100, OPEN, 50], {"pins": {3: 400}}, [0, 100, 350, 400]),
    "equal shares": ([OPEN, 100, OPEN], {"pins": {3: 400}}, [0, 150, 250, 400]),
    "shares 1 to 2": ([OPEN, 100, OPEN], {"pins": {3: 400}, "shares": [1, 9, 2]}, [0, 100, 200, 400]),
    # (180 + 20) / 2 = 100 each, and the first is 20 less
    "one is less by a step": ([OPEN, OPEN], {"pins": {2: 180}, "less": [20, 0]}, [0, 80, 180]),
    # (180 + 30) / 3 = 70: 70 − 30, and 140
    "less and shares": ([OPEN, OPEN], {"pins": {2: 180}, "less": [30, 0], "shares": [1, 2]}, [0, 40, 180]),
    "less is nothing to a known size": ([60, OPEN], {"pins": {2: 180}, "less": [30, 0]}, [0, 60, 180]),
    "a run need not close": ([100, OPEN, 50], {}, [0, 100, OPEN, OPEN]),
    "it goes on after the last pin": ([100, OPEN, 50, 30], {"pins": {2: 400}}, [0, 100, 400, 450, 480]),
    "each room shares its own": ([OPEN, OPEN, OPEN], {"pins": {1: 50, 3: 150}}, [0, 50, 100, 150]),
    "a pin that agrees with the sum": ([100, 50], {"pins": {1: 100}}, [0, 100, 150]),
    "the datum may be elsewhere": ([10, OPEN], {"pins": {0: 40, 2: 100}}, [40, 50, 100]),
    "a clear of nothing": ([100, OPEN], {"pins": {2: 100}}, [0, 100, 100]),
}


@pytest.mark.parametrize("sizes, given, expected", BY_HAND.values(), ids=BY_HAND)
def test_a_run_comes_out_as_by_hand(sizes, given, expected):
    np.testing.assert_allclose(edges(sizes, **given), expected, rtol=0, atol=1e-12)


IMPOSSIBLE = {
    "too much": ([100, OPEN, 50], {3: 140}, [OPEN] * 4),
    "fixed sizes leave a gap": ([100, 50], {2: 160}, [OPEN] * 3),
    "fixed sizes are too long": ([100, 50], {2: 140}, [OPEN] * 3),
    "the second room only": ([100, 50, OPEN, 9], {1: 100, 3: 140}, [0, OPEN, OPEN, OPEN, OPEN]),
    "the first room spoils the next": ([100, OPEN], {1: 90, 2: 300}, [OPEN] * 3),
    "pins that fall": ([OPEN, OPEN], {1: 200, 2: 100}, [0, OPEN, OPEN]),
}


@pytest.mark.parametrize("sizes, pins, expected", IMPOSSIBLE.values(), ids=IMPOSSIBLE)
def test_a_run_that_does_not_come_out_is_nan_from_the_lower_pin_on(sizes, pins, expected):
    np.testing.assert_array_equal(edges(sizes, pins=pins), expected)


def test_less_than_the_touch_is_no_gap_and_the_pin_holds_exactly():
    assert edges([100.0], pins={1: 100.0000005}).tolist() == [0.0, 100.0000005]
    assert np.isnan(edges([100.0], pins={1: 100.000002})).all()


def test_a_pin_holds_exactly_where_floats_add_up_to_a_breath_more():
    assert 0.1 + 0.2 != 0.3
    assert edges([0.1, 0.2, OPEN], pins={2: 0.3, 3: 0.7}).tolist() == [0.0, 0.1, 0.3, 0.7]


def test_an_impossible_row_does_not_spoil_the_others():
    found = edges([[100, OPEN], [500, OPEN], [300, OPEN]], pins={2: 400})
    np.testing.assert_array_equal(found, [[0, 100, 400], [OPEN] * 3, [0, 300, 400]])


def test_a_row_may_be_open_where_another_is_fixed():
    found = edges([[100, OPEN, 40], [OPEN, 60, 40], [100, 60, 40]], pins={3: 200})
    np.testing.assert_array_equal(found, [[0, 100, 160, 200]] * 3)


def test_pins_may_differ_by_row_where_sizes_do_not():
    found = edges([100, OPEN], pins={2: [300, 400, 50]})
    np.testing.assert_array_equal(found, [[0, 100, 300], [0, 100, 400], [OPEN] * 3])


def test_sizes_and_pins_over_two_leading_axes():
    sizes = np.array([[10.0, OPEN], [20.0, OPEN]])[:, None, :]
    found = edges(sizes, pins={2: np.array([100.0, 200.0, 300.0])})
    assert found.shape == (2, 3, 3)
    assert found[..., 1].tolist() == [[10.0] * 3, [20.0] * 3]
    assert found[..., 2].tolist() == [[100.0, 200.0, 300.0]] * 2


@pytest.mark.parametrize("edge", [-1, 3, 7])
def test_a_pin_needs_an_edge_that_the_run_has(edge):
    with pytest.raises(RunError, match=rf"no edge {edge} to pin: a run of 2 has the edges 0 to 2"):
        edges([10, OPEN], pins={edge: 100})


def test_shares_may_differ_by_row():
    found = edges([OPEN, OPEN], shares=[[1, 1], [1, 3]], pins={2: 100})
    np.testing.assert_allclose(found, [[0, 50, 100], [0, 25, 100]])


def test_rows_of_different_shapes_are_one_run():
    found = edges([np.array([10.0, 20.0]), np.array(OPEN), np.array(5.0)], pins={3: np.array(100.0)})
    np.testing.assert_allclose(found, [[0, 10, 95, 100], [0, 20, 95, 100]])


def test_an_edge_of_all_variants_lies_in_one_piece_of_memory():
    assert edges(np.ones((1000, 5)))[..., 3].flags.c_contiguous


def rail(size, name="rail"):
    return Member(name=name, size=size)


CLEAR = Member(name="clear")
BENCH = Pin(edge=1, at=32 * 25.4, name='"bench" (bottom at 32 in)')
LINTEL = Pin(edge=4, at=70 * 25.4, name='"lintel" (top at 70 in)')


def test_too_much_between_two_pins_names_the_run_both_pins_and_the_amount():
    # by hand: 3 1/2 + 30 1/2 + 5 1/4 = 39 1/4, and there is 70 − 32 = 38: 1 1/4 in = 31.75 mm over
    members = [CLEAR, *map(rail, inches(3.5, 30.5, 5.25))]
    with pytest.raises(RunOverfull) as caught:
        lay_run("Back left leg", members, [BENCH, LINTEL], INCH_TAPE)
    assert str(caught.value) == (
        'Back left leg, between "bench" (bottom at 32 in) and "lintel" (top at 70 in): sizes add up to 39 1/4 in '
        "(3 1/2 + 30 1/2 + 5 1/4), but there is room for 38 in: 1 1/4 in too much. Make one of these sizes smaller, or "
        "move one of the two that they lie between."
    )
    error = caught.value
    assert (error.run, error.lower_pin, error.upper_pin) == ("Back left leg", BENCH.name, LINTEL.name)
    assert error.over == pytest.approx(31.75, abs=1e-9)


def test_what_is_left_between_two_pins_and_no_open_clear_is_told():
    # by hand: 3 1/2 + 28 + 5 1/4 = 36 3/4 of 38: 1 1/4 in are left
    members = [CLEAR, *map(rail, inches(3.5, 28, 5.25))]
    with pytest.raises(RunMismatch, match=r"add up to 36 3/4 in .* room for 38 in: 1 1/4 in are left") as caught:
        lay_run("Back left leg", members, [BENCH, LINTEL], INCH_TAPE)
    assert caught.value.over == pytest.approx(-31.75, abs=1e-9)


def test_an_amount_too_small_for_the_tape_is_told_in_mm():
    with pytest.raises(RunOverfull, match=r": 0\.01 mm too much"):
        lay_run("r", [rail(100.01)], [Pin(edge=1, at=100.0, name="top")], MM_TAPE)


def test_the_first_room_that_does_not_come_out_is_the_one_that_is_told():
    one, two = Pin(edge=1, at=50.0, name="one"), Pin(edge=3, at=200.0, name="two")
    end = Pin(edge=4, at=900.0, name="end")
    with pytest.raises(RunOverfull, match=r"between one and two: .* 200 mm .* 150 mm: 50 mm too much") as caught:
        lay_run("r", [CLEAR, rail(100.0), rail(100.0), CLEAR], [one, two, end], MM_TAPE)
    assert (caught.value.lower_pin, caught.value.upper_pin, caught.value.over) == ("one", "two", 50.0)


def test_the_first_room_starts_at_the_foot():
    with pytest.raises(RunOverfull, match="between the foot and top") as caught:
        lay_run("r", [rail(120.0), CLEAR], [Pin(edge=2, at=100.0, name="top")], MM_TAPE)
    assert caught.value.lower_pin == "the foot"


def test_between_bands_less_than_nothing_may_be_left_of_a_clear_measured_at_one_side():
    # by hand: (180 + 300) / 3 = 160 at its side; 160 − 300 = −140 between the bands
    low = Member(name="clear", less=300.0)
    high = Member(name="clear", share=2.0)
    found = lay_run("r", [low, high], [Pin(edge=2, at=180.0, name="top")], MM_TAPE)
    assert found.tolist() == [0.0, pytest.approx(-140.0), 180.0]


def test_a_known_clear_that_is_less_than_nothing_lays_out_beside_an_open_one_too():
    closed = [rail(100.0), Member(name="clear", size=-20.0), rail(60.0)]
    assert lay_run("r", closed, [], MM_TAPE).tolist() == [0.0, 100.0, 80.0, 140.0]
    found = lay_run("r", [*closed, CLEAR], [Pin(edge=4, at=200.0, name="top")], MM_TAPE)
    assert found.tolist() == [0.0, 100.0, 80.0, 140.0, 200.0]


def test_an_open_clear_may_not_be_less_than_nothing_where_it_is_measured():
    low, high = Member(name="clear", less=300.0), rail(500.0)
    with pytest.raises(RunOverfull, match="add up to 200 mm, but there is room for 180 mm: 20 mm too much") as caught:
        lay_run("r", [low, high], [Pin(edge=2, at=180.0, name="top")], MM_TAPE)
    assert caught.value.over == pytest.approx(20.0)


def test_an_error_says_which_pieces_it_is_true_of():
    with pytest.raises(RunOverfull) as caught:
        lay_run("r", [rail(np.array([10.0, 205.0])), CLEAR], [Pin(edge=2, at=200.0, name="top")], MM_TAPE)
    assert caught.value.pieces.tolist() == [False, True]


def test_the_worst_of_the_pieces_that_fail_is_the_one_that_is_told():
    # piece 1 has 490 mm for its clear; pieces 2 and 3 are 5 and 8 mm over
    sizes = np.array([10.0, 205.0, 208.0])
    pin = Pin(edge=2, at=np.array([500.0, 200.0, 200.0]), name="top")
    with pytest.raises(RunOverfull, match=r"r \(piece 3\), .*: 8 mm too much") as caught:
        lay_run("r", [rail(sizes), CLEAR], [pin], MM_TAPE)
    assert caught.value.over == 8.0


def test_pieces_that_all_fail_alike_are_told_without_a_number():
    with pytest.raises(RunOverfull, match=r"^r, between"):
        lay_run("r", [rail(np.array([205.0, 205.0])), CLEAR], [Pin(edge=2, at=200.0, name="top")], MM_TAPE)


def test_two_places_for_one_edge_contradict_each_other():
    pins = [Pin(edge=2, at=400.0, name="flush"), Pin(edge=2, at=410.0, name="top")]
    with pytest.raises(RunError, match="flush and top hold one edge at two places, 10 mm apart") as caught:
        lay_run("r", [rail(10.0), CLEAR], pins, MM_TAPE)
    assert (caught.value.lower_pin, caught.value.upper_pin, caught.value.over) == ("flush", "top", 10.0)


def test_two_pins_that_agree_are_one():
    pins = [Pin(edge=2, at=400.0, name="flush"), Pin(edge=2, at=400.0, name="top")]
    assert lay_run("r", [rail(10.0), CLEAR], pins, MM_TAPE).tolist() == [0.0, 10.0, 400.0]


def test_the_foot_cannot_be_held_elsewhere():
    with pytest.raises(RunError, match="the foot and sill hold one edge at two places, 20 mm apart"):
        lay_run("r", [rail(10.0)], [Pin(edge=0, at=20.0, name="sill")], MM_TAPE)


@pytest.mark.parametrize("turn", [1, -1])
def test_pins_that_fall_are_refused_in_whatever_order_they_are_given(turn):
    pins = [Pin(edge=1, at=300.0, name="shelf"), Pin(edge=2, at=260.0, name="bench")][::turn]
    with pytest.raises(RunError, match="bench lies 40 mm below shelf, but comes after it") as caught:
        lay_run("r", [CLEAR, CLEAR], pins, MM_TAPE)
    assert (caught.value.lower_pin, caught.value.upper_pin, caught.value.over) == ("shelf", "bench", 40.0)


def test_a_run_at_the_door_is_the_plain_run():
    members = [rail(inches(7)[0]), Member(name="clear", share=2.0, less=3.0), rail(60.0), Member(name="clear")]
    found = lay_run("r", members, [Pin(edge=4, at=900.0, name="top")], INCH_TAPE)
    # by hand: 900 − 177.8 − 60 + 3 = 665.2 over three shares: 443.466… − 3 and 221.733…
    third = 665.2 / 3
    assert found == pytest.approx([0, 177.8, 177.8 + 2 * third - 3, 237.8 + 2 * third - 3, 900], abs=1e-9)


class TestOfTwo:
    """A plain number stays one; an array of variants is asked variant by variant, on whichever side it stands."""

    VARIANTS = np.array([1.0, 5.0])

    @pytest.mark.parametrize("a, b", [(VARIANTS, 3.0), (3.0, VARIANTS), (VARIANTS, np.array([3.0, 3.0]))])
    def test_variant_by_variant(self, a, b):
        assert larger(a, b).tolist() == [3.0, 5.0]
        assert smaller(a, b).tolist() == [1.0, 3.0]

    def test_plain_numbers(self):
        assert (larger(1.0, 3.0), larger(3.0, 1.0), smaller(1.0, 3.0), smaller(3.0, 1.0)) == (3.0, 3.0, 1.0, 1.0)
        assert type(larger(1.0, 3.0)) is type(smaller(1.0, 3.0)) is float

    def test_of_several(self):
        assert least([[4, 2], 3, np.array([5, 1])]).tolist() == [3.0, 1.0]
        assert most([[4, 2], 3, np.array([5, 1])]).tolist() == [5.0, 3.0]


class TestOverPieces:
    def test_one_value_for_each_piece(self):
        assert over_pieces([69, 66]).tolist() == [69.0, 66.0]
        assert over_pieces([69, 66]).dtype == float

    def test_a_single_piece_keeps_its_variants(self):
        assert over_pieces([np.array([1, 2])]).shape == (2,)
        assert over_pieces([7]).shape == (1,)
        assert over_pieces([7]).dtype == float


class TestPinsOfSomePieces:
    """Where pins contradict each other in some pieces alone, the error says in which."""

    def told(self, *pins):
        with pytest.raises(RunError) as error:
            lay_run("Run", [Member(name="a", size=10.0), Member(name="b")], pins, Tape("1 mm"))
        return error.value

    def test_one_edge_at_two_places(self):
        error = self.told(
            Pin(edge=2, at=np.array([50.0, 50.0]), name="one"), Pin(edge=2, at=np.array([50.0, 52.0]), name="other")
        )
        assert error.pieces.tolist() == [False, True]
        assert error.over == 2.0

    def test_two_edges_the_wrong_way_about(self):
        error = self.told(
            Pin(edge=1, at=np.array([50.0, 60.0, 55.0]), name="one"),
            Pin(edge=2, at=np.array([55.0, 55.0, 55.0]), name="other"),
        )
        assert error.pieces.tolist() == [False, True, False]
        assert error.over == 5.0

    def test_a_pin_said_twice_is_one(self):
        pins = [Pin(edge=2, at=50.0, name="one"), Pin(edge=2, at=50.0, name="again"), Pin(edge=3, at=60.0, name="end")]
        members = [Member(name="a", size=10.0), Member(name="b"), Member(name="c")]
        assert lay_run("Run", members, pins, Tape("1 mm")).tolist() == [0.0, 10.0, 50.0, 60.0]

    def test_a_strange_pin_belongs_to_no_run(self):
        with pytest.raises(RunError) as error:
            edges([1.0], pins={3: 5.0})
        assert error.value.run == ""

    def test_the_worst_piece_is_told(self):
        members = [Member(name="a", size=np.array([10.0, 30.0, 20.0])), Member(name="b", size=5.0)]
        with pytest.raises(RunOverfull, match=r"Run \(piece 2\), between .*30 \+ 5.*room for 12 mm: 23 mm too much"):
            lay_run("Run", members, [Pin(edge=2, at=12.0, name="end")], Tape("1 mm"))

    def test_one_size_alone_is_not_added_up(self):
        with pytest.raises(RunOverfull, match=r"sizes add up to 30 mm, but there is room for 12 mm"):
            lay_run("Run", [Member(name="a", size=30.0)], [Pin(edge=1, at=12.0, name="end")], Tape("1 mm"))

    @pytest.mark.parametrize("count, told", [(8, True), (9, False)])
    def test_more_than_eight_sizes_are_not_told_one_by_one(self, count, told):
        members = [Member(name=str(n), size=2.0) for n in range(count)]
        with pytest.raises(RunOverfull) as error:
            lay_run("Run", members, [Pin(edge=count, at=1.0, name="end")], Tape("1 mm"))
        assert ("2 + 2" in str(error.value)) is told
