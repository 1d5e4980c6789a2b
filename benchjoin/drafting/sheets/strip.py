"""The slim title strip: what a page is, in two lines along its foot, for lists and whatever is read at the desk.

The first line has the design, what the page shows, and which sheet it is; the second one scale, units, state and
fingerprint. A third one is there where the shop gives its name, a number, or who drew. A sheet that is measured from
has the sign of its projection. No field is written that is not given.

>>> from .title_block import TitleBlock
>>> strip_height(TitleBlock()), strip_height(TitleBlock(drawn_by="M. Reed"))
(12.0, 17.0)
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from ..lettering import shorten, text_width
from ..primitives import Drawing, Line, Primitive, Text, figure_middle
from .cells import INSET, LABEL, SMALLEST
from .projection import projection_sign
from .title_block import TitleBlock

FIRST, OTHER = 7.0, 5.0
"""Heights of the first line and of each other one. [mm]"""
TITLE = 3.5
"""Lettering of the design's name. [mm]"""
SIGN = 20.0
"""Width of the cell of the sign. [mm]"""
MOST_TITLE = 0.55
"""The design's name takes at most this share of its line; a longer one ends in an ellipsis."""
MOST_NUMBER = 0.4
"""So does the number of the sheet."""
_APART, _AFTER_LABEL = 3.5, 1.0
_LEAST = 8.0  # mm, what is shorter is not begun

Field = tuple[str, str]
"""Heading and value of what stands on a line."""


def strip_height(block: TitleBlock) -> float:
    """Height of the strip. [mm]"""
    return FIRST + OTHER * (2 if _shop(block) else 1)


def strip(block: TitleBlock, width: float, x: float, y: float) -> Drawing:
    """The strip of a width, its lower left corner at (x, y). [mm]"""
    tall, right = strip_height(block), x + width
    drawn: list[Primitive] = [Line(((x, y), (right, y), (right, y + tall), (x, y + tall)), "visible", closed=True)]
    if block.projection:
        right -= SIGN
        foot = y + tall - FIRST - OTHER
        drawn.append(Line(((right, foot), (right, y + tall)), "thin"))
        drawn += projection_sign(block.projection, (right + 1, foot + 1.2, x + width - 1, y + tall - 1.2))
    high = y + tall - FIRST
    drawn.append(Line(((x, high), (right, high)), "thin"))
    drawn += _first(block, x, right, figure_middle(high + FIRST / 2, SMALLEST))
    stamped = f"FINGERPRINT {block.fingerprint}" if block.fingerprint else ""
    drawn += _line(_state(block), stamped, x, right, figure_middle(high - OTHER / 2, SMALLEST))
    if _shop(block):
        drawn.append(Line(((x, high - OTHER), (x + width, high - OTHER)), "thin"))
        drawn += _line(_shop(block), "", x, x + width, figure_middle(high - OTHER * 1.5, SMALLEST))
    return tuple(drawn)


def _first(block: TitleBlock, left: float, right: float, y: float) -> Iterator[Primitive]:
    """The design, what the page shows, and which sheet it is, on one line of writing."""
    whole = text_width(block.sheet, SMALLEST) + text_width("Sheet", LABEL) + _AFTER_LABEL
    number = min(whole, (right - left) * MOST_NUMBER)
    room = right - left - 2 * INSET - (number + _APART if block.sheet else 0.0)
    title = shorten(" ".join(block.title.split()), TITLE, room * MOST_TITLE, bold=True)
    yield Text((left + INSET, y), title, TITLE, bold=True)
    taken = text_width(title, TITLE, bold=True) + _APART if title else 0.0
    yield from _fields((("", _what(block)),), left + INSET + taken, left + INSET + room, y)
    if block.sheet:
        yield from _fields((("Sheet", block.sheet),), right - INSET - number, right - INSET, y)


def _what(block: TitleBlock) -> str:
    """What the page shows, with the kind of drawing where it does not say that itself."""
    kind, piece = block.document_type, block.piece
    return piece if not kind or kind.lower() in piece.lower() else f"{kind}: {piece}" if piece else kind


def _state(block: TitleBlock) -> tuple[Field, ...]:
    return (
        ("Scale", block.scale),
        ("Units", block.units),
        ("Rev.", block.revision),
        ("Date", block.date),
    )


def _shop(block: TitleBlock) -> tuple[Field, ...]:
    shop = (
        ("Shop", block.owner),
        ("Drawing no.", block.number),
        ("Drawn by", block.drawn_by),
        ("Approved by", block.approved_by),
    )
    return tuple((label, name) for label, name in shop if name)


def _line(fields: Iterable[Field], last: str, left: float, right: float, y: float) -> Iterator[Primitive]:
    """Fields from the left on, and a word at the right end."""
    end = right - INSET
    if last:
        last = shorten(last, SMALLEST, end - left - INSET)
        yield Text((end, y), last, SMALLEST, "end")
        end -= text_width(last, SMALLEST) + _APART
    yield from _fields(fields, left + INSET, end, y)


def _fields(fields: Iterable[Field], x: float, end: float, y: float) -> Iterator[Text]:
    """Headings and values one after the other, as far as they go; the last one may end in an ellipsis."""
    for label, value in fields:
        start = x + (text_width(label, LABEL) + _AFTER_LABEL if label else 0.0)
        whole = " ".join(value.split())
        if not whole or end - start < min(_LEAST, text_width(whole, SMALLEST)):
            continue
        if label:
            yield Text((x, y), label, LABEL)
        told = shorten(whole, SMALLEST, end - start + 1e-9)
        yield Text((start, y), told, SMALLEST)
        x = start + text_width(told, SMALLEST) + _APART
