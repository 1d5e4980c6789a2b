"""Seasons: what each notch does to its rail when the wood dries and when it takes up water.

A rail swells across its width while the notch, which runs along the grain of its leg, keeps its length. So the
clearance that the maker left grows in the dry season and goes in the wet one; below zero it is a squeeze, and wet
wood squeezed hard splits the leg or crushes itself and is loose ever after.

    seasons(layout, made=12, driest=9, wettest=17).table()
"""

from __future__ import annotations

from collections.abc import Iterator

import attrs

from ..errors import MoistureError
from ..findings import Finding
from ..frame.frame import Frame
from ..layout.layout import Layout
from ..layout.on_face import Housing
from ..layout.parts import Part
from ..readings import Tape
from ..tables import Table
from ..trade.species import Direction, Species, species
from ..wood.movement import LARGER, outdoor_fit
from .swelling import swelling, which_rule
from .weights import wood_of

FINE = {"in": Tape("1/64 in"), "mm": Tape("0.5 mm")}


@attrs.frozen(kw_only=True)
class NotchSeasons:
    """One notch of a leg: its width, its rail's width, and its clearance when made, driest and wettest. [mm]

    fit is the clearance that would just be used up in the wettest season.
    """

    leg: Part
    rail: Part
    width: float
    made: float
    driest: float
    wettest: float
    fit: float


@attrs.frozen(kw_only=True, repr=False)
class Seasons:
    """The notches of a layout through the year, at three moisture contents. [%]

    A notch that is open at its leg's top or foot squeezes nothing and is left out. rules tells of woods that two rules
    give different movements for.
    """

    layout: Layout
    contents: tuple[float, float, float]
    notches: tuple[NotchSeasons, ...]
    findings: tuple[Finding, ...]
    rules: tuple[str, ...] = ()

    def table(self) -> Table:
        """One line for each kind of notch: the clearances, a squeeze with a minus, and the fit that avoids it."""
        tape = FINE[self.layout.frame.tape.unit]
        made, driest, wettest = self.contents
        columns = (
            "Rail",
            f"Width ({tape.unit})",
            f"Made, {made:g} %",
            f"Driest, {driest:g} %",
            f"Wettest, {wettest:g} %",
            "Fit for the wettest",
        )
        rows = dict.fromkeys(
            (n.rail.identity, *map(tape.read, (n.rail.width, n.made, n.driest, n.wettest, n.fit))) for n in self.notches
        )
        notes = (
            f"Clearance of the notch over its rail; below zero the rail is squeezed. Averages of clear wood: {LARGER}.",
            *self.rules,
        )
        return Table(f"Through the year: {self.layout.frame.name}", columns, tuple(rows), notes, "lrrrrr")

    def __repr__(self) -> str:
        return f"<Seasons of {self.layout.frame.name}: {len(self.notches)} notches, {len(self.findings)} findings>"


def seasons(
    layout: Layout,
    *,
    made: float,
    driest: float,
    wettest: float,
    wood: str | Species | None = None,
    grain: Direction = "tangential",
) -> Seasons:
    """What the year does to the notches of a layout.

    Parameters
    ----------
    layout : Layout
    made, driest, wettest : float
        Moisture contents of the wood when the joints are made and at the ends of the year. [%]
    wood : str or Species, optional
        The wood of all rail stock that does not say its own.
    grain : "radial" or "tangential"
        How the rails move across their width; tangential where nobody knows.

    Raises
    ------
    LumberError
        If a stock does not say its species and none is given, or the tables have none of that name.
    MoistureError
        If the contents do not rise from the driest to the wettest.
    """
    if not 0 <= driest <= made <= wettest <= 100:
        raise MoistureError(
            f"driest {driest:g} %, made {made:g} %, wettest {wettest:g} %: joints are made between the two ends of "
            "the year, in percent of the dry wood."
        )
    woods = rail_woods(layout.frame, wood)
    notches = tuple(
        _through(leg, rail, notch, woods, (made, driest, wettest), grain)
        for leg in layout.parts
        for notch in leg.notches
        for rail in (layout.mate(leg, notch.rail),)
        if rail is not None and not (notch.open_foot or notch.open_top)
    )
    findings = tuple(_squeezes(notches, layout.frame.tape))
    rules = which_rule(woods[notch.rail.identity] for notch in notches)
    return Seasons(layout=layout, contents=(made, driest, wettest), notches=notches, findings=findings, rules=rules)


def propose_fit(frame: Frame, *, made: float, wettest: float, wood: str | Species | None = None) -> float:
    """A fit for a frame that stands outdoors: no rail that is let in is squeezed in the wettest season. [mm]

    Zero where none is let in. Tangential movement, which is the safe side.

    Raises
    ------
    LumberError
        If a rail stock does not say its species and none is given, or the tables have none of that name.
    """
    woods = rail_woods(frame, wood)
    fits = [
        outdoor_fit(
            slot.width,
            woods[slot.name].shrinkage.tangential,
            made=made,
            wettest=wettest,
            per_percent=woods[slot.name].coefficient("tangential"),
            start=woods[slot.name].shrinkage.start,
        )
        for slot in frame.rails()
        if slot.joint is not None and slot.joint.shares
    ]
    return float(max(fits, default=0.0))


def rail_woods(frame: Frame, wood: str | Species | None) -> dict[str, Species]:
    """The wood of every rail, by its name without the piece."""
    otherwise = species(wood) if isinstance(wood, str) else wood
    return {slot.name: wood_of(slot, otherwise) for slot in frame.rails()}


def _through(
    leg: Part,
    rail: Part,
    notch: Housing,
    woods: dict[str, Species],
    contents: tuple[float, float, float],
    grain: Direction,
) -> NotchSeasons:
    wood, (made, driest, wettest) = woods[rail.identity], contents
    clearance = notch.top - notch.bottom - rail.width
    dry, wet = (swelling(rail.width, wood, grain, made, at) for at in (driest, wettest))
    return NotchSeasons(
        leg=leg,
        rail=rail,
        width=notch.top - notch.bottom,
        made=clearance,
        driest=clearance - dry,
        wettest=clearance - wet,
        fit=wet,
    )


def _squeezes(notches: tuple[NotchSeasons, ...], tape: Tape) -> Iterator[Finding]:
    """One finding for each rail that is squeezed, from the notch that squeezes it most."""
    worst: dict[str, NotchSeasons] = {}
    for notch in notches:
        before = worst.get(notch.rail.identity)
        if before is None or notch.wettest < before.wettest:
            worst[notch.rail.identity] = notch
    fine = FINE[tape.unit]
    for name, notch in worst.items():
        if notch.wettest < -tape.hair:
            sentence = (
                f"{name} swells {fine.say(notch.fit)} across its width until the wettest season, and its notch leaves "
                f"{fine.say(notch.made)}: it is squeezed by {fine.say(-notch.wettest)}. Give it a fit of "
                f"{fine.say(notch.fit)}, or make the joint when the wood is wetter."
            )
            yield Finding(
                severity="warning",
                kind="squeezed when wet",
                where=name,
                parts=(name, notch.leg.identity),
                sentence=sentence,
                numbers={"swelling": notch.fit, "clearance": notch.made, "squeeze": -notch.wettest},
                source=LARGER,
            )
