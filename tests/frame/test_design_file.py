"""Design files: what is written reads back as the same frame, and what is wrong is told with its line and field."""

from __future__ import annotations

import contextlib
import random
import tomllib

import attrs
import pytest
from boarded import BATTEN, CROSSINGS, SLAT
from designs import plain_bench as bench
from designs import plain_rack as rack
from hypothesis import given, settings
from hypothesis import strategies as st
from samples import SAMPLES
from strategies import frames
from topped import CURVES, DRIP

from benchjoin import Bearers, Boards, Clear, Frame, HalfLap, Leg, Level, Notch, Over, Rail, Stock, lay_out
from benchjoin.errors import DescriptionError, DesignFileError
from benchjoin.frame.design.file import read_design, write_design
from benchjoin.frame.design.key_lines import lines_of
from benchjoin.frame.design.words import HEADS
from benchjoin.frame.finished import Finished, FinishedCut
from benchjoin.frame.fit import Fit
from benchjoin.layout.keeping import keep
from benchjoin.layout.sitting import sit

POST = Stock("post", thickness=50, width=50)
SHOP = Frame(
    name='Odd "names" \\ and signs: ½ äß',
    length=900.1,
    depth="17 in",
    front=Leg(Stock.dressed("2x4", species="western larch", length="8 ft").milled(), height="30 in", wide="end"),
    back=Leg(POST, height=800),
    rail_stock=Stock("post", thickness=18),  # another stock of the same name
    stack=[
        Clear(100, at="front", weight=2),
        Level("a = b # c", front=Rail(60, joint=Notch(10)), back=Rail(60.05, joint=HalfLap(0.3), face="inner")),
        Clear(),
    ],
    fit={"notch": 0.25, "half-lap": "1/64 in", "over-notch": 0.5, "cut round": 3},
    corners="staggered",
    uneven="widest",
    quantity=2,
    measured={"2/front left leg.size": (37, 87.5), "a = b # c/front rail.width": "59.7 mm"},
)
SLATTED = Level(
    "low",
    front=80,
    ends=80,
    carries=[
        Bearers(BATTEN, run="along", count=1, joint=Over(10), left=15, right=20),
        Bearers(BATTEN, run="across", at=[300, 500], joint=Notch(), crossing=HalfLap(0.4), name="batten"),
        Boards(SLAT, run="up", side="front", face="inner", gap=12),
    ],
)
SHELF = {
    "the bench": bench,
    "the rack": rack,
    "odd names": SHOP,
    "parts that are cut": keep(lay_out(rack), "front left leg", "tray 1/front rail"),
    "a rail that sits on the upper shoulder": sit(
        keep(lay_out(rack), "front left leg"), "front left leg", on={"tray 1/front rail": "top"}
    ),
    "parts that are sized": keep(lay_out(bench), "2/bench/front rail", state="sized"),
    "a word for the fit": attrs.evolve(bench, fit="easy", uneven="own"),
    "a height that follows": attrs.evolve(
        CROSSINGS,
        front=Leg(POST),
        back=Leg(POST, height=800),
        stack=[
            Level("low", front=80, back=80, ends=80, flush="front leg top", top_at=500, carries=[Boards(SLAT, gap=12)]),
            Clear(100, at="surface"),
            Level("hooks", back=60),
        ],
    ),
    "a slatted front": attrs.evolve(CROSSINGS, stack=[Clear(150), SLATTED, Clear(), CROSSINGS.stack[-1]]),
    "a grip and an arc": DRIP,
    "a way to begin": attrs.evolve(bench, order="rows first"),
    "every curve": CURVES,
    "edges by one cutter": attrs.evolve(
        DRIP, bins=attrs.evolve(DRIP.bins[0], at=500, rim=None, from_front=60), stack=DRIP.stack
    ),
    **SAMPLES,
}


@pytest.mark.parametrize("frame", SHELF.values(), ids=SHELF)
def test_what_is_written_reads_back_as_the_same_frame(frame):
    assert read_design(write_design(frame)) == frame


@given(frames())
def test_any_frame_reads_back_as_the_same_frame(frame):
    assert read_design(write_design(frame)) == frame


def things(value):
    """Every described thing in a value."""
    if isinstance(value, tuple):
        for item in value:
            yield from things(item)
    elif hasattr(value, "values"):
        yield from things(tuple(value.values()))
    elif attrs.has(type(value)):
        yield value
        for field in attrs.fields(type(value)):
            yield from things(getattr(value, field.name))


def test_every_field_of_every_thing_is_set_somewhere_on_the_shelf():
    """So that a new field that the file forgets is found: put a frame on the shelf that sets it."""
    kinds = (*HEADS, Rail, Leg, Fit, Finished, FinishedCut, Frame, Stock)
    unset = {(kind, field.name) for kind in kinds for field in attrs.fields(kind)}
    for frame in SHELF.values():
        for thing in things(frame):
            for field in attrs.fields(type(thing)):
                default = field.default
                if isinstance(default, attrs.Factory):
                    default = default.factory(*[thing] * default.takes_self)
                if getattr(thing, field.name) != default:
                    unset.discard((type(thing), field.name))
    assert unset == set()


def test_the_bench_reads_as_a_maker_would_write_it():
    text = write_design(bench)
    assert text.startswith("format = 1\n")
    assert '    { level = "foot shelf", front = "2 3/4 in", back = "4 1/4 in", ends = "2 3/4 in" },\n' in text
    assert '"larch 2x4, milled" = { thickness = "1 5/16 in", width = "3 1/4 in" }' in text
    assert tomllib.loads(text)["quantity"] == 3


def test_a_file_is_read_by_its_path(tmp_path):
    path = tmp_path / "bench.toml"
    path.write_bytes(b"\xef\xbb\xbf" + write_design(bench).encode())
    assert read_design(path) == read_design(str(path)) == bench


def test_plain_numbers_are_millimetres_and_lists_may_be_tables():
    text = write_design(bench).replace('length = "57 in"', "length = 1447.8")
    assert read_design(text) == bench
    apart = text.replace('    { clear = "7 in" },\n', "").replace("stack = [\n", "stack_was = [\n")
    with pytest.raises(DesignFileError, match="stack_was"):
        read_design(apart)


FAULTS = {
    "no unit": ('"7 in"', '"7"', 10, "stack item 1.clear", "says no unit"),
    "a field misspelt": ('front = "2 3/4', 'frnt = "2 3/4', 11, "foot shelf.frnt", "Did you mean front"),
    "a key misspelt": ("quantity", "quantitty", 20, "quantitty", "Did you mean quantity"),
    "not one of the words": ('"back leg top"', '"top"', 17, "head rail.flush", "Choose one of"),
    "a stock that is not there": ('"larch 1x6, planed"\n', '"larch 1x6"\n', 8, "rail_stock", "'larch 1x6, planed'"),
    "a table for a length": ('"23 in"', "{ front = 3 }", 5, "depth", "none of its words"),
    "a stock without its size": ('{ thickness = "5/8 in" }', '{ width = "5/8 in" }', 24, "planed", "no thickness"),
    "a leg without its height": (', height = "70 in"', "", 7, "back", "nothing says how high"),
    "a level without rails": (', back = "3 1/2 in" }', " }", 15, "hook rail", "it has no rail"),
    "a clear for a level": ('{ clear = "7 in" }', "7", 9, "stack", "stack"),
    "a joint that is none": ('back = "3 1/2 in" },', 'back = { width = 9, joint = "glue" } },', 15, "joint", "glue"),
    "a truth for a length": ('"57 in"', "true", 4, "length", "not a length"),
    "a date for a length": ('"57 in"', "1979-05-27", 4, "length", "not a length"),
    "clears that follow each other": (
        '    { level = "hook',
        '    { clear = "open" },\n    { level = "hook',
        9,
        "stack",
        "two",
    ),
}


@pytest.mark.parametrize("old, new, line, field, words", FAULTS.values(), ids=FAULTS)
def test_a_fault_is_told_with_its_line_and_field(old, new, line, field, words):
    text = write_design(bench)
    assert text.count(old) >= 1
    with pytest.raises(DesignFileError) as caught:
        read_design(text.replace(old, new, 1))
    (fault,) = caught.value.faults
    assert caught.value.lines == (line,)
    assert field in fault.field
    assert words in fault.what
    assert f"line {line}, {fault.field}: " in str(caught.value)


def test_all_faults_come_at_once_in_the_order_of_their_lines():
    text = write_design(bench).replace('"7 in"', '"7"').replace("quantity = 3", "quantity = 3.5\nqty = 3")
    text = text.replace('depth = "23 in"', "depth = -3").replace('thickness = "5/8 in"', 'thickness = "5/8"')
    with pytest.raises(DesignFileError) as caught:
        read_design(text)
    assert caught.value.lines == (5, 10, 20, 21, 25)
    assert isinstance(caught.value, DescriptionError)


@pytest.mark.parametrize(
    "first, words",
    [
        ("format = 2", "reads format 1"),
        ("format = true", "reads format 1"),
        ('format = "1"', "format 1"),
        ("", "Begin it"),
    ],
)
def test_a_format_that_is_not_known_is_refused(first, words):
    with pytest.raises(DesignFileError, match=words):
        read_design(write_design(bench).replace("format = 1", first))


def test_text_that_is_not_toml_says_where(tmp_path):
    with pytest.raises(DesignFileError, match=r"is not TOML: .*line 2"):
        read_design("format = 1\nname = Bench\n")
    (tmp_path / "latin.toml").write_bytes(b'format = 1\nname = "B\xe4nk"\n')
    with pytest.raises(DesignFileError, match="not UTF-8"):
        read_design(tmp_path / "latin.toml")
    with pytest.raises(DesignFileError, match=r"nowhere\.toml cannot be read"):
        read_design(tmp_path / "nowhere.toml")


def test_a_stock_that_is_milled_from_itself_is_refused():
    text = write_design(bench) + '"a" = { thickness = 20, start = "b" }\n"b" = { thickness = 20, start = "a" }\n'
    with pytest.raises(DesignFileError, match="is milled from itself"):
        read_design(text)


STRANGE = st.sampled_from(
    [
        "true",
        "-1",
        "0",
        "nan",
        "inf",
        "1e400",
        '""',
        '"x"',
        '"7"',
        "[]",
        "{}",
        "[[1]]",
        "{ a = 1 }",
        "1979-05-27",
        '"butt"',
    ]
)


@settings(max_examples=150)
@given(st.sampled_from(sorted(SHELF)), st.integers(0, 10_000), STRANGE)
def test_whatever_stands_in_place_of_a_value_is_told_and_never_breaks_the_reader(name, seed, strange):
    text = write_design(SHELF[name])
    rng = random.Random(seed)
    places = [n for n, sign in enumerate(text) if text.startswith("= ", n) and text[n - 1] == " "]
    place = rng.choice(places) + 2
    end = min(end for end in (text.find(stop, place) for stop in (",", " }", "\n")) if end > 0)
    changed = text[:place] + strange + text[end:]
    with contextlib.suppress(DesignFileError):  # any other error fails the test
        assert isinstance(read_design(changed), Frame)


class TestLines:
    """Every fault has its line, however many there are and however the file is written."""

    TEXT = """a.b = -1.5
# x = 3 ]
[t."u v"]
k = \"\"\"
z = 2
\"\"\"
m = [
  true,
  { q = 1, r = [-0.5, inf] },
]
[[n]]
o = 'p = 4'
[[n]]
"o.p" = 1
"""

    @pytest.mark.parametrize(
        "path, line",
        [
            (("a", "b"), 1),
            (("t", "u v"), 3),
            (("t", "u v", "k"), 4),
            (("t", "u v", "m"), 7),
            (("t", "u v", "m", 0), 7),
            (("t", "u v", "m", 1), 9),
            (("t", "u v", "m", 1, "r"), 9),
            (("n", 0, "o"), 12),
            (("n", 1, "o.p"), 14),
            (("n", 1, "nothing"), 14),
            (("nothing",), None),
            ((), None),
        ],
    )
    def test_of_a_value(self, path, line):
        assert lines_of(self.TEXT, [path]) == [line]

    def test_three_hundred_faults_are_told_each_on_its_line(self):
        rows = "".join(f'  {{ level = "{n}", front = {{ width = "-3 mm" }} }},\n' for n in range(300))
        text = f'format = 1\nname = "X"\nlength = "9 m"\nrail_stock = "b"\nstack = [\n{rows}]\n'
        with pytest.raises(DesignFileError) as told:
            read_design(text)
        assert [line for line in told.value.lines if line and line > 5] == list(range(6, 306))
