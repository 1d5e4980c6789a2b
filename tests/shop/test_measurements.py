"""The list of sizes: written by the milling plan, filled in at the bench, read back."""

from __future__ import annotations

import csv
import io
import random

import attrs
import pytest
from designs import plain_bench as bench
from designs import plain_rack as rack
from hypothesis import given
from hypothesis import strategies as st
from samples import SAMPLES

from benchjoin import alter, lay_out, milling_plan, read_measurements
from benchjoin.errors import MeasurementError
from benchjoin.layout.moved import what_moved

DESIGNS = {"bench": bench, "rack": rack, **SAMPLES}
BENCH = milling_plan(lay_out(bench)).csv()
RACK = milling_plan(lay_out(rack)).csv()
SMALL = alter(rack, {"quantity": 2})


def rows_of(text):
    return list(csv.reader(io.StringIO(text, newline="")))


def written(rows, sign=","):
    out = io.StringIO(newline="")
    csv.writer(out, delimiter=sign).writerows(rows)
    return out.getvalue()


def filled(text, sizes, sign=","):
    """The list with measured cells filled in: {part: (thickness, width)}, as typed."""
    rows = rows_of(text)
    for row in rows[1:]:
        row[5:] = sizes.get(row[0], ("", ""))
    return written(rows, sign)


def faults(text, frame=bench):
    with pytest.raises(MeasurementError) as caught:
        read_measurements(text, frame)
    for fault in caught.value.faults:
        assert f"line {fault.line}, column {fault.column}" in str(caught.value)
    assert (caught.value.line, caught.value.column) == (caught.value.faults[0].line, caught.value.faults[0].column)
    return [(fault.line, fault.column) for fault in caught.value.faults], str(caught.value)


# --- there and back ---


def sizes_of(layout):
    return {part.name: (part.thickness, part.width) for part in layout.parts}


def near(sizes):
    return {name: pytest.approx(two, abs=1e-6) for name, two in sizes.items()}


@pytest.mark.parametrize("name", DESIGNS)
def test_a_list_that_was_not_filled_in_changes_nothing(name):
    frame = DESIGNS[name]
    layout = lay_out(frame)
    again = read_measurements(milling_plan(layout).csv(), frame)
    assert sizes_of(lay_out(again)) == near(sizes_of(layout))
    assert frame.measured or again == frame


OWN = [name for name in DESIGNS if name != "by end rails"]
"""Designs whose rails may each keep their own size; end rails that give the depth must be of one length."""


def filled_at_random(frame, seed):
    """A list with most cells filled in with invented sizes, and the sizes that the parts have on the wood."""
    rng, unit = random.Random(seed), 25.4 if frame.tape.unit == "in" else 1.0
    rows, wood = rows_of(milling_plan(lay_out(frame)).csv()), {}
    runs = [(slot.name, getattr(slot.of, "remainder", "")) for slot in lay_out(frame).frame.carried()]
    ripped = {name for name, remainder in runs if remainder in ("rip", "back", "both")}
    for row in rows[1:]:
        always = row[0].partition("/")[2] in ripped  # it follows the others until it is measured
        kept = [float(before or drawn) * unit for drawn, before in zip(row[3:5], row[5:], strict=True)]
        found = [size * rng.uniform(0.985, 1.0) if rng.random() < 0.7 or always else None for size in kept]
        row[5:] = ["" if size is None else f"{size / unit:.12g}" for size in found]
        wood[row[0]] = tuple(old if new is None else new for old, new in zip(kept, found, strict=True))
    return written(rows), wood


@pytest.mark.parametrize("name", OWN)
def test_what_is_written_in_is_what_the_parts_measure_afterwards(name):
    frame = attrs.evolve(DESIGNS[name], uneven="own")
    text, wood = filled_at_random(frame, name)
    relaid = lay_out(read_measurements(text, frame))
    assert sizes_of(relaid) == near({part: tuple(sorted(two)) for part, two in wood.items()})


@pytest.mark.parametrize("name", OWN)
def test_what_moved_is_what_a_comparison_of_the_two_layouts_finds(name):
    """Lengths and sections that differ by more than the hair, part by part, compared without the report."""
    frame = DESIGNS[name]
    before = lay_out(frame)
    after = lay_out(read_measurements(filled_at_random(frame, name)[0], frame))
    told = {(change.part, change.what) for change in what_moved(before, after).changes}
    for what in ("length", "width", "thickness"):
        for part in before.parts:
            differs = abs(getattr(after.part(part.name), what) - getattr(part, what)) > frame.tape.hair
            assert differs == bool({(part.name, what), (part.identity, what)} & told), (part.name, what)


def test_rails_of_a_level_that_were_drawn_alike_are_sized_to_the_narrowest():
    text = filled(RACK, {"1/tray 1/front rail": ("", "44.2"), "1/tray 1/left rail": ("", "43.9")})
    layout = lay_out(read_measurements(text, rack))
    widths = [part.width for part in layout.parts if part.level == "tray 1"]
    assert widths == pytest.approx([43.9] * len(widths))


def test_a_direct_change_and_the_list_give_the_same_frame():
    told = filled(BENCH, {"2/back left leg": ("1.3", "3.2"), "1/bench/front rail": ("", "3 7/16")})
    direct = alter(bench, {"2/back left leg.size": ("1.3 in", "3.2 in"), "1/bench/front rail.width": "3 7/16 in"})
    assert read_measurements(told, bench) == direct
    assert lay_out(direct).findings == lay_out(read_measurements(told, bench)).findings


def test_a_second_list_keeps_what_the_first_one_said():
    once = read_measurements(filled(RACK, {"1/front left leg": ("44.2", "44.4")}), rack)
    again = milling_plan(lay_out(once)).csv()
    assert "1/front left leg,A1,1,45,45,44.2,44.4" in again
    assert read_measurements(again, once) == once
    only = filled(again, {"1/front left leg": ("", "44.1")})
    assert read_measurements(only, once).measured["1/front left leg"] == {"thickness": 44.2, "width": 44.1}


def test_a_part_without_a_piece_means_all_of_them():
    text = "Part,Measured thickness (mm),Measured width (mm)\nfront left leg,44,\n2/front left leg,,43.5\n"
    found = read_measurements(text, SMALL).measured
    assert found == {"front left leg": {"thickness": 44}, "2/front left leg": {"width": 43.5}}


def test_a_list_comes_from_a_file_too(tmp_path):
    path = tmp_path / "sizes.csv"
    path.write_text("\ufeff" + filled(RACK, {"1/front left leg": ("44", "")}), encoding="utf-8")
    assert read_measurements(path, rack).measured == read_measurements(str(path), rack).measured
    assert read_measurements(path, rack).measured == {"1/front left leg": {"thickness": 44}}


# --- read as it is meant ---

MEANT = {"1/front left leg": {"thickness": 44.25, "width": 44.5}, "1/back right leg": {"width": 45.5}}
SIZES = {"1/front left leg": ("44.25", "44.5"), "1/back right leg": ("", "45.5")}
COMMAS = {part: tuple(size.replace(".", ",") for size in sizes) for part, sizes in SIZES.items()}


@pytest.mark.parametrize(
    "text",
    [
        filled(RACK, SIZES),
        "\ufeff" + filled(RACK, SIZES),
        filled(RACK, SIZES, ";"),
        filled(RACK, SIZES, "\t"),
        "\ufeff" + filled(RACK, COMMAS, ";"),
        filled(RACK, COMMAS, "\t"),
        filled(RACK, SIZES).replace("\r\n", "\n"),
        filled(RACK, SIZES).replace("\r\n", "\r"),
        "\n\n" + filled(RACK, SIZES) + ",,,,,,\r\n\r\n",
        filled(RACK, SIZES).replace("Measured width (mm)", " measured  WIDTH [MM]"),
        filled(RACK, {part: tuple(f" {size} mm" if size else "" for size in two) for part, two in SIZES.items()}),
        written([row[::-1] for row in rows_of(filled(RACK, SIZES))]),
        written([[row[0], *row[5:], "a note"] for row in rows_of(filled(RACK, SIZES))]),
        "\r\n".join(line.rstrip(",") for line in filled(RACK, SIZES).split("\r\n")),
    ],
)
def test_however_a_spreadsheet_saved_it_the_list_is_read_as_it_is_meant(text):
    assert read_measurements(text, rack).measured == MEANT


def test_centimetres_and_fractions_are_read_in_the_unit_of_the_heading():
    text = "Part,Measured thickness (cm),Measured width (cm)\nfront left leg,4.4,\n"
    assert read_measurements(text, rack).measured["front left leg"]["thickness"] == pytest.approx(44)
    text = 'Part,Measured thickness (in),Measured width (in)\nfront left leg,1-5/16,"3 3/16"""\n'
    assert read_measurements(text, bench).measured["front left leg"] == {"thickness": 33.3375, "width": 80.9625}


# --- refused, by line and column ---


def cell(line, column, word):
    """The list of the bench with one cell changed; lines and columns count from 1."""
    rows = rows_of(BENCH)
    rows[line - 1][column - 1] = word
    return written(rows)


@pytest.mark.parametrize(
    "column, word, told",
    [
        (6, "about", "no size"),
        (7, "3.2.1", "no size"),
        (6, "-1.3", "no size"),
        (6, "0", "no size of wood"),
        (7, "1/0", "no size of wood"),
        (6, "nan", "no size"),
        (6, "٣", "no size"),
        (7, "3,2", "decimal point"),
        (6, "33.1 mm", "mixes units"),
        (6, "33.1", "wrong unit or column"),
        (7, "1.3", "wrong unit or column"),
        (1, "1/bakc left leg", "back left leg"),
        (1, "4/back left leg", "quantity is 3"),
        (1, "0/back left leg", "quantity is 3"),
        (1, "2/front left leg", "line 6 already"),
    ],
)
def test_a_bad_cell_is_named_by_line_and_column(column, word, told):
    places, message = faults(cell(9, column, word))
    assert (places, told in message) == ([(9, column)], True), message


def test_all_faults_are_told_at_once():
    rows = rows_of(BENCH)
    rows[2][5], rows[4][6], rows[5][0] = "x", "y", "1/no leg"
    assert faults(written(rows))[0] == [(3, 6), (5, 7), (6, 1)]


def test_a_size_without_a_part_is_refused_and_an_empty_row_is_not():
    rows = rows_of(BENCH)
    rows[3] = ["", "", "", "", "", "1.3", ""]
    rows[5] = ["", "", "", "", "", "", ""]
    assert faults(written(rows))[0] == [(4, 1)]


@pytest.mark.parametrize("column, name", [(1, "Part"), (6, "Measured thickness (in)"), (7, "Measured width (in)")])
def test_a_missing_column_is_named(column, name):
    rows = [[word for n, word in enumerate(row, 1) if n != column] for row in rows_of(BENCH)]
    places, message = faults(written(rows))
    assert places == [(1, 7)]
    assert f'the column "{name}" is missing' in message


def test_a_misspelt_heading_is_named_where_it_stands():
    places, message = faults(BENCH.replace("Measured width (in)", "Mesured width (in)"))
    assert (places, 'should be "Measured width (in)"' in message) == ([(1, 7)], True)


def test_a_column_that_stands_there_twice_is_refused():
    assert faults(BENCH.replace("Mark", "Measured width (in)"))[0] == [(1, 7)]


@pytest.mark.parametrize(
    "before, after, places",
    [
        ("Measured width (in)", "Measured width", [(1, 7)]),
        ("Measured width (in)", "Measured width ()", [(1, 7)]),
        ("Measured width (in)", "Measured width (ft)", [(1, 7)]),
        ("Measured width (in)", "Measured width (mm)", [(1, 7)]),
        ("(in)", "", [(1, 6), (1, 7)]),
        ("Drawn width (in)", "Drawn width (mm)", [(1, 5)]),
    ],
)
def test_a_unit_that_is_missing_or_mixed_is_named(before, after, places):
    assert faults(BENCH.replace(before, after))[0] == places


def test_points_and_commas_in_one_list_are_refused():
    text = filled(RACK, {"1/front left leg": ("44.2", "44,3"), "1/front right leg": ("44", "44.5")}, ";")
    assert faults(text, rack)[0] == [(2, 7)]


def test_a_decimal_comma_that_parts_the_cells_is_refused():
    rows = rows_of(BENCH)
    rows[4][5:] = ["1", "3", "3", "2"]  # 1,3 and 3,2 typed into a list that commas part
    assert faults(written(rows))[0] == [(5, 8)]
    rows[4][5:] = ["", "3", "2"]  # 3,2
    assert faults(written(rows))[0] == [(5, 8)]


@pytest.mark.parametrize("text", ["", "\ufeff", "\n\n", " \n"])
def test_an_empty_list_is_refused(text):
    places, message = faults(text)
    assert (places, "milling_plan" in message) == ([(1, 1)], True)


def test_a_quote_that_is_not_closed_is_refused_where_it_begins():
    assert faults(BENCH.replace("2/back left leg", '"2/back left leg'))[0] == [(8, 1)]


@pytest.mark.parametrize("source", ["no such file.csv", "Part;Measured width (mm)", None, 5])
def test_what_is_neither_a_list_nor_a_file_is_refused(source):
    with pytest.raises(MeasurementError, match="neither a list of sizes nor a file"):
        read_measurements(source, bench)


def test_a_file_that_is_no_text_is_refused(tmp_path):
    path = tmp_path / "sizes.csv"
    path.write_bytes(BENCH.encode("utf-16"))
    with pytest.raises(MeasurementError, match="Save it as CSV in UTF-8"):
        read_measurements(path, bench)


@given(st.text(alphabet='Part,;\t\n\r"(mm)153. /leg', max_size=200))
def test_whatever_stands_in_a_list_it_is_read_or_refused_by_us(text):
    try:
        read_measurements(text + "\n", rack)
    except MeasurementError:
        return
    raise AssertionError("a list without its headings was read")
