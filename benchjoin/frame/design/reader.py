"""Reading a design file: tables to things, field by field, by the types that the things themselves declare.

Every value goes through the door of its field. What a door refuses is written down with its path in the file, and a
mark is left in its place, so that the rest is read too and all faults come at once.
"""

from __future__ import annotations

import difflib
import math
from collections.abc import Mapping
from typing import Any, Literal, get_args, get_origin

import attrs

from ...errors import DescriptionError, typed
from ...readings import Tape
from ..doors import Fault, Faults
from ..finished import Finished
from ..fit import Fit
from ..frame import Frame
from ..stock import Stock
from .words import HEADS, SHORT, Head, choices, keys_of, types_of

Path = tuple[str | int, ...]
BROKEN = Faults((Fault("", "told elsewhere"),))
"""Stands where a value should be that has been told already."""


@attrs.frozen
class Problem:
    """What is wrong at a path of the file; where says it in words."""

    path: Path
    what: str
    where: str = ""


@attrs.define
class Reading:
    """A file while it is read, and the problems found so far."""

    data: dict[str, Any]
    problems: list[Problem] = attrs.field(factory=list)
    stocks: dict[str, Any] = attrs.field(factory=dict)

    def frame(self) -> Frame | None:
        """The frame, or None where there are problems."""
        given = self.data.pop("stocks", {})
        if not isinstance(given, dict):
            self._tell(("stocks",), f"it is {typed(given)}. Write a table: each stock by its name.")
            given = {}
        for name in given:
            self._stock(given, name, ())
        found = self._thing(Frame, self.data, ())
        return found if isinstance(found, Frame) else None

    def _stock(self, given: Mapping[str, Any], name: str, after: tuple[str, ...]) -> Any:
        """A stock by its name, with the one that it is milled from first."""
        if name in self.stocks:
            return self.stocks[name]
        path: Path = ("stocks", name)
        table = given[name]
        if not isinstance(table, dict):
            self._tell(path, f'it is {typed(table)}. Write {{ thickness = "5/8 in" }}.')
            return self.stocks.setdefault(name, BROKEN)
        start = table.get("start")
        if isinstance(start, str) and start in given:
            if start in (*after, name):
                self._tell((*path, "start"), f"{typed(start)} is milled from itself. Name the stock that comes before.")
                return self.stocks.setdefault(name, BROKEN)
            self._stock(given, start, (*after, name))
        return self.stocks.setdefault(name, self._thing(Stock, {"name": name, **table}, path))

    def _thing(self, kind: type, table: Mapping[str, Any], path: Path) -> Any:
        """A thing from its table, or BROKEN."""
        fields = {key: name for name, key in keys_of(kind).items()}
        head = HEADS.get(kind)
        known = {**fields, **({head.word: ""} if head and head.field is None else {})}
        for key in table:
            if key not in known:
                self._tell((*path, key), _unknown(key, known))
        values: dict[str, Any] = {}
        for key, name in known.items():
            if key in table and name:
                values[name] = self._field(kind, name, table[key], (*path, key), head)
        for field in attrs.fields(kind):
            if field.default is attrs.NOTHING and field.name not in values:
                self._tell(path, f"it has no {keys_of(kind)[field.name]}. Add it.")
                values[field.name] = BROKEN
        return self._made(kind, values, path)

    def _made(self, kind: type, values: dict[str, Any], path: Path) -> Any:
        """The thing of its values; where it refuses them, its faults are told, and where they stand."""
        if not hasattr(kind, "__attrs_post_init__") and any(value is BROKEN for value in values.values()):
            return BROKEN
        try:
            return kind(**values)
        except DescriptionError as error:
            keys = keys_of(kind)
            for fault in error.faults:
                if fault not in BROKEN.of:
                    own = keys.get(fault.field)
                    what = fault.what if own else f"{fault.field}: {fault.what}"
                    self._tell((*path, own) if own else path, what)
            return BROKEN

    def _field(self, kind: type, name: str, value: Any, path: Path, head: Head | None) -> Any:
        """What a field is given, before its own door."""
        if head and name == head.field and head.none and value == head.none:
            return None
        own = types_of(kind)[name]
        if name == "measured":
            return {key: tuple(size) if isinstance(size, list) else size for key, size in _items(value)} or value
        converted = self._value(own, value, path)
        door = attrs.fields_dict(kind)[name].converter
        return converted if door else self._plain(own, converted, path)

    def _value(self, kind: Any, value: Any, path: Path) -> Any:
        """A value by the types that it may be of: a thing, several, or what the door of the field will look at."""
        if get_origin(kind) is tuple and get_args(kind)[-1] is ... and isinstance(value, list):
            items = [self._value(get_args(kind)[0], item, (*path, n)) for n, item in enumerate(value)]
            return BROKEN if any(item is BROKEN for item in items) else tuple(items)
        if kind == Mapping[str, Finished] and isinstance(value, dict):
            return self._finished(value, path)
        things = [choice for choice in choices(kind) if attrs.has(choice) and choice not in (Tape, Fit)]
        if Stock in things:
            return self._named_stock(value, path)
        if isinstance(value, dict) and things:
            return self._table(things, value, path)
        if isinstance(value, str):
            named = [thing for thing in things if thing in HEADS and HEADS[thing].word == value]
            if named:
                return self._made(named[0], {}, path)
        short = next((thing for thing in things if thing in SHORT), None)
        return value if short is None else self._made(short, {SHORT[short]: value}, path)

    def _table(self, things: list[type], value: dict[str, Any], path: Path) -> Any:
        """A thing from a table: the only kind it can be of, or the one whose word it holds."""
        if len(things) == 1:
            return self._thing(things[0], value, path)
        named = [thing for thing in things if thing in HEADS and HEADS[thing].word in value]
        if named:  # the word of one may be a field of another: boards lie on a panel
            return self._thing(max(named, key=lambda thing: len({*keys_of(thing).values()} & {*value})), value, path)
        words = " or ".join(HEADS[thing].word for thing in things)
        self._tell(path, f"it begins with none of its words. Give it {words}.")
        return BROKEN

    def _finished(self, value: dict[str, Any], path: Path) -> Any:
        found = {
            name: self._thing(Finished, part, (*path, name)) if isinstance(part, dict) else part
            for name, part in value.items()
        }
        return BROKEN if any(part is BROKEN for part in found.values()) else found

    def _named_stock(self, value: Any, path: Path) -> Any:
        if isinstance(value, str) and value in self.stocks:
            return self.stocks[value]
        near = difflib.get_close_matches(str(value), self.stocks, n=2, cutoff=0.4) or list(self.stocks)[:3]
        named = " or ".join(repr(name) for name in near) or "one in the table [stocks]"
        self._tell(path, f"there is no stock {typed(value)}. Name {named}.")
        return BROKEN

    def _plain(self, kind: Any, value: Any, path: Path) -> Any:
        """A value whose field has no door of its own, held against its type."""
        if value is BROKEN or _fits(kind, value):
            return _as_tuples(value)
        self._tell(path, f"{typed(value)} does not belong here.")
        return BROKEN

    def _tell(self, path: Path, what: str) -> None:
        self.problems.append(Problem(path, what, f"{where(self.data, path)}: " if path else ""))


def where(data: Mapping[str, Any], path: Path) -> str:
    """A path in words: 'bench.front', 'stack item 3.clear', 'stocks.larch.width'."""
    words: list[str] = []
    found: Any = data
    for step in path:
        found = _below(found, step)
        if isinstance(step, int):
            name = found.get("level") if isinstance(found, dict) else None
            words[-1] = name if isinstance(name, str) else f"{words[-1]} item {step + 1}"
        else:
            words.append(step)
    return ".".join(words)


def _below(found: Any, step: str | int) -> Any:
    if isinstance(found, dict):
        return found.get(step)
    return found[step] if isinstance(found, list) and isinstance(step, int) and step < len(found) else None


def _items(value: Any) -> list[tuple[str, Any]]:
    return list(value.items()) if isinstance(value, dict) else []


def _unknown(key: str, known: Mapping[str, str]) -> str:
    near = difflib.get_close_matches(key, known, n=2, cutoff=0.5)
    named = f"Did you mean {' or '.join(near)}?" if near else f"There are {', '.join(known)}."
    return f"nothing is called {typed(key)} here. {named}"


def _fits(kind: Any, value: Any) -> bool:
    """Whether a plain value is of a type."""
    if get_origin(kind) is Literal:
        return value in get_args(kind)
    if get_origin(kind) is tuple:
        kinds = get_args(kind)
        if not isinstance(value, list | tuple) or kinds[-1] is ...:
            return isinstance(value, tuple)
        return len(value) == len(kinds) and all(_fits(own, item) for own, item in zip(kinds, value, strict=True))
    if kind is float:
        return isinstance(value, int | float) and not isinstance(value, bool) and math.isfinite(value)
    return isinstance(kind, type) and isinstance(value, kind)


def _as_tuples(value: Any) -> Any:
    if isinstance(value, list):
        return tuple(_as_tuples(item) for item in value)
    return float(value) if isinstance(value, int) and not isinstance(value, bool) else value
