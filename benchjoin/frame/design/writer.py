"""Writing a design file: a frame as text that reads back as the same frame.

Only what differs from its default is written. A length stands as a tape says it, where that is exactly the length, and
in millimetres otherwise.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from fractions import Fraction
from typing import Any

import attrs

from ...lengths import INCH, signed_mm
from ...readings import Tape
from ..doors import Faults
from ..frame import Frame
from ..stock import Stock
from .words import FORMAT, HEADS, SHORT, keys_of, quoted

TABLES = ("measured", "finished")
"""Fields that are written as tables of their own, below all else."""


def write_design(frame: Frame) -> str:
    """The text of a design file.

    Examples
    --------
    ``Path("bench.toml").write_text(write_design(bench), encoding="utf-8")``
    """
    writer = _Writer(frame.tape, _references(frame))
    plain = [(key, value) for key, value in writer.entries(frame) if key not in TABLES]
    lines = [f"format = {FORMAT}", "", *(f"{key} = {_spread(value)}" for key, value in plain)]
    stocks = {key: dict(writer.entries(stock)) for stock, key in writer.references.items()}
    for stock, key in writer.references.items():
        if stock.name == key:
            del stocks[key]["name"]
    tables: dict[str, Mapping[str, Any]] = {"stocks": stocks}
    tables |= {key: dict(value) for key, value in writer.entries(frame) if key in TABLES}
    for name, table in tables.items():
        if table:
            lines += ["", f"[{name}]", *(f"{_key(key)} = {_toml(value)}" for key, value in table.items())]
    return "\n".join(lines) + "\n"


def _references(frame: Frame) -> dict[Stock, str]:
    """Every stock of a frame, each once, with what it is called in the file: its name, or that with a number."""
    found: dict[Stock, str] = {}
    for stock in dict.fromkeys(_stocks(frame)):
        name, number = stock.name, 1
        while name in found.values():
            number += 1
            name = f"{stock.name} ({number})"
        found[stock] = name
    return found


def _stocks(thing: Any) -> Iterator[Stock]:
    """Stocks in a thing, those that others are milled from first."""
    if isinstance(thing, tuple):
        for item in thing:
            yield from _stocks(item)
    elif attrs.has(type(thing)):
        for field in attrs.fields(type(thing)):
            yield from _stocks(getattr(thing, field.name))
        if isinstance(thing, Stock):
            yield thing


@attrs.frozen
class _Writer:
    """How lengths read, and what stocks are called."""

    tape: Tape
    references: Mapping[Stock, str]

    def entries(self, thing: Any) -> list[tuple[str, Any]]:
        """Keys and values of a thing's fields that differ from their defaults."""
        kind = type(thing)
        keys, head = keys_of(kind), HEADS.get(kind)
        found: list[tuple[str, Any]] = []
        if head and head.field is None:
            found.append((head.word, True))
        for field in attrs.fields(kind):
            value = getattr(thing, field.name)
            first = head is not None and field.name == head.field
            if first and head and value is None and head.none:
                found.append((head.word, head.none))
            elif not _is_default(field, value):
                found.append((keys[field.name], self.value(field, value)))
        return found

    def value(self, field: Any, value: Any) -> Any:
        """A value as it is written."""
        if isinstance(value, Tape):
            return value.name
        if isinstance(value, Stock):
            return self.references[value]
        if isinstance(value, tuple):
            return [self.value(field, item) for item in value]
        if isinstance(value, Mapping):
            return self._mapping(field, value)
        if attrs.has(type(value)):
            return self._thing(value)
        return self.length(value) if isinstance(value, float) and _is_length(field) else value

    def _thing(self, thing: Any) -> Any:
        """A thing as a word, as one value, or as a table."""
        kind, entries = type(thing), self.entries(thing)
        head = HEADS.get(kind)
        if head and all(key == head.word and value is True for key, value in entries):
            return head.word
        if kind in SHORT and [key for key, _ in entries] == [SHORT[kind]]:
            return entries[0][1]
        return dict(entries)

    def _mapping(self, field: Any, value: Mapping[str, Any]) -> dict[str, Any]:
        if field.name == "measured":
            return {f"{part}.{of}": self.length(size) for part, sizes in value.items() for of, size in sizes.items()}
        return {name: self.value(field, item) for name, item in value.items()}

    def length(self, size: float) -> Any:
        """A length as the design's tape says it, if it says it exactly, or else in millimetres."""
        marks = Fraction(round(abs(size) / INCH * 64), 64)
        whole, part = divmod(marks, 1)
        figures = " ".join(filter(None, (str(whole) if whole or not part else "", str(part) if part else "")))
        said = f"{'-' if size < 0 else ''}{figures} in"
        if self.tape.unit == "in" and signed_mm(said) == size:
            return said
        number = repr(size).removesuffix(".0")
        return size if "e" in number else f"{number} mm"


def _is_default(field: Any, value: Any) -> bool:
    """Whether a value need not be written; what follows from other fields is, so that it reads back as it was."""
    if isinstance(field.default, attrs.Factory):  # type: ignore[arg-type]
        return not field.default.takes_self and bool(value == field.default.factory())
    return field.default is not attrs.NOTHING and bool(value == field.default)


def _is_length(field: Any) -> bool:
    """Whether the door of a field takes a tape string."""
    return field.converter is not None and not isinstance(field.converter("1 mm"), Faults | str)


def _spread(value: Any) -> str:
    """A value of the first level: a list of tables on a line each."""
    if isinstance(value, list) and any(isinstance(item, dict) for item in value):
        return "[\n" + "".join(f"    {_toml(item)},\n" for item in value) + "]"
    return _toml(value)


def _toml(value: Any) -> str:
    if isinstance(value, bool):
        return str(value).lower()
    if isinstance(value, str):
        return quoted(value)
    if isinstance(value, list | tuple):
        return f"[{', '.join(map(_toml, value))}]"
    if isinstance(value, Mapping):
        return f"{{ {', '.join(f'{_key(key)} = {_toml(item)}' for key, item in value.items())} }}"
    return repr(value)


def _key(name: str) -> str:
    return name if re.fullmatch(r"[A-Za-z0-9_-]+", name) else quoted(name)
