"""A progress bar for long work, on a terminal only: a file or a pipe gets nothing of it."""

from __future__ import annotations

from typing import Any, TextIO


class Progress:
    """Counts steps on one line that is wiped in the end."""

    def __init__(self, total: int, stream: TextIO) -> None:
        self._total = total
        self._stream = stream
        self._bar: Any = None

    def __enter__(self) -> Progress:
        if self._stream.isatty():
            from tqdm import tqdm  # who writes to a file does not wait for it

            self._bar = tqdm(total=self._total, file=self._stream, leave=False, unit="file", bar_format=SHOWN)
        return self

    def step(self, what: str) -> None:
        """Say what is being made now."""
        if self._bar is not None:
            self._bar.update()
            self._bar.set_description_str(what[:40])

    def __exit__(self, *_: object) -> None:
        if self._bar is not None:
            self._bar.close()


SHOWN = "{bar:24} {n} of {total}  {desc}"
