"""How the faces of a piece of wood are, in the words of the trade."""

from __future__ import annotations

from typing import Literal

State = Literal["rough", "rough on one face", "dressed", "planed", "milled"]
STATES: tuple[State, ...] = ("rough", "rough on one face", "dressed", "planed", "milled")
"""As sawn; one as sawn; planed at the mill, dry or green; planed to a European size; flat and square by the maker's own
hand."""
