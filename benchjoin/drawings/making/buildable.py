"""What is for the wood is made only of what can be built."""

from __future__ import annotations

from ...errors import CannotDraw
from ...layout.layout import Layout


def must_be_buildable(layout: Layout, refusal: str) -> None:
    """Refuse to draw for the wood what cannot be built: "Set A is not drawn".

    Raises
    ------
    CannotDraw
        If the layout has errors.
    """
    errors = layout.errors()
    if errors:
        told = "\n".join(f"  {finding.sentence}" for finding in errors)
        raise CannotDraw(f"{refusal}, because the frame cannot be built:\n{told}", findings=errors)
