"""Rule: whatever the frame and whatever the shop, the settings as they are printed cut the notches that were laid
out, and nothing beyond a shoulder by more than the printed rounding.
"""

import attrs
from hypothesis import given
from hypothesis import settings as examples
from hypothesis import strategies as st
from saw_model import faults, wood_faults
from strategies import frames

from benchjoin import Shop, lay_out, settings
from benchjoin.shop.settings.heads import DadoHead
from benchjoin.shop.settings.shop import Router

TAPES = ("1 mm", "0.5 mm", "1/16 in", "1/32 in", "1/64 in")


@st.composite
def shops(draw):
    head = DadoHead(
        chippers=draw(st.sampled_from([(), (3.175,) * 4, (3, 3, 1.5)])),
        shims=draw(st.sampled_from([(), (0.1, 0.25)])),
        deepest=draw(st.sampled_from([15, 40])),
        bite=draw(st.sampled_from([6, 20])),
    )
    router = Router(base=draw(st.sampled_from([90, 160])), bits=draw(st.sampled_from([(6,), (12, 30)])))
    return Shop(
        dado=draw(st.sampled_from([head, None])),
        router=draw(st.sampled_from([router, None])),
        stop_reach=draw(st.sampled_from([300, 900, 2000])),
        overlap=draw(st.sampled_from([0, 2, 5])),
    )


@given(frames(), shops(), st.sampled_from(TAPES), st.booleans())
def test_the_printed_settings_cut_true(frame, shop, tape, from_top):
    layout = lay_out(attrs.evolve(frame, tape=tape))
    levels = [level.name for level in frame.levels()] if from_top else []
    found = settings(layout, shop, from_top=levels)
    assert list(faults(layout, found)) == []
    assert list(wood_faults(layout, found)) == []
    assert sum(s.new_stop for s in found.notching) == found.changes.stops
    assert found.changes.least <= found.changes.stops


@examples(max_examples=25)
@given(frames())
def test_every_notch_of_the_batch_is_cut_to_its_full_depth_once(frame):
    layout = lay_out(frame)
    found = settings(layout)
    done = [o.notch for s in found.notching for o in s.operations if not o.rough and o.edge != "far"]
    only_far = [o.notch for s in found.notching for o in s.operations if not o.rough and o.edge == "far"]
    cuts = sum(len(part.cuts) for part in layout.parts)
    assert len({id(notch) for notch in (*done, *only_far)}) == cuts
