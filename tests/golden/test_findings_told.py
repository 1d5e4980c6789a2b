"""What the maker is told when a design goes wrong: each kind of finding and of refusal, with its words and numbers.

Every sample is altered, measured and kept in turn, by lot but always the same; of each kind the first few are recorded.
Read one before accepting it.
"""

from __future__ import annotations

import random

from designs import DESIGNS
from samples import SAMPLES

from benchjoin import alter, keep, lay_out
from benchjoin.errors import BenchjoinError
from benchjoin.frame.address import addresses, value
from benchjoin.frame.finished import STATES

TIMES, EACH = 10, 3
FACTORS = (0.3, 0.6, 0.9, 1.1, 1.6, 2.5)
OFFS = (-3.0, -1.0, 1.0, 2.0)
FIELDS = ("width", "thickness", "length")


def sizes_of(frame):
    """Addresses of sizes and counts, of the whole as of its parts."""
    return [at for at in addresses(frame) if type(value(frame, at)) in (int, float) and not at.endswith("quantity")]


def happenings(by_lot, frame):
    """A value altered; parts measured; parts kept, and then a value altered."""
    for _ in range(TIMES):
        at = by_lot.choice(sizes_of(frame))
        yield {at: value(frame, at) * by_lot.choice(FACTORS)}, ()
        layout = lay_out(frame)
        parts = by_lot.sample(layout.parts, min(2, len(layout.parts)))
        of = by_lot.choice(FIELDS)
        yield {f"{part.name}.{of}": getattr(part, of) + by_lot.choice(OFFS) for part in parts}, ()
        yield {at: value(frame, at) + by_lot.choice((-12, -4, 3, 9))}, [part.name for part in parts]


def happened(by_lot, frame, changes, kept):
    """The layout after it."""
    if kept:
        frame = keep(lay_out(frame), *kept, state=by_lot.choice(STATES))
    return lay_out(alter(frame, changes))


def told(one):
    numbers = ", ".join(f"{name} {size:.6g}" for name, size in sorted(one.numbers.items()))
    parts = " ".join((*one.parts, "|", *one.mates, "|", *map(str, one.pieces)))
    return f"  {one.severity}, {one.where} [{parts}] {one.sentence}\n    {numbers} ({one.source})"


def test_the_words_of_what_goes_wrong(file_regression):
    by_lot, found, refused = random.Random(7), {}, {}
    for name, frame in {**SAMPLES, "tools": DESIGNS["tools"]}.items():
        for changes, kept in happenings(by_lot, frame):
            try:
                layout = happened(by_lot, frame, changes, kept)
            except BenchjoinError as error:
                kind = f"{type(error).__name__} {str(error).splitlines()[-1].split(':')[0]}"
                refused.setdefault(kind, {}).setdefault(f"  {name}, {changes}: {error}")
                continue
            for one in layout.findings:
                found.setdefault(one.kind, {}).setdefault(told(one))
    lines = []
    for kind, each in [*sorted(found.items()), *sorted(refused.items())]:
        lines += [f"{kind}:", *list(each)[:EACH], ""]
    file_regression.check("\n".join(lines))
