"""Write a sheet as SVG: the one place where y is turned over and numbers become text.

One user unit is one millimetre: width, height and viewBox carry the same numbers. All lines of one kind share
one path, since readers pay for each element and not for each stroke. The same sheet gives the same bytes
every time. The library that writes the page with its size, its font and its paper is loaded when the first sheet is
written; the hundreds of lines and texts on it are one long template, filled with all their numbers at once.
"""

from __future__ import annotations

import math
import re
from collections.abc import Iterable, Sequence
from functools import cache, lru_cache
from itertools import groupby
from typing import TYPE_CHECKING, cast

from ...errors import PaperError
from ..lettering import Run, font_size
from ..linework import Linework, Pen
from ..primitives import Clipped, Disc, Fill, Line, Point, Text, flat
from .fonts import FAMILIES, face_rules
from .layers import INK, TONES, counter_clockwise, ends_round, lies_before, paint, runs_of

if TYPE_CHECKING:
    from ..sheets.sheet import Sheet

INKS = {tone: "#" + 3 * f"{round(15 * light):x}" for tone, light in TONES.items()}
_END = "\0"  # behind every number until its noughts are trimmed; words have none
_NUMBER = f"%.3f{_END}"
_POINT = f"{_NUMBER} {_NUMBER}"
_MARKUP = re.compile("[&<>]")
_marked = _MARKUP.search
_WRITTEN = {"&": "&amp;", "<": "&lt;", ">": "&gt;"}
_CIRCLE = f"M{_POINT}A{_POINT} 0 0 0 {_POINT}A{_POINT} 0 0 0 {_POINT}Z"


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


def filled(template: str, values: Iterable[float | str]) -> str:
    """A template with its numbers, each as `number` writes it: noughts are trimmed in all of them at once.

    A number for each ``%.3f``, which the sign of its end follows; words for each ``%s``.
    """
    text = template % tuple(values)
    text = text.replace(f"-0.000{_END}", "0").replace(f".000{_END}", "")
    return text.replace(f"00{_END}", "").replace(f"0{_END}", "").replace(_END, "")


def svg_text(sheet: Sheet, *, embed: bool = False) -> str:
    """The sheet as SVG text: blank patches lowest, then lines, black fills, and text on top.

    Parameters
    ----------
    sheet : Sheet
    embed : bool
        Carry the drawing font, so that any browser shows the sheet alike: 19 kB for each weight that is written.
    """
    width, height = number(sheet.width), number(sheet.height)
    elements = _Elements(sheet.linework, float(height))
    paint(sheet.whole, elements)
    weights = frozenset(t.bold for t in flat(sheet.whole) if isinstance(t, Text) and t.string) if embed else frozenset()
    text = _page(weights) % {
        "width": width,
        "height": height,
        "windows": elements.defined(),
        "elements": elements.written(),
    }
    _check_size(text, width, height)
    return text.replace("<defs></defs>", "<defs />", 1)


def fluid(text: str) -> str:
    """SVG text that takes the width it is given on a screen, and keeps its shape."""
    head, mark, rest = text.partition(" viewBox=")
    start = head.rindex("<svg")
    return f'{head[:start]}<svg style="width:100%;height:auto" xmlns="http://www.w3.org/2000/svg"{mark}{rest}'


@cache
def _page(weights: frozenset[bool]) -> str:
    """A page as a template: its size, the font in these weights, windows, white paper, and its elements on it."""
    import svgwrite

    width, height, windows, elements = (f"%({word})s" for word in ("width", "height", "windows", "elements"))
    page = svgwrite.Drawing(size=(f"{width}mm", f"{height}mm"), viewBox=f"0 0 {width} {height}", debug=False)
    if weights:
        page.defs.add(page.style(face_rules(weights)))
    page.add(page.path(d=f"M0 0H{width}V{height}H0Z", fill=INKS["white"]))
    text = str(page.tostring()).replace("</svg>", f"{elements}</svg>")
    return text.replace("</defs>", f"{windows}</defs>").replace("<defs />", f"<defs>{windows}</defs>")


def _check_size(text: str, width: str, height: str) -> None:
    """Size and viewBox must carry the same numbers, or every mark would be off without a word."""
    head = text[: text.index(">")]
    for wanted in (f'width="{width}mm"', f'height="{height}mm"', f'viewBox="0 0 {width} {height}"'):
        if wanted not in head:
            raise PaperError(f"The sheet was not written at its size: {wanted} is missing.")


class _Elements:
    """Puts layers down as elements: a template, and the numbers that go into it."""

    def __init__(self, linework: Linework, down: float) -> None:
        self.linework, self.down = linework, down
        self.template: list[str] = []
        self.values: list[float | str] = []
        self.windows: dict[str, str] = {}

    def defined(self) -> str:
        """The windows through which cut-outs are seen."""
        return "".join([f'<clipPath id="{name}"><path d="{edge}" /></clipPath>' for name, edge in self.windows.items()])

    def written(self) -> str:
        """All elements, as text."""
        return filled("".join(self.template), self.values)

    def cut_out(self, item: Clipped) -> None:
        """A group that shows what lies in its box; each box is named by where it lies."""
        left, low, right, high = item.box
        edges = [number(left), number(self.down - high), number(right), number(self.down - low)]
        name = "window-" + "-".join(edges)
        self.windows[name] = "M{0} {1}H{2}V{3}H{0}Z".format(*edges)
        self.template.append(f'<g clip-path="url(#{name})">')
        paint(item.drawing, self)
        self.template.append("</g>")

    def stroke(self, kind: str, lines: Sequence[Line | Disc]) -> None:
        self._path(lines, f'fill="none" stroke="{INKS[INK]}"{_pen(self.linework.pen(kind))}')

    def fill(self, tone: str, whole: Sequence[Fill | Disc], holed: Sequence[Fill]) -> None:
        ink = f'fill="{INKS[tone]}"'
        if whole:
            self._path(whole, ink)
        for item in holed:
            self.template.append('<path d="')
            self._rings(item.rings)
            self.template.append(f'" {ink} fill-rule="evenodd" />')

    def _path(self, items: Sequence[Line | Fill | Disc], how: str) -> None:
        """One path of all these."""
        self.template.append('<path d="')
        for _, alike in groupby(items, type):
            own = tuple(alike)
            if isinstance(own[0], Line):
                self._lines(cast(Sequence[Line], own))
            elif isinstance(own[0], Fill):
                self._rings([counter_clockwise(item.rings[0]) for item in cast(Sequence[Fill], own)])
            else:
                self._circles(cast(Sequence[Disc], own))
        self.template.append(f'" {how} />')

    def _rings(self, rings: Sequence[Sequence[Point]]) -> None:
        down = self.down
        self.template += [_steps(len(ring), True) for ring in rings]
        self._put([value for ring in rings for x, y in ring for value in (x, down - y)])

    def _lines(self, lines: Sequence[Line]) -> None:
        down = self.down
        self.template += [_steps(len(line.points), line.closed) for line in lines]
        self._put([value for line in lines for x, y in line.points for value in (x, down - y)])

    def _put(self, numbers: list[float]) -> None:
        if not math.isfinite(sum(numbers)):  # one sum finds any nan or infinity
            raise PaperError("A line cannot be drawn: every number of a sheet must be finite, and this one has others.")
        self.values += numbers

    def _circles(self, discs: Iterable[Disc]) -> None:
        """Two half circles each, counter-clockwise on the page as filled rings are."""
        for disc in discs:
            (x, y), r = disc.centre, disc.radius
            level = self.down - y
            self.template.append(_CIRCLE)
            self.values += (x - r, level, r, r, x + r, level, r, r, x - r, level)

    def letter(self, texts: Sequence[Text]) -> None:
        self.template.append(f'<g fill="{INKS[INK]}" font-family="{FAMILIES}">')
        for text in texts:
            (x, y), runs = text.at, runs_of(text)
            y = self.down - y
            turned = (-text.turn, x, y) if text.turn and text.turn % 360 else ()
            if len(runs) == 1 and len(runs[0].places) == 1:
                self._run(text, text.anchor, runs[0], turned, (x, y))
                continue
            # Of several runs each is begun where it stands: readers do not agree on what an anchor holds then.
            x -= lies_before(text)
            for run in runs:
                places = *[x + along for along, _ in run.places], *[y - up for _, up in run.places]
                self._run(text, "start", run, turned, places)
        self.template.append("</g>")

    def _run(self, text: Text, anchor: str, run: Run, turned: tuple[float, ...], places: tuple[float, ...]) -> None:
        words = run.string
        kept = words[0] == " " or words[-1] == " " or "  " in words
        self.template.append(_element(run.height, text.bold, anchor, bool(turned), kept, len(run.places)))
        if _marked(words):
            words = _MARKUP.sub(lambda sign: _WRITTEN[sign[0]], words)
        self.values += (*turned, *places, words)


@lru_cache(maxsize=1024)
def _element(height: float, bold: bool, anchor: str, turned: bool, kept: bool, count: int) -> str:
    """A run of so many places, as a template of its turn, its places and its words."""
    told = [f'<text font-size="{number(font_size(height))}"']
    if bold:
        told.append('font-weight="bold"')
    if anchor != "start":
        told.append(f'text-anchor="{anchor}"')
    if turned:
        told.append(f'transform="rotate({_NUMBER} {_POINT})"')
    numbers = " ".join([_NUMBER] * count)
    told.append(f'x="{numbers}"')
    if kept:
        told.append('xml:space="preserve"')  # on the element itself: browsers do not inherit it
    return f'{" ".join(told)} y="{numbers}">%s</text>'


@lru_cache(maxsize=1024)
def _steps(count: int, closed: bool) -> str:
    """The template of a polyline of so many points."""
    steps = "L".join([_POINT] * count)
    return f"M{steps}Z" if closed else f"M{steps}"


@lru_cache(maxsize=64)
def _pen(pen: Pen) -> str:
    width = number(pen.width)
    if pen.dashes:
        return f' stroke-dasharray="{" ".join(map(number, pen.dashes))}" stroke-width="{width}"'
    ends = "round" if ends_round(pen) else "butt"
    return f' stroke-linecap="{ends}" stroke-linejoin="round" stroke-width="{width}"'
