"""Species: how much a wood shrinks, what it weighs and what it bears, as the Wood Handbook prints it.

A dozen woods that stand outdoors or make benches. The figures are averages of clear, straight-grained wood: no design
values. Movement and weight (`wood/`) and strength ask here; every group of figures says which table it stands in.

>>> species("western red cedar").shrinkage.tangential, species("White oak").dry.rupture
(5.0, 15200)
"""

from __future__ import annotations

import difflib
from typing import Literal

import attrs

from ..errors import LumberError, typed
from ..sources import Source

PSI = 0.006894757293168361
"""One pound-force per square inch. [N/mm²]"""

BOOK = "Wood Handbook FPL-GTR-282 (2021)"
SHRINKAGE = Source(BOOK, "Table 4-3", standing="transcribed")
SHRINKAGE_MEMORY = Source(BOOK, "Table 4-3", standing="from memory")
COEFFICIENTS = Source("Wood Handbook FPL-GTR-190 (2010)", "Table 13-5")
COEFFICIENTS_MEMORY = Source("Wood Handbook FPL-GTR-190 (2010)", "Table 13-5", standing="from memory")
STRENGTH = Source(BOOK, "Table 5-3b", standing="transcribed")
START_OF_SHRINKAGE = Source(BOOK, "Table 13-5, footnote", standing="from memory")

Direction = Literal["radial", "tangential"]


@attrs.frozen(kw_only=True)
class Shrinkage:
    """Shrinkage from green to oven-dry, in % of the green size; start is where it begins. [% moisture content]

    start is that of START_OF_SHRINKAGE.
    """

    radial: float
    tangential: float
    volumetric: float
    start: float = 30.0
    source: Source = SHRINKAGE


@attrs.frozen(kw_only=True)
class Coefficients:
    """Change of size for each 1 % of moisture content, as a part of the size, between 6 and 14 %.

    wood is what the table calls the row, where that is a commercial group.
    """

    radial: float
    tangential: float
    wood: str = ""
    source: Source = COEFFICIENTS


@attrs.frozen(kw_only=True)
class Dry:
    """Clear wood at 12 % moisture content: specific gravity, strengths in psi and stiffness in 10⁶ psi, as printed.

    rupture is the modulus of rupture in bending; elasticity is measured on a centre-loaded beam 14 times as long as it
    is deep, 10 % below the true modulus; crushing and bearing are compression along and across the grain.
    """

    gravity: float
    rupture: int
    elasticity: float
    crushing: int
    bearing: int
    shear: int
    source: Source = STRENGTH

    def megapascals(self) -> dict[str, float]:
        """The strengths and the stiffness in N/mm²."""
        printed = {
            "rupture": self.rupture,
            "elasticity": self.elasticity * 1e6,
            "crushing": self.crushing,
            "bearing": self.bearing,
            "shear": self.shear,
        }
        return {name: psi * PSI for name, psi in printed.items()}


@attrs.frozen(kw_only=True)
class Green:
    """Clear green wood: specific gravity (on green volume), modulus of rupture in psi, elasticity in 10⁶ psi."""

    gravity: float
    rupture: int
    elasticity: float
    source: Source = STRENGTH


@attrs.frozen(kw_only=True)
class Species:
    """One wood and its figures; also holds the other names it is asked for by."""

    name: str
    hardwood: bool
    shrinkage: Shrinkage
    coefficients: Coefficients
    dry: Dry
    green: Green
    also: tuple[str, ...] = ()

    def coefficient(self, direction: Direction) -> float:
        """Change of size for each 1 % of moisture content, as a part of the size."""
        return self.coefficients.radial if direction == "radial" else self.coefficients.tangential

    def __repr__(self) -> str:
        return f"<Species {self.name}>"


def _remembered(radial: float, tangential: float, wood: str = "") -> Coefficients:
    return Coefficients(radial=radial, tangential=tangential, wood=wood, source=COEFFICIENTS_MEMORY)


def _dry(gravity: float, rupture: int, elasticity: float, crushing: int, bearing: int, shear: int) -> Dry:
    return Dry(gravity=gravity, rupture=rupture, elasticity=elasticity, crushing=crushing, bearing=bearing, shear=shear)


def _green(gravity: float, rupture: int, elasticity: float) -> Green:
    return Green(gravity=gravity, rupture=rupture, elasticity=elasticity)


SPECIES: tuple[Species, ...] = (
    Species(
        name="western redcedar",
        also=("western red cedar", "redcedar"),
        hardwood=False,
        shrinkage=Shrinkage(radial=2.4, tangential=5.0, volumetric=6.8, start=22.0),
        coefficients=_remembered(0.00111, 0.00234),
        dry=_dry(0.32, 7500, 1.11, 4560, 460, 990),
        green=_green(0.31, 5200, 0.94),
    ),
    Species(
        name="northern white-cedar",
        also=("northern white cedar",),
        hardwood=False,
        shrinkage=Shrinkage(radial=2.2, tangential=4.9, volumetric=7.2, start=22.0),
        coefficients=_remembered(0.00101, 0.00229),
        dry=_dry(0.31, 6500, 0.80, 3960, 310, 850),
        green=_green(0.29, 4200, 0.64),
    ),
    Species(
        name="redwood, old-growth",
        also=("redwood",),
        hardwood=False,
        shrinkage=Shrinkage(radial=2.6, tangential=4.4, volumetric=6.8, start=22.0, source=SHRINKAGE_MEMORY),
        coefficients=_remembered(0.00120, 0.00205),
        dry=_dry(0.40, 10000, 1.34, 6150, 700, 940),
        green=_green(0.38, 7500, 1.18),
    ),
    Species(
        name="redwood, young-growth",
        also=("second-growth redwood",),
        hardwood=False,
        shrinkage=Shrinkage(radial=2.2, tangential=4.9, volumetric=7.0, start=22.0, source=SHRINKAGE_MEMORY),
        coefficients=_remembered(0.00101, 0.00229),
        dry=_dry(0.35, 7900, 1.10, 5220, 520, 1110),
        green=_green(0.34, 5900, 0.96),
    ),
    Species(
        name="Douglas-fir, coast",
        also=("Douglas-fir", "Douglas fir"),
        hardwood=False,
        shrinkage=Shrinkage(radial=4.8, tangential=7.6, volumetric=12.4),
        coefficients=_remembered(0.00165, 0.00267),
        dry=_dry(0.48, 12400, 1.95, 7230, 800, 1130),
        green=_green(0.45, 7700, 1.56),
    ),
    Species(
        name="western larch",
        also=("larch",),
        hardwood=False,
        shrinkage=Shrinkage(radial=4.5, tangential=9.1, volumetric=14.0),
        coefficients=_remembered(0.00155, 0.00323),
        dry=_dry(0.52, 13000, 1.87, 7620, 930, 1360),
        green=_green(0.48, 7700, 1.46),
    ),
    Species(
        name="loblolly pine",
        also=("southern pine",),
        hardwood=False,
        shrinkage=Shrinkage(radial=4.8, tangential=7.4, volumetric=12.3),
        coefficients=_remembered(0.00165, 0.00259),
        dry=_dry(0.51, 12800, 1.79, 7130, 790, 1390),
        green=_green(0.47, 7300, 1.40),
    ),
    Species(
        name="eastern white pine",
        also=("white pine",),
        hardwood=False,
        shrinkage=Shrinkage(radial=2.1, tangential=6.1, volumetric=8.2, source=SHRINKAGE_MEMORY),
        coefficients=_remembered(0.00071, 0.00212),
        dry=_dry(0.35, 8600, 1.24, 4800, 440, 900),
        green=_green(0.34, 4900, 0.99),
    ),
    Species(
        name="sugar pine",
        hardwood=False,
        shrinkage=Shrinkage(radial=2.9, tangential=5.6, volumetric=7.9, source=SHRINKAGE_MEMORY),
        coefficients=_remembered(0.00099, 0.00194),
        dry=_dry(0.36, 8200, 1.19, 4460, 500, 1130),
        green=_green(0.34, 4900, 1.03),
    ),
    Species(
        name="white oak",
        hardwood=True,
        shrinkage=Shrinkage(radial=5.6, tangential=10.5, volumetric=16.3),
        coefficients=Coefficients(radial=0.00180, tangential=0.00365, wood="white oak, commercial"),
        dry=_dry(0.68, 15200, 1.78, 7440, 1070, 2000),
        green=_green(0.60, 8300, 1.25),
    ),
    Species(
        name="northern red oak",
        also=("red oak",),
        hardwood=True,
        shrinkage=Shrinkage(radial=4.0, tangential=8.6, volumetric=13.7),
        coefficients=Coefficients(radial=0.00158, tangential=0.00369, wood="red oak, commercial"),
        dry=_dry(0.63, 14300, 1.82, 6760, 1010, 1780),
        green=_green(0.56, 8300, 1.35),
    ),
    Species(
        name="black locust",
        also=("locust", "robinia"),
        hardwood=True,
        shrinkage=Shrinkage(radial=4.6, tangential=7.2, volumetric=10.2, source=SHRINKAGE_MEMORY),
        coefficients=Coefficients(radial=0.00158, tangential=0.00252),
        dry=_dry(0.69, 19400, 2.05, 10180, 1830, 2480),
        green=_green(0.66, 13800, 1.85),
    ),
    Species(
        name="sugar maple",
        also=("hard maple",),
        hardwood=True,
        shrinkage=Shrinkage(radial=4.8, tangential=9.9, volumetric=14.7),
        coefficients=Coefficients(radial=0.00165, tangential=0.00353),
        dry=_dry(0.63, 15800, 1.83, 7830, 1470, 2330),
        green=_green(0.56, 9400, 1.55),
    ),
)


def species(name: str) -> Species:
    """A wood by one of its names, whatever their case.

    Raises
    ------
    LumberError
        If the tables have none of that name; the message names the nearest.
    """
    names = {other.casefold(): one for one in SPECIES for other in (one.name, *one.also)}
    key = " ".join(name.split()).casefold() if isinstance(name, str) else ""
    if key in names:
        return names[key]
    near = difflib.get_close_matches(key, names, n=1, cutoff=0.6)
    hint = f" Did you mean {names[near[0]].name!r}?" if near else ""
    known = "; ".join(one.name for one in SPECIES)
    raise LumberError(f"{typed(name)} is no species of the tables.{hint} There is {known}.")
