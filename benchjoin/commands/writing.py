"""The shelf: a folder for the papers of a design, where those of another one are not written over unasked.

The folder keeps a list, `contents.toml`, of which file is of which design. A design may be written again over its own
files; a file that is on no list, or on another design's, stays unless the maker says --over.
"""

from __future__ import annotations

import tomllib
from collections.abc import Callable, Iterable
from pathlib import Path

from ..drafting.writers.saving import write_whole
from ..errors import BenchjoinError
from ..frame.design.words import quoted

CONTENTS = "contents.toml"


class Occupied(BenchjoinError):
    """Files are in the way that are not of this design. Field: files."""


class Shelf:
    """A folder, and the files that a design has in it."""

    def __init__(self, folder: Path, design: str, *, over: bool = False) -> None:
        self._folder = folder
        self._design = design
        self._over = over
        self._owners = _read(folder / CONTENTS)
        self.wrote: list[Path] = []

    def clear_for(self, names: Iterable[str]) -> None:
        """Make the folder, and see that nothing of another design is in the way of any file.

        Raises
        ------
        Occupied
            If something is.
        """
        foreign = {
            name: self._owners.get(name)
            for name in names
            if (self._folder / name).exists() and self._owners.get(name) != self._design
        }
        if foreign and not self._over:
            told = "\n".join(f"  {name}, {f'of {of}' if of else 'which is on no list'}" for name, of in foreign.items())
            raise Occupied(
                f"{self._folder} holds files that are not of {self._design}:\n{told}\n"
                "Nothing is written. Name another folder with --out, or write over them with --over.",
                files=tuple(foreign),
            )
        self._folder.mkdir(parents=True, exist_ok=True)

    def put(self, name: str, write: Callable[[Path], object]) -> None:
        """Let a file be written, and enter it in the list."""
        path = self._folder / name
        write(path)
        self._owners[name] = self._design
        lines = [f"{quoted(file)} = {quoted(of)}" for file, of in sorted(self._owners.items())]
        write_whole(self._folder / CONTENTS, "\n".join(["[files]", *lines, ""]).encode())
        self.wrote.append(path)


def _read(path: Path) -> dict[str, str]:
    """Which file is of which design; a list that does not read counts for nothing."""
    try:
        files = tomllib.loads(path.read_text(encoding="utf-8")).get("files", {})
    except (OSError, ValueError):
        return {}
    return {name: of for name, of in files.items() if isinstance(of, str)} if isinstance(files, dict) else {}
