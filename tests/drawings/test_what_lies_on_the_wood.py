"""What is laid on the wood, for every frame of the shelf: each page read by itself, and nothing for the wrong leg.

Pages are asked as recordings: what a tile shows, what a pattern says, how sets are split for the wall.
"""

from __future__ import annotations

import attrs
import pytest
import shapely
from designs import PLAIN_DESIGNS as DESIGNS
from designs import PLAIN_SAMPLES as SAMPLES
from designs import plain_bench as bench
from designs import plain_rack as rack
from designs import plain_stand as stand

from benchjoin import Clear, Leg, Stock, alter, bind, lay_out, set_page
from benchjoin.drafting.lettering import ELLIPSIS
from benchjoin.drafting.primitives import Clipped, Line, Text, bounds, flat, text_box
from benchjoin.drafting.sheets.clashes import clashes
from benchjoin.drawings.making.asked import Asked
from benchjoin.drawings.templates.pattern.pages import notch_patterns
from benchjoin.drawings.templates.set.reduced import set_pages
from benchjoin.drawings.templates.set.tiles import set_tiles
from benchjoin.drawings.templates.stick.pages import story_sticks
from benchjoin.errors import PaperError
from benchjoin.findings import Finding
from benchjoin.template_pages import template_sheets

FRAMES = {**SAMPLES, **DESIGNS}
ISO_3098 = {2.5, 3.5, 5.0, 7.0}
MADE = {}


def made(name):
    """Layout, tiles and patterns of a frame, drawn once."""
    if name not in MADE:
        layout = lay_out(FRAMES[name])
        MADE[name] = layout, template_sheets(layout, kinds=["tiles"]), template_sheets(layout, kinds=["patterns"])
    return MADE[name]


def texts(drawing):
    return [item for item in flat(tuple(drawing)) if isinstance(item, Text)]


def words(*sheets):
    return " ".join(text.string for sheet in sheets for text in texts(sheet.drawing))


def window(sheet):
    """The cut-out of a tile: its box on the page, and what is drawn in it."""
    (clipped,) = [item for item in sheet.drawing if isinstance(item, Clipped)]
    return shapely.box(*clipped.box), list(flat(clipped.drawing))


def between_seams(sheet):
    """The box between the seams of a tile, from its four chain lines."""
    _, drawn = window(sheet)
    seams = [item.points for item in drawn if isinstance(item, Line) and item.kind == "centre"]
    xs = sorted(a[0] for a, b in seams if abs(a[0] - b[0]) < 1e-6)
    ys = sorted(a[1] for a, b in seams if abs(a[1] - b[1]) < 1e-6)
    assert (len(xs), len(ys)) == (2, 2)
    return xs[0], ys[0], xs[1], ys[1]


def shown(sheet):
    """What a person sees in the window of a tile: strokes cut at its edge, whole texts."""
    box, drawn = window(sheet)
    for item in drawn:
        if isinstance(item, Line):
            ring = shapely.LineString([*item.points, *item.points[: int(item.closed)]])
            for piece in shapely.get_parts(ring.intersection(box)):
                if piece.geom_type == "LineString" and piece.length > 0:
                    yield Line(tuple(piece.coords), item.kind)
        else:
            yield item


# --- tiles ---


@pytest.mark.parametrize("name", FRAMES)
def test_no_seam_runs_through_a_word_of_a_tile_and_none_is_cut(name):
    for sheet in made(name)[1]:
        inside = shapely.box(*between_seams(sheet))
        for text in texts(window(sheet)[1]):
            assert inside.contains(text_box(text)), f"{sheet.name}: {text.string!r} is not between the seams"


@pytest.mark.parametrize("name", FRAMES)
def test_no_word_of_a_tile_lies_on_a_word_or_a_line(name):
    for sheet in made(name)[1]:
        assert [str(clash) for clash in clashes(tuple(shown(sheet)))] == []


@pytest.mark.parametrize("name", FRAMES)
def test_every_tile_carries_a_line_that_is_struck_and_says_whose_and_where_it_is(name):
    layout, tiles, _ = made(name)
    marks = {part.mark for part in layout.parts}
    readings = {layout.frame.tape.read(line.at) for one in layout.sets for line in one.lines}
    for sheet in tiles:
        told = {text.string for text in texts(window(sheet)[1])}
        assert told & readings, f"{sheet.name} carries no reading"
        assert told & marks, f"{sheet.name} does not say whose it is"
        assert any("from the" in one or " before" in one or one.endswith((" mm", " in")) for one in told)


@pytest.mark.parametrize("name", FRAMES)
def test_every_line_of_every_leg_is_struck_on_one_tile_with_its_reading_on_it(name):
    """Each tile tells a leg's readings as often as it shows its lines; over all tiles those are all the lines."""
    layout, tiles, _ = made(name)
    firsts = [layout.set(letter) for letter in dict.fromkeys(one.alike[0] for one in layout.sets)]
    for one in firsts:
        own = [sheet for sheet in tiles if sheet.name.startswith(f"set-{one.letter.lower()}-")]
        taken = sum(len({taker.member for taker in line.takers}) for line in one.lines)
        readings = {layout.frame.tape.read(line.at) for line in one.lines}
        told = [text for sheet in own for text in texts(window(sheet)[1]) if text.bold and text.string in readings]
        assert len(told) >= taken


@pytest.mark.parametrize("name", FRAMES)
def test_a_tile_shows_no_line_of_a_part_that_it_does_not_show_whole(name):
    for sheet in made(name)[1]:
        _, low, _, high = between_seams(sheet)
        outlines = [i for i in window(sheet)[1] if isinstance(i, Line) and i.closed and i.kind == "visible"]
        assert outlines
        for outline in outlines:
            _, y0, _, y1 = bounds((outline,))
            assert (low < y0 and y1 < high) or y1 - y0 > high - low


@pytest.mark.parametrize(
    "frame, letter, pages", [(bench, "A4", 6), (rack, "A4", 24), (stand, "A4", 14)], ids=["bench", "rack", "stand"]
)
def test_tiles_of_a_set_of_legs_take_few_pages(frame, letter, pages):
    """By hand for the bench: 2 legs go on a page, 2 lots of notches of the front legs, 4 of the back legs."""
    assert len(set_tiles(lay_out(frame), "A", paper=letter)) <= pages


def test_the_map_says_that_where_it_is_blank_nothing_is_marked():
    sheet = set_tiles(lay_out(bench), "A", paper="Letter")[0]
    assert "where the map is blank nothing is marked" in words(sheet)
    assert "One of 6 pages" in words(sheet)


def test_a_face_wider_than_the_page_is_shown_in_rows_that_join():
    slab = Leg(Stock("elm slab", thickness=60, width=330), height=800)
    layout = lay_out(attrs.evolve(SAMPLES["rails inside"], front=slab, back=slab))
    sheets = set_tiles(layout, "A", paper="A4", upright=False)
    assert len(sheets) > len(layout.set("A").members)
    for sheet in sheets:
        inside = shapely.box(*between_seams(sheet))
        assert all(inside.contains(text_box(text)) for text in texts(window(sheet)[1]))


# --- patterns ---


def outline_of(figure):
    """The cutting outlines of a figure: thin closed rectangles that lie in no other."""
    boxes = [shapely.box(*bounds((item,))) for item in figure.drawing if isinstance(item, Line) and item.closed]
    return [box for box in boxes if not any(other is not box and other.covers(box) for other in boxes)]


@pytest.mark.parametrize("name", FRAMES)
def test_every_word_of_a_pattern_stands_inside_its_own_outline(name):
    for sheet in made(name)[2]:
        for figure in sheet.figures:
            outlines = outline_of(figure)
            for text in texts(figure.drawing):
                assert any(box.contains(text_box(text)) for box in outlines), f"{text.string!r} of {figure.name}"


@pytest.mark.parametrize("name", FRAMES)
def test_a_pattern_has_its_number_and_its_whole_list_of_places_in_its_outline(name):
    _, _, pages = made(name)
    for sheet in pages:
        for figure in (one for one in sheet.figures if one.name.startswith("Pattern")):
            for box in outline_of(figure):
                own = [text for text in texts(figure.drawing) if box.contains(text_box(text))]
                told = " ".join(text.string for text in own)
                assert "Pattern " in told
                assert "for " in told
                assert ELLIPSIS not in told


@pytest.mark.parametrize("name", FRAMES)
def test_both_halves_of_a_lap_lie_on_one_page(name):
    for sheet in made(name)[2]:
        told = words(sheet).replace("\n", " ")
        for figure in sheet.figures:
            if "half of a lap with" in " ".join(text.string for text in texts(figure.drawing)):
                assert " and pattern " in figure.name, told


def test_a_list_of_places_that_is_long_widens_its_pattern_and_is_not_cut_short():
    many = lay_out(alter(bench, {"quantity": 40}))
    for sheet in notch_patterns(many, paper="Letter"):
        for figure in sheet.figures:
            assert ELLIPSIS not in " ".join(text.string for text in texts(figure.drawing))
            assert len(outline_of(figure)) == 1


def test_a_list_that_goes_on_no_pattern_stands_on_a_card_that_the_pattern_names():
    """16 trays on two faces of 4 legs: 31 places of one lap, on a face of 45 mm."""
    pages = notch_patterns(lay_out(ODD["many levels"]), paper="Letter")
    figures = {
        figure.name: " ".join(text.string for text in texts(figure.drawing)) for s in pages for figure in s.figures
    }
    assert "places on card 1" in figures["Pattern 1 and pattern 2"]
    card = figures["Places of pattern 1"]
    assert card.startswith("Card 1. Pattern 1, half of a lap with 2 for 124 half-laps")
    assert all(f"tray {number} at" in card for number in range(1, 16))
    assert all(ELLIPSIS not in told for told in figures.values())


# --- what is said, and how it is drawn ---


@pytest.mark.parametrize("name", DESIGNS)
def test_paper_for_legs_says_for_how_many_and_never_make(name):
    layout = lay_out(FRAMES[name])
    told = words(*template_sheets(layout))
    assert "make " not in told
    legs = [part for part in layout.parts if part.role == "leg"]
    assert any(f"for {count} legs" in words(*story_sticks(layout)) for count in range(2, len(legs) + 1))


@pytest.mark.parametrize("name", FRAMES)
def test_no_two_signs_meet_at_an_edge_and_make_a_cross(name):
    layout = made(name)[0]
    drawn = [set_page(layout, one.letter).whole for one in layout.sets[:1]]
    drawn += [tuple(window(sheet)[1]) for sheet in made(name)[1]]
    for drawing in drawn:
        vees = [
            i.points[1] for i in flat(drawing) if isinstance(i, Line) and i.kind == "visible" and len(i.points) == 3
        ]
        for n, (x, y) in enumerate(vees):
            assert all(abs(x - u) > 6.0 or abs(y - v) > 0.1 for u, v in vees[n + 1 :])


def test_waste_falls_where_cut_sections_rise():
    """Hatching of a section rises to the right (ISO 128-50 draws it at 45°); strokes of waste fall, two and two."""
    sheet = set_tiles(lay_out(bench), "A", paper="Letter")[0]
    strokes = [i.points for i in window(sheet)[1] if isinstance(i, Line) and i.kind == "thin" and len(i.points) == 2]
    slanted = [(b[0] - a[0]) * (b[1] - a[1]) for a, b in strokes if abs(b[0] - a[0]) > 1e-6 < abs(b[1] - a[1])]
    assert len(slanted) > 20
    assert all(product < 0 for product in slanted)


@pytest.mark.parametrize("name", FRAMES)
def test_lettering_on_full_size_paper_keeps_to_the_series(name):
    layout, tiles, patterns = made(name)
    for sheet in (*tiles, *patterns, *story_sticks(layout)):
        assert {text.height for text in texts(sheet.drawing)} <= ISO_3098


# --- the wall ---


def test_the_bench_is_read_out_where_its_notches_lie():
    """By hand: foot shelf 2 3/4 wide at 7, bench at 32 to the top; the back legs as the README of the design has it."""
    for how in ({}, {"paper": "Tabloid"}):
        told = words(set_page(lay_out(bench), "A", **how))
        assert "A1 A2: 7, 9 3/4; 32, top." in told
        assert "A3 A4: 7, 11 1/4; 32, 35 1/2; 48 3/8, 51 7/8; 64 3/4, top." in told


def many_levels(count):
    """The rack with so many trays that lie close."""
    items = [Clear(60)]
    for number in range(1, count):
        items += [attrs.evolve(rack.stack[1], name=f"tray {number}"), Clear()]
    return attrs.evolve(rack, stack=[*items, attrs.evolve(rack.stack[-1], name=f"tray {count}")])


ODD = {
    "very long": alter(bench, {"back.height": "15 ft", "front.height": "14 ft"}),
    "longer than a page of PDF": alter(rack, {"front.height": 5400, "back.height": 5400, "tray 6.top": 5400}),
    "long rails": alter(rack, {"length": 6000}),
    "many levels": many_levels(16),
    "many legs": attrs.evolve(bench, length="20 ft", bays=[Clear()] * 9),
}


@pytest.mark.parametrize("paper", ["Letter", "A4"])
@pytest.mark.parametrize("name", [*FRAMES, *ODD])
def test_no_set_refuses_the_binder_and_what_was_done_is_said(name, paper):
    layout = lay_out({**FRAMES, **ODD}[name])
    if layout.errors():
        pytest.skip("it is not drawn for the wood")
    pages = list(set_pages(layout, Asked(layout=layout, paper=paper)))
    letters = list(dict.fromkeys(one.alike[0] for one in layout.sets))
    found = [page for page in pages if isinstance(page, Finding)]
    found += [
        finding for page in pages if not isinstance(page, Finding) for f in page.figures for finding in f.findings
    ]
    for letter in letters:
        own = [
            page for page in pages if not isinstance(page, Finding) and page.name.startswith(f"set-{letter.lower()}-")
        ]
        said = [finding for finding in found if finding.where == f"Set {letter}" and finding.kind == "split set"]
        assert own
        assert bool(said) == (len(own) > 1)
        assert all(f"{len(own)} pages" in finding.sentence for finding in said)
        for page in own:
            drawing = page.figures[0].drawing
            assert {text.height for text in texts(drawing)} <= {3.5, 5.0, 7.0}
            assert [str(clash) for clash in clashes(tuple(i for i in flat(drawing)))] == []


@pytest.mark.parametrize("name", ["very long", "many levels", "many legs"])
def test_split_pages_together_carry_every_reading(name):
    layout = lay_out(ODD[name])
    told = words(*(page for page in set_pages(layout, Asked(layout=layout, paper="Letter"))))
    for one in layout.sets:
        for line in one.lines:
            assert layout.frame.tape.read(line.at) in told


def test_one_picture_that_does_not_go_on_says_that_the_binder_splits_it(tmp_path):
    with pytest.raises(PaperError, match="binder splits it"):
        set_page(lay_out(rack), "A", paper="Letter")
    assert bind(lay_out(rack), tmp_path / "rack.pdf", paper="Letter").exists()


def test_a_piece_of_a_stick_holds_what_it_shows_and_not_the_whole_stick():
    """A stick ten times as long has pieces as full as before: pages of long legs take no longer than they are many."""
    most = []
    for height in (4000, 40000):
        long = alter(bench, {"front.height": height, "back.height": 2 * height})
        held = [item for sheet in story_sticks(lay_out(long)) for item in sheet.drawing if isinstance(item, Clipped)]
        most.append(max(len(item.drawing) for item in held))
    assert most[1] <= most[0] + 5
