"""Everything that is laid on the wood, for every frame of the shelf: words that can be read, nothing off the paper.

Rolls, tiles, story sticks and lay-on patterns are asked as recordings, before a file is written.
"""

from __future__ import annotations

from itertools import pairwise

import attrs
import pypdf
import pypdfium2
import pypdfium2.raw as raw
import pytest
from designs import PLAIN_DESIGNS as DESIGNS
from designs import PLAIN_SAMPLES as SAMPLES
from designs import plain_bench as bench
from designs import plain_rack as rack

from benchjoin import Leg, Notch, Rail, Stock, alter, lay_out, set_page, templates
from benchjoin.drafting.full_size.correction import PrinterScale
from benchjoin.drafting.linework import Linework
from benchjoin.drafting.primitives import Clipped, Text, bounds, flat
from benchjoin.drafting.sheets.clashes import clashes
from benchjoin.drawings.making.house import House
from benchjoin.drawings.templates.pattern.pages import notch_patterns
from benchjoin.drawings.templates.set.tiles import set_tiles
from benchjoin.drawings.templates.stick.pages import story_sticks
from benchjoin.errors import AddressError, CannotDraw, DescriptionError, LengthError, PaperError
from benchjoin.layout.sticks import sticks
from benchjoin.template_pages import template_sheets
from benchjoin.trade.paper import PAPERS, ROLLS

FRAMES = {**SAMPLES, **DESIGNS}
MADE = {}
POINT = 25.4 / 72
PRINTER = PrinterScale("246.25 mm", "178.56 mm")


def made(name):
    """Layout and pages of a frame, worked out once."""
    if name not in MADE:
        layout = lay_out(FRAMES[name])
        MADE[name] = layout, template_sheets(layout)
    return MADE[name]


def tall(frame, height):
    """The same frame with higher legs."""
    return lay_out(alter(frame, {"front.height": height, "back.height": height, "tray 6.top": height}))


def words(sheet):
    return " ".join(item.string for item in flat(sheet.drawing) if isinstance(item, Text))


def seen(sheet):
    """All of a page, with what is whole inside its cut-outs."""
    for item in sheet.drawing:
        if isinstance(item, Clipped):
            left, _, right, _ = item.box
            yield from (one for one in flat((item,)) if left <= bounds((one,))[0] and bounds((one,))[2] <= right)
        else:
            yield item


@pytest.mark.slow
@pytest.mark.parametrize("name", FRAMES)
def test_nothing_is_printed_where_a_printer_does_not_reach(name):
    for sheet in made(name)[1]:
        for item in sheet.drawing:
            x0, y0, x1, y1 = bounds((item,))
            assert min(x0, y0) >= 10 - 1e-6
            assert x1 <= sheet.width - 10 + 1e-6
            assert y1 <= sheet.height - 10 + 1e-6


@pytest.mark.parametrize("name", FRAMES)
def test_no_word_of_a_stick_or_a_pattern_lies_on_another_or_on_a_line(name):
    for sheet in made(name)[1]:
        if not sheet.name.startswith("set-"):
            assert [str(clash) for clash in clashes(tuple(seen(sheet)))] == []


@pytest.mark.parametrize("name", FRAMES)
def test_no_word_of_a_full_size_set_lies_on_another_or_on_a_line(name):
    layout = made(name)[0]
    for letter in dict.fromkeys(one.alike[0] for one in layout.sets):
        assert [str(clash) for clash in clashes(set_page(layout, letter).whole)] == []


@pytest.mark.parametrize("name", FRAMES)
def test_every_page_can_be_checked_and_says_what_it_promises(name):
    for sheet in made(name)[1]:
        told = words(sheet)
        for sentence in (
            "Measure both bars before you trust the page",
            "print at 100 %",
            "Not corrected for a printer",
            "read to 0.25 mm leaves",
            "trust the tape",
        ):
            assert sentence in told
        assert min(item.height for item in flat(sheet.drawing) if isinstance(item, Text)) >= 2.5
        assert sheet.full_size
        assert sheet.scale == "1:1"


@pytest.mark.parametrize("name", FRAMES)
def test_every_reading_of_every_leg_stands_on_its_stick_and_on_its_tiles(name):
    layout, pages = made(name)
    told = {kind: " ".join(words(s) for s in pages if s.name.startswith(kind)) for kind in ("story", "set")}
    for one in layout.sets:
        for line in one.lines:
            reading = layout.frame.tape.read(line.at)
            assert reading in told["story"]
            assert reading in told["set"]


@pytest.mark.parametrize("name", FRAMES)
def test_every_part_that_is_marked_has_a_stick_and_is_counted_once(name):
    layout = made(name)[0]
    hosts = {(joint.piece, joint.host) for joint in layout.joints if not joint.cuts}
    marked = [part for one in layout.sets for part in one.members if part.cuts or (part.piece, part.identity) in hosts]
    assert sorted(part.name for stick in sticks(layout) for part in stick.parts) == sorted(p.name for p in marked)


@pytest.mark.parametrize("name", DESIGNS)
@pytest.mark.parametrize("paper", ["Letter", "A4"])
def test_story_sticks_of_a_set_take_a_few_pages(name, paper):
    assert 1 <= len(story_sticks(made(name)[0], paper=paper)) <= 4


def test_patterns_of_the_bench_say_what_to_make_and_where():
    """By hand: 6 front legs with foot shelf and bench, 6 back legs with foot shelf, bench, hook rail and head rail."""
    told = " ".join(words(sheet) for sheet in notch_patterns(lay_out(bench)))
    for number, count in ((1, 6), (2, 6), (3, 6), (4, 12), (5, 6)):
        assert f"Pattern {number} for {count} notches" in told
    assert "Pattern 6" not in told
    assert "outer face of A1 A2 B1 B2 C1 C2:" in told.replace("\n", " ")
    assert "5/8 deep" in told


def test_both_halves_of_a_lap_stand_side_by_side_and_name_each_other():
    pages = notch_patterns(lay_out(rack))
    told = " ".join(words(sheet) for sheet in pages)
    assert "Pattern 1, half of a lap with 2" in told or "Pattern 1, half of a lap" in told
    assert "lap with 1" in told or "with 1" in told
    assert "for 44 half-laps" in told  # 6 outer and 5 closed end laps on each of 4 legs
    assert "for 48 half-laps" in told  # both ends of 24 rails
    assert "for 4 half-laps" in told  # the top end laps, open


def test_a_part_says_its_mark_its_true_face_and_which_way_is_up():
    told = words(set_page(lay_out(bench), "A"))
    for mark in ("A1", "A2", "A3", "A4"):
        assert told.count(mark) >= 2
    assert told.count("up") >= 4
    assert "for 3 sets: A, B, C" in " ".join(
        item.string for item in set_page(lay_out(bench), "A").whole if isinstance(item, Text)
    )


# --- rolls and large sheets ---


@pytest.mark.parametrize("roll", ROLLS, ids=lambda roll: roll.name)
def test_a_set_goes_on_a_roll_as_long_as_it_needs_or_is_told_which_takes_it(roll):
    layout = lay_out(bench)
    need = set_page(layout, "A")
    if need.height <= roll.width:
        page = set_page(layout, "A", roll=roll.name)
        assert (page.width, page.height) == (pytest.approx(need.width), roll.width)
        assert page.full_size
    else:
        with pytest.raises(PaperError, match="36 in"):
            set_page(layout, "A", roll=roll.name)


@pytest.mark.parametrize("name", ["A0", "ANSI E", "a0"])
def test_a_short_set_goes_on_a_large_sheet_by_name(name):
    layout = lay_out(SAMPLES["measured batch"])
    page = set_page(layout, "A", roll=name)
    sizes = {paper.name: (paper.height, paper.width) for paper in PAPERS}
    assert (page.width, page.height) == sizes[name.upper()]


def test_a_set_too_large_for_its_sheet_is_told_what_takes_it():
    takes = "1931 × 602 mm, which A0 does not give. It goes on 24 in, 30 in, 36 in, 42 in, 610 mm"
    with pytest.raises(PaperError, match=takes) as told:
        set_page(lay_out(bench), "A", roll="A0")
    assert told.value.width > 1900


def test_a_set_wider_than_every_roll_is_sent_to_tiles():
    slab = Leg(Stock("elm slab", thickness=60, width=300), height=800)  # four side by side are 1200 mm
    layout = lay_out(attrs.evolve(SAMPLES["rails inside"], front=slab, back=slab))
    with pytest.raises(PaperError, match="No roll is wide enough: print it in tiles"):
        set_page(layout, "A", roll="42 in")


@pytest.mark.parametrize("roll", ["40 in", "", "roll", "A9"])
def test_a_roll_that_is_not_sold_is_answered_with_those_that_are(roll):
    with pytest.raises(PaperError, match=r"No roll or paper.*24 in.*914 mm.*A0"):
        set_page(lay_out(bench), "A", roll=roll)


def test_a_reduced_picture_takes_no_roll_and_no_printer():
    for how in ({"roll": "36 in"}, {"printer": PRINTER}):
        with pytest.raises(PaperError, match="reduced picture"):
            set_page(lay_out(bench), "A", paper="Letter", **how)


# --- longer than a page of PDF can be ---


@pytest.mark.slow
def test_legs_longer_than_a_pdf_page_are_tiled_and_stick_and_patterns_are_made(tmp_path):
    layout = tall(rack, 5400)
    page = set_page(layout, "A")
    with pytest.raises(PaperError, match="Tile"):
        page.save(tmp_path / "long.pdf")
    path = templates(layout, tmp_path / "long-templates.pdf", kinds=["sticks"])
    assert len(pypdfium2.PdfDocument(path)) > 3
    assert len(set_tiles(layout, "A", paper="A3")) >= 12  # 6 trays far apart, marked on two faces
    assert "print it in tiles" in words(set_page(layout, "A", paper="A0"))


# --- the printer ---


@pytest.mark.parametrize("draw", [notch_patterns, story_sticks], ids=["patterns", "sticks"])
def test_a_corrected_page_says_by_how_much(draw):
    sheet = draw(lay_out(bench), printer=PRINTER)[0]
    told = words(sheet)
    assert "prints along 0.9850, across 0.9920" in told
    assert "246.25" in told
    assert "Not corrected" not in told


def test_tiles_and_rolls_say_their_correction_too():
    layout = lay_out(bench)
    for sheet in (set_tiles(layout, "A", printer=PRINTER)[0], set_page(layout, "A", printer=PRINTER)):
        assert "prints along 0.9850, across 0.9920" in words(sheet)


@pytest.mark.slow
def test_a_corrected_page_keeps_to_its_margins_and_its_words_apart():
    layout = lay_out(bench)
    for along, across in ((0.971, 0.98), (1.029, 1.02)):
        for sheet in template_sheets(layout, printer=PrinterScale(along, across, bars=1)):
            for item in sheet.drawing:
                x0, y0, x1, y1 = bounds((item,))
                assert min(x0, y0) >= 10 - 0.2
                assert x1 <= sheet.width - 10 + 0.2
                assert y1 <= sheet.height - 10 + 0.2
            if not sheet.name.startswith("set-"):
                assert [str(clash) for clash in clashes(tuple(seen(sheet)))] == []


# --- margins and other wishes ---


@pytest.mark.parametrize("margin", ["1/4 in", "5 mm", 12.7, 0])
def test_a_margin_that_is_asked_for_is_kept(margin):
    from benchjoin.lengths import mm

    edge = mm(margin, zero=True)
    for sheet in set_tiles(lay_out(bench), "A", margin=margin):
        x0, y0, _, _ = bounds(sheet.drawing)
        assert (x0, y0) == (pytest.approx(edge, abs=2), pytest.approx(edge, abs=2))
        assert min(x0, y0) >= edge - 1e-6


@pytest.mark.parametrize("draw", [lambda f, **k: set_tiles(f, "A", **k), notch_patterns, story_sticks])
@pytest.mark.parametrize("margin", [108, "6 in", 150.0])
def test_a_margin_wider_than_the_page_is_refused(draw, margin):
    with pytest.raises(PaperError, match="Margins of"):
        draw(lay_out(bench), margin=margin)


@pytest.mark.parametrize("overlap", [250, "9 in"])
def test_an_overlap_wider_than_the_page_is_refused(overlap):
    with pytest.raises(PaperError, match="less overlap"):
        set_tiles(lay_out(bench), "A", overlap=overlap)


@pytest.mark.parametrize("overlap", [-1, "10", float("nan")])
def test_an_overlap_that_is_no_length_is_refused(overlap):
    with pytest.raises(LengthError, match="overlap"):
        set_tiles(lay_out(bench), "A", overlap=overlap)


@pytest.mark.parametrize("draw", [lambda f, **k: set_tiles(f, "A", **k), notch_patterns, story_sticks])
@pytest.mark.parametrize("paper", ["A9", "", "roll", "36 in"])
def test_paper_that_is_not_there_is_answered_with_what_there_is(draw, paper):
    with pytest.raises(PaperError, match=r"There is A0.*Letter"):
        draw(lay_out(bench), paper=paper)


def test_a_set_that_is_not_there_is_answered_with_those_there_are():
    with pytest.raises(AddressError, match="A, B, C"):
        set_tiles(lay_out(bench), "Q")


def test_a_house_gives_its_linework():
    heavy = House(linework=Linework(wide=0.7, narrow=0.35))
    layout = lay_out(bench)
    for sheet in (
        *set_tiles(layout, "A", house=heavy),
        *story_sticks(layout, house=heavy),
        *notch_patterns(layout, house=heavy),
    ):
        assert sheet.linework == heavy.linework


def test_a_frame_that_cannot_be_built_is_not_drawn_for_the_wood():
    faulty = lay_out(alter(bench, {"bench.ends": Rail("3 1/2 in", joint=Notch()), "corners": "staggered"}))
    assert faulty.errors()
    for draw in (story_sticks, notch_patterns, template_sheets, lambda f: set_tiles(f, "A")):
        with pytest.raises(CannotDraw, match="want the same wood"):
            draw(faulty)


# --- labels ---

LABELS = {
    "signs": "Bench <b> & \"quotes\" 'n' ]]> &amp; \\ %",
    "emoji": "Honey 🐝🍯 bench 木",
    "long": ("A very long name that goes on " * 3)[:79],
    "one word": "W" * 80,
}


@pytest.mark.parametrize("name", ["x" * 300, "two\nlines", "nul\x00"])
def test_a_name_that_goes_on_no_page_is_refused_where_it_is_given(name):
    with pytest.raises(DescriptionError, match="80 printable"):
        attrs.evolve(bench, name=name)


@pytest.mark.parametrize("label", LABELS.values(), ids=LABELS)
def test_a_page_takes_any_name(label, tmp_path):
    layout = lay_out(attrs.evolve(bench, name=label))
    path = templates(layout, tmp_path / "t.pdf", kinds=["sticks", "patterns"])
    document = pypdfium2.PdfDocument(path)
    assert len(document) == len(template_sheets(layout, kinds=["sticks", "patterns"]))
    for sheet in (*template_sheets(layout), set_page(layout, "A")):
        for item in sheet.drawing:
            assert bounds((item,))[2] <= sheet.width - 10 + 1e-6
    if len(label) < 60 and label.isascii():
        assert label in document[0].get_textpage().get_text_range()


@pytest.mark.parametrize("level", ['s < & "x"', "🐝 level", "L" * 80])
def test_a_page_takes_any_level_name(level):
    stack = list(bench.stack)
    stack[1] = attrs.evolve(stack[1], name=level)
    layout = lay_out(attrs.evolve(bench, stack=stack))
    for sheet in template_sheets(layout, kinds=["sticks", "patterns"]):
        for item in sheet.drawing:
            x0, y0, x1, y1 = bounds((item,))
            assert min(x0, y0) >= 10 - 1e-6
            assert x1 <= sheet.width - 10 + 1e-6
            assert y1 <= sheet.height - 10 + 1e-6
        assert sheet.svg().count("<svg") == 1


# --- the file ---


def test_templates_are_one_pdf_with_bookmarks_labels_title_and_print_settings(tmp_path):
    layout = lay_out(bench)
    path = templates(layout, tmp_path / "templates.pdf", paper="A4")
    sheets = template_sheets(layout, paper="A4")
    document, reader = pypdfium2.PdfDocument(path), pypdf.PdfReader(path)
    assert [tuple(side * POINT for side in page.get_size()) for page in document] == [
        (pytest.approx(s.width, abs=0.01), pytest.approx(s.height, abs=0.01)) for s in sheets
    ]
    assert all(sorted((s.width, s.height)) == [210, 297] for s in sheets)
    assert not raw.FPDF_VIEWERREF_GetPrintScaling(document)
    assert reader.viewer_preferences.pick_tray_by_pdfsize.value is True
    titles = [mark.title for group in reader.outline for mark in (group if isinstance(group, list) else [group])]
    assert {s.title for s in sheets} <= set(titles)
    assert len(reader.page_labels) == len(sheets)
    assert layout.frame.name in reader.metadata.title
    assert path.read_bytes().startswith(b"%PDF-1.6")


def test_templates_come_in_order_sticks_patterns_tiles_and_each_kind_by_itself():
    layout = lay_out(bench)
    names = [sheet.name for sheet in template_sheets(layout, kinds=["tiles", "sticks", "patterns"])]
    starts = [next(n for n, name in enumerate(names) if name.startswith(kind)) for kind in ("story", "patt", "set")]
    assert all(a < b for a, b in pairwise(starts))
    assert {name.split("-")[0] for name in (s.name for s in template_sheets(layout, kinds=["sticks"]))} == {"story"}


@pytest.mark.parametrize("kinds", [["tile"], [], "sticks", ["sticks", "gang"]])
def test_kinds_that_there_are_not_are_answered_with_those_there_are(kinds, tmp_path):
    with pytest.raises(PaperError, match="sticks, patterns, edges, drilling, tiles"):
        templates(lay_out(bench), tmp_path / "t.pdf", kinds=kinds)
    assert list(tmp_path.iterdir()) == []


def test_rails_that_are_planted_have_their_lines_though_no_wood_is_taken(tmp_path):
    layout = lay_out(SAMPLES["over all"])
    page = set_page(layout, "A")
    assert "no waste" in words(page)
    told = words(page).split()
    for joint in layout.joints:
        part = layout.part(joint.host)
        for at in (joint.contact.low[2], joint.contact.high[2]):
            if 0.1 < at - part.blank.low[2] < part.length - 0.1:
                assert layout.frame.tape.read(at - part.blank.low[2]) in told
    with pytest.raises(PaperError, match="No part of this frame is cut"):
        templates(layout, tmp_path / "t.pdf", kinds=["patterns"])


def test_templates_that_are_no_pdf_are_refused(tmp_path):
    with pytest.raises(PaperError, match=r"\.pdf"):
        templates(lay_out(bench), tmp_path / "t.svg")
    assert list(tmp_path.iterdir()) == []


def test_the_same_layout_gives_the_same_file(tmp_path):
    one, two = (
        templates(lay_out(bench), tmp_path / name, kinds=["sticks", "patterns"]).read_bytes()
        for name in ("1.pdf", "2.pdf")
    )
    assert one == two
