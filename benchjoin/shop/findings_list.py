"""The findings of a layout as a list for the binder: what, where, on whose authority."""

from __future__ import annotations

from ..layout.layout import Layout
from ..tables import Table


def findings_list(layout: Layout) -> Table:
    """Findings in order, errors first."""
    rows = tuple((f.severity, f.where, f.sentence, str(f.source)) for f in layout.findings)
    return Table(f"Findings: {layout.frame.name}", ("What", "Where", "Finding", "Source"), rows)
