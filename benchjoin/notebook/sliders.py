"""Sliders: drag a value of a design, and elevation, marks, wood and findings follow.

Each move is a new frame by `alter`, laid out and drawn anew: the same road as everywhere. A slider stops at the marks
of the design's tape, and says what the tape says.
"""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from typing import Any

from ..borrowed import borrowed
from ..drafting.writers.fonts import face_rules
from ..drafting.writers.svg import fluid
from ..drawings.views.elevation import Seen, elevation_alone
from ..errors import AddressError, BenchjoinError, typed
from ..frame.address import alter, value
from ..frame.frame import Frame
from ..layout.lay_out import lay_out
from ..layout.layout import Layout
from ..lengths import Length, signed_mm
from ..ranges import Range
from ..readings import Tape
from ..shop.overview import marks_list, wood_totals
from .html_pages import ROW, cropped, findings_page, refusal

SCALE = 0.1
"""An elevation is drawn at 1:10, and shown as wide as there is room."""
MOST_STOPS = 2000
"""A slider with more stops than this cannot be moved by one of them."""
Reach = Range | tuple[Length, Length] | tuple[Length, Length, Length]
"""Over which lengths a slider goes."""


class Explorer:
    """Sliders by address, and what follows from them.

    ``sliders[address].value`` is in mm, and `move` sets it from Python; ``frame`` and ``layout`` are those of the
    sliders now (layout is None where the frame cannot be laid out); ``views`` holds what is shown, by name, as HTML
    widgets.
    """

    def __init__(self, frame: Frame, ranges: Mapping[str, Reach], seen: Seen) -> None:
        own_widgets = borrowed("ipywidgets", "Sliders")
        self._start = frame
        self._seen: Seen = seen
        self.frame = frame
        self.layout: Layout | None = None
        self._last = dict.fromkeys(("elevation", "marks", "wood", "findings"), "")
        self.sliders = {address: _slider(own_widgets, frame, address, own) for address, own in ranges.items()}
        self.views = {name: own_widgets.HTML() for name in ("elevation", "marks", "wood", "findings")}
        self.views["elevation"].layout = own_widgets.Layout(width="36em", max_width="98%")
        font = own_widgets.HTML(f"<style>{face_rules(frozenset((False, True)))}</style>")
        for slider in self.sliders.values():
            slider.observe(lambda _: self.redraw(), names="value")
        tables = own_widgets.VBox([self.views["marks"], self.views["wood"]])
        sides = own_widgets.HBox([self.views["elevation"], tables], layout=own_widgets.Layout(flex_flow="row wrap"))
        self.widget = own_widgets.VBox([font, *self.sliders.values(), sides, self.views["findings"]])
        self.redraw()

    def move(self, address: str, length: Length) -> None:
        """Move a slider to the stop nearest to a length.

        Raises
        ------
        AddressError
            If there is no such slider.
        """
        slider = self.sliders.get(address)
        if slider is None:
            told_them = ", ".join(map(repr, self.sliders))
            raise AddressError(f"There is no slider {typed(address)}. There are {told_them}.", address=address)
        wanted = signed_mm(length, what=address)
        slider.value = min((stop for _, stop in slider.options), key=lambda stop: abs(stop - wanted))

    def redraw(self) -> None:
        """Lay out and draw the frame of the sliders; where it cannot be, say why and keep the last picture, faded."""
        try:
            self.frame = alter(self._start, {address: own.value for address, own in self.sliders.items()})
            self.layout = lay_out(self.frame)
            drawn = cropped(elevation_alone(self.layout, self._seen, SCALE).drawing, self.frame.name)
        except BenchjoinError as error:
            self.layout = None
            self.views["findings"].value = _paper(refusal(error))
            for name in ("elevation", "marks", "wood"):
                self.views[name].value = f'<div style="opacity:0.3">{self._last[name]}</div>'
            return
        shown = {
            "elevation": f'<div style="background:#fff">{fluid(drawn)}</div>',
            "marks": _paper(marks_list(self.layout).html()),
            "wood": _paper(wood_totals(self.layout).html()),
            "findings": _paper(findings_page(self.layout.findings)),
        }
        self._last = shown
        for name, page in shown.items():
            if self.views[name].value != page:
                self.views[name].value = page

    def _repr_mimebundle_(self, **options: Any) -> Any:
        return self.widget._repr_mimebundle_(**options)

    def __repr__(self) -> str:
        return f"<Explorer of {self._start.name}: {', '.join(self.sliders)}>"


def _slider(widgets: Any, frame: Frame, address: str, own: Reach) -> Any:
    """A slider over a range of lengths, standing at the value of the frame."""
    now = value(frame, address)
    if not isinstance(now, float):
        raise AddressError(f"{address!r} is {typed(now)}, and a slider moves a length.", address=address)
    ends = (own.low, own.high, own.step or frame.tape.division) if isinstance(own, Range) else own
    stops = _stops(frame.tape, now, ends, address)
    options = [(frame.tape.say(stop), stop) for stop in stops]
    return widgets.SelectionSlider(
        options=options,
        value=now,
        description=address,
        continuous_update=True,
        style={"description_width": "30%"},
        layout=widgets.Layout(width="50em", max_width="98%"),
    )


def _stops(tape: Tape, now: float, own: Sequence[Length], address: str) -> list[float]:
    """Lengths that a slider stops at: the marks of the tape in its range, or a step apart, and where it stands now."""
    low, high = (signed_mm(end, what=address) for end in own[:2])
    step = signed_mm(own[2], what=address) if len(own) > 2 else tape.division
    if not (low < high and step > 0):
        raise BenchjoinError(f"{address!r} goes through {typed(own)}. Give a low end, a high end, and perhaps a step.")
    step *= max(1, math.ceil((high - low) / step / MOST_STOPS))
    count = math.floor((high - low) / step + 1e-9)
    even = [round(low + step * n, 9) for n in range(count + 1)]
    return sorted([stop for stop in even if abs(stop - now) > 1e-6] + [now])


def _paper(page: str) -> str:
    return f'<div style="{ROW};display:block">{page}</div>'
