"""Heights of a description added up in exact numbers, from the foot: `from added_up import heights, knows`. [mm]

A reckoning of its own: it reads levels, clears, pins and what was measured, and shares nothing with the layout but the
description. It does not know what lies on a level, legs whose height is left open, and parts that are finished.
"""

from __future__ import annotations

from fractions import Fraction

from benchjoin import Level

ROWS = {"front leg top": "front", "back leg top": "back"}


def knows(frame):
    """Whether all that the heights of a frame hang on is told by levels, clears, legs and measurements."""
    surfaces = any(item.top_at if isinstance(item, Level) else item.at == "surface" for item in frame.stack)
    return not surfaces and not frame.finished and all(leg.of.height is not None for leg in frame.legs())


def heights(frame, piece):
    """Bottom and top of every rail of a piece, by name; None where a clear hangs on one that is open."""
    levels = [_Level(frame, piece, item) if isinstance(item, Level) else item for item in frame.stack]
    members, pins = [], {0: Fraction(0)}
    for place, item in enumerate(levels):
        if isinstance(item, _Level):
            members.append((item.high - item.low, None, Fraction(0)))
            pins |= item.pins(place)
            continue
        less = _less(levels, place, item.at) if item.at else Fraction(0)
        if less is None:
            return None
        members.append((None if item.size is None else Fraction(item.size) - less, Fraction(item.weight), less))
    last = max(pins)
    if any(size is None for size, _, _ in members[last:]):
        pins[len(members)] = _tallest(frame, piece)
    edges = _edges(members, pins)
    found = {}
    for place, item in enumerate(levels):
        if isinstance(item, _Level) and edges[place] is not None:
            found |= {name: (edges[place] - item.low + a, edges[place] - item.low + b) for name, a, b in item.rails}
    return found


def _edges(members, pins):
    """Edges of a run: what lies between two pins shares what is left; none above an open clear with no pin over it."""
    edges = [None] * (len(members) + 1)
    held = sorted(pins)
    for low, high in zip(held, [*held[1:], None], strict=True):
        if high is None:
            high = len(members)
            unit = None
        else:
            own = members[low:high]
            left = pins[high] - pins[low] - sum(size for size, _, _ in own if size is not None)
            left += sum(less for size, _, less in own if size is None)
            shares = sum(share for size, share, _ in own if size is None)
            unit = left / shares if shares else None
        at = pins[low]
        edges[low] = at
        for place in range(low, high):
            size, share, less = members[place]
            if size is None and unit is None:
                break
            at += size if size is not None else unit * share - less
            edges[place + 1] = at
    return edges


def _less(levels, place, side):
    """By how much less than a clear at the rails of one side is left between the bands beside it."""
    total = Fraction(0)
    for step in (-1, 1):
        far, near = Fraction(0), place + step
        while True:
            if not 0 <= near < len(levels):
                far = far if step < 0 else Fraction(0)
                break
            item = levels[near]
            if isinstance(item, _Level):
                own = [(a, b) for (a, b), at in zip(item.spans, item.where, strict=True) if at == side]
                if own:
                    far += item.high - max(b for _, b in own) if step < 0 else min(a for a, _ in own) - item.low
                    break
                far += item.high - item.low
            elif item.size is None or item.at is not None:
                return None
            else:
                far += Fraction(item.size)
            near += step
        total += far
    return total


class _Level:
    """A level over its common edge in one piece: its rails, and from where to where they reach."""

    def __init__(self, frame, piece, level):
        self.frame, self.piece, self.level = frame, piece, level
        slots = frame.rails_of[level.name]
        widths = {slot.name: _found(frame, piece, slot.name, "width", slot.of.width) for slot in slots}
        self.rails, self.spans, self.where = [], [], []
        for slot in slots:
            alike = [widths[other.name] for other in slots if other.of.width == slot.of.width]
            own = min(alike) if frame.uneven == "narrowest" else widths[slot.name]
            notch = max(alike) if frame.uneven == "widest" else own
            low = Fraction(slot.of.raised)
            if level.align == "tops":
                self.spans.append((low - notch, low))
                self.rails.append((slot.name, low - own, low))
            else:
                self.spans.append((low, low + notch))
                self.rails.append((slot.name, low, low + own))
            self.where.append(slot.side)
        self.low, self.high = min(a for a, _ in self.spans), max(b for _, b in self.spans)

    def pins(self, place):
        found = {}
        if self.level.bottom is not None:
            found[place] = Fraction(self.level.bottom)
        if self.level.top is not None:
            found[place + 1] = Fraction(self.level.top)
        if self.level.flush:
            row = ROWS[self.level.flush]
            legs = [leg for leg in self.frame.legs() if leg.side == row]
            if any(leg.of.height != legs[0].of.height for leg in legs):
                legs = legs[:1]
            top = min(_found(self.frame, self.piece, leg.name, "length", leg.of.height) for leg in legs)
            own = max(b for (_, b), side in zip(self.spans, self.where, strict=True) if side == row)
            found[place + 1] = top + self.high - own
        return found


def _tallest(frame, piece):
    legs = list(frame.legs())
    drawn = max(leg.of.height for leg in legs)
    return min(_found(frame, piece, leg.name, "length", drawn) for leg in legs if leg.of.height == drawn)


def _found(frame, piece, name, field, drawn):
    """A size as it was measured in one piece, or in all, or as it is drawn."""
    every = frame.measured.get(name, {}).get(field, drawn)
    return Fraction(frame.measured.get(f"{piece}/{name}", {}).get(field, every))
