"""What lifts out: its weight, what is left beside it at the wettest, the press that tips it.

Swelling by the Wood Handbook (FPL-GTR-282), Eq. 13-2 with the coefficient of Table 13-5 for western larch, tangential,
0.00323 a percent: a board of 60 laid at 12 % swells 60 × 0.00323 × 2 = 0.388 mm at 14 %.
"""

import pytest
from check_tops import FIXED, LID, bench

from benchjoin import Boards, Panel, Stock, Top, alter, lay_out, lifting
from benchjoin.errors import LumberError

LARCH = Stock("larch slat", thickness=20, width=60, species="western larch")
BATTEN = Stock("larch batten", thickness=20, width=30, species="western larch")
OVER = Panel(400, boards=Boards(LARCH, run="across", gap=10), cleats=BATTEN)


def lifted(front=0, **more):
    frame = bench(Top([FIXED, OVER, FIXED], front=front))
    return lifting(lay_out(frame), wood="western larch", **more)


def test_what_is_left_beside_it_at_the_wettest():
    (panel,) = lifted(laid=12, wettest=14, grain="flat").each
    assert panel.laid == 3
    assert panel.wettest == pytest.approx(3 - 60 * 0.00323 * 2, abs=0.002)


def test_it_weighs_its_boards_and_cleats():
    """5 boards of 60 × 20 and 2 cleats of 30 × 20: at one density they weigh by their volumes."""
    layout = lay_out(bench(Top([FIXED, OVER, FIXED])))
    (panel,) = lifting(layout, wood="western larch").each
    volumes = [part.volume for part in layout.piece(1) if part.slot.group]
    one = next(part for part in layout.piece(1) if part.identity == "top/panel 1 board 1")
    density = lifting(layout, wood="western larch").each[0].weight / sum(volumes)
    assert len(volumes) == 7
    assert panel.weight == pytest.approx(density * sum(volumes))
    assert 400 < density * 1e9 < 800  # kg/m³, of larch
    assert one.volume in volumes


@pytest.mark.parametrize("over", [10, 40, 120])
def test_a_press_tips_it_when_its_moment_is_that_of_its_weight(over):
    """Seats reach from the front rail's face at 0 to the back's at 400; it reaches over by so much at the front."""
    (panel,) = lifted(front=over).each
    middle = (400 - over) / 2
    assert panel.press == pytest.approx(panel.weight * 9.80665 * middle / over, rel=1e-6)
    assert ("lift-out tips" in {f.kind for f in lifted(front=over).findings}) == (panel.press < 100)


def test_one_that_reaches_over_nowhere_tips_at_no_press():
    assert lifted().each[0].press == float("inf")
    assert lifted().table().rows[0][-1] == "–"
    assert lifted().table().rows[0][2] == "straight up"


def test_one_with_too_little_clear_is_told():
    tight = bench(Top([FIXED, alter_clear(0.5), FIXED]))
    (finding,) = lifting(lay_out(tight), wood="western larch", wettest=20).findings
    assert finding.kind == "lift-out sticks"
    assert finding.numbers["laid"] == 0.5


def alter_clear(clear):
    return Panel(400, boards=Boards(LARCH, run="across", gap=10), cleats=BATTEN, clear=clear, ease=0.5)


def test_wood_that_is_not_known_is_asked_for():
    with pytest.raises(LumberError, match="does not say its species"):
        lifting(lay_out(bench(Top([FIXED, LID, FIXED]))))
    assert alter(bench(Top([FIXED, LID, FIXED])), {"top.panel 1.clear": 4})
