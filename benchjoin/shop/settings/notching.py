"""Notching: what has to be cut into which part, as the part lies against its stop.

The layout knows a notch as a box in the world; at the saw it is an interval from one end of the part, a depth from one
face, and whether it runs right across. Legs lie with the foot against the stop, rails with their datum end, unless the
maker sets a level from the top. The ways of cutting (dado head, router, chisel) all start from these.
"""

from __future__ import annotations

from collections.abc import Collection, Iterator, Mapping

import attrs

from ...errors import AddressError
from ...layout.layout import Layout
from ...layout.parts import Part, face_up
from ...lengths import TOUCH


@attrs.frozen(kw_only=True)
class Notching:
    """One notch or lap of one part, measured from the end that lies against the stop. [mm]

    face is one of the frame, up what the maker calls it on this part ("outer face"); low and high are its shoulders,
    0 and length where it runs out at an end; depth is from its face, and buried how much wood lies between that face
    and the notch (none, as a rule). across is False where it stops inside the face.
    """

    part: Part
    level: str
    face: str
    up: str
    end: str
    low: float
    high: float
    depth: float
    buried: float
    across: bool

    @property
    def width(self) -> float:
        """From shoulder to shoulder. [mm]"""
        return self.high - self.low

    @property
    def open_near(self) -> bool:
        """Whether it runs out at the end against the stop."""
        return self.low <= TOUCH

    @property
    def open_far(self) -> bool:
        """Whether it runs out at the other end."""
        return self.high >= self.part.length - TOUCH

    def __str__(self) -> str:
        return f"{self.part.name}, {self.level}"


def notchings(layout: Layout, *, from_top: Collection[str] = ()) -> tuple[Notching, ...]:
    """Every notch and lap of the batch that is not cut yet, part by part from its foot or datum end.

    Parameters
    ----------
    layout : Layout
    from_top : collection of str
        Levels whose notches are set with the top of the leg against the stop.

    Raises
    ------
    AddressError
        If there is no such level.
    """
    known = tuple(level.name for level in layout.frame.levels())
    for name in (from_top,) if isinstance(from_top, str) else from_top:
        if name not in known:
            raise AddressError(f"There is no level {name!r}. Levels are {', '.join(known)}.", address=name, known=known)
    tops = {from_top} if isinstance(from_top, str) else set(from_top)
    ups = {
        (part.name, face): band.title.removesuffix("s up")
        for one in layout.sets
        for band in one.bands
        for part, face in zip(one.members, band.faces, strict=True)
    }
    finished = layout.frame.finished
    uncut = [part for part in layout.parts if part.name not in finished or finished[part.name].state != "cut"]
    return tuple(found for part in uncut for found in _of(layout, part, tops, ups))


def _of(
    layout: Layout, part: Part, from_top: Collection[str], ups: Mapping[tuple[str, str], str]
) -> Iterator[Notching]:
    found = []
    for cut in part.cuts:
        place = face_up(part, cut.face)
        (length, width, _), box = place.local(part.blank).size(), place.local(cut.box)
        low, high = max(box.low[0], 0.0), min(box.high[0], length)
        mate = layout.mate(part, cut.mate)
        if mate is None:
            continue  # marked for a rail that is gone since: nothing to cut
        level = part.level or mate.level or ""
        top = part.role == "leg" and level in from_top
        found.append(
            Notching(
                part=part,
                level=level,
                face=cut.face,
                up=ups.get((part.name, cut.face), f"{cut.face} face"),
                end="top" if top else "foot" if part.role == "leg" else _datum_end(part),
                low=length - high if top else low,
                high=length - low if top else high,
                depth=box.high[2],
                buried=max(box.low[2], 0.0),
                across=box.low[1] <= TOUCH and box.high[1] >= width - TOUCH,
            )
        )
    yield from sorted(found, key=lambda notch: (notch.low, notch.face))


def _datum_end(part: Part) -> str:
    """The end of a rail from which it is measured, in words."""
    return "left end" if part.side in ("front", "back") else "front end"
