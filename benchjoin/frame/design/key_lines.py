"""Lines of a design file: on which one a value stands, for errors that a maker can find.

The reader of TOML does not say where values stood. So the key is spelled otherwise wherever it occurs, one place after
the other, and the file is read again: where the value goes missing, there it was.
"""

from __future__ import annotations

import re
import tomllib
from collections.abc import Sequence
from typing import Any

Path = Sequence[str | int]


def line_of(text: str, path: Path) -> int | None:
    """The line on which the last key of a path stands, counted from 1; of an item of a list, that of its first key.

    >>> text = '''format = 1
    ... stack = [
    ...     { clear = 7 },
    ...     { level = "bench", front = 9 },
    ... ]'''
    >>> line_of(text, ("stack", 1, "front"))
    4
    """
    steps = list(path)
    stands = _at(tomllib.loads(text), steps)
    if steps and isinstance(steps[-1], int) and isinstance(stands, dict) and stands:
        steps.append(next(iter(stands)))
    elif not steps:
        return None
    elif stands is None or isinstance(steps[-1], int):
        return line_of(text, steps[:-1])
    for place in _places(text, str(steps[-1])):
        tried = f"{text[: place.start(1)]}missing-{text[place.start(1) :]}"
        try:
            missed = _at(tomllib.loads(tried), steps) is None
        except tomllib.TOMLDecodeError:
            continue
        if missed:
            return text.count("\n", 0, place.start(1)) + 1
    return line_of(text, steps[:-1])


def _places(text: str, key: str) -> list[re.Match[str]]:
    """Where a key may stand: bare, or inside its quotes."""
    spelled = re.escape(key)
    escaped = re.escape(key.replace("\\", "\\\\").replace('"', '\\"'))
    return list(re.finditer(rf"(?<![\w-])[\"']?({spelled}|{escaped})(?![\w-])", text))


def _at(found: Any, path: Path) -> Any:
    """What stands at the end of a path, or None."""
    for step in path:
        if isinstance(found, dict):
            found = found.get(step)
        elif isinstance(found, list) and isinstance(step, int) and step < len(found):
            found = found[step]
        else:
            return None
    return found
