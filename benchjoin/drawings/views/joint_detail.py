"""Joint details: each distinct joint enlarged, leg and rail together, seen from three sides.

The views stand as the projection of the sheet asks (third angle: from above over the front view, the right end on the
right; first angle the other way about) and are named in words; leg and rail carry their marks. The end is taken from
the side on which the rail runs off, so that one looks at its cut wood. Where leg or rail go on, the view ends in a
break line. From above one sees how deep the notch is and what is left of the leg; a height that is not the same in all
joints of a kind is h, and each is told in words.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from functools import cache, cached_property
from itertools import pairwise
from typing import Unpack

import attrs
import shapely
from shapely.geometry.base import BaseGeometry

from ...drafting.dimensions.span import overall
from ...drafting.lettering import ascent, descent, text_width, wrap
from ...drafting.linework import Linework
from ...drafting.primitives import Box as Bounds
from ...drafting.primitives import Drawing, Line, Text, bounds, figure_middle, shift, text_bounds
from ...drafting.sheets.figure import Figure
from ...drafting.sheets.sheet import Sheet
from ...findings import Finding
from ...frame.faces import AXIS, OPPOSITE
from ...frame.joints import Laid
from ...layout.joints.meeting import Cut, Joint
from ...layout.layout import Layout
from ...layout.on_face import OnFace
from ...layout.parts import Part, face_up
from ...lengths import TOUCH, distinct
from ...phrases import pieces_called
from ...shop.fasteners.on_face import drilled
from ...shop.marks import marks
from ...solids import Box, vector
from ..making.asked import Asked, OnPaper, ask
from ..making.house import Reader, projection, reader
from ..making.notes import concerning, finding_notes
from ..making.packed import packed_sheets
from .broken import break_line
from .labels import Taken
from .strokes import dashed, solid
from .view import EYES, Eye, View, view

RIGHT_OF = {"front": "right", "right": "back", "back": "left", "left": "front"}
"""Which side one stands at after a step to the right round the piece."""
TEXT = 2.5
PITCH = 4.2
AROUND = 0.3
"""How much of leg and rail is shown round the joint, of the larger side of what they share."""
LEAST_WIDE = 82.0
"""Headings are written at least so wide: two go beside each other on all desk paper. [mm]"""
SCALES_TRIED = (0.5, 0.25)
"""Details are drawn at half size, or at 1:4 or 1:5 where they take fewer sheets so."""
SHARES = (0.5, 0.75, 0.25, 0.85, 0.15)
"""Where on a face its mark may stand."""
ON = 0.6
"""Between a mark on wood and the edges of it. [mm]"""
OFF = 1.6
"""Between wood and a mark beside it. [mm]"""
CROSS = 1.8
"""Arm of a centre cross. [mm]"""
BETWEEN, APART = 16.0, 5.0
"""Between two views beside each other, with room for a size, and one above the other. [mm]"""


def joint_details(layout: Layout, **options: Unpack[OnPaper]) -> tuple[Sheet, ...]:
    """Details of each kind of joint, as many to a sheet as go on it; options are paper and house.

    Raises
    ------
    PaperError
        If a detail does not fit the paper at any scale.
    """
    return joint_pages(layout, ask(layout, OnPaper, options))


def joint_pages(layout: Layout, asked: Asked) -> tuple[Sheet, ...]:
    """The joint details; none where nothing is joined."""
    kinds = [(same, _looks(layout, same[0])) for same in _kinds(layout)]
    findings = [_findings(asked, same) for same, _ in kinds]

    @cache  # the views do not depend on how wide the room for words is
    def views(n: int, scale: float) -> Figure:
        return _views(layout, asked, *kinds[n], scale)

    @cache
    def laid(n: int, scale: float, wide: float, notes: tuple[str, ...]) -> Figure:
        return _block(layout, asked, n + 1, kinds[n][0], views(n, scale), wide, notes, findings[n])

    def blocks(scale: float, wide: float, brief: bool) -> Iterator[Figure]:
        for n, found in enumerate(findings):
            notes = tuple(finding_notes(asked, found, brief=brief, most=None))
            yield laid(n, scale, min(max(views(n, scale).size[0], LEAST_WIDE), wide), notes)

    if not kinds:
        return ()
    tries = [packed_sheets(asked, blocks, name="joints", kind="Joint details", largest=at) for at in SCALES_TRIED]
    return min(tries, key=len)


def _kinds(layout: Layout) -> list[list[Joint]]:
    """Joints that are alike, of one piece of each kind: same kind, same sections, same place in the host's section.

    What only lies on another is no joint to be made: the part drawings show its lines.
    """
    found: dict[tuple[object, ...], list[Joint]] = {}
    for alike in layout.alike:
        for joint in layout.joints_of(alike[0]):
            if not isinstance(joint.how, Laid):
                found.setdefault(_key(layout, joint), []).append(joint)
    return list(found.values())


def _key(layout: Layout, joint: Joint) -> tuple[object, ...]:
    host, guest = layout.joined(joint)
    if not joint.cuts and guest.slot.run:  # it only touches: one detail shows how, wherever it stands
        return (joint.kind, guest.slot.role.word, guest.slot.axes, round(guest.thickness, 6))
    depths = tuple(round(cut.floor - cut.box.low[2], 6) for _, cut in _made(layout, joint))
    sizes = (host.width, host.thickness, guest.thickness, *_place(host, guest, joint))
    return (joint.kind, guest.slot.axes, depths, tuple(round(size, 6) for size in sizes))


def _place(host: Part, guest: Part, joint: Joint) -> tuple[float, ...]:
    """Where the guest lies in the host's section, from the face it goes to and from the nearer of the edges. [mm]"""
    face = guest.slot.face if AXIS[guest.slot.face] != host.slot.axes[0] else host.marked
    turned = face_up(host, face)
    box, wide = turned.local(joint.contact), turned.local(host.blank).size()[1]
    (_, low, near), (_, high, far) = box.low, box.high
    return (*min((low, high), (wide - high, wide - low)), near, far)


def _made(layout: Layout, joint: Joint) -> list[tuple[Part, OnFace]]:
    """The cuts of a joint as they are in its parts: those of finished parts may not be where the joint wants them."""
    cuts = {(c.part, c.mate, c.face): (part, part.on_face(c)) for part in layout.joined(joint) for c in part.cuts}
    return [cuts[c.part, c.mate, c.face] for c in joint.cuts]


@attrs.frozen
class _Look:
    """A joint as an eye sees it, full size: leg and rail clipped, the box of that, the rail, what the leg loses."""

    eye: Eye
    seen: View
    clip: Box
    rail: Part
    cut: Cut | None

    @cached_property
    def ended(self) -> tuple[BaseGeometry, BaseGeometry]:
        """Visible lines, and those that are only there because the view ends, as long as they run."""
        clip = self.eye.frame.local(self.clip)
        ring = shapely.box(*clip.low[:2], *clip.high[:2]).boundary.buffer(TOUCH)
        visible = self.seen.visible
        return visible.difference(ring), shapely.line_merge(visible.intersection(ring))

    @cached_property
    def wood(self) -> dict[str, tuple[list[BaseGeometry], BaseGeometry]]:
        """What is seen of each part, its largest face first, and of all others."""
        faces = sorted(self.seen.faces, key=lambda face: -face.region.area)
        return {
            name: (
                [face.region for face in faces if face.part == name],
                shapely.union_all([face.region for face in faces if face.part != name]),
            )
            for name in {face.part for face in faces}
        }


Looks = tuple[_Look, _Look, _Look]


def _looks(layout: Layout, joint: Joint) -> Looks:
    """The joint from the face that the rail goes to, from one side, and from above."""
    leg, rail = layout.joined(joint)
    parts, clip = _clipped(leg, rail)
    cut = next((seen.cut for part, seen in _made(layout, joint) if part is leg), None)
    front, side, above = (_Look(eye, view(parts, eye), clip, parts[-1], cut) for eye in _eyes(leg, rail))
    return front, side, above


def _views(layout: Layout, asked: Asked, same: Sequence[Joint], looks: Looks, scale: float) -> Figure:
    """The three views of one kind of joint at a scale."""
    read, parts = reader(layout.frame, asked.house), layout.joined(same[0])
    drawn = _Drawn(scale, read, asked.house.linework, parts, len(_heights(layout, same)) > 1, asked, same[0])
    return Figure(name="", drawing=_placed(looks, drawn, third=projection(layout.frame, asked.house) == "third angle"))


def _block(
    layout: Layout,
    asked: Asked,
    number: int,
    same: Sequence[Joint],
    views: Figure,
    width: float,
    notes: Sequence[str],
    findings: tuple[Finding, ...],
) -> Figure:
    """One kind of joint: heading and findings, so wide, then its three views."""
    read, joint = reader(layout.frame, asked.house), same[0]
    left, _, _, top = views.bounds
    where, more = _heading(layout, number, same, read)
    words = [(line, True) for line in wrap(where, TEXT, width, bold=True)]
    words += [(line, False) for note in (more, *_driven(asked, joint), *notes) for line in wrap(note, TEXT, width)]
    heading = tuple(Text((0.0, -PITCH * n), line, TEXT, bold=bold) for n, (line, bold) in enumerate(words))
    low = bounds(heading)[1] - 3.0
    drawing = (*heading, *shift(views.drawing, -left, low - top))
    return Figure(name=f"Joint {number}", drawing=drawing, shows=(joint.host, joint.guest), findings=findings)


def _heading(layout: Layout, number: int, same: Sequence[Joint], read: Reader) -> tuple[str, str]:
    """Which joint, whose, how many, what is cut, how deep and how high, what is left, and the fit."""
    joint = same[0]
    host, guest = layout.joined(joint)
    where = f"Joint {number}: {_in_the_trade(host, guest, joint)}, {guest.mark} to {host.mark}"
    names = f"{guest.mark} is the {_plain(guest)}, {host.mark} the {_plain(host)}. "
    more = f"{names}{_how_many(layout, same)}"
    if not joint.cuts:
        return where, f"{more}No wood is taken."
    made = _made(layout, joint)
    cut = "; ".join(f"{part.slot.role.word} {_deep(part, seen, read)}" for part, seen in made)
    heights = _heights(layout, same)
    high = "".join(f"; h = {read(height)} at {marks(own)}" for height, own in heights.items())
    if len(heights) == 1:
        high = f"; notches {read(next(iter(heights)))} high"
    fit = layout.frame.fit_of(joint.kind)
    loose = f"with {layout.frame.tape.amount(fit)} of fit" if fit else "without fit"
    return where, f"{more}Cut into the {cut}{high}, {loose}."


def _driven(asked: Asked, joint: Joint) -> Iterator[str]:
    """What is driven into a joint, and its holes."""
    fixing = asked.fixing(joint)
    if fixing is None or not fixing.driven:
        return
    tape, one = asked.frame.tape, fixing.driven[0]
    holes = asked.holes_of(joint)
    sizes = dict.fromkeys(drilled(tape, hole) for hole in sorted(holes, key=lambda hole: hole.kind == "lead"))
    what = f"{len(fixing.driven)} × {one.size.name}, {tape.say(one.length)} long, from the {fixing.drive.head.role}"
    yield f"{what}: {'; '.join(sizes)}."


def _crosses(asked: Asked, joint: Joint, look: _Look, scale: float) -> Iterator[Line]:
    """Where a fastener is seen end on a cross, from the side a thin line along it, as far as the view goes."""
    fixing = asked.fixing(joint)
    for one in fixing.driven if fixing is not None else ():
        ends = [
            vector(min(max(a, low), high) for a, low, high in zip(at, look.clip.low, look.clip.high, strict=True))
            for at in (one.at, one.tip)
        ]
        (x0, y0, _), (x1, y1, _) = (look.eye.frame.local(Box(at, at)).low for at in ends)
        x0, y0, x1, y1 = (value * scale for value in (x0, y0, x1, y1))
        if math.hypot(x1 - x0, y1 - y0) > TOUCH:
            yield Line(((x0, y0), (x1, y1)))
        else:
            yield Line(((x0 - CROSS, y0), (x0 + CROSS, y0)))
            yield Line(((x0, y0 - CROSS), (x0, y0 + CROSS)))


def _in_the_trade(host: Part, guest: Part, joint: Joint) -> str:
    """The name of a joint: a half-lap of what a level carries by how the two cross."""
    if not (joint.how.cuts_both and guest.slot.run):
        return joint.kind
    ends = [_at_an_end(part, joint.contact) for part in (host, guest)]
    return "corner lap" if all(ends) else "tee lap" if any(ends) else "cross lap"


def _at_an_end(part: Part, box: Box) -> bool:
    """Whether a part ends where it meets another."""
    axis = part.slot.axes[0]
    return box.low[axis] <= part.blank.low[axis] + TOUCH or box.high[axis] >= part.blank.high[axis] - TOUCH


def _plain(part: Part) -> str:
    """The name of a part in words alone."""
    return part.identity.replace("/", " ")


def _deep(part: Part, seen: OnFace, read: Reader) -> str:
    """How deep a part is cut, and how much of it is left there."""
    deep = seen.floor - seen.box.low[2]
    through = face_up(part, seen.cut.face).local(part.blank).size()[2]
    if through - deep <= TOUCH:
        return f"right through, {read(seen.length)} long and {read(seen.high - seen.low)} deep from its edge"
    return f"{read(deep)} deep, {read(through - deep)} left"


def _heights(layout: Layout, same: Sequence[Joint]) -> dict[float, list[str]]:
    """How high the notches of a kind are, rising, with the marks of their rails. [mm]"""
    found = [
        (seen.cut.box.size()[2], layout.joined(one)[1].mark)
        for one in same
        for part, seen in _made(layout, one)
        if part.identity == one.host
    ]
    rising = distinct(height for height, _ in found)
    return {at: list(dict.fromkeys(mark for height, mark in found if abs(height - at) <= TOUCH)) for at in rising}


def _how_many(layout: Layout, same: Sequence[Joint]) -> str:
    """How many are alike, and in which pieces where these differ in it."""
    counts = {alike: sum(joint.piece == alike[0] for joint in same) for alike in layout.alike}
    number = next(iter(counts.values()))
    if set(counts.values()) == {number}:
        return f"{number} alike in each piece. " if number > 1 else ""
    have = {pieces: "have" if len(pieces) > 1 else "has" for pieces in counts}
    told = ", ".join(f"{pieces_called(own)} {have[own]} {count}" for own, count in counts.items() if count)
    return f"{told[0].upper()}{told[1:]}. "


def _findings(asked: Asked, same: Sequence[Joint]) -> tuple[Finding, ...]:
    """Findings about both the leg and the rail of one of the joints."""
    found = {
        finding: None
        for joint in same
        for finding in concerning(asked, (joint.host,), joint.piece)
        if joint.guest in (*finding.parts, *finding.mates)
    }
    return tuple(found)


def _clipped(leg: Part, rail: Part) -> tuple[list[Part], Box]:
    """Leg and rail with their cuts for each other, cut off a little way round the joint, and the box of that.

    Both keep their whole sections: they are cut off along their lengths alone.
    """
    low = [max(a, b) for a, b in zip(leg.blank.low, rail.blank.low, strict=True)]
    high = [min(a, b) for a, b in zip(leg.blank.high, rail.blank.high, strict=True)]
    more = AROUND * max(b - a for a, b in zip(low, high, strict=True))
    for part in (leg, rail):
        for axis in {0, 1, 2} - {part.slot.axes[0]}:
            low[axis] = min(low[axis], part.blank.low[axis])
            high[axis] = max(high[axis], part.blank.high[axis])
    clip = Box((low[0] - more, low[1] - more, low[2] - more), (high[0] + more, high[1] + more, high[2] + more))
    found = []
    for part, mate in ((leg, rail), (rail, leg)):
        box = part.blank.meet(clip)
        if box is not None:
            own = tuple(cut for cut in part.cuts if cut.mate == mate.identity)
            found.append(attrs.evolve(part.cropped(box), cuts=own))
    return found, clip


@attrs.frozen
class _Drawn:
    """How a joint is drawn: at which scale [mm on paper a mm], how sizes are written, with which lines, whose it is.

    several says that the joints of a kind are not all as high.
    """

    scale: float
    read: Reader
    linework: Linework
    parts: tuple[Part, Part]
    several: bool
    asked: Asked
    joint: Joint


def _placed(looks: Looks, drawn: _Drawn, *, third: bool) -> Drawing:
    """The three views where the projection puts them, each named in words."""
    main, beside, over = (_one(look, drawn) for look in looks)
    (x0, y0, x1, y1), (a, _, c, _) = bounds(main), bounds(beside)
    from_the_right = looks[1].eye.name == RIGHT_OF[looks[0].eye.name]
    aside = x1 + BETWEEN - a if third == from_the_right else x0 - BETWEEN - c
    up = y1 + APART - bounds(over)[1] if third else y0 - APART - bounds(over)[3]
    return (*main, *shift(beside, aside, 0.0), *shift(over, 0.0, up))


def _eyes(leg: Part, rail: Part) -> tuple[Eye, Eye, Eye]:
    """The eye that looks at the face the rail goes to, the one on the side where the rail runs off, the one above."""
    lies = rail.slot.face not in EYES
    front = EYES[("front" if rail.slot.long else "left") if lies else rail.slot.face]
    own, mate = front.frame.local(leg.blank), front.frame.local(rail.blank)
    to_the_left = own.low[0] - mate.low[0] > mate.high[0] - own.high[0] + TOUCH
    right = RIGHT_OF[front.name]
    side = EYES[OPPOSITE[right] if to_the_left else right]
    return front, side, Eye("above", "from above", front.right, front.frame.w)


def _one(look: _Look, how: _Drawn) -> Drawing:
    """One view: lines, break lines where wood goes on, sizes, marks, and its name above."""
    eye, seen, clip, scale = look.eye, look.seen, look.eye.frame.local(look.clip), how.scale
    visible, ends = look.ended
    x, y = (a + b for a, b in zip(clip.low[:2], clip.high[:2], strict=True))
    lines: Drawing = (
        *solid(visible, scale, how.linework),
        *(line for end in shapely.get_parts(ends) for line in _broken_off(end, scale)),
        *dashed(seen.hidden, scale, how.linework),
        *_crosses(how.asked, how.joint, look, scale),
    )
    x0, _, x1, top = bounds(lines)
    name = eye.title if eye.name == "above" else f"from the {eye.name}"
    size = (*_size(look, how, x0), *_left_of_the_leg(look, how, x1))
    taken = Taken((*lines, *size))
    found = (text for part in how.parts for text in taken.put(_mark_places(part, look, scale)))
    words = tuple(sorted(found, key=lambda text: text.at))  # readers of PDF take words from left to right
    if size and (x0 + x1 - text_width(name, TEXT)) / 2 < bounds(size)[2] + 1.0:
        top = max(top, bounds(size)[3])
    top = max([top, *(bounds((word,))[3] - 1.5 for word in words)])
    titled = (*lines, *size, *words, Text(((x0 + x1) / 2, top + 2.5), name, TEXT, "middle"))
    return shift(titled, -x / 2 * scale, -y / 2 * scale)


def _mark_places(part: Part, look: _Look, scale: float) -> Iterator[Text]:
    """Places for a mark on the faces that are seen of its part, the largest first, and then just beside them."""
    own, others = look.wood.get(part.name, ([], shapely.Polygon()))
    regions = [_scaled(region, scale) for region in own]
    for region in regions:
        for text in _on(region, part.mark):
            box = text_bounds(text)
            if _holds(region.bounds, box) and region.contains(shapely.box(*box).buffer(ON)):
                yield text
    other = _scaled(others, scale)
    for region in regions:
        for text in _just_beside(region.bounds, part.mark):
            if not shapely.box(*text_bounds(text)).intersects(other):
                yield text


def _scaled(region: BaseGeometry, scale: float) -> BaseGeometry:
    return shapely.transform(region, lambda at: at * scale)


def _on(region: BaseGeometry, mark: str) -> Iterator[Text]:
    """Places for a mark on a face, if it is large enough."""
    x0, y0, x1, y1 = region.bounds
    wide, high = text_width(mark, TEXT, bold=True), ascent(TEXT) + descent(TEXT)
    if x1 - x0 < wide + 2 * ON - TOUCH or y1 - y0 < high + 2 * ON - TOUCH:
        return
    for up in SHARES:
        for across in SHARES:
            at = (x0 + (x1 - x0) * across, figure_middle(y0 + (y1 - y0) * up, TEXT))
            yield Text(at, mark, TEXT, "middle", bold=True)


def _holds(outer: Bounds, inner: Bounds) -> bool:
    """Whether a box holds another with the air round it."""
    (a, b, c, d), (left, low, right, high) = outer, inner
    return a <= left - ON + TOUCH and b <= low - ON + TOUCH and c >= right + ON - TOUCH and d >= high + ON - TOUCH


def _just_beside(box: tuple[float, float, float, float], mark: str) -> Iterator[Text]:
    """Places for a mark on the right, on the left, above and below a box."""
    x0, y0, x1, y1 = box
    for share in SHARES:
        y, x = figure_middle(y0 + (y1 - y0) * share, TEXT), x0 + (x1 - x0) * share
        yield Text((x1 + OFF, y), mark, TEXT, "start", bold=True)
        yield Text((x0 - OFF, y), mark, TEXT, "end", bold=True)
        yield Text((x, y1 + OFF + 0.7), mark, TEXT, "middle", bold=True)
        yield Text((x, y0 - OFF - TEXT - 0.3), mark, TEXT, "middle", bold=True)


def _broken_off(end: BaseGeometry, scale: float) -> Iterator[Line]:
    """Thin break lines, with a zigzag, along each straight side of an end."""
    for (x0, y0), (x1, y1) in pairwise((x * scale, y * scale) for x, y in end.coords):
        if math.hypot(x1 - x0, y1 - y0) > TOUCH:
            yield break_line((x0, y0), (x1, y1))


def _size(look: _Look, how: _Drawn, left: float) -> Drawing:
    """On the left of the view: the height of the notch where the rail is seen flat, its depth from above.

    Where no wood is taken they are the rail's own width and thickness.
    """
    eye, rail, scale = look.eye, look.rail, how.scale
    box = eye.frame.local(look.cut.box if look.cut else rail.blank)
    x, y, _ = eye.frame.local(rail.blank).size()
    seen_flat = eye.name == "above" or (abs(x - y) > TOUCH and x > rail.thickness + TOUCH)
    if not seen_flat:
        return ()
    low, high = box.low[1], box.high[1]
    told = "h" if how.several and eye.name != "above" and look.cut else how.read(high - low)
    return overall(low * scale, high * scale, told, axis="y", at=left - 8.0, outline=left)


def _left_of_the_leg(look: _Look, how: _Drawn, right: float) -> Drawing:
    """On the right of the view from above: the wood that is left of the leg behind the notch."""
    runs_up = look.eye.up[how.parts[0].slot.axes[0]]  # its length is no size of its section
    if look.eye.name != "above" or not look.cut or runs_up:
        return ()
    cut, leg = (look.eye.frame.local(box) for box in (look.cut.box, how.parts[0].blank))
    low, high = max((leg.low[1], cut.low[1]), (cut.high[1], leg.high[1]), key=lambda ends: ends[1] - ends[0])
    if high - low <= TOUCH:
        return ()
    scale = how.scale
    return overall(low * scale, high * scale, how.read(high - low), axis="y", at=right + 8.0, outline=right)
