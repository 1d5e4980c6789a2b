"""Random histories of a job: `from histories import jobs, alterations, measurements, lives`.

A life is a frame to which things happen one after the other: sizes are measured, values altered, parts kept in a state
and released again, in any order. What is refused leaves the frame as it was.
"""

from __future__ import annotations

import math

import attrs
from hypothesis import assume
from hypothesis import strategies as st
from stand import LAPPED, STAND, look
from strategies import CORNERS, frames, sometimes

from benchjoin import alter, keep, lay_out, release
from benchjoin.errors import BenchjoinError, DescriptionError, RunError
from benchjoin.frame.address import addresses, value
from benchjoin.frame.finished import STATES

ODD = st.sampled_from(
    [0, -1, 1e-3, 1e9, 10**400, math.nan, math.inf, "57", "3 in", "1/0 in", "", None, True, [], {}, b"4"]
)
"""Values that mostly cannot be, whatever they are given for."""
FIELDS = ("width", "thickness", "length")
OFF = st.sampled_from([-2, -1, 1, 2])
"""How far from the size that it has by now a part is measured, or a value is altered. [mm]"""


@st.composite
def jobs(draw):
    """A frame of two pieces, any or with rails drawn alike, whatever is done where these differ."""
    drawn = draw(st.one_of(st.sampled_from([STAND, LAPPED]), frames(overall=False)))
    frame = attrs.evolve(drawn, quantity=2)
    return attrs.evolve(frame, uneven=draw(sometimes(st.sampled_from(["own", "widest"]), otherwise="narrowest")))


def laid(frame):
    """The layout of a frame that comes out; one whose runs do not is another rule's."""
    try:
        return lay_out(frame)
    except RunError:
        assume(False)


def altered(frame, changes):
    """The frame with other values; one that cannot be described, as with a notch deeper than its rail, is not meant."""
    try:
        return alter(frame, changes)
    except DescriptionError:
        assume(False)


def looks(layout):
    return {part.name: look(part) for part in layout.parts}


def alike(one, other):
    """Whether two cuts, or two sizes, are the same but for the last figures of floats."""
    return all(a == b if isinstance(a, str) else abs(a - b) < 1e-5 for a, b in zip(one, other, strict=True))


def same(one, other):
    """Whether all that is marked or cut on two parts is the same."""
    (size, cuts), (other_size, other_cuts) = one, other
    return alike(size, other_size) and len(cuts) == len(other_cuts) and all(map(alike, cuts, other_cuts))


def unlike(one, other):
    """Names of the parts that two layouts do not have alike."""
    first, second = looks(one), looks(other)
    return [name for name in {**first, **second} if not same(first[name], second[name])]


def told(layout):
    return sorted((f.severity, f.kind, f.where, f.sentence) for f in layout.findings)


@st.composite
def measurements(draw, layout, names, most=4):
    """Sizes by address, 1 or 2 mm off what each part has: the size that was read on the wood."""
    found = {}
    for name in draw(st.lists(st.sampled_from(names), min_size=most // 2, max_size=most, unique=True)):
        field = draw(st.sampled_from(FIELDS))
        found[f"{name}.{field}"] = size_of(layout.part(name), field) + draw(OFF)
    return found


def size_of(part, field):
    """Length, or width or thickness in the sense of its stock. [mm]"""
    along, across, into = part.slot.axes
    axis = {"length": along, "width": across, "thickness": into}[field]
    return float(part.blank.size()[axis])


@st.composite
def alterations(draw, frame):
    """Values of the description by address, that reach any part of it; no two the same."""
    known = {*addresses(frame)}
    rails = [f"{level.name}.{side}" for level in frame.levels() for side in ("front", "back", "left", "right")]
    rails = [rail for rail in rails if f"{rail}.width" in known]
    kinds = {
        "fit": st.sampled_from([0.3, 0.8, 1.5]),
        "corners": st.sampled_from(CORNERS),
        "uneven": st.sampled_from(["narrowest", "own", "widest"]),
    }
    sized = {"length": 10, "depth": 10, "front.height": 10, "back.stock.width": 1, "rail_stock.thickness": 1}
    kinds |= {
        at: OFF.map(lambda off, at=at, by=by: value(frame, at) + by * off)
        for at, by in sized.items()
        if at in known and isinstance(value(frame, at), float)
    }
    for rail in rails:
        kinds[f"{rail}.width"] = OFF.map(lambda off, rail=rail: value(frame, f"{rail}.width") + off)
        kinds[f"{rail}.raised"] = OFF.map(lambda off, rail=rail: value(frame, f"{rail}.raised") + 5 * off)
    chosen = draw(st.lists(st.sampled_from(sorted(kinds)), min_size=1, max_size=4, unique=True))
    return {address: draw(kinds[address]) for address in chosen}


@st.composite
def lives(draw, start=None, most=5, see=None):
    """A frame after its history, and what was refused on the way, in words.

    start draws what it is at first; see is shown every layout that it had on the way.
    """
    frame, refused = draw(jobs() if start is None else start), []
    for _ in range(draw(st.integers(0, most))):
        try:
            layout = lay_out(frame)
            if see is not None:
                see(layout)
            frame = draw(st.sampled_from([_measured, _altered, _kept, _released, _spoiled]))(draw, frame, layout)
        except BenchjoinError as error:
            refused.append(str(error))
    return frame, refused


def _measured(draw, frame, layout):
    names = [part.name for part in layout.parts]
    return alter(frame, draw(measurements(layout, names)))


def _altered(draw, frame, layout):
    return alter(frame, draw(alterations(frame)))


def _spoiled(draw, frame, layout):
    """A value of any kind at any address: mostly one that cannot be."""
    address = draw(st.sampled_from([*addresses(frame), "nothing.width", "1/nobody.length", ""]))
    return alter(frame, {address: draw(ODD)})


def _kept(draw, frame, layout):
    names = draw(st.lists(st.sampled_from([part.name for part in layout.parts]), min_size=1, max_size=4, unique=True))
    return keep(layout, *names, state=draw(st.sampled_from(STATES)))


def _released(draw, frame, layout):
    return release(frame, draw(st.sampled_from(sorted(frame.finished)))) if frame.finished else frame
