"""What the year does to the gaps between planks that lie side by side on a potting bench's shelf.

The planks of tests/new_members.py are 120 wide, of eastern white pine, in two pieces. Here they start at 0, 124 and 250
from the front, so that their gaps are 4 and 6. Pine shrinks 6.1 % over 30 % (Wood Handbook Table 4-3, from memory): by
Eq. 13-3 a plank swells 120 × 6 / (3000 / 6.1 − 18) = 1.52 from 12 to 18 %, and by Eq. 13-2, whose 0.00212 gives
more there, shrinks 120 × 0.00212 × 3 = 0.7632 to 9 %.
"""

from __future__ import annotations

import attrs
import pytest
from boarded_designs import bench
from new_members import Plank, decked, let_in

from benchjoin import lay_out
from benchjoin.errors import AddressError, LengthError, LumberError, MoistureError
from benchjoin.shop.gaps import board_gaps, gap_to_lay

YEAR = {"laid": 12, "wettest": 18, "driest": 9}
SWELLS = 120 * 6 / (3000 / 6.1 - 18)


def near(value):
    return pytest.approx(value, abs=2e-3)


@pytest.fixture
def layout(monkeypatch):
    let_in(monkeypatch)
    planks = (Plank(0.0, 120.0), Plank(124.0, 120.0), Plank(250.0, 120.0))
    return lay_out(attrs.evolve(decked(), planks=planks))


def planks(layout):
    return [part for part in layout.parts if part.role == "plank"]


def test_each_gap_loses_what_its_planks_swell(layout):
    found = board_gaps(layout, planks(layout), **YEAR).gaps
    assert [(gap.near.name, gap.far.name) for gap in found] == [
        (f"{n}/shelf/plank {k}", f"{n}/shelf/plank {k + 1}") for n in (1, 2) for k in (1, 2)
    ]
    assert [gap.laid for gap in found] == [4, 6, 4, 6]
    assert [gap.wettest for gap in found] == [near(gap.laid - SWELLS) for gap in found]
    assert [gap.driest for gap in found] == [near(gap.laid + 0.7632) for gap in found]
    assert [gap.to_lay for gap in found] == [near(2 + SWELLS)] * 4


def test_the_order_of_the_boards_does_not_matter(layout):
    assert board_gaps(layout, reversed(planks(layout)), **YEAR).gaps == board_gaps(layout, planks(layout), **YEAR).gaps


def test_boards_of_a_level_are_asked_for_by_its_name():
    layout = lay_out(bench)
    found = board_gaps(layout, "foot shelf", **YEAR, wood="western larch").gaps
    assert [gap.laid for gap in found] == [pytest.approx(19 / 56 * 25.4)] * 7 * 3  # worked by hand, in three pieces
    with pytest.raises(AddressError, match='Boards lie on "foot shelf"'):
        board_gaps(layout, "bench", **YEAR)


def test_a_gap_that_closes_is_a_warning_with_the_gap_to_lay(layout):
    assert board_gaps(layout, planks(layout), **YEAR).findings == ()  # 4 − 1.52 keeps 2
    (found,) = board_gaps(layout, planks(layout), **YEAR, least=3).findings
    assert (found.severity, found.kind, found.where) == ("warning", "gap closes when wet", "shelf/plank 1")
    assert found.numbers == {"laid": 4, "wettest": near(4 - SWELLS), "least": 3, "to lay": near(3 + SWELLS)}
    assert found.parts == ("shelf/plank 1", "shelf/plank 2")
    assert "2.5 mm is left, and 3 mm was asked for" in found.sentence


def test_boards_laid_tight_are_beside_each_other(monkeypatch):
    let_in(monkeypatch)
    tight = lay_out(attrs.evolve(decked(), planks=(Plank(0.0, 120.0), Plank(120.0, 120.0))))
    gaps = board_gaps(tight, planks(tight), **YEAR, least=0).gaps
    assert [(gap.laid, gap.wettest) for gap in gaps] == [(0, near(-SWELLS))] * 2


def test_boards_that_press_on_each_other_are_told_by_how_much(layout):
    (found,) = board_gaps(layout, planks(layout), laid=6, wettest=30, driest=6, least=0).findings
    # 120 × 24 / (3000 / 6.1 − 24) = 6.16: 4 − 6.16
    assert found.numbers["wettest"] == near(4 - 120 * 24 / (3000 / 6.1 - 24))
    assert "they press on each other by" in found.sentence
    assert "so it is with 3 more gaps" in found.sentence


def test_boards_that_are_laid_wet_open_and_that_is_said(layout):
    # from 30 %: 120 × 6.1 % × 12 / 30 at 18 %, × 21 / 30 at 9 %
    found = board_gaps(layout, planks(layout), laid=40, wettest=18, driest=9)
    assert found.gaps[0].wettest == near(4 + 120 * 0.061 * 12 / 30)
    assert found.gaps[0].driest == near(4 + 120 * 0.061 * 21 / 30)
    (note,) = found.findings
    assert (note.severity, note.kind) == ("note", "laid wet")
    assert "only shrink" in note.sentence
    assert found.to_lay == 0  # laid tight, 2.9 is left at 18 %


def test_the_table_has_a_line_for_the_gaps_that_read_alike(layout):
    table = board_gaps(layout, planks(layout), **YEAR).table()
    assert table.columns[2:] == ("Laid, 12 % (mm)", "Wettest, 18 %", "Driest, 9 %", "To lay for 2")
    assert [row[1:] for row in table.rows] == [
        ("2", "4", "2.5", "5 scant", "3.5"),
        ("2", "6", "4.5", "7 scant", "3.5"),
    ]
    assert "common practice, no source" in table.notes[0]


def test_quarter_sawn_boards_and_unknown_grain(layout):
    flat, quarter, unknown = (
        board_gaps(layout, planks(layout), **YEAR, grain=grain).gaps[0].wettest
        for grain in ("flat", "quarter", "unknown")
    )
    assert quarter == near(4 - 120 * 6 / (3000 / 2.1 - 18))
    assert unknown == flat < quarter


def test_what_is_asked_is_refused_in_words(layout):
    with pytest.raises(MoistureError, match="from the driest to the wettest"):
        board_gaps(layout, planks(layout), laid=12, wettest=9, driest=18)
    with pytest.raises(MoistureError, match="0 to 250 %"):
        gap_to_lay(100, "white oak", laid=-1, wettest=18)
    with pytest.raises(AddressError, match="Choose flat, quarter, unknown"):
        board_gaps(layout, planks(layout), **YEAR, grain="rift")
    with pytest.raises(AddressError, match="No two of these parts lie side by side"):
        board_gaps(layout, planks(layout)[:1], **YEAR)
    with pytest.raises(AddressError, match="No two of these parts"):
        board_gaps(layout, [], **YEAR)
    with pytest.raises(AddressError, match="widths run along different axes"):
        board_gaps(layout, layout.piece(1), **YEAR)
    with pytest.raises(LengthError):
        gap_to_lay("2 1/2", "white oak", laid=12, wettest=18)
    with pytest.raises(LumberError):
        gap_to_lay("2 1/2 in", "pear", laid=12, wettest=18)


def test_boards_that_lie_end_to_end_or_above_each_other_are_no_neighbours(layout):
    # rails of one side, one above the other, are no neighbours across: their widths run up, and so does the gap
    rails = [part for part in layout.piece(1) if part.side == "front" and part.role == "rail"]
    (gap,) = board_gaps(layout, rails, **YEAR).gaps
    assert gap.laid == pytest.approx(rails[1].blank.low[2] - rails[0].blank.high[2])
    ends = [part for part in layout.piece(1) if part.side in ("left", "right")]
    with pytest.raises(AddressError, match="side by side"):
        board_gaps(layout, ends[:2], **YEAR)
