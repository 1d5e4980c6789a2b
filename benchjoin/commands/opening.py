"""Opening a design: a .toml that describes a frame, or a .py that makes one."""

from __future__ import annotations

import runpy
import shlex
import sys
import traceback
from collections.abc import Iterable, Mapping
from contextlib import suppress
from pathlib import Path
from typing import Any

from ..errors import DesignFileError
from ..frame.design.undecided import read_sketch
from ..frame.frame import Frame
from ..frame.sketch import Sketch


def open_design(path: Path, name: str | None = None, given: Mapping[str, Any] | None = None) -> Frame:
    """The frame of a design file; name says which, in a .py that makes several, given are values by their addresses.

    Raises
    ------
    DesignFileError
        If the file cannot be read, does not hold one frame, or something in it stays open.
    AddressError
        If an address reaches nothing.
    DescriptionError
        If the frame has faults with these values.
    """
    first, values = _opened(path, name), dict(given or {})
    left = [address for address in first.open if address not in values]
    if left:
        rows = "\n".join(f"  {what}: {size}" for what, size, state in first.table().rows if state == "open")
        raise _refusal(f"{path.name} is not decided yet:\n{rows}\nSettle it: --set {shlex.quote(f'{left[0]}=…')}")
    return first.settled(values)


def settings(words: Iterable[str]) -> dict[str, Any]:
    """Values by their addresses, as they are typed: length=60 in, quantity=3.

    Raises
    ------
    DesignFileError
        If something is no address with a value.

    Examples
    --------
    >>> settings(["length=60 in", "quantity=3"])
    {'length': '60 in', 'quantity': 3}
    """
    found: dict[str, Any] = {}
    for own in words:
        address, sign, typed = (word.strip() for word in own.partition("="))
        if not (address and sign and typed):
            raise _refusal(f"--set {own!r} sets nothing. Write an address and a value: --set 'length=60 in'")
        found[address] = _number(typed)
    return found


def _number(typed: str) -> int | float | str:
    for kind in (int, float):
        with suppress(ValueError):
            return kind(typed)
    return typed


def _opened(path: Path, name: str | None) -> Sketch:
    if path.suffix.lower() == ".py":
        made = _only(path, _made_by(path), name)
        return made if isinstance(made, Sketch) else Sketch(frame=made, assumed=())
    if path.suffix.lower() != ".toml":
        raise _refusal(f"{path.name} is not a design: it ends neither in .toml nor in .py.")
    if name is not None:
        raise _refusal(f"{path.name} holds one frame. Leave out --frame.")
    return read_sketch(path)


def _made_by(path: Path) -> dict[str, Any]:
    """What a .py leaves behind when it has run."""
    if not path.is_file():
        raise _refusal(f"{path} cannot be read: there is no such file.")
    sys.path.insert(0, str(path.parent))
    try:
        return runpy.run_path(str(path))
    except (Exception, SystemExit) as error:  # whatever a stranger's code does, the maker hears where
        frames = [step for step in traceback.extract_tb(error.__traceback__) if step.filename == str(path)]
        line = f", line {frames[-1].lineno}" if frames else f", line {getattr(error, 'lineno', None) or 1}"
        said = _text(error) or type(error).__name__
        kind = "" if type(error).__module__.startswith("benchjoin") else f"{type(error).__name__}: "
        raise _refusal(f"{path.name}{line}: {kind}{said}") from error
    finally:
        sys.path.remove(str(path.parent))


def _text(error: BaseException) -> str:
    """What an exception says, if it can say anything."""
    try:
        return str(error)
    except Exception:  # a stranger's own exception
        return ""


def _only(path: Path, made: dict[str, Any], name: str | None) -> Frame | Sketch:
    frames = {key: value for key, value in made.items() if isinstance(value, Frame | Sketch)}
    if name is not None:
        if name not in frames:
            raise _refusal(f"{path.name} makes no frame {name!r}. It makes {', '.join(frames) or 'none'}.")
        return frames[name]
    if len({id(frame) for frame in frames.values()}) != 1:
        several = f"several: {', '.join(frames)}. Say which one: --frame {next(iter(frames))}" if frames else "none"
        raise _refusal(f"{path.name} should make one frame, and makes {several}.")
    return next(iter(frames.values()))


def _refusal(what: str) -> DesignFileError:
    return DesignFileError(what, faults=(), lines=())
