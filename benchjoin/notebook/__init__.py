"""In a notebook: every value shows itself, and sliders let you drag a design.

from benchjoin.notebook import explore
"""

from .showing import explore, look_round, register, step_through

__all__ = ["explore", "look_round", "register", "step_through"]
