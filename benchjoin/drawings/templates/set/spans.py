"""Spans: a set that is too long for a picture is shown in lengths, each broken off where nothing is cut."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise

import attrs

from ....drafting.primitives import Line, Point
from ....layout.sets import Band, PartSet

Span = tuple[float, float]
"""From where to where, from the datum end. [mm]"""
_CLEAR = 1.0


def spans(part_set: PartSet, count: int) -> tuple[Span, ...]:
    """So many lengths of a set, as equal as they can be broken off where nothing is cut; fewer where it cannot. [mm]"""
    long = max(part.length for part in part_set.members)
    taken = sorted({(item.cut.start, item.cut.end) for band in part_set.bands for item in (*band.waste, *band.touches)})
    clear, at = [], 0.0
    for start, end in [*taken, (long, long)]:
        if start - at > 2 * _CLEAR:
            clear.append((at, start))
        at = max(at, end)
    places = {0.0, long}
    for n in range(1, count):
        near = [min(max(long * n / count, low + _CLEAR), high - _CLEAR) for low, high in clear]
        places |= {min(near, key=lambda place, n=n: abs(place - long * n / count))} if near else set()  # type: ignore[misc]
    ends = sorted(places)
    return tuple(pairwise(ends))


def in_span(band: Band, span: Span | None) -> Band:
    """What of a band lies in a span."""
    if span is None:
        return band
    low, high = span
    return attrs.evolve(
        band,
        lines=tuple(line for line in band.lines if low <= line.at <= high),
        waste=tuple(item for item in band.waste if low <= item.cut.start and item.cut.end <= high),
        touches=tuple(item for item in band.touches if low <= item.cut.start and item.cut.end <= high),
    )


def outline(length: float, low: float, high: float, scale: float, span: Span | None) -> Iterator[Line]:
    """The face of a part, broken off where it goes on past the span."""
    start, end = (max(span[0], 0.0), min(span[1], length)) if span else (0.0, length)
    if start >= end:
        return
    x0, x1 = start * scale, end * scale
    if (start, end) == (0.0, length):
        yield Line(((x0, low), (x1, low), (x1, high), (x0, high)), "visible", closed=True)
        return
    yield from (Line(((x0, y), (x1, y)), "visible") for y in (low, high))
    for x, is_end in ((x0, start <= 0.0), (x1, end >= length)):
        yield Line(((x, low), (x, high)), "visible") if is_end else Line(tuple(_broken(x, low, high)))


def _broken(x: float, low: float, high: float) -> Iterator[Point]:
    """A thin line with a kink: the part goes on."""
    middle, kink = (low + high) / 2, min((high - low) / 6, 1.5)
    yield from ((x, low), (x, middle - kink), (x - kink, middle - kink / 3))
    yield from ((x + kink, middle + kink / 3), (x, middle + kink), (x, high))
