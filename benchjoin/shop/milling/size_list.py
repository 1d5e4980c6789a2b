"""A list of sizes as text: its columns found by their headings, its cells with line and column.

Whoever reads measurements hands the text in and gets rows of cells that hold something. Commas, semicolons and tabs
part the columns, whichever the headings are parted by; a byte-order mark is no part of the text.
"""

from __future__ import annotations

import csv
import difflib
import io
from collections.abc import Iterable, Mapping, Sequence

import attrs

from ... import cells
from ...errors import MeasurementError

PART = "part"
SIZES = ("measured thickness", "measured width")
"""Headings of the columns that are read, in lower case and without their unit."""
UNITS = {"mm": "mm", "cm": "cm", "in": "inches"}
"""Units by how headings write them, and how sentences do."""


@attrs.frozen
class CellFault:
    """One thing wrong in a list: line and column count from 1, heading is that of the column."""

    line: int
    column: int
    heading: str
    what: str

    def __str__(self) -> str:
        return f'line {self.line}, column {self.column} ("{self.heading}"): {self.what}'


@attrs.frozen
class Column:
    """A column: its place from 0, its heading as written, the name in it and the unit in it."""

    place: int
    heading: str
    name: str
    unit: str


@attrs.frozen
class Cell:
    """A cell with something in it."""

    line: int
    column: Column
    text: str

    def fault(self, what: str) -> CellFault:
        """A fault of this cell."""
        return CellFault(self.line, self.column.place + 1, self.column.heading, what)


@attrs.frozen
class SizeList:
    """A list of sizes: for each row its line and its cells by the name of the column, empty ones left out.

    commas says whether a comma in a number can only be a decimal comma; faults holds rows that do not fit the headings.
    """

    rows: tuple[tuple[int, Mapping[str, Cell]], ...]
    part: Column
    commas: bool
    faults: tuple[CellFault, ...]


def read_list(text: str) -> SizeList:
    """Read a list.

    Raises
    ------
    MeasurementError
        If there are no rows, quotes are not closed, a column or its unit is missing or there twice, or units are mixed.
    """
    text = text.removeprefix("\ufeff")
    first = next((line for line in text.splitlines() if line.strip()), "")
    sign = max(",;\t", key=first.count)
    lines = _lines(text, sign)
    columns, faults = _columns(*lines[0])
    refuse(faults)
    rows, extra = [], []
    for line, words in lines[1:]:
        filled = {
            column.name: Cell(line, column, cells.back(words[column.place].strip()))
            for column in columns.values()
            if column.place < len(words) and words[column.place].strip()
        }
        rows.append((line, filled))
        if any(word.strip() for word in words[len(lines[0][1]) :]):
            what = f"there are {len(words)} cells under {len(lines[0][1])} headings. Write decimals with a point."
            extra.append(CellFault(line, len(lines[0][1]) + 1, "", what))
    return SizeList(rows=tuple(rows), part=columns[PART], commas=sign != ",", faults=tuple(extra))


def refuse(faults: Iterable[CellFault]) -> None:
    """Raise one MeasurementError with every fault, if there is any."""
    found = tuple(sorted(faults, key=lambda fault: (fault.line, fault.column)))
    if found:
        told = "\n".join(f"  {fault}" for fault in found)
        first = found[0]
        raise MeasurementError(
            f"The list of sizes cannot be read as it stands:\n{told}",
            faults=found,
            line=first.line,
            column=first.column,
        )


def _lines(text: str, sign: str) -> list[tuple[int, list[str]]]:
    """Rows with the number of the line that each begins on; rows with nothing in them are left out."""
    reader = csv.reader(io.StringIO(text, newline=""), delimiter=sign, strict=True)
    rows: list[tuple[int, list[str]]] = []
    begin = 1
    try:
        for row in reader:
            if any(word.strip() for word in row):
                rows.append((begin, row))
            begin = reader.line_num + 1
    except csv.Error as error:
        refuse([CellFault(begin, 1, "", f"this is no row of a list: {error}.")])
    if not rows:
        refuse([CellFault(1, 1, "", "the list is empty. Write one with milling_plan(layout).csv().")])
    return rows


def _columns(line: int, words: Sequence[str]) -> tuple[dict[str, Column], list[CellFault]]:
    """Columns by name, and what is wrong with the headings."""
    columns: dict[str, Column] = {}
    faults: list[CellFault] = []
    for place, heading in enumerate(words):
        name, unit = cells.heading(heading)
        column = Column(place, heading.strip(), name, unit)
        if name in columns and name in (PART, *SIZES):
            faults.append(CellFault(line, place + 1, column.heading, f"column {columns[name].place + 1} is the same."))
        columns.setdefault(name, column)
    faults += [_missing(line, name, columns) for name in (PART, *SIZES) if name not in columns]
    faults += _unit_faults(line, columns)
    return columns, faults


def _missing(line: int, name: str, columns: Mapping[str, Column]) -> CellFault:
    strangers = [there for there in columns if there not in (PART, *SIZES)]
    near = difflib.get_close_matches(name, strangers, n=1, cutoff=0.8)
    unit = next((column.unit for column in columns.values() if column.unit in UNITS), "mm")
    wanted = name.capitalize() if name == PART else f"{name.capitalize()} ({unit})"
    if near:
        column = columns[near[0]]
        return CellFault(line, column.place + 1, column.heading, f'the heading should be "{wanted}".')
    return CellFault(line, len(columns) + 1, "", f'the column "{wanted}" is missing.')


def _unit_faults(line: int, columns: Mapping[str, Column]) -> list[CellFault]:
    faults: list[CellFault] = []
    sized = [column for name, column in columns.items() if name in SIZES]
    for column in sized:
        if column.unit not in UNITS:
            what = "says no unit that is known. Write (mm), (cm) or (in) behind it."
            faults.append(CellFault(line, column.place + 1, column.heading, what))
    known = [column for column in columns.values() if column.unit in UNITS]
    for column in known[1:]:
        if column.unit != known[0].unit:
            what = f'units are mixed: "{known[0].heading}" is in {UNITS[known[0].unit]}. Use one unit for all.'
            faults.append(CellFault(line, column.place + 1, column.heading, what))
    return faults
