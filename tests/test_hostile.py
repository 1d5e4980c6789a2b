"""Descriptions and files that nobody writes by hand: each is refused with a sentence, or drawn as what it is."""

from __future__ import annotations

import itertools
import math
import re
from html.parser import HTMLParser
from xml.etree import ElementTree

import attrs
import pytest
from designs import plain_bench as bench
from hypothesis import given
from hypothesis import strategies as st

from benchjoin import Clear, Level, Stock, alter, bind, elevation, keep, lay_out
from benchjoin.binding import sheets
from benchjoin.drafting.primitives import Text
from benchjoin.drafting.writers.naming import file_name
from benchjoin.errors import BenchjoinError, DesignFileError, LumberError
from benchjoin.frame.bin import Bin
from benchjoin.frame.design.file import read_design, write_design
from benchjoin.frame.finished import Finished, FinishedCut
from benchjoin.frame.fit import Fit
from benchjoin.sweep import sweep

NUMBERS = [0, -1, math.nan, math.inf, -math.inf, 1e300, 10**400, "x", None, [1], "-3 mm", True]


@pytest.mark.parametrize("value", [*NUMBERS[1:], 100_000], ids=lambda own: str(own)[:12])
def test_a_fit_that_holds_nothing_is_refused(value):
    with pytest.raises(BenchjoinError):
        alter(bench, {"fit": value})
    with pytest.raises(BenchjoinError):
        Fit(notch=value)


@pytest.mark.parametrize("value", [*NUMBERS[:-3], True], ids=lambda own: str(own)[:12])
def test_a_density_that_is_none_is_refused(value):
    for given_so in (value, {"larch 2x4, milled": value}):
        if given_so is None:
            continue
        with pytest.raises(LumberError, match="density"):
            sweep(bench, {"length": ["50 in"]}, ["weights"], density=given_so)


CUT = FinishedCut("rail", "front", "notch", (10.0, 0.0, 0.0), (90.0, 60.0, 15.0))


@pytest.mark.parametrize(
    "change",
    [
        {"length": 0}, {"length": -5}, {"length": math.nan}, {"length": "x"}, {"section": 5}, {"section": (0, 3)},
        {"section": (1, 2, 3)}, {"state": "done"}, {"state": "sized"}, {"cuts": 5}, {"cuts": (5,)},
        {"cuts": (attrs.evolve(CUT, low=(600.0, 0.0, 0.0), high=(700.0, 60.0, 15.0)),)},
    ],
    ids=str,
)  # fmt: skip
def test_a_finished_part_that_cannot_be_is_refused(change):
    sound = {"state": "cut", "length": 500.0, "section": (60.0, 40.0), "cuts": (CUT,)}
    assert Finished(**sound).cuts == (CUT,)
    with pytest.raises(BenchjoinError):
        Finished(**{**sound, **change})


@pytest.mark.parametrize(
    "change",
    [
        {"face": "up"}, {"mate": "a\x1b[31m"}, {"mate": 5}, {"kind": "x\n"}, {"low": (1, 2)},
        {"high": (math.nan, 1, 2)},
        {"low": "abc"}, {"high": (5.0, 0.0, 0.0)}, {"sits": "upper"}, {"high": (1e300, 1.0, 1.0)},
    ],
    ids=str,
)  # fmt: skip
def test_a_finished_cut_that_cannot_be_is_refused(change):
    with pytest.raises(BenchjoinError) as refused:
        attrs.evolve(CUT, **change)
    assert "\x1b" not in str(refused.value)  # nothing of it reaches the terminal


def test_what_has_no_end_is_refused():
    for change in (
        {"stack": itertools.repeat(Clear("1 mm"))},
        {"bays": itertools.repeat(Clear())},
        {"stack": [Level(f"l{n}", front=5) for n in range(1200)]},
        {"bins": itertools.repeat(Bin("crate", length=300, depth=200, height=150, on="bench"))},
    ):
        with pytest.raises(BenchjoinError, match="items, which are the most"):
            attrs.evolve(bench, **change)
    with pytest.raises(BenchjoinError, match="items, which are the most"):
        Level("top", front=50, carries=itertools.repeat(bench.levels()[0].carries or Clear()))


def test_stocks_that_are_milled_from_each_other_without_end_are_refused():
    def milled(times):
        one = None
        for _ in range(times):
            one = Stock("s", thickness=20, width=50, start=one)
        return one

    assert milled(20).start is not None
    with pytest.raises(BenchjoinError, match="times over"):
        milled(1500)


@pytest.mark.parametrize(
    "text, words",
    [
        ("format = 1\nname = " + "[" * 500 + "]" * 500 + "\n", "nested too deeply|list|text"),
        ("format = 1\nname = " + "[" * 50_000 + "]" * 50_000 + "\n", "nested too deeply"),
        ("format = 1\n" + "[a" + ".a" * 20_000 + "]\n", "nested too deeply|does not belong|not describe"),
        ("format = 1\nlength = " + "9" * 5000 + "\n", "digits"),
        ("format = 1\nlength = 1e999\n", "length"),
        ("format = 1\nname = " + '"' + "x" * 1_000_000 + '"\n', "name"),
        ("format = 1\n\0", "not TOML"),
    ],
    ids=["500 lists", "50,000 lists", "a long key", "5,000 digits", "1e999", "a long name", "nought"],
)
def test_files_that_nobody_writes_by_hand_are_refused(text, words):
    with pytest.raises(DesignFileError, match=words):
        read_design(text)


MARKUP = [
    "<script>alert(1)</script>", "&lt;b&gt; &amp; ]]>", '"><img src=x onerror=alert(1)>', "{{7*7}} ${x} %s %(x)s",
    "../../etc/passwd", "C:\\con", "=cmd|'/c calc'!A0", "javascript:alert(1)", "שלום עולם", "🪚🪵", "<!--", "<![CDATA[x]]>",  # noqa: E501
]  # fmt: skip


class Page(HTMLParser):
    """What a page holds that acts, or that points out of it."""

    def __init__(self):
        super().__init__()
        self.scripts, self.acts, self.points = 0, [], []

    def handle_starttag(self, tag, attributes):
        self.scripts += tag == "script"
        for name, value in attributes:
            if name.startswith("on"):
                self.acts.append((tag, name))
            if name in ("href", "src", "xlink:href", "action") and not (value or "").startswith(("#", "data:")):
                self.points.append((tag, name, value))


@pytest.mark.filterwarnings("ignore::benchjoin.errors.OtherLettering")
@pytest.mark.parametrize("words", MARKUP, ids=range(len(MARKUP)))
def test_markup_in_names_is_words_on_every_page(words, tmp_path):
    called = re.sub("[./]", "-", words)  # which addresses use
    levels = [attrs.evolve(own, name=called) if getattr(own, "name", "") == "bench" else own for own in bench.stack]
    frame = attrs.evolve(bench, name=words, stack=levels, quantity=1)
    layout = lay_out(frame)
    text = elevation(layout, "front").svg()
    tree = ElementTree.fromstring(text)
    assert not {own.tag.rpartition("}")[2] for own in tree.iter()} & {"script", "foreignObject", "a", "image", "use"}
    assert not [key for own in tree.iter() for key in own.attrib if key.rpartition("}")[2].startswith("on")]
    assert not re.findall(r"url\((?!#|\"?data:)", text)
    plain = bind(lay_out(attrs.evolve(bench, quantity=1)), tmp_path / "0.html")
    odd = bind(layout, tmp_path / "1.html")
    pages = []
    for path in (plain, odd):
        page = Page()
        page.feed(path.read_text(encoding="utf-8"))
        pages.append(page)
    assert pages[1].scripts == pages[0].scripts  # ours, and no other
    assert pages[1].acts == pages[0].acts
    assert pages[0].points == pages[1].points == []
    assert {path.name for path in tmp_path.iterdir()} == {"0.html", "1.html"}
    assert read_design(write_design(frame)) == frame
    for view in (frame, layout, keep(layout, "front left leg", state="cut")):
        page = Page()
        page.feed(view._repr_html_())
        assert (page.scripts, page.acts, page.points) == (0, [], [])


@given(st.text(max_size=300))
def test_a_name_of_a_file_stays_in_its_folder(words):
    name = file_name(words)
    assert name
    assert not set(name) & set('/\\:*?"<>|\0')
    assert name not in (".", "..")
    assert len(name.encode()) < 200


def test_letters_that_the_lettering_lacks_are_told():
    def told(name):
        made = sheets(lay_out(attrs.evolve(bench, name=name)), only=["findings", "cut list"])
        words = [item.string for sheet in made for item in sheet.whole if isinstance(item, Text)]
        return "no sign for some letters of" in " ".join(words)

    assert told("שלום")
    assert told("Bench 🪚")
    assert not told("Bänk ½ Лавка Θρανίον")
