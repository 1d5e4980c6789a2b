"""Whatever happened to a job, it holds together or says why not; the long run is scripts/fuzz."""

from __future__ import annotations

import pytest
from designs import DESIGNS
from histories import lives
from hypothesis import given, settings
from hypothesis import strategies as st
from whole_jobs import holds, is_drawn, is_read

from benchjoin.frame.design.file import write_design

DRAWN = settings(max_examples=4)
TEXTS = {name: write_design(frame) for name, frame in DESIGNS.items()}


@settings(max_examples=25)
@given(lives())
def test_no_wood_is_shared_untold_and_every_notch_lies_on_its_leg(life):
    holds(life[0])


@DRAWN
@given(lives())
def test_every_sheet_stays_inside_its_border(life):
    layout = holds(life[0])
    if layout is not None:
        is_drawn(layout)


@given(st.sampled_from(sorted(TEXTS)), st.data())
def test_a_damaged_file_is_read_or_told(name, data):
    text = TEXTS[name]
    for _ in range(data.draw(st.integers(1, 3))):
        place = data.draw(st.integers(0, len(text) - 1))
        worse = data.draw(
            st.one_of(st.text(max_size=3), st.sampled_from(["[", '"', "=", "9" * 50, "nan", "true", "[["]))
        )
        text = text[:place] + worse + text[place + data.draw(st.integers(0, 9)) :]
    is_read(text)


def test_what_breaks_a_rule_is_found(monkeypatch):
    from benchjoin import lay_out

    monkeypatch.setattr("whole_jobs.sharing", lambda layout: {(1, "nobody", "no one")})
    with pytest.raises(AssertionError, match="nobody is told"):
        holds(DESIGNS["bench"])
    assert lay_out(DESIGNS["bench"]).errors() == ()
