"""All findings of a job: what the layout, the milling and the settings of the machines found, in one list.

Whoever shows findings asks here; the layout's own are those that can be known before anything is planned.
"""

from __future__ import annotations

from collections.abc import Iterable

import attrs

from ..findings import Finding, in_order
from ..layout.layout import Layout
from ..tables import Table
from ..trade.allowances import Milling
from .milling.milling import milling_plan
from .settings.settings import settings
from .settings.shop import Shop, usual_shop


def all_findings(layout: Layout, *, shop: Shop | None = None, milling: Milling | None = None) -> tuple[Finding, ...]:
    """Findings of a layout and of the work on it, errors first; of what cannot be built, those of the layout alone.

    Parameters
    ----------
    layout : Layout
    shop, milling : optional
        The maker's machines and milling habits; where both are given, the shop takes these habits.
    """
    if layout.errors():
        return layout.findings
    own = shop or usual_shop(layout.frame.tape)
    own = attrs.evolve(own, milling=milling or own.milling)
    planned = (milling_plan(layout, practice=own.milling).findings, settings(layout, own).findings)
    return in_order([*layout.findings, *(finding for found in planned for finding in found)])


def findings_table(layout: Layout, findings: Iterable[Finding]) -> Table:
    """Findings in order: what, where, on whose authority."""
    rows = tuple((f.severity, f.where, f.sentence, str(f.source)) for f in findings)
    return Table(f"Findings: {layout.frame.name}", ("What", "Where", "Finding", "Source"), rows)
