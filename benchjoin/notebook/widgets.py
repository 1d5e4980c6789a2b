"""The library that makes sliders, or what to install."""

from __future__ import annotations

from typing import Any

from ..errors import MissingLibrary


def widgets() -> Any:
    """Ipywidgets.

    Raises
    ------
    MissingLibrary
        If it is not there.
    """
    try:
        import ipywidgets
    except ImportError as error:
        raise MissingLibrary("Sliders are made by ipywidgets. Install it: pip install ipywidgets") from error
    return ipywidgets
