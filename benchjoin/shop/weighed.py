"""What the finished pieces weigh, in a sentence for lists: of each kind of piece, or which stock leaves it open."""

from __future__ import annotations

from ..errors import LumberError
from ..layout.layout import Layout
from ..phrases import listed, pieces_called
from .weights import POUND, weights

MOISTURE = 12.0
"""At which wood is weighed where nobody says otherwise. [%]"""


def weighed(layout: Layout, piece: int | None = None) -> str:
    """'one piece 61 lb, at 12 % moisture content …', or that it is not known, and why; of one piece if it is given."""
    try:
        found = weights(layout, moisture=MOISTURE)
    except LumberError:
        open_ = dict.fromkeys(slot.stock.name for slot in layout.frame.slots() if not slot.stock.species)
        return f"not known, since no species is given for {listed([f'“{name}”' for name in open_])}"
    inch = layout.frame.tape.unit == "in"

    def say(number: int) -> str:
        return f"{found.piece(number) / POUND:.0f} lb" if inch else f"{found.piece(number):.1f} kg"

    kinds = [alike for alike in layout.alike if piece is None or piece in alike]
    several = len(layout.alike) > 1 and piece is None
    told = [f"{pieces_called(alike) if several else 'one piece'} {say(alike[0])}" for alike in kinds]
    return f"{'; '.join(told)}, at {MOISTURE:g} % moisture content (averages of clear wood, screws not counted)"
