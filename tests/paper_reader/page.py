"""What is on a page of a PDF, by pypdfium2: strokes, fills and letters in the order of painting, each with its clip.

    pages = read_pages("binder.pdf")
    pages[3].strokes[0].width

A stroke is one line of a path from where the pen is set down, curves broken into chords. A clip is the region in which
something shows. All lengths are mm, places are mm from the lower left corner.
"""

from __future__ import annotations

import ctypes
import math
from functools import lru_cache
from operator import attrgetter
from typing import NamedTuple

import pypdfium2
import pypdfium2.raw as raw
import shapely

POINT = 25.4 / 72
CHORDS = 12
"""Chords of a curve."""
DARK = 160
"""A fill whose red, green and blue are all below this is ink; what is lighter covers what lies under it, of 255."""


class Stroke(NamedTuple):
    """A stroked line: its points, its width, and its dashes (drawn, left out, ...)."""

    points: tuple
    width: float
    dashes: tuple
    order: int
    clip: shapely.Polygon | None


class Fill(NamedTuple):
    """A filled region, dark as ink, or light as paper or a tint."""

    region: shapely.Geometry
    dark: bool
    order: int
    clip: shapely.Polygon | None


class Letter(NamedTuple):
    """A letter: the box of its ink (left, low, right, high), where it begins and where the next would, as x + yj.

    And the size and name of its font. Writing is level or upright; of a letter that slants the box is that round it.
    """

    text: str
    ink: tuple
    start: complex
    end: complex
    size: float
    font: str
    order: int
    clip: shapely.Polygon | None
    tall: float
    """How far its ink stands over the line that it begins on."""


class Page(NamedTuple):
    """A page: its number from 1, what its bookmark says, its size, and what is on it."""

    number: int
    title: str
    size: tuple
    strokes: list
    fills: list
    letters: list


def read_pages(source):
    """All pages of a PDF, given as a path or as bytes."""
    document = pypdfium2.PdfDocument(source)
    titles = {mark.get_dest().get_index(): mark.get_title() for mark in document.get_toc(max_depth=1)}
    found = [_page(document[n], n + 1, titles.get(n, "")) for n in range(len(document))]
    document.close()
    return found


def _page(page, number, title):
    gathered = _Gathered([], [], {})
    count = raw.FPDFPage_CountObjects(page)
    objects = [raw.FPDFPage_GetObject(page, n) for n in range(count)]
    _walk(objects, pypdfium2.PdfMatrix(), None, gathered)
    size = tuple(side * POINT for side in page.get_size())
    return Page(number, title, size, gathered.strokes, gathered.fills, _letters(page, gathered.texts))


class _Gathered(NamedTuple):
    strokes: list
    fills: list
    texts: dict
    """Where text objects lie in memory, to their font, order and clip."""

    @property
    def order(self):
        return len(self.strokes) + len(self.fills) + len(self.texts)


def _walk(objects, outer, clip, gathered):
    """Objects in the order of painting, those in forms too."""
    for item in objects:
        kind, own = raw.FPDFPageObj_GetType(item), _both(clip, _clip(item, outer))
        if kind == raw.FPDF_PAGEOBJ_PATH:
            _path(item, _matrix(item).multiply(outer), own, gathered)
        elif kind == raw.FPDF_PAGEOBJ_TEXT:
            font = _font(raw.FPDFTextObj_GetFont(item))
            gathered.texts[_address(item)] = (font, gathered.order, own)
        elif kind == raw.FPDF_PAGEOBJ_FORM:
            inner = [raw.FPDFFormObj_GetObject(item, n) for n in range(raw.FPDFFormObj_CountObjects(item))]
            _walk(inner, _matrix(item).multiply(outer), own, gathered)


def _matrix(item):
    found = raw.FS_MATRIX()
    assert raw.FPDFPageObj_GetMatrix(item, found)
    return pypdfium2.PdfMatrix.from_raw(found)


def _address(item):
    return ctypes.cast(item, ctypes.c_void_p).value


def _path(item, matrix, clip, gathered):
    fill, stroked, width = ctypes.c_int(), ctypes.c_int(), ctypes.c_float()
    assert raw.FPDFPath_GetDrawMode(item, fill, stroked)
    count = raw.FPDFPath_CountSegments(item)
    parts = list(_parts([raw.FPDFPath_GetPathSegment(item, n) for n in range(count)], matrix))
    order = gathered.order
    if fill.value:
        rings = [part for part in parts if len(part) > 2]
        if rings:
            region = _region(rings, by_turns=fill.value == raw.FPDF_FILLMODE_WINDING)
            gathered.fills.append(Fill(region, _is_dark(item), order, clip))
    if stroked.value:
        assert raw.FPDFPageObj_GetStrokeWidth(item, width)
        scale = math.sqrt(abs(matrix.a * matrix.d - matrix.b * matrix.c)) * POINT
        dashes = _dashes(item, scale)
        for part in parts:
            if len(part) > 1:
                gathered.strokes.append(Stroke(part, width.value * scale, dashes, order, clip))


def _region(rings, *, by_turns):
    """What rings fill: each second one inside another is left out, or, by turns, those that turn the other way."""
    whole = sorted((shapely.Polygon(ring) for ring in rings), key=lambda one: -one.area)
    if not by_turns:
        found = shapely.Polygon()
        for ring in whole:
            found = found.symmetric_difference(ring.buffer(0))
        return found
    left = [ring.buffer(0) for ring in whole if ring.exterior.is_ccw == whole[0].exterior.is_ccw]
    out = [ring.buffer(0) for ring in whole if ring.exterior.is_ccw != whole[0].exterior.is_ccw]
    return shapely.union_all(left).difference(shapely.union_all(out))


def _is_dark(item):
    red, green, blue, alpha = (ctypes.c_uint() for _ in range(4))
    assert raw.FPDFPageObj_GetFillColor(item, red, green, blue, alpha)
    return max(red.value, green.value, blue.value) < DARK


def _dashes(item, scale):
    count = raw.FPDFPageObj_GetDashCount(item)
    if count <= 0:
        return ()
    found = (ctypes.c_float * count)()
    assert raw.FPDFPageObj_GetDashArray(item, found, count)
    return tuple(length * scale for length in found) * (1 + count % 2)


def _parts(segments, matrix):
    """Parts of a path as points, each from where the pen is set down; closed ones end where they begin."""
    points, bends = [], []
    for segment in segments:
        x, y = ctypes.c_float(), ctypes.c_float()
        assert raw.FPDFPathSegment_GetPoint(segment, x, y)
        here = tuple(value * POINT for value in matrix.on_point(x.value, y.value))
        kind = raw.FPDFPathSegment_GetType(segment)
        if kind == raw.FPDF_SEGMENT_MOVETO:
            if points:
                yield tuple(points)
            points, bends = [here], []
        elif kind == raw.FPDF_SEGMENT_BEZIERTO:
            bends.append(here)
            if len(bends) == 3:
                points += _chords(points[-1], *bends)
                bends = []
        elif here != points[-1]:
            points.append(here)
        if raw.FPDFPathSegment_GetClose(segment) and points[-1] != points[0]:
            points.append(points[0])
    if points:
        yield tuple(points)


def _chords(a, b, c, d):
    for n in range(1, CHORDS + 1):
        t = n / CHORDS
        shares = ((1 - t) ** 3, 3 * t * (1 - t) ** 2, 3 * t * t * (1 - t), t**3)
        yield tuple(sum(s * p[k] for s, p in zip(shares, (a, b, c, d), strict=True)) for k in (0, 1))


def _clip(item, outer):
    """The region that an object's own clip leaves of it, or nothing if it has none."""
    path = raw.FPDFPageObj_GetClipPath(item)
    found = None
    for n in range(max(raw.FPDFClipPath_CountPaths(path), 0)):
        count = raw.FPDFClipPath_CountPathSegments(path, n)
        segments = [raw.FPDFClipPath_GetPathSegment(path, n, k) for k in range(count)]
        rings = tuple(part for part in _parts(segments, outer) if len(part) > 2)
        found = _both(found, _clip_region(rings))
    return found


@lru_cache(maxsize=1024)
def _clip_region(rings):
    return _region(rings, by_turns=True)


def _both(one, other):
    if one is None or other is None or one is other:
        return other if one is None else one
    return one.intersection(other)


def _letters(page, texts):
    """Letters in the order of the file; what pdfium puts between them to make words, and its order of them, are not."""
    text = page.get_textpage()
    found = []
    for n in range(text.count_chars()):
        held = _address(raw.FPDFText_GetTextObject(text, n))
        if held in texts and raw.FPDFText_IsGenerated(text, n) == 0:
            found.append(_letter(text, n, *texts[held]))
    return sorted(found, key=attrgetter("order"))


def _letter(text, n, font, order, clip):
    matrix = raw.FS_MATRIX()
    assert raw.FPDFText_GetMatrix(text, n, matrix)
    size = raw.FPDFText_GetFontSize(text, n) * math.hypot(matrix.c, matrix.d) * POINT
    along = complex(matrix.a, matrix.b) / math.hypot(matrix.a, matrix.b)
    x, y = ctypes.c_double(), ctypes.c_double()
    assert raw.FPDFText_GetCharOrigin(text, n, x, y)
    start = complex(x.value, y.value) * POINT
    ink = tuple(value * POINT for value in text.get_charbox(n))
    x0, y0, x1, y1 = (value * POINT for value in text.get_charbox(n, loose=True))
    end = start + along * (x1 - x0 if abs(along.real) > abs(along.imag) else y1 - y0)
    tall = max(((complex(ink[k], ink[m]) - start) / along).imag for k in (0, 2) for m in (1, 3))
    return Letter(chr(raw.FPDFText_GetUnicode(text, n)), ink, start, end, size, font, order, clip, tall)


def _font(font):
    """Name of a font, without the letters that mark it as a part of one."""
    length = raw.FPDFFont_GetBaseFontName(font, None, 0)
    name = ctypes.create_string_buffer(length)
    raw.FPDFFont_GetBaseFontName(font, name, length)
    return name.value.decode("utf-8").split("+")[-1]
