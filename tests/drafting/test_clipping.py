"""Cut-outs of drawings: nothing shows outside the box, and what shows lies where it lay."""

from __future__ import annotations

import numpy as np
import pypdfium2
import pytest
from read_paper import read_pages, spread_ink

from benchjoin.drafting.primitives import Clipped, Disc, Fill, Line, Text, bounds, flat, shift, stretch
from benchjoin.drafting.sheets.sheet import Sheet
from benchjoin.drafting.writers.pdf import pdf_bytes
from benchjoin.errors import PaperError

DRAWING = (
    Line(((0, 0), (100, 80)), "visible"),
    Line(((0, 40), (100, 40)), "hidden"),
    Disc((50, 40), 20),
    Fill((((10, 10), (30, 10), (30, 30), (10, 30)),)),
    Text((20, 60), "57 1/2 from the foot", 5),
)


def picture(drawing, folder, dpi=100):
    path = folder / "page.pdf"
    path.write_bytes(pdf_bytes(Sheet(name="s", title="s", width=120, height=100, drawing=drawing)))
    pixels = pypdfium2.PdfDocument(path)[0].render(scale=dpi / 72, grayscale=True).to_numpy()
    return pixels.reshape(pixels.shape[:2]), read_pages(path)[0]


def test_what_lies_outside_the_box_is_not_seen_and_the_rest_is_as_it_was(tmp_path):
    whole, _ = picture(DRAWING, tmp_path)
    seen, _ = picture((Clipped(DRAWING, (20, 20, 80, 60)),), tmp_path)
    scale = 100 / 25.4
    inside = np.zeros(whole.shape, dtype=bool)
    inside[round((100 - 60) * scale) : round((100 - 20) * scale), round(20 * scale) : round(80 * scale)] = True
    edge = spread_ink(np.where(inside, 0, 255).astype(np.uint8)) & ~inside
    assert (seen[~inside & ~edge] > 250).all()
    inner = inside & ~spread_ink(np.where(inside, 255, 0).astype(np.uint8), 2)
    assert (whole[inner] < 100).sum() > 500
    assert (seen[inner] == whole[inner]).all()


def test_lines_keep_their_points_in_the_file(tmp_path):
    _, page = picture((Clipped(DRAWING[:1], (20, 20, 80, 60)),), tmp_path)
    (line,) = page.strokes
    assert np.array(line.points) == pytest.approx(np.array([(0, 0), (100, 80)]), abs=0.01)


def test_bounds_of_a_cut_out_are_those_of_what_is_seen():
    assert bounds((Clipped(DRAWING, (20, 20, 80, 60)),)) == (20, 20, 80, 60)
    assert bounds((Clipped(DRAWING[:1], (-50, -50, 500, 30)),)) == (0, 0, 100, 30)


def test_a_cut_out_moves_and_stretches_with_its_box():
    one = Clipped(DRAWING, (20, 20, 80, 60))
    (moved,) = shift((one,), 5, -5)
    assert moved.box == (25, 15, 85, 55)
    assert moved.drawing == shift(DRAWING, 5, -5)
    (longer,) = stretch((one,), 1.02, 1.0)
    assert longer.box == pytest.approx((20.4, 20, 81.6, 60))
    assert longer.drawing == stretch(DRAWING, 1.02, 1.0)
    assert list(flat((one,))) == list(DRAWING)


def test_two_cut_outs_may_share_a_box_and_one_may_lie_in_another(tmp_path):
    inner = Clipped(DRAWING, (20, 20, 80, 60))
    nested = (Clipped((inner,), (30, 10, 70, 90)), Clipped(DRAWING[:2], (20, 20, 80, 60)))
    seen, _ = picture(nested[:1], tmp_path)
    plain, _ = picture((Clipped(DRAWING, (30, 20, 70, 60)),), tmp_path)
    assert (seen == plain).mean() > 0.999
    text = Sheet(name="s", title="s", width=120, height=100, drawing=nested).svg()
    assert text.count("<clipPath") == 2


def test_a_stretched_letter_is_never_made_too_small_to_read():
    assert stretch((Text((0, 0), "a", 2.5),), 0.97, 0.97)[0].height == 2.5
    assert stretch((Text((0, 0), "a", 5.0),), 0.97, 0.97)[0].height == pytest.approx(4.85)


@pytest.mark.parametrize("box", [(0, 0, 0, 10), (5, 5, 4, 6), (0, float("nan"), 1, 1), (0, 0, float("inf"), 1)])
def test_a_box_through_which_nothing_is_seen_is_refused(box):
    with pytest.raises(PaperError):
        Clipped(DRAWING, box)
