"""What a maker asks of drawings: every option of every drawing, once, and what was found about the job.

The public functions take options by keyword, those of the group that they name: `elevation(layout, "front",
paper="A3")`. They hand them on as one `Asked`, which is what every drawing takes beside the layout::

    def plan(layout: Layout, **options: Unpack[OfAPiece]) -> Sheet:
        (sheet,) = plan_pages(layout, ask(layout, OfAPiece, options))
        return sheet
"""

from __future__ import annotations

import itertools
from collections.abc import Callable, Collection, Hashable, Mapping
from functools import cached_property
from typing import Literal, TypedDict, TypeVar, cast

import attrs

from ...drafting.full_size.correction import PrinterScale
from ...drafting.full_size.desk_page import MARGIN
from ...drafting.full_size.tiling import OVERLAP
from ...findings import Finding, in_order
from ...frame.frame import Frame
from ...frame.identity import of_piece
from ...frame.stock import Stock
from ...layout.joints.meeting import Joint
from ...layout.layout import Layout
from ...layout.parts import Part
from ...lengths import Length
from ...shop.assembly.assembly import Assembly
from ...shop.boards.plan import BoardPlan
from ...shop.budget.marking_ways import Marking
from ...shop.fasteners.fasten import Fastening
from ...shop.fasteners.fixing import Fixing, Hole
from ...shop.milling.milling import MillingPlan, milling_plan
from ...shop.settings.settings import Settings, settings
from ...shop.settings.shop import Shop, usual_shop
from ...shop.strength.result import Strength
from ...trade.allowances import Milling
from .house import PLAIN, House, papers_from

T = TypeVar("T")
Appendix = Literal["full size", "desk paper"]


class OnPaper(TypedDict, total=False):
    """Options of every drawing."""

    paper: str | None
    house: House | None
    fastening: Fastening | None


class OfAPiece(OnPaper, total=False):
    """Options of what shows one piece."""

    piece: int


class OnARoll(OnPaper, total=False):
    """Options of the page of a set."""

    roll: str | None
    printer: PrinterScale | None


class OnDeskPaper(OnPaper, total=False):
    """Options of what is laid on the wood from desk pages."""

    told: Callable[[str], object]
    margin: Length
    printer: PrinterScale | None


class InTiles(OnDeskPaper, total=False):
    """Options of tiles."""

    upright: bool | None
    overlap: Length


class Milled(OnPaper, total=False):
    """Options of the milling sheets."""

    starts: Mapping[str, Stock] | None


class AtTheMachine(OnPaper, total=False):
    """Options of the settings sheets."""

    letter: str | None
    from_top: Collection[str]


class OfParts(OnPaper, total=False):
    """Options of the part drawings."""

    plain_parts: bool


class Bound(OfParts, total=False):
    """Options of the binder."""

    told: Callable[[str], object]
    strength: Strength | None
    assembly: Assembly | None
    shop: Shop | None
    milling: Milling | None
    plan: BoardPlan | None
    before: Layout | None
    appendix: Appendix | None


def _house(value: House | None) -> House:
    return PLAIN if value is None else value


def _nobody(_: str) -> None:
    """Nobody waits."""


@attrs.frozen(kw_only=True)
class Asked:
    """What is asked of the drawings of a layout.

    Parameters
    ----------
    layout : Layout
        The layout that is drawn.
    paper : str, optional
        "Letter", "A4", "Tabloid", "A3" …; if not given, the desk paper of the design's tape, or the next larger one.
        The page of a set is at full size without it.
    house : House, optional
        What all sheets of the shop have in common: names, date, revision and the like for the title blocks, linework.
    fastening : Fastening, optional
        How the layout is fastened: its holes are on the drawings, its schedule in the binder.
    piece : int
        Which piece of the batch.
    roll : str, optional
        Full size on a roll ("36 in", "914 mm" …), as long as it needs to be, or on a large sheet ("A0", "ANSI E" …);
        as long and as wide as it needs to be without it.
    printer : PrinterScale, optional
        What the printer does to lengths, to be taken back; full size only.
    margin : length
        What the printer leaves blank at each edge.
    upright : bool, optional
        Whether the paper of tiles stands; the way that takes fewer pages if not given.
    overlap : length
        What is glued under at each seam of tiles.
    shop, milling : optional
        The maker's machines and milling habits, for the settings, the milling plan and the findings.
    strength : Strength, optional
        What loads do to it, for its sheets and the findings.
    assembly : Assembly, optional
        How it goes together, for its sheets and the findings.
    plan : BoardPlan, optional
        Which part comes out of which board, for the sheets of the boards.
    starts : mapping of str to Stock, optional
        What stocks are milled from, by name.
    letter, from_top
        Which set the settings are for, and the levels that are set from the top; as for `settings`.
    marking : Marking, optional
        How well the maker marks, for the error budget.
    before : Layout, optional
        An earlier layout of the design; what moved since then is listed.
    appendix : "full size", "desk paper" or None
        The pages of the sets at full size, or the templates on desk paper, or neither: they can be a file.
    plain_parts : bool
        Whether boards that nothing is cut in have part drawings; their sizes are in the cut list.
    told : callable
        Is told the title of each sheet when it is drawn, for who waits.
    known : tuple of Finding, optional
        All findings, where they are worked out already.
    numbered : bool
        Whether a list of the findings goes with the sheets, so that these point to it by number.
    shared : dict
        What was worked out for several sheets, with `once`.
    """

    layout: Layout
    paper: str | None = None
    house: House = attrs.field(default=None, converter=_house)
    fastening: Fastening | None = None
    piece: int = 1
    roll: str | None = None
    printer: PrinterScale | None = None
    margin: Length = MARGIN
    upright: bool | None = None
    overlap: Length = OVERLAP
    shop: Shop | None = None
    milling: Milling | None = None
    strength: Strength | None = None
    assembly: Assembly | None = None
    plan: BoardPlan | None = None
    starts: Mapping[str, Stock] | None = None
    letter: str | None = None
    from_top: Collection[str] = ()
    marking: Marking | None = None
    before: Layout | None = None
    appendix: Appendix | None = "full size"
    plain_parts: bool = False
    told: Callable[[str], object] = attrs.field(default=_nobody, eq=False)
    known: tuple[Finding, ...] | None = None
    numbered: bool = False
    shared: dict[object, object] = attrs.field(factory=dict, eq=False, repr=False)

    def once(self, what: Hashable, work_out: Callable[[], T]) -> T:
        """What several sheets show, worked out for the first of them; it depends on the layout and `what` alone."""
        if what not in self.shared:
            self.shared[what] = work_out()
        return cast(T, self.shared[what])

    def holes(self, part: Part) -> tuple[Hole, ...]:
        """The holes of a part, where the fastening is known."""
        return self.fastening.holes(part) if self.fastening is not None else ()

    def fixing(self, joint: Joint) -> Fixing | None:
        """How a joint is fastened, where that is known and anything is."""
        if self.fastening is None:
            return None
        return self.fastening.at(joint)

    def holes_of(self, joint: Joint) -> tuple[Hole, ...]:
        """The holes of a joint in both of its parts."""
        if self.fastening is None:
            return ()
        names = [of_piece(joint.piece, name) for name in (joint.host, joint.guest)]
        return tuple(
            hole for name, other in (names, names[::-1]) for hole in self.fastening.holes(name) if hole.mate == other
        )

    @property
    def frame(self) -> Frame:
        """The frame that is drawn."""
        return self.layout.frame

    @property
    def papers(self) -> tuple[str, ...]:
        """The papers to try: the one that was asked for, or the desk paper of the design and then larger ones."""
        return papers_from(self.frame, self.paper)

    @cached_property
    def findings(self) -> tuple[Finding, ...]:
        """All findings of the job, errors first: of the layout, of the work on it, and, once it is drawn, of paper."""
        if self.known is not None:
            return self.known
        given = [one.findings for one in (self.fastening, self.strength, self.assembly) if one is not None]
        planned = [] if self.layout.errors() else [self.milled.findings, self.settings.findings]
        return in_order([*self.layout.findings, *itertools.chain(*planned, *given)])

    @property
    def machines(self) -> Shop:
        """The shop, with the milling habits where they are given."""
        own = self.shop or usual_shop(self.frame.tape)
        return attrs.evolve(own, milling=self.milling or own.milling)

    @property
    def settings(self) -> Settings:
        """The settings of the machines, of the whole batch or of one set."""
        shop = self.machines
        if self.letter is None and not self.from_top:
            return self.once(("settings", shop), lambda: settings(self.layout, shop))
        return settings(self.layout, shop, letter=self.letter, from_top=self.from_top)

    @property
    def milled(self) -> MillingPlan:
        """What is milled, and from what."""
        habits = self.machines.milling
        if self.starts is None:
            return self.once(("milling", habits), lambda: milling_plan(self.layout, practice=habits))
        return milling_plan(self.layout, practice=habits, starts=self.starts)

    @cached_property
    def for_drawings(self) -> tuple[Finding, ...]:
        """The findings that drawings write: all errors and warnings, and the notes of the layout.

        Notes about stock and stops stand on the shop's own sheets, notes about paper on the sheet that they are about.
        """
        return tuple(f for f in self.findings if f.severity != "note" or f in self.layout.findings)


def ask(layout: Layout, group: type, options: Mapping[str, object]) -> Asked:
    """What is asked of a layout, by the options of one of the groups above.

    Raises
    ------
    TypeError
        If the group has no such option.
    """
    known = group.__annotations__  # those of the groups that it builds on are among them
    for name in options:
        if name not in known:
            raise TypeError(f"There is no option {name!r} here. There are {', '.join(known)}.")
    return Asked(layout=layout, **options)  # type: ignore[arg-type] # whoever takes the options has their types checked
