"""Loads, checks and stability as tables."""

from __future__ import annotations

import itertools
import math
from collections.abc import Sequence

from ...layout.layout import Layout
from ...readings import Tape
from ...sources import STATICS
from ...tables import Table
from ...trade.working import MATERIAL, OVER_FACTOR, OVERLOAD, REFERENCES
from .check import Check, Terms, steadily
from .loads import GRAVITY, Case, Filled, Line, Load, Point, Push, Spread
from .stability import Tipping

POUND = 0.45359237
CAUTIONS = (
    "Handbook averages of clear wood with the factors that are stated here: not an engineering design. Local "
    "codes and licensed practice decide for what carries people, is fixed to a building, or is sold.",
    "A number below 1 tells how near the limit of these assumptions is, and nothing more.",
)


def amount(force: float, tape: Tape) -> str:
    """A force as the maker says it: what weighs so much, in kg or lb."""
    if tape.unit == "in":
        return f"{force / GRAVITY / POUND:.0f} lb"
    return f"{force / GRAVITY:.0f} kg" if force >= 10 * GRAVITY else f"{force / GRAVITY:.1f} kg"


def told(load: Load, tape: Tape) -> tuple[str, str]:
    """A load in words: what, and where."""
    if isinstance(load, Push):
        height = "at the top of the legs" if load.height is None else f"at {tape.read(load.height)}"
        row = f", {load.on} row" if load.on else ""
        force = f"{load.force / POUND / GRAVITY:.0f} lb" if tape.unit == "in" else f"{load.force:.0f} N"
        return f"push of {force}", f"to the {load.way}, {height}{row}"
    if isinstance(load, Filled):
        return amount(load.weight, tape), f"in {load.bin}"
    where = f"on {load.level}"
    if isinstance(load, Spread):
        return amount(load.weight, tape), f"{where}, spread"
    across = "the front edge" if load.across == "front edge" else "the middle"
    if isinstance(load.across, float):
        across = f"{tape.read(load.across)} behind the front"
    if isinstance(load, Line):
        return amount(load.weight, tape), f"{where}, along {across}"
    along = "" if load.along is None else f", {tape.read(load.along)} from the left"
    assert isinstance(load, Point)
    return amount(load.weight, tape), f"{where}, at {across}{along}"


def case_table(layout: Layout, cases: Sequence[Case], terms: Terms) -> Table:
    """What lies on what, case by case."""
    tape = layout.frame.tape
    said = {case.name: "; ".join(" ".join(told(load, tape)) for load in case.loads) for case in cases}
    rows = [(case.name, case.time, said[case.name]) for case in cases]
    beside = "; ".join(f"{one.words} {one.force:.0f} N" for one in REFERENCES)
    notes = (
        "The weight of the wood is with every case.",
        f"Beside it, the loads of a published test of seats, no design load: {beside} ({REFERENCES[0].source}).",
    )
    return Table(f"Loads: {layout.frame.name}", ("Case", "Stays", "Loads"), tuple(rows), notes)


def felt(one: Check) -> tuple[str, str]:
    """What is felt and what is worked with."""

    def say(number: float) -> str:
        if math.isnan(number):
            return "not known"
        value = steadily(number)
        if one.unit == "N·mm":
            return f"{value / 1000:.1f} N·m"
        return f"{value:.1f} {one.unit}" if one.unit != "N" else f"{value:.0f} N"

    return say(one.felt), say(one.limit)


def use(one: Check) -> str:
    """How near, as a number."""
    if math.isnan(one.use):
        return "–"
    return "nothing takes it" if math.isinf(one.use) else f"{steadily(one.use):.2f}"


def by_use(layout: Layout, checks: Sequence[Check], terms: Terms, most: int, *, solved: bool) -> Table:
    """Checks by how near they are to their limits."""
    tape = layout.frame.tape
    alike: dict[tuple[str, ...], list[Check]] = {}
    for one in checks:
        place = "" if one.mate or one.kind in ("column", "sag") else f"at {tape.read(one.place)}"
        words = ", ".join(filter(None, (place, one.words)))
        alike.setdefault((use(one), one.kind, *felt(one), words), []).append(one)
    rows = []
    for (near, kind, own, limit, words), ones in itertools.islice(alike.items(), most):
        where = f"{ones[0].part} at {ones[0].mate}" if ones[0].mate else ones[0].part
        more = f"; {len(ones) - 1} more alike" if len(ones) > 1 else ""
        rows.append((near, where + more, kind, own, limit, ones[0].case, words))
    knots = "as stated for each stress" if terms.sound is None else f"{terms.sound:g}"
    notes = [
        *CAUTIONS,
        "Worked with: the weakest in twenty of the handbook's average, times what knots leave "
        f"({knots}), times time and wet (EN 1995-1-1 Table 3.1, {'outdoors' if terms.outdoors else 'indoors'}), "
        f"by {MATERIAL:g} and {OVERLOAD:g}.",
        "Joints count as stiff where shoulders, two fasteners apart or corner blocks hold them, as hinges "
        "elsewhere; feet stand, and do not pull.",
    ]
    if not solved:
        notes.insert(0, "Nothing keeps the frame upright, so nothing is worked out: see what was found.")
    columns = ("Use", "Where", "What", "Felt", "Worked with", "Case", "")
    return Table(f"How near: {layout.frame.name}", columns, tuple(rows), tuple(notes), "rllrrll")


def stability_table(layout: Layout, tipped: Sequence[Tipping], walls: Sequence[str]) -> Table:
    """The worst of every case, and how it stands then."""
    rows = []
    for case in dict.fromkeys(one.case for one in tipped):
        worst = min((one for one in tipped if one.case == case), key=lambda one: steadily(one.factor))
        number = "never" if math.isinf(worst.factor) else f"{steadily(worst.factor):.2f}"
        rows.append((case, number, worst.edge, worst.state, worst.ground))
    notes = [
        f"What holds by what tips ({STATICS}); {OVER_FACTOR:g} is asked, which is common practice, no source.",
        CAUTIONS[0],
    ]
    if walls:
        notes.insert(0, f"It does not tip to the {', '.join(walls)}, where a wall holds it.")
    columns = ("Case", "Factor", "Over its edge", "State", "Ground")
    return Table(f"Stability: {layout.frame.name}", columns, tuple(rows), tuple(notes), "lrlll")
