"""Every width that a head can be stacked to, held against trying every handful of its parts."""

import itertools

import attrs
import pytest
from hypothesis import given
from hypothesis import strategies as st

from benchjoin import Clear, Frame, Leg, Level, Shop, Stock, lay_out, settings
from benchjoin.shop.settings.heads import DadoHead, lengths_of, stacks


def every_handful(head):
    """Width and fewest parts of every subset, the pair always there."""
    parts = [(size, "c") for size in head.chippers] + [(size, "s") for size in head.shims]
    found = {}
    for count in range(len(parts) + 1):
        for own in itertools.combinations(parts, count):
            width = round(head.pair + sum(size for size, _ in own), 4)
            if width <= head.widest + 1e-6:
                cost = (sum(kind == "s" for _, kind in own), count)
                found[width] = min(found.get(width, cost), cost)
    return found


@given(
    st.lists(st.sampled_from([1.5, 2.0, 3.0, 3.2]), max_size=5),
    st.lists(st.sampled_from([0.1, 0.2, 0.5]), max_size=4),
    st.sampled_from([6.0, 9.0, 20.0]),
)
def test_the_stacks_are_all_there_are_and_from_the_fewest_parts(chippers, shims, widest):
    head = DadoHead(pair=6, chippers=chippers, shims=shims, widest=widest)
    found = {round(stack.width, 4): (len(stack.shims), stack.parts) for stack in stacks(head)}
    assert found == every_handful(head)


def test_a_stack_is_as_wide_as_its_parts():
    for stack in stacks(DadoHead(shims=["0.004 in", "0.01 in"])):
        assert stack.width == pytest.approx(stack.pair + sum(stack.chippers) + sum(stack.shims))


def test_chippers_are_kept_widest_first_and_anything_else_is_answered_with_a_list():
    take = lengths_of("chippers")
    assert take(["1/16 in", "1/8 in", 2]) == (3.175, 2.0, 1.5875)
    assert take([3] * 24) == (3.0,) * 24
    for wrong, words in (
        ("1/8 in", "chippers is '1/8 in'. Write a list, for example ['1/8 in', '1/16 in']."),
        (3, "chippers is 3. Write a list, for example ['1/8 in', '1/16 in']."),
        ([3] * 25, "chippers holds 25 sizes. 24 are the most."),
    ):
        (fault,) = take(wrong).of
        assert (fault.field, fault.what) == ("chippers", words)
    (fault,) = take([3, "wide"]).of
    assert "one of chippers" in fault.what


def test_shims_are_taken_where_they_make_a_notch_in_one_pass():
    wide = 6.35 + 3.175 + 0.508  # the pair, a chipper and a shim
    shelf = [Clear(100), Level("low", front=wide, back=wide)]
    frame = Frame(
        name="Tray",
        tape="1/16 in",
        length=500,
        depth=300,
        front=Leg(Stock("larch", thickness=40, width=60), height=400),
        back=Leg(Stock("larch", thickness=40, width=60), height=400),
        rail_stock=Stock("lath", thickness=10),
        stack=shelf,
    )
    with_shim = settings(lay_out(frame), Shop(dado=DadoHead(shims=["0.02 in"])))
    without = settings(lay_out(frame), Shop())
    assert [(s.tool.stack.shims, s.cuts) for s in with_shim.notching] == [((0.508,), 4)]
    assert "Stack the outside pair, 1 × 1/8 in and 1 × 0.020 in. Test cut" in str(with_shim)
    in_metres = settings(lay_out(attrs.evolve(frame, tape="1 mm")), Shop(dado=DadoHead(shims=[0.508])))
    assert "Stack the outside pair, 1 × 3.2 mm and 1 × 0.51 mm. Test cut" in str(in_metres)
    assert without.changes.stops == 2
