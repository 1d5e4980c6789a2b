"""What several parts are called together, in the words of their levels and sides."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from ..layout.parts import Part


def called(parts: Iterable[Part]) -> str:
    """What the parts are called: 'front and back leg', 'foot shelf, bench: end rail'."""
    levels: dict[str, list[str]] = {}
    for part in parts:
        side = "end" if part.side in ("left", "right") else part.side
        where = levels.setdefault(f"{side} {part.slot.role.word}".lstrip(), [])
        if part.level and part.level not in where:
            where.append(part.level)
    whats: dict[str, list[str]] = {}
    for what, where in levels.items():
        whats.setdefault(several(where), []).append(what)
    return "; ".join(f"{where}: {_joined(what)}" if where else _joined(what) for where, what in whats.items())


def several(levels: Sequence[str]) -> str:
    """Names of levels in a row, or how many they are."""
    return ", ".join(levels) if len(levels) <= 3 else f"{levels[0]} to {levels[-1]} ({len(levels)} levels)"


def _joined(whats: Sequence[str]) -> str:
    """'front rail' and 'back rail' as 'front and back rail'."""
    sides = [side for side in (what.rpartition(" ")[0] for what in whats) if side]
    return f"{' and '.join(sides)} {whats[0].rpartition(' ')[2]}".lstrip()
