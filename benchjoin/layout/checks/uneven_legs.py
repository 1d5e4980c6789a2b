"""Legs that were drawn with one section and measure differently: those still to be planed follow those that are done.

What is sized, marked or cut is never planed again. Where a difference is left that no plane may take, it goes to the
side that nobody clamps by.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

import attrs

from ...findings import Finding, WayOut
from ...phrases import counted, listed
from ...sources import COMMON_PRACTICE
from ..parts import Part
from .piece import Piece
from .ways_out import in_order, let_be, made_again, told

WAYS = ((1, "depth", "inner faces"), (0, "width", "far edges"))
"""The axes of a leg's section, what is measured along each as it stands, and where what differs is let be."""


BEFORE = "before they are clamped and marked"


@attrs.frozen(kw_only=True, eq=False, slots=False)
class _Own:
    """A leg that is compared, what it measures, whether it is done, and whether it is marked. [mm]"""

    name: str
    size: float
    done: bool
    marked: bool


def uneven_legs(piece: Piece) -> Iterator[Finding]:
    """Legs of one stock that measure differently by more than a hair; those that are marked already are let be."""
    for legs in _drawn_alike(piece):
        for axis, what, side in WAYS:
            yield from _differ(piece, [_own(piece, leg, axis) for leg in legs], what, side)


def _own(piece: Piece, leg: Part, axis: int) -> _Own:
    done = piece.finished(leg.identity)
    marked = done is not None and done.state != "sized"
    return _Own(name=leg.identity, size=leg.blank.size()[axis], done=done is not None, marked=marked)


def _drawn_alike(piece: Piece) -> list[list[Part]]:
    """Legs that were drawn with one section, in groups."""
    groups: list[tuple[tuple[object, ...], list[Part]]] = []
    for leg in piece.legs:
        slot = leg.slot
        drawn = (slot.stock.name, slot.axes, slot.thickness, slot.width)
        legs = next((legs for like, legs in groups if like == drawn), None)
        if legs is None:
            groups.append((drawn, [leg]))
        else:
            legs.append(leg)
    return [legs for _, legs in groups]


def _differ(piece: Piece, legs: Sequence[_Own], what: str, side: str) -> Iterator[Finding]:
    """The two legs that differ most, of which one at least is still to be marked."""
    unmarked = [leg for leg in legs if not leg.marked]
    pairs = [_extremes(unmarked, legs), _extremes(legs, unmarked)] if unmarked else []
    for thick, thin in sorted(pairs, key=lambda pair: pair[1].size - pair[0].size)[:1]:
        spread = thick.size - thin.size
        if spread > piece.frame.tape.hair:
            ways, numbers = _ways(piece, legs, (thick, thin), side)
            advice = f"{_stay(legs)}. {told(ways)}" if ways else f"Plane all to {piece.say(thin.size)} {BEFORE}."
            sentence = (
                f"{piece.where(thick.name)} is {piece.amount(spread)} more in {what}, as it stands, than {thin.name} "
                f"({piece.say(thick.size)} and {piece.say(thin.size)}), the most and the least of these legs. {advice}"
            )
            yield Finding(
                severity="warning",
                kind="legs differ",
                where=piece.where(thick.name),
                parts=(thick.name, thin.name),
                sentence=sentence,
                numbers={"spread": spread, "least": thin.size, **numbers},
                source=COMMON_PRACTICE,
                ways=ways,
            )


def _extremes(ones: Sequence[_Own], others: Sequence[_Own]) -> tuple[_Own, _Own]:
    """The thickest of the first and the thinnest of the others."""
    return max(ones, key=lambda leg: leg.size), min(others, key=lambda leg: leg.size)


def _stay(legs: Sequence[_Own]) -> str:
    done = [leg.name for leg in legs if leg.done]
    return f"{listed(done)} {'stays' if len(done) == 1 else 'stay'} as finished"


def _ways(
    piece: Piece, legs: Sequence[_Own], odd: Sequence[_Own], side: str
) -> tuple[tuple[WayOut, ...], dict[str, float]]:
    """What can be done where legs are finished, and its numbers; nothing where none is."""
    done = [leg for leg in legs if leg.done]
    if not done:
        return (), {}
    hair, to = piece.frame.tape.hair, min(leg.size for leg in done)
    wide = [leg for leg in legs if not leg.done and leg.size - to > hair]
    left = [to if leg in wide else leg.size for leg in legs]
    spread, rest = odd[0].size - odd[1].size, max(left) - min(left)
    found, numbers = [let_be(f"let the {side} differ by {piece.amount(spread)}")], {}
    if wide:
        over = max(leg.size for leg in wide) - to
        still = f", and let the {side} differ by {piece.amount(rest)}" if rest > hair else ""
        what = f"plane {listed([leg.name for leg in wide])} to {piece.say(to)} {BEFORE}{still}"
        found.append(WayOut(what, f"{piece.amount(over)} off {counted(len(wide), 'leg')}", "take off"))
        numbers["to"] = to
    if rest > hair:
        numbers["rest"] = rest
    alone = [leg for leg in odd if leg.done and not any(abs(leg.size - o.size) <= hair for o in done if o is not leg)]
    found += [made_again(piece, piece.parts[leg.name]) for leg in alone]
    return in_order(found), numbers
