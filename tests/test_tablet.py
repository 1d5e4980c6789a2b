"""The binder on a tablet: one page that stands by itself, lists as tables, sheets that zoom, boxes that stay ticked."""

from __future__ import annotations

import re
from html.parser import HTMLParser

import attrs
import pytest
from designs import DESIGNS
from designs import plain_bench as bench

from benchjoin import assembly, bind, fasten, lay_out
from benchjoin.binding import sheets
from benchjoin.drafting.writers.tablet import STYLE, tablet_page
from benchjoin.errors import PaperError
from benchjoin.tables import Table

LAYOUT = lay_out(bench)


class Read(HTMLParser):
    """What a page holds: its tags with their attributes, its words, and what was left open."""

    def __init__(self, text):
        super().__init__()
        self.tags, self.open, self.words = [], [], []
        self.feed(text)

    def handle_starttag(self, tag, attributes):
        self.tags.append((tag, dict(attributes)))
        if tag not in ("meta", "input", "link", "br"):
            self.open.append(tag)

    def handle_startendtag(self, tag, attributes):
        self.tags.append((tag, dict(attributes)))

    def handle_endtag(self, tag):
        assert self.open.pop() == tag

    def handle_data(self, words):
        self.words.append(words)


@pytest.fixture(scope="module")
def page(tmp_path_factory):
    path = bind(LAYOUT, tmp_path_factory.mktemp("tablet") / "bench.html", appendix=None)
    return path.read_text(encoding="utf-8")


def test_every_sheet_is_on_the_page_and_in_its_contents(page):
    read = Read(page)
    assert not read.open
    drawn = sheets(LAYOUT, appendix=None)
    assert sum(tag == "svg" for tag, _ in read.tags) == len(drawn)
    places = {attributes["id"] for _, attributes in read.tags if "id" in attributes}
    links = [attributes["href"][1:] for tag, attributes in read.tags if tag == "a"]
    assert set(links) <= places
    assert len(links) >= len(drawn)
    assert all(sheet.title in "".join(read.words) for sheet in drawn)


def test_no_two_things_share_a_name_and_every_window_is_there(page):
    names = re.findall(r'\bid="([^"]+)"', page)
    assert len(names) == len(set(names))
    assert set(re.findall(r"url\(#([^)]+)\)", page)) <= set(names)


def test_it_asks_for_nothing_from_outside(page):
    bare = re.sub(r"data:font/[^)]*", "", page)
    asked = [own for own in re.findall(r"(?:https?:)?//[\w.]+[^\s\"')]*", bare) if "www.w3.org/" not in own]
    assert not asked
    read = Read(page)
    assert [tag for tag, _ in read.tags].count("script") == 1
    assert not [1 for tag, own in read.tags if tag in ("img", "link", "iframe") or "src" in own]
    assert not [name for _, own in read.tags for name in own if name.startswith("on")]


def test_lists_are_tables_and_every_row_has_a_box_of_its_own(page):
    read = Read(page)
    keys = [own["data-key"] for tag, own in read.tags if tag == "input" and "data-key" in own]
    assert len(keys) == len(set(keys)) > 10
    assert "Cut list" in "".join(read.words)


def test_steps_and_fasteners_are_lists_too(tmp_path):
    layout = lay_out(DESIGNS["tools"])
    work = fasten(layout, wood="western larch")
    path = bind(
        layout, tmp_path / "tools.html", fastening=work, assembly=assembly(layout, fastening=work), appendix=None
    )
    words = "".join(Read(path.read_text(encoding="utf-8")).words)
    assert "Putting it together" in words
    assert "Fasteners and drills" in words


def test_names_with_markup_stay_words():
    odd = '<script>alert(1)</script> & "quoted"'
    text = tablet_page(
        odd, sheets(lay_out(attrs.evolve(bench, name=odd)), only=["cut list"]), [Table(odd, (odd,), ((odd,),))]
    )
    read = Read(text)
    assert [tag for tag, _ in read.tags].count("script") == 1
    assert "alert(1)</script>" not in text


def test_other_endings_are_refused(tmp_path):
    with pytest.raises(PaperError, match=r"neither in \.pdf nor in \.html"):
        bind(LAYOUT, tmp_path / "bench.epub")


def luminance(colour):
    """Relative luminance of WCAG 2."""
    parts = [int(colour[n : n + 2], 16) / 255 for n in (1, 3, 5)]
    linear = [own / 12.92 if own <= 0.04045 else ((own + 0.055) / 1.055) ** 2.4 for own in parts]
    return sum(share * own for share, own in zip((0.2126, 0.7152, 0.0722), linear, strict=True))


@pytest.mark.parametrize("scheme", [0, 1], ids=["light", "dark"])
def test_words_stand_out_as_wcag_2_aa_asks(scheme):
    """4.5 to 1 for words, 3 to 1 for lines that are needed to see a control (WCAG 2, 1.4.3 and 1.4.11)."""
    said = re.findall(r"--(\w+): (#[0-9a-f]{6})", STYLE)
    own = dict(said[5 * scheme : 5 * scheme + 5])

    def contrast(one, other):
        high, low = sorted((luminance(own[one]), luminance(own[other])), reverse=True)
        return (high + 0.05) / (low + 0.05)

    for back in ("back", "soft"):
        assert contrast("ink", back) >= 4.5
    assert contrast("link", "back") >= 4.5
    assert contrast("line", "back") >= 3.0
