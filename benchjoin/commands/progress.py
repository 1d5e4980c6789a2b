"""A progress bar for long work, on a terminal only: a file or a pipe gets nothing of it."""

from __future__ import annotations

from typing import TextIO

WIDTH = 24


class Progress:
    """Counts steps on one line that is wiped in the end."""

    def __init__(self, total: int, stream: TextIO) -> None:
        self._total = total
        self._stream = stream if stream.isatty() else None
        self._done = 0

    def __enter__(self) -> Progress:
        return self

    def step(self, what: str) -> None:
        """Say what is being made now."""
        if self._stream is not None:
            full = WIDTH * self._done // max(self._total, 1)
            bar = "=" * full + " " * (WIDTH - full)
            self._stream.write(f"\r\x1b[K[{bar}] {self._done + 1} of {self._total}  {what[:40]}")
            self._stream.flush()
        self._done += 1

    def __exit__(self, *_: object) -> None:
        if self._stream is not None:
            self._stream.write("\r\x1b[K")
            self._stream.flush()
