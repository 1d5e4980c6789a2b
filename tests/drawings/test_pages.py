"""Every sheet of the gallery designs: texts that can be read, nothing over the border, no page for a frame with errors.

Asks the recording of each sheet, as it is before a file is written.
"""

from __future__ import annotations

import math
import re

import pytest
import shapely
from designs import plain_bench as bench
from designs import plain_rack as rack

from benchjoin import Notch, Rail, alter, bind, elevation, lay_out, set_page
from benchjoin.binding import sheets
from benchjoin.drafting.primitives import Line, Text, bounds, text_box
from benchjoin.drafting.sheets.clashes import clashes
from benchjoin.drafting.writers import pdf
from benchjoin.errors import AddressError, BenchjoinError, CannotDraw, MissingLibrary, PaperError

LEAST = 2.5  # mm, height of figures that can be read at arm's length
LABEL = 1.8  # mm, what a field of the title block is called
FIELDS = {
    "Shop",
    "Kind of drawing",
    "Drawn by",
    "Approved by",
    "Scale",
    "Units",
    "Title",
    "Part of the work",
    "Drawing no.",
    "Rev.",
    "Date",
    "Sheet",
}
DESIGNS = {"bench": bench, "rack": rack}
BOUND = {design: {sheet.name: sheet for sheet in sheets(lay_out(frame))} for design, frame in DESIGNS.items()}
PAGES = [(design, name) for design, bound in BOUND.items() for name in bound]
REDUCED = [(design, name) for design, name in PAGES if name.endswith("-reduced")]
EXPECTED = {
    "bench": ["cover", "cut-list", "set-a-reduced", "arrangement", "elevation-front", "elevation-left", "set-a"],
    "rack": [
        *("cover", "cut-list"),
        *("set-a-reduced", "set-b-reduced", "set-c-reduced"),
        *("arrangement", "elevation-front", "elevation-left"),
        *("set-a", "set-b", "set-c"),
    ],
}


@pytest.fixture(params=PAGES, ids=" ".join)
def sheet(request):
    design, name = request.param
    return BOUND[design][name]


def texts(drawing):
    return [item for item in drawing if isinstance(item, Text)]


def words(sheet):
    return " ".join(text.string for text in texts(sheet.whole))


def furniture(sheet):
    """Border and title block: what the sheet has over its drawing."""
    return sheet.whole[: len(sheet.whole) - len(sheet.drawing)]


def border(sheet):
    (line,) = (item for item in sheet.whole if isinstance(item, Line) and item.kind == "border")
    return shapely.Polygon(line.points)


def title_block(sheet):
    (line,) = (item for item in furniture(sheet) if isinstance(item, Line) and item.kind == "visible" and item.closed)
    return shapely.box(*bounds((line,)))


@pytest.mark.parametrize("design", DESIGNS)
def test_a_binder_holds_lists_elevations_and_sets_in_this_order(design):
    own = [name for names in BOUND[design] for name in re.sub(r"-\d+$", "", names).split("-and-")]
    assert [name for name in dict.fromkeys(own) if name in EXPECTED[design]] == EXPECTED[design]
    count = len(BOUND[design])
    assert [(s.number, s.count) for s in BOUND[design].values()] == [(n, count) for n in range(1, count + 1)]


def test_no_text_lies_on_another_or_on_a_line(sheet):
    assert len(texts(sheet.drawing)) > 5
    assert [str(clash) for clash in clashes(sheet.whole)] == []


def test_two_texts_at_one_place_are_found():
    drawing = BOUND["bench"]["elevation-front"].whole
    again = texts(drawing)[-1]
    assert [(clash.text, clash.other) for clash in clashes((*drawing, again))] == [(again, again)]


def test_nothing_lies_outside_the_border(sheet):
    left, low, right, high = border(sheet).bounds
    lies = sheet.width > sheet.height and sheet.height <= 216  # larger paper is folded, and bound on its left
    assert (low, sheet.width - right) == pytest.approx((10, 10))
    assert left == pytest.approx(10 if sheet.full_size or lies else 20)  # 20 mm for holes, along the head of what lies
    assert sheet.height - high == pytest.approx(20 if lies and not sheet.full_size else 10)
    x0, y0, x1, y1 = bounds(sheet.whole)
    assert x0 >= left - 1e-9
    assert y0 >= low - 1e-9
    assert x1 <= right + 1e-9
    assert y1 <= high + 1e-9


def test_no_text_touches_the_border(sheet):
    edge = border(sheet).exterior
    assert min(edge.distance(text_box(text)) for text in texts(sheet.whole)) > 0.3


def test_nothing_is_drawn_into_the_title_block(sheet):
    block = title_block(sheet)
    assert block.within(border(sheet).buffer(1e-6))
    for item in sheet.drawing:
        x0, y0, x1, y1 = bounds((item,))
        assert shapely.box(x0, y0, x1, y1).intersection(block).area == 0
        assert not shapely.LineString([(x0, y0), (x1, y1)]).crosses(block)


def test_every_text_is_large_enough_to_read(sheet):
    assert min(text.height for text in texts(sheet.drawing)) >= LEAST
    small = [text for text in texts(furniture(sheet)) if text.height < LEAST]
    assert {text.height for text in small} == {LABEL}
    assert {text.string for text in small} <= FIELDS


def test_a_text_is_upright_or_reads_from_the_right(sheet):
    assert {text.turn for text in texts(sheet.whole)} <= {0.0, 90.0}


def test_every_number_of_a_sheet_is_finite(sheet):
    assert all(math.isfinite(edge) for item in sheet.whole for edge in bounds((item,)))


# --- reduced and full size ---


@pytest.mark.parametrize("design, name", REDUCED)
def test_a_reduced_page_says_so(design, name):
    reduced, full = BOUND[design][name], BOUND[design][name.removesuffix("-reduced")]
    assert "This picture is reduced: do not lay it on the wood." in joined(reduced)
    assert reduced.title.endswith("reduced")
    assert not reduced.full_size
    assert reduced.scale != "1:1"
    assert reduced.scale in [text.string for text in texts(furniture(reduced))]
    assert "reduced" not in joined(full)
    assert full.full_size
    assert "1:1" in [text.string for text in texts(furniture(full))]


@pytest.mark.parametrize("design, name", PAGES)
def test_only_a_full_size_page_carries_check_bars(design, name):
    full = name.startswith("set-") and not name.endswith("-reduced")
    assert joined(BOUND[design][name]).count("Measure both bars before you trust the page") == (1 if full else 0)


def joined(sheet):
    """All words of a sheet; a sentence that is broken over lines is whole again."""
    return " ".join(words(sheet).split())


@pytest.mark.parametrize("paper, size", [("Letter", (215.9, 279.4)), ("A3", (297, 420)), ("Tabloid", (279.4, 431.8))])
def test_paper_that_is_asked_for_is_taken_either_way_up(paper, size):
    layout = lay_out(bench)
    for page in (elevation(layout, "front", paper=paper), set_page(layout, "A", paper=paper)):
        assert sorted((page.width, page.height)) == pytest.approx(size)


# --- a frame that cannot be built ---


@pytest.fixture(scope="module")
def faulty():
    """End rails that want the same wood as the front and back rails."""
    layout = lay_out(alter(bench, {"bench.ends": Rail("3 1/2 in", joint=Notch()), "corners": "staggered"}))
    assert layout.errors()
    return layout


@pytest.mark.parametrize("paper", [None, "Letter"])
def test_a_frame_that_cannot_be_built_is_not_drawn_for_the_wood(faulty, paper):
    with pytest.raises(CannotDraw, match="want the same wood") as told:
        set_page(faulty, "A", paper=paper)
    assert told.value.findings == faulty.errors()


def test_a_frame_that_cannot_be_built_is_bound_without_its_sets_and_says_why(faulty, tmp_path):
    names = [sheet.name for sheet in sheets(faulty)]
    assert names[0] == "cover"
    assert any("findings" in name for name in names)
    assert any("cut-list" in name for name in names)
    assert {"elevation-front", "elevation-left"} < set(names)
    assert not any(name.startswith("set-") for name in names)
    assert "want the same wood" in joined(sheets(faulty, only=["findings"])[0])
    assert bind(faulty, tmp_path / "faulty.pdf").read_bytes().startswith(b"%PDF")


def test_findings_can_be_read_too(faulty):
    for page in sheets(faulty):
        assert [str(clash) for clash in clashes(page.whole)] == []
        assert min(text.height for text in texts(page.drawing)) >= LEAST


# --- what is not there ---


@pytest.mark.parametrize("letter", ["D", "a", "", "AA", 1])
def test_a_set_that_is_not_there_is_answered_with_those_there_are(letter):
    with pytest.raises(AddressError, match="A, B, C"):
        set_page(lay_out(bench), letter)


@pytest.mark.parametrize("side", ["top", "Front", "", "above", None])
def test_a_side_that_is_not_there_is_answered_with_those_there_are(side):
    with pytest.raises(AddressError, match="front, back, left or right"):
        elevation(lay_out(bench), side)


@pytest.mark.parametrize("draw, which", [(elevation, "front"), (set_page, "A")])
@pytest.mark.parametrize("paper", ["A9", "", "letter paper"])
def test_paper_that_is_not_there_is_answered_with_what_there_is(draw, which, paper):
    with pytest.raises(PaperError, match=r"There is A0.*Letter"):
        draw(lay_out(bench), which, paper=paper)


@pytest.mark.parametrize("piece", [0, 4, -1])
def test_a_piece_that_is_not_there_is_answered_with_those_there_are(piece):
    with pytest.raises(BenchjoinError, match="piece"):
        elevation(lay_out(bench), "front", piece=piece)


@pytest.mark.parametrize("paper", ["A4", "Letter"])
def test_parts_too_thin_to_be_named_are_sent_to_larger_paper(paper):
    tall = lay_out(alter(rack, {"front.height": 3200, "back.height": 3200, "tray 6.top": 3200}))
    with pytest.raises(PaperError, match="larger paper"):  # 1:10 is too long, at 1:20 a leg of 45 is 2.25 wide
        set_page(tall, "A", paper=paper)
    assert set_page(tall, "A", paper="A3").scale == "1:10"


# --- files ---


@pytest.mark.parametrize("name", ["binder.svg", "binder", "binder.pdf.txt"])
def test_a_binder_that_is_no_pdf_is_refused_and_leaves_no_file(tmp_path, name):
    with pytest.raises(PaperError, match=r"\.pdf"):
        bind(lay_out(bench), tmp_path / name)
    assert list(tmp_path.iterdir()) == []


def test_a_page_longer_than_a_pdf_page_leaves_no_file(tmp_path):
    page = set_page(lay_out(alter(rack, {"length": 6000})), "B")
    with pytest.raises(PaperError, match="Tile"):
        page.save(tmp_path / "set-b.pdf")
    assert list(tmp_path.iterdir()) == []


def test_a_binder_that_fails_half_way_leaves_no_file(tmp_path, monkeypatch):
    done = []

    def fails_at_the_third(surface, sheet, fonts):
        done.append(sheet)
        if len(done) == 3:
            raise MissingLibrary("cairo went away")
        drawn(surface, sheet, fonts)

    drawn = pdf.draw_page
    monkeypatch.setattr(pdf, "draw_page", fails_at_the_third)
    with pytest.raises(MissingLibrary):
        bind(lay_out(bench), tmp_path / "binder.pdf")
    assert len(done) == 3
    assert list(tmp_path.iterdir()) == []


def test_a_binder_that_fails_leaves_the_one_before(tmp_path, monkeypatch):
    path = tmp_path / "binder.pdf"
    path.write_bytes(b"before")
    monkeypatch.setattr(pdf, "_check_boxes", lambda *_: (_ for _ in ()).throw(PaperError("off")))
    with pytest.raises(PaperError, match="off"):
        bind(lay_out(bench), path)
    assert [file.name for file in tmp_path.iterdir()] == ["binder.pdf"]
    assert path.read_bytes() == b"before"


@pytest.mark.slow
def test_the_same_layout_gives_the_same_binder(tmp_path):
    one, two = (bind(lay_out(bench), tmp_path / name).read_bytes() for name in ("one.pdf", "two.pdf"))
    assert one == two
