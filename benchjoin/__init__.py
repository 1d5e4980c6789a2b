"""benchjoin: from a described bench to full-size marking templates and dimensioned elevations.

Describe a frame by its legs, rails and heights, lay it out, and draw what is laid on the wood::

    layout = lay_out(Frame(...))
    set_page(layout, "A").save("set-a.pdf")

The names here are what a maker types for one bench; everything else is one noun module away. A name is loaded when it
is first asked for, so that whoever only lays out does not wait for the drawings.
"""

import sys
from importlib import import_module
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from .binding import bind, changed_sheets
    from .drafting.full_size.correction import PrinterScale
    from .drawings.templates.set.page import set_page
    from .drawings.views.arrangement import arrangement
    from .drawings.views.elevation import elevation
    from .drawings.views.plan import plan
    from .drawings.views.section import section
    from .frame.address import addresses, alter
    from .frame.again import again
    from .frame.bearers import Bearers
    from .frame.bin import Bin
    from .frame.boards import Boards
    from .frame.clear import Clear
    from .frame.edges import Arc, Ogee, Points, Scallop
    from .frame.frame import Frame
    from .frame.governing import EndRails, Overall
    from .frame.joints import Butt, HalfLap, Laid, Notch, Over, Planted
    from .frame.ledger import Ledger
    from .frame.leg import Leg
    from .frame.pair import Pair
    from .frame.rail import Rail
    from .frame.sketch import sketch
    from .frame.stack import Level
    from .frame.stock import Stock
    from .frame.top import Panel, Top
    from .frame.tray import Tray
    from .layout.keeping import keep, release
    from .layout.lay_out import lay_out
    from .layout.layout import Layout
    from .layout.moved import what_moved
    from .layout.sitting import sit
    from .ranges import Range
    from .shop.assembly.assembly import assembly
    from .shop.assembly.hours import Hands
    from .shop.boards.board import Board, Defect
    from .shop.boards.buy import buy_list
    from .shop.boards.plan import board_plan
    from .shop.boards.reading import read_boards
    from .shop.boards.rough import Allowances, rough_list
    from .shop.boards.saving import what_saves
    from .shop.boards.yard import in_the_yard
    from .shop.budget.error_budget import error_budget
    from .shop.cut_list import cut_list
    from .shop.fasteners.butts import butt_ways
    from .shop.fasteners.fasten import fasten
    from .shop.lifting import lifting
    from .shop.milling.measurements import read_measurements
    from .shop.milling.milling import milling_plan
    from .shop.overview import marks_list
    from .shop.settings.minutes import Minutes
    from .shop.settings.settings import settings
    from .shop.settings.shop import Shop
    from .shop.strength.improving import would_help
    from .shop.strength.loads import Case, Filled, Line, Point, Push, Spread
    from .shop.strength.strength import strength
    from .shop.supplies import supplies
    from .shop.working_height import working_height
    from .sweep.nearness import nearness
    from .template_pages import templates
    from .version import __version__

__all__ = [
    "Allowances",
    "Arc",
    "Bearers",
    "Bin",
    "Board",
    "Boards",
    "Butt",
    "Case",
    "Clear",
    "Defect",
    "EndRails",
    "Filled",
    "Frame",
    "HalfLap",
    "Hands",
    "Laid",
    "Layout",
    "Ledger",
    "Leg",
    "Level",
    "Line",
    "Minutes",
    "Notch",
    "Ogee",
    "Over",
    "Overall",
    "Pair",
    "Panel",
    "Planted",
    "Point",
    "Points",
    "PrinterScale",
    "Push",
    "Rail",
    "Range",
    "Scallop",
    "Shop",
    "Spread",
    "Stock",
    "Top",
    "Tray",
    "__version__",
    "addresses",
    "again",
    "alter",
    "arrangement",
    "assembly",
    "bind",
    "board_plan",
    "butt_ways",
    "buy_list",
    "changed_sheets",
    "cut_list",
    "elevation",
    "error_budget",
    "fasten",
    "in_the_yard",
    "keep",
    "lay_out",
    "lifting",
    "marks_list",
    "milling_plan",
    "nearness",
    "plan",
    "read_boards",
    "read_measurements",
    "release",
    "rough_list",
    "section",
    "set_page",
    "settings",
    "sit",
    "sketch",
    "strength",
    "supplies",
    "templates",
    "what_moved",
    "what_saves",
    "working_height",
    "would_help",
]

_HOMES = {
    ".binding": "bind, changed_sheets",
    ".drafting.full_size.correction": "PrinterScale",
    ".drawings.views.arrangement": "arrangement",
    ".drawings.views.elevation": "elevation",
    ".drawings.views.plan": "plan",
    ".drawings.views.section": "section",
    ".drawings.templates.set.page": "set_page",
    ".frame.address": "addresses, alter",
    ".frame.again": "again",
    ".frame.bearers": "Bearers",
    ".frame.bin": "Bin",
    ".frame.boards": "Boards",
    ".frame.clear": "Clear",
    ".frame.edges": "Arc, Ogee, Points, Scallop",
    ".frame.frame": "Frame",
    ".frame.governing": "EndRails, Overall",
    ".frame.joints": "Butt, HalfLap, Laid, Notch, Over, Planted",
    ".frame.ledger": "Ledger",
    ".frame.leg": "Leg",
    ".frame.pair": "Pair",
    ".frame.rail": "Rail",
    ".frame.sketch": "sketch",
    ".frame.stack": "Level",
    ".frame.stock": "Stock",
    ".frame.top": "Panel, Top",
    ".frame.tray": "Tray",
    ".layout.keeping": "keep, release",
    ".layout.lay_out": "lay_out",
    ".layout.layout": "Layout",
    ".layout.moved": "what_moved",
    ".layout.sitting": "sit",
    ".shop.assembly.assembly": "assembly",
    ".shop.assembly.hours": "Hands",
    ".shop.boards.board": "Board, Defect",
    ".shop.boards.buy": "buy_list",
    ".shop.boards.plan": "board_plan",
    ".shop.boards.reading": "read_boards",
    ".shop.boards.rough": "Allowances, rough_list",
    ".shop.boards.saving": "what_saves",
    ".shop.boards.yard": "in_the_yard",
    ".shop.cut_list": "cut_list",
    ".shop.budget.error_budget": "error_budget",
    ".shop.fasteners.butts": "butt_ways",
    ".shop.fasteners.fasten": "fasten",
    ".shop.lifting": "lifting",
    ".shop.milling.measurements": "read_measurements",
    ".shop.milling.milling": "milling_plan",
    ".shop.overview": "marks_list",
    ".shop.settings.minutes": "Minutes",
    ".shop.settings.settings": "settings",
    ".shop.settings.shop": "Shop",
    ".shop.strength.loads": "Case, Filled, Line, Point, Push, Spread",
    ".shop.strength.improving": "would_help",
    ".shop.strength.strength": "strength",
    ".shop.working_height": "working_height",
    ".sweep.nearness": "nearness",
    ".shop.supplies": "supplies",
    ".ranges": "Range",
    ".template_pages": "templates",
    ".version": "__version__",
}
"""Where each name lives, as the imports above say it."""
_HOME = {name: module for module, names in _HOMES.items() for name in names.split(", ")}


def __getattr__(name: str) -> object:
    if name not in _HOME:
        raise AttributeError(f"module {__name__!r} has no attribute {name!r}")
    globals()[name] = found = getattr(import_module(_HOME[name], __name__), name)
    return found


def __dir__() -> list[str]:
    return sorted({*globals(), *__all__})


if "IPython" in sys.modules:  # values show themselves in a notebook; nobody else pays for it
    from .notebook import register

    register()
