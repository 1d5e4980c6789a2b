"""Random frames with tops, trays, ledgers, bins and shaped edges: `from furnished import furnished, any_frame`.

A frame of legs and rails is furnished level by level; what a description refuses is left out of it.
"""

from __future__ import annotations

import attrs
from boards_at_random import Tape, sometimes, stocks
from designs import DESIGNS
from hypothesis import strategies as st
from row_strategies import single_rows
from strategies import frames
from topped import CURVES, DRIP, LIDS, TRAYS

from benchjoin import Arc, Bin, Boards, Clear, Ledger, Level, Ogee, Panel, Points, Scallop, Top, Tray
from benchjoin.errors import BenchjoinError
from benchjoin.frame.ledger import ON

WHOLE = [*DESIGNS.values(), CURVES, DRIP, LIDS, TRAYS]


def shapes(tape):
    """Shaped edges of every kind, shallow enough for most rails."""
    deep = tape.counts(3, 40).map(tape.write)
    flat = {"flat": 12, "tool": 6}
    points = st.tuples(st.floats(0.05, 0.3), tape.counts(2, 30), st.floats(0.32, 0.5), tape.counts(2, 30))
    return st.one_of(
        deep.map(lambda rise: Arc(rise, **flat)),
        st.tuples(st.integers(1, 5), deep).map(lambda of: Scallop(*of, **flat)),
        st.tuples(tape.counts(2, 20), tape.counts(30, 90)).map(lambda of: Ogee(*map(tape.write, of), **flat)),
        points.map(lambda p: Points([(p[0], tape.write(p[1])), (p[2], tape.write(p[3]))], **flat)),
    )


def tried(make):
    """What is made, or nothing where a description refuses it."""
    try:
        return make()
    except BenchjoinError:
        return None


@st.composite
def lying(draw, tape):
    """Boards of a section or a tray."""
    return Boards(
        draw(stocks(tape, "slat", (12, 25), (30, 70))),
        run=draw(st.sampled_from(["across", "across", "along"])),
        gap=tape.write(draw(tape.counts(2, 20))),
        remainder=draw(st.sampled_from(["gaps", "margins", "rip"])),
    )


@st.composite
def sections(draw, tape):
    kind = draw(st.sampled_from(["boards", "panel", "panel", "clear"]))
    width = draw(sometimes(tape.counts(90, 220).map(tape.write), otherwise=None))
    if kind == "clear":
        return Clear(width)
    boards = draw(lying(tape))
    if kind == "boards":
        return attrs.evolve(boards, width=width)
    return Panel(
        width,
        boards=boards,
        cleats=draw(sometimes(stocks(tape, "cleat", (12, 20), (25, 45)), otherwise=None, one_in=2)),
        grip=draw(sometimes(st.just(tape.write(draw(tape.counts(80, 110)))), otherwise=None)),
    )


@st.composite
def tops(draw, tape):
    reach = {side: tape.write(draw(sometimes(tape.counts(-15, 30), otherwise=0))) for side in ("front", "back", "left")}
    under = draw(sometimes(stocks(tape, "support", (12, 25), (25, 45)), otherwise=None, one_in=2))
    own = draw(st.lists(sections(tape), min_size=1, max_size=4))
    doubled = under is not None and draw(st.booleans())
    return tried(lambda: Top(own, supports=under, doubled=doubled, **reach)) or draw(trays(tape))


@st.composite
def trays(draw, tape):
    out = draw(st.sampled_from(["front", "back", "up"]))
    stop = draw(stocks(tape, "stop", (12, 20), (25, 45))) if out != "up" and draw(st.booleans()) else None
    return Tray(draw(lying(tape)), sides=draw(stocks(tape, "side", (18, 32), (30, 45))), out=out, stop=stop)


@st.composite
def ledgers(draw, tape):
    lowered, flat = tape.write(draw(sometimes(tape.counts(-5, 25), otherwise=0))), draw(st.booleans())
    on = draw(st.sampled_from(ON))
    return Ledger(draw(stocks(tape, "ledger", (15, 22), (25, 50))), on=on, flat=flat, lowered=lowered, name=f"{on} one")


@st.composite
def levels(draw, tape, level):
    """A level with something on it, or with shaped edges."""
    items = [*draw(st.lists(ledgers(tape), max_size=2)), draw(st.one_of(tops(tape), trays(tape), ledgers(tape)))]
    changes = [{"carries": [*level.carries[:1], *items]}, {"carries": items}] if draw(st.booleans()) else []
    for side in ("front", "back", "ends", "left", "right"):
        rail = getattr(level, side)
        if rail is not None and draw(st.booleans()):
            edge = draw(st.sampled_from(["upper_edge", "lower_edge", "lower_edge"]))
            changes.append({side: attrs.evolve(rail, **{edge: draw(shapes(tape))})})
    for change in changes:
        level = tried(lambda change=change, level=level: attrs.evolve(level, **change)) or level
    return level


@st.composite
def furnished(draw):
    """A random frame with something on most of its levels."""
    frame = draw(frames(overall=False))
    tape = Tape(frame.tape.name)
    stack = [draw(levels(tape, item)) if isinstance(item, Level) else item for item in frame.stack]
    frame = tried(lambda: attrs.evolve(frame, stack=stack)) or frame
    if not draw(st.booleans()):
        return frame
    sizes = [tape.counts(80, 300) for _ in range(3)]
    long, deep, high = (tape.write(draw(size)) for size in sizes)
    on = draw(st.sampled_from([None, *(level.name for level in frame.levels())]))
    rim = draw(sometimes(tape.counts(4, 20).map(tape.write), otherwise=None)) if on else None
    own = Bin("tub", length=long, depth=deep, height=high, on=on, rim=rim)
    return tried(lambda: attrs.evolve(frame, bins=[own])) or frame


def any_frame():
    """Any frame at all: bare or furnished, in one row or two, or one of the whole designs."""
    return st.one_of(frames(), furnished(), furnished(), single_rows(), st.sampled_from(WHOLE))
