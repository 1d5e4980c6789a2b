"""Forty boards in the bee club's rack, with ninety bad stretches: made up by a seeded generator, none was ever sawn."""

import random

from benchjoin import Board, Defect

KINDS = (  # name, thickness, width, how many
    ("2x4", "1 1/2 in", 3.5, 9),
    ("1x6", "3/4 in", 5.5, 14),
    ("5/4x6", "1 in", 5.5, 17),
)
LENGTHS = (10, 12, 14)
INCH = 25.4


def _defects(draw, count, length):
    found = []
    for _ in range(count):
        kind = draw.choice(("knot", "knot", "knot", "wane", "split"))
        if kind == "split":
            start, end = (0.0, draw.randint(2, 6)) if draw.random() < 0.5 else (length - draw.randint(2, 6), length)
        else:
            start = draw.randint(4, length - 8)
            end = start + draw.randint(1, 3)
        if kind == "wane":
            where, deep = draw.choice(("near edge", "far edge")), 0.5
        else:
            where, deep = "across", None
        deep = None if deep is None else deep * INCH
        found.append(Defect(kind, start * INCH, end * INCH, where=where, deep=deep))
    return found


def rack(seed=7, defects=90):
    """The boards, with so many defects spread over them."""
    draw = random.Random(seed)
    names = [(name, thick, wide) for name, thick, wide, count in KINDS for _ in range(count)]
    share = [0] * len(names)
    for _ in range(defects):
        share[draw.randrange(len(names))] += 1
    boards = []
    for number, ((name, thick, wide), count) in enumerate(zip(names, share, strict=True), 1):
        feet = draw.choice(LENGTHS)
        boards.append(
            Board(
                f"{name} no. {number}",
                length=feet * 12 * INCH,
                width=wide * INCH,
                thickness=thick,
                defects=_defects(draw, count, feet * 12),
            )
        )
    return boards


boards = rack()
