"""Factors of strength, loads to compare with, heights and spacings, typed in again from what prints them."""

from __future__ import annotations

import pytest

from benchjoin.trade import heights, working
from benchjoin.trade.spacing import bolts, lead_holes, no_lead_holes

# Wood Handbook FPL-GTR-282 Table 5-6, from memory: coefficient of variation in %
VARIATION = {"rupture": 16, "crushing": 18, "bearing": 28, "shear": 14}
# EN 1995-1-1 Table 3.2, from memory: k_def of solid timber, service classes 1, 2 and 3
CREEP = (0.6, 0.8, 2.0)
# EN 12520:2024, as a public file quotes its preview: seat or front edge, each empty place of a bench. [N]
SEAT, PLACE = 1300, 750
# IRC R602.6: notches of studs in bearing walls, and in others. [% of the width]
STUDS = (25, 40)
# Heights of work over the elbow, cm: Bodyspace 2006 as the Ontario MSD guideline gives it, the AUVA leaflet, a brochure
OVER_THE_ELBOW = {
    ("fine", "Pheasant"): (5, 10),
    ("fine", "an actuator"): (5, 5),
    ("light", "Pheasant"): (-10, -5),
    ("light", "AUVA"): (-10, -5),
    ("heavy", "Pheasant"): (-25, -10),
    ("heavy", "AUVA"): (-40, -15),
    ("heavy", "an actuator"): (-40, -20),
}


def test_variation_roughly_matches_table_5_6_from_memory():
    assert {kind: 100 * share for kind, share in working.VARIATION.items()} == pytest.approx(VARIATION)
    assert working.VARIATION_SOURCE.standing == "from memory"


def test_the_weakest_in_twenty_of_a_normal_distribution():
    """Arithmetic: 5 of 100 lie more than 1.6449 deviations below the average."""
    from statistics import NormalDist

    assert -NormalDist().inv_cdf(0.05) == pytest.approx(working.ONE_IN_TWENTY, abs=5e-4)


def test_partial_factors_match_en_1995_and_roughly_en_1990_from_memory():
    assert working.MATERIAL == 1.3
    assert working.OVERLOAD == 1.5


def test_creep_roughly_matches_table_3_2_from_memory():
    first, second, third = CREEP
    assert {False: (first, second), True: (second, third)} == working.CREEP


def test_loads_to_compare_with_match_en_12520_as_quoted():
    assert [load.force for load in working.REFERENCES] == [SEAT, PLACE]


def test_notches_in_studs_match_irc_r602_6():
    assert [100 * share for share in working.STUD_NOTCH] == pytest.approx(STUDS)


@pytest.mark.parametrize("band", heights.BANDS)
def test_heights_match_the_guides(band):
    document = next(name for work, name in OVER_THE_ELBOW if work == band.work and band.source.document.find(name) >= 0)
    assert (band.low / 10, band.high / 10) == OVER_THE_ELBOW[band.work, document]


def test_every_guide_has_its_band():
    assert len(heights.BANDS) == len(OVER_THE_ELBOW)


def test_elbows_match_mil_std_1472g():
    """NUREG-0700 Rev. 3 Table 11.4: 97.5 cm for 5 of 100 women, 116.0 cm for 95 of 100 men, without shoes."""
    assert dict(heights.ELBOWS) == {"5 of 100 women": 975, "95 of 100 men": 1160}


def test_reach_roughly_matches_a_brochure():
    """250 mm for usual work, 500 mm now and then; the brochure credits CCOHS."""
    assert heights.REACH == (250, 500)
    assert heights.SAFETY_CENTRE.standing == "secondary"


def along_or_across(row):
    """The larger of pushing along and across the grain, in diameters: a1, a2, a3t, a3c, a4t, a4c."""
    return (row.in_row, row.rows, row.loaded_end, row.end, row.loaded_edge, row.edge)


# EN 1995-1-1 Table 8.2 as two public files transcribe it, the larger of 0° and 90°: a1, a2, a3t, a3c, a4t, a4c, and
# below a diameter of 5 mm where that differs
@pytest.mark.parametrize(
    "row, printed",
    [
        (lead_holes(4), (4 + 1, 3 + 1, 7 + 5, 7, 3 + 2, 3)),
        (lead_holes(5), (4 + 1, 3 + 1, 7 + 5, 7, 3 + 4, 3)),
        (no_lead_holes(4, 420), (5 + 5, 5, 10 + 5, 10, 5 + 2, 5)),
        (no_lead_holes(5, 420), (5 + 7, 5, 10 + 5, 10, 5 + 5, 5)),
        (no_lead_holes(4, 421), (7 + 8, 7, 15 + 5, 15, 7 + 2, 7)),
        (no_lead_holes(5, 500), (7 + 8, 7, 15 + 5, 15, 7 + 5, 7)),
    ],
)
def test_nails_and_screws_match_table_8_2(row, printed):
    assert along_or_across(row) == printed
    assert row.least_end == 0


# EN 1995-1-1 Table 8.4, as a secondary page has it; M8: 40, 32, 80, 32, 32, 24 mm
def test_bolts_roughly_match_table_8_4():
    row = bolts(8)
    a1, a2, loaded_end, end, loaded_edge, edge = (8 * d for d in along_or_across(row))
    assert (a1, a2, max(loaded_end, row.least_end), end, loaded_edge, edge) == (40, 32, 80, 32, 32, 24)
    assert row.loaded_end == 7
