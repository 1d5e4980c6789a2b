"""Every error that benchjoin raises.

An error says what is wrong, where, with which numbers, and what to do about it. It is raised only when no
layout can be computed or no honest page can be written; everything else that a maker must know is a finding.

::

    BenchjoinError
     ├── LengthError          (ValueError)     not a length: no unit, not a number, negative, too long
     ├── DescriptionError     (ValueError)     a description with faults; all of them at once
     │    └── DesignFileError                  a design file with faults, each with its line
     ├── AddressError         (LookupError)    no such value, part, set or side
     ├── NotLaidOut           (AttributeError) a frame where a layout is meant
     ├── RunError             (ValueError)     a run that cannot be laid out
     │    ├── RunOverfull                      too much between two pins
     │    └── RunMismatch                      fixed sizes leave a gap between two pins
     ├── LumberError          (LookupError)    no such size or species in the tables of the trade
     ├── MillingError         (ValueError)     wood that milling would leave nothing of, or a habit that is none
     ├── MoistureError        (ValueError)     a humidity that is no fraction
     ├── MeasurementError     (ValueError)     a list of measured sizes that does not read as one
     │    └── BoardListError                   a list of boards that does not read as one
     ├── BoardError           (ValueError)     boards that cannot be planned with
     ├── FastenerError        (ValueError)     no such screw, nail or bolt, or no such place for one
     ├── LoadError            (ValueError)     a load that is none, or that lies on what is not there
     ├── AssemblyError        (ValueError)     parts that hold each other, or an order that cannot be
     ├── CannotDraw           (ValueError)     a layout with errors is not drawn for the wood
     ├── PaperError           (ValueError)     a page that would not come out true
     └── MissingLibrary       (ImportError)    a system library that is not installed

One warning is no error, since the page is made all the same: OtherLettering (UserWarning), another font than ours.
"""

from __future__ import annotations

from typing import Any


def typed(value: object) -> str:
    """A refused value as a sentence shows it, cut short where it is long.

    >>> typed("57 in x"), typed("9" * 100)
    ("'57 in x'", "'99999999999999999999999999999999999999999999999999999999999…")
    """
    try:
        shown = repr(value)
    except Exception:  # whatever a stranger's own repr does, the maker hears what was wrong
        shown = f"a value of type {type(value).__name__}"
    return shown if len(shown) <= 60 else shown[:60] + "…"


class BenchjoinError(Exception):
    """Root of the tree; catch this to catch them all.

    Fields given by keyword become attributes, so that a program can read the numbers that the sentence states.

    Examples
    --------
    >>> BenchjoinError("The run is too full.", over=31.75).over
    31.75
    """

    def __init__(self, message: str, **fields: Any) -> None:
        super().__init__(message)
        self.__dict__.update(fields)

    def __getattr__(self, name: str) -> Any:
        """Only for the type checker: a field that was not given does not exist."""
        raise AttributeError(name)


class LengthError(BenchjoinError, ValueError):
    """Something given as a length is not one."""


class DescriptionError(BenchjoinError, ValueError):
    """A description has faults. Field: faults, a tuple of Fault."""


class DesignFileError(DescriptionError):
    """A design file with faults. Fields: faults, and lines (a number or None for each)."""


class AddressError(BenchjoinError, LookupError):
    """An address, part, set or side that is not there. Fields: address, known."""


class NotLaidOut(BenchjoinError, AttributeError):
    """A frame was asked for what only its layout has. Field: name."""


class RunError(BenchjoinError, ValueError):
    """A run that cannot be laid out. Fields: run, lower_pin, upper_pin, over (mm), pieces (which it is true of)."""


class RunOverfull(RunError):
    """Members and clears need more than there is between two pins."""


class RunMismatch(RunError):
    """Members and clears are all fixed and leave a gap between two pins."""


class LumberError(BenchjoinError, LookupError):
    """No such size or species in the tables of the trade."""


class MillingError(BenchjoinError, ValueError):
    """Wood that milling would leave nothing of, or a habit of milling that is none."""


class MoistureError(BenchjoinError, ValueError):
    """A humidity that is no fraction."""


class MeasurementError(BenchjoinError, ValueError):
    """A list of measured sizes has faults. Fields: faults; line and column of the first."""


class BoardListError(MeasurementError):
    """A list of boards with faults, each by its line and column."""


class BoardError(BenchjoinError, ValueError):
    """Boards that cannot be planned with."""


class FastenerError(BenchjoinError, ValueError):
    """No such screw, nail or bolt, or no such place for one."""


class LoadError(BenchjoinError, ValueError):
    """A load that is none, or that lies on a level, bin or leg that is not there. Field: known, those that are."""


class AssemblyError(BenchjoinError, ValueError):
    """Parts that hold each other, or an order that cannot be. Fields: part, and blocked, who is in its way."""


class CannotDraw(BenchjoinError, ValueError):
    """A layout with errors is not drawn for the wood. Field: findings."""


class PaperError(BenchjoinError, ValueError):
    """A page that would not come out true, or not at all."""


class MissingLibrary(BenchjoinError, ImportError):
    """A library of the system is not installed."""


class OtherLettering(UserWarning):
    """A file is drawn with another font than the one that its texts were measured with."""
