"""A sheet: one drawing on one page of a known size, and how it is saved.

Drawings hand their primitives to a Sheet; binding takes sheets in order. A sheet saves itself as SVG, PDF or
PNG by the ending of the path, whole or not at all.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Mapping
from functools import cached_property
from pathlib import Path

import attrs

from ...display import page
from ...errors import PaperError
from ...findings import Finding, in_order
from ..linework import Linework
from ..primitives import Drawing, Primitive
from ..writers import pdf, png, svg
from ..writers.saving import place, write_whole
from .border import frame_sheet
from .figure import Figure, fingerprint_of, stamp
from .title_block import TitleBlock


def _size(value: float) -> float:
    number = float(value)
    if not (math.isfinite(number) and number > 0):
        raise PaperError(f"A sheet cannot be {value!r} mm wide or high.")
    return number


def _strokes(value: Iterable[Primitive]) -> Drawing:
    return tuple(value)


@attrs.frozen(kw_only=True, repr=False)
class Sheet:
    """One page: a name for files, a title for people, its size in mm, and what is drawn on it.

    A sheet with a title block is drawn with its border; the block says which sheet of how many it is. Its lines are
    0.5 and 0.25 mm wide, unless it is given another group: ``attrs.evolve(sheet, linework=Linework(wide=0.7,
    narrow=0.35))``. It knows the figures that it carries, and its chapters, as which the contents list it; sheets that
    look alike are equal, whatever these are called.
    """

    name: str
    title: str
    width: float = attrs.field(converter=_size)
    height: float = attrs.field(converter=_size)
    drawing: Drawing = attrs.field(converter=_strokes)
    block: TitleBlock | None = None
    scale: str = "1:1"
    full_size: bool = False
    number: int | None = None
    count: int | None = None
    linework: Linework = attrs.field(factory=Linework)
    figures: tuple[Figure, ...] = attrs.field(default=(), eq=False)
    chapters: tuple[str, ...] = attrs.field(default=(), eq=False)

    @property
    def findings(self) -> tuple[Finding, ...]:
        """What was found about its figures, errors first, each once."""
        return in_order(dict.fromkeys(finding for figure in self.figures for finding in figure.findings))

    @property
    def fingerprints(self) -> Mapping[str, str]:
        """Fingerprints of its figures, by their names."""
        return {figure.name: figure.fingerprint for figure in self.figures}

    @property
    def fingerprint(self) -> str:
        """One fingerprint of all its figures, as it is printed on the sheet; none where it carries none."""
        return fingerprint_of(self.figures)

    @cached_property
    def whole(self) -> Drawing:
        """Border and title block with the sheet's number and fingerprint in it, where it has one, and the drawing."""
        if self.block is None:
            return self.drawing
        numbered = f"{self.number or 1} of {self.count or 1}"
        told = attrs.evolve(self.block, sheet=numbered, fingerprint=stamp(self.fingerprint))
        return (*frame_sheet(self.width, self.height, told)[0], *self.drawing)

    def svg(self) -> str:
        """The sheet as SVG text, one unit of which is one millimetre; it names its font and does not carry it."""
        return svg.svg_text(self)

    def save(self, path: str | Path) -> Path:
        """Write the sheet as .svg, .pdf or .png, by the ending of the path, whole or not at all.

        Raises
        ------
        PaperError
            If the path ends otherwise, or the page cannot be that large.
        """
        target = place(path)
        ending = target.suffix.lower()
        if ending == ".svg":
            data = (svg.svg_text(self, embed=True) + "\n").encode("utf-8")
        elif ending == ".pdf":
            data = pdf.pdf_bytes(self)
        elif ending == ".png":
            data = png.png_bytes(self)
        else:
            raise PaperError(f"A sheet is saved as .svg, .pdf or .png; {target.name!r} ends in none of them.")
        return write_whole(target, data)

    def _repr_html_(self) -> str:
        return page("sheet_page", self)

    def __repr__(self) -> str:
        scale = f", {self.scale}" if self.scale else ""
        return f"<Sheet {self.name}: {self.width:.6g} × {self.height:.6g} mm{scale}>"
