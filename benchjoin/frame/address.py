"""Addresses: one grammar that reaches every value of a design.

``"length"``, ``"front.height"``, ``"bench.back.width"`` (a level by its name), ``"foot shelf.boards.gap"`` (what it
carries, by the name of the run or else "boards", "bearers"), ``"clear below bench.size"``,
``"bay 1.size"``, ``"middle pair 1.at"``, ``"back left leg.size"`` or ``"2/bench/front rail.width"`` (sizes measured
on the wood). `alter` makes a new frame from addresses and values, all at once, so that no half-way state has to make
sense.
"""

from __future__ import annotations

import difflib
import itertools
from collections.abc import Iterable, Iterator, Mapping
from typing import Any

import attrs

from ..errors import AddressError, typed
from .clear import Clear
from .frame import Frame, must_be_a_frame
from .identity import piece_of, plain
from .measured import FIELDS, SECTION
from .stack import Level
from .top import Top


class _Change(dict[Any, Any]):
    """New values by field or place, or changes below them; a class of its own, so that no value is taken for one."""


def alter(frame: Frame, changes: Mapping[str, Any]) -> Frame:
    """A new frame with other values at some addresses; None at a part's measured size takes the measurement away.

    Raises
    ------
    AddressError
        If an address reaches nothing; it names the nearest ones that do. If two of the addresses reach the same value,
        or one reaches a part of what the other replaces. If it is no frame, or changes are no mapping.
    DescriptionError
        If the new frame has faults.

    Examples
    --------
    ``alter(bench, {"bench.front.width": "3 1/4 in", "length": "60 in"})``
    """
    must_be_a_frame(frame, "alter")
    if not isinstance(changes, Mapping):
        said = f"alter was given {typed(changes)} for changes. Write values by their addresses"
        raise AddressError(f"{said}: alter(frame, {{'length': '60 in'}}).", address="")
    tree = _Change()
    measured: dict[str, Any] = dict(frame.measured)
    paths = paths_to(frame, changes)
    for address, given in changes.items():
        path = paths[address]
        if path[0] == "measured":
            measured.update(_with_measure(measured, path[1], path[2], given))
        else:
            _graft(tree, path, given)
    grown = _grow(frame, tree) if tree else {}
    return attrs.evolve(frame, **grown, measured=measured)


def value(frame: Frame, address: str) -> Any:
    """The value at an address.

    Raises
    ------
    AddressError
        If the address reaches nothing.
    """
    must_be_a_frame(frame, "value")
    path = _path(frame, address)
    if path[0] == "measured":
        sizes = frame.measured.get(path[1], {})
        return tuple(sizes.get(f) for f in SECTION) if path[2] == "size" else sizes.get(path[2])
    return _at(frame, path)


def paths_to(frame: Frame, wanted: Iterable[str]) -> dict[str, tuple[Any, ...]]:
    """The steps to the value of each address: attribute names, and places in the stack or the bays.

    Raises
    ------
    AddressError
        If an address reaches nothing, or two reach the same value.
    """
    paths = {address: _path(frame, address) for address in wanted}
    _refuse_twice(paths)
    return paths


def addresses(frame: Frame) -> tuple[str, ...]:
    """Every address that reaches a described value of the frame, from the top down.

    Raises
    ------
    AddressError
        If it is no frame.
    """
    must_be_a_frame(frame, "addresses")
    return tuple(_addresses(frame))


def _addresses(frame: Frame) -> Iterator[str]:
    for field in attrs.fields(Frame):
        if field.name not in ("stack", "bays", "bins", "measured", "tape"):
            yield from _below(field.name, getattr(frame, field.name))
    yield "tape"
    for name, place in _bay_names(frame).items():
        yield from _below(name, frame.bays[place])
    for name, place in _bin_names(frame).items():
        yield from _below(name, frame.bins[place])
    for name, place in _stack_names(frame).items():
        item = frame.stack[place]
        yield from _below(name, item)
        for key, path in _run_paths(item).items() if isinstance(item, Level) else ():
            yield from _below(f"{name}.{key}", _at(item, path))


def _below(address: str, thing: Any) -> Iterator[str]:
    if not attrs.has(type(thing)):
        yield address
        return
    if not isinstance(thing, Clear | Level):
        yield address
    for field in attrs.fields(type(thing)):
        yield from _below(f"{address}.{field.name}", getattr(thing, field.name))


def _at(thing: Any, path: Iterable[Any]) -> Any:
    for step in path:
        thing = thing[step] if isinstance(step, int) else getattr(thing, step)
    return thing


def _stack_names(frame: Frame) -> dict[str, int]:
    """Place in the stack by name: each level by its own, each clear by the level above or below it."""
    names: dict[str, int] = {}
    for place, item in enumerate(frame.stack):
        if isinstance(item, Level):
            names[item.name] = place
            if place and isinstance(frame.stack[place - 1], Clear):
                names[f"clear below {item.name}"] = place - 1
            if place + 1 < len(frame.stack) and isinstance(frame.stack[place + 1], Clear):
                names[f"clear above {item.name}"] = place + 1
    return names


def _bay_names(frame: Frame) -> dict[str, int]:
    """Place among the bays by name: each bay and each pair between two by its number from the left."""
    return {f"bay {n // 2 + 1}" if n % 2 == 0 else f"middle pair {n // 2 + 1}": n for n in range(len(frame.bays))}


def _bin_names(frame: Frame) -> dict[str, int]:
    """Place among the bins by name."""
    return {own.name: place for place, own in enumerate(frame.bins)}


def _path(frame: Frame, address: str) -> tuple[Any, ...]:
    """The steps to a value: attribute names, and integers into the stack or the bays."""
    if not isinstance(address, str) or not address.strip():
        raise AddressError(
            f"{address!r} is not an address. Write for example 'length' or 'bench.front.width'.", address=address
        )
    head, *rest = address.strip().split(".")
    if frame.may_have(piece_of(head)[1]):
        return _measure_path(frame, address, head, rest)
    names = _stack_names(frame)
    if head in names:
        steps: list[Any] = ["stack", names[head]]
    elif head in _bay_names(frame):
        steps = ["bays", _bay_names(frame)[head]]
    elif head in _bin_names(frame):
        steps = ["bins", _bin_names(frame)[head]]
    elif head in (f.name for f in attrs.fields(Frame)) and head not in ("measured", "stack", "bays", "bins"):
        steps = [head]
    else:
        raise _unknown(frame, address)
    steps += _into_runs(frame.stack[steps[1]], rest) if steps[0] == "stack" else rest
    thing: Any = frame
    for step in steps:
        if not isinstance(step, int) and not (
            attrs.has(type(thing)) and step in (f.name for f in attrs.fields(type(thing)))
        ):
            raise _unknown(frame, address)
        thing = thing[step] if isinstance(step, int) else getattr(thing, step)
    return tuple(steps)


def _into_runs(item: Clear | Level, rest: list[str]) -> list[Any]:
    """The steps below a level, where the first may be the key of a run that it carries."""
    paths = _run_paths(item) if isinstance(item, Level) else {}
    return [*paths[rest[0]], *rest[1:]] if rest and rest[0] in paths else [*rest]


def _run_paths(level: Level) -> dict[str, tuple[Any, ...]]:
    """The steps to each run that a level carries, and to each section of a top, by its key."""
    found: dict[str, tuple[Any, ...]] = {}
    for place, run in enumerate(level.carries):
        found[run.key] = ("carries", place)
        if isinstance(run, Top):
            found |= {section.key: ("carries", place, "sections", section.place) for section in run.parts()}
    return found


def _measure_path(frame: Frame, address: str, part: str, rest: list[str]) -> tuple[str, str, str]:
    if len(rest) != 1 or rest[0] not in (*FIELDS, "size"):
        raise AddressError(
            f"{address!r}: a part has its width, thickness, length and size on the wood. Write {part + '.width'!r}.",
            address=address,
            known=tuple(f"{part}.{field}" for field in (*FIELDS, "size")),
        )
    return ("measured", plain(part), rest[0])


def _unknown(frame: Frame, address: str) -> AddressError:
    parts = tuple(f"{part}.size" for part in frame.part_names())
    known = (*addresses(frame), *parts)
    near = difflib.get_close_matches(address, known, n=3, cutoff=0.4) or known[:3]
    told = " or ".join(repr(n) for n in near)
    return AddressError(
        f"{address!r} reaches no value of this frame. Did you mean {told}?", address=address, known=known
    )


def _with_measure(measured: Mapping[str, Any], part: str, field: str, given: Any) -> dict[str, Any]:
    """Measured sizes of one part after a change, without those that are None; Frame.measured checks them."""
    length = {name: size for name, size in measured.get(part, {}).items() if name not in SECTION}
    if field == "size" and given is None:
        return {part: length}
    if field == "size" and isinstance(given, tuple | list) and len(given) == len(SECTION) and None in given:
        return {part: {**length, **{name: size for name, size in zip(SECTION, given, strict=True) if size is not None}}}
    if field == "size":
        return {part: length, f"{part}.size": given}
    sizes = {**measured.get(part, {}), field: given}
    return {part: {name: size for name, size in sizes.items() if size is not None}}


def _refuse_twice(paths: Mapping[str, tuple[Any, ...]]) -> None:
    """Refuse changes of which the order would decide."""
    for one, other in itertools.combinations(paths, 2):
        short, long = sorted((_place(paths[one]), _place(paths[other])), key=len)
        if long[: len(short)] == short:
            raise AddressError(f"{one!r} and {other!r} change the same value. Write one of them.", address=other)


def _place(path: tuple[Any, ...]) -> tuple[Any, ...]:
    """A path for comparing: the size of a part is all of its section, and has nothing to do with its length."""
    if path[0] != "measured":
        return path
    return path[:2] if path[2] == "size" else (f"{path[0]} length", path[1]) if path[2] == "length" else path


def _graft(tree: _Change, path: tuple[Any, ...], given: Any) -> None:
    for step in path[:-1]:
        tree = tree.setdefault(step, _Change())
    tree[path[-1]] = given


def _grow(thing: Any, tree: _Change) -> dict[Any, Any]:
    """New values for the fields of a thing, from the tree of changes below it."""
    grown: dict[Any, Any] = {}
    for step, change in tree.items():
        old = thing[step] if isinstance(step, int) else getattr(thing, step)
        grown[step] = _changed(old, change) if isinstance(change, _Change) else change
    return grown


def _changed(old: Any, tree: _Change) -> Any:
    grown = _grow(old, tree)
    if isinstance(old, tuple):
        return tuple(grown.get(place, item) for place, item in enumerate(old))
    return attrs.evolve(old, **grown)
