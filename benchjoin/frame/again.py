"""The next one: another bench after the same design, in another size, from fresh wood.

next_year = again(bench, {"length": "72 in"}, name="Honey-house bench, long")
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

import attrs

from .address import alter
from .frame import Frame


def again(frame: Frame, changes: Mapping[str, Any] | None = None, *, name: str | None = None) -> Frame:
    """A design to begin with anew: the description and its milled sizes stay, what belonged to the old wood goes.

    Parameters
    ----------
    frame : Frame
        The design as it was built. What was measured on its parts and which of them were finished is left behind.
    changes : mapping of str to value, optional
        New values by address, as for `alter`.
    name : str, optional
        What the next one is called; as before if not given.

    Raises
    ------
    AddressError
        If it is no frame, or an address reaches nothing.
    DescriptionError
        If the new frame has faults.

    Examples
    --------
    ``again(bench, {"length": "72 in", "quantity": 2})``
    """
    altered = alter(frame, {})  # refuses what is no frame
    fresh = attrs.evolve(altered, measured={}, finished={}, name=frame.name if name is None else name)
    return alter(fresh, changes or {})
