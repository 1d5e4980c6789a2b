"""Sections: area, middle and second moments of what is left of a part at a place, in the axes of the world."""

from __future__ import annotations

import attrs

from ...layout.net_section import stretches
from ...layout.parts import Part
from ...lengths import TOUCH
from ...solids import Box


@attrs.frozen(kw_only=True)
class Section:
    """What is left of a part from one place along it to another. [mm]

    Places run along the part's axis of the world. The other two axes, in turn, are y and z; middle is the middle of the
    wood on both, inertia about each of them through it, far how far its wood reaches from the middle on each, low side
    first.
    """

    start: float
    end: float
    area: float
    middle: tuple[float, float]
    inertia: tuple[float, float]
    far: tuple[tuple[float, float], tuple[float, float]]
    size: tuple[float, float]

    @property
    def torsion(self) -> float:
        """Saint-Venant's estimate for a compact section: A⁴ / 40 Iₚ. [mm⁴]"""
        return float(self.area**4 / (40 * sum(self.inertia)))

    def modulus(self, about: int) -> float:
        """Section modulus about y (0) or z (1), the lesser of its two sides. [mm³]"""
        return self.inertia[about] / max(self.far[1 - about])


def section_of(boxes: tuple[Box, ...], axis: int) -> Section:
    """The section of boxes beside each other that all run along an axis of the world.

    Notes
    -----
    Each rectangle b × h has ``b h³ / 12`` about its own middle, and its area times the square of the distance from the
    middle of all.
    """
    y, z = (axis + 1) % 3, (axis + 2) % 3
    own = [(box.size()[y], box.size()[z], _mid(box, y), _mid(box, z)) for box in boxes]
    area = sum(b * h for b, h, _, _ in own)
    cy, cz = (sum(b * h * at[n] for b, h, *at in own) / area for n in (0, 1))
    about_y = sum(b * h**3 / 12 + b * h * (at - cz) ** 2 for b, h, _, at in own)
    about_z = sum(h * b**3 / 12 + b * h * (at - cy) ** 2 for b, h, at, _ in own)
    ends = [(min(box.low[n] for box in boxes), max(box.high[n] for box in boxes)) for n in (y, z)]
    far = ((cy - ends[0][0], ends[0][1] - cy), (cz - ends[1][0], ends[1][1] - cz))
    size = (ends[0][1] - ends[0][0], ends[1][1] - ends[1][0])
    start, end = boxes[0].low[axis], boxes[0].high[axis]
    return Section(start=start, end=end, area=area, middle=(cy, cz), inertia=(about_y, about_z), far=far, size=size)


def _mid(box: Box, axis: int) -> float:
    return (box.low[axis] + box.high[axis]) / 2


def sections(part: Part) -> tuple[Section, ...]:
    """The sections of a part, rising along its axis of the world; places without wood are left out."""
    axis = part.slot.axes[0]
    found = []
    for stretch in stretches(part):
        wood = tuple(part.placement.world(box) for box in stretch.section)
        wood = tuple(box for box in wood if min(box.size()) > TOUCH)
        if wood:
            found.append(section_of(wood, axis))
    return tuple(sorted(found, key=lambda one: one.start))
