"""Fit: the clearance of a notch over its rail, one for all joints or one for each kind.

>>> fit("easy"), fit({"notch": "1/32 in", "half-lap": 0})
(0.4, Fit(notch=0.79375, half_lap=0.0))
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

import attrs

from ..errors import BenchjoinError, typed
from ..lengths import mm
from ..trade.practice import FITS


@attrs.frozen(kw_only=True)
class Fit:
    """Clearance by kind of joint. [mm]"""

    notch: float = 0.0
    half_lap: float = 0.0

    def of(self, kind: str) -> float:
        """The clearance for a kind of joint: 'notch', 'half-lap'; none for the others. [mm]"""
        return {"notch": self.notch, "half-lap": self.half_lap}.get(kind, 0.0)


def fit(value: Any) -> float | Fit:
    """Converter of Frame.fit: a length, one of the words for it, or either of these by kind of joint."""
    if isinstance(value, Fit):
        return value
    if isinstance(value, Mapping):
        unknown = [kind for kind in value if kind not in ("notch", "half-lap")]
        if unknown:
            raise BenchjoinError(f'fit holds {typed(unknown[0])}. Joints that take a fit are "notch" and "half-lap".')
        sizes = {str(kind).replace("-", "_"): _clearance(size) for kind, size in value.items()}
        return Fit(**sizes)
    return _clearance(value)


def _clearance(value: Any) -> float:
    if isinstance(value, str) and value in FITS:
        return FITS[value]
    if isinstance(value, str) and value.isalpha():
        raise BenchjoinError(f"fit is {typed(value)}. Choose one of {', '.join(FITS)}, or write a length.")
    return mm(value, zero=True, what="fit")
