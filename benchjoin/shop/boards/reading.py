"""Reading boards: the list that a maker writes down before the pile, one line a board or a defect.

Headings carry the unit. A line with a length begins a board; a line with a defect belongs to the board that it names,
or to the one above. Whatever cannot be read for certain is refused, every fault by its line and column.

    board, length (in), width (in), thickness (in), stock, count, price, defect, from (in), to (in), where, deep (in)
    rack 1, 144, 5 1/2, 1, , , , split, 0, 6, across,
    rack 1, , , , , , , knot, 40, 42, ,
"""

from __future__ import annotations

import csv
import io
from pathlib import Path
from typing import Any

import attrs

from ...cells import heading
from ...errors import BoardListError, DescriptionError, LengthError, typed
from ...lengths import mm
from .board import FLAWS, WHERE, Board, Defect

SIZES = ("length", "width", "thickness", "from", "to", "deep")
WORDS = ("board", "stock", "count", "price", "defect", "where")
UNITS = ("mm", "cm", "in")
LINES = 5000
"""A longer list is none that somebody wrote before a pile."""


@attrs.frozen
class Fault:
    """What is wrong in one cell: its line, its column, and what."""

    line: int
    column: str
    what: str

    def __str__(self) -> str:
        return f"line {self.line}, {self.column}: {self.what}"


def read_boards(source: str | Path) -> tuple[Board, ...]:
    """Boards from a list.

    Parameters
    ----------
    source : str or Path
        The list as text of several lines, or the file that holds it.

    Raises
    ------
    BoardListError
        With every fault by line and column: a column that is missing, unknown or there twice, a size that is none, a
        defect that is outside its board, two boards of one name.
    """
    lines = _lines(_text(source))
    headings, faults = _headings(lines[0][1] if lines else [])
    if faults or not headings:
        _refuse(faults or [Fault(1, "headings", "there are none. Write board, length (in), width (in) and so on.")])
    pile = _Pile(headings, faults)
    for number, cells in lines[1:]:
        pile.read(number, cells)
    found = [_made(name, pile.order[name], fields, faults) for name, fields in pile.boards.items()]
    if not found and not faults:
        faults.append(Fault(1, "list", "it holds no board. Write one line for each."))
    if faults:
        _refuse(faults)
    return tuple(board for board in found if board is not None)


@attrs.define
class _Pile:
    """What has been read so far: fields of boards by name, and the line of each."""

    headings: list[tuple[str, str]]
    faults: list[Fault]
    boards: dict[str, dict[str, Any]] = attrs.field(factory=dict)
    order: dict[str, int] = attrs.field(factory=dict)
    last: str = ""

    def read(self, line: int, cells: list[str]) -> None:
        """One line: a board, a defect, or both."""
        row = {name: cell.strip() for (name, _), cell in zip(self.headings, cells, strict=False)}
        if any(cell.strip() for cell in cells[len(self.headings) :]):
            self._tell(line, "line", "it has more cells than headings. Is a comma in a size? Quote it.")
        if not any(row.values()):
            return
        name = self.last = row.get("board") or self.last
        sizes = {key: _size(line, key, row, unit, self.faults) for key, unit in self.headings if key in SIZES}
        if not name:
            self._tell(line, "board", "it is blank, and no board is above. Write the board's name.")
        elif row.get("length") and name in self.boards:
            self._tell(line, "board", f"{typed(name)} stands on line {self.order[name]} already.")
        elif not row.get("length") and name not in self.boards:
            self._tell(line, "length", f"{typed(name)} has none yet. Write its length, width and thickness.")
        else:
            if row.get("length"):
                self.boards[name], self.order[name] = _board(line, name, row, sizes, self.faults), line
            if row.get("defect"):
                self.boards[name].setdefault("defects", []).append(_defect(line, row, sizes, self.faults))

    def _tell(self, line: int, column: str, what: str) -> None:
        self.faults.append(Fault(line, column, what))


def _text(source: str | Path) -> str:
    if isinstance(source, str) and ("\n" in source or not source.strip()):
        return source
    try:
        return Path(source).read_bytes().decode("utf-8-sig")
    except UnicodeDecodeError:
        raise BoardListError(f"{typed(str(source))} is not text in UTF-8. Save it as CSV in UTF-8.") from None
    except (OSError, ValueError, TypeError) as error:
        raise BoardListError(
            f"{typed(str(source))} is neither a list of boards nor a file with one: {error}."
        ) from None


def _lines(text: str) -> list[tuple[int, list[str]]]:
    text = text.removeprefix("\ufeff")
    first = text.partition("\n")[0]
    mark = max(",;\t", key=first.count)
    reader = csv.reader(io.StringIO(text, newline=""), delimiter=mark)
    try:
        found = [(reader.line_num, cells) for cells in reader if any(cell.strip() for cell in cells)]
    except csv.Error as error:
        raise BoardListError(f"line {reader.line_num}: {error}. Save the list as plain CSV.") from None
    if len(found) > LINES:
        raise BoardListError(f"The list has {len(found)} lines, and {LINES} are the most. Split it.")
    return found


def _headings(cells: list[str]) -> tuple[list[tuple[str, str]], list[Fault]]:
    """Name and unit of each column."""
    found: list[tuple[str, str]] = []
    faults: list[Fault] = []
    for cell in cells:
        name, unit = heading(cell)
        if name not in (*SIZES, *WORDS):
            faults.append(Fault(1, "headings", f"{typed(cell)} is no column. There are {', '.join((*WORDS, *SIZES))}."))
        elif name in SIZES and unit not in UNITS:
            faults.append(Fault(1, "headings", f'{typed(cell)} says no unit. Write "{name} (in)" or "{name} (mm)".'))
        elif name in [known for known, _ in found]:
            faults.append(Fault(1, "headings", f"{typed(cell)} stands there twice."))
        found.append((name, unit))
    missing = [name for name in ("board", "length", "width", "thickness") if name not in [known for known, _ in found]]
    if missing and not faults:
        faults.append(Fault(1, "headings", f"{', '.join(missing)} are missing. Write one column for each."))
    return found, faults


def _size(line: int, name: str, row: dict[str, str], unit: str, faults: list[Fault]) -> float | None:
    text = row.get(name, "")
    if not text:
        return None
    try:
        return mm(f"{text.replace(',', '.')} {unit}", zero=name in ("from", "deep"), what=name)
    except LengthError:
        faults.append(Fault(line, name, f"{typed(text)} is no size in {unit}. Write a number, such as 5 1/2 or 140."))
        return None


def _board(
    line: int, name: str, row: dict[str, str], sizes: dict[str, float | None], faults: list[Fault]
) -> dict[str, object]:
    fields: dict[str, object] = {key: sizes.get(key) for key in ("length", "width", "thickness")}
    for key, size in fields.items():
        if size is None and not row.get(key):
            faults.append(Fault(line, key, f"{typed(name)} has none. A board has length, width and thickness."))
    if row.get("stock"):
        fields["stock"] = row["stock"]
    for key, kind in (("count", int), ("price", float)):
        text = row.get(key, "")
        if text:
            try:
                fields[key] = kind(text.replace(",", "."))
            except ValueError:
                faults.append(Fault(line, key, f"{typed(text)} is no number."))
    return fields


def _defect(line: int, row: dict[str, str], sizes: dict[str, float | None], faults: list[Fault]) -> Defect | None:
    kind, where = row["defect"].lower(), row.get("where", "").lower() or "across"
    if kind not in FLAWS:
        faults.append(Fault(line, "defect", f"{typed(kind)} is none. Choose {', '.join(FLAWS)}."))
        return None
    if where not in WHERE:
        faults.append(Fault(line, "where", f"{typed(where)} is no place. Choose {', '.join(WHERE)}."))
        return None
    if sizes.get("from") is None or sizes.get("to") is None:
        faults.append(Fault(line, "from", f"a {kind} says from where to where. Write both."))
        return None
    try:
        return Defect(kind, sizes["from"], sizes["to"], where=where, deep=sizes.get("deep"))
    except DescriptionError as error:
        faults += [Fault(line, fault.field, fault.what) for fault in error.faults]
        return None


def _made(name: str, line: int, fields: dict[str, Any], faults: list[Fault]) -> Board | None:
    if any(fields.get(key) is None for key in ("length", "width", "thickness")) or None in fields.get("defects", ()):
        return None
    try:
        return Board(name, **fields)
    except DescriptionError as error:
        faults += [Fault(line, fault.field, fault.what) for fault in error.faults]
        return None


def _refuse(faults: list[Fault]) -> None:
    lines = "\n".join(f"  {fault}" for fault in sorted(faults, key=lambda fault: fault.line))
    raise BoardListError(f"The list of boards cannot be read:\n{lines}", faults=tuple(faults))
