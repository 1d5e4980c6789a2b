"""What every drawing asks of its page: paper, scale system, projection, and what the title block says."""

from __future__ import annotations

from collections.abc import Callable
from typing import Literal

import attrs

from ...drafting.linework import Linework
from ...drafting.primitives import Box
from ...drafting.sheets.border import room_over
from ...drafting.sheets.title_block import TitleBlock
from ...frame.frame import Frame
from ...readings import Tape
from ...trade.paper import landscape, paper_size

System = Literal["metric", "inch"]


def system(frame: Frame) -> System:
    """The scales that a design is drawn at: those of its tape."""
    return "inch" if frame.tape.unit == "in" else "metric"


def default_paper(frame: Frame) -> str:
    """Desk paper of the design's tape."""
    return "Letter" if frame.tape.unit == "in" else "A4"


def both_ways(paper: str) -> tuple[tuple[float, float], tuple[float, float]]:
    """A paper upright and lying. [mm]"""
    upright = paper_size(paper)
    return upright, landscape(upright)


@attrs.frozen(kw_only=True)
class House:
    """What all sheets of a shop have in common, for the title block; dates are the maker's, never the clock's.

    projection is the tape's own where it is not given; dual adds the reading of the other unit in brackets; tolerance
    is the general one, in words ("± 0.5 mm"), and half a division of the tape if not given.
    """

    owner: str = ""
    drawn_by: str = ""
    approved_by: str = ""
    date: str = ""
    revision: str = ""
    number: str = ""
    projection: Literal["", "first angle", "third angle"] = ""
    dual: bool = False
    tolerance: str = ""
    linework: Linework = attrs.field(factory=Linework)


PLAIN = House()


Form = Literal["iso", "slim"]
"""How the words of a title block are set out."""


def block(
    frame: Frame, house: House, *, kind: str, piece: str, scale: str, form: Form = "slim", punched: bool = True
) -> TitleBlock:
    """The title block of a drawing of this frame.

    form is "slim" for a strip along the foot, or "iso" for the block of general arrangements and full-size pages; a
    page that goes into the binder is punched. What is not measured from, a list or a picture, has no sign of
    projection.
    """
    inch = frame.tape.unit == "in"
    units = ("inches", "mm") if inch else ("millimetres", "in")
    return TitleBlock(
        owner=house.owner,
        title=frame.name,
        piece=piece,
        number=house.number,
        revision=house.revision,
        date=house.date,
        drawn_by=house.drawn_by,
        approved_by=house.approved_by,
        document_type=kind,
        scale=scale,
        units=f"{units[0]} [{units[1]}]" if house.dual else units[0],
        projection=projection(frame, house) if scale or form == "iso" else "",
        form=form,
        punched=punched,
    )


def projection(frame: Frame, house: House) -> Literal["first angle", "third angle"]:
    """The projection that the shop keeps to, or else third angle for inch sheets and first angle for metric ones."""
    return house.projection or ("third angle" if frame.tape.unit == "in" else "first angle")


Reader = Callable[[float], str]
"""How sizes are written."""


def reader(frame: Frame, house: House) -> Reader:
    """How sizes are written: as the design's tape reads them, and, if asked for, the nearest of the other unit."""
    own = frame.tape
    if not house.dual:
        return own.read
    other = Tape("1 mm" if own.unit == "in" else "1/16 in")
    return lambda length: f"{own.read(length)} [{other.figures(length)}]"


def room(width: float, height: float, words: TitleBlock) -> Box:
    """What border and title block leave free on a page. [mm]"""
    return room_over(width, height, words)


SERIES = (("Letter", "Tabloid", "ANSI C", "ANSI D", "ANSI E"), ("A4", "A3", "A2", "A1", "A0"))


def papers_from(frame: Frame, paper: str | None) -> tuple[str, ...]:
    """The papers to try: the one that was asked for, or the desk paper of the design and then larger ones."""
    if paper is not None:
        return (paper,)
    return next(row for row in SERIES if row[0] == default_paper(frame))
