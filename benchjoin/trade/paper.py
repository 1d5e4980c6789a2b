"""Paper as it is sold: cut sheets by name, rolls by width, and how long a PDF page may be.

Whoever binds a set of sheets asks here for the size of a page; sizes are portrait, in millimetres.

>>> paper_size("A4")
(210.0, 297.0)
>>> paper_size("letter")
(215.9, 279.4)
"""

from __future__ import annotations

import re

import attrs

from ..errors import PaperError
from ..lengths import INCH
from ..sources import COMMON_PRACTICE, Source

ISO_216 = Source("ISO 216", "A series")
ASME_Y14_1 = Source("ASME Y14.1", "flat sheet sizes A to E", standing="secondary")
PDF_LIMIT_SOURCE = Source("PDF Reference 1.6", "Appendix H")


@attrs.frozen(kw_only=True)
class Paper:
    """One sheet size, portrait. [mm]"""

    name: str
    width: float
    height: float
    source: Source


@attrs.frozen(kw_only=True)
class Roll:
    """One width of plotter roll. [mm]"""

    name: str
    width: float
    source: Source


def _iso(name: str, width: float, height: float) -> Paper:
    return Paper(name=name, width=width, height=height, source=ISO_216)


def _ansi(name: str, width: float, height: float) -> Paper:
    """Inches in, exact millimetres out: inches are given in halves, so one decimal is exact."""
    return Paper(name=name, width=round(width * INCH, 3), height=round(height * INCH, 3), source=ASME_Y14_1)


PAPERS: tuple[Paper, ...] = (
    _iso("A0", 841.0, 1189.0),
    _iso("A1", 594.0, 841.0),
    _iso("A2", 420.0, 594.0),
    _iso("A3", 297.0, 420.0),
    _iso("A4", 210.0, 297.0),
    _ansi("ANSI A", 8.5, 11),
    _ansi("ANSI B", 11, 17),
    _ansi("ANSI C", 17, 22),
    _ansi("ANSI D", 22, 34),
    _ansi("ANSI E", 34, 44),
)

# Names that paper is sold under (common practice, no source).
SOLD_AS: dict[str, str] = {"Letter": "ANSI A", "Tabloid": "ANSI B"}

ROLLS: tuple[Roll, ...] = (
    *(Roll(name=f"{w} in", width=round(w * INCH, 3), source=COMMON_PRACTICE) for w in (24, 30, 36, 42)),
    *(Roll(name=f"{w} mm", width=float(w), source=COMMON_PRACTICE) for w in (610, 841, 914)),
)

PDF_LONGEST_POINTS = 14_400  # PDF_LIMIT_SOURCE; 200 in both ways
PDF_SHORTEST_POINTS = 3  # PDF_LIMIT_SOURCE
PDF_LONGEST = PDF_LONGEST_POINTS / 72 * INCH  # 5080 mm
PDF_SHORTEST = PDF_SHORTEST_POINTS / 72 * INCH


_SIDES = re.compile(r"(\d+(?:\.\d+)?) ?[x×] ?(\d+(?:\.\d+)?) ?(mm|in)")
"""Sheets by their sides, as `_plain` leaves a name."""


def paper_size(name: str) -> tuple[float, float]:
    """Width and height of a sheet by its name, portrait, whatever the case of the name. [mm]

    Other sheets are named by their sides: "300 x 400 mm", "12 x 18 in".

    Raises
    ------
    PaperError
        If there is no such sheet; the message lists those there are.

    Examples
    --------
    >>> paper_size("12 x 10 in")
    (254.0, 304.8)
    """
    custom = _SIDES.fullmatch(_plain(name))
    if custom:
        sides = sorted(round(float(side) * (INCH if custom[3] == "in" else 1.0), 3) for side in custom.group(1, 2))
        return sides[0], sides[1]
    if not is_paper(name):
        known = ", ".join([paper.name for paper in PAPERS] + list(SOLD_AS))
        raise PaperError(f'No paper is called {name!r}. There is {known}, or a size such as "300 x 400 mm".')
    return _SHEETS[_plain(name)]


def is_paper(name: str) -> bool:
    """Whether a name is that of a sheet."""
    return _plain(name) in _SHEETS or _SIDES.fullmatch(_plain(name)) is not None


def is_roll(name: str) -> bool:
    """Whether a name is that of a roll, by its width: "36 in"."""
    return _plain(name) in _ROLL_WIDTHS


def roll_width(name: str) -> float:
    """Width of a roll by its name. [mm]

    Raises
    ------
    PaperError
        If there is no such roll; the message lists those there are.

    Examples
    --------
    >>> roll_width("36 in")
    914.4
    """
    if not is_roll(name):
        raise PaperError(f"No roll is called {name!r}. There is {', '.join(roll.name for roll in ROLLS)}.")
    return _ROLL_WIDTHS[_plain(name)]


def _plain(name: str) -> str:
    return " ".join(str(name).split()).casefold()


_SHEETS = {_plain(paper.name): (paper.width, paper.height) for paper in PAPERS}
_SHEETS |= {_plain(sold): _SHEETS[_plain(proper)] for sold, proper in SOLD_AS.items()}
_ROLL_WIDTHS = {_plain(roll.name): roll.width for roll in ROLLS}


def landscape(size: tuple[float, float]) -> tuple[float, float]:
    """The same sheet with its long edge across."""
    return max(size), min(size)
