"""The cut list: finished parts, like parts on one line, from the longest of each role to the shortest."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from ..frame.roles import rank
from ..layout.layout import Layout
from ..layout.parts import Part
from ..phrases import counted
from ..tables import Table

COLUMNS = ("Part", "Make", "Length", "Width", "Thick", "Stock", "Marks", "Note")


def cut_list(layout: Layout) -> Table:
    """Finished parts of all pieces, as a table that shows itself as text, Markdown, CSV and HTML.

    Parts of one kind (one turn in space lays them on each other, notches and all) share a line; sizes are readings
    of the design's tape.
    """
    unit = layout.frame.tape.unit
    kinds: dict[int, list[Part]] = {}
    for part in layout.parts:
        kinds.setdefault(part.kind, []).append(part)
    lines = sorted(kinds.values(), key=lambda parts: (rank(parts[0].slot.role), -parts[0].length, parts[0].kind))
    rows = tuple(_row(layout, parts) for parts in lines)
    columns = tuple(f"{name} ({unit})" if name in ("Length", "Width", "Thick") else name for name in COLUMNS)
    notes = (f"Finished sizes, read to {layout.frame.tape.name}. Add your own allowances for the saw and the planer.",)
    return Table(f"Cut list: {layout.frame.name}, make {layout.frame.quantity}", columns, rows, notes, "lrrrrlll")


def parts_table(layout: Layout) -> Table:
    """Kinds of parts by their item number, for the sheet that shows them in a picture."""
    unit, read = layout.frame.tape.unit, layout.frame.tape.read
    kinds: dict[int, list[Part]] = {}
    for part in layout.parts:
        kinds.setdefault(part.kind, []).append(part)
    rows = tuple(
        (
            str(kind),
            called(same) + (f", {same[0].handed} hand" if same[0].handed else ""),
            str(len(same)),
            *(read(size) for size in (same[0].length, same[0].width, same[0].thickness)),
        )
        for kind, same in sorted(kinds.items())
    )
    columns = ("Item", "Part", "Make", f"Length ({unit})", f"Width ({unit})", f"Thick ({unit})")
    return Table(f"Parts: {layout.frame.name}", columns, rows, (), "clrrrr")


def _row(layout: Layout, parts: Sequence[Part]) -> tuple[str, ...]:
    first, read = parts[0], layout.frame.tape.read
    return (
        called(parts),
        str(len(parts)),
        read(first.length),
        read(first.width),
        read(first.thickness),
        first.stock.name,
        marks(part.mark for part in parts),
        _note(first),
    )


def called(parts: Iterable[Part]) -> str:
    """What the parts are called: 'front and back leg', 'foot shelf, bench: end rail'."""
    levels: dict[str, list[str]] = {}
    for part in parts:
        side = "end" if part.side in ("left", "right") else part.side
        where = levels.setdefault(f"{side} {part.slot.role.word}".lstrip(), [])
        if part.level and part.level not in where:
            where.append(part.level)
    whats: dict[str, list[str]] = {}
    for what, where in levels.items():
        whats.setdefault(several(where), []).append(what)
    return "; ".join(f"{where}: {_joined(what)}" if where else _joined(what) for where, what in whats.items())


def several(levels: Sequence[str]) -> str:
    """Names of levels in a row, or how many they are."""
    return ", ".join(levels) if len(levels) <= 3 else f"{levels[0]} to {levels[-1]} ({len(levels)} levels)"


def _joined(whats: Sequence[str]) -> str:
    """'front rail' and 'back rail' as 'front and back rail'."""
    sides = [side for side in (what.rpartition(" ")[0] for what in whats) if side]
    return f"{' and '.join(sides)} {whats[0].rpartition(' ')[2]}".lstrip()


def _note(part: Part) -> str:
    if not part.cuts:
        return ""
    kinds = ", ".join(dict.fromkeys(_count(part, cut.kind) for cut in part.cuts))
    return f"{part.handed} hand, {kinds}" if part.handed else kinds


def _count(part: Part, kind: str) -> str:
    number = sum(cut.kind == kind for cut in part.cuts)
    return counted(number, kind)


def marks(found: Iterable[str]) -> str:
    """Marks in a row, runs of three and more drawn together: 'A1–A4, B1, B2'; many pieces that are alike, too.

    >>> marks(["A1", "A2", "A3", "B1", "B2"])
    'A1–A3, B1, B2'
    >>> marks(f"{letter}{number}" for letter in "ABCDEF" for number in (1, 2))
    'A1, A2 to F1, F2 (6 pieces)'
    """
    numbers: dict[str, list[int]] = {}
    for mark in found:
        letter = mark.rstrip("0123456789")
        numbers.setdefault(letter, []).append(int(mark[len(letter) :]))
    alike: list[list[str]] = []
    for letter in sorted(numbers, key=_place):
        before = alike[-1][-1] if alike else ""
        if before and _place(letter) == _place(before) + 1 and set(numbers[letter]) == set(numbers[before]):
            alike[-1].append(letter)
        else:
            alike.append([letter])
    told = [[_numbered(letter, numbers[letter]) for letter in letters] for letters in alike]
    return ", ".join(f"{t[0]} to {t[-1]} ({len(t)} pieces)" if len(t) > MOST_PIECES else ", ".join(t) for t in told)


MOST_PIECES = 4
"""Pieces alike that are told one by one."""


def _place(letter: str) -> int:
    """Place of a set's letter among all: A is 1, Z 26, AA 27."""
    place = 0
    for sign in letter:
        place = place * 26 + ord(sign) - 64
    return place


def _numbered(letter: str, numbers: Iterable[int]) -> str:
    """Marks of one set, runs of three and more drawn together."""
    runs: list[list[int]] = []
    for number in sorted(set(numbers)):
        if runs and runs[-1][-1] == number - 1:
            runs[-1].append(number)
        else:
            runs.append([number])
    told = [[f"{letter}{number}" for number in run] for run in runs]
    return ", ".join(f"{run[0]}–{run[-1]}" if len(run) > 2 else ", ".join(run) for run in told)
