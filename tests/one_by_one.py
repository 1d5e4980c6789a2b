"""A sweep the slow way, for tests: every variant described and laid out by itself. `import one_by_one`."""

import itertools

import attrs

from benchjoin import alter, lay_out
from benchjoin.errors import BenchjoinError
from benchjoin.frame.identity import of_piece, piece_of


def alone(frame, piece):
    """One piece of a batch as a frame of its own."""
    measured = {}
    for wanted in (None, piece):
        for name, sizes in frame.measured.items():
            if piece_of(name)[0] == wanted:
                measured.setdefault(piece_of(name)[1], {}).update(sizes)
    kept = {of_piece(1, piece_of(n)[1]): part for n, part in frame.finished.items() if piece_of(n)[0] == piece}
    return attrs.evolve(frame, quantity=1, measured=measured, finished=kept)


def laid_out(frame, over, piece=1):
    """Every variant of a grid in order: its place, and its layout or nothing where it cannot be built."""
    for place in itertools.product(*(range(len(values)) for values in over.values())):
        changes = {address: values[n] for (address, values), n in zip(over.items(), place, strict=True)}
        try:
            yield place, lay_out(alone(alter(frame, changes), piece))
        except BenchjoinError:
            yield place, None


def marks(layout):
    found = {}
    for part in layout.parts:
        for cut in map(part.on_face, part.cuts):
            edges = ("bottom", "top") if part.slot.axes[0] == 2 else ("near", "far")
            found |= {(part.identity, cut.mate, edges[0]): cut.start, (part.identity, cut.mate, edges[1]): cut.end}
    return found


def places(layout):
    found = {}
    for part in carried(layout):
        run, side = part.slot.of.run, getattr(part.slot.of, "side", "")
        axis = {"along": 1, "across": 0, "up": 0 if side in ("front", "back") else 1}[run]
        found |= {(part.identity, "near"): part.blank.low[axis], (part.identity, "far"): part.blank.high[axis]}
    return found


def counts(layout):
    runs = [(part.level, part.slot.run) for part in carried(layout)]
    return {run: float(runs.count(run)) for run in runs}


def carried(layout):
    return [part for part in layout.parts if part.slot.run]


def lengths(layout):
    return {(part.identity,): part.length for part in layout.parts if part.role != "leg"}


def volumes(layout):
    return {(part.identity,): part.volume for part in layout.parts}


def findings(layout):
    return {(f.severity, f.kind, part) for f in layout.findings for part in f.parts or (f.where,)}
