"""A finished PDF as cairo leaves it: its objects are read, and what cairo says of the document is said anew.

Cairo is asked for PDF 1.4, whose objects and table of places lie open. It writes the time and its own name into every
file. Here its catalogue and its card are taken out and ours put in: title, a bookmark and a label for each page, and
the wish to be printed unscaled, which belongs to PDF 1.6. So the file needs no other library and holds no clock.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping, Sequence
from typing import NamedTuple

from ...errors import PaperError

VERSION = b"%PDF-1.6"
_ENTRY = 20  # bytes of a line in the table of places
_PAGES = re.compile(rb"/Pages\s+(\d+) 0 R")
_KIDS = re.compile(rb"/Kids\s*\[([^]]*)\]")
_BOX = re.compile(rb"/\w+Box\s*\[([^]]*)\]")


class Mark(NamedTuple):
    """What is said of a page: its bookmark, and the number that is its label."""

    title: str
    number: int


class Parts(NamedTuple):
    """A file taken apart: its objects by number, and which of them are the catalogue and the card."""

    objects: Mapping[int, bytes]
    catalogue: int
    card: int

    def pages(self) -> list[int]:
        """Numbers of the pages, in order."""
        kids = _found(_KIDS, self.objects[self.root()])
        return [int(number) for number in re.findall(rb"(\d+) 0 R", kids)]

    def root(self) -> int:
        """Number of what lists the pages."""
        return int(_found(_PAGES, self.objects[self.catalogue]))

    def boxes(self, page: int) -> list[tuple[float, float]]:
        """Width and height of every box of a page. [pt]"""
        found = []
        for written in _BOX.findall(self.objects[page]):
            left, low, right, high = map(float, written.split())
            found.append((right - left, high - low))
        return found


def take_apart(data: bytes) -> Parts:
    """The objects of a PDF with a plain table of places.

    Raises
    ------
    PaperError
        If it is no such file.
    """
    try:
        start = int(data[data.rindex(b"startxref") + 9 :].split()[0])
        head = re.compile(rb"xref\s+0 (\d+)\s+").match(data, start)
        if head is None:
            raise ValueError("no plain table of places")
        lines = [data[head.end() + _ENTRY * n :][:_ENTRY].split() for n in range(int(head[1]))]
        places = {number: int(place) for number, (place, _, state) in enumerate(lines) if state == b"n"}
        trailer = data[head.end() + _ENTRY * len(lines) :]
        ends = dict(zip(sorted(places.values()), [*sorted(places.values())[1:], start], strict=True))
        objects = {number: data[place : ends[place]] for number, place in places.items()}
        catalogue, card = (int(_found(re.compile(rb"/%s (\d+) 0 R" % name), trailer)) for name in (b"Root", b"Info"))
    except (ValueError, IndexError) as error:
        raise PaperError("The cairo library wrote a PDF of a make that is not known here. It is not kept.") from error
    return Parts(objects, catalogue, card)


def _found(pattern: re.Pattern[bytes], written: bytes) -> bytes:
    found = pattern.search(written)
    if found is None:
        raise PaperError(f"The PDF has no {pattern.pattern.decode()!r} where one belongs. It is not kept.")
    return found[1]


def finish(data: bytes, title: str, marks: Sequence[Mark]) -> bytes:
    """What cairo wrote, with a title, marks of its pages, and the wish to be printed unscaled on paper of its size.

    Parameters
    ----------
    data : bytes
        As cairo wrote it.
    title : str
        Of the document.
    marks : sequence of Mark
        One for each page, in order.
    """
    parts = take_apart(data)
    objects = dict(parts.objects)
    outline = max(objects) + 1
    labels = b" ".join(b"%d << /S /D /St %d >>" % (index, mark.number) for index, mark in enumerate(marks))
    objects[parts.catalogue] = _written(
        parts.catalogue,
        b"/Type /Catalog /Pages %d 0 R /Outlines %d 0 R /PageLabels << /Nums [ %s ] >> "
        b"/ViewerPreferences << /PrintScaling /None /PickTrayByPDFSize true >>" % (parts.root(), outline, labels),
    )
    objects[parts.card] = _written(parts.card, b"/Title %s /Producer (benchjoin)" % _text(title))
    objects |= _bookmarks(outline, [mark.title for mark in marks], parts.pages())
    return _put_together(objects, parts)


def _bookmarks(first: int, titles: Sequence[str], pages: Sequence[int]) -> Iterable[tuple[int, bytes]]:
    """The list of bookmarks, and each of them, as objects that follow each other."""
    count = len(titles)
    yield (
        first,
        _written(first, b"/Type /Outlines /First %d 0 R /Last %d 0 R /Count %d" % (first + 1, first + count, count)),
    )
    for index, (title, page) in enumerate(zip(titles, pages, strict=True)):
        own = first + 1 + index
        before = b"/Prev %d 0 R " % (own - 1) if index else b""
        after = b"/Next %d 0 R " % (own + 1) if index + 1 < count else b""
        told = _text(title), first, before, after, page
        yield own, _written(own, b"/Title %s /Parent %d 0 R %s%s/Dest [ %d 0 R /Fit ]" % told)


def _written(number: int, entries: bytes) -> bytes:
    return b"%d 0 obj\n<< %s >>\nendobj\n" % (number, entries)


def _text(words: str) -> bytes:
    """Words as a PDF holds them: in Unicode, as figures, so that no sign means anything to a reader."""
    return b"<FEFF%s>" % words.encode("utf-16-be", "replace").hex().upper().encode()


def _put_together(objects: Mapping[int, bytes], parts: Parts) -> bytes:
    """Objects as a file, those that cairo wrote in its order."""
    head = VERSION + b"\n%\xb5\xed\xae\xfb\n"  # the second line tells that there are bytes beyond letters
    places, out, length = {}, [head], len(head)
    for number, written in objects.items():
        places[number] = length
        out.append(written)
        length += len(written)
    size = max(objects) + 1
    table = [b"%010d 00000 n \n" % places[n] if n in places else b"0000000000 65535 f \n" for n in range(size)]
    told = size, parts.catalogue, parts.card, length
    out += [
        b"xref\n0 %d\n" % size,
        *table,
        b"trailer\n<< /Size %d /Root %d 0 R /Info %d 0 R >>\nstartxref\n%d\n%%%%EOF\n" % told,
    ]
    return b"".join(out)
