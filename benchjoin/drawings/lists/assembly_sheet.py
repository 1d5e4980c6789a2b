"""Putting it together on paper: a picture of each step, new parts strong and set off, and the lists that go with it."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from contextlib import suppress
from typing import Unpack

import attrs
import shapely

from ...drafting.lettering import wrap
from ...drafting.primitives import Drawing, Line, Primitive, Text, bounds, shift
from ...drafting.sheets.figure import Figure
from ...drafting.sheets.ruled import PITCH, TEXT
from ...drafting.sheets.sheet import Sheet
from ...errors import LumberError
from ...layout.layout import Layout
from ...phrases import listed
from ...shop.assembly.assembly import Assembly
from ...shop.assembly.blocking import DIRECTIONS
from ...shop.assembly.steps import Step, minded, words_of
from ...solids import Vector, vector
from ...tables import Table
from ...trade.cautions import cautions
from ..making.asked import Asked, OnPaper, ask
from ..making.flowing import Listed, flowing_sheets
from ..views.isometric import picture
from ..views.strokes import strokes
from .table_figure import BOX, TITLE, titled

HIGH = 45.0
"""Room for the picture of a step. [mm]"""
WIDE = 0.55
"""Its share of the width of the page."""
OFF = 0.22
"""How far new parts are set off, of the mean size of what is shown."""
LARGEST = 0.2
"""A picture is no larger than a fifth."""


def assembly_sheets(assembly: Assembly, /, **options: Unpack[OnPaper]) -> tuple[Sheet, ...]:
    """Sheets of an assembly: its steps with their pictures, what is square, how it is carried, mended and finished.

    Parameters
    ----------
    assembly : Assembly
    **options
        paper and house, as `Asked` has them.

    Raises
    ------
    PaperError
        If a row does not fit the paper.
    """
    asked = attrs.evolve(ask(assembly.layout, OnPaper, options), assembly=assembly)
    return flowing_sheets(asked, list(assembly_lists(assembly.layout, asked)))


def assembly_lists(layout: Layout, asked: Asked) -> Iterator[Listed]:
    """The assembly that goes with the sheets; nothing where there is none."""
    plan = asked.assembly
    if plan is None:
        return

    def figures(wide: float) -> Sequence[Figure]:
        pictures = [step_figure(plan, step, wide) for step in plan.steps]
        return [*pictures, *(own for table in _tables(plan) for own in _titled(table, wide))]

    yield Listed(name="assembly", title="Putting it together", figures=figures)


def _tables(plan: Assembly) -> Iterator[Table]:
    yield attrs.evolve(plan.square(), title="Is it square?")
    with suppress(LumberError):  # no species, no weights; the list of weights says so
        yield attrs.evolve(plan.carrying(), title="Carrying")
    yield attrs.evolve(plan.mending(), title="Mending")
    yield attrs.evolve(plan.finish_schedule(), title="Finish")
    yield attrs.evolve(plan.hours().days(), title="Days")


def _titled(table: Table, wide: float) -> list[Figure]:
    written = (4, 5) if table.title == "Is it square?" else ()
    return titled(table, wide, written=written)


def step_figure(plan: Assembly, step: Step, wide: float) -> Figure:
    """One step: its box to tick and its title, the picture, and what is done beside it."""
    name = f"{step.number}. {step.title[0].upper()}{step.title[1:]}"
    title = wrap(name, TITLE, wide - BOX - 2.0, bold=True)
    drawing: list[Primitive] = [_box(0.0, -BOX)]
    drawing += [Text((BOX + 2.0, -BOX - 5.0 * n), line, TITLE, bold=True) for n, line in enumerate(title)]
    top = -BOX - 5.0 * (len(title) - 1) - 3.0
    seen = _fitted(plan, step, WIDE * wide, HIGH)
    left, low, right, high = bounds(seen)
    drawing += shift(seen, (WIDE * wide - (right - left)) / 2 - left, top - high)
    words = [line for said in _words(plan, step) for line in wrap(f"– {said}", TEXT, (1 - WIDE) * wide - 6.0)]
    start = WIDE * wide + 6.0
    drawing += [Text((start, top - TEXT - PITCH * n), line, TEXT) for n, line in enumerate(words)]
    foot = top - max(high - low, PITCH * len(words)) - 2.0
    shows = tuple(plan.layout.part(part).name for part in step.new)
    return Figure(name=name, drawing=drawing, shows=shows, breaks=(0.0, foot))


def _box(x: float, y: float) -> Line:
    return Line(((x, y), (x + BOX, y), (x + BOX, y + BOX), (x, y + BOX)), "thin", closed=True)


def _words(plan: Assembly, step: Step) -> Iterator[str]:
    """What is read beside a picture."""
    marks = dict.fromkeys(plan.layout.part(name).mark or name for name in step.new)
    yield f"Parts {', '.join(marks)}" + (f", {step.way}." if step.way else ".")
    tape = plan.layout.frame.tape
    yield from words_of(step, tape)
    if step.openings:
        clamps = "; ".join(f"{count} that open {tape.read(wide)}" for wide, count in step.openings)
        yield f"Clamps: {clamps}."
    if minded(step):
        yield f"Before it closes: {minded(step)}."
    for fixing, behind in step.unreached:
        yield f"No driver reaches the screws of {fixing.guest}: {listed(behind)} is before them."
    if step.number == 1:
        yield "Dry first: try every notch with its own rail, by their marks."
        yield from cautions("drill and driver")[-2:]


def _fitted(plan: Assembly, step: Step, wide: float, high: float) -> Drawing:
    """The picture of a step, as large as its room allows."""
    parts = {part.identity: part for part in plan.layout.piece(plan.piece)}
    there = [parts[name] for name in step.present]
    new = [parts[name] for name in step.new]
    by = _off(plan, step)
    shown = [*there, *(part.moved(by) for part in new)]
    seen = picture(shown)
    names = {part.name for part in new}
    own = [shapely.boundary(face.region) for face in seen.faces if face.part in names]
    strong = shapely.line_merge(shapely.union_all(own)) if own else seen.lines
    light = seen.lines.difference(strong.buffer(0.01))
    left, low, right, top = seen.lines.bounds
    scale = min(wide / (right - left), high / (top - low), LARGEST)
    return (*strokes(light, "thin", scale), *strokes(strong, "visible", scale))


def _off(plan: Assembly, step: Step) -> Vector:
    """How far new parts stand off their places, the way that they come from."""
    way = step.moves[0].way
    if not way:
        return (0.0, 0.0, 0.0)
    shown = [plan.layout.part(name).blank for name in (*step.present, *step.new)]
    mean = sum(max(box.high[n] for box in shown) - min(box.low[n] for box in shown) for n in range(3)) / 3
    return vector(OFF * mean * own for own in DIRECTIONS[way])
