"""The order of work: from boards to notched parts, one tuple of steps that every sheet tells its part of by number.

Wood is cut to a rough length first, because short blanks come out straighter and waste less; it is flattened,
straightened, planed and ripped at that length, because the machines ask for long pieces; then it is measured, cut to
its final length, marked and notched. Common practice, no source.

>>> print(step("width"))
Step 5, width
>>> [each.word for each in ORDER][-3:]
['final length', 'lines', 'notches']
"""

from __future__ import annotations

from typing import Literal

import attrs

Word = Literal["rough length", "face", "edge", "thickness", "width", "sizes", "final length", "lines", "notches"]


@attrs.frozen
class Step:
    """One step: its number, the word for it, and what is done."""

    number: int
    word: Word
    words: str

    def __str__(self) -> str:
        return f"Step {self.number}, {self.word}"


ORDER: tuple[Step, ...] = (
    Step(1, "rough length", "cross-cut blanks out of the boards, longer than the parts"),
    Step(2, "face", "flatten one face"),
    Step(3, "edge", "straighten one edge square to it"),
    Step(4, "thickness", "plane the other face parallel to the first"),
    Step(5, "width", "rip and plane the other edge parallel to the first"),
    Step(6, "sizes", "measure every part and lay the work out again"),
    Step(7, "final length", "square one end and cut to length"),
    Step(8, "lines", "clamp each set and strike its lines"),
    Step(9, "notches", "cut notches and laps"),
)


def step(word: Word) -> Step:
    """The step of some word."""
    return next(each for each in ORDER if each.word == word)
