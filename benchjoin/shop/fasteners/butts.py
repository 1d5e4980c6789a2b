"""Ways to hold a rail that ends against its legs, compared: what each takes, and what it holds.

    butt_ways(layout, "foot shelf/left rail", wood="western larch").table()

A butt has nothing to sit on. Screws into end grain draw out, glue on end grain lets go; what carries is wood under
wood, or screws across the grain.
"""

from __future__ import annotations

import attrs

from ...errors import FastenerError, typed
from ...layout.laid_out import of_a_layout
from ...layout.layout import Layout
from ...layout.parts import Part
from ...tables import Table
from ...trade.fasteners import steel_of
from ...trade.species import PSI, Species, species
from ...wood.holding import lateral, lateral_constant, screw_withdrawal, yield_modes
from ..weights import wood_of
from .fastener import Fastener, usual
from .lists import POUND_FORCE
from .strength import CONDITIONS, IN_END, LATERAL_SHARE, WITHDRAWAL_SHARE, yield_share

BEARING_SHARE = 2.0
"""Crushing across the grain by a load to work with. Common practice, no source: well past it the wood only dents."""
LEDGE = 12.0
"""How deep a rail is let in to sit, where it has no depth yet. [mm] Common practice, no source."""


@attrs.frozen(kw_only=True)
class ButtWay:
    """One way at one end of the rail: what it takes, and what it holds down and pulled off its leg. [N]

    None where no published value is known.
    """

    name: str
    takes: str
    down: float | None
    off: float | None
    note: str


@attrs.frozen(kw_only=True, repr=False)
class ButtWays:
    """The ways to hold one butted rail at one of its ends."""

    layout: Layout
    rail: Part
    ways: tuple[ButtWay, ...]

    def table(self) -> Table:
        """One line for each."""
        inches = self.layout.frame.tape.unit == "in"
        force, factor = ("lb", POUND_FORCE) if inches else ("N", 1.0)
        told = [["–" if v is None else f"{v / factor:.0f}" for v in (one.down, one.off)] for one in self.ways]
        rows = tuple((one.name, one.takes, *loads, one.note) for one, loads in zip(self.ways, told, strict=True))
        columns = ("Way", "Takes at each end", f"Down ({force})", f"Off ({force})", "Mind")
        title = f"Ways to hold {self.rail.identity}: {self.layout.frame.name}"
        return Table(title, columns, rows, (CONDITIONS,), "llrrl")

    def __repr__(self) -> str:
        return f"<ButtWays of {self.rail.identity}: {', '.join(one.name for one in self.ways)}>"


@of_a_layout
def butt_ways(layout: Layout, rail: str, *, wood: str | Species | None = None) -> ButtWays:
    """Ways to hold a rail or bearer that ends against its hosts.

    Parameters
    ----------
    layout : Layout
    rail : str
        Its name.
    wood : str or Species, optional
        The wood of stock that does not say its own.

    Raises
    ------
    AddressError
        If there is no such part.
    FastenerError
        If it does not end against others.
    LumberError
        If its stock does not say its species and none is given, or the tables have none of that name.
    """
    part = layout.part(rail)
    joint = next((j for j in layout.joints_of(part.piece) if j.guest == part.identity and j.how.between), None)
    if joint is None:
        raise FastenerError(f"{typed(rail)} does not end against another part, so there is no butt to hold.")
    host = layout.part(f"{part.piece}/{joint.host}")
    otherwise = species(wood) if isinstance(wood, str) else wood
    own, other = wood_of(part.slot, otherwise), wood_of(host.slot, otherwise)
    tape = layout.frame.tape
    size = usual(part.thickness, tape.unit)[0]
    block = 2 * part.thickness
    across = _across(size, block, own, other)
    wide = float(host.blank.size()[part.slot.axes[0]])
    sits = LEDGE * part.thickness * own.dry.bearing * PSI / BEARING_SHARE
    d = size.diameter
    ways = (
        ButtWay(
            name="screws into the end grain",
            takes=f"2 {size.name}s through the {host.role}",
            down=_in_end(part, size, own, other),
            off=0.0,
            note=f"counted only where the rail is {tape.say(6 * d)} thick or more; draws out as wood dries",
        ),
        ButtWay(
            name="corner block",
            takes=f"a block {tape.say(block)} square, {tape.say(part.size[1])} long; 2 {size.name}s from the rail into "
            f"it, 2 from it into the {host.role}",
            down=2 * across,
            off=2 * _out(size, min(block, 10 * d), own),
            note="screws across the grain at both; takes racking as well",
        ),
        ButtWay(
            name="cleat under it",
            takes=f"a cleat {tape.say(part.thickness)} thick on the {host.role}, 2 {size.name}s",
            down=2 * _across(size, part.thickness, own, other),
            off=None,
            note="the rail sits on it; one more screw keeps it home",
        ),
        ButtWay(
            name="dowels",
            takes=f"2 dowels of a third of {tape.say(part.thickness)}, glued",
            down=None,
            off=None,
            note="no published value for so thin wood; needs outdoor glue and a jig, holds little once wet",
        ),
        ButtWay(
            name="half-lap",
            takes=f"{tape.say(min(part.thickness, host.size[2]) / 2)} out of both",
            down=min(part.thickness / 2, host.size[2]) * wide * own.dry.bearing * PSI / BEARING_SHARE,
            off=None,
            note="wood sits on wood: Rail(…, joint=HalfLap()); a screw keeps it home",
        ),
        ButtWay(
            name="let in",
            takes=f"a notch {tape.say(LEDGE)} deep",
            down=sits,
            off=None,
            note="wood sits on wood; the leg keeps less, and the corner with a front rail must have room",
        ),
    )
    return ButtWays(layout=layout, rail=part, ways=ways)


def _across(size: Fastener, thick: float, side: Species, main: Species) -> float:
    """One screw across the grain of both, deep enough. [N]"""
    d = size.diameter
    constants = [lateral_constant(w.dry.gravity, hardwood=w.hardwood, kind="screw") for w in (side, main)]
    limit = min(float(lateral(constant, d, kind="screw")) for constant in constants) / LATERAL_SHARE
    modes = yield_modes(d, thick, side.dry.gravity, main.dry.gravity, steel_of(d))
    return min(limit, float(modes.min()) / yield_share(d))


def _in_end(part: Part, size: Fastener, own: Species, other: Species) -> float:
    """Two screws into the end of the rail, where its thickness keeps three diameters on both sides. [N]"""
    if part.thickness < 6 * size.diameter:
        return 0.0
    return 2 * _across(size, part.thickness, other, own) * IN_END


def _out(size: Fastener, thread: float, wood: Species) -> float:
    return float(screw_withdrawal(wood.dry.gravity, size.diameter, thread)) / WITHDRAWAL_SHARE
