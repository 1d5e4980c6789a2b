"""What every drawing asks of its page: paper, scale system, projection, and what the title block says."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import Literal

from ..drafting.primitives import Box
from ..drafting.sheet import Sheet
from ..drafting.title_block import TitleBlock, frame_sheet
from ..errors import PaperError
from ..frame.frame import Frame
from ..trade.paper import landscape, paper_size

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


def block(frame: Frame, *, kind: str, piece: str, scale: str, date: str = "", revision: str = "") -> TitleBlock:
    """The title block of a drawing of this frame; the date is the maker's, never the clock's."""
    inch = frame.tape.unit == "in"
    return TitleBlock(
        title=frame.name,
        piece=piece,
        document_type=kind,
        scale=scale,
        units="inches" if inch else "millimetres",
        projection="third angle" if inch else "first angle",
        date=date,
        revision=revision,
    )


def room(width: float, height: float, words: TitleBlock) -> Box:
    """What border and title block leave free on a page. [mm]"""
    return frame_sheet(width, height, words)[1]


SERIES = (("Letter", "Tabloid", "ANSI C", "ANSI D", "ANSI E"), ("A4", "A3", "A2", "A1", "A0"))


def papers_from(frame: Frame, paper: str | None) -> tuple[str, ...]:
    """The papers to try: the one that was asked for, or the desk paper of the design and then larger ones."""
    if paper is not None:
        return (paper,)
    return next(row for row in SERIES if row[0] == default_paper(frame))


def first_that_fits(draw: Callable[[str], Sheet], papers: Sequence[str]) -> Sheet:
    """The sheet on the first paper that takes it.

    Raises
    ------
    PaperError
        If none of them does.
    """
    for paper in papers[:-1]:
        try:
            return draw(paper)
        except PaperError:
            continue
    return draw(papers[-1])
