"""Stock: a timber section as the maker has it on the bench, and the sizes it went through on its way there.

A section is rough, dressed or planed when it is bought, and milled when the maker has flattened and planed it; a milled
stock remembers the section it is milled from, so that the milling plan knows what comes off.

>>> Stock("larch 2x4, milled", thickness="1 5/16 in", width="3 1/4 in").thickness
33.3375
>>> leg = Stock.dressed("2x4", species="western larch").milled()
>>> leg.name, round(leg.thickness / 25.4, 6), leg.start.name
('western larch 2x4, milled', 1.375, 'western larch 2x4, dressed')
"""

from __future__ import annotations

from types import ModuleType
from typing import TYPE_CHECKING, Any

import attrs

from ..errors import BenchjoinError, DescriptionError, typed
from ..lengths import INCH, TOUCH, Inches
from ..trade.states import STATES, State
from .doors import Fault, Faults, a_length, a_name, kept, one_of, refuse

if TYPE_CHECKING:
    from ..trade.allowances import Milling


MOST_STEPS = 20
"""So often a stock is milled from another one."""


def _species(value: Any) -> str | None:
    if value is None:
        return None
    from ..trade.species import species  # most stock says none, and then nobody waits for the table

    return species(value).name


def _start(value: Any) -> Any:
    if value is None:
        return value
    if isinstance(value, Stock):
        first, steps = value, 1
        while first.start is not None:
            first, steps = first.start, steps + 1
        if steps > MOST_STEPS:
            raise BenchjoinError(
                f"start is a stock that is milled {steps} times over. {MOST_STEPS} times are the most."
            )
        return value
    raise BenchjoinError(f'start is {typed(value)}, not a Stock. Write for example Stock.dressed("2x4").')


@attrs.frozen
class Stock:
    """A section by thickness and width, with the length it comes in where that matters. [mm]

    species is a wood of the tables in trade.species, state how its faces are, start the section it is milled from;
    each is None where it is not said.
    """

    name: str = attrs.field(converter=a_name("name"))
    thickness: float = attrs.field(kw_only=True, converter=a_length("thickness"))
    width: float | None = attrs.field(kw_only=True, default=None, converter=a_length("width", optional=True))
    length: float | None = attrs.field(kw_only=True, default=None, converter=a_length("length", optional=True))
    species: str | None = attrs.field(kw_only=True, default=None, converter=kept("species", _species))
    state: State | None = attrs.field(kw_only=True, default=None, converter=one_of("state", *STATES, None))
    start: Stock | None = attrs.field(kw_only=True, default=None, converter=kept("start", _start))

    def __attrs_post_init__(self) -> None:
        refuse(self, f"Stock {_name(self.name)}", self._faults)

    def _faults(self) -> list[Fault]:
        if self.start is None:
            return []
        pairs = (("thickness", self.thickness, self.start.thickness), ("width", self.width, self.start.width))
        return [
            Fault(field, f'{size:g} mm is more than the {first:g} mm of "{self.start.name}", which it is milled from.')
            for field, size, first in pairs
            if size is not None and first is not None and size > first + TOUCH
        ]

    @classmethod
    def dressed(cls, nominal: str, *, green: bool = False, name: str | None = None, **more: Any) -> Stock:
        """Softwood as the mill dressed it, by its nominal size: "2x4", "5/4x6"; dry, or green.

        Also takes species and length.

        Raises
        ------
        DescriptionError
            If the standard has no such size.
        """
        found = _from_tables(nominal, lambda: _lumber().dressed(nominal, green=green))
        called = f"{nominal}, dressed{' green' if green else ''}"
        thickness, width = Inches(found[0]), Inches(found[1])
        return cls(_called(name, called, more), thickness=thickness, width=width, state="dressed", **more)

    @classmethod
    def rough(cls, nominal: str, *, width: Any = None, name: str | None = None, **more: Any) -> Stock:
        """Wood as it was sawn: hardwood by its quarters, "4/4", with its width; softwood by its nominal size, "2x4".

        Also takes species and length.

        Raises
        ------
        DescriptionError
            If the tables have no such size.
        """
        thickness, wide = _from_tables(nominal, lambda: _sawn(nominal))
        thickness, wide = Inches(thickness), None if wide is None else Inches(wide)
        width = wide if width is None else width
        called = _called(name, f"{nominal}, rough", more)
        return cls(called, thickness=thickness, width=width, state="rough", **more)

    @classmethod
    def planed(cls, section: str, *, name: str | None = None, **more: Any) -> Stock:
        """A planed section usual in Europe, thickness first: "45x95".

        Also takes species and length.

        Raises
        ------
        DescriptionError
            If it is not one of them.
        """
        found = _from_tables(section, lambda: _lumber().planed(section))
        called = _called(name, f"{section}, planed", more)
        return cls(called, thickness=found[0], width=found[1], state="planed", **more)

    def milled(
        self, *, thickness: Any = None, width: Any = None, name: str | None = None, practice: Milling | None = None
    ) -> Stock:
        """The same wood after milling: at the sizes given, or else at those to expect by the maker's habits.

        Without a practice those are INCH_MILLING, and METRIC_MILLING for a planed European size.

        Raises
        ------
        DescriptionError
            If a size is more than that of this stock.
        MillingError
            If milling would leave nothing.
        """
        from ..trade.allowances import INCH_MILLING, METRIC_MILLING  # who only lays out does not wait for them

        state = self.state or "rough"
        practice = practice or (METRIC_MILLING if state == "planed" else INCH_MILLING)
        if width is None and self.width is not None:
            width = _like(self.width, practice.after(self.width, state, edges=True))
        stem = self.name.rpartition(",")[0] if self.state else self.name
        return Stock(
            name or f"{stem or self.name}, milled",
            thickness=_like(self.thickness, practice.after(self.thickness, state)) if thickness is None else thickness,
            width=width,
            length=self.length,
            species=self.species,
            state="milled",
            start=self,
        )


def _like(before: float, after: float) -> float:
    """A size that follows from another: in inches, if that was typed in inches."""
    return Inches(after) if isinstance(before, Inches) else after


def _lumber() -> ModuleType:
    """The tables of lumber, which load when a size is first asked of them."""
    from ..trade import lumber

    return lumber


def _sawn(nominal: str) -> tuple[float, float | None]:
    if isinstance(nominal, str) and "x" not in nominal.casefold() and "×" not in nominal:
        return float(_lumber().quarters(nominal).rough * INCH), None
    found = _lumber().rough(nominal)
    return found.thickness, found.width


def _from_tables(nominal: object, find: Any) -> Any:
    """A row of the tables; a size that they have not is a fault of the description."""
    try:
        return find()
    except BenchjoinError as error:
        fault = Fault("nominal", str(error))
        raise DescriptionError(
            f"Stock {typed(nominal)} cannot be built as described:\n  nominal: {error}", faults=(fault,)
        ) from None


def _called(name: str | None, otherwise: str, more: dict[str, Any]) -> str:
    if name is not None:
        return name
    wood = more.get("species")
    return f"{wood} {otherwise}" if isinstance(wood, str) else otherwise


def _name(value: object) -> str:
    return "without a name" if isinstance(value, Faults | Fault) else f'"{value}"'


def titled(kind: str, value: object) -> str:
    """'Level "bench"', for the head of an error; a name that is itself at fault is left out."""
    return f"{kind} {_name(value)}"
