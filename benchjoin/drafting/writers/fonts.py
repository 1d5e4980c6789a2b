"""The drawing font: where its files lie, and how browsers come by it; `cairo` gives it to cairo.

A sheet must look the same on a machine that has no fonts. So the font travels with the package, and an SVG file takes
it along (`face_rules`).
"""

from __future__ import annotations

import base64
from functools import cache
from pathlib import Path

from ..widths import FAMILY

FOLDER = Path(__file__).with_name("font")
STYLES = {False: "Regular", True: "Bold"}  # bold -> end of the file's name
INSTALLED = "DejaVu Sans"
"""The font from which ours is cut: where it is installed, letters and widths are the same."""
FAMILIES = f"'{FAMILY}', '{INSTALLED}', Verdana, Arial, sans-serif"


def font_file(*, bold: bool, ending: str) -> Path:
    """The file of a weight: .ttf with all letters, .woff with those that most drawings need."""
    return FOLDER / f"{FAMILY.replace(' ', '')}-{STYLES[bold]}.{ending}"


@cache
def face_rules(weights: frozenset[bool]) -> str:
    """CSS that carries the font in itself, for each weight: bold or not."""
    return "".join(_face_rule(bold) for bold in sorted(weights))


def _face_rule(bold: bool) -> str:
    data = base64.b64encode(font_file(bold=bold, ending="woff").read_bytes()).decode("ascii")
    weight = "bold" if bold else "normal"
    source = f"url(data:font/woff;base64,{data}) format('woff')"
    return f"@font-face{{font-family:'{FAMILY}';font-weight:{weight};src:{source}}}"
