"""Checks: what one part or joint feels beside what is worked with, by how near they are.

Bending and pull or press are taken on what is left of the wood at each place, about its own middle: a notch on one face
moves that middle, so a load down the leg's old middle bends it. Inside the band where a joint holds a part, the joint
bends in its stead; at the band's edges the part does.
"""

from __future__ import annotations

import itertools
import math
from collections.abc import Iterable, Iterator, Mapping, Sequence
from typing import Literal

import attrs
import numpy as np

from ...layout.parts import Part
from ...sources import STATICS, Source
from ...trade.species import STRENGTH, Species
from ...trade.working import BUCKLING, CREEP, SAG, working
from ...wood.beams import COLUMN, NDS_NOTCH, grown, notch_share_en, notch_share_nds, ylinen
from .solved import Felt, Solved
from .ties import Tie, spread

Kind = Literal["bending", "shear", "bearing", "column", "joint", "turning", "sag", "uplift"]
SHOULDER = Source(
    "statics of two shoulders that press over half a leg's width each, as a triangle", standing="arithmetic"
)
HANDBOOK = Source("Wood Handbook FPL-GTR-282 (2021)", "ch. 9: Eq. 9-13, 9-14, 9-25", standing="transcribed")
STIFF_ENOUGH = 0.1
"""A press up to such a share of what buckles it does nothing to bending: EN 1993-1-1, 5.2.1, from memory."""
NEAR = 0.6
"""Inside so many mm of an edge a place is at the edge. [mm]"""


@attrs.frozen(kw_only=True)
class Check:
    """What one part or joint feels at its worst, and what is worked with.

    felt and limit are stresses [N/mm²], forces [N], moments [N·mm] or lengths [mm], as unit says; use is felt by limit,
    without end where nothing is there to take it. place lies along the part from its datum end, mate is the other part
    of a joint; moment is that at the place, about the axis of the world that turns says; words tell what was taken.
    """

    kind: Kind
    part: str
    mate: str = ""
    case: str
    place: float = 0.0
    felt: float
    limit: float
    unit: str
    moment: float = 0.0
    words: str = ""
    source: Source = STATICS

    @property
    def use(self) -> float:
        """Felt, as a share of what is worked with; no number where no limit is known."""
        if math.isnan(self.limit):
            return math.nan
        return self.felt / self.limit if self.limit > 0 else (math.inf if self.felt > 0 else 0.0)


@attrs.frozen(kw_only=True)
class Terms:
    """How a piece is judged: whether it gets wet, what knots leave of its wood, the wood of each part."""

    outdoors: bool
    sound: float | None
    woods: Mapping[str, Species]

    def stress(self, part: str, kind: str, time: str) -> float:
        """What a part's wood is worked with. [N/mm²]"""
        average = self.woods[part].dry.megapascals()[kind]
        return working(average, kind, time=time, outdoors=self.outdoors, sound=self.sound)  # type: ignore[arg-type]


Held = Sequence[tuple[float, float, int, Tie]]


def held_bands(part: str, ties: Iterable[Tie]) -> list[tuple[float, float, int, Tie]]:
    """Where joints keep a part from bending: from, to, about which axis of the world, and the tie."""
    return [(*tie.band, tie.across, tie) for tie in ties if tie.host.identity == part and tie.holds]


def checks_of(case: Solved, terms: Terms) -> Iterator[Check]:
    """All checks of one case: of each part its worst bending, shear and sag, of each joint what it passes on."""
    for name, chain in case.framed.chains.items():
        held = held_bands(name, case.framed.ties)
        felt = list(case.felt(name))
        yield _bending(case, chain.part, felt, held, terms)
        yield _shear(case, chain.part, felt, terms)
        if chain.part.slot.upright:
            yield from _column(case, chain.part, felt, held, terms)
        else:
            yield from _sag(case, chain.part, terms)
    yield from _joints(case, terms)


def _bending(case: Solved, part: Part, felt: Sequence[Felt], held: Held, terms: Terms) -> Check:
    """The largest stress of bending with pull or press, along a part."""
    axis, time = part.slot.axes[0], case.case.time
    rupture, crushing = (terms.stress(part.identity, kind, time) for kind in ("rupture", "crushing"))
    middle = [(a + b) / 2 for a, b in zip(part.blank.low, part.blank.high, strict=True)]
    worst: tuple[float, Felt, tuple[float, float]] | None = None
    free = [list(_free(part, felt, held, terms, n)) if part.slot.upright else [] for n in (0, 1)]
    for number, one in enumerate(felt):
        about = [0.0, 0.0]
        for n in (0, 1):
            world = (axis + 1 + n) % 3
            inside = any(low + NEAR < one.place < high - NEAR for low, high, turn, _ in held if turn == world)
            about[n] = 0.0 if inside else one.moment[1 + n]
        off = [middle[(axis + 1 + n) % 3] - one.section.middle[n] for n in (0, 1)]
        own = (about[0] + one.force[0] * off[1], about[1] - one.force[0] * off[0])
        middle_of_bar = (felt[number - number % 2].place + felt[number - number % 2 + 1].place) / 2
        own = (own[0] * _grown(free[0], middle_of_bar), own[1] * _grown(free[1], middle_of_bar))
        bent = sum(abs(own[n]) / one.section.modulus(n) for n in (0, 1))
        plain = abs(one.force[0]) / one.section.area
        share = bent / rupture + plain / (crushing if one.force[0] < 0 else rupture)
        if worst is None or steadily(share) > steadily(worst[0]):
            worst = (share, one, own)
    assert worst is not None
    share, one, own = worst
    larger = 0 if abs(own[0]) / one.section.modulus(0) >= abs(own[1]) / one.section.modulus(1) else 1
    turn = (axis + 1 + larger) % 3
    edge = next(
        (t for low, high, at, t in held if at == turn and min(abs(one.place - low), abs(one.place - high)) < NEAR), None
    )
    words = f"beside {edge.guest.identity}, which holds it" if edge else ""
    if abs(own[larger]) > 0 and part.slot.upright and not edge:
        words = "no joint holds it there"
    return Check(
        kind="bending",
        part=part.identity,
        case=case.case.name,
        place=_from_datum(part, one.place),
        felt=share * rupture,
        limit=rupture,
        unit="N/mm²",
        moment=abs(own[larger]),
        words=words,
        source=STRENGTH,
    )


def _from_datum(part: Part, place: float) -> float:
    """A place along the world's axis as it lies from the datum end. [mm]"""
    axis = part.slot.axes[0]
    return place - part.blank.low[axis] if part.placement.u[axis] > 0 else part.blank.high[axis] - place


def _shear(case: Solved, part: Part, felt: Sequence[Felt], terms: Terms) -> Check:
    """The largest shear: one and a half times force by area, more beside a notch."""
    axis = part.slot.axes[0]
    at = [tie.on_guest[axis] for tie in case.framed.ties if tie.guest is part]
    at += [tie.on_host[axis] for tie in case.framed.ties if tie.host is part]
    each = [(_sheared(part, one, at), one) for one in felt]
    (stress, notched), worst = max(each, key=lambda own: steadily(own[0][0]))
    return Check(
        kind="shear",
        part=part.identity,
        case=case.case.name,
        place=_from_datum(part, worst.place),
        felt=stress,
        limit=terms.stress(part.identity, "shear", case.case.time),
        unit="N/mm²",
        words="beside a notch, raised as NDS 3.4.3.2 and EN 1995-1-1 6.5.2 do" if notched else "",
        source=NDS_NOTCH if notched else HANDBOOK,
    )


def _sheared(part: Part, felt: Felt, supports: Sequence[float]) -> tuple[float, bool]:
    """``3 V / 2 A`` on what is left, by what a notch leaves of it, and whether there is one. [N/mm²]

    Both codes speak of notches at a support, open to the pull; here any notch is taken so.
    """
    stress = 1.5 * float(np.hypot(felt.force[1], felt.force[2])) / felt.section.area
    axis = part.slot.axes[0]
    n = 0 if abs(felt.force[1]) >= abs(felt.force[2]) else 1
    high, left = part.blank.size()[(axis + 1 + n) % 3], felt.section.size[n]
    if left >= high - NEAR:
        return stress, False
    away = min((abs(felt.place - place) for place in supports), default=0.0)
    return stress / min(float(notch_share_nds(high, left)), float(notch_share_en(high, left, away))), True


def buckling(felt: Sequence[Felt], about: int, low: float, high: float, stiff: float) -> float:
    """The press that buckles a part between two places of it, its ends free to turn. [N]

    Notes
    -----
    Energy of a half wave of sine, by the bending that the press causes (Timoshenko): ``π² E / L²`` by the mean of
    ``2 sin²(π x / L) / I``; that is Euler's load where the section is one (Wood Handbook Eq. 9-25). about is the axis
    of the section, 0 or 1.
    """
    long, soft = high - low, 0.0
    for one, other in zip(felt[::2], felt[1::2], strict=True):
        a, b = max(one.place, low) - low, min(other.place, high) - low
        if b > a:
            waves = (math.sin(2 * math.pi * b / long) - math.sin(2 * math.pi * a / long)) * long / (2 * math.pi)
            soft += (b - a - waves) / one.section.inertia[about]
    return math.pi**2 * stiff / long**2 / (soft / long)


Free = tuple[float, float, float, float, float]
"""A free length of a leg: what presses it, what buckles it, its least area, from where to where. [N, mm², mm]"""


def _free(part: Part, felt: Sequence[Felt], held: Held, terms: Terms, about: int) -> Iterator[Free]:
    """The lengths of a leg between what holds it from bending about an axis, where anything presses it."""
    stiff = terms.woods[part.identity].dry.megapascals()["elasticity"]
    edges = (at for a, b, axis, _ in held for at in (a, b) if axis == about)
    for low, high in itertools.pairwise(sorted({part.blank.low[2], part.blank.high[2], *edges})):
        inside = [one for one in felt if low - NEAR <= one.place <= high + NEAR]
        press = max((-one.force[0] for one in inside), default=0.0)
        if press > 0 and high - low > NEAR:
            buckles = buckling(felt, about, low, high, stiff) / BUCKLING**2
            yield press, buckles, min(one.section.area for one in inside), low, high


def _grown(free: Sequence[Free], place: float) -> float:
    """By how much the press on a leg makes its bending grow at a place; below a tenth of what buckles it not at all."""
    share = max((press / buckles for press, buckles, _, low, high in free if low <= place <= high), default=0.0)
    return float(grown(share)) if share > STIFF_ENOUGH else 1.0


def _column(case: Solved, part: Part, felt: Sequence[Felt], held: Held, terms: Terms) -> Iterator[Check]:
    """The press on a leg beside what it bears, over each free length, about both axes."""
    crushing = terms.stress(part.identity, "crushing", case.case.time)
    share = crushing / terms.woods[part.identity].dry.megapascals()["crushing"]
    found = []
    for press, buckles, area, low, high in (own for n in (0, 1) for own in _free(part, felt, held, terms, n)):
        limit = area * float(ylinen(crushing, buckles / area * share))
        found.append((press / limit, press, limit, low, high))
    if found:
        _, press, limit, low, high = max(found, key=lambda own: (steadily(own[0]), own[3]))
        yield Check(
            kind="column",
            part=part.identity,
            case=case.case.name,
            place=low - part.blank.low[2],
            felt=press,
            limit=limit,
            unit="N",
            words=f"free over {high - low:.0f} mm, taken {BUCKLING:g} times",
            source=COLUMN,
        )


def _sag(case: Solved, part: Part, terms: Terms) -> Iterator[Check]:
    """How far a part sags between what carries it, with what years add."""
    chain, axis = case.framed.chains[part.identity], part.slot.axes[0]
    on = [tie.on_guest[axis] for tie in case.framed.ties if tie.guest is part and not tie.parallel]
    sag, span, where = case.sag(chain, 2, on)
    if span <= 0:
        return
    lasting = case.case.time in ("permanent", "long", "medium")
    least, most = CREEP[terms.outdoors] if lasting else (0.0, 0.0)
    low, high = (steadily(sag * (1 + more)) for more in (least, most))
    years = f"{low:.1f} to {high:.1f} mm in years" if lasting else "it comes back"
    yield Check(
        kind="sag",
        part=part.identity,
        case=case.case.name,
        place=_from_datum(part, where),
        felt=sag,
        limit=span / SAG,
        unit="mm",
        words=f"over {span:.0f} mm; {years}",
    )


def _joints(case: Solved, terms: Terms) -> Iterator[Check]:
    """What each joint passes on: pressed on its shoulder or seat, hung on its fasteners, turned in its plane."""
    by_joint: dict[int, list[tuple[Tie, np.ndarray, np.ndarray]]] = {}
    for number, tie in enumerate(case.framed.ties):
        by_joint.setdefault(id(tie.joint), []).append((tie, *case.passed(number)))
    for own in by_joint.values():
        tie = own[0][0]
        force = np.sum([f for _, f, _ in own], axis=0)
        down = -float(force[2])
        for make in (_bearing, _hung, _uplift):
            found = make(case, tie, down, terms)
            if found is not None:
                yield found
        if tie.holds:
            yield _turning(case, tie, abs(float(own[0][2][tie.across])), terms)


def steadily(value: float) -> float:
    """A number to six figures: what is told, and which of two alike comes first, is the same on every machine."""
    return float(f"{round(value, 8):.6g}")


def _check(case: Solved, tie: Tie, **more: object) -> Check:
    return Check(part=tie.guest.identity, mate=tie.host.identity, case=case.case.name, **more)  # type: ignore[arg-type]


def _bearing(case: Solved, tie: Tie, down: float, terms: Terms) -> Check | None:
    """A guest that sits on wood: its press on the seat or the shoulder, across the grain."""
    if down <= 0 or tie.joint.how.hangs:
        return None
    size = tie.joint.contact.size()
    area = size[0] * size[1]
    if area <= 1.0:
        return None
    limit = min(
        terms.stress(part.identity, "bearing", case.case.time)
        for part in (tie.guest, tie.host)
        if not part.slot.upright
    )
    return _check(
        case,
        tie,
        kind="bearing",
        felt=down / area,
        limit=limit,
        unit="N/mm²",
        words="across the grain",
        source=STRENGTH,
    )


def _hung(case: Solved, tie: Tie, down: float, terms: Terms) -> Check | None:
    """A guest that hangs on its fasteners."""
    if abs(down) <= 1.0 or not tie.joint.how.hangs or tie.holds == "corner block":
        return None
    if tie.fixing is None or tie.fixing.lateral is None or tie.joint.contact.size()[2] <= 1e-6:
        return None
    metal = tie.fixing.size.name if tie.fixing.driven else "nothing driven"
    limit = tie.fixing.lateral
    if math.isnan(limit):
        return None
    words = f"{len(tie.fixing.driven)} × {metal}"
    if limit <= 0:
        words += "; counted as carrying nothing: give it a ledger, a notch or a corner block"
    return _check(case, tie, kind="joint", felt=abs(down), limit=limit, unit="N", words=words)


def _uplift(case: Solved, tie: Tie, down: float, terms: Terms) -> Check | None:
    """A board that would lift off what carries it."""
    if down >= -1.0 or not tie.joint.how.lies:
        return None
    limit = 0.0
    if tie.fixing is not None and tie.fixing.withdrawal is not None and not math.isnan(tie.fixing.withdrawal):
        limit = tie.fixing.withdrawal
    return _check(
        case,
        tie,
        kind="uplift",
        felt=-down,
        limit=limit,
        unit="N",
        words="it lifts there; screws hold it or nothing does",
    )


def _turning(case: Solved, tie: Tie, moment: float, terms: Terms) -> Check:
    """A joint that keeps the frame upright: shoulders that press across the grain, or fasteners as a couple."""
    size = tie.joint.contact.size()
    if tie.holds == "corner block":
        limit, words = math.nan, "a corner block takes it; its screws and glue are not worked out"
    elif tie.holds == "shoulders":
        wide, deep = size[tie.guest.slot.axes[0]], size[tie.across]
        press = min(terms.stress(part.identity, "bearing", case.case.time) for part in (tie.guest, tie.host))
        limit, words = press * deep * wide**2 / 6, "its shoulders hold it"
    else:
        assert tie.fixing is not None
        one = (tie.fixing.lateral or 0.0) / len(tie.fixing.driven)
        limit, words = (
            one * spread(tie.fixing),
            f"{len(tie.fixing.driven)} × {tie.fixing.size.name} hold it as a couple",
        )
    return _check(
        case, tie, kind="turning", felt=moment, limit=limit, unit="N·mm", moment=moment, words=words, source=SHOULDER
    )


def worst_first(found: Iterable[Check]) -> tuple[Check, ...]:
    """The nearest to its limit first: of each part and kind its worst case, of what lifts off a part the worst."""
    best: dict[tuple[str, str, str], Check] = {}
    for one in found:
        key = (one.kind, "" if one.kind == "uplift" else one.part, one.mate)
        if key not in best or _use(one) > _use(best[key]):
            best[key] = one
    return tuple(sorted(best.values(), key=_use, reverse=True))


def _use(one: Check) -> float:
    return -1.0 if math.isnan(one.use) else steadily(one.use)
