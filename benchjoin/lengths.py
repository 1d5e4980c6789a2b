r"""Lengths at the door: tape strings and numbers in, millimetres out.

Inside benchjoin every length is a float in millimetres. A maker types a number in mm or what a tape says:
``"57 in"``, ``"2 7/16 in"``, ``"2-7/16\""``, ``"4' 9 1/2\\""``, ``"2⅞ in"``, ``"1450 mm"``, ``"1.45 m"``. A string
without a unit is refused, and so is anything that only starts well. `readings` is the way back to paper.
"""

from __future__ import annotations

import math
import re
import unicodedata
from collections.abc import Iterable
from fractions import Fraction
from numbers import Real
from typing import Any

from .errors import LengthError, typed

INCH = 25.4
FOOT = 304.8
TOUCH = 1e-6
"""Two things touch when they are no further apart than this. [mm]"""
LONGEST = 100_000.0
"""Nothing on a bench is longer than this; a larger number is a slip of the unit. [mm]"""

LONGEST_TEXT = 80
"""No length takes more signs than this to write."""

Length = float | str
"""What a maker may type where a length is asked for."""

_UNITS = {
    **dict.fromkeys(("in", "inch", "inches", '"'), INCH),
    **dict.fromkeys(("ft", "foot", "feet", "'"), FOOT),
    "mm": 1.0,
    "cm": 10.0,
    "m": 1000.0,
}
_NUMBER = (
    r"(?:(?P<whole>\d+)(?:\s*-\s*|\s+)(?P<top>\d+)/(?P<bottom>\d+)"
    r"|(?P<only>\d+)/(?P<under>\d+)|(?P<point>\d+(?:\.\d+)?|\.\d+))"
)
_TERM = re.compile(_NUMBER + r"\s*(?P<unit>(?a:inches|inch|in|\"|foot|feet|ft|'|mm|cm|m))(?![a-z])\.?", re.IGNORECASE)
_BETWEEN = re.compile(r"\s*(?:-\s*)?")
_QUOTES = str.maketrans({"″": '"', "”": '"', "“": '"', "′": "'", "’": "'", "‘": "'", "⁄": "/", "\u00a0": " "})
_EXAMPLES = 'Write a number in mm, or for example "57 in", "2 7/16 in", "4\' 9 1/2\\"", "1450 mm" or "1.45 m".'


class Inches(float):
    """A length in mm that was typed in inches: a number like any other, but a design can tell how it was typed."""

    __slots__ = ()


def mm(value: Any, *, zero: bool = False, what: str = "a length") -> float:
    """Millimetres from a number in mm or from a tape string.

    Parameters
    ----------
    value : number or str
        A real number is taken as mm; a string must carry its unit.
    zero : bool
        Whether zero is allowed.
    what : str
        What the value is, for the sentence of the error.

    Raises
    ------
    LengthError
        If it is not a length: no unit, text left over, NaN, infinite, negative, zero (unless allowed), over 100 m.

    Examples
    --------
    >>> mm("2 7/16 in"), mm('2-7/16"'), mm("1.45 m"), mm(60)
    (61.9125, 61.9125, 1450.0, 60.0)
    >>> mm("57")
    Traceback (most recent call last):
    ...
    benchjoin.errors.LengthError: '57' given for a length says no unit. Write "57 in" or "57 mm".
    """
    if isinstance(value, str):
        number = _parse(value, what)
    elif isinstance(value, Real) and not _is_truth(value):
        number = value if isinstance(value, Inches) else _float(value, value, what)
    else:
        raise LengthError(f"{typed(value)} given for {what} is not a length. {_EXAMPLES}", value=value)
    return _checked(number, value, zero, what)


def signed_mm(value: Any, *, what: str = "a length") -> float:
    """Like `mm`, but it may be zero or, with a leading minus, negative: an overhang that stops short.

    >>> signed_mm("-1 in"), signed_mm(12)
    (-25.4, 12.0)
    """
    if isinstance(value, str) and value.strip().startswith(("-", "\N{MINUS SIGN}")):
        return 0.0 - mm(value.strip()[1:], zero=True, what=what)
    if isinstance(value, Real) and not _is_truth(value) and value < 0:
        return -mm(-value, what=what)
    return mm(value, zero=True, what=what)


def _is_truth(value: object) -> bool:
    return type(value).__name__ in ("bool", "bool_")


def _float(number: Any, value: Any, what: str) -> float:
    """A number as a float; one that no float can hold is far too long for a bench."""
    try:
        return float(number)
    except OverflowError:
        raise _too_long(value, what) from None


def _too_long(value: Any, what: str) -> LengthError:
    return LengthError(
        f"{typed(value)} given for {what} is longer than {LONGEST / 1000:g} m; a plain number is read as mm. "
        f"{_EXAMPLES}",
        value=value,
    )


def _checked(number: float, value: Any, zero: bool, what: str) -> float:
    if not math.isfinite(number):
        raise LengthError(f"{typed(value)} given for {what} is not a finite number. {_EXAMPLES}", value=value)
    if number < 0 or (number == 0 and not zero):
        least = "zero or more" if zero else "more than zero"
        raise LengthError(f"{typed(value)} given for {what} must be {least}. {_EXAMPLES}", value=value)
    if number > LONGEST:
        raise _too_long(value, what)
    steady_zero = number + 0.0  # minus zero becomes zero
    return Inches(steady_zero) if isinstance(number, Inches) else steady_zero


def _parse(text: str, what: str) -> float:
    plain = _spelled_out(text).translate(_QUOTES).strip()
    body = plain.lstrip("-\N{MINUS SIGN}").lstrip()
    if len(text) > LONGEST_TEXT:
        raise LengthError(f"{typed(text)} given for {what} is not one length. {_EXAMPLES}", value=text)
    if not body:
        raise LengthError(f"{typed(text)} given for {what} is empty. {_EXAMPLES}", value=text)
    total, place = Fraction(0), 0
    units: list[float] = []
    while place < len(body):
        term = _TERM.match(body, place)
        if term is None:
            raise _refusal(text, body, place, what)
        units.append(_UNITS[term["unit"].lower()])
        total += _fraction(term, text, what) * Fraction(str(units[-1]))
        place = term.end()
        gap = _BETWEEN.match(body, place)
        if gap and gap.end() < len(body):
            place = gap.end()
    if len(units) != 1 and units != [FOOT, INCH]:
        raise LengthError(f"{typed(text)} given for {what} is not one length. {_EXAMPLES}", value=text)
    number = _float(total, text, what) * (-1 if body != plain else 1)
    return Inches(number) if units[0] in (INCH, FOOT) else number


def _fraction(term: re.Match[str], text: str, what: str) -> Fraction:
    if term["point"] is not None:
        return Fraction(term["point"])
    top, bottom = (term["top"], term["bottom"]) if term["whole"] else (term["only"], term["under"])
    if int(bottom) == 0:
        raise LengthError(f"{typed(text)} given for {what} divides by zero. {_EXAMPLES}", value=text)
    return Fraction(int(term["whole"] or 0)) + Fraction(int(top), int(bottom))


def _spelled_out(text: str) -> str:
    """Vulgar fractions as plain ones: 2⅞ becomes 2 7/8."""
    return "".join(
        " " + unicodedata.normalize("NFKC", c).replace("\N{FRACTION SLASH}", "/")
        if unicodedata.decomposition(c).startswith("<fraction>")
        else c
        for c in text
    )


def _refusal(text: str, body: str, place: int, what: str) -> LengthError:
    """Say what was wrong with text that does not read as a length."""
    if re.fullmatch(_NUMBER, body):
        said = f'says no unit. Write "{text.strip()} in" or "{text.strip()} mm".'
    elif re.match(r"\d+,\d", body):
        said = f"has a comma in it. Write a decimal point. {_EXAMPLES}"
    elif place:
        said = f"starts well, but {body[place:]!r} is left over. {_EXAMPLES}"
    else:
        said = f"does not read as a length. {_EXAMPLES}"
    return LengthError(f"{typed(text)} given for {what} {said}", value=text)


def distinct(values: Iterable[float]) -> list[float]:
    """Rising values, each once: those that touch the one before are taken as that one. [mm]

    >>> distinct([70.0, 7.0, 70.0 + 1e-9])
    [7.0, 70.0]
    """
    kept: list[float] = []
    for value in sorted(values):
        if not kept or value - kept[-1] > TOUCH:
            kept.append(value)
    return kept


def steady(*sizes: float) -> tuple[float, ...]:
    """Sizes as a key for what is alike: to a nanometre, and zeros without a sign. [mm]

    >>> steady(70.0000000004, -0.0)
    (70.0, 0.0)
    """
    return tuple(round(size, 6) + 0.0 for size in sizes)
