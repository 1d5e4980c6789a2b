"""Whatever a maker types wrong is refused with an error of ours that names it, shows it, and says what to write.

One table: what is typed, and words that the answer must hold.
"""

from __future__ import annotations

import pickle

import attrs
import pytest

from benchjoin import (
    Butt,
    Clear,
    EndRails,
    Frame,
    HalfLap,
    Leg,
    Level,
    Notch,
    Overall,
    Pair,
    Planted,
    Rail,
    Stock,
    alter,
    bind,
    elevation,
    lay_out,
    section,
    set_page,
)
from benchjoin.errors import BenchjoinError, CannotDraw, DescriptionError
from benchjoin.frame.address import value
from benchjoin.readings import Tape

NAN, INF = float("nan"), float("inf")
POST = Stock("ash", thickness=40, width=60)
BOARD = Stock("ash board", thickness=20)
GOOD = {
    "name": "Plain",
    "length": 600,
    "depth": 300,
    "front": Leg(POST, height=500),
    "back": Leg(POST, height=500),
    "rail_stock": BOARD,
    "stack": [Clear(100), Level("low", front=60, back=60, ends=60), Clear(), Level("top", front=60, top=500)],
    "tape": "1 mm",
}
PLAIN = Frame(**GOOD)
LAID = lay_out(PLAIN)


def frame(**fields):
    return Frame(**{**GOOD, **fields})


def run(*stack, **fields):
    return lay_out(frame(stack=stack, **fields))


def bays(*items, **fields):
    return lay_out(frame(bays=items, **fields))


LOW = Level("low", front=60)
UNIT, LENGTH = ['Write "', "in", "mm"], ["Write a number in mm"]

CASES = {
    # lengths
    "no unit": (lambda: frame(length="57"), ["length", "'57'", 'Write "57 in" or "57 mm"']),
    "a fraction without a unit": (lambda: frame(depth="2 7/16"), ["depth", "'2 7/16'", '"2 7/16 in"']),
    "an unknown unit": (lambda: frame(length="57 yd"), ["length", "'57 yd'", *LENGTH]),
    "text that only starts well": (lambda: frame(length="57 in or so"), ["length", "left over", *LENGTH]),
    "two lengths in one": (lambda: frame(length="5 in 3 mm"), ["length", "not one length", *LENGTH]),
    "a decimal comma": (lambda: frame(length="1,45 m"), ["length", "comma", "decimal point"]),
    "a division by zero": (lambda: frame(length="3/0 in"), ["length", "divides by zero"]),
    "an empty length": (lambda: frame(length=""), ["length", "empty", *LENGTH]),
    "words for a length": (lambda: frame(length="long"), ["length", "'long'", *LENGTH]),
    "not a number": (lambda: frame(length=NAN), ["length", "nan", "not a finite number"]),
    "endless": (lambda: frame(depth=INF), ["depth", "inf", "not a finite number"]),
    "endless the other way": (lambda: frame(depth=-INF), ["depth", "-inf", "not a finite number"]),
    "nan as text": (lambda: frame(length="nan in"), ["length", "'nan in'", *LENGTH]),
    "zero": (lambda: frame(length=0), ["length", "0", "more than zero"]),
    "negative": (lambda: frame(depth=-300), ["depth", "-300", "more than zero"]),
    "negative as text": (lambda: frame(depth="-12 in"), ["depth", "'-12 in'", "more than zero"]),
    "a slip of the unit": (lambda: frame(length=1e12), ["length", "1000000000000.0", "longer than 100 m"]),
    "a slip of the unit as text": (lambda: frame(length="900 m"), ["length", "'900 m'", "longer than 100 m"]),
    "too many digits": (lambda: frame(length="9" * 500 + " in"), ["length", "not one length"]),
    "a number that no float holds": (lambda: frame(length=10**400), ["length", "longer than 100 m"]),
    "nothing": (lambda: frame(length=None), ["length", "None", *LENGTH]),
    "a list": (lambda: frame(length=[600]), ["length", "[600]", *LENGTH]),
    "a truth": (lambda: frame(length=True), ["length", "True", *LENGTH]),
    "bytes": (lambda: frame(length=b"57 in"), ["length", "b'57 in'", *LENGTH]),
    "a complex number": (lambda: frame(length=3j), ["length", "3j", *LENGTH]),
    "a negative fit": (lambda: frame(fit=-1), ["fit", "-1", "zero or more"]),
    "a fit of nothing": (lambda: frame(fit=None), ["fit", "None", *LENGTH]),
    # stock and legs
    "stock without thickness": (lambda: Stock("ash", thickness=0), ["thickness", "0", "more than zero"]),
    "stock of negative width": (lambda: Stock("ash", thickness=40, width=-1), ["width", "-1", "more than zero"]),
    "stock of no length": (lambda: Stock("ash", thickness=40, length=0), ["length", "0", "more than zero"]),
    "stock without a name": (lambda: Stock("", thickness=40), ["name", "''", "in words"]),
    "stock named by a number": (lambda: Stock(5, thickness=40), ["name", "5", "in words"]),
    "a leg of no stock": (lambda: Leg("larch", height=500), ["stock", "'larch'", "Write for example Stock("]),
    "a leg without a width": (lambda: Leg(BOARD, height=500), ["stock", "ash board", "Give the stock a width"]),
    "a leg without height": (lambda: Leg(POST, height=0), ["height", "0", "more than zero"]),
    "a leg turned nowhere": (lambda: Leg(POST, height=5, wide="side"), ["wide", "'side'", "'front', 'end'"]),
    "a frame without legs": (lambda: frame(front=None), ["front", "None", "Write for example Leg("]),
    "stock for a leg": (lambda: frame(back=POST), ["back", "Stock", "Write for example Leg("]),
    "a name for the rail stock": (lambda: frame(rail_stock="larch"), ["rail_stock", "'larch'", "Stock("]),
    # joints and rails
    "a notch of no depth": (lambda: Notch(0), ["depth", "0", "more than zero"]),
    "a lap of all": (lambda: HalfLap(share=1), ["share", "1", "from 0.05 to 0.95", "0.5"]),
    "a lap of words": (lambda: HalfLap(share="half"), ["share", "'half'", "0.5"]),
    "a lap of nan": (lambda: HalfLap(share=NAN), ["share", "nan", "0.5"]),
    "a joint by name": (lambda: Rail(60, joint="notch"), ["joint", "'notch'", "Notch(), HalfLap(), Butt()"]),
    "a number for a joint": (lambda: Rail(60, joint=3), ["joint", "3", "Notch(), HalfLap(), Butt()"]),
    "a rail of nothing": (lambda: Rail(None), ["width", "None", *LENGTH]),
    "a rail of bad stock": (lambda: Rail(60, stock="pine"), ["stock", "'pine'", "Write for example Stock("]),
    "an unknown face": (lambda: Rail(60, face="top"), ["face", "'top'", "'outer', 'middle', 'inner'"]),
    "a raise without a unit": (lambda: Rail(60, raised="45"), ["raised", "'45'", '"45 mm"']),
    "an overhang of nan": (lambda: Rail(60, overhang=NAN), ["overhang", "nan", "finite"]),
    "a let-in rail in the middle": (
        lambda: Rail(60, joint=Notch(), face="middle"),
        ["face", "middle", "Write joint=Butt()"],
    ),
    "a butt with an overhang": (
        lambda: Rail(60, joint=Butt(), overhang=20),
        ["overhang", "butts", "Leave the overhang out"],
    ),
    "an end rail with an overhang": (
        lambda: Level("low", left=Rail(60, overhang=20)),
        ["left", "overhang is 20 mm", "joint=Notch()"],
    ),
    "a front rail in the middle": (
        lambda: Level("low", front=Rail(60, face="middle")),
        ["front", "face is 'middle'", "Write joint=Butt()"],
    ),
    "a cross rail let into the middle": (
        lambda: Level("low", cross=Rail(60, joint=Notch())),
        ["cross", "face is 'outer'", "face='left'"],
    ),
    "a cross rail on the inner face": (
        lambda: Level("low", cross=Rail(60, face="inner")),
        ["cross", "'inner'", "knows left, middle, right"],
    ),
    "a front rail on the left face": (
        lambda: Level("low", front=Rail(60, face="left")),
        ["front", "'left'", "knows outer, middle, inner"],
    ),
    "a notch deeper than its rail": (
        lambda: frame(stack=[Level("low", front=Rail(60, joint=Notch(21)))]),
        ["low/front rail", "let in 21 mm", "20 mm thick", "Leave the depth out"],
    ),
    # levels and clears
    "a level without rails": (lambda: Level("low"), ["low", "no rail", 'front="3 1/2 in"']),
    "a level without a name": (lambda: Level("", front=60), ["name", "''", "in words"]),
    "a level of blanks": (lambda: Level("  ", front=60), ["name", "'  '", "in words"]),
    "a level named by a number": (lambda: Level(1, front=60), ["name", "1", "in words"]),
    "a name with a slash": (lambda: Level("low/high", front=60), ["name", "'low/high'", "may not hold '/'"]),
    "a name with a point": (lambda: Level("no. 2", front=60), ["name", "'no. 2'", "may not hold '.'"]),
    "a name that goes on and on": (lambda: Level("x" * 300, front=60), ["name", "xxx", "80 printable characters"]),
    "a name on two lines": (lambda: Level("a\nb", front=60), ["name", r"'a\nb'", "one line"]),
    "a frame without a name": (lambda: frame(name=None), ["name", "None", "in words"]),
    "a frame with a name of 300 signs": (lambda: frame(name="x" * 300), ["name", "80 printable characters"]),
    "an unknown flush": (lambda: Level("low", front=60, flush="top"), ["flush", "'top'", "'front leg top'"]),
    "flush without the rail": (lambda: Level("low", back=60, flush="front leg top"), ["flush", "Give front="]),
    "an unknown alignment": (lambda: Level("low", front=60, align="mid"), ["align", "'mid'", "'bottoms', 'tops'"]),
    "a level under the floor": (lambda: Level("low", front=60, bottom=-1), ["bottom", "-1", "zero or more"]),
    "a top without a unit": (lambda: Level("low", front=60, top="35"), ["top", "'35'", '"35 in"']),
    "a side without a unit": (lambda: Level("low", front="3"), ["front", "width", "'3'", '"3 in"']),
    "a side that is a truth": (lambda: Level("low", front=True), ["front", "True", *LENGTH]),
    "a clear without a unit": (lambda: Clear("7"), ["size", "'7'", '"7 in"']),
    "a negative clear": (lambda: Clear(-7), ["size", "-7", "zero or more"]),
    "a clear of no weight": (lambda: Clear(weight=0), ["weight", "0", "from 0.001 to 1000"]),
    "a clear of endless weight": (lambda: Clear(weight=INF), ["weight", "inf", "from 0.001 to 1000"]),
    "a clear measured nowhere": (lambda: Clear(5, at="top"), ["at", "'top'", "'front', 'back', 'left', 'right'"]),
    # the stack
    "an empty stack": (lambda: frame(stack=[]), ["stack", "no level", "Level("]),
    "a stack of clears": (lambda: frame(stack=[Clear(5)]), ["stack", "no level", "Level("]),
    "a stack that is none": (lambda: frame(stack=5), ["stack", "5", "Write a list of Clear"]),
    "a stack of endless words": (lambda: frame(stack="x" * 5000), ["stack", "xxx…", "Write a list of Clear"]),
    "an endless joint": (lambda: Rail(60, joint="x" * 5000), ["joint", "xxx…", "Notch(), HalfLap(), Butt()"]),
    "a stack of words": (lambda: frame(stack="low"), ["stack", "'low'", "Write a list of Clear"]),
    "a number in the stack": (lambda: frame(stack=[100, LOW]), ["stack[0]", "100", 'Clear("7 in")']),
    "two levels of one name": (lambda: frame(stack=[LOW, LOW]), ["stack", '"low"', "a name of its own"]),
    "two names that differ by a blank": (
        lambda: frame(stack=[LOW, Level("low ", front=60)]),
        ["stack", '"low"', "a name of its own"],
    ),
    "a level called length": (lambda: frame(stack=[Level("length", front=5)]), ['"length"', "Choose another name"]),
    "a level called like a leg": (
        lambda: frame(stack=[Level("front left leg", front=5)]),
        ['"front left leg"', "Choose another name"],
    ),
    "a level called like a bay": (lambda: frame(stack=[Level("bay 1", front=5)]), ['"bay 1"', "Choose another"]),
    "two clears in a row": (lambda: frame(stack=[Clear(5), Clear(), LOW]), ["stack", "two clears", "Write one"]),
    "a clear measured where no rail is": (
        lambda: frame(stack=[Clear(5, at="left"), LOW]),
        ["stack", "measured at the left", "no level beside it has a rail there"],
    ),
    "a cross rail without a middle pair": (
        lambda: frame(stack=[Level("low", cross=60)]),
        ["stack", '"low"', "cross rail", "two bays"],
    ),
    # pins and runs
    "pins out of order": (
        lambda: run(Clear(), Level("low", front=60, top=400), Clear(), Level("high", front=60, top=300)),
        ["low", "high", "comes after it", "change one of the two"],
    ),
    "a level pinned at both edges": (
        lambda: run(Clear(), Level("low", front=60, bottom=100, top=170)),
        ["low", "bottom at 100 mm", "top at 170 mm", "10 mm are left"],
    ),
    "a level squeezed between its pins": (
        lambda: run(Clear(), Level("low", front=60, bottom=100, top=150)),
        ["low", "60 mm", "room for 50 mm", "10 mm too much"],
    ),
    "a top pin and a flush one": (
        lambda: run(Clear(), Level("low", front=60, top=400, flush="front leg top")),
        ["top at 400 mm", "flush with the front leg top", "100 mm apart", "Take one of them away"],
    ),
    "too much between two pins": (
        lambda: run(Clear(200), LOW, Clear(200), Level("high", front=60, top=500)),
        ["the foot", "high", "520 mm", "room for 500 mm", "20 mm too much"],
    ),
    "too little between two pins": (
        lambda: run(Clear(200), LOW, Clear(100), Level("high", front=60, top=500)),
        ["420 mm", "room for 500 mm", "80 mm are left", "Leave the size of a clear between the two open"],
    ),
    "an open clear over the legs": (
        lambda: run(Clear(500), LOW, Clear()),
        ["tallest leg's top", "560 mm", "room for 500 mm", "60 mm too much"],
    ),
    # length, depth, bays
    "legs wider than the length": (lambda: frame(length=119), ["length", "take 120 mm", "119 mm", "Make it more"]),
    "legs deeper than the depth": (lambda: frame(depth=79), ["depth", "take 80 mm", "79 mm", "Make it more"]),
    "legs wider than an overall length": (
        lambda: lay_out(frame(length=Overall(119))),
        ["Legs along the length", "120 mm", "1 mm too much"],
    ),
    "an overall size of nothing": (lambda: Overall(0), ["size", "0", "more than zero"]),
    "end rails of nothing": (lambda: EndRails(None), ["size", "None", *LENGTH]),
    "a length by end rails": (lambda: frame(length=EndRails(500)), ["length", "EndRails", *LENGTH]),
    "a depth by end rails without any": (
        lambda: frame(stack=[LOW], depth=EndRails(200)),
        ["depth", "end rails", "there are none", "over the legs"],
    ),
    "a depth by end rails that differ": (
        lambda: run(Level("low", left=60, right=Rail(60, joint=Planted())), depth=EndRails(200)),
        ["depth", "different lengths", "over the legs"],
    ),
    "a bay too much": (lambda: bays(Clear(500)), ["Legs along the length", "room for 600 mm", "20 mm too much"]),
    "bays that are too little": (lambda: bays(Clear(400)), ["520 mm", "600 mm", "80 mm are left"]),
    "two bays that are too much": (lambda: bays(Clear(300), Clear(300)), ["780 mm", "180 mm too much"]),
    "no bays": (lambda: frame(bays=[]), ["bays", "[]", "Begin and end with a Clear"]),
    "bays by a number": (lambda: frame(bays=3), ["bays", "3", "Write a list of Clear"]),
    "bays of numbers": (lambda: frame(bays=[1000, 500]), ["bays", "1000", 'Clear("1000 mm")']),
    "a pair at the end": (lambda: frame(bays=[Clear(), Pair()]), ["bays", "Pair", "Begin and end with a Clear"]),
    "pairs without a bay between": (lambda: frame(bays=[Clear(), Pair(), Pair(), Clear()]), ["bays", "Begin and end"]),
    "pairs out of order": (
        lambda: bays(Clear(), Pair(at=400), Clear(), Pair(at=200), Clear()),
        ["middle 1 pair", "middle 2 pair", "comes after it"],
    ),
    "pairs that want one place": (
        lambda: bays(Clear(), Pair(at=300), Clear(), Pair(at=310), Clear()),
        ["middle 1 pair", "middle 2 pair", "50 mm too much"],
    ),
    "a pair beyond the end": (lambda: bays(Clear(), Pair(at=900), Clear()), ["middle 1 pair (middle at 900 mm)"]),
    "a pair at nowhere": (lambda: Pair(at="middle"), ["at", "'middle'", *LENGTH]),
    "a pair of stock": (lambda: Pair(front=POST), ["front", "Stock", "Write for example Leg("]),
    # choices, counts, measures
    "an unknown corner": (lambda: frame(corners="mitred"), ["corners", "'mitred'", "'front through'", "'staggered'"]),
    "an unknown tape": (lambda: frame(tape="1/8 in"), ["tape", "'1/8 in'", "1/16 in, 1/32 in"]),
    "a tape of nothing": (lambda: frame(tape=None), ["tape", "None", "1/16 in"]),
    "a tape by its length": (lambda: Tape(5), ["5", "tape", "1/16 in"]),
    "none to make": (lambda: frame(quantity=0), ["quantity", "0", "whole number from 1 to 1000"]),
    "two and a half to make": (lambda: frame(quantity=2.5), ["quantity", "2.5", "whole number"]),
    "true to make": (lambda: frame(quantity=True), ["quantity", "True", "whole number"]),
    "words to make": (lambda: frame(quantity="3"), ["quantity", "'3'", "whole number"]),
    "far too many to make": (lambda: frame(quantity=10**9), ["quantity", "1000000000", "from 1 to 1000"]),
    "measures in a list": (lambda: frame(measured=["back left leg"]), ["measured", "back left leg", "Write for"]),
    "a measure of no part": (lambda: frame(measured={"leg.width": 40}), ["measured", '"leg"', "Parts are front left"]),
    "a measure of a length": (
        lambda: frame(measured={"back left leg.depth": 40}),
        ["measured", "back left leg.depth", "40", '"part.width"'],
    ),
    "a measure of no field": (lambda: frame(measured={"back left leg": 40}), ["measured", "40", '"part.width"']),
    "one size of two": (lambda: frame(measured={"back left leg.size": 40}), ["measured", "40", "(thickness, width)"]),
    "a measure by number": (lambda: frame(measured={5: 40}), ["measured", "5", "40", '"part.width"']),
    "a measured nan": (lambda: frame(measured={"back left leg.width": NAN}), ["back left leg.width", "nan", "finite"]),
    "a measured zero": (lambda: frame(measured={"back left leg.width": 0}), ["back left leg.width", "more than zero"]),
    "a measure of a piece that is not made": (
        lambda: frame(measured={"2/back left leg.width": 40}),
        ["measured", "2/back left leg", "quantity is 1"],
    ),
    # addresses
    "an address that reaches nothing": (lambda: value(PLAIN, "lenght"), ["'lenght'", "Did you mean", "'length'"]),
    "an address of a level that is not there": (
        lambda: alter(PLAIN, {"lwo.front.width": 50}),
        ["'lwo.front.width'", "Did you mean", "'low.front.width'"],
    ),
    "an address below a number": (lambda: value(PLAIN, "length.mm"), ["'length.mm'", "Did you mean"]),
    "an address with two points": (lambda: value(PLAIN, "low..width"), ["'low..width'", "Did you mean"]),
    "an empty address": (lambda: value(PLAIN, " "), ["' '", "Write for example 'length'"]),
    "a number for an address": (lambda: alter(PLAIN, {5: 5}), ["5", "Write for example 'length'"]),
    "an address of a part alone": (
        lambda: value(PLAIN, "back left leg"),
        ["'back left leg'", "Write 'back left leg.width'"],
    ),
    "two changes of one value": (
        lambda: alter(PLAIN, {"low.front": 50, "low.front.width": 60}),
        ["'low.front'", "'low.front.width'", "Write one of them"],
    ),
    "a change to a bad value": (lambda: alter(PLAIN, {"length": "64"}), ["length", "'64'", '"64 in"']),
    "a change of a rail to a bad value": (lambda: alter(PLAIN, {"low.front.width": -1}), ["width", "-1", "more than"]),
    "a change that makes no sense": (lambda: alter(PLAIN, {"length": 100}), ["length", "120 mm", "100 mm"]),
    # what is asked of a layout
    "an unknown set": (lambda: set_page(LAID, "Z"), ["'Z'", "Sets are A"]),
    "a set by number": (lambda: set_page(LAID, 1), ["1", "Sets are A"]),
    "no set": (lambda: LAID.set(""), ["''", "Sets are A"]),
    "an unknown leg": (lambda: LAID.leg("middle left"), ["'middle left'", "Legs are front left leg"]),
    "a leg by number": (lambda: LAID.leg(1), ["1", "Legs are front left leg"]),
    "a leg of a piece that is not made": (lambda: LAID.leg("front left", 2), ["piece 2"]),
    "a part by number": (lambda: LAID.part(5), ["5", "is no part", "front left leg"]),
    "a part of piece nought": (lambda: LAID.part("0/low/front rail"), ["'0/low/front rail'", "1 of each"]),
    "a list of legs": (lambda: LAID.leg(["front left"]), ["front left", "Legs are front left leg"]),
    "a piece in words": (lambda: LAID.piece("first"), ["'first'", "quantity is 1"]),
    "a name instead of a frame": (lambda: lay_out("bench"), ["'bench'", "not a Frame", "lay_out(Frame("]),
    "an unknown part": (lambda: LAID.part("low/top rail"), ["'low/top rail'", "front left leg", "low/front rail"]),
    "a part of a piece that is not made": (lambda: LAID.part("7/low/front rail"), ["'7/low/front rail'", "1 of each"]),
    "an unknown side": (lambda: elevation(LAID, "top"), ["'top'", "front, back, left or right"]),
    "a side by number": (lambda: elevation(LAID, 5), ["5", "front, back, left or right"]),
    "an unknown paper": (lambda: elevation(LAID, "front", paper="A9"), ["'A9'", "A4"]),
    "an unknown paper for a set": (lambda: set_page(LAID, "A", paper="Foolscap"), ["'Foolscap'", "A4"]),
    "a section of no level": (lambda: section(LAID, "attic"), ["'attic'"]),
    "a section over the legs": (lambda: section(LAID, 5000), ["5000"]),
}


@pytest.mark.parametrize("case", CASES)
def test_it_is_refused_in_words_that_help(case):
    typed, words = CASES[case]
    with pytest.raises(BenchjoinError) as caught:
        typed()
    told = str(caught.value)
    assert [word for word in words if word not in told] == [], told
    assert len(told) < 1500


@pytest.mark.parametrize("case", CASES)
def test_the_error_is_of_the_kind_that_python_knows_and_can_be_sent_on(case):
    with pytest.raises((ValueError, LookupError)) as caught:
        CASES[case][0]()
    again = pickle.loads(pickle.dumps(caught.value))
    assert (type(again), str(again)) == (type(caught.value), str(caught.value))


def test_more_than_a_hundred_slips_are_tried():
    assert len(CASES) > 100


class TestAllAtOnce:
    """style, item 9: "every fault at once, each as what @ where"."""

    def test_bad_fields_of_a_frame(self):
        with pytest.raises(DescriptionError) as caught:
            frame(length="57", depth=-1, corners="mitred", quantity=0, tape="1 yd", fit=NAN, stack=[])
        fields = {fault.field for fault in caught.value.faults}
        assert fields == {"length", "depth", "corners", "quantity", "tape", "fit"}
        assert str(caught.value).startswith('Frame "Plain" cannot be built as described:\n')
        assert str(caught.value).count("\n") == 6

    def test_bad_fields_of_a_rail_within_a_level(self):
        with pytest.raises(DescriptionError) as caught:
            Level("low", front="3", back=-1, align="no", top="x")
        assert [fault.field for fault in caught.value.faults] == ["front.width", "back.width", "top", "align"]

    def test_faults_of_the_whole(self):
        with pytest.raises(DescriptionError) as caught:
            frame(
                length=100,
                depth=70,
                stack=[Clear(), Clear(), LOW, LOW],
                measured={"3/low/front rail.width": 4, "x.width": 5},
            )
        told = str(caught.value)
        for words in ("take 120 mm", "take 80 mm", "two clears", '"low"', "of piece 3", '"x" is no part'):
            assert words in told
        assert len(caught.value.faults) == 6

    def test_a_bad_name_and_a_bad_size_of_stock(self):
        with pytest.raises(DescriptionError) as caught:
            Stock("", thickness="2", width=NAN)
        assert [fault.field for fault in caught.value.faults] == ["name", "thickness", "width"]


BROKEN = lay_out(frame(stack=[Clear(500), LOW]))  # above every leg
WRITES = {
    "an ending that no sheet has": lambda to: elevation(LAID, "front").save(to / "front.doc"),
    "no ending": lambda to: elevation(LAID, "front").save(to / "front"),
    "a set page of a layout with errors": lambda to: set_page(BROKEN, "A").save(to / "set.svg"),
    "an unknown set": lambda to: set_page(LAID, "Q").save(to / "set.svg"),
    "an unknown paper": lambda to: elevation(LAID, "front", paper="A9").save(to / "front.svg"),
    "a binder that is no PDF": lambda to: bind(LAID, to / "binder.svg"),
    "a binder on an unknown paper": lambda to: bind(LAID, to / "binder.pdf", paper="A9"),
    "a bad frame": lambda to: bind(lay_out(frame(length="57")), to / "binder.pdf"),
    "a run that does not come out": lambda to: bind(bays(Clear(500)), to / "binder.pdf"),
}


@pytest.mark.parametrize("case", WRITES)
def test_nothing_is_written_when_the_input_is_bad(case, tmp_path):
    with pytest.raises(BenchjoinError):
        WRITES[case](tmp_path)
    assert list(tmp_path.iterdir()) == []


def test_what_stood_there_still_stands_there_after_a_refusal(tmp_path):
    page = elevation(LAID, "front").save(tmp_path / "front.svg")
    before = page.read_bytes()
    with pytest.raises(CannotDraw):
        set_page(BROKEN, "A").save(page)
    assert page.read_bytes() == before
    assert [file.name for file in tmp_path.iterdir()] == ["front.svg"]


def test_a_frame_cannot_be_changed_where_it_stands():
    with pytest.raises(attrs.exceptions.FrozenInstanceError):
        PLAIN.length = 700
    with pytest.raises(TypeError):
        PLAIN.measured["back left leg"] = {"width": 5}
