"""Design files with sizes that are not decided yet: "200 to 230 mm" where a length stands.

>>> first = read_sketch('''
... format = 1
... name = "Step"
... length = "22 to 24 in"
... depth = "12 in"
... front = { stock = "pine 2x4", height = "9 in" }
... back = { stock = "pine 2x4", height = "9 in" }
... rail_stock = "pine 1x4"
... stack = [{ clear = "open" }, { level = "top", front = "3 1/2 in", back = "3 1/2 in", flush = "front leg top" }]
... [stocks]
... "pine 2x4" = { thickness = "1 1/2 in", width = "3 1/2 in" }
... "pine 1x4" = { thickness = "3/4 in" }
... ''')
>>> list(first.open), first.settled({"length": "23 in"}).length
(['length'], 584.2)
"""

from __future__ import annotations

import copy
from collections.abc import Iterator
from pathlib import Path
from typing import Any

from ...errors import DesignFileError, LengthError
from ...ranges import Range, ranged
from ..address import addresses, value
from ..frame import Frame
from ..sketch import Sketch, sketch
from .file import frame_of, opened
from .words import FORMAT

Steps = tuple[str | int, ...]
SKETCH = "sketch"
"""The table of a file that has the sizes of a sketch and nothing else."""


def read_sketch(source: str | Path) -> Sketch:
    """The frame of a design file with what is open in it; of a file without a range nothing is.

    A file may say no more than the sizes of a sketch, in a table ``[sketch]`` with the words of `sketch`.

    Parameters
    ----------
    source : str or Path
        The path of the file; or its text, which has more than one line.

    Raises
    ------
    DesignFileError
        With everything that is wrong, each with its line and field.
    """
    text, name, data = opened(source)
    if SKETCH in data:
        return _from_sizes(name, data)
    found = list(_ranges(data, ()))
    middle = _decided(data, {steps: type(own.low)((own.low + own.high) / 2) for steps, own in found})
    frame = frame_of(middle, text, name)
    open_ = {}
    for steps, own in found:
        other = frame_of(_decided(middle, {steps: own.low}), text, name)
        address = _changed(frame, other)
        if address is None:
            place = ".".join(map(str, steps))
            raise DesignFileError(
                f"{name}: {place} is no size that can stay open. Write one length.", faults=(), lines=()
            )
        open_[address] = own
    return Sketch(frame=frame, assumed=(), open=open_)


def _from_sizes(name: str, data: dict[str, Any]) -> Sketch:
    own = data[SKETCH]
    if data.get("format") != FORMAT or isinstance(data["format"], bool):
        raise DesignFileError(f"{name}: begin it with: format = {FORMAT}", faults=(), lines=())
    strange = [key for key in data if key not in (SKETCH, "format")]
    if strange or not isinstance(own, dict):
        told = (
            f"{name} says a sketch, and {strange[0]} beside it."
            if strange
            else f"{name}: [sketch] is a table of sizes."
        )
        raise DesignFileError(f"{told} Write only the sizes, under [sketch].", faults=(), lines=())
    try:
        return sketch(**own)
    except TypeError:
        sizes = "name, length, depth and height, and perhaps back and shelf"
        raise DesignFileError(f"{name}: [sketch] has {sizes}, not {', '.join(own)}.", faults=(), lines=()) from None


def _ranges(thing: Any, steps: Steps) -> Iterator[tuple[Steps, Range]]:
    """Where a range stands in the file, and which."""
    each = thing.items() if isinstance(thing, dict) else enumerate(thing) if isinstance(thing, list) else ()
    for step, own in each:
        try:
            found = ranged(own)
        except LengthError:
            found = None  # a name may have a "to" in it
        if found is not None:
            yield (*steps, step), found
        yield from _ranges(own, (*steps, step))


def _decided(data: dict[str, Any], values: dict[Steps, float]) -> dict[str, Any]:
    """The file with lengths where its ranges stand."""
    found = copy.deepcopy(data)
    for steps, length in values.items():
        place: Any = found
        for step in steps[:-1]:
            place = place[step]
        place[steps[-1]] = length
    return found


def _changed(one: Frame, other: Frame) -> str | None:
    """The address of the only length that two frames differ in."""
    found = [own for own in addresses(one) if isinstance(now := value(one, own), float) and now != value(other, own)]
    return found[0] if len(found) == 1 else None
