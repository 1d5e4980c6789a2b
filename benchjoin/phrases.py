"""Words in a row, as a sentence lists and counts them."""

from __future__ import annotations

from collections.abc import Sequence


def listed(words: Sequence[str]) -> str:
    """Words in a row.

    >>> listed(["bench"]), listed(["foot shelf", "bench", "hook rail"])
    ('bench', 'foot shelf, bench and hook rail')
    """
    return " and ".join(filter(None, (", ".join(words[:-1]), *words[-1:])))


def counted(number: int, word: str) -> str:
    """How many of something.

    >>> counted(1, "warning"), counted(3, "note"), counted(2, "notch")
    ('1 warning', '3 notes', '2 notches')
    """
    return f"{number} {several(word) if number != 1 else word}"


def several(word: str) -> str:
    """The word for several of something: notches, half-laps."""
    return f"{word}es" if word.endswith(("h", "s")) else f"{word}s"


def pieces_called(numbers: Sequence[int]) -> str:
    """What pieces are called.

    >>> pieces_called([2]), pieces_called([1, 3]), pieces_called([1, 2, 3, 5])
    ('piece 2', 'pieces 1 and 3', 'pieces 1 to 3 and 5')
    """
    return f"piece{'s' * (len(numbers) > 1)} {runs(numbers)}"


def runs(numbers: Sequence[int]) -> str:
    """Rising numbers in a row, three and more that follow each other drawn together.

    >>> runs([1, 2, 4, 5, 6])
    '1, 2 and 4 to 6'
    """
    found: list[list[int]] = []
    for number in numbers:
        if found and found[-1][-1] == number - 1:
            found[-1].append(number)
        else:
            found.append([number])
    return listed([word for run in found for word in ([f"{run[0]} to {run[-1]}"] if len(run) > 2 else map(str, run))])
