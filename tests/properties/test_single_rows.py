"""Rules of layout against random single rows of uprights: nothing of them needs a second row."""

from __future__ import annotations

import numpy as np
import one_by_one
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from row_strategies import single_rows
from solid_wood import carved, clashing, sharing

from benchjoin import HalfLap, lay_out
from benchjoin.frame.address import addresses, value
from benchjoin.frame.design.file import read_design, write_design
from benchjoin.sweep import sweep

MET = {(kind, face) for kind in ("notch", "half-lap", "planted", "butt") for face in ("outer", "inner")}
MET |= {("butt", "middle"), 2, 3, 4, "short of the wall", "measured", "float", "Overall"}


def test_parts_share_wood_where_a_clash_is_found_and_nowhere_else():
    met = set()

    @settings(max_examples=250)
    @given(single_rows())
    def any_row(frame):
        layout = lay_out(frame)
        assert clashing(layout) == sharing(layout)
        faces = {slot.name: slot.of.face for slot in frame.rails()}
        met.update((joint.kind, faces[joint.guest]) for joint in layout.joints)
        met.update({len(frame.pairs()), type(frame.length).__name__, *(found.kind for found in layout.findings)})
        met.update({"measured"} if frame.measured else ())

    any_row()
    assert MET - met == set()


@given(single_rows())
def test_it_is_as_deep_as_its_uprights_and_what_stands_out_of_them(frame):
    layout = lay_out(frame)
    for number in range(1, frame.quantity + 1):
        uprights = [leg.blank for leg in layout.legs(number)]
        assert {leg.low[1] for leg in uprights} == {0.0}  # all front faces lie on one line
        deep = max(leg.high[1] for leg in uprights)
        out = {"front": 0.0, "back": 0.0}
        for rail in layout.piece(number):
            if rail.slot.hosts:
                low, high = rail.blank.low[1], rail.blank.high[1]
                out = {"front": max(out["front"], -low), "back": max(out["back"], high - deep)}
        assert layout.overall(number)[1] == pytest.approx(deep + out["front"] + out["back"])


@given(single_rows())
def test_a_rail_on_the_wall_side_takes_its_wood_from_the_backs_of_the_uprights(frame):
    layout = lay_out(frame)
    for leg in layout.legs(1):
        for cut in leg.cuts:
            slot = layout.part(cut.mate).slot
            assert cut.face == ("back" if slot.of.face == "inner" else "front")
            (y0, y1), (low, high) = (cut.box.low[1], cut.box.high[1]), (leg.blank.low[1], leg.blank.high[1])
            assert (y1 if cut.face == "back" else y0) == pytest.approx(high if cut.face == "back" else low)
        wood = carved(leg).volume()
        assert leg.volume == pytest.approx(wood, rel=1e-6)
        if not any(isinstance(layout.part(cut.mate).slot.joint, HalfLap) for cut in leg.cuts):
            assert all(not layout.part(cut.mate).cuts for cut in leg.cuts)  # a notch takes from the upright alone


@given(single_rows())
def test_it_reads_back_as_it_was_written(frame):
    assert read_design(write_design(frame)) == frame


@settings(max_examples=30)
@given(st.data())
def test_a_sweep_agrees_with_layouts_one_by_one(data):
    frame = data.draw(single_rows())
    numbers = [address for address in addresses(frame) if isinstance(value(frame, address), float)]
    over = {
        address: [value(frame, address) * factor for factor in (0.9, 1.0, 1.1)]
        for address in data.draw(st.lists(st.sampled_from(numbers), min_size=1, max_size=2, unique=True))
    }
    swept = sweep(frame, over, ("marks", "lengths", "findings"))
    assert swept.one_by_one == 0
    for place, layout in one_by_one.laid_out(frame, over, 1):
        assert swept.built[place] == (layout is not None)
        for name in ("marks", "lengths"):
            wanted = getattr(one_by_one, name)(layout) if layout else {}
            got = {words: array[place] for words, array in swept[name].items() if not np.isnan(array[place])}
            assert got == pytest.approx(wanted)
        found = {words for words, array in swept["findings"].items() if array[place]}
        assert found == (one_by_one.findings(layout) if layout else set())
