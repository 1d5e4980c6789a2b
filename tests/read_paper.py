"""Full-size paper as a person has it in hand: what other people's readers find on the pages of a PDF, laid on a table.

pypdfium2 gives strokes and pictures. pdfminer, which knows nothing of it, gives the words and where they stand, and
strokes to hold against the others. Nothing here asks the drawings; places are mm from the lower left corner of a page,
or on the table.
"""

from __future__ import annotations

import ctypes
from itertools import pairwise
from typing import NamedTuple

import numpy as np
import pypdfium2
import pypdfium2.raw as raw
from pdfminer.pdfdevice import PDFTextDevice
from pdfminer.pdfinterp import PDFPageInterpreter, PDFResourceManager
from pdfminer.pdfpage import PDFPage

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
    return [
        Page(tuple(side * POINT for side in page.get_size()), strokes_of(page), found.words)
        for page, found in zip(document, read_by_pdfminer(path), strict=True)
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


class Letter(NamedTuple):
    """A letter: the ends of its base line and the corners of its box, as x + yj, and its size."""

    text: str
    start: complex
    end: complex
    size: float
    corners: tuple

    def goes_on_in(self, other):
        """Whether the other follows where this one ends: on its line, or raised or lowered in a fraction."""
        along = (self.end - self.start) / abs(self.end - self.start)
        step, way = (other.start - self.end) / along, (other.end - other.start) / along
        size = max(self.size, other.size)
        return abs(step.real) < 0.2 * size and abs(step.imag) < 0.6 * size and abs(way.imag) < 1e-3 < way.real


def subpaths(path):
    """Parts of a path, each from where the pen is set down; those without a curve."""
    starts = [n for n, segment in enumerate(path) if segment[0] == "m"]
    parts = [path[start:end] for start, end in pairwise([*starts, len(path)])]
    return [part for part in parts if {kind for kind, *_ in part} <= set("mlh")]


class PageByPdfminer(PDFTextDevice):
    """What pdfminer meets on a page, in the order of the file: its letters, and the straight lines that are stroked."""

    def begin_page(self, page, ctm):
        left, low, right, high = page.mediabox
        self.size, self.letters, self.strokes = ((right - left) * POINT, (high - low) * POINT), [], []

    def render_char(self, matrix, font, fontsize, scaling, rise, cid, ncs, graphicstate):
        advance = font.char_width(cid) * fontsize * scaling
        a, b, c, d, e, f = (value * POINT for value in matrix)
        along, up = complex(a, b) * advance, complex(c, d) * fontsize
        start = complex(e, f) + complex(c, d) * rise
        low, high = start + up * font.get_descent(), start + up * font.get_ascent()
        corners = (low, high, low + along, high + along)
        self.letters.append(Letter(font.to_unichr(cid), start, start + along, abs(up), corners))
        return advance

    def paint_path(self, graphicstate, stroke, fill, evenodd, path):
        a, b, c, d, e, f = self.ctm
        for part in subpaths(path) if stroke else ():
            points = []
            for _, *numbers in part:
                x, y = numbers or part[0][1:]  # a path is closed without numbers
                here = ((a * x + c * y + e) * POINT, (b * x + d * y + f) * POINT)
                if not points or here != points[-1]:
                    points.append(here)
            if len(points) > 1:
                self.strokes.append(Stroke(graphicstate.linewidth * POINT, points))

    @property
    def words(self):
        """Lines of writing, each its words in order, level or turned; what lies off the page is left out."""
        wide, high = self.size
        seen = [one for one in self.letters if any(0 < z.real < wide and 0 < z.imag < high for z in one.corners)]
        lines, word = [], []
        for before, letter in zip([None, *seen], seen, strict=False):
            if before is None or not before.goes_on_in(letter):
                lines.append([])
                word = None
            if letter.text.isspace():
                word = None
            elif word is None:
                word = [letter]
                lines[-1].append(word)
            else:
                word.append(letter)
        return [[_word(letters) for letters in line] for line in lines if line]


def _word(letters):
    xs, ys = zip(*((z.real, z.imag) for one in letters for z in one.corners), strict=True)
    return Word("".join(one.text for one in letters), min(xs), min(ys), max(xs), max(ys))


def read_by_pdfminer(path):
    """Pages as pdfminer reads them: size, strokes and words."""
    manager = PDFResourceManager()
    device = PageByPdfminer(manager)
    interpreter = PDFPageInterpreter(manager, device)
    found = []
    with open(path, "rb") as file:
        for page in PDFPage.get_pages(file):
            interpreter.process_page(page)
            found.append(Page(device.size, device.strokes, device.words))
    return found


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
