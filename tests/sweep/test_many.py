"""Numbers over many variants: they answer together, or say who does not agree."""

import math

import numpy as np
import pytest

from benchjoin.sweep.many import OneByOne, Split, many, pick

WIDE = many([60.0, 70.0, 80.0])


def test_variants_that_agree_answer_together():
    assert WIDE > 50
    assert not WIDE > 80
    assert WIDE == WIDE + 0.0
    assert WIDE != 5.0


def test_variants_that_do_not_agree_say_who_said_yes():
    with pytest.raises(Split) as caught:
        bool(WIDE >= 70)
    assert caught.value.mask.tolist() == [False, True, True]


def test_differences_that_are_rounding_split_no_block():
    noisy = many([1.0, 1.0 + 1e-12, 1.0 - 1e-12])
    assert noisy == 1.0
    assert noisy <= 1.0
    assert not noisy < 1.0
    assert bool(many([0.0, 1e-12])) is False


def test_a_sum_of_numbers_is_still_many():
    assert type(1.0 + WIDE) is type(WIDE)
    assert type(np.maximum(65.0, WIDE)) is type(WIDE)
    assert (sum([WIDE, 1.0, WIDE]) == many([121.0, 141.0, 161.0])) is not False


@pytest.mark.parametrize(
    "ask",
    [float, int, hash, math.floor, round, lambda n: {n: 1}, np.frompyfunc(str, 1, 1)],
    ids=["float", "int", "hash", "floor", "round", "key", "ufunc of another library"],
)
def test_what_only_one_variant_can_answer_is_not_answered(ask):
    with pytest.raises(OneByOne):
        ask(WIDE)


def test_sentences_have_dots_in_place_of_many_numbers():
    assert f"{WIDE:.2f} mm, {WIDE}, {many([1.0, 2.0]):.0%}" == "… mm, …, …"


def test_a_pick_is_as_small_as_it_can_be():
    assert pick([2.0, 2.0, 2.0]) == 2.0
    assert type(pick([2.0, 2.0])) is float
    assert pick(np.ones((3, 1)) * [1.0, 2.0]).shape == (1, 2)
