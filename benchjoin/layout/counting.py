"""Counting: how many boards and bearers go in where the maker gave a gap or a span, and how wide ripped ones are.

It is worked out from what is drawn, never from what was measured, so that a measurement renames nothing: the frame is
placed as it is described, and every run that is open is given its number. `keep` writes the numbers down.
"""

from __future__ import annotations

import itertools
import operator
from typing import Any

import numpy as np

from ..errors import RunError
from ..frame.bearers import Bearers
from ..frame.boards import Boards
from ..frame.frame import Frame
from ..frame.layers import Counted
from ..frame.limits import MEMBERS
from ..frame.slots import Slot
from ..lengths import TOUCH
from ..runs import larger
from .placing.bands import level_bands
from .placing.bearers import supports
from .placing.boards import board_reach, too_much
from .placing.over import over_legs
from .placing.place import built_up
from .placing.site import Site
from .placing.sizes import Pick, in_piece

HAIR = 1e-9
"""What rounding may take off a whole number."""


def counted(frame: Frame, pick: Pick | None = None) -> Frame:
    """The frame with the number of every run, and as it is where all are given.

    Parameters
    ----------
    frame : Frame
    pick : Pick, optional
        Takes the number of one piece, in all variants; of a plain frame if not given.

    Raises
    ------
    RunError
        If the frame as it is drawn does not come out, or not one board goes in.
    """
    runs = [(level.name, run) for level in frame.levels() for run in level.runs() if run.solved]
    if not runs:
        return frame
    found = {(level, run.key): _trial(run, len(frame.pairs())) for level, run in runs}
    kinds: tuple[type, ...] = (Bearers, Boards)
    for kind in kinds:  # how far boards reach may hang on what they lie on
        if any(isinstance(run, kind) for _, run in runs):
            site = site_as_drawn(frame.as_drawn().with_counts(found), pick or in_piece(0))
            found |= _numbers(kind, site)
    return frame.with_counts(found)


def _numbers(kind: type, site: Site) -> dict[tuple[str, str], Counted]:
    """The number of each run of a kind that is open, by the first of its members."""
    found: dict[tuple[str, str], Counted] = {}
    for slot in site.frame.carried():
        level = slot.level.name if slot.level else ""
        if slot.of.solved and (level, slot.run) not in found and isinstance(slot.of, kind):
            found[level, slot.run] = number(slot, site)
    return found


def site_as_drawn(frame: Frame, pick: Pick) -> Site:
    """The only piece of a frame with all that stands on it."""
    bands = level_bands(frame)
    return built_up(frame, bands, over_legs(frame, bands, [pick]), pick)


def _trial(run: object, pairs: int) -> Counted:
    """Few members, which show how far a run reaches: two boards that take all the room, or one bearer."""
    return Counted(2, (0.0, 0.0)) if isinstance(run, Boards) else Counted(1, (), (1, *[0] * pairs))


def number(slot: Slot, site: Site) -> Counted:
    """How many members go in a run, by one of them and the site that it stands on.

    Raises
    ------
    RunOverfull
        If not one board goes in.
    RunError
        If more go in than a run may have.
    """
    found = _bearers(slot, site) if isinstance(slot.of, Bearers) else _boards(slot, site)
    _few(slot, found.count)
    return found


def _few(slot: Slot, count: int) -> None:
    if count > MEMBERS:
        name = f"{slot.level.name if slot.level else ''}: {slot.run}"
        told = f"{name}: {count} would go in, and {MEMBERS} are the most. Take wider ones, or more room between them."
        raise RunError(told, run=name)


def _bearers(slot: Slot, site: Site) -> Counted:
    """As many in each clear as leave no wider one than the span, and none where it is no wider."""
    own, span = slot.size(1 - slot.axes[0]), slot.of.span
    clears = [after[0] - before[1] for before, after in itertools.pairwise(supports(slot, site))]
    shares = tuple(_whole(larger(np.ceil((clear - span) / (span + own) - HAIR), 0.0)) for clear in clears)
    return Counted(sum(shares), (), shares)


def _boards(slot: Slot, site: Site) -> Counted:
    run, width = slot.of, slot.stock.width or 0.0
    start, end = board_reach(slot, site, slot.axes[1])
    room, gap = end - start, run.gap or 0.0
    fits = (room + gap) / (width + gap)
    count = run.count or _whole(np.ceil(fits - HAIR) if run.remainder in ("rip", "both") else np.floor(fits + HAIR))
    _few(slot, count)
    rest = room - count * (width + gap)
    if run.remainder == "back" and run.count is None and rest > TOUCH:
        count += 1
    widths = _widths(run, width, room, gap, count)
    if count < 1 or min(widths, default=width) <= TOUCH:
        name = f"{slot.level.name if slot.level else ''}: {run.key} over {site.frame.tape.say(room)}"
        need = max(count, 1) * width + gap * max(count - 1, 0)
        raise too_much(name, run, max(count, 1), need, room, site.frame)
    return Counted(count, widths)


def _widths(run: Boards, width: float, room: float, gap: float, count: int) -> tuple[float, ...]:
    """How wide each board is drawn; nothing where all are as wide as their stock. [mm]"""
    if run.remainder == "rip":
        return ((room - (count - 1) * gap) / max(count, 1),) * count
    if run.remainder == "back":
        last = room - (count - 1) * (width + gap)
        return () if run.count is None and last > width + TOUCH else (*[width] * (count - 1), last)
    if run.remainder == "both":
        odd = (room - (count - 2) * width - (count - 1) * gap) / 2
        return (odd, *[width] * (count - 2), odd) if count > 1 else (room,)
    return ()


def _whole(value: Any) -> int:
    """A number that has no fraction; variants that do not agree on it are asked apart."""
    return int(value) if isinstance(value, int | float) else operator.index(value)
