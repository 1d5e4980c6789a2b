"""Write the drawing font, benchjoin/drafting/writers/font/, and its widths for lettering, benchjoin/drafting/widths.py.

Run it by hand when the font changes: ``python scripts/make_font.py``. It needs fontTools and the two files of the font
that ours is cut from. Each weight is written twice: as .ttf with every letter of the list, for PDF and PNG, and as
.woff without the further alphabets, small enough to be written into an SVG file. The same input gives the same bytes.

The licence asks that a changed font be renamed, and that its notices go with every copy: they stay in the name table
of each file and are written beside them as LICENCE.txt.
"""

from __future__ import annotations

import string
import sys
from pathlib import Path

from fontTools.pens.boundsPen import BoundsPen
from fontTools.subset import Options, Subsetter
from fontTools.ttLib import TTFont

FAMILY = "Benchjoin Sans"
SOURCE = Path("/usr/share/fonts/truetype/dejavu")
FACES = {"Regular": "DejaVuSans.ttf", "Bold": "DejaVuSans-Bold.ttf"}
DRAFTING = Path(__file__).resolve().parent.parent / "benchjoin" / "drafting"

ASCII = [chr(code) for code in range(0x20, 0x7F)]
LATIN_1 = [chr(code) for code in range(0xA0, 0x100)]
SIGNS = [
    chr(code)
    for code in (
        *(0x2153, 0x2154, 0x215B, 0x215C, 0x215D, 0x215E),  # thirds and eighths
        *(0x2013, 0x2014, 0x2018, 0x2019, 0x201C, 0x201D, 0x2026, 0x2032, 0x2033, 0x2044),  # dashes, quotes
        *(0x2190, 0x2191, 0x2192, 0x2193, 0x2194, 0x2195),  # arrows
        *(0x2205, 0x2212, 0x2248, 0x2264, 0x2265, 0x2295, 0x2300),  # diameter, minus, about, at most, at least
        *(0x2610, 0x2611, 0x2713, 0x25A1, 0x25CB, 0x25CF),  # boxes, check mark, circles
        *(0x2070, *range(0x2074, 0x207A), *range(0x2080, 0x208A)),  # raised and lowered figures
    )
]
# Names of people and shops: Latin of middle and eastern Europe, Greek, Cyrillic.
ALPHABETS = [chr(code) for code in (*range(0x100, 0x180), *range(0x386, 0x3CF), *range(0x400, 0x460))]
# What decides ascent and descent; the few letters that reach further are rare on a drawing.
LETTERING = string.ascii_letters.replace("Q", "") + string.digits + "()\"'/\u00bc\u00bd\u00be\u215b\u215e\u00d7"


def cut(source: Path, style: str, letters: list[str]) -> TTFont:
    """The font with these letters only, under our name, its notices kept; no hints, kerning or ligatures."""
    options = Options()
    options.hinting = False
    options.layout_features = []
    options.notdef_outline = True
    options.drop_tables += ["FFTM", "GDEF", "GPOS", "GSUB", "MATH", "gasp", "kern"]
    options.name_IDs = [0, 5, 13]
    font = TTFont(source, recalcTimestamp=False)
    subsetter = Subsetter(options)
    subsetter.populate(unicodes=[ord(letter) for letter in letters])
    subsetter.subset(font)
    names = font["name"]
    names.names = [name for name in names.names if name.platformID == 3]
    full = f"{FAMILY} {style}" if style != "Regular" else FAMILY
    own = {1: FAMILY, 2: style, 3: full, 4: full, 6: f"{FAMILY.replace(' ', '')}-{style}"}
    for number, name in own.items():
        names.setName(name, number, 3, 1, 0x409)
    return font


def advances(font: TTFont) -> dict[str, int]:
    """Advance width of every letter of the font, in font units."""
    metrics = font["hmtx"]
    return {chr(code): metrics[name][0] for code, name in sorted(font.getBestCmap().items())}


def reach(font: TTFont, letters: str) -> tuple[int, int]:
    """How far the letters reach below and above the baseline, in font units."""
    names, glyphs = font.getBestCmap(), font.getGlyphSet()
    low, high = 0.0, 0.0
    for letter in letters:
        pen = BoundsPen(glyphs)
        glyphs[names[ord(letter)]].draw(pen)
        if pen.bounds:
            low, high = min(low, pen.bounds[1]), max(high, pen.bounds[3])
    return round(low), round(high)


def literal(letter: str) -> str:
    """The letter as an ASCII Python string."""
    text = ascii(letter)
    return text if '"' in letter or text.startswith('"') else '"' + text[1:-1] + '"'


def lines(name: str, table: dict[str, int]) -> list[str]:
    """One dictionary, packed into lines of at most 118 letters."""
    out, line = [f"{name}: dict[str, int] = {{"], "   "
    for letter, width in table.items():
        item = f" {literal(letter)}: {width},"
        if len(line) + len(item) > 118:
            out.append(line)
            line = "   "
        line += item
    return [*out, line, "}"]


def table(plain: TTFont, bold: TTFont) -> str:
    """The module that lettering is measured with."""
    low, high = reach(plain, LETTERING)
    text = [
        '"""Advance widths of the drawing font, in font units; written by scripts/make_font.py."""',
        "",
        "from __future__ import annotations",
        "",
        f'FAMILY = "{FAMILY}"',
        f"UNITS_PER_EM = {plain['head'].unitsPerEm}",
        f"CAPITAL = {reach(plain, 'H')[1]}",
        f"FIGURE = {reach(plain, string.digits)[1]}",
        f"ASCENT = {high}",
        f"DESCENT = {-low}",
        "",
        "# fmt: off",
        *lines("PLAIN", advances(plain)),
        "",
        *lines("BOLD", advances(bold)),
        "# fmt: on",
    ]
    return "\n".join(text) + "\n"


def main() -> int:
    """Cut both weights, write them, their licence and the table of widths."""
    folder = DRAFTING / "writers" / "font"
    folder.mkdir(exist_ok=True)
    cuts: dict[str, TTFont] = {}
    few = [*ASCII, *LATIN_1, *SIGNS]
    for style, file in FACES.items():
        name = f"{FAMILY.replace(' ', '')}-{style}"
        cuts[style] = cut(SOURCE / file, style, [*few, *ALPHABETS])
        cuts[style].save(folder / f"{name}.ttf")
        small = cut(SOURCE / file, style, few)
        small.flavor = "woff"
        small.save(folder / f"{name}.woff")
    notices = cuts["Regular"]["name"]
    told = (
        f"{FAMILY} is cut from DejaVu Sans {notices.getDebugName(5).removeprefix('Version ')} "
        "and renamed: fewer letters, no hints, no kerning.\nIts outlines are unchanged.\n\n"
    )
    licence = told + f"{notices.getDebugName(0)}\n{notices.getDebugName(13)}\n"
    tidy = "\n".join(line.rstrip() for line in licence.splitlines()) + "\n"
    (folder / "LICENCE.txt").write_text(tidy, encoding="utf-8")
    (DRAFTING / "widths.py").write_text(table(cuts["Regular"], cuts["Bold"]), encoding="utf-8")
    return 0


if __name__ == "__main__":
    sys.exit(main())
