"""The picture of a piece, turned by two sliders: how far one has walked round it, and from how high one looks.

look_round(layout)
"""

from __future__ import annotations

import math
from typing import Any

from ..borrowed import borrowed
from ..drafting.primitives import shift
from ..drafting.writers.svg import fluid
from ..drawings.making.maker import make
from ..drawings.views.isometric import picture
from ..drawings.views.looking import FULL, look_from
from ..layout.layout import Layout
from .html_pages import FINE

SIDE = 130.0
"""The picture turns inside a square of this side. [mm]"""
STEP = 5
"""From one stop of a slider to the next. [degrees]"""
STEEPEST = 85


class Turning:
    """Two sliders, ``turn`` and ``height`` in degrees, and ``view``, an HTML widget with the picture."""

    def __init__(self, layout: Layout, piece: int) -> None:
        own = borrowed("ipywidgets", "Sliders")
        self.layout = layout
        self.parts = layout.piece(piece)
        lows, highs = zip(*((part.blank.low, part.blank.high) for part in self.parts), strict=True)
        self._ends = [
            (min(low), max(high)) for low, high in zip(zip(*lows, strict=True), zip(*highs, strict=True), strict=True)
        ]
        self._scale = SIDE / (FULL * math.dist(*zip(*self._ends, strict=True)))
        self.view = own.HTML(layout=own.Layout(width="34em", max_width="98%"))
        self.turn = own.IntSlider(value=-45, min=-180, max=180, step=STEP, description="turn")
        self.height = own.IntSlider(value=35, min=-STEEPEST, max=STEEPEST, step=STEP, description="height")
        for slider in (self.turn, self.height):
            slider.observe(lambda _: self.redraw(), names="value")
        self.widget = own.VBox([own.HBox([self.turn, self.height], layout=own.Layout(flex_flow="row wrap")), self.view])
        self.redraw()

    def redraw(self) -> None:
        """Draw the piece as one sees it from where the sliders stand."""
        look = look_from(self.turn.value, self.height.value)
        seen = picture(self.parts, look)
        u, v = look.project([sum(ends) / 2 for ends in self._ends]) * self._scale
        drawn = shift(seen.drawing(self._scale), SIDE / 2 - u, SIDE / 2 - v)
        page = make(drawn, house=FINE, name="picture", title=self.layout.frame.name, size=(SIDE, SIDE)).svg()
        self.view.value = f'<div style="background:#fff">{fluid(page)}</div>'

    def _repr_mimebundle_(self, **options: Any) -> Any:
        return self.widget._repr_mimebundle_(**options)

    def __repr__(self) -> str:
        return f"<Turning of {self.layout.frame.name}>"
