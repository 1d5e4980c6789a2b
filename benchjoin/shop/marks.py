"""Marks in a row, as lists tell them: runs drawn together, and pieces that are alike."""

from __future__ import annotations

from collections.abc import Collection, Iterable


def marks(found: Iterable[str]) -> str:
    """Marks in a row, runs of three and more drawn together: 'A1–A4, B1, B2'; many pieces that are alike, too.

    >>> marks(["A1", "A2", "A3", "B1", "B2"])
    'A1–A3, B1, B2'
    >>> marks(f"{letter}{number}" for letter in "ABCDEF" for number in (1, 2))
    'A1, A2 to F1, F2 (6 pieces)'
    >>> marks(["D", "D", "E", "E2"])  # all of a size bear the letter, but for the one that is finished for itself
    'D, E, E2'
    """
    numbers: dict[str, list[int]] = {}
    for mark in found:
        letter = mark.rstrip("0123456789")
        own = numbers.setdefault(letter, [])
        own.append(int(mark[len(letter) :] or 0))
    alike: list[list[str]] = []
    for letter in sorted(numbers, key=_place):
        before = alike[-1][-1] if alike else ""
        if (
            before
            and 0 not in numbers[letter]
            and _place(letter) == _place(before) + 1
            and set(numbers[letter]) == set(numbers[before])
        ):
            alike[-1].append(letter)
        else:
            alike.append([letter])
    told = [[_numbered(letter, numbers[letter]) for letter in letters] for letters in alike]
    return ", ".join(f"{t[0]} to {t[-1]} ({len(t)} pieces)" if len(t) > MOST_PIECES else ", ".join(t) for t in told)


def in_row(mark: str) -> tuple[bool, int, int]:
    """For sorting: marks by piece and number, what has none last.

    >>> sorted(["B2", "A10", "", "A9"], key=in_row)
    ['A9', 'A10', 'B2', '']
    """
    letter = mark.rstrip("0123456789")
    return not letter, _place(letter), int(mark[len(letter) :] or 0)


MOST_PIECES = 4
"""Pieces alike that are told one by one."""


def _place(letter: str) -> int:
    """Place of a piece's letter among all: A is 1, Z 26, AA 27."""
    place = 0
    for sign in letter:
        place = place * 26 + ord(sign) - 64
    return place


def _numbered(letter: str, numbers: Collection[int]) -> str:
    """Marks of one letter, runs of three and more drawn together."""
    runs: list[list[int]] = []
    for number in sorted(set(numbers) - {0}):
        if runs and runs[-1][-1] == number - 1:
            runs[-1].append(number)
        else:
            runs.append([number])
    told = [[f"{letter}{number}" for number in run] for run in runs]
    own = [letter] if 0 in numbers else []
    return ", ".join([*own, *(f"{run[0]}–{run[-1]}" if len(run) > 2 else ", ".join(run) for run in told)])
