"""In a notebook: every value shows itself, and sliders let you drag a design.

Values know by themselves how they are shown; `register` tells IPython of those that are plain tuples, findings and the
notches of a leg. ``import benchjoin`` calls it where IPython is running already, and loads nothing of this otherwise.

    from benchjoin.notebook import explore

    explore(bench, {"length": ("48 in", "72 in"), "bench.front.width": ("2 in", "5 in", "1/4 in")})
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from ..drawings.views.elevation import Seen
from ..findings import Finding
from ..frame.frame import Frame
from ..frame.sketch import Sketch
from ..layout.layout import Layout
from ..layout.on_face import Housing
from ..shop.assembly.assembly import Assembly
from .completing import add_to
from .html_pages import findings_page, notches_page
from .sliders import Explorer, Reach
from .steps import Steps
from .turning import Turning


def register(shell: Any = None) -> bool:
    """Tell IPython how many values show themselves and where addresses go; says whether there was an IPython.

    Parameters
    ----------
    shell : InteractiveShell, optional
        The running one if not given.
    """
    if shell is None:
        try:
            from IPython.core.getipython import get_ipython
        except ImportError:
            return False
        shell = get_ipython()
    if shell is None:
        return False
    pages = shell.display_formatter.formatters["text/html"]
    add_to(shell)
    if tuple not in pages.type_printers:
        pages.for_type(tuple, _many)
    return True


def _many(values: tuple[object, ...]) -> str | None:
    """Findings of a layout, or notches of a leg, which are tuples; other tuples show themselves as they always do."""
    findings = [value for value in values if isinstance(value, Finding)]
    notches = [value for value in values if isinstance(value, Housing)]
    if findings and len(findings) == len(values):
        return findings_page(findings)
    return notches_page(notches) if notches and len(notches) == len(values) else None


def look_round(layout: Layout, piece: int = 1) -> Turning:
    """The picture of a piece with two sliders that turn it: walk round it, and look from higher or lower.

    Raises
    ------
    AddressError
        If there is no such piece.
    MissingLibrary
        If ipywidgets is not installed.
    """
    return Turning(layout, piece)


def step_through(plan: Assembly) -> Steps:
    """A slider over the steps of an assembly, with the picture of each and what is done in it.

    Raises
    ------
    MissingLibrary
        If ipywidgets is not installed.
    """
    return Steps(plan)


def explore(frame: Frame | Sketch, ranges: Mapping[str, Reach] | None = None, *, seen: Seen = "front") -> Explorer:
    """Sliders for some lengths of a frame; elevation, marks, wood and findings follow while you drag.

    Parameters
    ----------
    frame : Frame or Sketch
    ranges : mapping of str to Range, (low, high) or (low, high, step), optional
        Lengths by address; what is open in a sketch if not given. The step is the tape's division if not given, or
        more where a slider would have too many.
    seen : str
        The side of the elevation: "front", "back", "left" or "right".

    Raises
    ------
    AddressError
        If an address reaches no length, or there is no such side.
    LengthError
        If an end of a range is no length.
    MissingLibrary
        If ipywidgets is not installed: pip install 'benchjoin[notebook]'.
    """
    if isinstance(frame, Sketch):
        return Explorer(frame.frame, frame.open if ranges is None else ranges, seen)
    return Explorer(frame, ranges or {}, seen)
