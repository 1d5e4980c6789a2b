"""What names the state of a print: its fingerprint on every sheet, revision and date on desk pages as well."""

from __future__ import annotations

import attrs
import pytest
from designs import DESIGNS
from designs import plain_bench as bench

from benchjoin import PrinterScale, alter, lay_out, set_page
from benchjoin.binding import sheets
from benchjoin.drafting.primitives import Text, text_box
from benchjoin.drawings.making.house import House
from benchjoin.template_pages import template_sheets

BENCH = lay_out(bench)
HOUSE = House(revision="B", date="2026-03-01")


def texts(sheet):
    return [item for item in sheet.whole if isinstance(item, Text)]


def words(sheet):
    return [text.string for text in texts(sheet)]


def test_every_sheet_of_a_binder_bears_its_fingerprint_in_its_title_block():
    for sheet in sheets(BENCH):
        assert f"FINGERPRINT {sheet.fingerprint.upper()}" in words(sheet)


def test_one_figure_gives_its_own_fingerprint_and_many_give_one():
    one = set_page(BENCH, "A")
    assert one.fingerprint == one.figures[0].fingerprint
    (many, *_) = template_sheets(BENCH, kinds=["sticks"])
    assert len(many.figures) > 1
    assert many.fingerprint not in many.fingerprints.values()
    assert len(many.fingerprint) == len(one.fingerprint) == 10


@pytest.mark.parametrize("name", DESIGNS)
@pytest.mark.parametrize("house", [House(), HOUSE], ids=["plain", "revision"])
def test_a_desk_page_bears_it_in_its_head_clear_of_all_words(name, house):
    for sheet in template_sheets(lay_out(DESIGNS[name]), house=house):
        found = [text for text in texts(sheet) if text.string.startswith(sheet.fingerprint.upper())]
        (stamp,) = found
        more = " · REV. B · 2026-03-01" if house is HOUSE else ""
        assert stamp.string == f"{sheet.fingerprint.upper()}{more}"
        assert stamp.height == 2.5
        box = text_box(stamp)
        assert not [t for t in texts(sheet) if t is not stamp and text_box(t).intersection(box).area > 0.01]
        assert box.bounds[0] > 10
        assert box.bounds[2] <= sheet.width - 10 + 1e-6


def test_another_measurement_and_another_printer_give_another_fingerprint():
    (first, *_), (again, *_) = (template_sheets(lay_out(bench), kinds=["tiles"]) for _ in range(2))
    assert first.fingerprint == again.fingerprint
    narrow = lay_out(alter(bench, {"foot shelf/front rail.width": "2 11/16 in"}))
    page, other = set_page(BENCH, "A"), set_page(narrow, "A")
    assert page.fingerprint != other.fingerprint
    stretched = set_page(BENCH, "A", printer=PrinterScale(249, 180))
    assert stretched.fingerprint != page.fingerprint


def test_a_long_title_leaves_room_for_it():
    long = lay_out(attrs.evolve(bench, name="Bench for the honey house by the door, with a high back and two shelves"))
    (sheet,) = (one for one in sheets(long, only=["views"]) if one.name == "arrangement")
    (stamp,) = (text for text in texts(sheet) if text.string.startswith("FINGERPRINT"))
    assert not [t for t in texts(sheet) if t is not stamp and text_box(t).intersection(text_box(stamp)).area > 0.01]
