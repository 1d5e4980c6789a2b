"""The milling sheet: what one takes to the machines."""

from __future__ import annotations

from itertools import pairwise

import pytest
from designs import plain_bench as bench
from designs import plain_rack as rack
from samples import SAMPLES

from benchjoin import Notch, Rail, Stock, alter, lay_out, milling_plan
from benchjoin.binding import sheets
from benchjoin.drafting.primitives import Line, Text, bounds
from benchjoin.drafting.sheets.clashes import clashes
from benchjoin.drawings.lists.milling_sheet import milling_sheets
from benchjoin.errors import PaperError

DESIGNS = {"bench": bench, "rack": rack, **SAMPLES}


def texts(pages):
    return [item.string for page in pages for item in page.drawing if isinstance(item, Text)]


def joined(pages):
    return " ".join(" ".join(texts(pages)).split())


@pytest.fixture(scope="module")
def pages():
    return milling_sheets(lay_out(bench), starts={"larch 2x4, milled": Stock.dressed("2x4")})


@pytest.mark.parametrize("name", DESIGNS)
@pytest.mark.parametrize("paper", [None, "A4", "Letter", "A3"])
def test_nothing_lies_on_anything_or_leaves_the_paper(name, paper):
    for page in milling_sheets(lay_out(DESIGNS[name]), paper=paper):
        assert [str(clash) for clash in clashes(page.whole)] == []
        x0, y0, x1, y1 = bounds(page.drawing)
        assert (x0 >= 10, y0 >= 10, x1 <= page.width - 10, y1 <= page.height - 10) == (True, True, True, True)


@pytest.mark.parametrize(
    "word", ["manuals", "local rules", "shorter", "Push blocks", "Support long stock", "dust", "eyes and ears"]
)
def test_the_cautions_stand_first_on_the_first_page(pages, word):
    told = joined(pages[:1])
    assert word in told
    assert told.index(word) < told.index("Milling plan")


def test_every_part_has_a_line_once(pages):
    plan = milling_plan(lay_out(bench))
    found = texts(pages)
    marks = [part.mark for part in plan.layout.parts]
    at = next(n for n, words in enumerate(found) if words.startswith("Sizes on the wood"))
    assert sorted(word for word in found[at:] if word in marks) == sorted(marks)


def test_the_cells_to_write_in_are_framed_and_high_enough_for_a_pencil(pages):
    page = next(page for page in pages if "Sizes on the wood" in joined([page]))
    (table,) = (figure for figure in page.figures if figure.name.startswith("Sizes on the wood"))
    level = sorted({item.points[0][1] for item in table.drawing if isinstance(item, Line) and item.kind == "thin"
                    and item.points[0][1] == item.points[1][1]})  # fmt: skip
    assert min(b - a for a, b in pairwise(level)) >= 6.4 - 1e-6
    upright = [item for item in table.drawing if isinstance(item, Line) and item.points[0][0] == item.points[1][0]]
    assert len(upright) == 2 * 3  # two halves beside each other


def test_findings_of_the_plan_are_told_before_the_order_of_work():
    told = joined(milling_sheets(lay_out(bench)))
    assert told.index("is milled from is not said") < told.index("Order of work")


def test_what_was_measured_is_printed_on_its_line():
    told = texts(milling_sheets(lay_out(alter(rack, {"1/front left leg.size": (44.3, 44.6)}))))
    assert {"44.3", "44.6"} <= set(told)


@pytest.mark.slow
def test_the_binder_has_it_and_a_frame_that_cannot_be_built_has_none():
    assert any(sheet.name.startswith("milling") for sheet in sheets(lay_out(rack)))
    faulty = lay_out(alter(bench, {"bench.ends": Rail("3 1/2 in", joint=Notch()), "corners": "staggered"}))
    assert faulty.errors()
    assert not any(sheet.name.startswith("milling") for sheet in sheets(faulty))


def test_paper_that_is_not_there_is_answered_with_what_there_is():
    with pytest.raises(PaperError, match="There is A0"):
        milling_sheets(lay_out(rack), paper="A9")
