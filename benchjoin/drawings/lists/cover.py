"""The cover of a binder: the picture, the contents, the key sizes, and what must be known before the first cut.

The contents stand beside the picture or below it, whichever lets it be larger. Where they leave it too little room,
they have a page of their own, and so have the key sizes.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from typing import Unpack

import attrs

from ...drafting.lettering import wrap
from ...drafting.primitives import Box, Text, bounds, shift
from ...drafting.sheets.arrange import place_in
from ...drafting.sheets.figure import Figure
from ...drafting.sheets.ruled import PITCH, TEXT
from ...drafting.sheets.sheet import Sheet
from ...findings import counts
from ...frame.roles import Role
from ...layout.layout import Layout
from ...layout.parts import Part
from ...phrases import pieces_called
from ...shop.called import several
from ...shop.weighed import weighed
from ...tables import Table
from ..making.asked import Asked, OnPaper, ask
from ..making.flowing import GAP, Listed
from ..making.house import Reader, reader
from ..making.maker import make, ruled
from ..making.notes import pointed, told
from ..making.pieces import whose
from ..views.isometric import Picture, picture_of
from .contents import CONTENTS, Entry, contents, paper_called
from .reading import reading
from .table_figure import points_in_two, title_lines, titled

BESIDE = 86.0
"""Width of the contents beside the picture. [mm]"""
LEAST, LARGEST = 50.0, 0.2
"""A picture is at least so high or so wide [mm], and is drawn at 1:5 at most."""
SAID = 6.0
"""Room below the picture for whose it is. [mm]"""
MOST_NAMED = 8
"""Levels that are named one by one."""
MOST_TOLD = 6
"""So many findings are told on a cover that no list goes with; the rest are counted."""


def cover(layout: Layout, **options: Unpack[OnPaper]) -> Sheet:
    """The cover of one design; options are paper and house, as `Asked` has them.

    Raises
    ------
    PaperError
        If the paper is too small for a title strip.
    """
    return covers(layout, ask(layout, OnPaper, options))(())[0]


def cover_pages(layout: Layout, asked: Asked) -> tuple[Sheet | Listed, ...]:
    """The cover without contents."""
    sheet, more = covers(layout, asked)(())
    return (sheet, *more)


def covers(layout: Layout, asked: Asked) -> Callable[[Sequence[Entry]], tuple[Sheet, tuple[Listed, ...]]]:
    """The cover with contents that it is given, and lists of what has no room on it."""
    page = ruled(asked, asked.papers[0])
    wide, paper = page.inside[2] - page.inside[0], paper_called(*page.size)
    name, shown, of = layout.frame.name, picture_of(attrs.evolve(asked, piece=1)), whose(layout, 1)
    foot = list(_foot(layout, asked, wide))
    words = attrs.evolve(page.words, piece="Build binder")
    sizes = Listed(name="key-sizes", title="Key sizes", figures=lambda w: list(_foot(layout, asked, w)))

    def made(drawn: _Cover | None, *more: Listed) -> tuple[Sheet, tuple[Listed, ...]]:
        items, scale = (drawn.items, drawn.scale) if drawn else ((), 1.0)
        house = attrs.evolve(asked.house, linework=asked.house.linework.fitted(shown.apart * scale))
        return make(*items, house=house, name="cover", title=name, size=page.size, words=words), more

    def laid(own: Sequence[Figure], aside: Figure | None = None) -> _Cover | None:
        return _laid(name, page.inside, shown, of, own, aside)

    def cover_with(listed: Sequence[Entry]) -> tuple[Sheet, tuple[Listed, ...]]:
        own = Listed(name="contents", title=CONTENTS, figures=lambda w: [contents(listed, w, paper)])
        if not listed:
            drawn = laid(foot)
            return made(drawn) if drawn else made(laid([]), sizes)
        ways = (laid(foot, contents(listed, BESIDE, paper)), laid([*foot, contents(listed, wide, paper, columns=2)]))
        drawn = max((way for way in ways if way), key=lambda way: way.scale, default=None)
        if drawn:
            return made(drawn)
        drawn = laid(foot)
        return made(drawn, own) if drawn else made(laid([]), own, sizes)

    return cover_with


@attrs.frozen
class _Cover:
    """What stands on a cover, how large its picture is, and who draws that."""

    scale: float
    picture: Callable[[], Figure]
    others: tuple[Figure, ...]

    @property
    def items(self) -> tuple[Figure, ...]:
        """All of it, the picture first."""
        return (self.picture(), *self.others)


def _laid(
    name: str, inside: Box, shown: Picture, of: str, foot: Sequence[Figure], aside: Figure | None
) -> _Cover | None:
    """The picture above what stands at the foot, and something on its right; None where it has too little room."""
    left, low, right, top = inside
    placed: list[Figure] = []
    for figure in reversed(foot):
        placed.insert(0, figure.moved(left, low - figure.bounds[1]))
        low += figure.size[1] + GAP
    if aside:
        if aside.size[1] > top - low:
            return None
        placed.append(aside.moved(right - BESIDE, top - aside.bounds[3]))
        right -= BESIDE + GAP
    x0, y0, x1, y1 = shown.lines.bounds
    under = SAID if of else 0.0
    scale = min(LARGEST, (right - left) / (x1 - x0), (top - low - under) / (y1 - y0))
    if max(x1 - x0, y1 - y0) * scale < LEAST:
        return None

    def drawn() -> Figure:
        drawing = place_in(shown.drawing(scale), (left, low + under, right, top))
        a, b, c, _ = bounds(drawing)
        said = (Text(((a + c) / 2, b - SAID + 1.0), f"{of[0].upper()}{of[1:]}", TEXT, "middle"),) if of else ()
        return Figure(name=name, drawing=(*drawing, *said))

    return _Cover(scale, drawn, tuple(placed))


def _foot(layout: Layout, asked: Asked, wide: float) -> Iterator[Figure]:
    """Key sizes, findings, and how to read the sheets, one below the other. [mm]"""
    yield from titled(key_sizes(layout, reader(layout.frame, asked.house)), wide)
    yield Figure(name="Findings in short", drawing=tuple(_findings(asked, wide)))
    title, start = title_lines("How to read the sheets", wide)
    points, _ = points_in_two(tuple(reading(layout.frame, asked.house)), wide)
    yield Figure(name="How to read the sheets", drawing=(*title, *shift(points, 0.0, start)))


def key_sizes(layout: Layout, read: Reader) -> Table:
    """What it is, how large, of what, how many, and how heavy."""
    frame = layout.frame
    rows = (
        *_of_pieces(layout, read),
        ("Stock", "; ".join(dict.fromkeys(part.stock.name for part in layout.parts))),
        *_held(frame.against),
        ("Make", str(frame.quantity)),
    )
    return Table("Key sizes", ("What", "How much"), rows)


def _held(against: str | None) -> Iterator[tuple[str, str]]:
    """What holds a piece that does not stand by itself."""
    if against:
        yield "Held by", f"the {against}"


def _of_pieces(layout: Layout, read: Reader) -> Iterator[tuple[str, str]]:
    """Sizes and counts of one piece; where pieces come out unlike, of each kind of them."""
    found: dict[str, dict[str, list[int]]] = {}
    for alike in layout.alike:
        for what, said in _of_piece(layout, alike[0], read):
            found.setdefault(what, {}).setdefault(said, []).extend(alike)
    for what, ways in found.items():
        for said, pieces in ways.items():
            yield (f"{what}, {pieces_called(sorted(pieces))}" if len(pieces) < layout.frame.quantity else what), said


def _of_piece(layout: Layout, piece: int, read: Reader) -> Iterator[tuple[str, str]]:
    length, depth, height = layout.overall(piece)
    over = f"{read(length)} long, {read(depth)} deep, {read(height)} high ({layout.frame.tape.unit})"
    yield "Over everything", over
    roles: dict[Role, list[Part]] = {}
    for part in layout.piece(piece):
        roles.setdefault(part.slot.role, []).append(part)
    for role, own in roles.items():
        how = _heights(own, read) if own[0].slot.role.stands else _levels(layout, own)
        yield role.plural.capitalize(), f"{len(own)}, {how}"
    yield "Weight", weighed(layout, piece)


def _heights(parts: Sequence[Part], read: Reader) -> str:
    """Of what stands: how high as described, whatever stands finished."""
    return f"{' and '.join(read(height) for height in sorted({part.length for part in parts}))} high"


def _levels(layout: Layout, parts: Sequence[Part]) -> str:
    on = {part.level for part in parts}
    levels = [level.name for level in layout.frame.levels() if level.name in on]
    named = ", ".join(levels) if len(levels) <= MOST_NAMED else several(levels)
    return f"in {len(levels)} level{'s' * (len(levels) != 1)}: {named}"


def _findings(asked: Asked, wide: float) -> Iterator[Text]:
    """How many findings there are, and the first ones that drawings write, in words, or where they stand."""
    low = -TEXT
    yield Text((0.0, low), f"Findings: {counts(asked.findings) or 'none'}", TEXT, bold=True)
    for line in (line for words in _told(asked) for line in wrap(words, TEXT, wide)):
        low -= PITCH
        yield Text((0.0, low), line, TEXT)


def _told(asked: Asked) -> Iterator[str]:
    if asked.numbered:
        for severity, what in (("error", "It cannot be built as it stands"), ("warning", "Think again")):
            found = [finding for finding in asked.findings if finding.severity == severity]
            if found:
                yield f"{what}: {' '.join(pointed(asked, found))}"
        return
    first = asked.for_drawings[:MOST_TOLD]
    yield from map(told, first)
    more = len(asked.findings) - len(first)
    if more > 0:
        yield f"… and {more} more in the list of findings." if first else "See the list of findings."
