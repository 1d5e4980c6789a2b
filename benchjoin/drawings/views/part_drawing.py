"""Part drawings: each distinct part with all that is needed to make it, and nothing of its neighbours.

One block a kind: what it is and how many are made, a view of every face that is cut (or of the marked face) with its
shoulders on a running line from the datum end, the depth of each cut over it, and the width of the face. An edge is
added where only one face is cut, so that both sides of the section are there. Edges stand on the side of the marked
face that the projection sign says: in third angle an upper edge above it, in first angle below. Long empty stretches
are broken. What a face shows is worked out once (`_face`) and laid on paper at each scale that is tried (`_laid`).
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from functools import cache
from itertools import pairwise
from typing import Unpack

import attrs
from shapely.affinity import translate
from shapely.geometry.base import BaseGeometry

from ...drafting.dimensions.running import running
from ...drafting.dimensions.span import overall
from ...drafting.dimensions.spread import spread
from ...drafting.lettering import text_width, wrap
from ...drafting.linework import Linework
from ...drafting.primitives import Drawing, Line, Primitive, Text, bounds, shift
from ...drafting.sheets.figure import Figure
from ...drafting.sheets.sheet import Sheet
from ...findings import Finding
from ...frame.faces import AXIS, OPPOSITE, OUT
from ...frame.frame import Frame
from ...frame.roles import rank
from ...frame.slots import Slot
from ...layout.done import to_make
from ...layout.edges import shaped_edges
from ...layout.layout import Layout
from ...layout.on_face import OnFace
from ...layout.parts import Part, face_up
from ...layout.spacing import common_lines
from ...lengths import TOUCH, distinct, steady
from ...outlines import SAG
from ...shop.called import called
from ...shop.done import done_note
from ...shop.fasteners.fixing import Hole
from ...shop.fasteners.on_face import HoleOnFace, bored_faces, holes_on, told
from ...shop.marks import marks
from ...shop.settings.notching import DATUM_ENDS
from ...solids import along as measured
from ..making.asked import Asked, OfParts, ask
from ..making.house import Reader, projection, reader
from ..making.notes import concerning, finding_notes
from ..making.packed import packed_sheets
from .bored import bored
from .broken import Broken, broken, lay, zigzags
from .repeated import Together, lines_told, together
from .strokes import dashed, solid
from .view import Eye, view

LARGEST = 0.2
"""Parts are drawn at 1:5 at most, or as large as their length is at most so long on paper: [mm]"""
LONGEST = 160.0
TEXT = 2.5
PITCH = 4.2
LEFT_OF_VIEW = 4.0
"""Depths over the view may begin so far to its left. [mm]"""
LEAST_WIDE = 82.0
"""Words over narrow views are written at least so wide. [mm]"""


def part_drawings(layout: Layout, **options: Unpack[OfParts]) -> tuple[Sheet, ...]:
    """Drawings of each kind of part that something is cut in, as many to a sheet as go on it, legs first.

    Options are paper, house, and plain_parts for drawings of plain boards as well, as `Asked` has them.

    Raises
    ------
    PaperError
        If a part does not fit the paper at any scale.
    """
    return part_pages(layout, ask(layout, OfParts, options))


def part_pages(layout: Layout, asked: Asked) -> tuple[Sheet, ...]:
    """The part drawings; none where all parts are plain boards, unless these are asked for."""
    kinds: dict[object, list[Part]] = {}
    for part in layout.parts:
        holes = asked.holes(part)
        if asked.plain_parts or holes or not _is_plain(part):
            kinds.setdefault((part.kind, *told(asked.frame.tape, part, holes, most=len(holes))), []).append(part)
    if not kinds:
        return ()
    order = sorted(kinds.values(), key=lambda same: (rank(same[0].slot.role), same[0].kind))
    third = projection(asked.frame, asked.house) == "third angle"
    runs = {part.identity: part.slot for part in layout.parts if part.slot.run}
    lines = common_lines(layout.parts)
    drawn = [(same, _shown(asked, same[0], runs, third=third), _findings(asked, same)) for same in order]

    @cache  # the views do not depend on how wide the room for words is
    def views(n: int, scale: float) -> list[Figure]:
        same, faces, _ = drawn[n]
        return _views(asked, same[0], faces, scale)

    @cache
    def laid(n: int, scale: float, wide: float, notes: tuple[str, ...]) -> Figure:
        same, faces, findings = drawn[n]
        return _block(asked, same, faces, views(n, scale), wide, notes, findings)

    def blocks(scale: float, wide: float, brief: bool) -> Iterator[Figure]:
        for n, (same, faces, findings) in enumerate(drawn):
            first = same[0]
            said = (*_curves(asked, first), *lines_told(lines.get(first.name, ()), asked.frame.tape))
            bores = told(asked.frame.tape, first, asked.holes(first))
            notes = (*said, *bores, *finding_notes(asked, findings, brief=brief, most=None))
            seen = views(n, scale)
            across = max(_left(faces) + view.bounds[2] for view in seen)
            yield laid(n, scale, min(max(across, LEAST_WIDE), wide), notes)

    longest = max(part.length for same, _, _ in drawn for part in same)
    return packed_sheets(asked, blocks, name="parts", kind="Part drawings", largest=max(LARGEST, LONGEST / longest))


def _curves(asked: Asked, part: Part) -> tuple[str, ...]:
    """The shaped edges of a part in words."""
    return tuple(f"{edge.told(asked.frame.tape)}." for edge in shaped_edges(part))


def _is_plain(part: Part) -> bool:
    """Whether a part is a board as it is cut to length: nothing is cut or marked on it, and its edges are straight."""
    return not part.marked_faces and part.outline.plain


def _findings(asked: Asked, same: Sequence[Part]) -> tuple[Finding, ...]:
    return tuple(dict.fromkeys(f for part in same for f in concerning(asked, (part.identity,), part.piece)))


def _views(asked: Asked, part: Part, faces: Sequence[_Face], scale: float) -> list[Figure]:
    """The views of a part at a scale."""
    along, read = broken(_features(part, faces), scale), reader(asked.frame, asked.house)
    lines = asked.house.linework
    laid = (_laid(part, face, along, scale, read, lines, first=face.called == part.marked) for face in faces)
    return [Figure(name=face.name, drawing=one) for face, one in zip(faces, laid, strict=True)]


def _block(
    asked: Asked,
    same: Sequence[Part],
    faces: Sequence[_Face],
    views: Sequence[Figure],
    wide: float,
    notes: Sequence[str],
    findings: tuple[Finding, ...],
) -> Figure:
    """All of one kind of part: heading and findings, so wide, then its views one below the other."""
    left, read = _left(faces), reader(asked.frame, asked.house)
    thick = f", {read(faces[0].through)} thick" if same[0].marked_faces and len(faces) == 1 else ""
    drawn: list[Primitive] = [
        Text((0.0, -PITCH * n), line, TEXT, bold=bold)
        for n, (line, bold) in enumerate(_told(asked.frame, same, notes, wide, thick))
    ]
    low = bounds(tuple(drawn))[1] - 2.0
    for seen in views:
        drawn += shift(seen.drawing, left, low - seen.bounds[3])
        low -= seen.size[1] + 2.0
    shows = tuple(dict.fromkeys(own.identity for own in same))
    return Figure(name=f"Part drawing of {_marked(same)}", drawing=drawn, shows=shows, findings=findings)


def _left(faces: Sequence[_Face]) -> float:
    """Where the views begin, on the right of their names. [mm]"""
    return max(text_width(face.name, TEXT) for face in faces) + 14.0


def _told(frame: Frame, same: Sequence[Part], notes: Sequence[str], width: float, thick: str) -> list[tuple[str, bool]]:
    """What it is, how many, of what, where it is measured from, and findings, in lines of a width."""
    part = same[0]
    hand = f", {part.handed} hand" if part.handed else ""
    count, role = len(to_make(frame, same)), part.slot.role
    what = called(same)
    told = f"{_marked(same)} – {what}" if ":" in what else f"{_marked(same)}: {what}"
    head = f"{told}{hand}, for {count} {role.word if count == 1 else role.plural}"
    done = done_note(frame, same)
    head += f" ({done})" if done else ""
    named = f" Faces as on {part.mark}." if any(other.faces != part.faces for other in same) else ""
    if any(_met(other) != _met(part) for other in same):
        named += f" Fine lines as on {part.mark}."
    rest = f"{part.stock.name}{thick}. 0 is the {DATUM_ENDS[part.slot.axes[0]]}.{named}"
    return [
        *((line, True) for line in wrap(head, TEXT, width, bold=True)),
        *((line, False) for words in (rest, *notes) for line in wrap(words, TEXT, width)),
    ]


def _marked(same: Sequence[Part]) -> str:
    """The marks on the wood."""
    return marks(part.mark for part in same)


def _met(part: Part) -> list[tuple[str, *tuple[float, ...]]]:
    """Where something comes to a part and takes no wood, by the names of its faces. [mm]"""
    found = (part.on_face(touch) for touch in part.touches)
    return sorted((cut.called, *steady(cut.start, cut.end, cut.low, cut.high)) for cut in found)


def _shown(asked: Asked, part: Part, runs: Mapping[str, Slot], *, third: bool) -> list[_Face]:
    """The faces to draw from the top of the page down, each as it is seen, where the projection puts it.

    All are turned about the part's length, so that each lies upright beside the marked face.
    """
    over, main = face_up(part, part.marked).v, part.marked
    holes = asked.holes(part)
    faces = tuple(dict.fromkeys((*_faces(part), *bored_faces(part, holes))))
    out = {face: measured(OUT[face], over) * (1 if third else -1) for face in faces}
    order = sorted(faces, key=lambda face: (face == OPPOSITE[main], -out[face]))
    return [_face(part, face, runs, holes) for face in order]


def _features(part: Part, shown: Sequence[_Face]) -> list[float]:
    """Places along the part where something happens, its two ends among them. [mm]"""
    bores = [one.u for face in shown for one in face.holes]
    edges = [e for cut in part.local_cuts for e in (cut.low[0], cut.high[0])]
    edges += [e for touch in part.touches for e in part.on_face(touch).edges]
    curves = () if part.outline.plain else part.outline.places(SAG, part.outline.low, part.outline.high)
    return distinct([0.0, part.length, *curves, *bores, *(min(max(e, 0.0), part.length) for e in edges)])


def _faces(part: Part) -> tuple[str, ...]:
    """Faces to draw: those that are marked, and one across them so that both sides of the section are there.

    Of a plain part that is only its marked face.
    """
    found = part.marked_faces
    if not found:
        return (part.marked,)
    if all(cut.through for face in found for cut in part.marks_on(face)):
        return found  # a board that is only cut round something: its thickness is told in words
    across = {part.marked, OPPOSITE[part.marked]}
    if not across.intersection(found):
        return (part.marked, *found)
    return found if any(face not in across for face in found) else (*found, _edge(part))


def _edge(part: Part) -> str:
    """The edge that is added to show the thickness: from above, or of what stands from the left or the front."""
    known = {part.marked, OPPOSITE[part.marked]}
    return next(face for face in ("top", "left", "front") if face not in known and AXIS[face] != part.slot.axes[0])


def _face_name(face: str, across: float, through: float, *, lies: bool) -> str:
    """'top edge', 'front face'; of a board that lies flat its narrow sides are the edges. [mm]"""
    edge = across < through - TOUCH if lies else face == "top"
    return f"{face} {'edge' if edge else 'face'}"


@attrs.frozen
class _Face:
    """A face as it is seen, full size, the datum end and its lower edge at nought: sizes, lines, and cuts. [mm]"""

    called: str
    name: str
    across: float
    through: float
    visible: BaseGeometry
    hidden: BaseGeometry
    cuts: tuple[OnFace, ...]
    told: tuple[Together, ...]
    holes: tuple[HoleOnFace, ...]


def _face(part: Part, face: str, runs: Mapping[str, Slot], holes: Sequence[Hole]) -> _Face:
    turned = face_up(part, face)
    _, across, through = turned.local(part.blank).size()
    seen = view([part], Eye(face, face, turned.u, turned.v))
    x, y = (sum(o * a for o, a in zip(turned.origin, axis, strict=True)) for axis in (turned.u, turned.v))
    visible, hidden = (translate(lines, -x, -y) for lines in (seen.visible, seen.hidden))
    cuts = part.marks_on(face)
    name = _face_name(face, across, through, lies=AXIS[part.marked] == 2)
    own = holes_on(part, face, holes)
    return _Face(face, name, across, through, visible, hidden, cuts, together(cuts, runs), own)


def _laid(
    part: Part, face: _Face, along: Broken, scale: float, read: Reader, linework: Linework, *, first: bool
) -> Drawing:
    """One face: its lines, its name and width on the left, depths above, shoulders below; the length once."""
    visible, hidden = (lay(lines, along, scale) for lines in (face.visible, face.hidden))
    high = face.across * scale
    size = overall(0.0, high, read(face.across), axis="y", at=-8.0, outline=0.0)
    name = Text((bounds(size)[0] - 2.0, high / 2 - TEXT / 2), face.name, TEXT, "end")
    thick = () if part.marked_faces else (_thick(f"{read(face.through)} thick", along, high),)
    return (
        *solid(visible, 1.0, linework),
        *dashed(hidden, 1.0, linework),
        *zigzags(along, 0.0, high),
        *_fine(face.cuts, along, scale),
        *(line for one in face.holes for line in bored(one, (float(along.at(one.u)), one.v * scale), scale)),
        *size,
        name,
        *thick,
        *_depths(face.told, along, high, read),
        *_shoulders(part, face.told, along, read, first=first),
    )


def _fine(cuts: Sequence[OnFace], along: Broken, scale: float) -> Iterator[Line]:
    """Thin lines where something comes to the face and takes no wood."""
    for cut in cuts:
        if not cut.wood:
            for x in (float(along.at(edge)) for edge in cut.edges):
                yield Line(((x, cut.low * scale), (x, cut.high * scale)))


def _thick(words: str, along: Broken, high: float) -> Text:
    """The thickness over a plain part, clear of the width on its left."""
    return Text((max(along.length / 2, text_width(words, TEXT) / 2 - LEFT_OF_VIEW), high + 3.0), words, TEXT, "middle")


def _shoulders(part: Part, cuts: Sequence[Together], along: Broken, read: Reader, *, first: bool) -> Drawing:
    """Running sizes from the datum end; the length in brackets where another face has said it."""
    edges = [edge for cut in cuts for edge in cut.edges]
    if not first and not cuts:
        return ()
    values = [(float(along.at(e)), read(e)) for e in distinct(edges)]
    values.append((along.length, read(part.length) if first else f"({read(part.length)})"))
    return running(values, origin=(0.0, 0.0), axis="x", side="below", outline=0.0)


def _depths(cuts: Sequence[Together], along: Broken, high: float, read: Reader) -> Iterator[Primitive]:
    """How deep each cut is, and from where to where across where it does not go through, over its middle."""
    labels = [cut.told(read) for cut in cuts]
    middles = [float(along.at(cut.middle)) for cut in cuts]
    widths = [max(text_width(line, TEXT) for line in lines) for lines in labels]
    apart = [(a + b) / 2 + 3.0 for a, b in pairwise(widths)]
    places = spread(middles, apart, within=_beside_the_width(widths, apart, along)) if cuts else []
    shifted = any(abs(place - at) > 0.02 for place, at in zip(places, middles, strict=True))
    base = high + (6.0 if shifted else 3.0)
    for lines, at, place in zip(labels, middles, places, strict=True):
        bend = ((place, base - 1.5),) if shifted else ()
        yield Line(((at, high + 0.5), (at, high + 1.5), *bend, (place, base - 0.5)))
        for number, line in enumerate(reversed(lines)):
            yield Text((place, base + 0.5 + PITCH * number), line, TEXT, "middle")


def _beside_the_width(widths: Sequence[float], apart: Sequence[float], along: Broken) -> tuple[float, float]:
    """Where the first and the last depth may stand so that none gets to the width on the left of the view. [mm]"""
    first = widths[0] / 2 - LEFT_OF_VIEW
    return first, max(along.length, first + sum(apart)) + widths[-1]
