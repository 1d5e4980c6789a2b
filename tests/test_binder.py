"""The binder: one PDF, its sheets numbered, bookmarked, listed and searchable, and the same bytes every time."""

import hashlib
import os
import re
import subprocess
import sys
from pathlib import Path

import pypdf
import pypdfium2
import pytest
from designs import plain_bench as bench
from designs import plain_rack as rack
from designs import plain_stand as stand
from read_paper import read_by_pdfminer

from benchjoin import alter, bind, lay_out
from benchjoin.binding import SECTIONS, sheets
from benchjoin.drawings.making.house import House
from benchjoin.drawings.views import all_views, arrangement, elevation, isometric, section
from benchjoin.errors import AddressError, PaperError

DESIGNS = {"bench": bench, "rack": rack, "stand": stand}


@pytest.fixture(scope="module")
def bound(tmp_path_factory):
    folder = tmp_path_factory.mktemp("binders")
    return {name: bind(lay_out(frame), folder / f"{name}.pdf") for name, frame in DESIGNS.items()}


@pytest.mark.parametrize("name", DESIGNS)
def test_every_bookmark_opens_the_page_whose_title_block_carries_its_number(bound, name):
    reader = pypdf.PdfReader(bound[name])
    count = len(reader.pages)
    places = [reader.get_destination_page_number(mark) for mark in reader.outline]
    assert places == list(range(count))
    for page, label in zip(reader.pages, reader.page_labels, strict=True):
        assert f"{label} of {count}" in " ".join(page.extract_text().split())


@pytest.mark.parametrize("name", DESIGNS)
def test_the_contents_name_every_sheet_that_follows_with_its_number(bound, name):
    pdf = pypdfium2.PdfDocument(bound[name])
    words = " ".join(page.get_textpage().get_text_range() for page in list(pdf)[:2])
    listed = re.sub(r"\s+", " ", words).partition("Contents ")[2]
    pages: dict[str, list[int]] = {}
    for sheet in sheets(lay_out(DESIGNS[name]))[1:]:
        for chapter in sheet.chapters:
            pages.setdefault(chapter, []).append(sheet.number)
    pages.pop("Contents", None)
    assert len(pages) > 10
    for chapter, numbers in pages.items():
        told = [str(numbers[0]), f"{numbers[0]} and {numbers[-1]}", f"{numbers[0]} to {numbers[-1]}"][
            len(numbers[:3]) - 1
        ]
        assert f"{told} {chapter}" in listed


@pytest.mark.parametrize("name", DESIGNS)
def test_every_kind_of_sheet_stands_in_the_contents_once(bound, name):
    pdf = pypdfium2.PdfDocument(bound[name])
    words = " ".join(page.get_textpage().get_text_range() for page in list(pdf)[:2])
    listed = re.sub(r"\s+", " ", words).partition("Contents ")[2].partition("where nothing else")[0]
    assert listed.count("Milling") == 1


def test_two_readers_agree_on_pages_and_find_the_words(bound):
    path = bound["bench"]
    told = [[word.text for line in page.words for word in line] for page in read_by_pdfminer(path)]
    also_told = [page.get_textpage().get_text_range().split() for page in pypdfium2.PdfDocument(path)]
    assert [sorted(words) for words in told] == [sorted(words) for words in also_told]
    everything = " ".join(word for words in told for word in words)
    for words in ("Honey-house bench", "head rail", "back left leg", "larch 2x4, milled"):
        assert words in everything


def test_a_binder_weighs_less_than_two_megabytes(bound):
    assert all(path.stat().st_size < 2_000_000 for path in bound.values())


def test_only_the_sheets_that_are_asked_for_are_bound():
    layout = lay_out(bench)
    assert [sheet.name for sheet in sheets(layout, only=["cut list"])] == ["cut-list"]
    names = [sheet.name for sheet in sheets(layout, only=["joints", "cover"])]
    assert names[0] == "cover"
    assert all(name.startswith("joints") for name in names[1:])
    with pytest.raises(AddressError, match=r"cutting.*cut list"):
        sheets(layout, only=["cutting"])


def test_a_binder_without_its_appendix_holds_no_page_larger_than_asked_for():
    made = sheets(lay_out(bench), paper="Tabloid", appendix=None)
    assert {tuple(sorted((round(s.width, 1), round(s.height, 1)))) for s in made} == {(279.4, 431.8)}


@pytest.mark.parametrize("paper", ["Letter", "A4", "Tabloid", "A3"])
def test_the_bench_is_bound_on_the_usual_papers(paper):
    made = sheets(lay_out(bench), paper=paper, appendix=None)
    assert [sheet.number for sheet in made] == list(range(1, len(made) + 1))
    assert {sheet.count for sheet in made} == {len(made)}


def test_what_moved_since_an_earlier_layout_is_bound_when_asked_for():
    before = lay_out(bench)
    after = lay_out(alter(bench, {"bench.front.width": "3 7/16 in"}))
    (moved,) = sheets(after, only=["what moved"], before=before)
    told = " ".join(getattr(item, "string", "") for item in moved.drawing)
    assert "notch for bench/front rail, bottom" in told
    assert sheets(after, only=["what moved"]) == ()


def test_names_date_and_revision_stand_in_every_title_block():
    house = House(owner="Bee club", drawn_by="the treasurer", date="2031-04-01", revision="C", number="HH-7")
    for sheet in sheets(lay_out(bench), house=house):
        told = {getattr(item, "string", "") for item in sheet.whole}
        assert {"Bee club", "2031-04-01", "C", "HH-7"} <= told, sheet.name


@pytest.mark.slow
def test_a_layout_with_errors_is_bound_without_what_is_for_the_wood():
    layout = lay_out(alter(rack, {"tray 1.ends.raised": 0}))
    assert layout.errors()
    names = {sheet.name for sheet in sheets(layout)}
    assert any("findings" in name for name in names)
    assert not any(name.startswith("set-") or "settings" in name or "milling" in name for name in names)


def test_a_frame_too_long_for_a_full_size_page_is_bound_all_the_same():
    made = sheets(lay_out(alter(rack, {"length": 6000})))
    assert max(max(sheet.width, sheet.height) for sheet in made) <= 5080


def test_a_binder_is_a_pdf(tmp_path):
    with pytest.raises(PaperError, match=r"binder\.svg"):
        bind(lay_out(bench), tmp_path / "binder.svg")
    assert list(tmp_path.iterdir()) == []


@pytest.mark.slow
def test_every_kind_of_sheet_is_met_by_one_of_the_designs():
    made = {name for frame in DESIGNS.values() for name in SECTIONS if sheets(lay_out(frame), only=[name])}
    assert made == set(SECTIONS) - {"what moved", "fasteners", "strength", "board plan", "assembly"}  # these are given


@pytest.mark.slow
def test_the_same_design_gives_the_same_bytes_wherever_it_is_bound(tmp_path):
    script = (
        f"import sys; sys.path.insert(0, {str(Path(__file__).parent)!r})\n"
        "from designs import plain_stand\nfrom benchjoin import bind, lay_out\n"
        "bind(lay_out(plain_stand), 'binder.pdf')\n"
    )
    sums = set()
    for n, (locale, seed) in enumerate([("C", "0"), ("C.UTF-8", "1"), ("de_DE.UTF-8", "77")]):
        folder = tmp_path / f"folder {n}"
        folder.mkdir()
        env = {**os.environ, "LC_ALL": locale, "PYTHONHASHSEED": seed, "PYTHONUTF8": "0"}
        subprocess.run([sys.executable, "-c", script], cwd=folder, env=env, check=True)
        sums.add(hashlib.sha256((folder / "binder.pdf").read_bytes()).hexdigest())
    assert len(sums) == 1


def test_a_binder_works_out_each_picture_and_each_view_of_the_piece_once(monkeypatch):
    asked = []

    def counted(name, module):
        work_out = getattr(module, name)

        def and_count(parts, *eye):
            asked.append((name, *eye, tuple((part.name, part.placement, part.size) for part in parts)))
            return work_out(parts, *eye)

        monkeypatch.setattr(module, name, and_count)

    counted("picture", isometric)
    for module in (all_views, arrangement, elevation, section):
        counted("view", module)
    sheets(lay_out(rack), appendix=None)
    pictures = [one for one in asked if one[0] == "picture"]
    assert len(pictures) == 2  # as it stands, and drawn apart
    assert len(asked) > 5
    assert len(set(asked)) == len(asked)
