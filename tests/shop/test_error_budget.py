"""The error budget: closed form against a seeded simulation, its figures by hand, and what it must say."""

import math

import attrs
import numpy as np
import pytest
from designs import plain_bench as bench
from designs import plain_rack as rack
from samples import SAMPLES

from benchjoin import error_budget, lay_out
from benchjoin.errors import AddressError, DescriptionError
from benchjoin.shop.budget.error_budget import diagonals_differ
from benchjoin.shop.budget.marking_ways import WAYS_OF_MARKING, Marking
from benchjoin.shop.budget.tolerance import root_sum_square, worst

TRIALS = 40_000
A, B, C = 0.3, 0.2, 0.2  # tape of class II
OWN, LAY, STRETCH, SEAT = 0.5, 0.25, 0.25 / 150, 0.1  # what the rack's budget takes where nothing is said
MARKS = [number * 300 + start for number in range(6) for start in (160, 205, 250)][:-1]
"""Shoulder lines of the rack's legs: trays every 300 from 160, end rails 45 higher; the last runs out at the top."""


def simulated(way, rng):
    """Errors of the last mark on two legs, marked many times over by one maker with one tape. Every error is as likely
    anywhere between its limits."""

    def error(size, count=1):
        return rng.uniform(-size, size, (count, TRIALS))

    steps = np.diff([0, *MARKS])
    limits = [A + B * math.ceil(step / 1000) + (C if n == 0 else 0) for n, step in enumerate(steps)]
    whole = A + B * math.ceil(MARKS[-1] / 1000) + C
    if way == "tape, mark to mark":
        tape = error(1.0)[0] * sum(limits)
        return [tape + error(OWN, len(steps)).sum(axis=0) for _ in range(2)]
    if way == "tape, from one end":
        tape = error(whole)[0]
        return [tape + error(OWN)[0] for _ in range(2)]
    if way == "printed strip":
        stretch = error(STRETCH)[0] * MARKS[-1]
        return [stretch + error(LAY)[0] + error(LAY)[0] for _ in range(2)]
    stop = error(whole)[0] + error(OWN)[0]
    return [stop + error(SEAT)[0] for _ in range(2)]


def agrees(sample, spread):
    """Whether the spread of a sample is that of the closed form, within the sample's own 99.9 % interval."""
    deviation = sample.std()
    fourth = ((sample - sample.mean()) ** 4).mean()
    uncertain = 3.3 * math.sqrt((fourth - deviation**4) / len(sample)) / (2 * deviation)
    # a uniform error of ± t deviates by t / √3 as a rule: the root sum square of all t is √3 times that of the sum
    close = abs(deviation * math.sqrt(3) - spread.likely) <= uncertain * math.sqrt(3)
    return close and np.abs(sample).max() <= spread.worst


def test_the_marks_are_those_of_the_leg():
    assert [round(at, 6) for at in error_budget(lay_out(rack)).ways_marks] == MARKS


@pytest.mark.parametrize("way", WAYS_OF_MARKING)
def test_the_closed_form_agrees_with_a_simulation(way):
    budget = error_budget(lay_out(rack))
    one, other = simulated(way, np.random.default_rng(20_240_607))
    last = budget.ways[way][-1]
    assert agrees(one, last.place)
    assert agrees(one - other, last.between_legs)
    assert not agrees(one * 1.03, last.place)


def test_diagonals_agree_with_points():
    width, height = 900.0, 1705.0
    for off in (0.0, 0.3, 12.0):
        rising = math.dist((0, 0), (width, height + off))
        falling = math.dist((width, 0), (0, height))
        assert diagonals_differ(width, height, off) == pytest.approx(rising - falling, abs=1e-9)


def test_stepping_adds_up_and_reading_from_one_end_does_not():
    budget = error_budget(lay_out(rack))
    stepped = [mark.between_legs.worst for mark in budget.ways["tape, mark to mark"]]
    read = [mark.between_legs.worst for mark in budget.ways["tape, from one end"]]
    assert stepped == pytest.approx([2 * OWN * n for n in range(1, 18)])
    assert read == pytest.approx([2 * OWN] * 17)


def test_five_rails_stepped_piece_on_piece_by_hand():
    errors = [1 / 32] * 5
    assert worst(errors) == 5 / 32
    assert root_sum_square(errors) == pytest.approx(0.0699, abs=5e-5)


def test_what_legs_share_does_not_tilt_a_rail():
    careful = error_budget(lay_out(bench), Marking(seat=0))
    assert [mark.between_legs.worst for mark in careful.ways["stop block"]] == [0.0] * 7
    assert careful.diagonals("stop block").worst == 0.0


def test_a_tape_by_the_us_handbook_by_hand():
    budget = error_budget(lay_out(bench), Marking(tape_class="US"))
    first, last = (budget.ways["tape, from one end"][n].place.worst / 25.4 for n in (0, -1))
    assert (first, last) == pytest.approx(
        (1 / 32 + 1 / 32, 1 / 32 + 1 / 32)
    )  # 64 3/4 in is under 6 ft; half a sixteenth
    assert "NIST Handbook 44" in str(budget)


def test_a_better_tape_gives_a_smaller_budget():
    first, third = (error_budget(lay_out(bench), Marking(tape_class=name)) for name in ("I", "III"))
    assert all(
        a.place.worst < b.place.worst
        for way in ("tape, mark to mark", "tape, from one end", "stop block")
        for a, b in zip(first.ways[way], third.ways[way], strict=True)
    )


@pytest.mark.parametrize("name", SAMPLES)
def test_every_frame_with_notches_has_a_budget(name):
    layout = lay_out(SAMPLES[name])
    notched = any(n.bottom > 0 or not n.open_top for leg in layout.parts for n in leg.notches)
    budget = error_budget(layout)
    assert (budget is not None) == notched
    if budget is not None:
        assert len(budget.table().rows) == 4
        for marks in budget.ways.values():
            assert all(m.place.likely <= m.place.worst and m.between_legs.likely <= m.between_legs.worst for m in marks)


def test_a_budget_shows_itself():
    budget = error_budget(lay_out(bench))
    assert str(budget) == repr(budget) == budget.table().text()
    assert budget._repr_html_() == budget.table().html()
    assert "class II" in str(budget)


def test_bad_marking_is_refused_all_at_once():
    with pytest.raises(DescriptionError) as error:
        Marking(tape_class="IV", mark="a hair", stretch=2)
    assert {fault.field for fault in error.value.faults} == {"tape_class", "mark", "stretch"}


def test_a_piece_that_is_not_there_is_refused():
    with pytest.raises(AddressError):
        error_budget(lay_out(bench), piece=9)


def test_marking_takes_its_own_values_again():
    marking = Marking(mark="1/64 in")
    assert attrs.evolve(marking, lay=0.3).mark == marking.mark == 25.4 / 64
