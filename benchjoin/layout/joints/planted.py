"""The planted rail: fixed on the face of the legs, with no notch. Nobody gives up wood."""

from __future__ import annotations

from ...frame.joints import Planted
from .meeting import Cut, Meeting


def let_in(joint: Planted, thickness: float, flush: float) -> float:
    """It stays on the face. [mm]"""
    return 0.0


def cuts(joint: Planted, meeting: Meeting) -> tuple[Cut, ...]:
    """No wood is taken."""
    return ()
