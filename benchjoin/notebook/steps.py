"""A slider over the steps of an assembly: the picture of each, what goes in, and what is driven.

step_through(plan)
"""

from __future__ import annotations

from typing import Any

from ..borrowed import borrowed
from ..drafting.writers.fonts import face_rules
from ..drafting.writers.svg import fluid
from ..drawings.lists.assembly_sheet import step_figure
from ..shop.assembly.assembly import Assembly
from .html_pages import cropped

WIDE = 170.0
"""Width of a step as it is drawn. [mm]"""


class Steps:
    """A slider over steps; ``slider.value`` is the number of the step, ``view`` an HTML widget with its picture."""

    def __init__(self, plan: Assembly) -> None:
        own = borrowed("ipywidgets", "Sliders")
        self.plan = plan
        self.view = own.HTML(layout=own.Layout(width="46em", max_width="98%"))
        self.slider = own.IntSlider(value=1, min=1, max=len(plan.steps), description="step")
        font = own.HTML(f"<style>{face_rules(frozenset((False, True)))}</style>")
        self.slider.observe(lambda _: self.redraw(), names="value")
        self.widget = own.VBox([font, self.slider, self.view])
        self.redraw()

    def redraw(self) -> None:
        """Draw the step that the slider stands at."""
        step = self.plan.steps[self.slider.value - 1]
        drawn = cropped(step_figure(self.plan, step, WIDE).drawing, step.title)
        self.view.value = f'<div style="background:#fff">{fluid(drawn)}</div>'

    def _repr_mimebundle_(self, **options: Any) -> Any:
        return self.widget._repr_mimebundle_(**options)

    def __repr__(self) -> str:
        return f"<Steps of {self.plan.layout.frame.name}: {len(self.plan.steps)}>"
