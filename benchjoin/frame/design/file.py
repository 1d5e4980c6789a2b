"""Design files: a frame as plain text, for those who do not write Python.

The file is TOML and says what the Python says, in the same words; its first line is ``format = 1``. `read_design` gives
the frame, or tells everything that is wrong with the file at once, each fault with its line; `write_design` is the way
back.

>>> frame = read_design('''
... format = 1
... name = "Step"
... length = "24 in"
... depth = "12 in"
... front = { stock = "pine 2x4", height = "9 in" }
... back = { stock = "pine 2x4", height = "9 in" }
... rail_stock = "pine 1x4"
... stack = [{ clear = "open" }, { level = "top", front = "3 1/2 in", back = "3 1/2 in", flush = "front leg top" }]
... [stocks]
... "pine 2x4" = { thickness = "1 1/2 in", width = "3 1/2 in" }
... "pine 1x4" = { thickness = "3/4 in" }
... ''')
>>> frame
<Frame Step: 24 in over the legs × 12 in over the legs, top; make 1>
"""

from __future__ import annotations

import tomllib
from pathlib import Path
from typing import Any

from ...errors import DesignFileError, typed
from ..doors import Fault
from ..frame import Frame
from .key_lines import lines_of
from .reader import Problem, Reading
from .words import FORMAT
from .writer import write_design

__all__ = ["read_design", "write_design"]


def read_design(source: str | Path) -> Frame:
    """The frame that a design file describes.

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
    return frame_of(data, text, name)


def opened(source: str | Path) -> tuple[str, str, dict[str, Any]]:
    """Text, name and tables of a file.

    Raises
    ------
    DesignFileError
        If it cannot be read, or is not TOML.
    """
    text, name = design_text(source)
    try:
        return text, name, tomllib.loads(text)
    except tomllib.TOMLDecodeError as error:
        problem = f"{error}. Text stands in quotes, each value on a line of its own or between commas."
        raise DesignFileError(f"{name} is not TOML: {problem}", faults=(Fault("", str(error)),), lines=()) from None
    except (RecursionError, ValueError) as error:
        deep = isinstance(error, RecursionError)
        problem = "it is nested too deeply" if deep else "a number in it has too many digits"
        raise DesignFileError(f"{name} cannot be read: {problem}.", faults=(Fault("", problem),), lines=()) from None


def frame_of(data: dict[str, Any], text: str, name: str) -> Frame:
    """The frame of the tables of a file.

    Raises
    ------
    DesignFileError
        With everything that is wrong, each with its line and field.
    """
    reading = Reading(dict(data))
    data = reading.data
    _check_format(data, reading)
    frame = reading.frame() if not reading.problems else None
    if frame is None or reading.problems:
        raise _refusal(name, text, reading.problems)
    return frame


def design_text(source: str | Path) -> tuple[str, str]:
    """Text and name of a file, or of what is a text itself."""
    if isinstance(source, str) and "\n" in source:
        return source, "The design"
    path = Path(source)
    try:
        return path.read_bytes().decode("utf-8-sig"), path.name
    except OSError as error:
        what = f"{path} cannot be read: {error.strerror or error}."
    except UnicodeDecodeError:
        what = f"{path} is not UTF-8 text. Save it as UTF-8."
    raise DesignFileError(what, faults=(), lines=())


def _check_format(data: dict[str, Any], reading: Reading) -> None:
    given = data.pop("format", None)
    if given is None:
        reading.problems.append(Problem((), f"it does not say its format. Begin it with: format = {FORMAT}"))
    elif given != FORMAT or isinstance(given, bool):
        known = f"this benchjoin reads format {FORMAT}. Take a newer benchjoin, or write format = {FORMAT}."
        reading.problems.append(Problem(("format",), f"it says {typed(given)}, and {known}"))


def _refusal(name: str, text: str, problems: list[Problem]) -> DesignFileError:
    """One error with all problems in the order of their lines."""
    found = list(zip(lines_of(text, [problem.path for problem in problems]), problems, strict=True))
    found.sort(key=lambda pair: pair[0] or 0)
    said = [f"  {f'line {line}, ' if line else ''}{problem.where}{problem.what}" for line, problem in found]
    return DesignFileError(
        "\n".join([f"{name} does not describe a frame that can be built:", *said]),
        faults=tuple(Fault(problem.where.rstrip(": "), problem.what) for _, problem in found),
        lines=tuple(line for line, _ in found),
    )
