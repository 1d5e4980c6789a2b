"""Frames of many variants: a described frame with arrays at some of its addresses, seen as a single piece.

The doors of a description take one number at a time, so here values that have passed them are put past the doors, and
the faults of the whole are asked for again.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

import attrs

from ..frame.doors import past_doors
from ..frame.frame import Frame
from ..frame.identity import of_piece, piece_of
from ..frame.measured import Kept
from ..readings import Tape

Path = tuple[Any, ...]


class Mute(Tape):
    """A tape that reads nothing: what it would say differs from variant to variant."""

    def say(self, length: float) -> str:
        """Dots in place of a reading."""
        return "…"

    def read(self, length: float) -> str:
        """Dots in place of a reading."""
        return "…"

    def marks(self, length: float) -> int:
        """One mark, whatever the length."""
        return 1

    def off(self, length: float) -> Any:
        """Never off a mark."""
        return ""


def with_numbers(frame: Frame, numbers: Mapping[Path, Any]) -> Frame:
    """A frame with a number, or one over variants, at the end of each path.

    Raises
    ------
    DescriptionError
        If the whole has faults with these numbers.
    Split
        If it has them in some variants only.
    """
    found: Frame = past_doors(frame, tape=Mute(frame.tape.name))
    for path, number in numbers.items():
        found = _put(found, path, number)
    for path in numbers:
        for depth in range(len(path) - 1, -1, -1):
            thing = _at(found, path[:depth])
            if attrs.has(type(thing)) and hasattr(thing, "__attrs_post_init__"):
                thing.__attrs_post_init__()
    return found


def one_piece(frame: Frame, number: int) -> Frame:
    """One piece of a batch as a frame of its own: what was measured and finished in the others is left out."""
    measured: dict[str, dict[str, Any]] = {}
    for own in (False, True):
        for name, sizes in frame.measured.items():
            piece, part = piece_of(name)
            if piece == (number if own else None):
                measured.setdefault(part, {}).update(sizes)
    finished = {
        of_piece(1, piece_of(name)[1]): part for name, part in frame.finished.items() if piece_of(name)[0] == number
    }
    kept = Kept({part: Kept(sizes) for part, sizes in measured.items()})
    return past_doors(frame, quantity=1, measured=kept, finished=Kept(finished))


def _at(thing: Any, path: Path) -> Any:
    for step in path:
        thing = thing[step] if isinstance(thing, tuple | Mapping) else getattr(thing, step)
    return thing


def _put(thing: Any, path: Path, value: Any) -> Any:
    """A thing with another value at the end of a path below it."""
    if not path:
        return value
    step, *rest = path
    if isinstance(thing, tuple):
        return tuple(_put(item, tuple(rest), value) if n == step else item for n, item in enumerate(thing))
    if isinstance(thing, Mapping):
        return Kept({**thing, step: _put(thing.get(step, Kept({})), tuple(rest), value)})
    return past_doors(thing, **{step: _put(getattr(thing, step), tuple(rest), value)})
