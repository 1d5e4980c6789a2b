"""A record of what was built: the design, every part as it came out, hours, cost, and what went wrong.

It is written as a text file (TOML): the design file as it stood, and below it a table `built`. The next one can begin
from it, and it reads back as it was written.

    kept = record(layout, built="spring", hours=41, cost="214", went_wrong=["leg B2 split at the foot shelf"])
    Path("bench-1.toml").write_text(kept.text(), encoding="utf-8")
    next_year = again(read_record("bench-1.toml").frame, {"length": "72 in"})
"""

from __future__ import annotations

import tomllib
from collections.abc import Iterable, Mapping
from pathlib import Path
from typing import Any

import attrs

from ..errors import DesignFileError
from ..frame.design.file import design_text, read_design, write_design
from ..frame.design.words import quoted
from ..frame.frame import Frame
from ..layout.layout import Layout

HEAD = "[built]"
Size = tuple[float, float, float]


def _words(value: Iterable[Any]) -> tuple[str, ...]:
    return tuple(str(word) for word in value)


def _hours(value: Any) -> float | None:
    return None if value is None else float(value)


@attrs.frozen(kw_only=True, repr=False)
class Record:
    """What was built, and how it went; parts are length, width and thickness by name. [mm]"""

    frame: Frame
    parts: Mapping[str, Size]
    built: str = ""
    hours: float | None = attrs.field(default=None, converter=_hours)
    cost: str = ""
    went_wrong: tuple[str, ...] = attrs.field(default=(), converter=_words)

    def text(self) -> str:
        """The record as a file."""
        said = [("date", quoted(self.built))] if self.built else []
        said += [("hours", repr(self.hours))] if self.hours is not None else []
        said += [("cost", quoted(self.cost))] if self.cost else []
        lines = [f"{key} = {value}" for key, value in said]
        wrong = "".join(f"    {quoted(what)},\n" for what in self.went_wrong)
        lines += [f"went_wrong = [\n{wrong}]"] if wrong else []
        sizes = [f"{quoted(name)} = [{', '.join(map(repr, size))}]" for name, size in self.parts.items()]
        return "\n".join([write_design(self.frame).rstrip("\n"), "", HEAD, *lines, "[built.parts]", *sizes, ""])

    def __repr__(self) -> str:
        return f"<Record of {self.frame.name}: {len(self.parts)} parts, {self.built or 'no date'}>"


def record(
    layout: Layout,
    *,
    built: str = "",
    hours: float | None = None,
    cost: str = "",
    went_wrong: Iterable[str] = (),
) -> Record:
    """Write down a layout as it was built.

    Parameters
    ----------
    layout : Layout
        With all that was measured and finished.
    built, cost : str
        When it was built and what it cost, in the maker's own words.
    hours : float, optional
        How long it took.
    went_wrong : iterable of str
        What to do otherwise next time.
    """
    parts = {part.name: (part.length, part.width, part.thickness) for part in layout.parts}
    sizes = {name: (round(a, 3), round(b, 3), round(c, 3)) for name, (a, b, c) in parts.items()}
    return Record(frame=layout.frame, parts=sizes, built=built, hours=hours, cost=cost, went_wrong=went_wrong)


def read_record(source: str | Path) -> Record:
    """The record that a file holds.

    Parameters
    ----------
    source : str or Path
        The path of the file; or its text, which has more than one line.

    Raises
    ------
    DesignFileError
        If its design has faults, or it says nothing of what was built.
    """
    text, name = design_text(source)
    design, found, rest = text.partition(f"\n{HEAD}")
    if not found:
        raise DesignFileError(
            f"{name} is no record: it has no table {HEAD}. Write one with record(layout).text().", faults=(), lines=()
        )
    try:
        told = tomllib.loads(HEAD + rest)["built"]
        parts = {part: (float(a), float(b), float(c)) for part, (a, b, c) in told.get("parts", {}).items()}
        return Record(
            frame=read_design(design + "\n"),
            parts=parts,
            built=str(told.get("date", "")),
            hours=told.get("hours"),
            cost=str(told.get("cost", "")),
            went_wrong=told.get("went_wrong", ()),
        )
    except (tomllib.TOMLDecodeError, TypeError, ValueError, AttributeError) as error:
        if isinstance(error, DesignFileError):
            raise
        raise DesignFileError(
            f"{name}: the table {HEAD} does not read: {error}. A part is [length, width, thickness] in mm.",
            faults=(),
            lines=(),
        ) from None
