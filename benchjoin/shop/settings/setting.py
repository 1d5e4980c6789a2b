"""A setting: one position of stop and height with all the cuts that are made there, and how long all of it takes."""

from __future__ import annotations

import attrs

from ...readings import Tape
from .minutes import Minutes
from .ways.operation import Operation, Tool


@attrs.frozen(kw_only=True)
class Setting:
    """One position of the machine: tool, height, stop (or guides, or lines), and the cuts made at it. [mm]

    new_tool, new_height and new_stop say what is changed before it; costs are the minutes of the shop.
    """

    number: int
    operations: tuple[Operation, ...]
    costs: Minutes
    new_tool: bool = False
    new_height: bool = False
    new_stop: bool = False

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

    def reads(self, tape: Tape) -> str:
        """Figures of the stop, or of both guides."""
        return " and ".join(tape.read(at) for at in (self.stop, self.other) if at is not None)

    @property
    def lines(self) -> tuple[float, ...]:
        """Where no stop stands: the lines that it is cut to, from the end of the part. [mm]"""
        return self.operations[0].lines

    @property
    def cuts(self) -> int:
        """All passes at every depth of this setting, over the batch."""
        return sum(operation.cuts for operation in self.operations)

    @property
    def set_up(self) -> float:
        """To change the tool and to set the height, where that is new. [min]"""
        tool = tool_change(self.tool, self.costs) if self.new_tool else 0.0
        return tool + (self.costs.height if self.new_height else 0.0)

    @property
    def cutting(self) -> float:
        """To set the stop, where that is new, and to make the cuts. [min]"""
        stop = self.costs.stop if self.new_stop else 0.0
        return stop + sum(cutting(operation, self.costs) for operation in self.operations)


def tool_change(tool: Tool, minutes: Minutes) -> float:
    """To change to a tool; a hand saw is at hand. [min]"""
    return {"dado head": minutes.head, "router": minutes.bit, "saw and chisel": 0.0}[tool.way]


def cutting(operation: Operation, minutes: Minutes) -> float:
    """To lay one part and make its cuts, once the machine is set. [min]"""
    by_hand = operation.tool.way == "saw and chisel"
    laid = minutes.line if operation.lines and not by_hand else minutes.turn
    return laid + operation.cuts * (minutes.kerf if by_hand else minutes.cut)


@attrs.frozen(kw_only=True)
class Changes:
    """How often heads (and bits), heights and stops are set; least are the places of the stop with these tools.

    No order sets the stop less often than least. exact is False where not every choice of tools, or not every order,
    was tried; then another may take less time.
    """

    tools: int = 0
    heights: int = 0
    stops: int = 0
    least: int = 0
    exact: bool = True
