"""A sweep of the honey-house bench, worked by hand. [mm unless it says in]"""

from __future__ import annotations

import attrs
import numpy as np
import pytest
from designs import plain_bench as bench
from designs import plain_rack as rack
from samples import SAMPLES

from benchjoin import Butt, Notch, Range, Stock, alter, cut_list, lay_out
from benchjoin.errors import AddressError, BenchjoinError, LumberError
from benchjoin.layout.keeping import keep
from benchjoin.sweep import sweep
from benchjoin.sweep.outputs import Item, Output

INCH = 25.4
FRONT_BENCH = ("front left leg", "bench/front rail", "bottom")


def test_a_grid_is_combined_with_all_and_its_arrays_are_named():
    # by hand: the bench's top is flush with the leg's at 35 1/2, so its bottom is 35 1/2 less the rail; its three other
    # rails stay 3 1/2, so that with a front rail of 3 1/4 the band is 3 1/2 and starts at 32 3/8 of what is left above
    swept = sweep(bench, {"length": ["48 in", "57 in", "66 in"], "bench.front.width": ["3 1/2 in", "4 in"]})
    assert swept.shape == (3, 2)
    assert dict(swept.axes) == {"length": ("48 in", "57 in", "66 in"), "bench.front.width": ("3 1/2 in", "4 in")}
    np.testing.assert_allclose(swept["marks"][FRONT_BENCH], [[32 * INCH, 31.5 * INCH]] * 3, atol=1e-9)
    np.testing.assert_allclose(swept["lengths"]["bench/front rail"][:, 0], np.array([48, 57, 66]) * INCH, atol=1e-9)
    np.testing.assert_allclose(swept["lengths"]["bench/left rail"], 20.375 * INCH, atol=1e-9)  # 23 − 2 × 1 5/16
    assert swept.built.all()


def test_lists_that_go_together_are_one_axis():
    swept = sweep(bench, {"length": [1200, 1300], "depth": [500, 600]}, ["lengths"], together=True)
    assert swept.shape == (2,)
    assert list(swept.axes) == ["variant"]
    np.testing.assert_allclose(swept["lengths"]["bench/front rail"], [1200, 1300])
    np.testing.assert_allclose(swept["lengths"]["bench/left rail"], [500 - 2 * 33.3375, 600 - 2 * 33.3375])


def test_a_variant_that_cannot_be_built_is_nan_with_its_reason_and_spoils_no_other():
    # the legs alone take 2 × 3 1/4 in = 6 1/2 in
    swept = sweep(bench, {"length": ["6 in", "57 in", -3, "57", "7 in"]})
    np.testing.assert_array_equal(swept.built, [False, True, False, False, True])
    assert np.isnan(swept["marks"][FRONT_BENCH]).tolist() == [True, False, True, True, False]
    reasons = {reason: mask.tolist() for reason, mask in swept.reasons.items()}
    assert [True, False, False, False, False] in reasons.values()
    assert any("the legs alone take" in reason for reason in reasons)
    assert any(
        "says no unit" in reason and mask == [False, False, False, True, False] for reason, mask in reasons.items()
    )
    assert "the legs alone take 6 1/2 in, and 6 in" in swept.why(0)
    assert swept.why(1) == ""


@pytest.mark.parametrize("place", [(), (2,), (0, 0, 0), (0, 3), (-3, 0), ("57 in", 0), (None, 0), (0.0, 0), (True, 0)])
def test_a_place_that_is_not_there_is_answered_with_those_there_are(place):
    swept = sweep(bench, {"length": ["57 in", "60 in"], "depth": ["23 in", "24 in", "25 in"]}, ["marks"])
    for ask in (swept.why, swept.changes):
        with pytest.raises(AddressError, match="one number for each axis: 0 to 1 along length and 0 to 2 along depth"):
            ask(*place)
    assert swept.changes(-1, 2) == {"length": "60 in", "depth": "25 in"}
    assert swept.why(np.int64(1), 0) == ""


def test_a_stack_that_is_too_full_is_a_reason_too():
    # by hand: 7 + 4 1/4 = 11 1/4 below the bench, which starts at 32: a shelf 25 or more wide leaves no clear
    swept = sweep(bench, {"foot shelf.back.width": ["4 1/4 in", "24 3/4 in", "25 1/4 in"]}, ["marks"])
    assert swept.built.tolist() == [True, True, False]
    (reason,) = swept.reasons
    assert reason.startswith("Levels up from the foot, between the foot and")
    assert "1/4 in too much" in swept.why(2)


def test_what_is_no_number_makes_designs_of_its_own():
    swept = sweep(
        rack, {"tray 1.front.joint": [Butt(), Notch(), Notch(5)], "length": [900, 1000]}, ["marks", "lengths"]
    )
    # butted, the rail is 2 × 45 shorter, and its leg has no notch for it
    np.testing.assert_allclose(swept["lengths"]["tray 1/front rail"], [[810, 910], [900, 1000], [900, 1000]])
    marks = swept["marks"]["front left leg", "tray 1/front rail", "bottom"]
    assert np.isnan(marks).tolist() == [[True, True], [False, False], [False, False]]


def test_findings_are_masks_with_a_sentence():
    swept = sweep(bench, {"bench.front.width": ["3 1/2 in", "3 1/4 in"]}, ["findings"])
    found = {words: mask.tolist() for words, mask in swept["findings"].items()}
    # a narrower front rail is flush with the leg's top, and the end rails, which share its bottom, stand over it
    words = ("warning", "wider than the leg can take", "bench/left rail")
    assert found[words] == [False, True]
    assert "over the top of the front left leg" in swept["findings"].sentence(words)


def test_weights_are_volumes_by_the_density_of_the_stock():
    over = {"length": [1000, 1400]}
    volumes = sweep(bench, over, ["volumes"])["volumes"]["bench/front rail"]
    np.testing.assert_allclose(volumes, [1000 * 88.9 * 15.875, 1400 * 88.9 * 15.875])
    weights = sweep(bench, over, ["weights"], density=500)["weights"]["bench/front rail"]
    np.testing.assert_allclose(weights, volumes * 1e-9 * 500)
    named = {"larch 2x4, milled": 600, "larch 1x6, planed": 450}
    np.testing.assert_allclose(
        sweep(bench, over, ["weights"], density=named)["weights"]["bench/front rail"], volumes * 1e-9 * 450
    )
    with pytest.raises(LumberError, match=r"Write density=.*larch 2x4"):
        sweep(bench, over, ["weights"])


def test_a_notch_is_taken_off_the_volume():
    # by hand, a front leg: 33.3375 × 82.55 × 901.7, less two notches 15.875 deep, 69.85 and 88.9 high
    whole = 33.3375 * 82.55 * 901.7
    notches = 15.875 * 82.55 * (69.85 + 88.9)
    found = sweep(bench, {"length": [1400, 1500]}, ["volumes"])["volumes"]["front left leg"]
    np.testing.assert_allclose(found, whole - notches)


def test_an_output_of_your_own_is_one_function():
    def clear_of_the_floor(variant):
        for rail in variant.rails:
            yield Item((rail.identity,), rail.blank.low[2])

    mine = Output("clear of the floor", clear_of_the_floor, ("rail",), "mm")
    found = sweep(bench, {"bench.front.width": ["3 1/2 in", "4 in"]}, [mine])
    np.testing.assert_allclose(found["clear of the floor"]["bench/front rail"], [32 * INCH, 31.5 * INCH])


def test_only_one_piece_is_looked_at_as_if_it_were_made_alone():
    stool = SAMPLES["measured batch"]
    one, three = (
        sweep(stool, {"length": [400, 420]}, ["marks"], piece=piece)["marks"][
            "front left leg", "seat/front rail", "bottom"
        ]
        for piece in (1, 3)
    )
    for piece, found in ((1, one), (3, three)):
        expected = next(
            notch.bottom for notch in lay_out(stool).leg("front left", piece).notches if notch.rail == "seat/front rail"
        )
        np.testing.assert_allclose(found, expected)
    assert not np.allclose(one, three)


def test_finished_parts_stay_as_they_are_in_every_variant():
    kept = keep(lay_out(bench), "1/front left leg")
    found = sweep(kept, {"bench.front.width": ["3 1/2 in", "4 in"]}, ["marks", "findings"])
    np.testing.assert_allclose(found["marks"][FRONT_BENCH], 32 * INCH)
    np.testing.assert_allclose(
        found["marks"]["front right leg", "bench/front rail", "bottom"], [32 * INCH, 31.5 * INCH]
    )
    assert any(kind == "does not go in" and mask[1] for (_, kind, _), mask in found["findings"].items())


def test_a_size_on_the_wood_can_be_swept():
    found = sweep(bench, {"bench/front rail.width": [85.0, 88.9]}, ["marks"])["marks"][FRONT_BENCH]
    expected = [
        lay_out(alter(bench, {"bench/front rail.width": w})).leg("front left").notches[1].bottom for w in (85, 88.9)
    ]
    np.testing.assert_allclose(found, expected)


def test_numbers_that_never_differ_take_no_room():
    found = sweep(bench, {"length": np.linspace(1200, 1800, 1000)}, ["marks"])["marks"][FRONT_BENCH]
    assert found.shape == (1000,)
    assert found.strides == (0,)


REFUSED = {
    "no such address": ({"lenght": [1]}, {}, AddressError, "Did you mean 'length'"),
    "two reach the same": ({"front": [bench.front], "front.height": [1]}, {}, AddressError, "change the same value"),
    "no such output": ({"length": [1]}, {"want": ["marcs"]}, AddressError, "Choose from marks"),
    "no such piece": ({"length": [1]}, {"piece": 4}, AddressError, "quantity is 3"),
    "no list": ({"length": "57 in"}, {}, BenchjoinError, "Give a list of values"),
    "an empty list": ({"length": []}, {}, BenchjoinError, "Give a list of values"),
    "lists of two lengths": ({"length": [1, 2], "depth": [1]}, {"together": True}, BenchjoinError, "as many each"),
    "nothing to vary": ({}, {}, BenchjoinError, "its values"),
}


@pytest.mark.parametrize("over, more, kind, words", REFUSED.values(), ids=REFUSED)
def test_what_is_asked_wrongly_is_an_error_and_says_so(over, more, kind, words):
    with pytest.raises(kind, match=words):
        sweep(bench, over, **more)


def test_words_and_outputs_that_are_not_there_name_those_that_are():
    swept = sweep(bench, {"length": [1400]}, ["lengths"])
    with pytest.raises(AddressError, match="holds lengths"):
        swept["marks"]
    with pytest.raises(AddressError, match="not among the lengths"):
        swept["lengths"]["bench/frnt rail"]


def test_reprs_are_readable():
    swept = sweep(bench, {"length": [100, 1400]}, ["lengths"])
    assert repr(swept) == "<Sweep of Honey-house bench: 2 length; 1 cannot be built; lengths>"
    assert repr(swept["lengths"]) == "<10 lengths [mm] by rail>"


def test_a_check_that_needs_single_numbers_is_asked_one_variant_at_a_time(monkeypatch):
    def sizes(variant):
        for rail in variant.rails:
            yield Item((rail.identity,), float(rail.length))

    swept = sweep(bench, {"length": [1200.0, 1300.0, 50.0]}, [Output("sizes", sizes, ("rail",))])
    assert swept.one_by_one == 2
    np.testing.assert_allclose(swept["sizes"]["bench/front rail"], [1200, 1300, np.nan])


def test_data_frames_have_a_row_for_each_variant_and_columns_by_words():
    pandas = pytest.importorskip("pandas")
    swept = sweep(bench, {"length": ["48 in", "57 in"], "bench.front.width": ["3 1/2 in", "4 in"]}, ["marks"])
    frame = swept.to_pandas("marks")
    assert isinstance(frame, pandas.DataFrame)
    assert frame.index.names == ["length", "bench.front.width"]
    assert frame.columns.names == ["host", "guest", "edge"]
    assert frame.loc[(57 * INCH, 4 * INCH), FRONT_BENCH] == pytest.approx(31.5 * INCH)
    assert frame.attrs["units"] == "mm"


def test_a_sweep_has_dims_coords_keys_and_is_asked_by_value():
    swept = sweep(
        bench, {"length": ["48 in", "57 in"], "bench.front.width": Range("3 1/2 in", "4 in", "1/4 in")}, ["marks"]
    )
    assert swept.dims == ("length", "bench.front.width")
    np.testing.assert_allclose(swept.coords["bench.front.width"], [3.5 * INCH, 3.75 * INCH, 4 * INCH])
    assert swept.keys() == ("marks",)
    found = swept.sel(**{"bench.front.width": "4 in"})["marks"][FRONT_BENCH]
    np.testing.assert_allclose(found, [31.5 * INCH] * 2)
    with pytest.raises(AddressError, match="is no axis"):
        swept.sel(depth=500)
    dataset = swept.to_xarray("marks")
    name = ", ".join(FRONT_BENCH)
    assert float(dataset[name].sel({"length": 57 * INCH, "bench.front.width": 4 * INCH})) == pytest.approx(31.5 * INCH)
    assert dataset[name].attrs["units"] == "mm"


def test_words_of_an_axis_stay_words():
    swept = sweep(bench, {"corners": ["front through", "ends through"]}, ["lengths"])
    assert swept.coords["corners"].tolist() == ["front through", "ends through"]
    found = swept.sel(corners="ends through")["lengths"]
    assert found[("bench/left rail",)] == swept["lengths"]["bench/left rail"][1]
    with pytest.raises(AddressError):
        swept.sel(corners="round")


def test_an_output_of_ones_own_is_a_plain_function():
    def clear(variant):
        """Room between the shelf and the bench, on the front left leg. [mm]"""
        below, above = variant.parts["foot shelf/front rail"], variant.parts["bench/front rail"]
        yield Item(("front",), above.blank.low[2] - below.blank.high[2])

    swept = sweep(bench, {"bench.front.width": ["3 1/2 in", "4 in"]}, [Output("room", clear, ("where",), "mm")])
    room = swept["room"]["front"]
    assert room[0] - room[1] == pytest.approx(0.5 * INCH)


def test_tables_are_numbers_with_their_units_and_readings_beside_them():
    pytest.importorskip("pandas")
    found = cut_list(lay_out(bench)).to_pandas()
    rail = found[found["Part"].str.contains("front")].iloc[-1]
    assert rail["Length [mm]"] == pytest.approx(57 * INCH)
    assert rail["Length (in)"] == "57"
    assert found.attrs["units"]["Width [mm]"] == "mm"
    assert found["Length [mm]"].dtype.kind == "f"


def test_a_plot_names_its_lines_at_their_ends_and_refuses_too_many():
    pytest.importorskip("matplotlib").use("Agg")
    import matplotlib.pyplot as plt

    swept = sweep(bench, {"bench.front.width": ["3 in", "4 in"]}, ["marks"])
    own = swept.plot("marks", FRONT_BENCH)
    assert own.get_legend() is None
    assert [text.get_text() for text in own.texts] == [", ".join(FRONT_BENCH)]
    with pytest.raises(AddressError, match="too many"):
        swept.plot("marks")
    plt.close("all")


def test_a_plot_has_a_line_for_each_number_and_place():
    matplotlib = pytest.importorskip("matplotlib")
    matplotlib.use("Agg")
    import matplotlib.pyplot as plt

    swept = sweep(bench, {"bench.front.width": ["3 in", "4 in"], "depth": ["20 in", "23 in"]}, ["marks"])
    own = swept.plot("marks", FRONT_BENCH)
    assert [line.get_label() for line in own.lines] == [f"{', '.join(FRONT_BENCH)}; depth {d} in" for d in (20, 23)]
    np.testing.assert_allclose(own.lines[0].get_xdata(), [3 * INCH, 4 * INCH])
    np.testing.assert_allclose(own.lines[0].get_ydata(), [32.5 * INCH, 31.5 * INCH])
    plt.close("all")


def test_stock_may_vary_as_a_whole():
    thin = Stock("larch 1x6, thin", thickness="1/2 in")
    found = sweep(bench, {"rail_stock": [bench.rail_stock, thin]}, ["volumes"])["volumes"]["bench/front rail"]
    np.testing.assert_allclose(found[1] / found[0], 0.5 / 0.625)


def test_blocks_smaller_than_the_sweep_give_the_same(monkeypatch):
    over = {"length": np.linspace(100, 1800, 40), "bench.front.width": np.linspace(60, 95, 11)}
    whole = sweep(bench, over, ["marks", "lengths", "findings"])
    monkeypatch.setattr("benchjoin.sweep.blocks.SIZE", 37)
    parts = sweep(bench, over, ["marks", "lengths", "findings"])
    together = {
        name: np.tile(values, 40) if name != "length" else np.repeat(values, 11) for name, values in over.items()
    }
    listed = sweep(bench, together, ["marks", "lengths", "findings"], together=True)
    for name in ("marks", "lengths", "findings"):
        assert set(whole[name]) == set(parts[name]) == set(listed[name])
        for words, array in whole[name].items():
            np.testing.assert_array_equal(parts[name][words], array)
            np.testing.assert_allclose(listed[name][words].reshape(array.shape), array, rtol=1e-12)
    np.testing.assert_array_equal(whole.built, parts.built)


def test_a_frame_is_not_changed_by_a_sweep():
    before = attrs.evolve(bench)
    sweep(bench, {"length": [1200, 1300], "bench/front rail.width": [80, 81]}, ["findings"])
    assert bench == before
