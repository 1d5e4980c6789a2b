"""The page of a set: what is laid on the clamped legs, every shoulder line struck across those that take it.

Without a paper the page is full size, as large as it needs to be, or as wide as the copy shop's roll, or on a large
sheet; on desk paper it is a reduced picture of the same. `set_tiles` cuts the full size into desk pages.
"""

from __future__ import annotations

from ....drafting.full_size.check_bars import BESIDE, check_bars
from ....drafting.full_size.correction import PrinterScale, factors, promise
from ....drafting.lettering import wrap
from ....drafting.primitives import Drawing, Text, bounds, shift, stretch
from ....drafting.sheets.arrange import place_in
from ....drafting.sheets.sheet import Sheet
from ....drafting.sheets.title_block import TitleBlock, block_size
from ....errors import CannotDraw, PaperError
from ....layout.layout import Layout
from ....layout.sets import PartSet
from ....trade.paper import PAPERS, PDF_LONGEST, ROLLS, is_paper, is_roll, landscape, paper_size, roll_width
from ....trade.standards import FULL_SIZE, MARGIN, SCALES
from ...making.house import PLAIN, House, block, both_ways, room, system
from .draw import face_width, gang
from .lines import Look

INSET = 6.0
"""Between the border and the drawing. [mm]"""
_TOLD = 2.5
_PITCH = 4.2


def set_page(
    layout: Layout,
    letter: str,
    *,
    paper: str | None = None,
    roll: str | None = None,
    printer: PrinterScale | None = None,
    house: House | None = None,
) -> Sheet:
    """The page of one set: at full size, or reduced to a paper.

    Parameters
    ----------
    layout : Layout
    letter : str
        The set's letter; sets that are alike give the same page.
    paper : str, optional
        "Letter", "A4", "Tabloid", "A3" … for a reduced picture; full size without it.
    roll : str, optional
        Full size on a roll ("36 in", "914 mm" …), as long as it needs to be, or on a large sheet ("A0", "ANSI E" …);
        as long and as wide as it needs to be without it.
    printer : PrinterScale, optional
        What the printer does to lengths, to be taken back; full size only.
    house : House, optional
        What the shop's sheets have in common, for the title block.

    Raises
    ------
    CannotDraw
        If the layout has errors: it is not for the wood.
    AddressError
        If there is no such set.
    PaperError
        If it does not fit the paper at any scale, or the roll at full size; or both paper and roll are given.
    """
    one = drawable_set(layout, letter)
    house = house or PLAIN
    if paper is None:
        return _full_size(layout, one, house, printer, roll)
    if roll is not None or printer is not None:
        raise PaperError(
            "With paper= the page is a reduced picture; roll= and printer= are for full size, without paper=."
        )
    return _reduced(layout, one, paper, house)


def drawable_set(layout: Layout, letter: str) -> PartSet:
    """A set by its letter, if the layout is fit for the wood.

    Raises
    ------
    CannotDraw
        If the layout has errors.
    AddressError
        If there is no such set.
    """
    one = layout.set(letter)
    must_be_buildable(layout, f"Set {letter}")
    return one


def must_be_buildable(layout: Layout, what: str) -> None:
    """Refuse to draw for the wood what cannot be built.

    Raises
    ------
    CannotDraw
        If the layout has errors.
    """
    errors = layout.errors()
    if errors:
        told = "\n".join(f"  {finding.sentence}" for finding in errors)
        raise CannotDraw(f"{what} is not drawn, because the frame cannot be built:\n{told}", findings=errors)


def full_size_length(layout: Layout, one: PartSet) -> float:
    """How long the page of a set is at full size. [mm]"""
    return _full_size(layout, one, PLAIN, None, None).width


def _full_size(layout: Layout, one: PartSet, house: House, printer: PrinterScale | None, roll: str | None) -> Sheet:
    """The gang above, check bars from the lower left corner, the title block in the lower right one."""
    across, up = factors(printer, 2.0, 1.0)  # the gang lies along the page's long side
    drawn = place_in(stretch(gang(layout, one).drawing, across, up), (0.0, 0.0, 1e6, 1e6), "below left")
    _, _, long, tall = bounds(drawn)
    block_width, block_height = block_size(1000.0)
    bars = check_bars(260.0, max(tall, block_height) + block_height)
    lying = bars.lying.length * across
    left, foot = MARGIN + INSET, MARGIN + max(block_height, 2 * BESIDE) + INSET
    beside = left + 2 * BESIDE + INSET
    least = max(beside + long, left + BESIDE + lying + 2 * INSET + block_width) + INSET + MARGIN
    width, height = _size(one, least, foot + tall + INSET + MARGIN, roll)
    corner = (left + BESIDE, MARGIN + INSET + BESIDE)
    told = f"{bars.sentence()}. {promise(printer, bars.lying.millimetres)}"
    words = tuple(
        Text((corner[0] + 2 * BESIDE, corner[1] + block_height - 3 * BESIDE - n * _PITCH), line, _TOLD)
        for n, line in enumerate(wrap(told, _TOLD, lying))
    )
    drawing = (
        *shift(drawn, beside, height - MARGIN - INSET - tall),
        *shift(stretch(bars.drawing, across, up), *corner),
        *words,
    )
    title = _words(layout, one, FULL_SIZE.label, house)
    return _sheet(one, width, height, drawing, title, full_size=True)


def _size(one: PartSet, width: float, height: float, roll: str | None) -> tuple[float, float]:
    """Length and width of the page: what it needs, or what the roll or the large sheet has.

    Raises
    ------
    PaperError
        If there is no such roll or sheet, or it does not fit; the message names those that it fits.
    """
    if roll is None:
        return width, height
    if not is_roll(roll) and not is_paper(roll):
        known = ", ".join([*(one.name for one in ROLLS), *(paper.name for paper in PAPERS)])
        raise PaperError(f"No roll or paper is called {roll!r}. There is {known}.")
    if is_roll(roll):
        if height <= roll_width(roll):
            return width, roll_width(roll)
    else:
        across, up = landscape(paper_size(roll))
        if width <= across and height <= up:
            return across, up
    rolls = [roll.name for roll in ROLLS if height <= roll.width]
    rolls += [p.name for p in PAPERS if width <= max(p.width, p.height) and height <= min(p.width, p.height)]
    takes = f"It goes on {', '.join(rolls)}" if rolls else "No roll is wide enough: print it in tiles"
    raise PaperError(
        f"Set {one.letter} at full size needs a page of {width:.0f} × {height:.0f} mm, which {roll} does not give. "
        f"{takes}.",
        width=width,
        height=height,
    )


def _reduced(layout: Layout, one: PartSet, paper: str, house: House) -> Sheet:
    """The largest scale at which the gang fits and its parts are wide enough to be named."""
    scales = [s for s in SCALES if s.system in (system(layout.frame), "both") and s.ratio < 1.0]
    up = [pair for band in one.bands for pair in zip(one.members, band.faces, strict=True)]
    thinnest = min(face_width(part, face) for part, face in up or [(part, part.marked) for part in one.members])
    trust = "This picture is reduced: do not lay it on the wood."
    if full_size_length(layout, one) > PDF_LONGEST:
        trust += " At full size it is longer than a page can be: print it in tiles, or mark from the readings."
    for scale in sorted(scales, key=lambda s: -s.ratio):
        look = Look(scale=scale.ratio, text=2.5, reading=2.5, hatch=1.8, gap=2.0)
        if thinnest * scale.ratio < look.text * 1.4:
            break
        drawing = gang(layout, one, look, trust=trust).drawing
        words = _words(layout, one, scale.label, house)
        for width, height in reversed(both_ways(paper)):
            x0, y0, x1, y1 = room(width, height, words)
            inside = (x0 + 3.0, y0 + 3.0, x1 - 3.0, y1 - 3.0)
            a, b, c, d = bounds(drawing)
            if c - a <= inside[2] - inside[0] and d - b <= inside[3] - inside[1]:
                return _sheet(one, width, height, place_in(drawing, inside, "above"), words, full_size=False)
    raise PaperError(f"Set {one.letter} does not fit {paper} with its parts named. Take larger paper.")


def _sheet(one: PartSet, width: float, height: float, drawing: Drawing, words: TitleBlock, *, full_size: bool) -> Sheet:
    return Sheet(
        name=f"set-{one.letter.lower()}" + ("" if full_size else "-reduced"),
        title=f"Set {one.letter}: {one.title}" + ("" if full_size else ", reduced"),
        width=width,
        height=height,
        drawing=drawing,
        block=words,
        scale=words.scale,
        full_size=full_size,
    )


def _words(layout: Layout, one: PartSet, scale: str, house: House) -> TitleBlock:
    make = f"make {len(one.alike)}: {', '.join(one.alike)}"
    return block(layout.frame, house, kind="Set page", piece=f"Set {one.letter}, {one.title}, {make}", scale=scale)
