"""What would help: small changes to the members that are nearest their limits, each laid out and worked out again."""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping
from functools import lru_cache
from typing import Any

import attrs

from ...errors import BenchjoinError
from ...frame.address import alter, value
from ...frame.joints import Notch
from ...layout.lay_out import lay_out
from ...layout.parts import Part
from ...tables import Table
from .check import steadily
from .result import Strength
from .strength import strength

LESS_DEEP, THICKER, WIDER = "let in less", "thicker", "wider"
STEPS: Mapping[str, Mapping[str, float]] = {
    "mm": {LESS_DEEP: 3.0, THICKER: 5.0, WIDER: 15.0},
    "in": {LESS_DEEP: 25.4 / 8, THICKER: 25.4 * 3 / 16, WIDER: 25.4 / 2},
}
"""How much a notch is let in less, a leg or board made thicker, a rail made wider, to see what it does. [mm]"""
Candidate = tuple[str, dict[str, Any], str]
"""What it is, the addresses that it alters, and the part that it is for."""
LOOKED_AT = 4
"""So many members, the nearest to their limits, are looked at."""


@attrs.frozen(kw_only=True)
class Help:
    """One change: what it is, the addresses that it alters, the member's use before and after, and that of the whole.

    use is NaN where the altered frame cannot be built, and reason says why.
    """

    what: str
    changes: Mapping[str, Any]
    part: str
    before: float
    use: float
    whole: float
    reason: str = ""


@lru_cache(maxsize=4)
def would_help(found: Strength) -> tuple[Help, ...]:
    """Changes to the members nearest their limits, those that help most first.

    Each is a frame of its own, laid out and loaded again with the same cases, so what it does elsewhere is seen too:
    ``whole`` is the nearest use anywhere.
    """
    wanted: dict[tuple[tuple[str, Any], ...], tuple[str, str]] = {}
    for what, changes, part in _candidates(found):
        wanted.setdefault(tuple(changes.items()), (what, part))
    helps = [_again(found, what, dict(changes), part) for changes, (what, part) in wanted.items()]
    return tuple(
        sorted(helps, key=lambda one: (math.isnan(one.use), steadily(one.use / one.before) if one.before else 1.0))
    )


def help_table(found: Strength, helps: tuple[Help, ...]) -> Table:
    """What each change would do."""
    rows = tuple(
        (
            one.what,
            one.part,
            f"{steadily(one.before):.2f}",
            "–" if math.isnan(one.use) else f"{steadily(one.use):.2f}",
            one.reason or ("–" if math.isinf(one.whole) else f"{steadily(one.whole):.2f}"),
        )
        for one in helps
    )
    notes = ("Each change is laid out and worked out again, the others left as they are.",)
    return Table(
        f"What would help: {found.layout.frame.name}",
        ("Change", "For", "Use now", "Then", "Nearest anywhere then"),
        rows,
        notes,
        "llrrr",
    )


def _again(found: Strength, what: str, changes: Mapping[str, Any], part: str) -> Help:
    before = _use(found, part)
    try:
        layout = lay_out(alter(found.layout.frame, changes))
        if layout.errors():
            raise BenchjoinError(layout.errors()[0].sentence)
        other = strength(layout, **found.asked)
    except BenchjoinError as error:
        return Help(
            what=what, changes=changes, part=part, before=before, use=math.nan, whole=math.nan, reason=str(error)[:160]
        )
    return Help(what=what, changes=changes, part=part, before=before, use=_use(other, part), whole=other.use)


def _use(found: Strength, part: str) -> float:
    own = [one.use for one in found.checks if one.part == part and math.isfinite(one.use) and one.kind != "sag"]
    return max(own, default=0.0)


def _candidates(found: Strength) -> Iterator[Candidate]:
    parts = {part.identity: part for part in found.layout.piece(found.piece)}
    seen: list[str] = []
    for one in found.checks:
        part = parts[one.part]
        key = part.side + part.role + (part.level or "")
        if not math.isfinite(one.use) or one.kind in ("uplift", "sag") or key in seen:
            continue
        if len(seen) == LOOKED_AT:
            return
        seen.append(key)
        for make in (_leg, _rail, _board):
            yield from make(found, part)


def _step(found: Strength, way: str) -> tuple[float, str]:
    """A step in millimetres and as the tape says it."""
    tape = found.layout.frame.tape
    size = STEPS[tape.unit][way]
    return size, f"{tape.read(size)} {tape.unit}"


def _leg(found: Strength, part: Part) -> Iterator[Candidate]:
    """A leg: thicker, or its notches less deep."""
    if not part.slot.role.stands:
        return
    (size, words), row = _step(found, THICKER), part.side
    changes = {f"{row}.stock.thickness": part.stock.thickness + size}
    yield f"{row} legs thicker by {words}", changes, part.identity
    for cut in part.notches:
        yield from _less_deep(found, part, cut.cut.mate, float(cut.depth))


def _less_deep(found: Strength, part: Part, mate: str, depth: float) -> Iterator[Candidate]:
    rail = next((own for own in found.layout.piece(found.piece) if own.identity == mate), None)
    size, words = _step(found, LESS_DEEP)
    if rail is None or rail.slot.level is None or depth <= 2 * size or rail.side not in ("front", "back"):
        return
    address = f"{rail.slot.level.name}.{rail.side}.joint"
    if _now(found, address[: -len(".joint")] + ".width") is not None:
        yield f"{mate} let in {words} less", {address: Notch(depth=depth - size)}, part.identity


def _rail(found: Strength, part: Part) -> Iterator[Candidate]:
    """All rails of a level wider, so that they stay flush; or of thicker stock."""
    if part.role != "rail" or part.slot.level is None:
        return
    size, words = _step(found, WIDER)
    name = part.slot.level.name
    widths = {
        address: _now(found, address) for address in (f"{name}.{side}.width" for side in ("front", "back", "ends"))
    }
    wider = {address: float(now) + size for address, now in widths.items() if isinstance(now, float)}
    if wider:
        yield f"{name}: rails wider by {words}", wider, part.identity
    size, words = _step(found, THICKER)
    yield f"rails thicker by {words}", {"rail_stock.thickness": part.thickness + size}, part.identity


def _board(found: Strength, part: Part) -> Iterator[Candidate]:
    """A board, bearer or slat: of thicker stock, wherever that stock is used."""
    if part.role in ("leg", "rail") or part.slot.level is None:
        return
    name, (size, words) = part.slot.level.name, _step(found, THICKER)
    for run in dict.fromkeys((part.slot.run or "", "tray", "boards", "bearers")):
        for place in ("stock", "boards.stock", "sides"):
            now = _now(found, f"{name}.{run}.{place}.thickness")
            if isinstance(now, float) and abs(now - part.thickness) < 0.1:
                yield (
                    f"{name}: {run} thicker by {words}",
                    {f"{name}.{run}.{place}.thickness": now + size},
                    part.identity,
                )
                return


def _now(found: Strength, address: str) -> Any:
    """The value at an address, None where there is none."""
    try:
        return value(found.layout.frame, address)
    except BenchjoinError:
        return None
