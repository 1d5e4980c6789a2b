"""Borrowed tools: libraries that need not be installed, and are loaded when something is first made with them."""

from __future__ import annotations

from importlib import import_module
from typing import Any

from .errors import MissingLibrary


def borrowed(tool: str, made: str) -> Any:
    """A library, or a module of one, that something is made with.

    Raises
    ------
    MissingLibrary
        If it is not installed.

    Examples
    --------
    >>> borrowed("saw.table", "Notches")
    Traceback (most recent call last):
    benchjoin.errors.MissingLibrary: Notches are made by saw. Install it: pip install saw
    """
    library = tool.partition(".")[0]
    try:
        return import_module(tool)
    except ImportError as error:
        raise MissingLibrary(f"{made} are made by {library}. Install it: pip install {library}") from error
