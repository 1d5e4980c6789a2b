"""A single row of uprights: what it may not be given, what it is as deep as, and what moves when it is changed."""

from __future__ import annotations

import attrs
import pytest
from designs import bench, tools
from samples import FLAT, SAMPLES

from benchjoin import (
    Butt,
    Clear,
    EndRails,
    Frame,
    Leg,
    Level,
    Overall,
    Pair,
    Planted,
    Rail,
    alter,
    cut_list,
    error_budget,
    keep,
    lay_out,
    what_moved,
)
from benchjoin.binding import sheets
from benchjoin.errors import AddressError, DescriptionError
from benchjoin.frame.design.file import read_design, write_design
from benchjoin.notebook.showing import SHOWN if False else lay_out
