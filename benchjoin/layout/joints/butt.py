"""The butt: a rail that ends against its legs, flush with the face it goes to. Nobody gives up wood."""

from __future__ import annotations

from ...frame.joints import Butt
from .meeting import Cut, Meeting


def let_in(joint: Butt, thickness: float, flush: float) -> float:
    """Its outer face is flush with the leg's. [mm]"""
    return thickness


def cuts(joint: Butt, meeting: Meeting) -> tuple[Cut, ...]:
    """No wood is taken."""
    return ()
