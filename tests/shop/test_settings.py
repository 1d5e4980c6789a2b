"""Settings at the saw: what is printed cuts what was laid out; legs share stops; what cannot be cut is told."""

import itertools

import attrs
import pytest
from designs import plain_bench as bench
from designs import plain_rack as rack
from designs import plain_stand as stand
from samples import SAMPLES
from saw_model import faults, wood_faults

from benchjoin import Clear, Frame, Leg, Level, Notch, Rail, Shop, Stock, alter, lay_out, milling_plan, settings
from benchjoin.drawings.making.asked import Bound, ask
from benchjoin.errors import AddressError, DescriptionError
from benchjoin.layout.keeping import keep
from benchjoin.shop.settings.heads import DadoHead
from benchjoin.shop.settings.minutes import Minutes
from benchjoin.shop.settings.shop import Router
from benchjoin.shop.settings.ways.operation import heights, passes_for
from benchjoin.shop.settings.ways.router import offset
from benchjoin.sources import COMMON_PRACTICE
from benchjoin.trade.allowances import Milling
from benchjoin.trade.cautions import cautions
from benchjoin.trade.order_of_work import ORDER, step

FRAMES = {**SAMPLES, "bench": bench, "rack": rack, "stand": stand}
SHOPS = {
    "usual": None,
    "no dado head": Shop(dado=None),
    "hand": Shop(dado=None, router=None),
    "short stop": Shop(stop_reach=400),
    "small bites": Shop(dado=DadoHead(bite=7), overlap=1),
    "pair alone": Shop(dado=DadoHead(chippers=())),
    "at once": Shop(dado=DadoHead(bite=40)),
}
AT_ONCE = SHOPS["at once"]
"""A head that takes every notch of these frames in one depth, so that stops can be told by hand."""
LARCH = Stock("larch", thickness=40, width=60)


def small(**more):
    fields = {
        "name": "Step stool",
        "length": 500,
        "depth": 300,
        "front": Leg(LARCH, height=400),
        "back": Leg(LARCH, height=600),
        "rail_stock": Stock("larch board", thickness=15),
        "stack": [Clear(100), Level("low", front=50, back=50), Clear(), Level("high", front=50, back=50, top=400)],
        "tape": "1 mm",
    }
    return Frame(**(fields | more))


def stops(found):
    return [setting.stop for setting in found.notching]


# --- the printed settings, run through a little saw ---


@pytest.mark.parametrize("shop", SHOPS)
@pytest.mark.parametrize("frame", FRAMES)
def test_the_printed_settings_cut_what_was_laid_out(frame, shop):
    layout = lay_out(FRAMES[frame])
    found = settings(layout, SHOPS[shop])
    assert list(faults(layout, found)) == []
    assert list(wood_faults(layout, found)) == []


def test_the_printed_settings_cut_what_was_laid_out_from_the_top():
    layout = lay_out(bench)
    assert list(faults(layout, settings(layout, from_top=["bench", "head rail"]))) == []


@pytest.mark.parametrize("moved", [-2.0, 2.0])
def test_the_little_saw_sees_a_stop_that_is_off(moved):
    layout = lay_out(bench)
    found = settings(layout, AT_ONCE)
    number = next(n for n, s in enumerate(found.notching) if s.stop is not None)
    own = tuple(attrs.evolve(o, stop=o.stop + moved) for o in found.notching[number].operations)
    notching = list(found.notching)
    notching[number] = attrs.evolve(notching[number], operations=own)
    assert list(faults(layout, attrs.evolve(found, notching=tuple(notching))))


def test_the_little_saw_sees_a_pass_that_is_missing():
    layout = lay_out(bench)
    found = settings(layout, AT_ONCE)
    first = found.notching[0]
    own = tuple(attrs.evolve(o, passes=o.passes - 1) for o in first.operations)
    changed = (attrs.evolve(first, operations=own), *found.notching[1:])
    assert list(faults(layout, attrs.evolve(found, notching=changed)))


# --- by hand: the honey-house bench, head 13/16, heights in inches from the foot ---


def test_stops_of_the_bench_by_hand():
    found = settings(lay_out(bench), AT_ONCE)
    assert [row[3] for row in found.table().rows if row[0]] == [
        "7",  # near shoulder of all four legs
        "8 15/16",  # 9 3/4 − 13/16
        "10 7/16",  # 11 1/4 − 13/16
        "32",  # the bench level, front legs of 35 1/2 and back legs of 70 alike
        "34 11/16",  # 35 1/2 − 13/16, back legs; the front ones run out
        "line 48 3/8",  # beyond 48
        "line 51 7/8",
        "line 64 3/4",
    ]
    assert [row[2] for row in found.table().rows] == ["5/8"] * 9
    changes = found.changes
    assert (changes.tools, changes.heights, changes.stops, changes.least, changes.exact) == (1, 1, 5, 5, True)


def test_a_test_cut_comes_before_the_first_real_one_of_each_head_and_height():
    found = settings(lay_out(SAMPLES["four pairs, lapped"]), SHOPS["small bites"])
    rows = found.table().rows
    groups = [list(own) for _, own in itertools.groupby(rows, key=lambda row: (row[1], row[2]))]
    assert [own[0][2] for own in groups] == ["6", "12", "18"]
    assert all(own[0][0] == "" and own[0][4].startswith(("Stack", "Test cut")) for own in groups)
    assert all(row[0] for own in groups for row in own[1:])


def test_legs_of_two_lengths_share_the_stop_of_a_shared_level():
    found = settings(lay_out(small()))
    shared = [s for s in found.notching if s.stop == 100.0]
    assert len(shared) == 1
    assert {o.notch.part.identity for o in shared[0].operations} == {
        *("front left leg", "front right leg", "back left leg", "back right leg"),
    }


def test_a_leg_that_is_a_hair_long_moves_no_notch_that_is_set_from_the_foot():
    layout, longer = lay_out(small()), lay_out(alter(small(), {"back.height": 600.7}))
    from_foot = [row[1:6] for row in settings(layout).table().rows]
    assert [row[1:6] for row in settings(longer).table().rows] == from_foot
    assert [row[1:6] for row in settings(longer, from_top=["low"]).table().rows] != from_foot


def test_a_level_set_from_the_top_of_legs_of_two_lengths_is_told():
    found = settings(lay_out(small()), from_top=["high"])
    (told,) = [f for f in found.findings if f.kind == "set from the top"]
    assert told.numbers["differ"] == 200.0
    assert "200 mm" in told.sentence
    assert all("top to the stop" in row[4] for row in found.table().rows if "high" in row[4])


@pytest.mark.parametrize("letter", ["A", "B", "C"])
def test_a_set_alone_has_the_settings_of_the_batch_and_a_third_of_its_cuts(letter):
    whole, one = settings(lay_out(bench)), settings(lay_out(bench), letter=letter)
    assert stops(one) == stops(whole)
    assert [s.cuts * 3 for s in one.notching] == [s.cuts for s in whole.notching]


def test_a_leg_that_is_cut_needs_no_setting():
    layout = lay_out(small())
    kept = lay_out(keep(layout, "1/front left leg", state="cut"))
    found = settings(kept)
    assert "1/front left leg" not in {o.notch.part.name for s in found.notching for o in s.operations}
    assert "1/front left leg" not in {part.name for sizing in found.crosscuts for part in sizing.parts}


def test_a_frame_without_notches_says_so():
    found = settings(lay_out(SAMPLES["over all"]))
    assert found.notching == ()
    assert found.table().rows == ()
    assert "No notch" in str(found)
    assert found.changes.stops == 0


# --- the fewest changes ---


def brute(found):
    """Fewest (tools, heights, stops) over every order of the cuts of some settings, rough ones first."""
    cuts = []
    for s in found.notching:
        at = found.tape.read(s.stop) if s.stop is not None else None
        cuts.append((s.tool, s.height, at, {o.notch.part.name + o.notch.level: o.rough for o in s.operations}))
    best = None
    for order in itertools.permutations(cuts):
        done = {}
        if any(done.setdefault(name, h) > h or done.update({name: h}) for _, h, _, own in order for name in own):
            continue
        tools = heights_ = stops_ = 0
        tool = height = stop = None
        for t, h, at, _ in order:
            tools += t != tool
            heights_ += (t, h) != (tool, height)
            stops_ += at is not None and (t, at) != (tool, stop)
            tool, height, stop = t, h, (at if at is not None else stop)
        best = min(filter(None, (best, (tools, heights_, stops_))))
    return best


@pytest.mark.parametrize(
    "stack, shop",
    [
        ([Clear(100), Level("low", front=50, back=50)], Shop()),
        ([Clear(100), Level("low", front=50, back=50)], Shop(dado=DadoHead(bite=8))),
        ([Clear(100), Level("low", front=Rail(50, joint=Notch(10)), back=50)], Shop()),
        ([Clear(100), Level("low", front=Rail(50, joint=Notch(5)), back=60)], Shop(dado=DadoHead(bite=10))),
        ([Level("low", front=50, bottom=0), Clear(), Level("up", front=Rail(50, joint=Notch(10)), top=400)], Shop()),
    ],
)
def test_no_order_of_the_cuts_needs_fewer_changes(stack, shop):
    found = settings(lay_out(small(stack=stack)), shop)
    assert len(found.notching) <= 7
    counted = (found.changes.tools, found.changes.heights, found.changes.stops)
    assert counted == brute(found)
    assert sum(s.new_stop for s in found.notching) == found.changes.stops
    assert sum(s.new_height for s in found.notching) == found.changes.heights


def test_no_other_head_needs_fewer_stops():
    layout = lay_out(bench)
    parts = [4, *[2] * 4, 1]  # sixteenths: the pair, four chippers, a thin one
    widths = {sum(parts[:1]) + sum(own) for n in range(6) for own in itertools.combinations(parts[1:], n)}
    notches = {(n.bottom, n.top, n.open_top) for leg in layout.parts if leg.role == "leg" for n in leg.notches}
    counts = {}
    for width in widths:
        near = {low for low, _, _ in notches}
        far = {high - width * 25.4 / 16 for _, high, top in notches if not top}
        counts[width] = len({round(at, 3) for at in near | far if at <= 48 * 25.4})
    assert settings(layout, AT_ONCE).changes.stops == min(counts.values())


# --- places of the stop ---


@pytest.mark.parametrize("frame", FRAMES)
def test_what_shares_a_setting_agrees_within_the_hair(frame):
    found = settings(lay_out(FRAMES[frame]), SHOPS["small bites"])
    for setting in found.notching:
        for sizes in zip(*((o.stop or 0, o.other or 0, o.height) for o in setting.operations), strict=True):
            assert max(sizes) - min(sizes) <= found.tape.hair + 1e-6


@pytest.mark.parametrize("more, places", [(0.1, 2), (0.2, 3), (0.3, 3), (0.6, 3)])
def test_two_marks_that_are_more_than_a_hair_apart_are_two_stops(more, places):
    # 1 mm tape, hair 0.125: the near shoulders are one; the far ones, 150 and a little more, are one within a hair
    layout = lay_out(small(stack=[Clear(100), Level("low", front=50, back=50 + more)]))
    found = settings(layout, Shop(dado=DadoHead(pair=20, chippers=(), bite=20)))
    assert found.changes.stops == places


def test_stops_that_read_alike_and_are_not_the_same_are_told():
    # far shoulders at 150.15 and 150.32, the head 20: the stop reads 130 full for both, and they lie a hair apart
    layout = lay_out(small(stack=[Clear(100), Level("low", front=50.15, back=50.32)]))
    found = settings(layout, Shop(dado=DadoHead(pair=20, chippers=(), bite=20)))
    assert [row[3] for row in found.table().rows if row[0]] == ["100", "130 full", "130 full"]
    assert "Settings 2 and 3 read alike, 130 full, and are not the same" in str(found)


# --- one least length for each machine, one order of work ---


def test_milling_and_settings_ask_for_one_least_length():
    for least in ("10 in", "24 in"):
        habits = Milling(jointer_least=least, planer_least=least, rip_least=least, crosscut_least=least)
        found = settings(lay_out(bench), Shop(milling=habits))
        plan = milling_plan(lay_out(bench), practice=habits)
        short = {"short blank", "short parts"}
        kinds = {f.kind for f in (*found.findings, *plan.findings)} & short
        assert kinds == (short if least == "24 in" else set())
        for given in ({"shop": Shop(milling=habits)}, {"milling": habits}):
            asked = ask(lay_out(bench), Bound, given)
            for joint in (asked.findings, (*asked.settings.findings, *asked.milled.findings)):
                assert {f.kind for f in joint} & {"short blank", "short parts"} == kinds & {
                    "short blank",
                    "short parts",
                }


def test_a_part_that_is_short_for_the_router_alone_is_told():
    habits = Milling(router_least=700, crosscut_least=100)
    found = settings(lay_out(small()), Shop(dado=None, milling=habits))
    short = [f for f in found.findings if f.kind == "short blank"]
    assert [(round(f.numbers["length"]), f.numbers["least"]) for f in short] == [(600, 700), (400, 700)]
    assert all(f.source is COMMON_PRACTICE for f in short)
    assert all("router" in f.sentence and f.parts for f in short)


def test_every_sheet_tells_its_part_of_one_order_of_work():
    layout = lay_out(bench)
    found, plan = settings(layout), milling_plan(layout)
    assert [each.number for each in ORDER] == list(range(1, len(ORDER) + 1))
    milled = [int(row[1]) for row in plan.steps().rows if row[0] == "1"]
    assert milled == [step(word).number for word in ("rough length", "face", "edge", "thickness", "width", "sizes")]
    later = [note.split(":")[0] for note in plan.steps().notes]
    assert later == ["Step 7, final length", "Step 8, lines", "Step 9, notches"]
    told = [" ".join(table.notes) for table in (found.rip_table(), found.crosscut_table(), found.table())]
    words = [step(word) for word in ("width", "final length", "notches")]
    assert all(f"{word}" in note for word, note in zip(words, told, strict=True))
    assert [word.number for word in words] == sorted(word.number for word in words)


# --- passes, heights, guides ---


def test_passes_cover_a_notch_by_their_overlap():
    for width, groove, overlap in itertools.product([10, 19.05, 45, 88.9], [6.35, 20.6375], [0, 1.0, 3.175]):
        count = passes_for(width, groove, overlap)
        assert count * groove - (count - 1) * overlap >= width - 1e-6 or count == 1
        assert count == 1 or (count - 1) * groove - (count - 2) * overlap < width


def test_passes_that_never_advance_are_refused():
    with pytest.raises(ValueError, match="never end"):
        passes_for(50.0, 6.0, 6.0)


def test_deep_cuts_go_down_in_the_fewest_heights():
    tape = small().tape
    assert heights([30.0], 20.0, tape) == (15.0, 30.0)
    assert heights([30.0, 12.0], 20.0, tape) == (12.0, 30.0)
    assert heights([30.0, 8.0], 20.0, tape) == (8.0, 19.0, 30.0)


def test_a_guide_stands_half_the_base_less_half_the_bit_outside_its_shoulder():
    assert offset(150.0, 12.0) == 69.0
    found = settings(lay_out(small()), Shop(dado=None, router=Router(base=150, bits=[12])))
    first = found.notching[0]
    assert (first.stop, first.other) == (100 - 69, 150 + 69)
    assert first.operations[0].steps == 3  # 15 deep, a quarter of an inch at once


# --- bad input: a finding with the way out, or a clear error ---


def narrow(width, thickness=15):
    stock = Stock("strip", thickness=thickness)
    return lay_out(small(stack=[Clear(100), Level("low", front=Rail(width, stock=stock), back=50)]))


def told(found, kind):
    return [f for f in found.findings if f.kind == kind]


def test_a_notch_narrower_than_the_narrowest_head_goes_to_the_router():
    found = settings(narrow(6.2), Shop(router=Router(bits=[6])))
    (finding,) = told(found, "another way")
    assert "narrowest head" in finding.sentence
    assert "router instead" in finding.sentence
    assert {s.tool.way for s in found.notching} == {"dado head", "router"}


def test_a_bit_larger_than_the_notch_goes_to_the_chisel():
    found = settings(narrow(10), Shop(dado=None, router=Router(bits=[12])))
    (finding,) = told(found, "another way")
    assert "smallest bit larger" in finding.sentence
    assert "saw and chisel instead" in finding.sentence


def test_a_depth_above_the_heads_goes_another_way():
    found = settings(narrow(50, thickness=22), Shop(dado=DadoHead(deepest=16)))
    (finding,) = told(found, "another way")
    assert "22 mm deep and the head comes up 16 mm" in finding.sentence


def test_a_stop_beyond_reach_is_marked_from_a_master():
    found = settings(lay_out(small()), Shop(stop_reach=300))
    (finding,) = [f for f in told(found, "no stop") if f.where == "high"]
    assert "master" in finding.sentence
    assert all(s.stop is None for s in found.notching if max((0, *s.lines)) >= 350)


def test_a_stop_too_near_the_head_is_cut_to_its_line():
    found = settings(narrow(50), Shop(stop_nearest=110))
    (finding,) = told(found, "no stop")
    assert "off the head" in finding.sentence


def test_a_short_blank_is_told():
    found = settings(lay_out(bench), Shop(milling=Milling(crosscut_least="24 in")))
    (finding,) = told(found, "short blank")
    assert "20 3/8 in" in finding.sentence
    assert "24 in" in finding.sentence


@pytest.mark.parametrize("level", ["no such", ""])
def test_a_level_that_is_not_there_is_answered_with_those_there_are(level):
    with pytest.raises(AddressError, match="low, high"):
        settings(lay_out(small()), from_top=[level])


def test_a_set_that_is_not_there_is_answered_with_those_there_are():
    with pytest.raises(AddressError, match="A, B, C"):
        settings(lay_out(bench), letter="Z")


def test_all_faults_of_a_shop_are_told_at_once():
    with pytest.raises(DescriptionError) as error:
        Shop(stop_reach="48", overlap=-1, dado="a big one", prefer="laser")
    assert {fault.field for fault in error.value.faults} == {"stop_reach", "overlap", "dado", "prefer"}


@pytest.mark.parametrize(
    "make, title, field, words",
    [
        (
            lambda: Shop(dado=None, prefer="dado head"),
            "Shop",
            "prefer",
            "no dado head in this shop. It has router, saw",
        ),
        (lambda: Shop(stop_reach=10, stop_nearest=20), "Shop", "stop_reach", "10 mm is no further than stop_nearest"),
        (lambda: Shop(stop_reach=20, stop_nearest=20), "Shop", "stop_reach", "20 mm is no further than stop_nearest"),
        (lambda: Router(bits=[]), "Router", "bits", "a router without a bit cuts nothing. Give at least one diameter."),
        (lambda: Router(base=20, bits=[25]), "Router", "bits", "25 mm is no narrower than the base, 20 mm"),
        (lambda: Router(base=20, bits=[20]), "Router", "bits", "20 mm is no narrower than the base, 20 mm"),
        (lambda: Router(bits="12 mm"), "Router", "bits", "Write a list"),
        (lambda: DadoHead(widest=5), "Dado head", "widest", "the pair alone cuts 6.35 mm, more than the 5 mm"),
        (lambda: DadoHead(chippers=[3, float("nan")]), "Dado head", "chippers", "finite"),
        (lambda: DadoHead(chippers=[3] * 25), "Dado head", "chippers", "24 are the most"),
        (lambda: Minutes(stop=-1), "Minutes", "stop", "-1"),
    ],
)
def test_a_shop_that_cannot_be_is_refused(make, title, field, words):
    with pytest.raises(DescriptionError) as error:
        make()
    assert str(error.value).startswith(f"{title} cannot be built as described:\n  {field}: ")
    assert [fault.field for fault in error.value.faults] == [field]
    assert words in str(error.value)


def test_what_a_machine_may_just_be_is_taken():
    assert DadoHead(pair=20, widest=20).widest == 20
    assert Shop(stop_reach=20.5, stop_nearest=20).stop_nearest == 20


# --- lengths and widths ---


def test_parts_of_one_length_share_one_stop_longest_first():
    found = settings(lay_out(bench))
    assert [(bench.tape.read(s.at), s.cuts, s.master) for s in found.crosscuts] == [
        ("70", 6, True),
        ("57", 18, True),
        ("35 1/2", 6, False),
        ("20 3/8", 12, False),
    ]
    widths = [(bench.tape.read(s.at), s.cuts) for s in found.rips]
    assert widths == [("5 1/4", 3), ("4 1/4", 3), ("3 1/2", 15), ("2 3/4", 9)]


def test_a_rail_as_wide_as_its_stock_is_not_ripped():
    found = settings(lay_out(small(rail_stock=Stock("lath", thickness=15, width=50))))
    assert found.rips == ()


# --- cautions ---


@pytest.mark.parametrize(
    "words", ["manual", "Unplug", "insert", "freehand", "rip fence", "thumbs", "long legs", "Guard", "least length"]
)
def test_the_cautions_of_the_head_are_there(words):
    assert any(words in caution for caution in cautions("dado head"))


@pytest.mark.parametrize("words", ["trap", "rip fence", "lungs"])
def test_the_cautions_of_the_crosscut_are_there(words):
    assert any(words in caution for caution in cautions("crosscut"))
