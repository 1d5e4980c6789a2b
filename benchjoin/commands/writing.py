"""The shelf: a folder for the papers of a design, where those of another one are not written over unasked.

The folder keeps a list, `contents.toml`, of which file is of which design, and how its bytes add up. A design may be
written again over its own files; a file that is on no list, on another design's, or that somebody has changed since,
stays unless the maker says --over. While one writes, another waits. What a killed run left behind is its own: the list
knows the bytes of a file before they are there.
"""

from __future__ import annotations

import hashlib
import os
import time
import tomllib
from collections.abc import Callable, Iterable, Iterator
from contextlib import contextmanager, suppress
from pathlib import Path
from tempfile import TemporaryDirectory

import attrs

from ..drafting.writers.saving import write_whole
from ..errors import BenchjoinError
from ..frame.design.words import quoted

CONTENTS = "contents.toml"
FIRST = "# Written by benchjoin: which file is of which design."
LONGEST = 1_000_000
"""A longer list is none of ours. [bytes]"""
STALE = 60.0
"""A half-written file that is older than this is of a run that was killed. [s]"""


class Occupied(BenchjoinError):
    """Files are in the way that are not of this design. Field: files."""


@attrs.frozen
class Owner:
    """Whose a file is: the name of the design, its file, and the sum of its bytes, or two while it changes."""

    design: str
    source: str
    sums: tuple[str, ...]


class Shelf:
    """A folder, and the files that a design has in it."""

    def __init__(self, folder: Path, design: str, source: Path, *, over: bool = False) -> None:
        self._folder = folder
        self._design = design
        self._source = str(source.resolve())
        self._over = over
        self._owners: dict[str, Owner] = {}
        self.wrote: list[Path] = []

    @contextmanager
    def held(self) -> Iterator[None]:
        """Make the folder, and keep others from writing in it meanwhile.

        Raises
        ------
        Occupied
            If its list is not one of ours.
        """
        self._folder.mkdir(parents=True, exist_ok=True)
        with _locked(self._folder):
            self._owners = self._listed()
            yield

    def clear_for(self, names: Iterable[str]) -> None:
        """See that nothing of another design is in the way of any file.

        Raises
        ------
        Occupied
            If something is.
        """
        wanted = list(names)
        foreign = {name: why for name in wanted if (why := self._not_ours(name))}
        if foreign and not self._over:
            told = "\n".join(f"  {name}, {why}" for name, why in foreign.items())
            raise Occupied(
                f"{self._folder} holds files that are not of {self._design}:\n{told}\n"
                "Nothing is written. Name another folder with --out, or write over them with --over.",
                files=tuple(foreign),
            )
        for name in wanted:
            self._sweep(name)

    def put(self, name: str, write: Callable[[Path], object]) -> None:
        """Let a file be written, and enter it in the list, before it is in its place and after."""
        with TemporaryDirectory() as scratch:
            made = Path(scratch) / name
            write(made)
            data = made.read_bytes()
        before, now = self._owners.get(name), hashlib.sha256(data).hexdigest()
        sums = tuple(dict.fromkeys((*(before.sums if before else ()), now)))
        self._enter(name, sums)
        write_whole(self._folder / name, data)
        self._enter(name, (now,))
        self.wrote.append(self._folder / name)

    def _enter(self, name: str, sums: tuple[str, ...]) -> None:
        self._owners[name] = Owner(self._design, self._source, sums)
        lines = [FIRST, "[files]"]
        for file, own in sorted(self._owners.items()):
            words = f"design = {quoted(own.design)}, source = {quoted(own.source)}"
            lines.append(f"{quoted(file)} = {{ {words}, sums = [{', '.join(map(quoted, own.sums))}] }}")
        write_whole(self._folder / CONTENTS, "\n".join([*lines, ""]).encode())

    def _not_ours(self, name: str) -> str:
        """Why a file may not be written over; nothing where it may."""
        path, own = self._folder / name, self._owners.get(name)
        if not os.path.lexists(path):
            return ""
        if not path.is_file():
            return "which is no file"
        if own is None:
            return "which is on no list"
        if own.design != self._design:
            return f"of {own.design}"
        if own.source != self._source:
            return f"of {own.source}, which has the same name"
        return "" if hashlib.sha256(path.read_bytes()).hexdigest() in own.sums else "which has been changed since"

    def _sweep(self, name: str) -> None:
        """Take away what a killed run left half-written of a file."""
        for part in self._folder.glob(f".{name}.*.part"):
            with suppress(OSError):
                if time.time() - part.stat().st_mtime > STALE:
                    part.unlink()

    def _listed(self) -> dict[str, Owner]:
        """Which file is whose.

        Raises
        ------
        Occupied
            If something else has the name of the list, or it is broken.
        """
        path = self._folder / CONTENTS
        if not os.path.lexists(path):
            return {}
        told = f"Nothing is written. Take {path} away, or name another folder with --out."
        if not path.is_file() or path.stat().st_size > LONGEST:
            raise Occupied(f"{path} is no list of benchjoin's. {told}", files=(CONTENTS,))
        try:
            text = path.read_bytes().decode()
            if not text.startswith(FIRST):
                raise ValueError(text[:40])
            files = tomllib.loads(text)["files"]
            return {name: Owner(own["design"], own["source"], tuple(own["sums"])) for name, own in files.items()}
        except (ValueError, KeyError, TypeError, AttributeError, RecursionError):
            raise Occupied(f"{path} is no list of benchjoin's, or a broken one. {told}", files=(CONTENTS,)) from None


@contextmanager
def _locked(folder: Path) -> Iterator[None]:
    """Hold a folder against other runs; the system lets it go when this one ends, whatever ends it. Not on Windows."""
    try:
        import fcntl
    except ImportError:
        yield
        return
    own = os.open(folder, os.O_RDONLY)
    try:
        fcntl.flock(own, fcntl.LOCK_EX)
        yield
    finally:
        os.close(own)
