"""Write benchjoin/drafting/widths.py: how wide each letter of the drawing font is.

Run it by hand when the font changes: ``python scripts/make_widths.py``. It needs fontTools and the font's two
files; the library itself needs neither, since it measures text from the small table written here.
"""

from __future__ import annotations

import string
import sys
from pathlib import Path

from fontTools.pens.boundsPen import BoundsPen
from fontTools.ttLib import TTFont

FONTS = Path("/usr/share/fonts/truetype/dejavu")
TARGET = Path(__file__).resolve().parent.parent / "benchjoin" / "drafting" / "widths.py"

ASCII = [chr(code) for code in range(0x20, 0x7F)]
LATIN_1 = [chr(code) for code in range(0xA0, 0x100)]
SIGNS = [
    chr(code)
    for code in (
        *(0x2153, 0x2154, 0x215B, 0x215C, 0x215D, 0x215E),  # thirds and eighths
        *(0x2013, 0x2014, 0x2018, 0x2019, 0x201C, 0x201D, 0x2026, 0x2032, 0x2033, 0x2044),  # dashes, quotes
        *(0x2190, 0x2191, 0x2192, 0x2193, 0x2194, 0x2195),  # arrows
        *(0x2205, 0x2212, 0x2248, 0x2264, 0x2265, 0x2300),  # diameter, minus, about, at most, at least
        *(0x2610, 0x2611, 0x2713, 0x25A1, 0x25CB, 0x25CF),  # boxes, check mark, circles
        *(0x2070, *range(0x2074, 0x207A), *range(0x2080, 0x208A)),  # raised and lowered figures
    )
]
# What decides ascent and descent; the few letters that reach further are rare on a drawing.
LETTERING = string.ascii_letters.replace("Q", "") + string.digits + "()\"'/\u00bc\u00bd\u00be\u215b\u215e\u00d7"


def advances(font: TTFont) -> dict[str, int]:
    """Advance width of every letter of the list that the font has, in font units."""
    names = font.getBestCmap()
    metrics = font["hmtx"]
    letters = dict.fromkeys(ASCII + LATIN_1 + SIGNS)
    return {letter: metrics[names[ord(letter)]][0] for letter in letters if ord(letter) in names}


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
    """One dictionary, packed into lines of at most 110 letters."""
    out, line = [f"{name}: dict[str, int] = {{"], "   "
    for letter, width in table.items():
        item = f" {literal(letter)}: {width},"
        if len(line) + len(item) > 110:
            out.append(line)
            line = "   "
        line += item
    return [*out, line, "}"]


def main() -> int:
    """Read both fonts and write the table."""
    plain, bold = TTFont(FONTS / "DejaVuSans.ttf"), TTFont(FONTS / "DejaVuSans-Bold.ttf")
    low, high = reach(plain, LETTERING)
    text = [
        '"""Advance widths of the drawing font, in font units; written by scripts/make_widths.py."""',
        "",
        "from __future__ import annotations",
        "",
        'FAMILY = "DejaVu Sans"',
        f"UNITS_PER_EM = {plain['head'].unitsPerEm}",
        f"CAPITAL = {reach(plain, 'H')[1]}",
        f"ASCENT = {high}",
        f"DESCENT = {-low}",
        "",
        "# fmt: off",
        *lines("PLAIN", advances(plain)),
        "",
        *lines("BOLD", advances(bold)),
        "# fmt: on",
    ]
    TARGET.write_text("\n".join(text) + "\n", encoding="utf-8")
    return 0


if __name__ == "__main__":
    sys.exit(main())
