"""One maker of sheets: what the shop asks for reaches every sheet, and a new drawing is one function and one line."""

from __future__ import annotations

import ast
import re
import subprocess
import sys
from pathlib import Path
from typing import get_type_hints

import attrs
import pytest
from designs import plain_bench as bench
from designs import plain_rack as rack
from designs import plain_stand as stand

import benchjoin
from benchjoin import alter, elevation, lay_out, plan, section, set_page
from benchjoin.binding import SECTIONS, bind, sheets
from benchjoin.drafting.linework import Linework
from benchjoin.drafting.primitives import Clipped, Disc, Fill, Line, Text
from benchjoin.drafting.sheets.figure import Figure
from benchjoin.drafting.sheets.flow import flow
from benchjoin.drawings.lists.budget_sheet import error_budget_sheets
from benchjoin.drawings.lists.cover import cover
from benchjoin.drawings.lists.milling_sheet import milling_sheets
from benchjoin.drawings.lists.parts_sheet import parts_sheet
from benchjoin.drawings.lists.settings_sheet import settings_sheets
from benchjoin.drawings.lists.table_sheets import list_sheets
from benchjoin.drawings.making import asked
from benchjoin.drawings.making.asked import Asked
from benchjoin.drawings.making.fitting import fit_view
from benchjoin.drawings.making.house import House
from benchjoin.drawings.templates.pattern.pages import notch_patterns
from benchjoin.drawings.templates.set.tiles import set_tiles
from benchjoin.drawings.templates.stick.pages import story_sticks
from benchjoin.drawings.views.isometric import exploded, isometric
from benchjoin.drawings.views.joint.pages import joint_details
from benchjoin.drawings.views.part_drawing import part_drawings
from benchjoin.errors import PaperError
from benchjoin.template_pages import template_sheets, templates

PACKAGE = Path(benchjoin.__file__).parent
BENCH = lay_out(bench)
BOLD = House(linework=Linework(wide=1.0, narrow=0.5))


# --- linework ---


def pens(sheet):
    return {float(width) for width in re.findall(r'stroke-width="([\d.]+)"', sheet.svg())}


def everything(layout):
    yield from sheets(layout, house=BOLD, before=lay_out(alter(layout.frame, {"fit": "easy"})))
    yield from template_sheets(layout, house=BOLD)
    yield isometric(layout, house=BOLD)
    yield exploded(layout, house=BOLD)


@pytest.mark.parametrize("frame", [bench, stand], ids=["bench", "stand"])
def test_every_line_of_every_sheet_is_drawn_with_the_pens_of_the_house(frame):
    made = list(everything(lay_out(frame)))
    kinds = {re.sub(r"(-[\da-z]{1,2})+$", "", sheet.name) for sheet in made}
    assert len(kinds) > 15
    for sheet in made:
        # a border is as wide as the wide lines, if these are over 0.7; where wide lines would run together the group is
        # a thinner one, and shade has the finest line
        group = {sheet.linework.wide, sheet.linework.narrow, max(0.7, sheet.linework.wide), 0.13}
        assert pens(sheet) <= group, sheet.name
        assert sheet.linework.wide <= 1.0
        assert sheet.linework.narrow in pens(sheet), sheet.name


def test_only_the_maker_makes_a_sheet():
    makers = [
        str(path.relative_to(PACKAGE))
        for path in sorted(PACKAGE.rglob("*.py"))
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8")))
        if isinstance(node, ast.Call) and ast.unparse(node.func).rpartition(".")[2] == "Sheet"
    ]
    assert makers == ["drawings/making/maker.py"]


# --- what is asked ---

GROUPS = [group for group in vars(asked).values() if hasattr(group, "__total__") and group.__module__ == asked.__name__]
DRAWINGS = {
    "elevation": lambda **how: elevation(BENCH, "front", **how),
    "plan": lambda **how: plan(BENCH, **how),
    "section": lambda **how: section(BENCH, "bench", **how),
    "isometric": lambda **how: isometric(BENCH, **how),
    "exploded": lambda **how: exploded(BENCH, **how),
    "part drawings": lambda **how: part_drawings(BENCH, **how),
    "joint details": lambda **how: joint_details(BENCH, **how),
    "set page": lambda **how: set_page(BENCH, "A", **how),
    "set tiles": lambda **how: set_tiles(BENCH, "A", **how),
    "story sticks": lambda **how: story_sticks(BENCH, **how),
    "patterns": lambda **how: notch_patterns(BENCH, **how),
    "cover": lambda **how: cover(BENCH, **how),
    "parts sheet": lambda **how: parts_sheet(BENCH, **how),
    "list": lambda **how: list_sheets(BENCH, benchjoin.cut_list(BENCH), name="list", kind="List", **how),
    "milling": lambda **how: milling_sheets(BENCH, **how),
    "settings": lambda **how: settings_sheets(BENCH, **how),
    "error budget": lambda **how: error_budget_sheets(BENCH, **how),
    "sheets": lambda **how: sheets(BENCH, **how),
    "templates": lambda **how: template_sheets(BENCH, **how),
}


@pytest.mark.parametrize("group", GROUPS, ids=lambda group: group.__name__)
def test_what_a_drawing_takes_is_what_all_of_them_are_asked(group):
    known = {**get_type_hints(Asked), "house": House | None}  # without one, the plain one is taken
    for name, kind in get_type_hints(group).items():
        assert known[name] == kind


def test_every_option_is_taken_by_a_drawing():
    taken = {name for group in GROUPS for name in group.__annotations__}
    own = {field.name for field in attrs.fields(Asked)}
    assert own - taken == {"layout", "marking", "known", "numbered", "shared"}
    assert taken <= own


@pytest.mark.parametrize("name", DRAWINGS)
def test_a_keyword_that_a_drawing_does_not_know_is_answered_with_those_it_knows(name):
    with pytest.raises(TypeError, match=r"no option 'papre' here. There are paper, house"):
        DRAWINGS[name](papre="A4")


def test_a_keyword_of_another_drawing_is_not_passed_over():
    with pytest.raises(TypeError, match="'margin'"):
        elevation(BENCH, "front", margin=5)
    with pytest.raises(TypeError, match="'piece'"):
        notch_patterns(BENCH, piece=2)


def test_files_take_no_strange_keyword_either(tmp_path):
    for write in (bind, templates):
        with pytest.raises(TypeError, match="'papre'"):
            write(BENCH, tmp_path / "x.pdf", papre="A4")
    assert list(tmp_path.iterdir()) == []


# --- fingerprints ---

SAMPLE = (
    Line(((0, 0), (10, 5))),
    Fill((((0, 0), (1, 0), (0, 1)),)),
    Disc((3, 3), 1),
    Text((2, 2), "57"),
    Clipped((Line(((0, 0), (90, 0))), Line(((50, 50), (60, 60)))), (0, -1, 20, 1)),
)
OTHERS = {
    "a line": (Line(((0, 0), (10, 5.01))), *SAMPLE[1:]),
    "a kind of line": (Line(((0, 0), (10, 5)), "visible"), *SAMPLE[1:]),
    "a tone": (SAMPLE[0], Fill(SAMPLE[1].rings, "white"), *SAMPLE[2:]),
    "a radius": (*SAMPLE[:2], Disc((3, 3), 1.01), *SAMPLE[3:]),
    "a word": (*SAMPLE[:3], Text((2, 2), "58"), SAMPLE[4]),
    "a turn": (*SAMPLE[:3], Text((2, 2), "57", turn=90), SAMPLE[4]),
    "what is seen in a window": (*SAMPLE[:4], Clipped((Line(((0, 0), (9, 0))),), (0, -1, 20, 1))),
}


def mark(drawing):
    return Figure(name="f", drawing=drawing).fingerprint


@pytest.mark.parametrize("what", OTHERS)
def test_another_fingerprint_where_something_is_drawn_otherwise(what):
    assert mark(OTHERS[what]) != mark(SAMPLE)


def test_a_fingerprint_knows_neither_place_nor_what_is_not_seen():
    whole = Figure(name="f", drawing=SAMPLE)
    for by in (0.1, 123.4567, -1 / 3):
        assert whole.moved(by, -by).fingerprint == whole.fingerprint
    seen = Clipped((Line(((0, 0), (90, 0))),), (0, -1, 20, 1))
    assert mark((*SAMPLE[:4], seen)) == mark(SAMPLE)
    assert mark(SAMPLE[1:]) != mark(SAMPLE)


def test_fingerprints_are_the_same_in_every_process():
    script = (
        f"import sys; sys.path.insert(0, {str(Path(__file__).parents[1])!r})\n"
        "from designs import plain_bench\nfrom benchjoin import elevation, lay_out, set_page\n"
        "L = lay_out(plain_bench)\n"
        "print(elevation(L, 'front').fingerprints, set_page(L, 'A').fingerprints)"
    )
    ask = [sys.executable, "-c", script]
    said = {
        subprocess.run(ask, env={"PYTHONHASHSEED": seed}, capture_output=True, check=True).stdout for seed in ("0", "1")
    }
    assert len(said) == 1
    own = f"{elevation(BENCH, 'front').fingerprints} {set_page(BENCH, 'A').fingerprints}"
    assert said.pop().decode().strip() == own


def test_a_shoulder_that_moves_by_a_division_is_seen_on_the_figures_that_show_it():
    old, new = BENCH, lay_out(alter(bench, {"hook rail/back rail.width": "3 7/16 in"}))  # 3 1/2 less 1/16
    for draw in (lambda layout: set_page(layout, "A"), lambda layout: elevation(layout, "back")):
        assert draw(old).fingerprints != draw(new).fingerprints
    assert plan(old).fingerprints == plan(new).fingerprints
    before, after = ({k: v for s in part_drawings(own) for k, v in s.fingerprints.items()} for own in (old, new))
    assert {name for name in before if before[name] != after.get(name)} >= {name for name in before if "A3" in name}


@pytest.mark.parametrize("papers", [("A4", "Letter"), ("A4", "300 x 400 mm")])
def test_paper_and_place_do_not_change_a_fingerprint_at_one_scale(papers):
    one, other = (elevation(lay_out(rack), "front", paper=paper) for paper in papers)
    assert one.scale == other.scale
    assert (one.width, one.drawing) != (other.width, other.drawing)
    assert one.fingerprints == other.fingerprints


def test_every_sheet_knows_its_figures():
    for sheet in (*sheets(BENCH), *template_sheets(BENCH)):
        assert sheet.fingerprints, sheet.name
        assert len(sheet.fingerprints) == len(sheet.figures), sheet.name
        for figure in sheet.figures:
            assert set(figure.drawing) <= set(sheet.drawing)


# --- a new drawing ---


def a_new_drawing(layout, asked):
    """A square as wide as the piece is deep, which finds something to say."""
    side = layout.overall(asked.piece)[1]

    def draw(scale):
        ring = ((0, 0), (side * scale, 0), (side * scale, side * scale), (0, side * scale))
        return Figure(name="Square", drawing=(Line(ring, "visible", closed=True),))

    yield fit_view(asked, draw, name="square", kind="Square", title="Square")


def test_a_new_drawing_is_one_function_and_one_line(monkeypatch, tmp_path):
    monkeypatch.setitem(SECTIONS, "square", a_new_drawing)
    (sheet,) = sheets(BENCH, only=["square"], house=BOLD, paper="A3")
    assert (sheet.name, sheet.title, sheet.number, sheet.count) == ("square", "Square", 1, 1)
    assert sheet.linework == BOLD.linework
    assert sorted((sheet.width, sheet.height)) == [297, 420]
    assert list(sheet.fingerprints) == ["Square"]
    assert [s.name for s in sheets(BENCH)][-1] == "square"
    assert bind(BENCH, tmp_path / "b.pdf", only=["square"]).read_bytes().startswith(b"%PDF")


# --- tables that run on ---


def rows(count, name="Rows"):
    lines = [Line(((0, -10 * n), (50, -10 * n))) for n in range(count + 1)]
    words = [Text((1, -10 * n - 8), f"{name} {n}") for n in range(count)]
    wall = Line(((25, 0), (25, -10 * count)))
    head = (Line(((0, 0), (50, 0))), Text((1, -4), "Head"), Line(((0, -5), (50, -5))))
    return Figure(name=name, drawing=(*lines, *words, wall), breaks=[-10 * n for n in range(count + 1)], again=head)


def told(page):
    return [item.string for figure in page for item in figure.drawing if isinstance(item, Text)]


def test_a_figure_goes_on_where_it_may_break_and_its_heading_is_drawn_again():
    pages = list(flow([rows(5)], (10, 10, 60, 35), 5.0))
    assert [told(page) for page in pages] == [["Rows 0", "Rows 1"], ["Head", "Rows 2", "Rows 3"], ["Head", "Rows 4"]]
    walls = [i for page in pages for f in page for i in f.drawing if isinstance(i, Line) and i.points[0][0] == 35]
    assert [sorted((a[1], b[1])) for a, b in (wall.points for wall in walls)] == [[15, 35], [10, 30], [20, 30]]
    assert all(figure.bounds[1] >= 10 and figure.bounds[3] <= 35 for page in pages for figure in page)


def test_a_figure_that_goes_on_no_page_is_refused():
    with pytest.raises(PaperError, match="A row of 'Rows'"):
        list(flow([rows(2)], (0, 0, 50, 9), 5.0))


def test_a_figure_that_goes_on_a_page_whole_is_not_broken():
    pages = list(flow([rows(2, "One"), rows(3, "Two")], (0, 0, 50, 40), 5.0))
    assert [[figure.name for figure in page] for page in pages] == [["One"], ["Two"]]
