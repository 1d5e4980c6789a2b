"""Rules of the accumulator, each with many runs that try to break it."""

from __future__ import annotations

import itertools

import numpy as np
import pytest
from exact_runs import runs
from hypothesis import given, settings
from hypothesis import strategies as st

from benchjoin.errors import RunError, RunMismatch
from benchjoin.readings import Tape
from benchjoin.runs import Member, Pin, edges, lay_run

BATCHES = st.integers(1, 7).flatmap(lambda count: st.lists(runs(count=count), min_size=1, max_size=6))


def laid(run):
    sizes, given_ = run.given()
    return edges(sizes, **given_)


def batch(many):
    """Many runs of one length as one call, with the shares, steps and pinned edges of the first."""
    first = many[0]
    sizes = np.array([run.given()[0] for run in many])
    pins = {}
    for edge in first.pins:
        pins[edge] = np.array([float(run.pins.get(edge, first.pins[edge])) for run in many])
    return sizes, {**first.given()[1], "pins": pins}


def of_rows(sizes, given_, rows):
    """The same call for some of the rows, or for one."""
    return sizes[rows], {**given_, "pins": {edge: at[rows] for edge, at in given_["pins"].items()}}


class TestWhatARunKeeps:
    """design, rules of layout 1: "A run is members and clears in order … sizes, known or open (with a share), edges
    free or pinned. Open sizes between two pins share what is left. … A run need not close." """

    @given(runs())
    def test_the_datum_is_at_zero_wherever_the_first_room_comes_out(self, run):
        assert laid(run)[0] == 0 or np.isnan(laid(run)).all()

    @given(runs(spoiled=False))
    def test_pins_hold_exactly_wherever_the_run_comes_out(self, run):
        found = laid(run)
        for edge, at in run.pins.items():
            assert np.isnan(found[edge]) or found[edge] == float(at)

    @given(runs())
    def test_known_sizes_are_kept(self, run):
        for size, found in zip(run.sizes, np.diff(laid(run)), strict=True):
            assert size is None or np.isnan(found) or found == pytest.approx(float(size), abs=2e-6)

    @given(runs())
    def test_open_sizes_between_two_pins_share_what_is_left(self, run):
        found = np.diff(laid(run))
        stops = sorted({0, *run.pins})
        for lower, upper in itertools.pairwise(stops):
            each = [
                (found[n] + float(run.less[n])) / float(run.shares[n])
                for n in range(lower, upper)
                if run.sizes[n] is None and not np.isnan(found[n])
            ]
            assert each == pytest.approx([sum(each) / max(len(each), 1)] * len(each), abs=1e-9)

    @given(runs())
    def test_edges_never_fall(self, run):
        steps = np.diff(laid(run))
        assert (steps[~np.isnan(steps)] >= -1e-6).all()

    @given(runs())
    def test_what_is_not_known_stays_unknown_to_the_end(self, run):
        missing = np.isnan(laid(run))
        assert (np.diff(missing.astype(int)) >= 0).all()

    @given(runs(), st.randoms(use_true_random=False))
    def test_the_order_of_pins_in_the_mapping_has_no_meaning(self, run, random):
        sizes, given_ = run.given()
        items = list(given_["pins"].items())
        random.shuffle(items)
        np.testing.assert_array_equal(edges(sizes, **{**given_, "pins": dict(items)}), laid(run))


class TestARunIsTheSameCodeForOneAndForMany:
    """design, rules of layout 1: "It works on arrays: every size may carry leading axes of variants"; and floors:
    "an impossible variant gives NaN and a mask"."""

    @given(BATCHES)
    def test_each_row_of_a_batch_is_the_single_run(self, many):
        sizes, given_ = batch(many)
        found = edges(sizes, **given_)
        for row in range(len(many)):
            one, with_ = of_rows(sizes, given_, row)
            np.testing.assert_array_equal(found[row], edges(one, **with_))

    @given(BATCHES, st.randoms(use_true_random=False))
    def test_rows_in_another_order_give_results_in_that_order(self, many, random):
        sizes, given_ = batch(many)
        order = list(range(len(many)))
        random.shuffle(order)
        turned, with_ = of_rows(sizes, given_, np.array(order))
        np.testing.assert_array_equal(edges(turned, **with_), edges(sizes, **given_)[order])

    @given(BATCHES)
    def test_an_impossible_row_spoils_no_other(self, many):
        sizes, given_ = batch(many)
        hopeless = {**given_, "pins": {edge: np.append(at, -1e4) for edge, at in given_["pins"].items()}}
        found = edges(np.concatenate([sizes, np.full((1, sizes.shape[1]), 500.0)]), **hopeless)
        np.testing.assert_array_equal(found[:-1], edges(sizes, **given_))
        assert not given_["pins"] or np.isnan(found[-1]).all()


class TestTheDoorOfARun:
    """runs: "`lay_run` is the door for runs that must come out, with the names that its errors need"."""

    @settings(max_examples=150)
    @given(runs())
    def test_a_run_at_the_door_comes_out_as_the_plain_one_or_names_what_is_wrong(self, run):
        members = [
            Member(name=f"m{n}", size=None if size is None else float(size), share=float(share), less=float(step))
            for n, (size, share, step) in enumerate(zip(run.sizes, run.shares, run.less, strict=True))
        ]
        pins = [Pin(edge=edge, at=float(at), name=f"pin {edge}") for edge, at in run.pins.items()]
        plain = laid(run)
        sound = not np.isnan(plain[[0, *run.pins]]).any()
        if sound:
            np.testing.assert_array_equal(lay_run("run", members, pins, Tape("1 mm")), plain)
            return
        with pytest.raises(RunError) as caught:
            lay_run("run", members, pins, Tape("1 mm"))
        error, sentence = caught.value, str(caught.value)
        assert sentence.startswith(error.run)
        assert error.lower_pin in sentence
        assert error.upper_pin in sentence
        assert error.over < -1e-6 if isinstance(error, RunMismatch) else error.over > 1e-6
        if "between" in sentence:
            first = np.flatnonzero(np.isnan(plain))[0]
            assert error.lower_pin == ("the foot" if first == 0 else f"pin {first}")
