"""Wood as solids of another kernel, from blanks and cuts in the world's axes: `from solid_wood import carved`."""

import itertools
import re
from itertools import combinations

import numpy as np
from manifold3d import Manifold, OpType

from benchjoin.layout.batch import firsts
from benchjoin.solids import Box

SHARED = 1e-3  # mm³ that rounding may leave between two parts that touch


def solid(box):
    return Manifold.cube(box.size()).translate(box.low)


def carved(part):
    """A part's blank, cut after cut."""
    wood = solid(part.blank)
    for cut in part.cuts:
        wood = wood - solid(cut.box)
    return wood


def apart(one, other):
    """Whether two blanks are so far apart that their solids need not be asked."""
    sides = zip(one.low, one.high, other.low, other.high, strict=True)
    return any(low >= far or near >= high for low, high, near, far in sides)


def shared(parts):
    """Pairs that share volume, by identity, in one piece; the order is that of the parts."""
    near = [(a, b) for a, b in combinations(parts, 2) if not apart(a.blank, b.blank)]
    solids = {part.name: carved(part) for pair in near for part in pair}
    return {(a.identity, b.identity) for a, b in near if (solids[a.name] ^ solids[b.name]).volume() > SHARED}


def sharing(layout):
    """Pairs that share volume, with the first piece of each kind that a layout tells apart."""
    found, known = set(), {}
    for number in sorted(set(firsts(layout.frame).values())):
        parts = layout.piece(number)
        wood = tuple((part.identity, part.blank, part.cuts) for part in parts)
        known[wood] = known[wood] if wood in known else shared(parts)
        found |= {(number, a, b) for a, b in known[wood]}
    return found


def clashing(layout):
    """Pairs that the layout finds to clash, with the piece: the one that the finding names, or else the first."""
    found = set()
    for finding in layout.findings:
        if finding.kind == "clash":
            piece, one = re.fullmatch(r"(?:(\d+)/)?(.+)", finding.where).groups()
            other = re.search(r" and (.+?) want the same wood", finding.sentence)[1]
            found.add((int(piece or 1), one, other))
    return found


def cells(part):
    """Boxes of wood between the planes of a part's cuts."""
    boxes = (part.blank, *(cut.box for cut in part.cuts))
    planes = [sorted({at for box in boxes for at in (box.low[n], box.high[n])}) for n in range(3)]
    for (x0, x1), (y0, y1), (z0, z1) in itertools.product(*map(itertools.pairwise, planes)):
        middle = np.array([x0 + x1, y0 + y1, z0 + z1]) / 2
        blank, *cuts = (bool((box.low < middle).all() and (middle < box.high).all()) for box in boxes)
        if blank and not any(cuts):
            yield Box((x0, y0, z0), (x1, y1, z1))


def swept(box, by):
    own = solid(box)
    return (own + own.translate(by)).hull()


def on_the_way(boxes, steps, others):
    """Volume that boxes share with what stays, over moves one after the other. [mm³]"""
    stays = Manifold.batch_boolean([carved(part) for part in others], OpType.Add)
    found, at = 0.0, np.zeros(3)
    for by in steps:
        for box in boxes:
            here = Box(tuple(np.array(box.low) + at), tuple(np.array(box.high) + at))
            found += (swept(here, by) ^ stays).volume()
        at = at + np.array(by)
    return found
