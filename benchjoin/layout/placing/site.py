"""The site: what is known of one piece while its members are placed, one after the other."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

import attrs

from ...frame.frame import Frame
from ...runs import Array
from ..blank import Blank
from .layers import Rise
from .sizes import Pick, RailSizes


@attrs.frozen(eq=False, repr=False, slots=False)
class Over:
    """Length and depth over the legs in every piece, each of shape (quantity,). [mm]"""

    length: Array
    depth: Array


Lines = Sequence[tuple[float, float]]
"""Low and high edge of each line of a run. [mm]"""


@attrs.frozen(kw_only=True, eq=False, repr=False, slots=False)
class Site:
    """One piece as it is put together. [mm]

    over is its length and depth over the legs, pairs the low and high edge of each leg pair along the length; rises
    bottom and top of every rail, of what lies on rails, and of legs that are as high as one; pick takes the piece's
    number out of an array over the pieces; placed holds what stands already, lines where each line of a run lies across
    it, by level and key of the run.
    """

    frame: Frame
    pick: Pick
    over: tuple[float, float]
    pairs: Mapping[str, tuple[Array, Array]]
    rises: Mapping[str, Rise]
    sizes: Mapping[str, RailSizes]
    placed: dict[str, Blank] = attrs.field(factory=dict)
    lines: dict[tuple[str, str], Lines] = attrs.field(factory=dict)

    def hosts(self, names: tuple[str, ...]) -> list[Blank]:
        """What stands already under some names."""
        return [self.placed[name] for name in names]
