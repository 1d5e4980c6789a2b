"""A part that came out longer or shorter than it should is told by how much, and what to do about it."""

from __future__ import annotations

import pytest
from samples import SAMPLES

from benchjoin import alter, lay_out

FRAME = SAMPLES["rails inside"]


@pytest.mark.parametrize(
    ("part", "off", "words", "severity"),
    [
        ("1/front left leg", 3.0, "3 mm too long; trim its top", "note"),
        ("1/back right leg", -4.0, "4 mm too short; heights stay from its foot", "warning"),
        ("1/low/left rail", 2.0, "2 mm too long; trim its end", "note"),
        ("1/low/right rail", -2.0, "2 mm too short; shim it, or make it again", "warning"),
    ],
)
def test_a_length_that_is_off_says_by_how_much(part, off, words, severity):
    length = float(lay_out(FRAME).part(part).length)
    layout = lay_out(alter(FRAME, {f"{part}.length": length + off}))
    (found,) = [one for one in layout.findings if one.kind == "measured length"]
    assert words in found.sentence
    assert found.severity == severity
    assert found.numbers == {"length": length + off, "wanted": length}
