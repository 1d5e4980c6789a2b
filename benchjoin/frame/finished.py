"""Finished parts: what has been sized, marked or cut in wood, and stays so whatever is measured or changed later.

A part that is *sized* keeps its length and section, one that is *marked* or *cut* keeps its shoulders and depths too.
Places are in the part's own frame: along it from the datum end, across it, into it from the marked face.
`layout.keeping` writes these down from a layout; nobody types them.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any, Literal, get_args

import attrs

from ..errors import BenchjoinError, typed
from .identity import piece_of, plain
from .measured import Kept

State = Literal["sized", "marked", "cut"]
STATES: tuple[State, ...] = ("sized", "marked", "cut")
Shoulder = Literal["", "near", "far"]
Corner = tuple[float, float, float]


@attrs.frozen
class FinishedCut:
    """A cut as it was marked: for which mate, from which face, of which kind; its box in the part's own frame. [mm]

    sits is the shoulder that the mate sits on, seen from the datum end; nothing where it lies as its level has it.
    """

    mate: str
    face: str
    kind: str
    low: Corner
    high: Corner
    sits: Shoulder = attrs.field(default="", validator=attrs.validators.in_(get_args(Shoulder)))


@attrs.frozen
class Finished:
    """A part as it stands: its state, its length and section, and its cuts (none where it is only sized). [mm]

    section is what it measures across and into its marked face, in its own frame.
    """

    state: State
    length: float
    section: tuple[float, float]
    cuts: tuple[FinishedCut, ...] = ()


def finished(value: Any) -> Mapping[str, Finished]:
    """Converter of Frame.finished: parts of one piece by name; takes its own result, too."""
    if not isinstance(value, Mapping) or not all(isinstance(part, Finished) for part in value.values()):
        raise BenchjoinError(f"finished is {typed(value)}. Write keep(layout, 'back left leg', state='cut').")
    for name in value:
        if piece_of(str(name))[0] is None:
            raise BenchjoinError(f"finished holds {typed(name)}, which says no piece. Write '1/{name}'.")
    return Kept({plain(name): part for name, part in value.items()})
