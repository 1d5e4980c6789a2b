"""Rests: it lies on what carries it and lifts off. Nobody gives up wood."""

from __future__ import annotations

from ...frame.joints import Rests
from .meeting import Cut, Meeting


def let_in(joint: Rests, thickness: float, flush: float) -> float:
    """It lies on the face. [mm]"""
    return 0.0


def cuts(joint: Rests, meeting: Meeting) -> tuple[Cut, ...]:
    """No wood is taken."""
    return ()
