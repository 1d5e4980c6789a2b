"""lay_out: from a frame to where everything is, on one screen.

Heights come from the run up the legs, places along the length from the run of pairs and bays; each piece is built of
blanks that stand there, its parts are named and marked, sets clamped, and the checks look at it all.
"""

from __future__ import annotations

import attrs

from ..errors import DescriptionError, typed
from ..frame.frame import Frame
from ..frame.identity import of_piece
from ..frame.limits import PARTS
from .batch import firsts, labelled
from .building import build, in_piece
from .checking import check
from .counting import counted
from .layout import Layout
from .placing.bands import level_bands
from .placing.over import over_legs
from .placing.sizes import in_piece as pick_of
from .sets import make_sets


def lay_out(frame: Frame) -> Layout:
    """Lay out a frame.

    Raises
    ------
    DescriptionError
        If it is no frame, has more parts than a job may have, or end rails drawn at different lengths are to give its
        depth.
    RunError
        If levels and clears, or legs and bays, do not come out. Whatever else is wrong is a finding.
    """
    if not isinstance(frame, Frame):
        raise DescriptionError(f"lay_out was given {typed(frame)}, not a Frame. Write lay_out(Frame(…)).", faults=())
    frame = counted(frame)
    _few(frame)
    like = firsts(frame)
    picks = [pick_of(piece - 1) for piece in like]
    bands = level_bands(frame)
    over = over_legs(frame, bands, picks)
    built = {n: build(frame, bands, over, n, picks[n - 1]) for n, first in like.items() if n == first}
    pieces = {n: built[n] if n in built else in_piece(built[first], n) for n, first in like.items()}
    as_drawn = not frame.measured and not frame.finished
    parts = labelled(
        [part for piece in pieces.values() for part in piece.parts],
        like,
        as_drawn=as_drawn,
        own={*frame.measured, *frame.finished},
    )
    layout = Layout(
        frame=frame,
        parts=parts,
        joints=tuple(joint for piece in pieces.values() for joint in piece.joints),
        sets=make_sets(parts, like),
        lost={of_piece(n, name): length for n, piece in pieces.items() for name, length in piece.lost.items()},
        wanted={of_piece(n, name): length for n, piece in pieces.items() for name, length in piece.wanted.items()},
    )
    return attrs.evolve(layout, findings=check(layout))


def _few(frame: Frame) -> None:
    count = len(frame.part_names()) * frame.quantity
    if count > PARTS:
        raise DescriptionError(
            f"{frame.name} would have {count} parts in {frame.quantity} pieces, and {PARTS} are the most. Make it of "
            "several frames, or fewer pieces at a time.",
            faults=(),
        )
