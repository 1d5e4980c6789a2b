"""A blank: a member as a plain piece of wood where it stands, before any joint takes wood from it."""

from __future__ import annotations

from collections.abc import Mapping

import attrs

from ..frame.faces import WAYS
from ..frame.slots import Slot
from ..outlines import Profile
from ..solids import Box, Vector


@attrs.frozen(kw_only=True, eq=False, repr=False, slots=False)
class Blank:
    """A member before joints: its slot, its box in the world, and its shaped edges by face.

    Of a guest, flush is the depth that lets it in flush with its host, spare how much wider its notches are cut than
    it is itself. [mm]
    """

    slot: Slot
    box: Box
    shaped: Mapping[str, Profile] = attrs.field(factory=dict, hash=False)
    flush: float = 0.0
    spare: float = 0.0

    @property
    def name(self) -> str:
        """Its identity."""
        return self.slot.name

    @property
    def axis(self) -> int:
        """The axis of the world that it runs along."""
        return self.slot.axes[0]

    @property
    def along(self) -> Vector:
        """The way it runs from its datum end."""
        return WAYS[self.axis]

    @property
    def length(self) -> float:
        """Length along the way it runs; below nothing where there is no room for it. [mm]"""
        return self.box.high[self.axis] - self.box.low[self.axis]
