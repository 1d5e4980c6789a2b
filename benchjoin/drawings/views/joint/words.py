"""What is written over a joint: which it is, what is cut and how deep, what is driven, what was found."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from ....findings import Finding
from ....layout.joints.meeting import Joint
from ....layout.layout import Layout
from ....layout.on_face import OnFace
from ....layout.parts import Part, face_up
from ....lengths import TOUCH, distinct
from ....phrases import pieces_called
from ....shop.fasteners.on_face import drilled
from ....shop.marks import marks
from ....solids import Box
from ...making.asked import Asked
from ...making.house import Reader
from ...making.notes import concerning
from .kinds import cuts_made


def heading_of(layout: Layout, number: int, same: Sequence[Joint], read: Reader) -> tuple[str, str]:
    """Which joint, whose, how many, what is cut, how deep and how high, what is left, and the fit."""
    joint = same[0]
    host, guest = layout.joined(joint)
    where = f"Joint {number}: {_in_the_trade(host, guest, joint)}, {guest.mark} to {host.mark}"
    names = f"{guest.mark} is the {_plain(guest)}, {host.mark} the {_plain(host)}. "
    more = f"{names}{_how_many(layout, same)}"
    if not joint.cuts:
        return where, f"{more}No wood is taken."
    made = cuts_made(layout, joint)
    cut = "; ".join(f"{part.slot.role.word} {_deep(part, seen, read)}" for part, seen in made)
    heights = heights_of(layout, same)
    high = "".join(f"; h = {read(height)} at {marks(own)}" for height, own in heights.items())
    if len(heights) == 1:
        high = f"; notches {read(next(iter(heights)))} high"
    fit = layout.frame.fit_of(joint.kind)
    loose = f"with {layout.frame.tape.amount(fit)} of fit" if fit else "without fit"
    return where, f"{more}Cut into the {cut}{high}, {loose}."


def driven(asked: Asked, joint: Joint) -> Iterator[str]:
    """What is driven into a joint, and its holes."""
    fixing = asked.fixing(joint)
    if fixing is None or not fixing.driven:
        return
    tape, one = asked.frame.tape, fixing.driven[0]
    holes = asked.holes_of(joint)
    sizes = dict.fromkeys(drilled(tape, hole) for hole in sorted(holes, key=lambda hole: hole.kind == "lead"))
    what = f"{len(fixing.driven)} × {one.size.name}, {tape.say(one.length)} long, from the {fixing.drive.head.role}"
    yield f"{what}: {'; '.join(sizes)}."


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


def heights_of(layout: Layout, same: Sequence[Joint]) -> dict[float, list[str]]:
    """How high the notches of a kind are, rising, with the marks of their rails. [mm]"""
    found = [
        (seen.cut.box.size()[2], layout.joined(one)[1].mark)
        for one in same
        for part, seen in cuts_made(layout, one)
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


def findings_of(asked: Asked, same: Sequence[Joint]) -> tuple[Finding, ...]:
    """Findings about both the leg and the rail of one of the joints."""
    found = {
        finding: None
        for joint in same
        for finding in concerning(asked, (joint.host,), joint.piece)
        if joint.guest in (*finding.parts, *finding.mates)
    }
    return tuple(found)
