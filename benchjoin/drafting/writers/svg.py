"""Write a sheet as SVG: the one place where y is turned over and numbers become text.

One user unit is one millimetre: width, height and viewBox carry the same numbers. All lines of one kind share
one path, since readers pay for each element and not for each stroke. The same sheet gives the same bytes
every time. The library that writes the elements is loaded when the first sheet is written.
"""

from __future__ import annotations

import math
import re
import xml.etree.ElementTree as ET
from collections.abc import Iterable, Iterator
from functools import lru_cache
from typing import TYPE_CHECKING, Any, NamedTuple

from ...errors import PaperError
from ..lettering import font_size, set_runs, text_width
from ..linework import KINDS, Linework, Pen
from ..primitives import SHARES, Clipped, Disc, Drawing, Fill, Line, Point, Text, flat
from .fonts import FAMILIES, face_rules

if TYPE_CHECKING:
    from ..sheets.sheet import Sheet

INK, PAPER = "#000", "#fff"
_UNWRITABLE = re.compile("[\x00-\x1f\x7f-\x9f\ud800-\udfff\ufffe\uffff]")


@lru_cache(maxsize=16_384)
def number(value: float) -> str:
    """A number for a file: three decimals at most, no trailing zeros, no minus nought; refused if not finite.

    >>> number(0.1 + 0.2), number(-0.0001), number(1600.0)
    ('0.3', '0', '1600')
    """
    if not math.isfinite(value):
        raise PaperError(f"{value!r} cannot be drawn: every number of a sheet must be finite.")
    text = f"{value:.3f}".rstrip("0").rstrip(".")
    return "0" if text == "-0" else text


def svg_text(sheet: Sheet, *, embed: bool = False, families: str = FAMILIES) -> str:
    """The sheet as SVG text: blank patches lowest, then lines, black fills, and text on top.

    Parameters
    ----------
    sheet : Sheet
    embed : bool
        Carry the drawing font, so that any browser shows the sheet alike: 19 kB for each weight that is written.
    families : str
        Font families, first choice first.
    """
    import svgwrite

    width, height = number(sheet.width), number(sheet.height)
    page = svgwrite.Drawing(size=(f"{width}mm", f"{height}mm"), viewBox=f"0 0 {width} {height}", debug=False)
    if embed and (weights := frozenset(t.bold for t in flat(sheet.whole) if isinstance(t, Text) and t.string)):
        page.defs.add(page.style(face_rules(weights)))
    page.add(page.path(d=f"M0 0H{width}V{height}H0Z", fill=PAPER))
    _add_all(page, page, sheet.whole, _How(sheet.linework, families, float(height)))
    text = str(page.tostring())
    _check_size(text, width, height)
    return text


class _How(NamedTuple):
    """How all of a sheet is written: its lines, its font, and the height that y is taken from."""

    linework: Linework
    families: str
    down: float


def _add_all(page: Any, onto: Any, drawing: Drawing, how: _How) -> None:
    """Cut-outs of drawings lowest, then white fills, lines, black fills, and text on top."""
    for item in drawing:
        if isinstance(item, Clipped):
            onto.add(_cut_out(page, item, how))
    _add_fills(page, onto, drawing, "white", how.down)
    _add_lines(page, onto, drawing, how.linework, how.down)
    _add_fills(page, onto, drawing, "black", how.down)
    _add_texts(page, onto, drawing, how.families, how.down)


def _cut_out(page: Any, item: Clipped, how: _How) -> Any:
    """A group that shows what lies in its box; each box is named by where it lies."""
    left, low, right, high = item.box
    edges = [number(left), number(how.down - high), number(right), number(how.down - low)]
    name = "window-" + "-".join(edges)
    if not any(child.get_id() == name for child in page.defs.elements if hasattr(child, "get_id")):
        window = page.defs.add(page.clipPath(id=name))
        window.add(page.path(d="M{0} {1}H{2}V{3}H{0}Z".format(*edges)))
    group = page.g(clip_path=f"url(#{name})")
    _add_all(page, group, item.drawing, how)
    return group


def _check_size(text: str, width: str, height: str) -> None:
    """Size and viewBox must carry the same numbers, or every mark would be off without a word."""
    head = text[: text.index(">")]
    for wanted in (f'width="{width}mm"', f'height="{height}mm"', f'viewBox="0 0 {width} {height}"'):
        if wanted not in head:
            raise PaperError(f"The sheet was not written at its size: {wanted} is missing.")


def _ring(points: Iterable[Point], down: float, *, closed: bool) -> str:
    steps = "L".join([f"{number(x)} {number(down - y)}" for x, y in points])
    return f"M{steps}Z" if closed else f"M{steps}"


def _circle(disc: Disc, down: float) -> str:
    """Two half circles, counter-clockwise on the page as filled rings are."""
    (x, y), r = disc.centre, number(disc.radius)
    left, right, level = number(x - disc.radius), number(x + disc.radius), number(down - y)
    return f"M{left} {level}A{r} {r} 0 0 0 {right} {level}A{r} {r} 0 0 0 {left} {level}Z"


def _strokes(drawing: Drawing, down: float) -> dict[str, list[str]]:
    found: dict[str, list[str]] = {}
    for item in drawing:
        if isinstance(item, Line) and len(item.points) > 1:
            found.setdefault(item.kind, []).append(_ring(item.points, down, closed=item.closed))
        elif isinstance(item, Disc) and not item.filled:
            found.setdefault(item.kind, []).append(_circle(item, down))
    return found


def _add_lines(page: Any, onto: Any, drawing: Drawing, linework: Linework, down: float) -> None:
    strokes = _strokes(drawing, down)
    for kind in KINDS:
        if kind in strokes:
            onto.add(page.path(d="".join(strokes[kind]), fill="none", stroke=INK, **_pen(linework.pen(kind))))


def _pen(pen: Pen) -> dict[str, str]:
    """Wide lines end round, so that two which meet in a corner close it; the others end square."""
    if pen.dashes:
        return {"stroke_width": number(pen.width), "stroke_dasharray": " ".join(map(number, pen.dashes))}
    ends = "round" if pen.width >= 0.5 else "butt"
    return {"stroke_width": number(pen.width), "stroke_linecap": ends, "stroke_linejoin": "round"}


def _add_fills(page: Any, onto: Any, drawing: Drawing, tone: str, down: float) -> None:
    """Plain rings share one path; a region with holes has its own, filled by the even-odd rule."""
    ink = INK if tone == "black" else PAPER
    plain = "".join(_plain_rings(drawing, tone, down))
    if plain:
        onto.add(page.path(d=plain, fill=ink))
    for item in drawing:
        if isinstance(item, Fill) and item.tone == tone and len(item.rings) > 1:
            rings = "".join(_ring(ring, down, closed=True) for ring in item.rings)
            onto.add(page.path(d=rings, fill=ink, fill_rule="evenodd"))


def _plain_rings(drawing: Drawing, tone: str, down: float) -> Iterator[str]:
    for item in drawing:
        if isinstance(item, Fill) and item.tone == tone and len(item.rings) == 1:
            yield _ring(_counter_clockwise(item.rings[0]), down, closed=True)
        elif isinstance(item, Disc) and item.filled and tone == "black":
            yield _circle(item, down)


def _counter_clockwise(ring: tuple[Point, ...]) -> tuple[Point, ...]:
    """Rings that go round one way never cancel where they overlap."""
    following = ring[1:] + ring[:1]
    area = sum(x0 * y1 - x1 * y0 for (x0, y0), (x1, y1) in zip(ring, following, strict=True))
    return ring if area >= 0 else ring[::-1]


def _add_texts(page: Any, onto: Any, drawing: Drawing, families: str, down: float) -> None:
    texts = [item for item in drawing if isinstance(item, Text) and item.string]
    if not texts:
        return
    group = page.g(font_family=families, fill=INK)
    for text in texts:
        for written in _written(text, down):
            group.add(written)
    onto.add(group)


class _Run:
    """A run of a text as an element: a page has many, and the library's own are four times as slow."""

    def __init__(self, words: str, how: dict[str, str]) -> None:
        self.words, self.how = words, how

    def get_xml(self) -> ET.Element:
        """What the library asks of an element."""
        element = ET.Element("text", self.how)
        element.text = self.words
        return element


def _written(text: Text, down: float) -> Iterator[_Run]:
    """The runs of a text, each with its place.

    A text of one run is held by its anchor. One of several is begun where each run stands: readers do not agree on
    what an anchor holds then.
    """
    string = _UNWRITABLE.sub("?", text.string)
    x, y = text.at[0], down - text.at[1]
    common = {"font-weight": "bold"} if text.bold else {}
    runs = set_runs(string, text.height, bold=text.bold)
    alone = len(runs) == 1 and len(runs[0].places) == 1
    if alone and text.anchor != "start":
        common["text-anchor"] = text.anchor
    if text.turn % 360:
        common["transform"] = f"rotate({number(-text.turn)} {number(x)} {number(y)})"
    if not alone:
        x -= SHARES[text.anchor] * text_width(string, text.height, bold=text.bold)
    for words, height, places in runs:
        how = {"font-size": _size(height), **common, "x": " ".join([number(x + along) for along, _ in places])}
        if words[0] == " " or words[-1] == " " or "  " in words:
            how["xml:space"] = "preserve"  # on the element itself: browsers do not inherit it
        how["y"] = " ".join([number(y - up) for _, up in places])
        yield _Run(words, how)


@lru_cache(maxsize=64)
def _size(height: float) -> str:
    return number(font_size(height))
