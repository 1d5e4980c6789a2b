"""Axes: the values that each address goes through, let in by the door of their field, numbers apart from words.

Numbers vary inside a block of variants; anything else (another joint, no rail at all) makes a design of its own, and
blocks never mix two of those. A value that the field refuses is no error: its variants cannot be built, and say why.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

import attrs
import numpy as np
import numpy.typing as npt

from ..errors import BenchjoinError, typed
from ..frame.address import paths_to
from ..frame.doors import Faults, a_length
from ..frame.frame import Frame
from ..ranges import Range

NUMBER = -1
"""Kind of a value that is a number; others are numbered from 0."""
Path = tuple[Any, ...]


@attrs.frozen
class Words:
    """A value that is no number, or one that is refused, with the reason."""

    value: Any
    reason: str = ""


@attrs.frozen(eq=False)
class Axis:
    """One address: its path, its values as given, its numbers (NaN where there is none), and what is no number."""

    address: str
    path: Path
    given: Sequence[Any] | npt.NDArray[Any]
    numbers: npt.NDArray[np.float64]
    kinds: npt.NDArray[np.int64]
    words: tuple[Words, ...]


def axis(frame: Frame, address: str, given: Any) -> Axis:
    """The axis of an address.

    Raises
    ------
    AddressError
        If the address reaches nothing.
    BenchjoinError
        If there are no values.
    """
    path = paths_to(frame, [address])[address]
    if isinstance(given, Range):
        given = given.values(frame.tape.division)
    if isinstance(given, str) or not hasattr(given, "__len__") or not len(given):
        raise BenchjoinError(f'{address!r} goes through {typed(given)}. Give a list of values: ["48 in", "60 in"].')
    convert = _door(frame, path)
    if isinstance(given, np.ndarray) and given.ndim == 1 and given.dtype.kind in "iuf" and _sound(convert, given):
        return Axis(address, path, given, given.astype(float), np.full(len(given), NUMBER), ())
    values = [convert(value) for value in (given.tolist() if isinstance(given, np.ndarray) else given)]
    words: list[Words] = []
    kinds = np.array([_kind(value, words) for value in values])
    numbers = np.array([value if kind == NUMBER else np.nan for value, kind in zip(values, kinds, strict=True)])
    return Axis(address, path, tuple(given), numbers.astype(float), kinds, tuple(words))


def _door(frame: Frame, path: Path) -> Any:
    """The converter of the field at the end of a path."""
    if path[0] == "measured":
        return a_length(path[2]) if path[2] != "size" else _as_it_is
    thing: Any = frame
    for step in path[:-1]:
        thing = thing[step] if isinstance(step, int) else getattr(thing, step)
    door: Any = attrs.fields_dict(type(thing))[path[-1]].converter
    return door or _as_it_is


def _as_it_is(value: Any) -> Any:
    return value


def _sound(convert: Any, given: npt.NDArray[Any]) -> bool:
    """Whether a door lets all numbers through as they are: it does what it does between the least and the largest."""
    ends = [float(given.min()), float(given.max())]
    return all(isinstance(found, float) and found == end for found, end in ((convert(end), end) for end in ends))


def _kind(value: Any, words: list[Words]) -> int:
    """NUMBER, or the place of a value among the words, which it joins if it is new."""
    if isinstance(value, float):
        return NUMBER
    refused = "; ".join(f"{fault.field}: {fault.what}" for fault in value.of) if isinstance(value, Faults) else ""
    found = Words(None, refused) if refused else Words(value)
    for place, other in enumerate(words):
        if other == found:
            return place
    words.append(found)
    return len(words) - 1
