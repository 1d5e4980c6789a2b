"""The door of all that is asked of a layout: whoever hands in a frame, or something else, hears what is meant."""

from __future__ import annotations

from collections.abc import Callable
from functools import wraps
from typing import ParamSpec, TypeVar

from ..errors import NotLaidOut, typed
from ..frame.frame import Frame
from .layout import Layout

P = ParamSpec("P")
R = TypeVar("R")


def of_a_layout(asked: Callable[P, R]) -> Callable[P, R]:
    """A function whose first argument must be a layout.

    Raises
    ------
    NotLaidOut
        When it is called with anything else.
    """
    name = asked.__name__

    @wraps(asked)
    def with_door(*args: P.args, **options: P.kwargs) -> R:
        given = args[0] if args else options.get("layout")
        if (args or "layout" in options) and not isinstance(given, Layout):
            if isinstance(given, Frame):
                said = f'Frame "{given.name}" is a description, and {name} asks for its layout'
            else:
                said = f"{name} was given {typed(given)}, and asks for a layout"
            raise NotLaidOut(f"{said}. Write layout = lay_out(frame), then {name}(layout, …).", name=name)
        return asked(*args, **options)

    return with_door
