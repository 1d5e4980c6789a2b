"""In a notebook: every value shows itself, and sliders let you drag a design.

from benchjoin.notebook import explore
"""

from .showing import explore, register, step_through

__all__ = ["explore", "register", "step_through"]
