"""Write a file whole or not at all: first beside its place, then moved onto it in one step."""

from __future__ import annotations

import os
import secrets
from pathlib import Path

from ...errors import PaperError, typed


def place(path: object) -> Path:
    """Where a file is to be written.

    Raises
    ------
    PaperError
        If it is no path.
    """
    if not isinstance(path, str | os.PathLike) or "\0" in os.fspath(path):
        raise PaperError(f"{typed(path)} names no file. Write its name, such as 'bench.pdf'.")
    return Path(path)


def write_whole(path: Path, data: bytes) -> Path:
    """Write the bytes and return the path; if anything fails, what stood there before still stands there.

    Raises
    ------
    PaperError
        If the folder is not there, or the path is a folder.
    """
    if not path.parent.is_dir():
        raise PaperError(f"{path} cannot be written: there is no folder {path.parent}. Make it first.")
    if path.is_dir():
        raise PaperError(f"{path} cannot be written: it is a folder. Name a file in it.")
    part = path.with_name(f".{path.name}.{secrets.token_hex(4)}.part")
    try:
        with part.open("xb") as file:
            file.write(data)
        os.replace(part, path)
    finally:
        part.unlink(missing_ok=True)
    return path
