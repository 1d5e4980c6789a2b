"""Laid: it lies on what carries it. Nobody gives up wood."""

from __future__ import annotations

from ...frame.joints import Laid
from .meeting import Cut, Meeting


def let_in(joint: Laid, thickness: float, flush: float) -> float:
    """It lies on the face. [mm]"""
    return 0.0


def cuts(joint: Laid, meeting: Meeting) -> tuple[Cut, ...]:
    """No wood is taken."""
    return ()
