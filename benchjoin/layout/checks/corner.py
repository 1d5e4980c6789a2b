"""Corners outside the leg: rails that run past the legs to cover the ends of those that stop behind them."""

from __future__ import annotations

from collections.abc import Iterator

from ...findings import Finding
from ...lengths import TOUCH
from ...sources import STATICS
from .piece import Piece


def covered_corners(piece: Piece) -> Iterator[Finding]:
    """A rail that is longer than the size over the legs because it covers a corner."""
    for slot in piece.frame.rails():
        part = piece.parts.get(slot.name)
        if part is None or slot.of.overhang:
            continue
        axis = slot.axes[0]
        legs = [piece.parts[leg].blank for leg in slot.hosts]
        past = (
            min(box.low[axis] for box in legs) - part.blank.low[axis],
            part.blank.high[axis] - max(box.high[axis] for box in legs),
        )
        ends = ("left", "right") if slot.long else ("front", "back")
        told = [f"{piece.say(by)} at the {end}" for by, end in zip(past, ends, strict=True) if by > TOUCH]
        if told:
            yield Finding(
                severity="note",
                kind="covers a corner",
                where=piece.where(slot.name),
                parts=(slot.name,),
                sentence=f"{piece.where(slot.name)} runs past the legs by {' and '.join(told)} to cover the rails that "
                f"stop behind it, and is {piece.say(part.length)} long.",
                numbers={"low": past[0], "high": past[1], "length": part.length},
                source=STATICS,
            )
