"""What the settings find: notches that the shop's own way cannot cut, stops that do not reach, short blanks."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence

import attrs

from ...findings import Finding
from ...layout.about import about
from ...layout.parts import Part
from ...lengths import TOUCH
from ...readings import Tape
from ...sources import COMMON_PRACTICE
from ...trade.allowances import Milling, usual_milling
from ...trade.order_of_work import step
from ..called import called
from ..marks import marks
from .notching import Notching
from .setting import Setting
from .shop import Shop, Way
from .sizing import Sizing

Refused = Sequence[tuple[Notching, str, Way]]


def setting_findings(
    notches: Sequence[Notching],
    refused: Refused,
    settings: Sequence[Setting],
    lengths: Sequence[Sizing],
    shop: Shop,
    tape: Tape,
    quantity: int,
) -> Iterator[Finding]:
    """All findings, in no order, for a batch of so many pieces."""
    found: Iterable[tuple[Finding, Iterable[Part]]] = (
        *_other_way(refused, shop),
        *_beyond_reach(settings, shop, tape),
        *_masters(lengths, shop, tape),
        *_short_blanks(lengths, settings, shop.milling or usual_milling(tape), tape),
        *_from_the_top(notches, tape),
        *_buried(notches, tape),
    )
    for finding, parts in found:
        yield attrs.evolve(finding, **about(parts, quantity))


About = Iterator[tuple[Finding, Iterable[Part]]]
"""Findings, each with the parts that it is about."""


def _other_way(refused: Refused, shop: Shop) -> About:
    """Notches that are cut another way than the shop's own, and why."""
    found: dict[tuple[str, str, Way], list[Notching]] = {}
    for notch, why, way in refused:
        found.setdefault((notch.level, why, way), []).append(notch)
    for (level, why, way), own in found.items():
        told = marks({notch.part.mark for notch in own})
        finding = Finding(
            severity="warning",
            kind="another way",
            where=level,
            sentence=f"{level}, notches of {told}: the {shop.way} does not do here, because {why}. It is cut with the "
            f"{way} instead; or change the notch, or the tool.",
            numbers={"width": own[0].width, "depth": own[0].depth},
            source=COMMON_PRACTICE,
        )
        yield finding, [notch.part for notch in own]


def _beyond_reach(settings: Sequence[Setting], shop: Shop, tape: Tape) -> About:
    """Cuts with the head that have no stop: it would stand too far off, or in the way of the head."""
    found: dict[tuple[str, bool], list[Setting]] = {}
    for setting in settings:
        if setting.lines and setting.tool.way == "dado head":
            far = max(setting.lines) - setting.tool.width > shop.stop_nearest
            for level in dict.fromkeys(o.notch.level for o in setting.operations):
                found.setdefault((level, far), []).append(setting)
    for (level, far), own in found.items():
        lines = sorted({line for setting in own for line in setting.lines})
        told = marks({o.notch.part.mark for s in own for o in s.operations if o.notch.level == level})
        why = f"reaches {tape.say(shop.stop_reach)}" if far else f"stays {tape.say(shop.stop_nearest)} off the head"
        finding = Finding(
            severity="note",
            kind="no stop",
            where=level,
            sentence=f"{level}, notches of {told}: the stop {why}, so the cut at "
            f"{' and '.join(map(tape.say, lines))} has "
            "none. Mark one master, strike the others from it, and cut to the lines.",
            numbers={"line": lines[-1], "reach": shop.stop_reach},
            source=COMMON_PRACTICE,
        )
        yield finding, [o.notch.part for s in own for o in s.operations if o.notch.level == level]


def _masters(lengths: Sequence[Sizing], shop: Shop, tape: Tape) -> About:
    for sizing in lengths:
        if sizing.master:
            finding = Finding(
                severity="note",
                kind="no stop",
                where=called(sizing.parts),
                sentence=f"{called(sizing.parts)}, {tape.say(sizing.at)} long: beyond the stop's reach of "
                f"{tape.say(shop.stop_reach)}. Cut one as a master and mark the others from it.",
                numbers={"length": sizing.at, "reach": shop.stop_reach},
                source=COMMON_PRACTICE,
            )
            yield finding, sizing.parts


def _short_blanks(lengths: Sequence[Sizing], settings: Sequence[Setting], least: Milling, tape: Tape) -> About:
    """Parts that are too short for a machine at their final length: the saw across the grain, and the router."""
    routed = {o.notch.part.name for s in settings if s.tool.way == "router" for o in s.operations}
    for sizing in lengths:
        short = [part for part in sizing.parts if part.name in routed and sizing.at < least.router_least - TOUCH]
        if sizing.at < least.crosscut_least - TOUCH:
            yield _short(sizing.parts, sizing.at, least.crosscut_least, "saw takes across the grain", tape)
        elif short:
            yield _short(short, sizing.at, least.router_least, "router asks for", tape)


def _short(parts: Sequence[Part], length: float, least: float, why: str, tape: Tape) -> tuple[Finding, Sequence[Part]]:
    finding = Finding(
        severity="warning",
        kind="short blank",
        where=called(parts),
        sentence=f"{called(parts)}, {tape.say(length)} long: shorter than the {tape.say(least)} that the {why}. Do all "
        f"of it, up to {step('notches').word} (step {step('notches').number}), in one longer blank, and cut it off "
        "last, or by hand.",
        numbers={"length": length, "least": least},
        source=COMMON_PRACTICE,
    )
    return finding, parts


def _from_the_top(notches: Sequence[Notching], tape: Tape) -> About:
    """Levels set from the top of legs that differ in length."""
    found: dict[str, list[Notching]] = {}
    for notch in notches:
        if notch.from_end:
            found.setdefault(notch.level, []).append(notch)
    for level, own in found.items():
        lengths = [notch.part.length for notch in own]
        differ = max(lengths) - min(lengths)
        if differ > TOUCH:
            finding = Finding(
                severity="warning",
                kind="set from the top",
                where=level,
                sentence=f"{level} is set from the top of legs whose lengths differ by "
                f"{tape.say(differ)}: they "
                "share no stop, and a leg that is a hair long lifts its notch. Set it from the foot.",
                numbers={"differ": differ},
                source=COMMON_PRACTICE,
            )
            yield finding, [notch.part for notch in own]


def _buried(notches: Sequence[Notching], tape: Tape) -> About:
    """Notches that do not come out at the face from which they would be cut."""
    for notch in notches:
        if notch.buried > TOUCH:
            finding = Finding(
                severity="warning",
                kind="buried notch",
                where=str(notch),
                sentence=f"{notch}: {tape.say(notch.buried)} of wood lies between its {notch.face} face and the "
                "notch, and "
                "no setting here leaves it standing. Mortise it by hand, or move the rail to the face.",
                numbers={"buried": notch.buried},
                source=COMMON_PRACTICE,
            )
            yield finding, [notch.part]
