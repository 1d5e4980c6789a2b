"""The door of a description: converters that keep a fault in place of a value, so that all faults are told at once.

A converter that met a bad value leaves a Fault in the field; `refuse` gathers the faults of all fields, and when
there are none asks for the faults of the whole, and raises one DescriptionError with the lot.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable
from contextlib import suppress
from numbers import Integral, Real
from typing import Any, TypeVar

import attrs

from ..errors import BenchjoinError, DescriptionError, typed
from ..lengths import mm, signed_mm

Converter = Callable[[Any], Any]
Thing = TypeVar("Thing")


@attrs.frozen
class Fault:
    """One thing wrong in a description: which field, and what about it."""

    field: str
    what: str


@attrs.frozen
class Faults:
    """Several faults that stand where one value should be."""

    of: tuple[Fault, ...]


def a_length(field: str, *, zero: bool = False, signed: bool = False, optional: bool = False) -> Converter:
    """Converter for a length; a bad one becomes a fault of the field."""

    def convert(value: Any) -> Any:
        if optional and value is None:
            return None
        if signed:
            return signed_mm(value, what=field)
        return mm(value, zero=zero, what=field)

    return kept(field, convert)


def kept(field: str, convert: Converter) -> Converter:
    """Wrap a converter: an error of ours becomes a fault that stays in the field."""

    def door(value: Any) -> Any:
        if isinstance(value, Faults):
            return value
        try:
            return convert(value)
        except DescriptionError as error:
            return Faults(tuple(attrs.evolve(f, field=f"{field}.{f.field}") for f in error.faults))
        except BenchjoinError as error:
            return Faults((Fault(field, str(error)),))

    return door


def a_kind(kind: type, field: str, example: str, *, optional: bool = False) -> Converter:
    """Converter that lets only instances of one class through; where it is optional, nothing too."""

    def convert(value: Any) -> Any:
        if not isinstance(value, kind) and not (optional and value is None):
            raise BenchjoinError(f"{field} is {typed(value)}, not a {kind.__name__}. Write for example {example}.")
        return value

    return kept(field, convert)


def one_of(field: str, *choices: object) -> Converter:
    """Converter that lets only the choices through and lists them otherwise."""

    def convert(value: Any) -> Any:
        if not any(value is c or (isinstance(value, str) and value == c) for c in choices):
            listed = ", ".join(repr(c) for c in choices if c is not None)
            raise BenchjoinError(f"{field} is {typed(value)}. Choose one of {listed}.")
        return value

    return kept(field, convert)


def a_number(
    field: str, low: float, high: float, example: str, *, whole: bool = False, optional: bool = False
) -> Converter:
    """Converter for a plain number within limits (inclusive); whole asks for an integer."""

    def convert(value: Any) -> Any:
        if optional and value is None:
            return None
        number = _number(value, whole)
        if number is None or not low <= number <= high:
            raise BenchjoinError(
                f"{field} is {typed(value)}. Give a {'whole number' if whole else 'number'} from {low:g} to {high:g}, "
                f"for example {example}."
            )
        return number

    return kept(field, convert)


def _number(value: Any, whole: bool) -> float | None:
    if isinstance(value, bool):
        return None
    if isinstance(value, Integral):
        return int(value)
    with suppress(OverflowError):  # what no float can hold is out of any limits
        return float(value) if isinstance(value, Real) and not whole else None
    return None


def a_name(field: str, *, barred: str = "", optional: bool = False) -> Converter:
    """Converter for a name: words on one line, up to 80 characters, none of the barred signs."""

    def convert(value: Any) -> Any:
        if optional and value is None:
            return None
        if not isinstance(value, str) or not value.strip():
            raise BenchjoinError(f"{field} is {typed(value)}. Give it a name in words.")
        if len(value) > 80 or not value.isprintable():
            raise BenchjoinError(f"{field} is {typed(value)}. Keep it to one line of 80 printable characters.")
        found = [sign for sign in barred if sign in value]
        if found:
            raise BenchjoinError(f"{field} is {value!r}. It may not hold {found[0]!r}, which addresses use.")
        return value.strip()

    return kept(field, convert)


def refuse(thing: Any, title: str, checks: Callable[[], Iterable[Fault]] = tuple) -> None:
    """Raise one DescriptionError with every fault of a description, if it has any.

    checks gives the faults of the whole; it is asked only when every field holds a sound value.
    """
    values = [getattr(thing, field.name) for field in attrs.fields(type(thing))]
    faults = [fault for value in values if isinstance(value, Faults) for fault in value.of]
    faults = faults or list(checks())
    if faults:
        lines = "\n".join(f"  {fault.field}: {fault.what}" for fault in faults)
        raise DescriptionError(f"{title} cannot be built as described:\n{lines}", faults=tuple(faults))


def past_doors(thing: Thing, **changes: Any) -> Thing:
    """The same thing with other values in some fields, which are not asked who they are: they have passed before."""
    made = object.__new__(type(thing))
    for field in attrs.fields(type(thing)):  # type: ignore[arg-type]
        object.__setattr__(made, field.name, changes.get(field.name, getattr(thing, field.name)))
    return made
