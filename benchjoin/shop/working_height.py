"""Working height: the surfaces of a layout beside the elbow of whoever works there, and how far one reaches over them.

working_height(layout, elbow="41 in").text()
"""

from __future__ import annotations

from ..errors import LengthError, typed
from ..layout.laid_out import of_a_layout
from ..layout.layout import Layout
from ..lengths import Length, mm
from ..tables import Table
from ..trade.heights import BANDS, ELBOWS, ELBOWS_SOURCE, REACH, SAFETY_CENTRE


@of_a_layout
def working_height(layout: Layout, elbow: Length | None = None) -> Table:
    """Each surface beside the elbow: over or below it, and for which work a guide would have it there.

    Parameters
    ----------
    layout : Layout
    elbow : length, optional
        Height of the elbow with shoes, the arm hanging and bent; of short women and tall men without.

    Raises
    ------
    LengthError
        If it is no length, or no elbow of somebody who stands (600 to 1500 mm).
    """
    read = layout.frame.tape.read
    if elbow is None:
        elbows = tuple((words, height) for words, height in ELBOWS)
    else:
        own = mm(elbow, what="elbow")
        if not 600.0 <= own <= 1500.0:
            raise LengthError(
                f"elbow is {typed(elbow)}, {own:g} mm. Somebody who stands has it between 600 and 1500 mm."
            )
        elbows = (("your elbow", own),)
    rows = []
    for name in dict.fromkeys(str(part.level) for part in layout.piece(1) if part.level):
        height, deep = _surface(layout, name)
        for words, at in elbows:
            fits = dict.fromkeys(
                f"{band.work} ({band.source.document})" for band in BANDS if band.low <= height - at <= band.high
            )
            over = height - at
            beside = f"{read(abs(over))} {'over' if over > 0 else 'below'} {words}"
            rows.append((name, read(height), beside, "; ".join(fits) or "none", _reach(deep)))
    sources = dict.fromkeys(str(band.source) for band in BANDS)
    notes = (
        f"Guides disagree, and a bench for several people is a compromise: {'; '.join(sources)}.",
        f"Elbows without shoes, {ELBOWS_SOURCE}; shoes add about 25 mm. Reach: up to {read(REACH[0])} all the time, "
        f"{read(REACH[1])} now and then ({SAFETY_CENTRE}).",
    )
    columns = ("Surface", "Height", "Beside the elbow", "Work for which a guide has it there", "Reach over it")
    return Table(f"Working height: {layout.frame.name}", columns, tuple(rows), notes, "lrlll")


def _surface(layout: Layout, level: str) -> tuple[float, float]:
    """The height of a level's boards, or of its rails where it has none, and how deep it is. [mm]"""
    own = [part for part in layout.piece(1) if part.level == level]
    on = [part.blank for part in own if part.slot.role.surface and part.slot.axes[2] == 2] or [
        part.blank for part in own
    ]
    return max(box.high[2] for box in on), max(box.high[1] for box in on) - min(box.low[1] for box in on)


def _reach(deep: float) -> str:
    if deep <= REACH[0]:
        return "all of it at hand"
    return "its back now and then" if deep <= REACH[1] else "its back is a stretch from the front"
