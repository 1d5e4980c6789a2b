"""Sizes found on the wood: part by part, in one piece or in all of them.

A mapping from a part's name with ``.width``, ``.thickness``, ``.length`` or ``.size`` (thickness and width) to what was
found. It holds over what was described, and one piece's own figure holds over all pieces'.

>>> dict(measured({"2/back left leg.size": (33.1, 82.4), "bench/front rail.width": "3 7/16 in"})["2/back left leg"])
{'thickness': 33.1, 'width': 82.4}
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any, TypeVar

from ..errors import BenchjoinError, typed
from ..lengths import mm
from .identity import plain

SECTION = ("thickness", "width")
FIELDS = (*SECTION, "length")
Value = TypeVar("Value")


class Kept(Mapping[str, Value]):
    """A mapping in the order of its names that nobody changes, and that can be copied and pickled."""

    def __init__(self, items: Mapping[str, Value]) -> None:
        self._items = dict(sorted(items.items()))

    def __getitem__(self, name: str) -> Value:
        return self._items[name]

    def __iter__(self) -> Iterator[str]:
        return iter(self._items)

    def __len__(self) -> int:
        return len(self._items)

    def __repr__(self) -> str:
        return repr(self._items)


def measured(value: Any) -> Mapping[str, Mapping[str, float]]:
    """Converter of Frame.measured: addresses to sizes by part; takes its own result, too."""
    if not isinstance(value, Mapping):
        raise BenchjoinError(
            f'measured is {typed(value)}. Write for example {{"back left leg.size": ("33.1 mm", "82.4 mm")}}.'
        )
    parts: dict[str, dict[str, float]] = {}
    for address, given in value.items():
        for part, field, size in _sizes(address, given):
            own = parts.setdefault(plain(part), {})
            if own.setdefault(field, size) != size:
                raise BenchjoinError(
                    f'measured gives the {field} of "{plain(part)}" twice: {own[field]:g} and {size:g} mm.'
                )
    return Kept({part: Kept(sizes) for part, sizes in parts.items()})


def _sizes(address: Any, given: Any) -> list[tuple[str, str, float]]:
    if isinstance(given, Mapping) and all(field in FIELDS for field in given):
        return [(str(address), field, mm(size, what=f"{address}.{field}")) for field, size in given.items()]
    part, dot, field = str(address).rpartition(".")
    if dot and field in FIELDS:
        return [(part, field, mm(given, what=str(address)))]
    if dot and field == "size" and isinstance(given, tuple | list) and len(given) == 2:
        return [(part, name, mm(size, what=str(address))) for name, size in zip(SECTION, given, strict=True)]
    raise BenchjoinError(
        f'measured["{address}"] is {typed(given)}. Write "part.width", "part.thickness", '
        '"part.length" or "part.size": (thickness, width), for example {"back left leg.size": ("33.1 mm", "82.4 mm")}.'
    )
