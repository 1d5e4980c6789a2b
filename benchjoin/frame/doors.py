"""The door of a description: converters that keep a fault in place of a value, so that all faults are told at once.

A converter that met a bad value leaves a Fault in the field; `refuse` gathers the faults of all fields, and when
there are none asks for the faults of the whole, and raises one DescriptionError with the lot.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable
from contextlib import suppress
from numbers import Integral, Real
from typing import Any, Literal, Protocol, TypeVar, cast, overload

import attrs

from ..errors import BenchjoinError, DescriptionError, typed
from ..lengths import Length, mm, signed_mm

Converter = Callable[[Any], Any]
Thing = TypeVar("Thing")
Given = TypeVar("Given", contravariant=True)
Kept = TypeVar("Kept", covariant=True)


class Door(Protocol[Given, Kept]):
    """A converter: what a maker may give, and what is kept of it."""

    def __call__(self, value: Given, /) -> Kept:
        """Convert a value."""


class Choice(Protocol):
    """A converter that lets a value through as it is."""

    def __call__(self, value: Thing, /) -> Thing:
        """Convert a value."""


@attrs.frozen
class Fault:
    """One thing wrong in a description: which field, and what about it."""

    field: str
    what: str


@attrs.frozen
class Faults:
    """Several faults that stand where one value should be."""

    of: tuple[Fault, ...]


@overload
def a_length(
    field: str, *, zero: bool = False, signed: bool = False, optional: Literal[False] = False
) -> Door[Length, float]: ...
@overload
def a_length(
    field: str, *, zero: bool = False, signed: bool = False, optional: Literal[True]
) -> Door[Length | None, float | None]: ...
def a_length(field: str, *, zero: bool = False, signed: bool = False, optional: bool = False) -> Any:
    """Converter for a length; a bad one becomes a fault of the field."""

    def convert(value: Any) -> Any:
        if optional and value is None:
            return None
        if signed:
            return signed_mm(value, what=field)
        return mm(value, zero=zero, what=field)

    return kept(field, convert, takes="float | str | None" if optional else "float | str")


def kept(field: str, convert: Callable[[Any], Any], *, takes: str = "") -> Any:
    """Wrap a converter: an error of ours becomes a fault that stays in the field.

    takes are the types that it takes, in words, which ``help`` shows; those that the converter says without.
    """

    def door(value: Any) -> Any:
        if isinstance(value, Faults):
            return value
        try:
            return convert(value)
        except DescriptionError as error:
            return Faults(tuple(attrs.evolve(f, field=f"{field}.{f.field}") for f in error.faults))
        except BenchjoinError as error:
            return Faults((Fault(field, str(error)),))

    said = takes or next(iter(getattr(convert, "__annotations__", {}).values()), "Any")
    door.__annotations__ = {"value": said, "return": "Any"}
    return door


@overload
def a_kind(kind: type[Thing], field: str, example: str, *, optional: Literal[False] = False) -> Door[Thing, Thing]: ...
@overload
def a_kind(
    kind: type[Thing], field: str, example: str, *, optional: Literal[True]
) -> Door[Thing | None, Thing | None]: ...
def a_kind(kind: type[Any], field: str, example: str, *, optional: bool = False) -> Any:
    """Converter that lets only instances of one class through; where it is optional, nothing too."""

    def convert(value: Any) -> Any:
        if not isinstance(value, kind) and not (optional and value is None):
            raise BenchjoinError(f"{field} is {typed(value)}, not a {kind.__name__}. Write for example {example}.")
        return value

    return kept(field, convert, takes=f"{kind.__name__} | None" if optional else kind.__name__)


def one_of(field: str, *choices: object) -> Choice:
    """Converter that lets only the choices through and lists them otherwise."""

    def convert(value: Any) -> Any:
        if not any(value is c or (isinstance(value, str) and value == c) for c in choices):
            listed = ", ".join(repr(c) for c in choices if c is not None)
            raise BenchjoinError(f"{field} is {typed(value)}. Choose one of {listed}.")
        return value

    return cast(Choice, kept(field, convert, takes=f"Literal[{', '.join(map(repr, choices))}]"))


@overload
def a_number(
    field: str,
    low: float,
    high: float,
    example: str,
    *,
    whole: Literal[False] = False,
    optional: Literal[False] = False,
) -> Door[float, float]: ...
@overload
def a_number(
    field: str, low: float, high: float, example: str, *, whole: Literal[True], optional: Literal[False] = False
) -> Door[int, int]: ...
@overload
def a_number(
    field: str, low: float, high: float, example: str, *, whole: Literal[True], optional: Literal[True]
) -> Door[int | None, int | None]: ...
@overload
def a_number(
    field: str, low: float, high: float, example: str, *, whole: Literal[False] = False, optional: Literal[True]
) -> Door[float | None, float | None]: ...
def a_number(field: str, low: float, high: float, example: str, *, whole: bool = False, optional: bool = False) -> Any:
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

    kind = "int" if whole else "float"
    return kept(field, convert, takes=f"{kind} | None" if optional else kind)


def _number(value: Any, whole: bool) -> float | None:
    if isinstance(value, bool):
        return None
    if isinstance(value, Integral):
        return int(value)
    with suppress(OverflowError):  # what no float can hold is out of any limits
        return float(value) if isinstance(value, Real) and not whole else None
    return None


@overload
def a_name(field: str, *, barred: str = "", optional: Literal[False] = False) -> Door[str, str]: ...
@overload
def a_name(field: str, *, barred: str = "", optional: Literal[True]) -> Door[str | None, str | None]: ...
def a_name(field: str, *, barred: str = "", optional: bool = False) -> Any:
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

    return kept(field, convert, takes="str | None" if optional else "str")


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
