"""A block of variants that agree, built as one piece: what the functions of outputs.py look at.

Numbers in it are floats where all variants say the same, and `Many` where they differ.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from functools import cached_property

import attrs

from ..findings import Finding
from ..frame.frame import Frame
from ..frame.identity import of_piece
from ..layout.building import Built, build
from ..layout.checking import CHECKS
from ..layout.checks.piece import Piece
from ..layout.counting import counted
from ..layout.parts import Part
from ..layout.placing.bands import level_bands
from ..layout.placing.over import over_legs
from ..layout.placing.sizes import Pick, in_piece
from ..runs import Array
from .many import pick

Density = Callable[[Part], float]
"""What the wood of a part weighs. [kg/m³]"""


@attrs.frozen(kw_only=True)
class Variant:
    """One piece of a frame in many variants; density answers for the wood of its parts. [kg/m³]"""

    frame: Frame
    built: Built
    pick: Pick
    density: Density

    @property
    def legs(self) -> tuple[Part, ...]:
        """The legs, front row first."""
        return tuple(part for part in self.built.parts if part.slot.role.stands)

    @property
    def rails(self) -> tuple[Part, ...]:
        """All that is no leg: rails, level by level from the foot, and what they carry."""
        return tuple(part for part in self.built.parts if not part.slot.role.stands)

    @cached_property
    def parts(self) -> Mapping[str, Part]:
        """All parts by name, without the piece."""
        return {part.identity: part for part in self.built.parts}

    def findings(self) -> Iterator[Finding]:
        """What all checks find; legs are looked at one by one."""
        piece = _Piece(
            frame=self.frame,
            label="",
            parts=self.parts,
            joints=self.built.joints,
            lost=self.built.lost,
            wanted={of_piece(1, name): length for name, length in self.built.wanted.items()},
            number=1,
            pick=self.pick,
        )
        for check in CHECKS:
            yield from check(piece)


@attrs.frozen(kw_only=True)
class _Piece(Piece):
    """A piece in many variants: no two legs are alike in all of them, so that each is looked at by itself."""

    pick: Pick

    def of(self, sizes: Array) -> float:
        """The number of this piece, in every variant."""
        return self.pick(sizes)

    @cached_property
    def kinds_of_legs(self) -> list[tuple[str, Part, tuple[str, ...]]]:
        """Each leg alone."""
        return [(leg.identity, leg, (leg.identity,)) for leg in self.legs]


def built_variant(frame: Frame, density: Density, *, single: bool) -> Variant:
    """Build a frame of one piece, in many variants or in a single one.

    Raises
    ------
    RunError, DescriptionError
        If it cannot be laid out.
    Split, OneByOne
        If the variants do not agree, or have to be built one by one.
    """
    own: Pick = in_piece(0) if single else pick
    frame = counted(frame, own)
    bands = level_bands(frame)
    built = build(frame, bands, over_legs(frame, bands, [own]), 1, own)
    return Variant(frame=frame, built=built, pick=own, density=density)
