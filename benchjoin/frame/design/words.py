"""The words of a design file: how each kind of thing is said there, for reader and writer alike.

Fields go by their own names. Only what needs words of its own stands here: things that begin with a word (``level =
"bench"``), things that are said by one value (a rail by its width), joints by their names.
"""

from __future__ import annotations

from collections.abc import Mapping
from types import UnionType
from typing import Any, Union, get_args, get_origin

import attrs

from ..bearers import Bearers
from ..bin import Bin
from ..boards import Boards
from ..clear import Clear
from ..edges import Arc, Ogee, Points, Scallop
from ..fit import Fit
from ..governing import EndRails, Overall
from ..joints import Butt, HalfLap, Laid, Notch, Over, Planted
from ..ledger import Ledger
from ..pair import Pair
from ..rail import Rail
from ..stack import Level
from ..top import Panel, Top
from ..tray import Tray

FORMAT = 1
OPEN = "open"
"""Said of a clear without a size, and of a pair that is not held at a place."""


@attrs.frozen
class Head:
    """The word that a thing begins with, and the field that it gives; none says that field is None."""

    word: str
    field: str | None
    none: str = ""


HEADS: Mapping[type, Head] = {
    Clear: Head("clear", "size", OPEN),
    Level: Head("level", "name"),
    Pair: Head("pair", "at", OPEN),
    Overall: Head("overall", "size"),
    EndRails: Head("end_rails", "size"),
    Notch: Head("notch", "depth"),
    HalfLap: Head("half-lap", "share"),
    Butt: Head("butt", None),
    Planted: Head("planted", None),
    Over: Head("over", "depth"),
    Laid: Head("laid", None),
    Boards: Head("boards", "stock"),
    Bearers: Head("bearers", "stock"),
    Ledger: Head("ledger", "stock"),
    Top: Head("top", "sections"),
    Panel: Head("panel", "width", OPEN),
    Tray: Head("tray", "boards"),
    Arc: Head("arc", "rise"),
    Scallop: Head("scallop", "count"),
    Ogee: Head("ogee", "depth"),
    Points: Head("through", "points"),
    Bin: Head("bin", "name"),
}
SHORT: Mapping[type, str] = {Rail: "width"}
"""What may be said by one value, and the field that it gives."""


def types_of(kind: type) -> dict[str, Any]:
    """Type of each field of a thing."""
    return {field.name: field.type for field in attrs.fields(attrs.resolve_types(kind))}


def choices(kind: Any) -> tuple[Any, ...]:
    """The types that a field may be of."""
    return get_args(kind) if get_origin(kind) in (Union, UnionType) else (kind,)


def keys_of(kind: type) -> dict[str, str]:
    """Key in the file of each field of a thing."""
    head = HEADS.get(kind)
    keys = {field.name: field.name for field in attrs.fields(kind)}
    if kind is Fit:
        return {name: name.replace("_", "-") for name in keys}
    return {name: head.word if head and name == head.field else key for name, key in keys.items()}


def quoted(text: str) -> str:
    """Text in quotes, as TOML wants it."""
    return '"' + text.replace("\\", "\\\\").replace('"', '\\"') + '"'
