"""Nearness: how near its limits each variant of a sweep comes under given loads, and how far from tipping it is.

swept = sweep(bench, {"length": lengths}, want=[nearness(cases, wood="western larch")])
swept["use"]["whole"], swept["use"]["tipping"]
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator
from typing import Any

from ..errors import LoadError, typed
from ..layout.lay_out import lay_out
from ..shop.strength.loads import Case
from ..shop.strength.strength import strength
from .outputs import Item, Output
from .variant import Variant


def nearness(loads: Case | Iterable[Case] | None = None, **options: Any) -> Output:
    """An output of a sweep: the nearest use of each kind of check, of the whole, and the factor against tipping.

    Parameters
    ----------
    loads : Case or iterable of Case, optional
    **options
        As `strength` takes them.

    Notes
    -----
    Variants are worked out one by one, each as long as `strength` takes. One that nothing keeps upright is NaN.
    """
    if not isinstance(loads, Case | Iterable | None):
        raise LoadError(f"loads is {typed(loads)}. Give a Case, or several in a list.")
    given = loads if loads is None or isinstance(loads, Case) else tuple(loads)

    def of(variant: Variant) -> Iterator[Item]:
        for part in variant.built.parts:
            for end in (*part.blank.low, *part.blank.high):
                float(end)  # variants that differ are looked at one at a time
        found = strength(lay_out(variant.frame), given, **options)
        yield Item(("whole",), found.use)
        yield Item(("tipping",), found.factor)
        for kind in dict.fromkeys(one.kind for one in found.checks):
            uses = [one.use for one in found.checks if one.kind == kind and not math.isnan(one.use)]
            yield Item((kind,), max(uses, default=math.nan))

    return Output("use", of, ("of",))
