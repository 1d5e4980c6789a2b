"""A setting: one position of stop and height with all the cuts that are made there, and a count of what was changed."""

from __future__ import annotations

from collections.abc import Sequence

import attrs

from .ways.operation import Operation, Tool


@attrs.frozen(kw_only=True)
class Setting:
    """One position of the machine: tool, height, stop (or guides, or lines), and the cuts made at it. [mm]

    new_tool, new_height and new_stop say what is changed before it.
    """

    number: int
    operations: tuple[Operation, ...]
    new_tool: bool = False
    new_height: bool = False
    new_stop: bool = False

    @classmethod
    def of(cls, operations: Sequence[Operation], *, number: int, new_height: bool) -> Setting:
        """The setting at which some operations are done."""
        return cls(number=number, operations=tuple(operations), new_height=new_height)

    @property
    def tool(self) -> Tool:
        """What cuts."""
        return self.operations[0].tool

    @property
    def height(self) -> float:
        """Height of the head over the table, depth of the bit, or the gauge. [mm]"""
        return self.operations[0].height

    @property
    def stop(self) -> float | None:
        """From the stop to the near side of the head, or from the end of the part to the near guide. [mm]"""
        return self.operations[0].stop

    @property
    def other(self) -> float | None:
        """From the end of the part to the far guide. [mm]"""
        return self.operations[0].other

    @property
    def lines(self) -> tuple[float, ...]:
        """Where no stop stands: the lines that it is cut to, from the end of the part. [mm]"""
        return self.operations[0].lines

    @property
    def cuts(self) -> int:
        """All passes at this setting, over the batch."""
        return sum(operation.passes for operation in self.operations)


@attrs.frozen(kw_only=True)
class Changes:
    """How often heads (and bits), heights and stops are set, and the least that any order of these cuts needs.

    exact is False where there were too many heights to try every order; then stops lies between least and itself.
    """

    tools: int = 0
    heights: int = 0
    stops: int = 0
    least: int = 0
    exact: bool = True

    def plus(self, tool: Tool, heights: int, stops: int, least: int, *, exact: bool) -> Changes:
        """The count with the work of one more tool."""
        return Changes(
            tools=self.tools + 1,
            heights=self.heights + heights,
            stops=self.stops + stops,
            least=self.least + (stops if exact else least),
            exact=self.exact and exact,
        )
