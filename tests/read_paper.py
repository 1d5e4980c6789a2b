"""Full-size paper as a person has it in hand: what other people's readers find on the pages of a PDF, laid on a table.

pypdfium2 gives strokes and pictures, poppler's pdftotext the words and where they stand. Nothing here asks the
drawings; places are mm from the lower left corner of a page, or on the table.
"""

from __future__ import annotations

import ctypes
import re
import subprocess
import xml.etree.ElementTree as ET
from typing import NamedTuple

import numpy as np
import pypdfium2
import pypdfium2.raw as raw

POINT = 25.4 / 72
CROSS = 10.0


class Stroke(NamedTuple):
    width: float
    points: list


class Word(NamedTuple):
    text: str
    left: float
    low: float
    right: float
    high: float


class Page(NamedTuple):
    """Size, strokes and words of a page."""

    size: tuple
    strokes: list
    words: list


def read_pages(path):
    document = pypdfium2.PdfDocument(path)
    words = read_words(path)
    return [
        Page(tuple(side * POINT for side in page.get_size()), strokes_of(page), found)
        for page, found in zip(document, words, strict=True)
    ]


def strokes_of(page):
    found = []
    for item in page.get_objects(filter=[raw.FPDF_PAGEOBJ_PATH], max_depth=5):
        fill, stroked, width = ctypes.c_int(), ctypes.c_int(), ctypes.c_float()
        assert raw.FPDFPath_GetDrawMode(item, fill, stroked)
        if stroked.value:
            assert raw.FPDFPageObj_GetStrokeWidth(item, width)
            matrix = item.get_matrix()
            found += [Stroke(width.value * abs(matrix.a) * POINT, points) for points in _subpaths(item, matrix)]
    return found


def _subpaths(item, matrix):
    points, first, curved = [], None, False
    for n in range(raw.FPDFPath_CountSegments(item)):
        segment = raw.FPDFPath_GetPathSegment(item, n)
        x, y = ctypes.c_float(), ctypes.c_float()
        assert raw.FPDFPathSegment_GetPoint(segment, x, y)
        here = tuple(v * POINT for v in matrix.on_point(x.value, y.value))
        kind = raw.FPDFPathSegment_GetType(segment)
        if kind == raw.FPDF_SEGMENT_MOVETO:
            if len(points) > 1 and not curved:
                yield points
            points, first, curved = [here], here, False
        else:
            curved = curved or kind == raw.FPDF_SEGMENT_BEZIERTO
            if here != points[-1]:
                points.append(here)
        if raw.FPDFPathSegment_GetClose(segment) and points[-1] != first:
            points.append(first)
    if len(points) > 1 and not curved:
        yield points


def read_words(path):
    """Lines of writing of each page by poppler, each its words in order."""
    told = subprocess.run(["pdftotext", "-bbox-layout", str(path), "-"], capture_output=True, check=True).stdout
    root = ET.fromstring(re.sub(rb"[^\x09\x0a\x0d\x20-\xff]", b"?", told))
    spaces = "{http://www.w3.org/1999/xhtml}"
    pages = []
    for page in root.iter(f"{spaces}page"):
        high = float(page.get("height"))
        lines = []
        for line in page.iter(f"{spaces}line"):
            words = []
            for word in line.iter(f"{spaces}word"):
                x0, y0, x1, y1 = (float(word.get(name)) * POINT for name in ("xMin", "yMin", "xMax", "yMax"))
                words.append(Word(word.text or "", x0, high * POINT - y1, x1, high * POINT - y0))
            lines.append(words)
        pages.append(lines)
    return pages


def uprights(strokes, width=None):
    """Upright single lines: x, lower end, upper end."""
    for stroke in strokes:
        if len(stroke.points) == 2 and (width is None or abs(stroke.width - width) < 0.01):
            (x0, y0), (x1, y1) = stroke.points
            if abs(x0 - x1) < 1e-3 < abs(y0 - y1):
                yield (x0 + x1) / 2, min(y0, y1), max(y0, y1)


def levels(strokes, width=None):
    turned = [Stroke(stroke.width, [(y, x) for x, y in stroke.points]) for stroke in strokes]
    return uprights(turned, width)


def crosses(strokes, scale=(1.0, 1.0)):
    """Middles of an upright and a level line of 10 mm that cross in the middle of both."""
    tall = [(x, (a + b) / 2) for x, a, b in uprights(strokes) if abs(b - a - CROSS * scale[1]) < 0.02]
    wide = [((a + b) / 2, y) for y, a, b in levels(strokes) if abs(b - a - CROSS * scale[0]) < 0.02]
    return sorted({t for t in tall for w in wide if abs(t[0] - w[0]) < 0.02 and abs(t[1] - w[1]) < 0.02})


class Table:
    """A table in mm from its lower left corner, on which pages are laid and looked at from above, as grey pixels."""

    def __init__(self, left, low, right, high, dpi):
        self.left, self.high, self.scale = left, high, dpi / 25.4
        shape = (int(np.ceil((high - low) * self.scale)), int(np.ceil((right - left) * self.scale)))
        self.pixels = np.full(shape, 255, dtype=np.uint8)

    def lay(self, page, at, *, cut, printed=(1.0, 1.0), offset=(0.0, 0.0)):
        """Lay a page with its lower left corner at a place, cut to a box of the table, after a printer had it."""
        rows, columns = self.pixels.shape
        high, k = page.get_height(), self.scale
        bitmap = pypdfium2.PdfBitmap.new_native(columns, rows, pypdfium2.raw.FPDFBitmap_Gray)
        bitmap.fill_rect((255, 255, 255, 255), 0, 0, columns, rows)
        a, d = POINT * printed[0] * k, POINT * printed[1] * k
        e = (offset[0] + at[0] - self.left) * k
        f = (self.high - high * POINT * printed[1] - offset[1] - at[1]) * k
        matrix = raw.FS_MATRIX(a, 0, 0, d, e, f)
        whole = raw.FS_RECTF(0, 0, columns, rows)
        raw.FPDF_RenderPageBitmapWithMatrix(bitmap, page, matrix, whole, 0)
        picture = bitmap.to_numpy().reshape(rows, -1)[:, :columns]
        box = self.slices(*cut)
        self.pixels[box] = picture[box]

    def slices(self, left, low, right, high):
        x0, x1 = round((left - self.left) * self.scale), round((right - self.left) * self.scale)
        y0, y1 = round((self.high - high) * self.scale), round((self.high - low) * self.scale)
        return slice(max(y0, 0), max(y1, 0)), slice(max(x0, 0), max(x1, 0))


def spread_ink(pixels, by=1):
    """Where there is ink within some pixels."""
    ink = pixels < 200
    found = ink.copy()
    for dy in range(-by, by + 1):
        for dx in range(-by, by + 1):
            found |= np.roll(np.roll(ink, dy, axis=0), dx, axis=1)
    return found


def missing(wanted, there):
    """How many dark pixels of one picture have no ink near them in the other."""
    return int(((wanted < 100) & ~spread_ink(there)).sum())
