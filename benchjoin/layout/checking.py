"""Checking: every check looks at one piece of each kind, and says what the maker must know.

A check is a function from a piece to findings; a new one is a function in checks/ and a name in the tuple here.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator

import attrs

from ..findings import Finding, in_order
from ..frame.identity import piece_of
from .batch import firsts
from .checks.against import held_by_the_wall, short_of_the_wall
from .checks.bins import bins
from .checks.carried import (
    cut_in_two,
    cut_round_legs,
    narrow_gaps,
    odd_supports,
    one_edge,
    unheld,
    wide_spans,
    wider_than_stock,
)
from .checks.clash import clashes
from .checks.clear_sides import clears_at_their_sides
from .checks.corner import covered_corners
from .checks.depth import deep_notches, leg_cut_in_two, notches_at_one_height
from .checks.finished_parts import finished_cuts, finished_lengths
from .checks.land import short_lands, slivers
from .checks.laps import laps_at_one_height
from .checks.lifted import lifted_out
from .checks.measured_lengths import measured_lengths, shorter_than_cuts, tops_to_trim
from .checks.outranked import drawn_otherwise, measured_for_all, said_for_nothing
from .checks.piece import Piece
from .checks.reach import above_every_leg, lost_rails, proud_of_the_leg, unheld_rails
from .checks.shaped import shaped
from .checks.uneven import uneven_lengths, uneven_rails
from .checks.uneven_legs import uneven_legs
from .layout import Layout

Check = Callable[[Piece], Iterator[Finding]]

CHECKS: tuple[Check, ...] = (
    lost_rails,
    above_every_leg,
    unheld_rails,
    unheld,
    one_edge,
    clashes,
    laps_at_one_height,
    leg_cut_in_two,
    cut_in_two,
    cut_round_legs,
    wider_than_stock,
    narrow_gaps,
    odd_supports,
    wide_spans,
    lifted_out,
    bins,
    shaped,
    proud_of_the_leg,
    deep_notches,
    notches_at_one_height,
    slivers,
    short_lands,
    covered_corners,
    held_by_the_wall,
    short_of_the_wall,
    finished_lengths,
    finished_cuts,
    clears_at_their_sides,
    tops_to_trim,
    measured_lengths,
    shorter_than_cuts,
    measured_for_all,
    drawn_otherwise,
    said_for_nothing,
    uneven_legs,
    uneven_lengths,
    uneven_rails,
)


def check(layout: Layout) -> tuple[Finding, ...]:
    """Findings of all checks, errors first; a piece that is like an earlier one is not looked at again."""
    like = firsts(layout.frame)
    kinds = {first: tuple(n for n, own in like.items() if own == first) for first in like.values()}
    if len(kinds) == 1:
        return in_order(_found(_piece(layout, 1, named=False)))
    return in_order(
        attrs.evolve(finding, pieces=alike)
        for number, alike in kinds.items()
        for finding in _found(_piece(layout, number, named=True))
    )


def _found(piece: Piece) -> Iterator[Finding]:
    for look in CHECKS:
        yield from look(piece)


def _piece(layout: Layout, number: int, *, named: bool) -> Piece:
    return Piece(
        frame=layout.frame,
        label=f"{number}/" if named else "",
        parts={part.identity: part for part in layout.piece(number)},
        joints=layout.joints_of(number),
        wanted=layout.wanted,
        number=number,
        lost={piece_of(name)[1]: length for name, length in layout.lost.items() if piece_of(name)[0] == number},
    )
