"""Mechanisms: ways in which nothing keeps a frame upright. They are told, not solved."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

import attrs
import numpy as np

from .framing import Bracing, Framed
from .ties import Tie

WAYS: tuple[tuple[Bracing, int], ...] = (("along", 1), ("across", 0))
"""A frame leans along its length by turning about y (1), across it by turning about x (0)."""


@attrs.frozen(kw_only=True)
class Mechanism:
    """A way in which a frame gives: along its length, across it, or some part by itself; parts move most."""

    way: str
    parts: tuple[str, ...]
    words: str


def upright_holds(ties: Sequence[Tie], axis: int) -> tuple[Tie, ...]:
    """Ties that keep something upright from turning about an axis of the world."""
    return tuple(
        tie for tie in ties if tie.holds and tie.across == axis and (tie.host.slot.upright or tie.guest.slot.upright)
    )


def mechanisms(framed: Framed, braced: Sequence[Bracing]) -> tuple[Mechanism, ...]:
    """The ways in which nothing keeps a frame upright, its feet on the ground."""
    found = tuple(_leaning(framed, braced))
    if found:
        return found
    model = framed.supported((), braced)
    if model.holds():
        return ()
    moved = np.abs(model.easiest[1][:, :3]).max(axis=1)
    most = sorted(framed.chains, key=lambda name: -max(moved[list(framed.chains[name].nodes)]))[:3]
    words = f"{most[0]} can move by itself: nothing that counts holds it"
    return (Mechanism(way="by itself", parts=tuple(most), words=words),)


def _leaning(framed: Framed, braced: Sequence[Bracing]) -> Iterator[Mechanism]:
    for way, axis in WAYS:
        if way in braced or upright_holds(framed.ties, axis):
            continue
        legs = tuple(framed.feet)
        ends = [tie for tie in framed.ties if tie.host.identity in legs and tie.across == axis]
        kinds = sorted({tie.joint.kind for tie in ends})
        told = (
            f"the joints that could are {', '.join(kinds)}, driven into end grain or by one fastener"
            if kinds
            else "no joint could"
        )
        lean = "lengthwise" if way == "along" else "front to back"
        yield Mechanism(
            way=way,
            parts=tuple(dict.fromkeys(tie.guest.identity for tie in ends)) or legs,
            words=f"nothing keeps it from leaning {lean}: {told}, and that counts as a hinge",
        )
