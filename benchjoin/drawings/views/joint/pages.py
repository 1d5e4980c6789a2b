"""Pages of joint details: each kind of joint under its heading, as many to a sheet as go on it."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from functools import cache
from typing import Unpack

from ....drafting.lettering import wrap
from ....drafting.primitives import Text, bounds, shift
from ....drafting.sheets.figure import Figure
from ....drafting.sheets.sheet import Sheet
from ....findings import Finding
from ....layout.joints.meeting import Joint
from ....layout.layout import Layout
from ...making.asked import Asked, OnPaper, ask
from ...making.house import projection, reader
from ...making.notes import finding_notes
from ...making.packed import packed_sheets
from .draw import Drawn, three_views
from .kinds import kinds_of_joints
from .look import Looks, looks_at
from .marks import TEXT
from .words import driven, findings_of, heading_of, heights_of

PITCH = 4.2
LEAST_WIDE = 82.0
"""Headings are written at least so wide: two go beside each other on all desk paper. [mm]"""
SCALES_TRIED = (0.5, 0.25)
"""Details are drawn at half size, or at 1:4 or 1:5 where they take fewer sheets so."""


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
    kinds = [(same, looks_at(layout, same[0])) for same in kinds_of_joints(layout)]
    findings = [findings_of(asked, same) for same, _ in kinds]

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


def _views(layout: Layout, asked: Asked, same: Sequence[Joint], looks: Looks, scale: float) -> Figure:
    """The three views of one kind of joint at a scale."""
    read, parts = reader(layout.frame, asked.house), layout.joined(same[0])
    drawn = Drawn(scale, read, asked.house.linework, parts, len(heights_of(layout, same)) > 1, asked, same[0])
    return Figure(
        name="", drawing=three_views(looks, drawn, third=projection(layout.frame, asked.house) == "third angle")
    )


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
    where, more = heading_of(layout, number, same, read)
    words = [(line, True) for line in wrap(where, TEXT, width, bold=True)]
    words += [(line, False) for note in (more, *driven(asked, joint), *notes) for line in wrap(note, TEXT, width)]
    heading = tuple(Text((0.0, -PITCH * n), line, TEXT, bold=bold) for n, (line, bold) in enumerate(words))
    low = bounds(heading)[1] - 3.0
    drawing = (*heading, *shift(views.drawing, -left, low - top))
    return Figure(name=f"Joint {number}", drawing=drawing, shows=(joint.host, joint.guest), findings=findings)
