"""What the maker must know about loads: what is over its limit, what tips, what nothing keeps upright."""

from __future__ import annotations

import math
from collections.abc import Iterator

from ...findings import Finding
from ...layout.net_section import stretches
from ...sources import COMMON_PRACTICE, STATICS
from ...trade.working import OVER_FACTOR, STUD_NOTCH, STUD_SOURCE
from .check import steadily
from .result import Strength

REMEDY = {
    "bending": "Let in less deep, take thicker or wider stock, or shorten the free length",
    "shear": "Take higher stock, or leave more wood beside the notch",
    "bearing": "Give it a wider seat",
    "column": "Hold the leg at another height, or take thicker stock",
    "joint": "Give it a notch, a ledger or more fasteners",
    "turning": "Give it a wider rail, a deeper notch or a brace",
    "sag": "Take higher stock, or carry it at one place more",
    "uplift": "Screw it down, or bring the load between its supports",
}


def found_in(found: Strength) -> Iterator[Finding]:
    """Findings of a strength, none of which is an error: it is the maker who decides."""
    piece = (found.piece,)
    for one in found.mechanisms:
        yield Finding(
            severity="warning",
            kind="mechanism",
            where=f"the whole, {one.way}",
            parts=one.parts,
            pieces=piece,
            sentence=f"{found.layout.frame.name}: {one.words}. Corner blocks, a brace, a back of boards screwed with "
            "two screws at each crossing, or a fixing to a wall would; until then no load is worked out.",
            source=STATICS,
        )
    for case in found.solved:
        if case.tips:
            yield Finding(
                severity="warning",
                kind="tips",
                where=case.case.name,
                pieces=piece,
                sentence=f"{case.case.name}: the piece falls over; its wood is asked as if its feet were held down.",
                source=STATICS,
            )
    yield from _over(found)
    yield from _unsteady(found)
    yield from _studs(found)


def _over(found: Strength) -> Iterator[Finding]:
    for one in found.checks:
        if math.isnan(one.use) or one.use <= 1.0:
            continue
        with_ = f" at {one.mate}" if one.mate else ""
        times = f"is {steadily(one.use):.1f} times what is worked with"
        many = "has nothing to take it" if math.isinf(one.use) else times
        yield Finding(
            severity="note" if one.kind == "sag" else "warning",
            kind=f"strength: {one.kind}",
            where=one.part,
            parts=(one.part, *filter(None, [one.mate])),
            pieces=(found.piece,),
            sentence=f"{one.part}{with_}, {one.case}: its {WHAT[one.kind]} {many}. {REMEDY[one.kind]}.",
            numbers={"use": one.use},
            source=one.source,
        )


WHAT = {
    "bending": "bending",
    "shear": "shear",
    "bearing": "press on its seat",
    "column": "press down its length",
    "joint": "load on its fasteners",
    "turning": "turning in its joint",
    "sag": "sag",
    "uplift": "pull away from what carries it",
}


def _unsteady(found: Strength) -> Iterator[Finding]:
    """The worst of what tips it, by case."""
    for case in dict.fromkeys(one.case for one in found.tipped):
        worst = min((one for one in found.tipped if one.case == case), key=lambda one: one.factor)
        if worst.factor >= OVER_FACTOR:
            continue
        word = "tips it" if worst.factor < 1 else "comes near to tipping it"
        yield Finding(
            severity="warning",
            kind="tipping",
            where=f"the {worst.edge} edge of its feet",
            pieces=(found.piece,),
            sentence=f"{case}: {word} over its {worst.edge} edge ({worst.state}, ground {worst.ground}): what holds "
            f"is {steadily(worst.factor):.2f} times what tips, {OVER_FACTOR:g} is asked. Fix it to a wall, widen its "
            "stance that way, or weigh down its lowest shelf.",
            numbers={"factor": worst.factor},
            source=COMMON_PRACTICE,
        )


def _studs(found: Strength) -> Iterator[Finding]:
    """Legs notched deeper than a stud of a wall may be, which is the nearest published rule for posts."""
    over = []
    for leg in found.layout.legs(found.piece):
        size = leg.blank.size()
        share = 0.0
        for stretch in stretches(leg):
            for cut in stretch.cuts:
                axis = 0 if cut.cut.face in ("left", "right") else 1
                share = max(share, float(cut.depth) / size[axis])
        if share > STUD_NOTCH[0]:
            over.append((leg.identity, share))
    if over:
        worst = max(share for _, share in over)
        yield Finding(
            severity="note",
            kind="notched like no stud",
            where=", ".join(name for name, _ in over),
            parts=tuple(name for name, _ in over),
            pieces=(found.piece,),
            sentence=f"Notches take up to {worst:.0%} of the legs; a bearing stud of a house may lose "
            f"{STUD_NOTCH[0]:.0%}, another {STUD_NOTCH[1]:.0%}. That rule is written for building timber: here the "
            "wood that is left is checked.",
            numbers={"share": worst},
            source=STUD_SOURCE,
        )
