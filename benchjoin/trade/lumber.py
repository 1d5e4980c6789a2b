"""Lumber as it is sold: what a nominal size measures, dressed dry or green, and what rough and planed stock measures.

A 2x4 measures 1 1/2 × 3 1/2 in when it was dressed dry, a little more when it was dressed green; a board of four
quarters is an inch thick as it leaves the saw. Frame.stock asks here; every row says where its sizes are printed.

>>> [round(size / 25.4, 6) for size in dressed("2x4")[:2]], [round(size / 25.4, 6) for size in dressed("2x8")[:2]]
([1.5, 3.5], [1.5, 7.25])
>>> [round(size / 25.4, 6) for size in dressed("2x6", green=True)[:2]]
[1.5625, 5.625]
"""

from __future__ import annotations

import re
from collections.abc import Iterable
from fractions import Fraction
from typing import Literal, NamedTuple

import attrs

from ..errors import LumberError, typed
from ..sources import COMMON_PRACTICE, Source, weakest

INCH = Fraction("25.4")

STANDARD = "PS 20, American Softwood Lumber Standard"
PS_20 = Source(STANDARD, "Table 3, as Tenn. rule 0080-07-07-.06 prints it", standing="transcribed")
PS_20_BOARDS = Source(STANDARD, "Table 3, boards", standing="secondary")
PS_20_MEMORY = Source(STANDARD, "Table 3", standing="from memory")
PS_20_TIMBERS = Source(STANDARD, "timbers, dressed green: at most 1/2 in under nominal", standing="secondary")
PS_20_ROUGH = Source(STANDARD, "minimum rough dry sizes, as Tenn. rule 0080-07-07-.06", standing="transcribed")
NHLA = Source("NHLA grading rules", "standard rough thickness")
S2S = Source("NHLA grading rules", "surfaced on two sides, a thickness for grading", standing="secondary")
NHLA_MEMORY = Source("NHLA grading rules", "standard rough thickness", standing="from memory")
EN_336 = Source("EN 336:2003", "permitted deviations")
CLS = Source("EN 1313-1", "national annex, CLS", standing="from memory")


class Section(NamedTuple):
    """Thickness and width of a section, and where they are printed. [mm]"""

    thickness: float
    width: float
    source: Source


@attrs.frozen(kw_only=True)
class Step:
    """One nominal thickness or width of softwood: its dressed size dry and green. [in]

    board, where the nominal size is the thickness of a board; timber, where it is that of a timber.
    """

    nominal: str
    dry: Fraction
    green: Fraction
    source: Source
    green_source: Source
    use: Literal["board", "thickness and width", "width", "timber"]


def _inches(text: str) -> Fraction:
    """'1 9/16' as a number."""
    return sum((Fraction(word) for word in text.split()), Fraction(0))


def _step(nominal: str, dry: str, green: str, use: str, source: Source, green_source: Source | None = None) -> Step:
    return Step(
        nominal=nominal,
        dry=_inches(dry),
        green=_inches(green),
        use=use,  # type: ignore[arg-type]
        source=source,
        green_source=green_source or source,
    )


SOFTWOOD: tuple[Step, ...] = (
    _step("1", "3/4", "25/32", "board", PS_20_BOARDS, PS_20_MEMORY),
    _step("5/4", "1", "1 1/32", "board", PS_20_BOARDS, PS_20_MEMORY),
    _step("6/4", "1 1/4", "1 9/32", "board", PS_20_BOARDS, PS_20_MEMORY),
    _step("2", "1 1/2", "1 9/16", "thickness and width", PS_20),
    _step("2-1/2", "2", "2 1/16", "thickness and width", PS_20),
    _step("3", "2 1/2", "2 9/16", "thickness and width", PS_20),
    _step("4", "3 1/2", "3 9/16", "thickness and width", PS_20),
    _step("5", "4 1/2", "4 5/8", "width", PS_20),
    _step("6", "5 1/2", "5 5/8", "width", PS_20),
    _step("8", "7 1/4", "7 1/2", "width", PS_20),
    _step("10", "9 1/4", "9 1/2", "width", PS_20),
    _step("12", "11 1/4", "11 1/2", "width", PS_20),
    _step("14", "13 1/4", "13 1/2", "width", PS_20),
    _step("16", "15 1/4", "15 1/2", "width", PS_20),
    _step("5", "4 1/2", "4 1/2", "timber", PS_20_TIMBERS),
    _step("6", "5 1/2", "5 1/2", "timber", PS_20_TIMBERS),
)
"""Boards, dimension and small timbers. Timbers are dressed green, so that one size is both; those
over a nominal 6 are left out: two rules for them are in print. Finish
boards of five quarters are another product, 1 5/32 in thick (PS 20 Table 1, from memory)."""

ROUGH_SOFTWOOD: dict[str, Fraction] = {
    "2": Fraction(13, 8),
    "4": Fraction(29, 8),
    "6": Fraction(45, 8),
    "8": Fraction(59, 8),
}
"""Least rough dry size by nominal size, PS_20_ROUGH. [in]"""


@attrs.frozen(kw_only=True)
class Quarters:
    """A hardwood thickness by its quarters of an inch: rough, and surfaced on two sides where a mill offers it. [in]"""

    name: str
    rough: Fraction
    surfaced: Fraction | None
    source: Source


HARDWOOD: tuple[Quarters, ...] = (
    Quarters(name="4/4", rough=Fraction(1), surfaced=Fraction(13, 16), source=NHLA),
    Quarters(name="5/4", rough=Fraction(5, 4), surfaced=Fraction(17, 16), source=NHLA),
    Quarters(name="6/4", rough=Fraction(3, 2), surfaced=Fraction(21, 16), source=NHLA),
    Quarters(name="8/4", rough=Fraction(2), surfaced=Fraction(7, 4), source=NHLA),
    Quarters(name="10/4", rough=Fraction(5, 2), surfaced=None, source=NHLA_MEMORY),
    Quarters(name="12/4", rough=Fraction(3), surfaced=None, source=NHLA_MEMORY),
    Quarters(name="16/4", rough=Fraction(4), surfaced=None, source=NHLA_MEMORY),
)
"""Surfaced thicknesses are those of S2S; kiln-dried rough stock may be 1/16 in under."""

PLANED: tuple[tuple[float, tuple[float, ...], Source], ...] = (
    (38.0, (63.0, 89.0, 140.0), CLS),
    (18.0, (45.0, 70.0, 95.0, 120.0, 145.0), COMMON_PRACTICE),
    (21.0, (45.0, 70.0, 95.0, 120.0, 145.0), COMMON_PRACTICE),
    (28.0, (45.0, 70.0, 95.0, 120.0, 145.0), COMMON_PRACTICE),
    (34.0, (45.0, 70.0, 95.0, 120.0, 145.0), COMMON_PRACTICE),
    (45.0, (45.0, 70.0, 95.0, 120.0, 145.0, 170.0, 195.0, 220.0), COMMON_PRACTICE),
    (70.0, (70.0, 95.0, 120.0, 145.0, 170.0, 195.0), COMMON_PRACTICE),
)
"""Planed sections usual in Europe: thickness, widths, source. [mm]"""

_CROSSED = re.compile(r"\s*([\d/.-]+?)\s*[x×]\s*([\d/.-]+?)\s*", re.IGNORECASE)


def dressed(nominal: str, *, green: bool = False) -> Section:
    """Thickness and width of dressed softwood by its nominal size, "2x4" or "5/4x6". [mm]

    Raises
    ------
    LumberError
        If the standard has no such size, or two rules for it are in print.
    """
    thick, wide = _parts(nominal)
    if _is_timber(thick):
        if not all(size in ("5", "6") for size in (thick, wide)):
            raise LumberError(
                f"{typed(nominal)}: two rules are in print for timbers over a nominal 6. Measure one, and write "
                "Stock(name, thickness=…, width=…)."
            )
        both = [_found(_of_use("timber"), size, nominal) for size in (thick, wide)]
    else:
        both = [
            _found(_of_use("board", "thickness and width"), thick, nominal),
            _found(_of_use("thickness and width", "width"), wide, nominal),
        ]
    thickness, width = (float((step.green if green else step.dry) * INCH) for step in both)
    sources = [step.green_source if green else step.source for step in both]
    return Section(thickness, width, weakest(sources))


def rough(nominal: str) -> Section:
    """Least thickness and width of rough dry softwood by its nominal size, "2x4". [mm]

    Raises
    ------
    LumberError
        If there is no such size.
    """
    sizes = []
    for size in _parts(nominal):
        if size not in ROUGH_SOFTWOOD:
            raise _no_size(nominal, "rough softwood", ROUGH_SOFTWOOD)
        sizes.append(float(ROUGH_SOFTWOOD[size] * INCH))
    return Section(sizes[0], sizes[1], PS_20_ROUGH)


def quarters(name: str) -> Quarters:
    """A hardwood thickness by its quarters, "4/4".

    Raises
    ------
    LumberError
        If it is none.
    """
    for row in HARDWOOD:
        if row.name == str(name).replace(" ", ""):
            return row
    raise _no_size(name, "hardwood thickness in quarters", [row.name for row in HARDWOOD])


def planed(name: str) -> Section:
    """Thickness and width of a planed section usual in Europe, "45x95", or its width first, "95x45". [mm]

    Raises
    ------
    LumberError
        If it is not one of them.
    """
    wanted = tuple(_number(size, name) for size in _parts(name))
    for thickness, widths, source in PLANED:
        for width in widths:
            if wanted in ((thickness, width), (width, thickness)):
                return Section(thickness, width, source)
    known = [f"{thick:g}x{width:g}" for thick, widths, _ in PLANED for width in widths]
    raise _no_size(name, "usual planed section", known)


def deviation(size: float, tolerance_class: Literal["T1", "T2"] = "T1") -> tuple[float, float]:
    """How far a structural timber may lie under and over its target size at 20 % moisture content. [mm]

    Notes
    -----
    EN 336:2003: to 100 mm T1 −1 +3, T2 −1 +1; over 100 mm T1 −2 +4, T2 −1.5 +1.5.
    """
    small = size <= 100.0
    if tolerance_class == "T1":
        return (1.0, 3.0) if small else (2.0, 4.0)
    return (1.0, 1.0) if small else (1.5, 1.5)


def _parts(name: str) -> tuple[str, str]:
    match = _CROSSED.fullmatch(name) if isinstance(name, str) else None
    if match is None:
        raise LumberError(f"{typed(name)} is not a section by its name. Write for example '2x4', '5/4x6' or '45x95'.")
    return match[1], match[2]


def _number(text: str, name: str) -> float:
    try:
        return float(text)
    except ValueError:
        raise _no_size(name, "usual planed section", ()) from None


def _is_timber(thickness: str) -> bool:
    return thickness.isdigit() and int(thickness) >= 5


def _of_use(*uses: str) -> dict[str, Step]:
    return {step.nominal: step for step in SOFTWOOD if step.use in uses}


def _found(steps: dict[str, Step], size: str, nominal: str) -> Step:
    if size not in steps:
        raise _no_size(nominal, "dressed softwood", steps)
    return steps[size]


def _no_size(name: object, what: str, known: Iterable[str]) -> LumberError:
    listed = ", ".join(known)
    there = f" There is {listed}." if listed else ""
    return LumberError(
        f"{typed(name)}: no such {what} is in the tables.{there} For any other size write "
        "Stock(name, thickness=…, width=…)."
    )
