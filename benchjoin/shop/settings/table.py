"""The settings as a table: one line a setting, a test cut before the first real one of each head and height.

A line says which tool, how high, where the stop stands, which shoulders of which parts, how many cuts and how many
minutes, and has two boxes: one for the rail that was laid between its lines, one for the cuts done. The minutes of a
test cut are those of setting head and height. Test cuts are not counted: the figures under Cuts add up to all cuts of
the settings, those under Minutes to all minutes.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from ...lengths import INCH
from ...phrases import listed
from ...readings import Tape
from ...tables import Table
from ...trade.saws import SHIM_MOST
from ..called import several
from ..marks import marks
from .minutes import told as in_figures
from .notching import Notching
from .notes import notes
from .setting import Changes, Setting
from .shop import Shop
from .sizing import TICK
from .ways.operation import Edge, Operation, Tool, said

COLUMNS = ("No.", "Tool", "Height", "Stop", "Shoulders and parts", "Cuts", "Minutes", "Rail laid", "Done")
ALIGN = "rlrllrrcc"
SHOULDER: Mapping[Edge, str] = {
    "near": "near shoulder",
    "far": "far shoulder",
    "both": "both shoulders",
    "through": "right through",
}


def setting_table(name: str, settings: Sequence[Setting], changes: Changes, tape: Tape, shop: Shop) -> Table:
    """The settings of a batch; lengths are readings of the tape."""
    rows: list[tuple[str, ...]] = []
    for setting in settings:
        if setting.new_tool or setting.new_height:
            rows.append(_test(setting, tape))
        rows.append(_row(setting, tape))
    columns = tuple(f"{word} ({tape.unit})" if word in ("Height", "Stop") else word for word in COLUMNS)
    under = tuple(notes(settings, changes, tape, shop))
    return Table(f"Settings: {name}", columns, tuple(rows), under, ALIGN)


def _test(setting: Setting, tape: Tape) -> tuple[str, ...]:
    """The test cut after a head or a height was set, in an offcut."""
    tool, height = setting.tool, tape.read(setting.height)
    minutes = in_figures(setting.set_up)
    if tool.way == "saw and chisel":
        told = f"Set the gauge to {height} and try it on an offcut."
    elif setting.new_tool:
        told = f"{_stacked(tool, tape)}Test cut in an offcut: {said(tool.width, tape)} wide, {height} deep?"
    else:
        told = f"Test cut in an offcut: {height} deep?"
    return ("", tool.told(tape), height, "", told, "", minutes, "", TICK)


def _stacked(tool: Tool, tape: Tape) -> str:
    """What a head is stacked from: 'Stack the outside pair, 4 × 1/8 in and 1 × 1/16 in. '"""
    if tool.stack is None:
        return ""
    sizes = [*tool.stack.chippers, *tool.stack.shims]
    parts = ["the outside pair", *(f"{sizes.count(size)} × {_thin(size, tape)}" for size in dict.fromkeys(sizes))]
    return f"Stack {listed(parts)}{' alone' if len(parts) == 1 else ''}. "


def _thin(size: float, tape: Tape) -> str:
    """A chipper or a shim; shims go by thousandths of an inch or hundredths of a millimetre."""
    if size > 2 * SHIM_MOST:
        return said(size, tape)
    return f"{size / INCH:.3f} in" if tape.unit == "in" else f"{size:.2f} mm"


def _row(setting: Setting, tape: Tape) -> tuple[str, ...]:
    return (
        str(setting.number),
        setting.tool.told(tape),
        tape.read(setting.height),
        _stop(setting, tape),
        "; ".join(_groups(setting.operations, tape)),
        str(setting.cuts),
        in_figures(setting.cutting),
        TICK,
        TICK,
    )


def _stop(setting: Setting, tape: Tape) -> str:
    """Where the stop or the guides stand, or the lines that are followed."""
    if setting.lines:
        return ("line " if len(setting.lines) == 1 else "lines ") + " and ".join(map(tape.read, setting.lines))
    told, by_guides = setting.reads(tape), setting.tool.way == "router"
    if not told:
        return "no guide" if by_guides else "no stop"
    return f"{'guides ' if by_guides else ''}{told}{'' if setting.new_stop else ', stands'}"


def _groups(operations: Sequence[Operation], tape: Tape) -> Iterator[str]:
    """What is cut at a setting: 'bench near shoulder: A1–A4, B1–B4, 2 passes each'.

    Levels at which the same is done to the same parts, or to one part each, are told together.
    """
    found: dict[tuple[str, str, str], list[str]] = {}
    for o in operations:
        found.setdefault((o.notch.level, SHOULDER[o.edge], _how(o, tape)), []).append(o.notch.part.mark)
    same: dict[tuple[str, str], list[tuple[str, list[str]]]] = {}
    for (level, shoulder, how), parts in found.items():
        same.setdefault((shoulder, how), []).append((level, parts))
    before = ""
    for (shoulder, how), own in same.items():
        parts = sorted({mark for _, marked in own for mark in marked})
        told = f"{several([level for level, _ in own])} {shoulder}: "
        yield f"{told if told != before else ''}{marks(parts)}{how}"
        before = told


def _how(o: Operation, tape: Tape) -> str:
    """Face and end where they are not the usual, passes, kerfs and steps where there are several."""
    notch = o.notch
    word = "kerfs" if o.tool.way == "saw and chisel" else "passes"
    told = (
        notch.up if len(notch.part.faces) > 1 else "",
        "" if notch.end == "foot" else f"{notch.end} to the stop",
        f"{o.passes} {word} each" + (f" in {o.steps} steps of depth" if o.steps > 1 else "") if o.passes > 1 else "",
        f"on the way to {tape.read(notch.depth)}" if o.rough else "",
        _stopped(notch, tape),
    )
    return "".join(f", {words}" for words in told if words)


def _stopped(notch: Notching, tape: Tape) -> str:
    """How a notch ends across its face."""
    if notch.cut.through:
        return f"right through, {tape.read(notch.cut.high - notch.cut.low)} in from the edge"
    return "right across" if notch.into else "" if notch.across else "stopped: square its corners with a chisel"
