"""One design in many variants: arrays that pass for numbers, blocks of variants that agree, what is asked of them.

from benchjoin.sweep import sweep
"""

from .run import sweep

__all__ = ["sweep"]
