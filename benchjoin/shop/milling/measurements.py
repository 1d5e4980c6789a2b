"""Measurements: the list of sizes that the milling plan writes, filled in at the bench and read back.

The headings carry the unit, a blank cell keeps what the design has. Figures are decimal numbers or fractions in that
unit: 82.4, 3 7/16. A list that a spreadsheet saved with semicolons or tabs, decimal commas and a byte-order mark is
read as it is meant; whatever cannot be read for certain is refused, every fault by its line and column.

    bench = read_measurements(Path("sizes.csv"), bench)
"""

from __future__ import annotations

import difflib
import re
from pathlib import Path

from ...errors import LengthError, MeasurementError, typed
from ...frame.address import alter
from ...frame.frame import Frame, must_be_a_frame
from ...frame.identity import piece_of, plain
from ...layout.counting import counted
from ...layout.placing.sizes import best_known
from ...lengths import mm
from ...readings import Tape
from .size_list import PART, SIZES, UNITS, Cell, CellFault, read_list, refuse

SLIP = 2.0
"""A size so many times as large or as small as drawn is taken for a slip: of the unit, or of the column."""

_FIGURES = re.compile(
    r"(?P<figures>(?:\d+(?:\s*-\s*|\s+))?\d+/\d+|\d*[.,]?\d+)\s*(?P<unit>mm|cm|in|\")?", re.IGNORECASE | re.ASCII
)


def read_measurements(source: str | Path, frame: Frame) -> Frame:
    """A new frame with the sizes that were found on the wood.

    Parameters
    ----------
    source : str or Path
        The list as text, or the file that holds it.
    frame : Frame
        The design that the list was written for.

    Raises
    ------
    MeasurementError
        With every fault of the list by line and column: a column or unit that is missing, units that are mixed, text or
        nothing where a size is asked for, a size more than twice or less than half as drawn, a part that is not in the
        design or stands there twice, another size for a part that is sized, marked or cut than it was kept at.

    Notes
    -----
    A list may be older than what was done since. For a part that is finished a size that agrees with the kept one, to a
    hair of the tape, changes nothing; another one is a fault, since it is more likely a slip than wood that moved. A
    row without a piece holds for the pieces that are still to be made, and a finding names those that do not take it.
    """
    must_be_a_frame(frame, "read_measurements")
    frame = counted(frame)
    found = read_list(_text(source))
    faults = list(found.faults)
    changes: dict[str, float] = {}
    signs: set[str] = set()
    lines: dict[str, int] = {}
    drawn = {slot.name: slot for slot in frame.slots()}
    for line, cells in found.rows:
        sizes = {name: _size(cells[name], found.commas, signs) for name in SIZES if name in cells}
        faults += [size for size in sizes.values() if isinstance(size, CellFault)]
        if PART not in cells:
            if sizes:
                faults.append(Cell(line, found.part, "").fault("a size without a part. Write which part it is of."))
            continue
        part = _part(cells[PART], frame, lines)
        if isinstance(part, CellFault):
            faults.append(part)
            continue
        for name, size in sizes.items():
            field = name.rpartition(" ")[2]
            if isinstance(size, float):
                expected = getattr(drawn[piece_of(part)[1]], field)
                faults += _slips(cells[name], size, expected, field, frame.tape)
                if part in frame.finished:
                    faults += _kept(cells[name], size, part, field, frame)
                else:
                    changes[f"{part}.{field}"] = size
    refuse(faults)
    return alter(frame, changes)


def _text(source: str | Path) -> str:
    """The list itself: text with more than one line, or what a file holds."""
    if isinstance(source, str) and ("\n" in source or "\r" in source or not source.strip("\ufeff \t")):
        return source
    try:
        return Path(source).read_bytes().decode("utf-8-sig")
    except UnicodeDecodeError:
        raise MeasurementError(f"{typed(str(source))} is not text in UTF-8. Save it as CSV in UTF-8.") from None
    except (OSError, ValueError, TypeError) as error:
        raise MeasurementError(
            f"{typed(str(source))} is neither a list of sizes nor a file that holds one: {error}."
        ) from None


def _part(cell: Cell, frame: Frame, lines: dict[str, int]) -> str | CellFault:
    """The part that a cell names; lines keeps where each one stood first."""
    part = plain(cell.text)
    piece, identity = piece_of(part)
    names = frame.part_names()
    if identity not in names:
        near = difflib.get_close_matches(identity, names, n=3, cutoff=0.4) or list(names[:3])
        return cell.fault(f"{typed(cell.text)} is no part of {frame.name}. Is it {' or '.join(map(repr, near))}?")
    if piece is not None and not 1 <= piece <= frame.quantity:
        return cell.fault(f"{typed(cell.text)} is of piece {piece}, and the quantity is {frame.quantity}.")
    if part in lines:
        return cell.fault(f"{typed(cell.text)} stands on line {lines[part]} already. Keep one of the two.")
    lines[part] = cell.line
    return part


def _size(cell: Cell, commas: bool, signs: set[str]) -> float | CellFault:
    """The size in a cell [mm]; signs keeps the decimal sign that the list uses, once it is known."""
    read, words = _FIGURES.fullmatch(cell.text), UNITS[cell.column.unit]
    if read is None:
        return cell.fault(f"{typed(cell.text)} is no size. Write a number of {words}, or leave the cell blank.")
    unit = {'"': "in"}.get(read["unit"], read["unit"] or cell.column.unit).casefold()
    if unit != cell.column.unit:
        return cell.fault(f"{typed(cell.text)} mixes units: the column is in {words}.")
    figures = read["figures"]
    if "," in figures and not commas:
        return cell.fault(f"{typed(cell.text)} has a comma in a list that commas part. Write a decimal point.")
    signs.update(sign for sign in ".," if sign in figures and not signs)
    if any(sign in figures for sign in ".," if sign not in signs):
        return cell.fault(f"{typed(cell.text)}: the list has decimal points and decimal commas. Use one of them.")
    try:
        return mm(f"{figures.replace(',', '.')} {unit}", what="a size")
    except LengthError:
        return cell.fault(f"{typed(cell.text)} is no size of wood. Write a number of {words}, or leave the cell blank.")


def _kept(cell: Cell, size: float, part: str, field: str, frame: Frame) -> list[CellFault]:
    """Another size of a finished part than it was kept at."""
    piece, identity = piece_of(part)
    slot = next(slot for slot in frame.slots() if slot.name == identity)
    kept = best_known(frame, slot, piece or 1)[field]
    if abs(size - kept) <= frame.tape.hair:
        return []
    say = frame.tape.say
    what = (
        f"{say(size)} for the {field} of {part}, which is {frame.finished[part].state} and kept at {say(kept)}. Leave "
        f'the cell blank; or, if it measures that by now, say so by its name: alter(frame, {{"{part}.{field}": …}}).'
    )
    return [cell.fault(what)]


def _slips(cell: Cell, size: float, drawn: float, field: str, tape: Tape) -> list[CellFault]:
    """A size that is far from the drawn one."""
    if drawn / SLIP <= size <= drawn * SLIP:
        return []
    what = (
        f"{tape.say(size)} for a {field} drawn at {tape.say(drawn)}: is it the wrong unit or column? If the wood is "
        "another, change the design."
    )
    return [cell.fault(what)]
