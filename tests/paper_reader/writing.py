"""Letters put together to lines of writing, as one reads them, and lines to blocks.

A letter goes on in the next one that begins where it ends, on its line, or raised or lowered in a fraction. Everything
else begins a line of its own, so that two texts on each other are two lines.
"""

from __future__ import annotations

from typing import NamedTuple

import shapely

TOUCHING = 0.06
"""How far off the end of a letter the next of its text begins at most, of the size of the font."""
WORD = (0.2, 0.45)
"""A gap that stands for a space which is not written, of the size of the font."""
SET_OFF = (0.35, 0.6)
"""How far off, along the line and across it, the letters of a fraction begin at most, of the size of the font."""
IN_FRACTIONS = frozenset("0123456789/\N{FRACTION SLASH} ")
PITCH = 2.2
"""How far the lines of one block stand apart at most, of the height of their capitals or so."""


class Writing(NamedTuple):
    """A line of writing: its letters with the spaces among them."""

    letters: tuple

    @property
    def text(self):
        return " ".join("".join(one.text for one in self.letters).split())

    @property
    def ink(self):
        """All that is seen of it, as a box."""
        lefts, lows, rights, highs = zip(*(one.ink for one in self.letters if not one.text.isspace()), strict=True)
        return shapely.box(min(lefts), min(lows), max(rights), max(highs))

    @property
    def size(self):
        return max(one.size for one in self.letters)

    @property
    def along(self):
        one = self.letters[0]
        return (one.end - one.start) / (abs(one.end - one.start) or 1.0)


def lines_of(letters):
    """Letters in the order of the file as lines of writing; spaces alone are none."""
    lines, before = [], None
    for letter in letters:
        if before is None or not goes_on(before, letter):
            lines.append([])
        lines[-1].append(letter)
        before = letter
    return [Writing(tuple(line)) for line in lines if any(not one.text.isspace() for one in line)]


def goes_on(one, other):
    """Whether the other letter follows the first in its text."""
    if one.end == one.start or other.end == other.start:
        return False
    along = (one.end - one.start) / abs(one.end - one.start)
    step, way = (other.start - one.end) / along, (other.end - other.start) / along
    size = max(one.size, other.size)
    if abs(way.imag) > 0.01 * size or way.real < 0:
        return False
    if abs(one.size - other.size) < 0.01 * size and abs(step.imag) < 0.01 * size:
        return abs(step.real) < TOUCHING * size or WORD[0] * size < step.real < WORD[1] * size
    figures = other.text in IN_FRACTIONS or (one.text.isdecimal() and not other.text.isalnum())
    return figures and abs(step.real) < SET_OFF[0] * size and abs(step.imag) < SET_OFF[1] * size


def blocks_of(lines):
    """Level lines as blocks: each begins where the one over it does, and follows it closely."""
    level = sorted((one for one in lines if one.along.real > 0.99), key=lambda one: -one.letters[0].start.imag)
    blocks = []
    for line in level:
        start = line.letters[0].start
        for block in blocks:
            last = block[-1].letters[0].start
            if abs(last.real - start.real) < 0.3 and 0 < last.imag - start.imag < PITCH * block[-1].size:
                block.append(line)
                break
        else:
            blocks.append([line])
    return blocks
