"""Watching a design file: its turn comes at once, and again each time that it is saved."""

from __future__ import annotations

import time
from collections.abc import Callable, Iterator
from pathlib import Path

OFTEN = 0.5
"""How often the file is looked at. [s]"""


def saved(path: Path, *, wait: Callable[[float], None] = time.sleep) -> Iterator[int]:
    """How often the file was saved so far, from nought on, for ever; a file that is gone for a moment is waited for."""
    seen, count = _stamp(path), 0
    while True:
        yield count
        while True:
            wait(OFTEN)
            now = _stamp(path)
            if now is not None and now != seen:
                break
        seen, count = now, count + 1


def _stamp(path: Path) -> tuple[int, int] | None:
    """When a file was changed, and its size; nothing while it is not there."""
    try:
        found = path.stat()
    except OSError:
        return None
    return found.st_mtime_ns, found.st_size
