"""Will it stand: loads on a layout, what its wood and joints feel of them, how near that is, and when it tips.

    buckets = Case("buckets", [Spread("foot shelf", "60 kg"), Spread("bench", "90 kg")])
    child = Case("a child hangs on the back", [Push("250 N", "back")], time="short")
    found = strength(layout, [buckets, child], wood="western larch")
    found.table()
    found.stability()

Handbook averages of clear wood with stated factors: it shows where a frame is near its end, and it is no design.
"""

from __future__ import annotations

from collections.abc import Collection, Iterable, Iterator, Mapping
from typing import Any

import attrs

from ...errors import LoadError, typed
from ...findings import in_order
from ...frame.joints import KINDS
from ...layout.laid_out import of_a_layout
from ...layout.layout import Layout
from ...layout.lifting import lift_outs
from ...layout.parts import Part
from ...trade.species import Species, species
from ...wood.bars import Model
from ..fasteners.fasten import Fastening, fasten
from ..weights import weight_of, wood_of
from .check import Terms, checks_of, worst_first
from .findings import found_in
from .framing import Bracing, framed
from .loads import GRAVITY, Case, Filled, Point, Push, Spread, Way
from .lying import At, Ground, Lying, cases
from .mechanism import mechanisms
from .result import Strength
from .solved import Loose, Solved, solved, weight
from .stability import SLOPE, Tipping, Weighed, acting, tipping, weighed
from .ties import ties

WETNESS = {True: 18.0, False: 12.0}
"""Moisture of the wood as it is weighed, outdoors or not. [%] Common practice, no source."""


@of_a_layout
def strength(
    layout: Layout,
    loads: Case | Iterable[Case] | None = None,
    *,
    wood: str | Species | None = None,
    fastening: Fastening | None = None,
    corner_blocks: Collection[str] = (),
    braced: Collection[Bracing] = (),
    walls: Collection[str] = (),
    outdoors: bool = True,
    sound: float | None = None,
    piece: int = 1,
) -> Strength:
    """What loads do to a layout.

    Parameters
    ----------
    layout : Layout
    loads : Case or iterable of Case, optional
        What lies on it and pushes it, by cases; `usual_cases` without.
    wood : str or Species, optional
        The wood of all stock that does not say its own.
    fastening : Fastening, optional
        What is driven into its joints; the usual screws without.
    corner_blocks : collection of str
        Kinds of joints, levels and parts whose joints have glued and screwed corner blocks.
    braced : collection of str
        Ways in which a brace, a back or a wall fixing holds the tops of the legs: "along", "across".
    walls : collection of str
        Sides at which it stands against a wall and does not tip: "back" …
    outdoors : bool
        Whether it gets wet.
    sound : float, optional
        What knots leave of the strength of clear wood, for all stresses but across the grain.
    piece : int
        Which piece of the batch.

    Raises
    ------
    LoadError
        If a load is none, or lies on what is not there; if the layout has errors.
    LumberError
        If a stock does not say its species and none is given, or the tables have none of that name.
    AddressError
        If there is no such piece.
    """
    if layout.errors():
        raise LoadError(
            f"{layout.frame.name} cannot be built as it is, so nothing is laid on it: {layout.errors()[0].sentence}"
        )
    _known(layout, corner_blocks, braced, walls, sound)
    parts = layout.piece(piece)
    otherwise = species(wood) if isinstance(wood, str) else wood
    woods = {part.identity: wood_of(part.slot, otherwise) for part in parts}
    terms = Terms(outdoors=outdoors, sound=sound, woods=woods)
    ground = Ground(layout, piece)
    given = usual_cases(layout) if loads is None else cases(loads)
    lying = [[one for load in case.loads for one in ground.lying(load)] for case in given]
    work = fasten(layout, wood=otherwise) if fastening is None else fastening
    wall = layout.frame.against == "wall"
    held: tuple[Bracing, ...] = ("along", "across") if wall else tuple(braced)
    against = ("front", "back", "left", "right") if wall else tuple(walls)
    tied = tuple(ties(layout, piece, work, corner_blocks))
    frame = framed(parts, tied, woods, _places(lying))
    densities = {name: weight_of(own, WETNESS[outdoors]) for name, own in woods.items()}
    loose = mechanisms(frame, held)
    done: list[Solved] = []
    if not loose:
        models: dict[Loose, Model] = {}
        own = tuple(weight(frame, densities, GRAVITY))
        done = [solved(frame, case, (*on, *own), held, models) for case, on in zip(given, lying, strict=True)]
    checks = worst_first(check for one in done for check in checks_of(one, terms))
    tipped = tuple(_tipped(layout, parts, given, lying, densities, against, piece))
    found = Strength(
        layout=layout,
        piece=piece,
        cases=given,
        terms=terms,
        braced=held,
        walls=against,
        framed=frame,
        solved=tuple(done),
        checks=checks,
        tipped=tipped,
        mechanisms=loose,
        asked={
            "loads": given,
            "wood": otherwise,
            "corner_blocks": corner_blocks,
            "braced": braced,
            "walls": walls,
            "outdoors": outdoors,
            "sound": sound,
            "piece": piece,
        },
    )
    return attrs.evolve(found, findings=in_order(found_in(found)))


def usual_cases(layout: Layout) -> tuple[Case, ...]:
    """What is laid on a frame where nobody says more; common practice, no source.

    Each level with boards carries 100 kg for each metre of its length and 0.5 m of its depth for weeks, its bins being
    full of water by half; somebody of 100 kg sits or climbs at the front edge of the highest surface up to 1.2 m; and
    `LEAN` pushes it at the top of its highest legs, each way, with full shelves.
    """
    ground = Ground(layout)
    levels = dict.fromkeys(part.level for part in ground.parts if part.slot.role.surface and part.level)
    spread = []
    for name in levels:
        surface = ground.surface(str(name))
        area = sum(
            (part.blank.high[0] - part.blank.low[0]) * (part.blank.high[1] - part.blank.low[1]) for part in surface
        )
        spread.append(Spread(str(name), round(200.0 * area * 1e-6) * GRAVITY))
    bins = [
        Filled(one.name, 0.5 * one.length * one.depth * one.height * 1e-6 * GRAVITY)
        for one in layout.frame.bins
        if one.on
    ]
    found = [Case("full shelves", [*spread, *bins], "medium")] if spread else []
    heights = {str(name): max(part.blank.high[2] for part in ground.surface(str(name))) for name in levels}
    low = [name for name, height in heights.items() if height <= 1200.0]
    if low:
        found.append(
            Case(
                "somebody at the front edge",
                [Point(max(low, key=heights.__getitem__), "100 kg", across="front edge")],
                "short",
            )
        )
    found += [Case(f"pushed {words}", [*spread, Push(LEAN, way)], "short") for way, words in WORDS.items()]
    return tuple(found)


WORDS: Mapping[Way, str] = {way: f"to the {way}" for way in ("back", "front", "right", "left")}
LEAN = 100.0
"""Somebody who leans on it pushes so much. [N] Common practice, no source."""


def _places(lying: Iterable[Iterable[Lying]]) -> dict[str, list[float]]:
    """The places along parts at which loads begin, end or stand."""
    found: dict[str, list[float]] = {}
    for case in lying:
        for one in case:
            found.setdefault(one.part, []).extend([one.place] if isinstance(one, At) else [one.start, one.end])
    return found


def _known(
    layout: Layout, blocks: Collection[str], braced: Collection[str], walls: Collection[str], sound: float | None
) -> None:
    """Refuse words that are none, all at once."""
    parts = layout.piece(1)
    names = {kind.word for kind in KINDS if kind.takes_block}
    names |= {name for part in parts for name in (part.level, part.identity) if name}
    faults = []
    for what, said, known in (
        ("corner_blocks", blocks, names),
        ("braced", braced, {"along", "across"}),
        ("walls", walls, {"front", "back", "left", "right"}),
    ):
        odd = [one for one in ([said] if isinstance(said, str) else said) if one not in known] or (
            [said] if isinstance(said, str) else []
        )
        faults += [f"{what} holds {typed(one)}. Write a list of {', '.join(sorted(known))}." for one in odd]
    if sound is not None and not (isinstance(sound, int | float) and 0 < sound <= 1):
        faults.append(f"sound is {typed(sound)}. It is the share of clear wood that knots leave: above 0, at most 1.")
    if faults:
        raise LoadError("\n".join(faults))


def _tipped(
    layout: Layout,
    parts: tuple[Part, ...],
    given: tuple[Case, ...],
    lying: list[list[Lying]],
    densities: Mapping[str, float],
    walls: tuple[str, ...],
    piece: int,
) -> Iterator[Tipping]:
    """Every case in every state, on level and on sloping ground, about every edge."""
    by_name = {part.identity: part for part in parts}
    legs = layout.legs(piece)
    for state, gone, drawn in _states(layout, parts, piece):
        stays = [part for part in parts if part.identity not in gone]
        own = [
            Weighed(one.force, _shifted(one.at, drawn.get(part.identity)))
            for part in stays
            for one in weighed([part], densities)
        ]
        each = zip((Case("empty", []), *given), ([], *lying), strict=True)
        for case, on in (one for own_case in each for one in _bare(*own_case)):
            loads = [
                Weighed(force.force, _shifted(force.at, drawn.get(one.part)))
                for one in on
                if one.part not in gone
                for force in acting([one], by_name)
            ]
            for slope in (0.0, SLOPE):
                yield from tipping(case.name, state, legs, [*own, *loads], walls=walls, slope=slope)


def _bare(case: Case, on: list[Lying]) -> Iterator[tuple[Case, list[Lying]]]:
    """A case as it is, and, where something pushes it or somebody stands on it, without what holds it down."""
    yield case, on
    kept = [isinstance(load, Push | Point) for load in case.loads]
    if any(kept) and not all(kept):
        yield attrs.evolve(case, name=f"{case.name}, shelves empty"), [one for one in on if isinstance(one, At)]


def _shifted(at: Any, by: Any) -> Any:
    return at if by is None else tuple(a + b for a, b in zip(at, by, strict=True))


def _states(layout: Layout, parts: tuple[Part, ...], piece: int) -> Iterator[tuple[str, set[str], dict[str, Any]]]:
    """What is in the piece: all of it, what lifts out taken out, each tray drawn out by half its depth."""
    yield "as it stands", set(), {}
    outs = lift_outs(parts, layout.joints_of(piece))
    if outs:
        yield "with what lifts out taken out", {part.identity for out in outs for part in out.parts}, {}
    drawn: dict[str, Any] = {}
    for out in outs:
        way = {"front": -0.5, "back": 0.5}.get(out.moves.toward)
        if way is not None and len(out.moves.steps) == 1:
            size = out.box.size()[1]
            drawn |= {part.identity: (0.0, way * size, 0.0) for part in out.parts}
    if drawn:
        yield "with every tray drawn out by half", set(), drawn
