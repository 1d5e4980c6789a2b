"""lay_out: from a frame to where everything is, on one screen.

Heights come from the run up the legs, places along the length from the run of pairs and bays; each piece is built of
blanks that stand there, its parts are named and marked, sets clamped, and the checks look at it all.
"""

from __future__ import annotations

import attrs

from ..errors import DescriptionError, told
from ..frame.frame import Frame
from ..frame.identity import of_piece
from .bands import level_bands
from .building import build
from .checking import check
from .kinds import with_kinds
from .layout import Layout
from .over import over_legs
from .sets import make_sets, with_marks
from .sizes import in_piece


def lay_out(frame: Frame) -> Layout:
    """Lay out a frame.

    Raises
    ------
    DescriptionError
        If it is no frame, or end rails drawn at different lengths are to give its depth.
    RunError
        If levels and clears, or legs and bays, do not come out. Whatever else is wrong is a finding.
    """
    if not isinstance(frame, Frame):
        raise DescriptionError(f"lay_out was given {told(frame)}, not a Frame. Write lay_out(Frame(…)).", faults=())
    picks = [in_piece(piece) for piece in range(frame.quantity)]
    bands = level_bands(frame)
    over = over_legs(frame, bands, picks)
    pieces = {number: build(frame, bands, over, number, pick) for number, pick in enumerate(picks, 1)}
    marked = with_marks(with_kinds(part for piece in pieces.values() for part in piece.parts))
    layout = Layout(
        frame=frame,
        parts=marked,
        joints=tuple(joint for piece in pieces.values() for joint in piece.joints),
        sets=make_sets(marked),
        lost={of_piece(n, name): length for n, piece in pieces.items() for name, length in piece.lost.items()},
        wanted={of_piece(n, name): length for n, piece in pieces.items() for name, length in piece.wanted.items()},
    )
    return attrs.evolve(layout, findings=check(layout))
