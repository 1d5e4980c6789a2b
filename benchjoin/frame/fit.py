"""Fit: the clearance of a cut over what goes into it, one for all joints or one for each kind.

>>> fit("easy"), fit({"notch": "1/32 in", "half-lap": 0})
(0.4, Fit(notch=0.79375, half_lap=0.0, over_notch=0.0, cut_round=0.0))
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

import attrs

from ..errors import BenchjoinError, typed
from ..lengths import mm
from ..phrases import listed
from ..trade.practice import FITS

FITTED = ("notch", "half-lap", "over-notch", "cut round")
"""Joints that take a fit, by their word. In a design file, where a key has no space, "cut-round" is the last."""


LOOSEST = 6.5
"""More play than this is no joint: a habit. [mm]"""


def _clearance(value: Any) -> float:
    """A clearance, or why it is none. [mm]"""
    if isinstance(value, str) and value in FITS:
        return FITS[value]
    if isinstance(value, str) and value.isalpha():
        raise BenchjoinError(f"fit is {typed(value)}. Choose one of {', '.join(FITS)}, or write a length.")
    size = mm(value, zero=True, what="fit")
    if size > LOOSEST:
        raise BenchjoinError(
            f"fit is {typed(value)}, and nothing is held with so much play. {LOOSEST:g} mm are the most."
        )
    return size


@attrs.frozen(kw_only=True)
class Fit:
    """Clearance by kind of joint. [mm]"""

    notch: float = attrs.field(default=0.0, converter=_clearance)
    half_lap: float = attrs.field(default=0.0, converter=_clearance)
    over_notch: float = attrs.field(default=0.0, converter=_clearance)
    cut_round: float = attrs.field(default=0.0, converter=_clearance)

    def of(self, kind: str) -> float:
        """The clearance for a kind of joint, one of `FITTED`; none for the others. [mm]"""
        return float(getattr(self, _field(kind))) if kind in FITTED else 0.0


def fit(value: Any) -> float | Fit:
    """Converter of Frame.fit: a length, one of the words for it, or either of these by kind of joint."""
    if isinstance(value, Fit):
        return value
    if isinstance(value, Mapping):
        unknown = [kind for kind in value if _field(kind) not in map(_field, FITTED)]
        if unknown:
            known = listed([f'"{kind}"' for kind in FITTED])
            raise BenchjoinError(f"fit holds {typed(unknown[0])}. Joints that take a fit are {known}.")
        return Fit(**{_field(kind): size for kind, size in value.items()})
    return _clearance(value)


def _field(kind: object) -> str:
    return str(kind).replace("-", "_").replace(" ", "_")
