"""How far long work is, sheet by sheet, on a terminal only: a file or a pipe gets nothing of it."""

from __future__ import annotations

from typing import Any, TextIO


class Progress:
    """Counts sheets on one line that is wiped in the end."""

    def __init__(self, stream: TextIO) -> None:
        self._stream = stream
        self._bar: Any = None

    def __enter__(self) -> Progress:
        if self._stream.isatty():
            from tqdm import tqdm  # who writes to a file does not wait for it

            self._bar = tqdm(file=self._stream, leave=False, bar_format=SHOWN)
        return self

    def step(self, what: str) -> None:
        """Say what has been drawn now."""
        if self._bar is not None:
            self._bar.update()
            self._bar.set_description_str(what[:40])

    def __exit__(self, *_: object) -> None:
        if self._bar is not None:
            self._bar.close()


SHOWN = "{elapsed}  {n} drawn  {desc}"
