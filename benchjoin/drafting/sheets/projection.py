"""The sign that says on which side of a view its neighbours are drawn: a truncated cone, ISO 5456-2.

In first angle the view from the left stands on the right of the front view, in third angle on the left. The
cone's small end is on the left, so both its circles are seen from there. Proportions: our own.
"""

from __future__ import annotations

from typing import Literal

from ..primitives import Box, Disc, Drawing, Line, Point

Projection = Literal["first angle", "third angle"]

_LARGE, _SMALL, _LENGTH, _APART = 2.0, 1.0, 2.0, 0.9  # diameters, length and distance, in lettering heights
_PAST = 0.35  # of a centre line past what it belongs to
HEIGHT_SHARE = _LARGE + 2 * _PAST
WIDTH_SHARE = _LARGE + _LENGTH + _APART + 2 * _PAST


def projection_sign(projection: Projection, room: Box) -> Drawing:
    """The sign, as large as the room allows and in the middle of it."""
    x0, y0, x1, y1 = room
    h = min((x1 - x0) / WIDTH_SHARE, (y1 - y0) / HEIGHT_SHARE)
    left, right = (x0 + x1 - (WIDTH_SHARE - 2 * _PAST) * h) / 2, (x0 + x1 + (WIDTH_SHARE - 2 * _PAST) * h) / 2
    y = (y0 + y1) / 2
    if projection == "first angle":
        cone_at, centre = left, (right - _LARGE / 2 * h, y)
    else:
        cone_at, centre = right - _LENGTH * h, (left + _LARGE / 2 * h, y)
    return (*_cone(cone_at, y, h), *_circles(centre, h))


def _cone(x: float, y: float, h: float) -> Drawing:
    small, large = _SMALL / 2 * h, _LARGE / 2 * h
    corners: tuple[Point, ...] = (
        (x, y - small),
        (x + _LENGTH * h, y - large),
        (x + _LENGTH * h, y + large),
        (x, y + small),
    )
    axis = Line(((x - _PAST * h, y), (x + (_LENGTH + _PAST) * h, y)), "thin")
    return Line(corners, "thin", closed=True), axis


def _circles(centre: Point, h: float) -> Drawing:
    x, y = centre
    reach = (_LARGE / 2 + _PAST) * h
    return (
        Disc(centre, _LARGE / 2 * h, "thin"),
        Disc(centre, _SMALL / 2 * h, "thin"),
        Line(((x - reach, y), (x + reach, y)), "thin"),
        Line(((x, y - reach), (x, y + reach)), "thin"),
    )
