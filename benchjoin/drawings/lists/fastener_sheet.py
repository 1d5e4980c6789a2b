"""The fasteners in lists: what to buy and to drill with, then joint by joint, with what they hold."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import Unpack

import attrs

from ...drafting.sheets.figure import Figure
from ...drafting.sheets.sheet import Sheet
from ...layout.layout import Layout
from ...shop.fasteners.fasten import Fastening
from ...trade.cautions import cautions
from ..making.asked import Asked, OnPaper, ask
from ..making.flowing import Listed, flowing_sheets
from .table_figure import titled


def fastener_sheets(fastening: Fastening, /, **options: Unpack[OnPaper]) -> tuple[Sheet, ...]:
    """Sheets of a fastening: the schedule with drills and their stops, and the joints.

    Parameters
    ----------
    fastening : Fastening
    **options
        paper and house, as `Asked` has them.

    Raises
    ------
    PaperError
        If a row does not fit the paper.
    """
    asked = attrs.evolve(ask(fastening.layout, OnPaper, options), fastening=fastening)
    return flowing_sheets(asked, list(fastener_lists(fastening.layout, asked)))


def fastener_lists(layout: Layout, asked: Asked) -> Iterator[Listed]:
    """The fastening that goes with the sheets; nothing where there is none."""
    fastening = asked.fastening
    if fastening is None:
        return
    schedule = attrs.evolve(fastening.schedule(), title="Fasteners, drills and their stops")
    joints = attrs.evolve(fastening.table(), title="Fasteners, joint by joint")

    def figures(wide: float) -> Sequence[Figure]:
        return [*titled(schedule, wide, first=cautions("drill and driver")), *titled(joints, wide)]

    yield Listed(name="fasteners", title="Fasteners", figures=figures)
