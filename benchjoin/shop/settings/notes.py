"""Notes under a table of settings: how often everything is set and how long it takes, and how each way is cut."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from ...phrases import counted, listed
from ...readings import Tape
from ...trade.order_of_work import step
from .minutes import Minutes
from .minutes import told as in_figures
from .setting import Changes, Setting
from .shop import Shop
from .ways.operation import said


def notes(settings: Sequence[Setting], changes: Changes, tape: Tape, shop: Shop) -> Iterator[str]:
    """What stands under a table of settings."""
    if not settings:
        yield "No notch or lap to cut."
        return
    yield _count(settings, changes)
    yield _costs(settings, shop.minutes)
    yield (
        f"{step('notches')}. Before the first cut of a notch lay its own rail between its lines, and tick. The lines "
        f"on the wood hold: where one is off its setting by more than half of {tape.name}, stop and find out why."
    )
    yield from _read_alike(settings, tape)
    if any(o.notch.into for setting in settings for o in setting.operations):
        yield (
            "Right across: the notch runs out into another one of the same part, which takes the wood beyond it as "
            "well. Which of the two is cut first does not matter."
        )
    yield from (WAY_NOTES[way] for way in dict.fromkeys(s.tool.way for s in settings))
    heads = {s.tool.width for s in settings if s.tool.way == "dado head"}
    if heads:
        overlap = min(max(shop.overlap, tape.division), min(heads) / 2)
        yield (
            f"Passes lie over each other by {said(overlap, tape)} or more. If the test cut measures wider than its "
            "line says, move every far stop nearer by the difference."
        )
    if any(s.lines and s.tool.way == "dado head" for s in settings):
        yield (
            "Line: no stop stands there. Strike all from one master and cut to the line, the work held to the gauge."
        )


def _count(settings: Sequence[Setting], changes: Changes) -> str:
    stops = f"{changes.stops} position{'s' * (changes.stops != 1)} of stop or guides"
    takes = in_figures(sum(setting.set_up + setting.cutting for setting in settings))
    best = "No other head or bit and no other order takes less" if changes.exact else "Not every choice was tried"
    return (
        f"To set: {counted(changes.tools, 'tool')}, {counted(changes.heights, 'height')}, {stops}. "
        f"{counted(sum(setting.cuts for setting in settings), 'cut')}: {takes} minutes. {best}."
    )


def _costs(settings: Sequence[Setting], minutes: Minutes) -> str:
    """What the minutes are made of, as far as it is needed here."""
    ways = {setting.tool.way for setting in settings}
    by_line = any(setting.lines and setting.tool.way == "dado head" for setting in settings)
    told = (
        (minutes.head, "for a head", "dado head" in ways),
        (minutes.bit, "for a bit", "router" in ways),
        (minutes.height, "for a height, tested", True),
        (minutes.stop, "for a stop", "dado head" in ways),
        (minutes.stop, "for guides", "router" in ways),
        (minutes.turn, "to lay a part", True),
        (minutes.line, "to a line", by_line),
        (minutes.cut, "for a cut", ways != {"saw and chisel"}),
        (minutes.kerf, "for a kerf by hand", "saw and chisel" in ways),
    )
    each = ", ".join(f"{in_figures(size)} {what}" for size, what, needed in told if needed)
    return f"Minutes ({minutes.source}; put in yours): {each}."


def _read_alike(settings: Sequence[Setting], tape: Tape) -> Iterator[str]:
    """Stops at one height that read alike and are not one place."""
    found: dict[tuple[str, ...], list[Setting]] = {}
    for setting in settings:
        if setting.stop is not None or setting.other is not None:
            key = (setting.tool.told(tape), tape.read(setting.height), setting.reads(tape))
            found.setdefault(key, []).append(setting)
    for (*_, told), alike in found.items():
        if len(alike) > 1:
            numbers = listed([str(setting.number) for setting in alike])
            yield f"Settings {numbers} read alike, {told}, and are not the same: set each to its own line on the wood."


WAY_NOTES: Mapping[str, str] = {
    "dado head": "Dado head: notched face down, lines carried down the edge that you see, stop measured to the near "
    "side of the head. Near shoulder: against the stop, then slide away pass by pass, short of the far line. Far "
    "shoulder: hard against it; where the notch runs out, lift the stop and clear.",
    "router": "Router: guides are measured from the end to the edge that the base runs on; less than zero lies beyond "
    "the end, where a packing piece of the same thickness carries the guide. Clear between both guides; with one "
    "guide, put spacers between guide and base to go outwards.",
    "saw and chisel": "Saw and chisel: gauge the floor on both edges, saw on the waste side of the lines down to the "
    "gauge line, a few kerfs between, and chop the slices out from both edges to the middle.",
}
