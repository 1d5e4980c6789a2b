"""Opening a design: a .toml that describes a frame, or a .py that makes one."""

from __future__ import annotations

import runpy
import sys
import traceback
from pathlib import Path
from typing import Any

from ..errors import DesignFileError
from ..frame.design.file import read_design
from ..frame.frame import Frame


def open_design(path: Path, name: str | None = None) -> Frame:
    """The frame of a design file; name says which, in a .py that makes several.

    Raises
    ------
    DesignFileError
        If the file cannot be read, or does not hold one frame.
    """
    if path.suffix.lower() == ".py":
        return _only(path, _made_by(path), name)
    if path.suffix.lower() != ".toml":
        raise _refusal(f"{path.name} is not a design: it ends neither in .toml nor in .py.")
    if name is not None:
        raise _refusal(f"{path.name} holds one frame. Leave out --frame.")
    return read_design(path)


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
        said = str(error) or type(error).__name__
        kind = "" if type(error).__module__.startswith("benchjoin") else f"{type(error).__name__}: "
        raise _refusal(f"{path.name}{line}: {kind}{said}") from error
    finally:
        sys.path.remove(str(path.parent))


def _only(path: Path, made: dict[str, Any], name: str | None) -> Frame:
    frames = {key: value for key, value in made.items() if isinstance(value, Frame)}
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
