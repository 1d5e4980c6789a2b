"""Paper for random frames: no word is cut by a seam, and none lies on another or on a line."""

from __future__ import annotations

import pytest
import shapely
from hypothesis import HealthCheck, given, settings
from strategies import frames

from benchjoin import lay_out
from benchjoin.drafting.primitives import Clipped, Line, Text, bounds, flat, text_box
from benchjoin.drafting.sheets.clashes import clashes
from benchjoin.drawings.making.asked import Asked
from benchjoin.drawings.templates.set.reduced import set_pages
from benchjoin.errors import BenchjoinError
from benchjoin.findings import Finding
from benchjoin.template_pages import template_sheets


@pytest.mark.slow
@settings(max_examples=40, deadline=None, suppress_health_check=list(HealthCheck))
@given(frames())
def test_words_of_sets_and_tiles_of_random_frames_are_whole_and_free(frame):
    try:
        layout = lay_out(frame)
    except BenchjoinError:
        return
    if layout.errors():
        return
    for page in set_pages(layout, Asked(layout=layout, paper="A4")):
        if not isinstance(page, Finding):
            assert [str(clash) for clash in clashes(tuple(flat(page.figures[0].drawing)))] == []
    for sheet in template_sheets(layout, kinds=["tiles"], paper="A4"):
        (window,) = [item for item in sheet.drawing if isinstance(item, Clipped)]
        drawn = list(flat(window.drawing))
        seams = tuple(item for item in drawn if isinstance(item, Line) and item.kind == "centre")
        inside = shapely.box(*bounds(seams)).buffer(-5.0, join_style="mitre")  # seams run 5 mm past their crosses
        assert all(inside.contains(text_box(item)) for item in drawn if isinstance(item, Text))
