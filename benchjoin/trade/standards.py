"""What the drawing standards print: lines, lettering heights, scales, spacing, borders, the title block.

drafting/ takes its weights and sizes from here, so that a sheet can say by which standard it is drawn. Each
row carries its source; rows marked "from memory" wait for somebody to open the document.
"""

from __future__ import annotations

from typing import Literal

import attrs

from ..errors import PaperError
from ..sources import COMMON_PRACTICE, Source

System = Literal["metric", "inch"]

# --- lines ---
ISO_128_WIDTHS = Source("ISO 128-2:2020", "line widths")
ISO_128_FINE = Source("ISO 128-2:2020", "line widths", standing="from memory")
ISO_128_TYPES = Source("ISO 128-2:2020", "line types", standing="from memory")
ISO_128_PATTERN = Source("ISO 128-2:2020", "lengths of line elements", standing="from memory")


@attrs.frozen
class LineWidth:
    """A member of the series of line widths, each about the square root of two times the one before. [mm]"""

    width: float
    source: Source


LINE_WIDTHS: tuple[LineWidth, ...] = (
    LineWidth(0.13, ISO_128_FINE),
    LineWidth(0.18, ISO_128_FINE),
    *(LineWidth(width, ISO_128_WIDTHS) for width in (0.25, 0.35, 0.5, 0.7, 1.0, 1.4, 2.0)),
)
WIDE_TO_NARROW = 2.0  # ISO_128_WIDTHS: two widths on one drawing, 2:1; common pairs 0.7/0.35 and 0.5/0.25


@attrs.frozen(kw_only=True)
class LineType:
    """A line type: its number, what it is for, and its dashes in line widths (drawn, left out, ...)."""

    number: str
    name: str
    use: str
    wide: bool
    dashes: tuple[float, ...] = ()
    source: Source = ISO_128_TYPES


LONG_DASH, DASH, GAP, DOT = 24.0, 12.0, 3.0, 0.5  # in line widths, ISO_128_PATTERN

LINE_TYPES: tuple[LineType, ...] = (
    LineType(number="01.1", name="continuous narrow", use="dimension and extension lines, hatching", wide=False),
    LineType(number="01.2", name="continuous wide", use="visible outlines", wide=True, source=ISO_128_WIDTHS),
    LineType(number="02.1", name="dashed narrow", use="hidden outlines", wide=False, dashes=(DASH, GAP)),
    LineType(
        number="04.1",
        name="long-dash dot narrow",
        use="centre lines",
        wide=False,
        dashes=(LONG_DASH, GAP, DOT, GAP),
    ),
    LineType(
        number="05.1",
        name="long-dash double-dot narrow",
        use="outlines of neighbouring parts",
        wide=False,
        dashes=(LONG_DASH, GAP, DOT, GAP, DOT, GAP),
    ),
)

# --- lettering ---
ISO_3098 = Source("ISO 3098-1", "nominal heights h of capitals and figures")
LETTERING: tuple[float, ...] = (1.8, 2.5, 3.5, 5, 7, 10, 14, 20)
# of h; ISO 3098 type B has three pitches: 6.65, 5.25 and 4.55 mm at h = 3.5
LINE_PITCH = 6.65 / 3.5
LINE_PITCH_CLOSE = 5.25 / 3.5

# --- scales ---
ISO_5455 = Source("ISO 5455:1979", "cl. 5")
ISO_5455_REDUCED = Source("ISO 5455:1979", "cl. 5, reductions", standing="from memory")
INCH_SCALES = Source("US architectural scales", "table of text heights by scale", standing="secondary")


@attrs.frozen(kw_only=True)
class Scale:
    """A drawing scale: paper over wood, and how it is written in the title block."""

    ratio: float
    label: str
    system: System | Literal["both"]
    source: Source


def _metric(over: int, under: int, source: Source) -> Scale:
    return Scale(ratio=over / under, label=f"{over}:{under}", system="metric", source=source)


def _inch(inches: str, under: int, source: Source = INCH_SCALES) -> Scale:
    return Scale(ratio=1 / under, label=f'{inches}" = 1\'-0"', system="inch", source=source)


FULL_SIZE = Scale(ratio=1.0, label="1:1", system="both", source=ISO_5455)

SCALES: tuple[Scale, ...] = (
    *(_metric(over, 1, ISO_5455) for over in (50, 20, 10, 5, 2)),
    FULL_SIZE,
    *(_metric(1, under, ISO_5455_REDUCED) for under in (2, 5, 10, 20, 50, 100, 200, 500)),
    _inch("6", 2),
    _inch("3", 4),
    _inch("1 1/2", 8),
    _inch("1", 12),
    _inch("3/4", 16),
    _inch("1/2", 24, COMMON_PRACTICE),
    _inch("3/8", 32, COMMON_PRACTICE),
    _inch("1/4", 48),
    _inch("1/8", 96),
)


def fitting_scale(
    model_w: float,
    model_h: float,
    room_w: float,
    room_h: float,
    system: System = "metric",
    *,
    largest: float = 1.0,
) -> Scale:
    r"""The largest standard scale at which a model fits its room, and not larger than `largest`.

    Parameters
    ----------
    model_w, model_h : float
        Width and height of what is drawn, true size. [mm]
    room_w, room_h : float
        Width and height left on the paper. [mm]
    system : "metric" or "inch"
        Whose scales are taken.
    largest : float
        The largest ratio of paper to true size; 1 is full size.

    Raises
    ------
    PaperError
        If the room is nothing, or the model does not fit at the smallest scale of the system.

    Examples
    --------
    >>> fitting_scale(1450, 1780, 170, 220).label
    '1:10'
    >>> fitting_scale(1450, 1780, 170, 220, system="inch").label
    '1" = 1\'-0"'
    """
    slack = 1e-6  # a model that fits exactly fits
    fits = [
        scale
        for scale in SCALES
        if scale.system in (system, "both")
        and scale.ratio <= largest
        and model_w * scale.ratio <= room_w + slack
        and model_h * scale.ratio <= room_h + slack
    ]
    if not fits or min(room_w, room_h) <= 0:
        raise PaperError(
            f"{model_w:g} × {model_h:g} mm does not fit a room of {room_w:g} × {room_h:g} mm on paper "
            f"at any {system} scale. Take larger paper."
        )
    return max(fits, key=lambda scale: scale.ratio)


# --- dimensions ---
ISO_129_ARROWS = Source("ISO 129-1:2018", "terminators", standing="from memory")
ASME_SPACING = Source("ASME Y14.5M", "spacing of dimension lines")
ISO_129_ORIGIN = Source("ISO 129-1:2018", "superimposed running dimensions, origin mark", standing="from memory")
ISO_129_EXTENSION = Source("ISO 129-1:2018", "extension lines, about eight line widths", standing="from memory")

FIRST_ROW_LEAST = 10.0  # mm from the outline, ASME_SPACING (a guide)
NEXT_ROW_LEAST = 6.0  # mm apart, ASME_SPACING (a guide)
# degrees between the sides of a closed, filled arrow, ISO_129_ARROWS
ARROW_ANGLE_LEAST, ARROW_ANGLE_MOST = 15.0, 30.0
EXTENSION_OVERSHOOT = 8 * 0.25  # mm past the dimension line, ISO_129_EXTENSION with narrow lines of 0.25
EXTENSION_GAP = EXTENSION_OVERSHOOT / 2  # mm off the outline: half of that, which is common practice and still seen

# --- the sheet ---
ISO_5457 = Source("ISO 5457:1999", "Table 1, borders", standing="from memory")
ISO_7200 = Source("ISO 7200:2004", "data fields")
ISO_7200_WIDTH = Source("ISO 7200:2004", "width and place of the title block", standing="from memory")
ISO_5456_2 = Source("ISO 5456-2", "identification of the projection", standing="from memory")

MARGIN, BINDING_MARGIN = 10.0, 20.0  # mm, ISO_5457: 20 at the left edge that is bound
TITLE_BLOCK_WIDTH = 180.0  # mm, ISO_7200_WIDTH, at the bottom right


@attrs.frozen(kw_only=True)
class DataField:
    """A field of the title block, and how many letters it should hold."""

    name: str
    letters: int | None
    mandatory: bool
    source: Source = ISO_7200


DATA_FIELDS: tuple[DataField, ...] = (
    DataField(name="legal owner", letters=None, mandatory=True),
    DataField(name="identification number", letters=16, mandatory=True),
    DataField(name="date of issue", letters=10, mandatory=True),
    DataField(name="sheet number", letters=4, mandatory=True),
    DataField(name="title", letters=25, mandatory=True),
    DataField(name="approval person", letters=20, mandatory=True),
    DataField(name="creator", letters=20, mandatory=True),
    DataField(name="document type", letters=30, mandatory=True),
    DataField(name="revision index", letters=2, mandatory=False),
    DataField(name="number of sheets", letters=4, mandatory=False),
    DataField(name="supplementary title", letters=25, mandatory=False),
)
