"""Next year's bench, and the record of this year's."""

import attrs
import pytest
from designs import plain_bench as bench
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from strategies import frames

from benchjoin import again, alter, keep, lay_out
from benchjoin.errors import AddressError, DesignFileError
from benchjoin.shop.record import read_record, record


def used():
    """The bench after a season: a rail measured, two legs cut, stock milled thinner."""
    milled = alter(bench, {"rail_stock.thickness": "19/32 in", "2/hook rail/back rail.width": "3 7/16 in"})
    return keep(lay_out(milled), "1/front left leg", "2/back left leg")


def test_the_next_one_begins_with_the_design_and_fresh_wood():
    later = again(used(), {"length": "72 in", "quantity": 1}, name="Long bench")
    assert (later.name, later.length, later.quantity) == ("Long bench", 1828.8, 1)
    assert later.measured == {}
    assert later.finished == {}
    assert later.rail_stock.thickness == used().rail_stock.thickness
    assert later.stack == bench.stack
    assert lay_out(later).findings == ()


def test_without_changes_it_is_the_same_design():
    assert again(used()) == alter(bench, {"rail_stock.thickness": "19/32 in"})
    assert again(bench) == bench


def test_what_is_no_frame_is_refused():
    with pytest.raises(AddressError, match=r"Of a layout it is layout\.frame"):
        again(lay_out(bench))


def test_a_record_reads_back_as_it_was_written(tmp_path):
    layout = lay_out(used())
    kept = record(layout, built="spring", hours=41.5, cost='214 "all in"', went_wrong=["B2 split", "glue \\ cold"])
    path = tmp_path / "bench.toml"
    path.write_text(kept.text(), encoding="utf-8")
    assert read_record(path) == kept == read_record(kept.text())
    assert kept.parts["2/hook rail/back rail"] == (1447.8, 87.312, 15.081)
    assert kept.frame.finished == layout.frame.finished
    assert repr(kept) == "<Record of Honey-house bench: 42 parts, spring>"


def test_little_need_be_said():
    kept = record(lay_out(bench))
    assert read_record(kept.text()) == kept
    assert (kept.hours, kept.cost, kept.went_wrong) == (None, "", ())


@settings(suppress_health_check=[HealthCheck.too_slow], max_examples=25)
@given(frames(), st.lists(st.text(st.characters(codec="utf-8", exclude_categories=["C"]), max_size=30)))
def test_any_frame_and_any_words_read_back(frame, words):
    kept = record(lay_out(frame), went_wrong=words)
    assert read_record(kept.text()) == attrs.evolve(kept, went_wrong=tuple(words))


@pytest.mark.parametrize(
    "spoil, said",
    [
        (lambda text: text.replace("[built]", "[other]"), "it has no table"),
        (lambda text: text.replace('"1/front left leg" = [', '"1/front left leg" = [1.0, '), "does not read"),
        (lambda text: text.replace("hours = 3.0", "hours = 'long'"), "does not read"),
        (lambda text: text.replace('name = "Honey-house bench"\n', ""), "does not describe a frame"),
    ],
)
def test_a_record_that_does_not_read_says_why(spoil, said):
    text = record(lay_out(bench), hours=3).text()
    assert spoil(text) != text
    with pytest.raises(DesignFileError, match=said):
        read_record(spoil(text))
