"""Whose word each number stands on: every table, equation and habit that the tool reckons with, and its source.

A number is as good as the page it was read on. What was read in the document itself is told from what another page
copies, what was remembered, and what is the habit of workshops.

    whose_word()                    # a table
    whose_word("from memory")       # what nobody has looked up yet
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from typing import Any, get_args

from ..errors import AddressError, typed
from ..sources import COMMON_PRACTICE, STATICS, Source, Standing
from ..tables import Table
from ..trade import cautions, fasteners, heights, lumber, paper, saws, spacing, species, standards, tapes, working
from ..wood import beams, holding, moisture, movement, weight
from .budget import tolerance
from .fasteners import findings as penetration
from .fasteners import strength as screws
from .strength import check

GROUPS: tuple[tuple[str, Iterable[Any]], ...] = (
    ("Dressed softwood, dry", lumber.SOFTWOOD),
    ("Dressed softwood, green", [row.green_source for row in lumber.SOFTWOOD]),
    ("Rough softwood, least size", [lumber.PS_20_ROUGH]),
    ("Hardwood by quarters", lumber.HARDWOOD),
    ("Hardwood surfaced on two sides", [lumber.S2S]),
    ("Planed sections of Europe", [row[2] for row in lumber.PLANED]),
    ("Permitted deviations of structural timber", [lumber.EN_336]),
    ("Shrinkage", [one.shrinkage for one in species.SPECIES]),
    ("Content at which shrinkage starts", [species.START_OF_SHRINKAGE]),
    ("Movement coefficients", [one.coefficients for one in species.SPECIES]),
    ("Strength and stiffness of clear wood", [own for one in species.SPECIES for own in (one.dry, one.green)]),
    ("Equilibrium moisture content", [moisture.EQUILIBRIUM]),
    ("Density by moisture content", [weight.DENSITY]),
    ("Change of size by coefficient", [movement.BY_COEFFICIENT]),
    ("Change of size by total shrinkage", [movement.BY_SHRINKAGE]),
    ("Change of size, the larger of both", [movement.LARGER]),
    ("Shrinkage to a moisture content", [movement.PARTIAL]),
    ("Shrinkage of dimension lumber", [movement.DIMENSION]),
    ("Shrinkage of lumber dressed green", [movement.PS_20_SHRINKAGE]),
    ("Size of sawn softwood by content", [movement.EN_1313]),
    ("Kerfs of saws", [saws.FULL_KERF, saws.THIN_KERF]),
    ("Stacked dado heads", [saws.OUTSIDE_PAIR, *saws.CHIPPERS, saws.STACKED_PARTS]),
    ("Habits of notching, minutes and milling", [COMMON_PRACTICE]),
    ("Accuracy of tapes", [tapes.MI_008, tapes.MI_008_MARKS, *tapes.US_TAPES]),
    ("Stacked tolerances", [tolerance.SCHOLZ]),
    ("Shanks of wood screws", [fasteners.GAUGE_SIZES]),
    ("Common nails", fasteners.NAILS),
    ("Roots, heads and lead holes of screws", [fasteners.ROOT, fasteners.HEADS, fasteners.LEAD_HOLES]),
    ("Holes of bolts", [fasteners.BOLT_HOLES]),
    ("Bending yield of steel", [fasteners.STEEL]),
    ("Screws in end grain", [fasteners.END_GRAIN]),
    ("Spacing of fasteners", [spacing.lead_holes(4), spacing.no_lead_holes(4, 400), spacing.bolts(10), spacing.LIGHT]),
    (
        "Withdrawal of screws, nails and lags",
        [holding.SCREW_WITHDRAWAL, holding.NAIL_WITHDRAWAL, holding.LAG_WITHDRAWAL],
    ),
    ("Lateral load of screws and nails", [holding.LATERAL, holding.YIELD, *screws.SOURCES]),
    ("Least penetration", [penetration.PENETRATION_RULE]),
    ("Bending, deflection and columns", [check.HANDBOOK, beams.DEFLECTION, beams.ECCENTRIC]),
    ("Notches in beams", [beams.NDS_NOTCH, beams.EN_NOTCH]),
    ("Shoulders under load", [check.SHOULDER, STATICS]),
    ("Variation of clear wood", [working.VARIATION_SOURCE]),
    ("Time under load and wet", [working.TIME_SOURCE]),
    ("Creep", [working.CREEP_SOURCE]),
    ("Notches in studs", [working.STUD_SOURCE]),
    ("Loads to compare with", working.REFERENCES),
    ("Working heights", [*heights.BANDS, heights.ELBOWS_SOURCE, heights.SAFETY_CENTRE]),
    ("Cautions at the saw", cautions.CAUTIONS),
    ("Line widths and types", [*standards.LINE_WIDTHS, *standards.LINE_TYPES, standards.ISO_128_PATTERN]),
    ("Lettering", [standards.ISO_3098]),
    ("Scales", standards.SCALES),
    ("Arrows and origin marks", [standards.ISO_129_ARROWS, standards.ISO_129_ORIGIN]),
    ("Places of dimension lines", [standards.ASME_SPACING, standards.ISO_129_EXTENSION]),
    ("Borders, title block, projection", [standards.ISO_5457, standards.ISO_7200_WIDTH, standards.ISO_5456_2]),
    ("Data fields", standards.DATA_FIELDS),
    ("Sizes of paper and PDF pages", [*paper.PAPERS, *paper.ROLLS, paper.PDF_LIMIT_SOURCE]),
)
"""What is reckoned with, and the rows or sources that it stands on."""


def whose_word(standing: Standing | None = None) -> Table:
    """Every group of numbers with its documents, or those of one standing alone.

    Raises
    ------
    AddressError
        If there is no such standing.
    """
    known = get_args(Standing)
    if standing is not None and standing not in known:
        raise AddressError(
            f"There is no standing {typed(standing)}. Choose {', '.join(known)}.", address=str(standing), known=known
        )
    rows = tuple(row for row in _rows() if standing in (None, row[2]))
    return Table("On whose word", ("What", "Document, and the place in it", "Standing"), rows)


def _rows() -> Iterator[tuple[str, str, str]]:
    for what, own in GROUPS:
        for source in dict.fromkeys(one if isinstance(one, Source) else one.source for one in own):
            yield what, ", ".join(filter(None, (source.document, source.place))), source.standing
