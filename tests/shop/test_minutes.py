"""Minutes: what the settings cost adds up, and no other choice of heads and no other order costs less.

The search here is written by itself: every head for every kind of notch, and every order of the settings.
"""

import itertools
import math
import random

import attrs
import pytest
from designs import plain_bench as bench
from designs import plain_rack as rack
from designs import plain_stand as stand
from hypothesis import given
from hypothesis import strategies as st
from samples import SAMPLES

from benchjoin import Clear, Frame, Leg, Level, Notch, Rail, Shop, Stock, lay_out, settings
from benchjoin.errors import DescriptionError
from benchjoin.shop.settings.cheapest_order import Stand, cheapest, least_cost
from benchjoin.shop.settings.heads import DadoHead
from benchjoin.shop.settings.minutes import Minutes
from benchjoin.shop.settings.shop import Router

FRAMES = {**SAMPLES, "bench": bench, "rack": rack, "stand": stand}
SHOPS = {
    "usual": Shop(),
    "router": Shop(dado=None),
    "hand": Shop(dado=None, router=None),
    "small bites": Shop(dado=DadoHead(bite=7), overlap=1),
    "own minutes": Shop(minutes=Minutes(head=1, height=0.25, stop=5, line=0.75, turn=0.5, cut=0.05)),
}
LARCH = Stock("larch", thickness=40, width=60)


# --- cuts, changes and minutes add up ---


@pytest.mark.parametrize("shop", SHOPS)
@pytest.mark.parametrize("frame", FRAMES)
def test_cuts_changes_and_minutes_add_up_from_the_rows(frame, shop):
    found = settings(lay_out(FRAMES[frame]), SHOPS[shop])
    table = found.table()
    set_up, rows = ([row for row in table.rows if bool(row[0]) is numbered] for numbered in (False, True))
    assert sum(int(row[5]) for row in rows) == found.cuts
    assert sum(float(row[6]) for row in table.rows) == pytest.approx(found.minutes, abs=1e-6)
    heads = [key for key, _ in itertools.groupby(row[1] for row in table.rows)]
    moved = [row for row in rows if not row[3].startswith(("line", "no ")) and not row[3].endswith("stands")]
    counted = (len(heads), len(set_up), len(moved))
    assert counted == (found.changes.tools, found.changes.heights, found.changes.stops)
    assert not found.notching or f"{found.cuts} cut" in table.notes[0]
    assert not found.notching or f": {found.minutes:.2f}".rstrip("0").rstrip(".") + " minutes" in table.notes[0]


@pytest.mark.parametrize("frame", FRAMES)
def test_the_minutes_are_those_of_what_is_done(frame):
    shop, layout = SHOPS["own minutes"], lay_out(FRAMES[frame])
    found = settings(layout, shop)
    heads = sum(s.new_tool and s.tool.way == "dado head" for s in found.notching)
    bits = sum(s.new_tool and s.tool.way == "router" for s in found.notching)
    laid = [o for s in found.notching for o in s.operations]
    hand = [o for s in found.notching if s.tool.way == "saw and chisel" for o in s.operations]
    lines = sum(bool(o.lines) for o in laid) - len(hand)  # a saw in the hand goes to its line by itself
    told = heads * 1 + bits * 3 + found.changes.heights * 0.25 + found.changes.stops * 5
    told += lines * 0.75 + (len(laid) - lines) * 0.5 + found.cuts * 0.05
    told += sum(o.cuts for o in hand) * (1.0 - 0.05)
    assert found.minutes == pytest.approx(told)


@pytest.mark.parametrize("frame", FRAMES)
def test_lengths_and_widths_add_up_too(frame):
    found = settings(lay_out(FRAMES[frame]))
    for table, sizings in ((found.crosscut_table(), found.crosscuts), (found.rip_table(), found.rips)):
        parts = sum(len(s.parts) for s in sizings)
        master = sum(len(s.parts) for s in sizings if s.master)
        stops = sum(not s.master for s in sizings)
        assert sum(int(row[4]) for row in table.rows) == parts
        takes = stops * 2 + (parts - master) * 0.3 + master * 1 + parts * 0.2
        assert sum(float(row[5]) for row in table.rows) == pytest.approx(takes)
        assert not sizings or f"{parts} cut" in table.notes[1]


def test_every_step_of_depth_is_a_cut_by_hand():
    # 50 wide and 15 deep with a bit of 12 that goes 6 deep and overlaps by 3: 5 passes (12 + 4 × 9 = 48 < 50, so 6)
    found = settings(
        lay_out(stool([(100, 50, 15)])), Shop(dado=None, router=Router(base=150, bits=[12], step=6), overlap=3)
    )
    (setting,) = found.notching
    assert {(o.passes, o.steps, o.cuts) for o in setting.operations} == {(6, 3, 18)}
    assert setting.cuts == found.cuts == 18 * len(setting.operations)
    assert f"{found.cuts} cuts" in found.table().notes[0]


def test_a_head_that_spares_a_stop_is_taken_only_where_a_stop_costs_more_than_its_passes():
    # the pair of 6 has the far stop of the front notch (150 − 6) where the near one of the back notch stands (144)
    frame = stool([(100, 50, 12)], quantity=6)
    level = Level("level 0", front=Rail(50, joint=Notch(12)), back=Rail(50, joint=Notch(12), raised=44))
    layout = lay_out(attrs.evolve(frame, stack=[Clear(100), level]))
    head = DadoHead(pair=6, chippers=[14])
    usual, dear = (settings(layout, Shop(dado=head, minutes=m)) for m in (Minutes(), Minutes(stop=600)))
    assert (usual.changes.stops, dear.changes.stops) == (4, 3)
    assert {round(s.tool.width) for s in usual.notching} == {20}
    assert {round(s.tool.width) for s in dear.notching} == {6}
    assert dear.cuts > usual.cuts + 100


@pytest.mark.parametrize("field", ["head", "bit", "height", "stop", "line", "turn", "cut", "kerf"])
def test_minutes_that_cannot_be_are_refused(field):
    for bad in (-1, "soon", math.inf, math.nan):
        with pytest.raises(DescriptionError, match=field):
            Minutes(**{field: bad})
    with pytest.raises(DescriptionError, match="minutes"):
        Shop(minutes=5)


# --- no other choice and no other order costs less ---


def stool(notches, quantity=1):
    """Four legs with notches (bottom, width, depth) on their outer faces; the back legs have the first one only."""
    stack, z = [], 0
    for number, (bottom, width, depth) in enumerate(notches):
        rail = Rail(width, joint=Notch(depth))
        stack += [Clear(bottom - z), Level(f"level {number}", front=rail, back=None if number else rail)]
        z = bottom + width
    return Frame(
        name="Stool",
        length=500,
        depth=300,
        front=Leg(LARCH, height=400),
        back=Leg(LARCH, height=600),
        rail_stock=Stock("larch board", thickness=19),
        stack=stack,
        quantity=quantity,
        tape="1 mm",
    )


def every_head(notches, many, shop):
    """The least minutes of all heads for all kinds of notches and all orders of the settings."""
    head, own = shop.dado, shop.minutes
    parts = head.chippers
    widths = {head.pair + sum(some) for n in range(len(parts) + 1) for some in itertools.combinations(parts, n)}
    best = math.inf
    for given_ in itertools.product(sorted(widths), repeat=len(notches)):
        if any(width > notch[1] for width, notch in zip(given_, notches, strict=True)):
            continue
        total = 0.0
        for width in set(given_):
            cut = [(*notch, count) for notch, count, w in zip(notches, many, given_, strict=True) if w == width]
            total += own.head + one_head(width, cut, shop)
        best = min(best, total)
    return best


def one_head(width, notches, shop):
    own, bite = shop.minutes, shop.dado.bite
    ladder, low = [], 0
    for depth in sorted({depth for _, _, depth, _ in notches}):
        between = math.ceil((depth - low) / bite) - 1
        ladder += [math.floor(low + (depth - low) * n / (between + 1) + 0.5) for n in range(1, between + 1)] + [depth]
        low = depth
    places, cost = {}, 0.0
    for bottom, wide, depth, count in notches:
        rungs = [depth]
        while rungs[0] > bite:
            rungs.insert(0, min(height for height in ladder if rungs[0] - height <= bite))
        passes = 1
        while passes * width - (passes - 1) * shop.overlap < wide:
            passes += 1
        shoulders = {bottom, bottom + wide - width}
        cost += count * len(rungs) * (passes * own.cut + len(shoulders) * own.turn)
        for stop in shoulders:
            for above, height in enumerate(rungs):
                places.setdefault((height, stop), set()).update((below, stop) for below in rungs[:above])
    return cost + every_order(places, own)


def every_order(places, own):
    """Every order of (height, stop) in which what must come before does."""
    best = math.inf
    for order in itertools.permutations(places):
        at = {place: number for number, place in enumerate(order)}
        if any(at[first] > at[later] for later, firsts in places.items() for first in firsts):
            continue
        heights = 1 + sum(a[0] != b[0] for a, b in itertools.pairwise(order))
        stops = 1 + sum(a[1] != b[1] for a, b in itertools.pairwise(order))
        best = min(best, heights * own.height + stops * own.stop)
    return best


def small_case(number):
    """A few notches, a small head and a shop's minutes, drawn by a number."""
    draw = random.Random(number)
    bite = draw.choice([8, 20])
    notches, z = [], draw.choice([60, 80])
    for _ in range(draw.choice([1, 2, 2, 3]) if bite == 20 else 2):
        width = draw.choice([6, 9, 12, 20, 23, 26, 50])
        notches.append((z, width, draw.choice([5, 8, 8, 15] if bite == 8 else [8, 12, 12])))
        z += width + draw.choice([30, 44, 57])
    minutes = Minutes(
        head=draw.choice([0, 1, 10]),
        height=draw.choice([0.5, 2, 4]),
        stop=draw.choice([0.5, 2, 6]),
        turn=draw.choice([0, 0.3]),
        cut=draw.choice([0.05, 0.2, 1]),
    )
    head = DadoHead(pair=6, chippers=draw.choice([(), (3,), (3, 3), (6, 3)]), bite=bite)
    return notches, draw.choice([1, 3]), Shop(dado=head, overlap=2, minutes=minutes)


@pytest.mark.parametrize("number", range(60))
def test_no_other_heads_and_no_other_order_cost_less(number):
    notches, quantity, shop = small_case(number)
    found = settings(lay_out(stool(notches, quantity)), shop)
    assert {s.tool.way for s in found.notching} == {"dado head"}
    many = [quantity * (2 if number else 4) for number in range(len(notches))]
    assert found.changes.exact
    assert found.minutes == pytest.approx(every_head(notches, many, shop))


STANDS = st.lists(st.tuples(st.integers(0, 2), st.sampled_from([None, 1, 2, 3])), min_size=1, max_size=6, unique=True)
COSTS = st.sampled_from([0.0, 1.0, 2.0, 5.0])


@given(STANDS, COSTS, COSTS, st.booleans())
def test_no_order_of_settings_costs_less(places, height, stop, deep_last):
    stands = [Stand(h, at) for h, at in places]
    before = {
        (a, b)
        for a, b in itertools.permutations(range(len(stands)), 2)
        if deep_last and stands[a].stop == stands[b].stop and stands[a].height < stands[b].height
    }

    def cost(order):
        total, at_height, at_stop = 0.0, None, None
        for number in order:
            total += height * (stands[number].height != at_height)
            total += stop * (stands[number].stop not in (None, at_stop))
            at_height, at_stop = stands[number].height, stands[number].stop or at_stop
        return total

    route = cheapest(stands, before=before, height=height, stop=stop)
    orders = [
        order
        for order in itertools.permutations(range(len(stands)))
        if all(order.index(first) < order.index(later) for first, later in before)
    ]
    assert route.exact
    assert route.order in orders
    assert cost(route.order) == min(map(cost, orders))
    own = [s.stop for s in stands if s.stop is not None]
    least = least_cost(len({s.height for s in stands}), len(set(own)), len(own), height=height, stop=stop)
    assert least <= cost(route.order) + 1e-9


def test_settings_that_share_no_stop_are_weighed_together_so_that_many_still_have_a_best_order():
    # three heights, each two of which share a stop, so that no order chains all; twelve stops of one height alone, and
    # three settings of a height without a stop
    ring = [Stand(0, 10.0), Stand(1, 10.0), Stand(1, 20.0), Stand(2, 20.0), Stand(2, 30.0), Stand(0, 30.0)]
    many = [*ring, *(Stand(0, 100.0 + n) for n in range(12)), *(Stand(1, None) for _ in range(3))]
    route = cheapest(many, height=1.0, stop=5.0)
    assert route.exact
    assert sorted(route.order) == list(range(21))
    # by hand: all of the first height but 10, then 30 and 20 of the third, 20 and 10 of the second, and back for 10:
    # a height is set four times, and each of fifteen places once
    heights = [height for height, _ in itertools.groupby(many[number].height for number in route.order)]
    places = [p for p, _ in itertools.groupby(many[n].stop for n in route.order if many[n].stop is not None)]
    assert (len(heights), len(places)) == (4, 15)
    assert least_cost(3, 15, 18, height=1.0, stop=5.0) == 4 * 1 + 15 * 5
