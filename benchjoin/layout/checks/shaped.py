"""Shaped edges: room for the curve, a cutter that goes in, enough wood left, and nothing joined where it is gone."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from ...curves import ArcCurve, Beside
from ...findings import Finding
from ...frame.faces import AXIS, looks_down
from ...lengths import TOUCH
from ...runs import larger
from ...solids import Box
from ...sources import COMMON_PRACTICE, STATICS, Source
from ..edges import ShapedEdge, shaped_edges
from ..parts import Part
from ..placing.room import highest
from .piece import Piece


def shaped(piece: Piece) -> Iterator[Finding]:
    """Findings of every shaped edge of a piece."""
    for part in piece.parts.values():
        if not part.shaped:
            continue
        edges = list(shaped_edges(part))
        for edge in edges:
            found = list(_no_room(piece, edge))
            yield from found
            if not found:
                yield from _tight(piece, edge)
                yield from _joined(piece, edge)
        yield from _thin(piece, part, edges)


def _no_room(piece: Piece, edge: ShapedEdge) -> Iterator[Finding]:
    for curve in edge.curves:
        for arc in curve.each if isinstance(curve, Beside) else (curve,):
            wide = arc.end - arc.start
            least: Any = 2 * edge.of.run if hasattr(edge.of, "run") else 0.0
            if isinstance(arc, ArcCurve):
                least = 2 * arc.rise
            if wide < least - TOUCH or wide <= TOUCH:
                room, deep = piece.say(larger(wide, 0.0)), piece.say(edge.of_depth)
                sentence = (
                    f"{_name(piece, edge)}: a curve {deep} deep has {room} between its ends, and needs "
                    f"{piece.say(least)}. Make it shallower, or take fewer curves or shorter flats."
                )
                yield _finding(piece, "no room for the curve", edge, sentence, {"room": wide, "least": least}, STATICS)
                return


def _tight(piece: Piece, edge: ShapedEdge) -> Iterator[Finding]:
    radius = edge.radius
    if radius < edge.of.tool - TOUCH:
        sentence = (
            f"{_name(piece, edge)}: its tightest hollow has a radius of {piece.say(radius)}, and the cutter one of "
            f"{piece.say(edge.of.tool)}. Make it shallower or wider, or take a smaller cutter (tool=)."
        )
        numbers = {"radius": radius, "tool": edge.of.tool}
        yield _finding(piece, "hollow too tight", edge, sentence, numbers, STATICS)


def _joined(piece: Piece, edge: ShapedEdge) -> Iterator[Finding]:
    """What is joined to wood that the curve takes, of it or of the part."""
    part = edge.part
    for joint in piece.joints:
        if part.identity not in (joint.host, joint.guest):
            continue
        if joint.guest == part.identity and joint.how.lies and not joint.how.shares:
            continue  # it lies there, and what lies under a hollow carries what is beside it
        low, high, near = _on_the_edge(part, edge.face, joint.contact)
        back = edge.back_from(low, high)
        if back > near + TOUCH:
            other = joint.guest if joint.host == part.identity else joint.host
            sentence = (
                f"{_name(piece, edge)}: between {piece.say(low)} and {piece.say(high)} from its {part.slot.role.datum} "
                f"it stands back {piece.say(back)}, where {other} is joined to it. Make the flats longer or the curve "
                "shallower, or move what is joined there."
            )
            numbers = {"low": low, "high": high, "back": back}
            yield _finding(piece, "curve in a joint", edge, sentence, numbers, STATICS)
            return


def _on_the_edge(part: Part, face: str, contact: Box) -> tuple[float, float, float]:
    """From where to where along a part a contact lies, and how far from one of its edges it begins. [mm]"""
    axis, across = part.slot.axes[0], AXIS[face]
    start = part.blank.low[axis]
    near = (
        contact.low[across] - part.blank.low[across]
        if looks_down(face)
        else part.blank.high[across] - contact.high[across]
    )
    return contact.low[axis] - start, contact.high[axis] - start, near


def _thin(piece: Piece, part: Part, edges: list[ShapedEdge]) -> Iterator[Finding]:
    gone, width = sum(edge.deepest for edge in edges), part.size[1]
    leave = highest([0.0, *(width / 2 if edge.of.leave is None else edge.of.leave for edge in edges)])
    if edges and width - gone < leave - TOUCH:
        sentence = (
            f"{_name(piece, edges[0])}: {piece.say(larger(width - gone, 0.0))} of {piece.say(width)} is left where it "
            f"is deepest, and {piece.say(leave)} is the least. Make it shallower, the part wider, or say what may be "
            "left (leave=)."
        )
        numbers = {"left": width - gone, "least": leave}
        yield _finding(piece, "too little left", edges[0], sentence, numbers, COMMON_PRACTICE)


def _name(piece: Piece, edge: ShapedEdge) -> str:
    return f"{piece.where(edge.part.identity)}, {edge.name}"


def _finding(
    piece: Piece, kind: str, edge: ShapedEdge, sentence: str, numbers: dict[str, float], source: Source
) -> Finding:
    return Finding(
        severity="error",
        kind=kind,
        where=piece.where(edge.part.identity),
        parts=(edge.part.identity,),
        sentence=sentence,
        numbers=numbers,
        source=source,
    )
