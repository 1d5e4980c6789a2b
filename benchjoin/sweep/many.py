"""Many: one number of a design in many variants at once, as an array that passes for a float.

A block of variants goes through the layout as one frame does, by the same code: sums and products are those of arrays.
Where the layout asks a yes-or-no question (does this rail meet that leg, which edge is lower?) and the variants agree,
the answer is theirs; where they do not, the question raises `Split`, and the block is taken apart into those that say
yes and those that say no. What can only be asked of a single number raises `OneByOne`.

>>> wide = many([60.0, 70.0, 80.0])
>>> bool(wide > 50), max(wide, 40.0) is wide
(True, True)
>>> try:
...     bool(wide > 65)
... except Split as split:
...     split.mask.tolist()
[False, True, True]
"""

from __future__ import annotations

from typing import Any, NoReturn

import numpy as np
import numpy.typing as npt

NOISE = 1e-9
"""Numbers that differ by no more than this are equal, so that rounding splits no block. [mm]"""


class Split(Exception):
    """The variants of a block do not agree on a question: mask says which answer yes, answers what each says."""

    def __init__(self, mask: npt.NDArray[np.bool_], answers: npt.NDArray[Any] | None = None) -> None:
        super().__init__("variants do not agree")
        self.mask = mask
        self.answers = mask if answers is None else answers


class OneByOne(Exception):
    """Something was asked that only a single variant can answer."""


class Many(np.ndarray[Any, np.dtype[Any]]):
    """An array over variants; questions of it are answered by all of them together or not at all."""

    def __bool__(self) -> bool:
        mask = np.asarray(self) if self.dtype == bool else np.abs(np.asarray(self)) > NOISE
        if mask.all():
            return True
        if not mask.any():
            return False
        raise Split(mask)

    def __lt__(self, other: Any) -> Any:
        return _asked(np.less, self, other)

    def __le__(self, other: Any) -> Any:
        return _asked(np.less_equal, self, other)

    def __gt__(self, other: Any) -> Any:
        return _asked(np.greater, self, other)

    def __ge__(self, other: Any) -> Any:
        return _asked(np.greater_equal, self, other)

    def __eq__(self, other: Any) -> Any:
        return _asked(np.equal, self, other)

    def __ne__(self, other: Any) -> Any:
        return _asked(np.not_equal, self, other)

    def __format__(self, spec: str) -> str:
        return "…"

    def __str__(self) -> str:
        return "…"

    def __hash__(self) -> int:  # type: ignore[override]
        _refuse()

    def __float__(self) -> float:
        _refuse()

    def __int__(self) -> int:
        _refuse()

    def __index__(self) -> int:
        """The whole number that all variants agree on; those that do not are taken apart, one block for each."""
        whole = np.asarray(self).astype(int)
        if (whole == whole.flat[0]).all():
            return int(whole.flat[0])
        raise Split(whole == whole.flat[0], whole)

    def __round__(self, digits: int | None = None) -> Any:
        _refuse()

    def __array_ufunc__(self, ufunc: np.ufunc, method: Any, *inputs: Any, **options: Any) -> Any:
        if getattr(np, ufunc.__name__, None) is not ufunc:
            _refuse()  # the ufuncs of other libraries give objects, not numbers
        plain = [np.asarray(each) if isinstance(each, Many) else each for each in inputs]
        return np.asarray(getattr(ufunc, method)(*plain, **options)).view(Many)


def many(values: npt.ArrayLike) -> Many:
    """Numbers over variants as one number."""
    return np.asarray(values, dtype=float).view(Many)


def pick(sizes: npt.ArrayLike) -> Any:
    """What all variants say of one piece: a float where they say the same, else as few numbers as tell it.

    >>> pick([3.0, 3.0]), pick([[1.0, 2.0], [1.0, 2.0]]).shape
    (3.0, (1, 2))
    """
    array = np.asarray(sizes, dtype=float)
    for axis in range(array.ndim):
        if array.shape[axis] > 1:
            first = array.take([0], axis=axis)
            array = first if (array == first).all() else array
    return float(array.flat[0]) if array.size == 1 else array.view(Many)


def _refuse() -> NoReturn:
    raise OneByOne("this is asked of one variant at a time")


def _asked(question: np.ufunc, one: Any, other: Any) -> Any:
    """The answers of all variants; where they are mixed, differences that are rounding count as none."""
    if not isinstance(other, np.ndarray | float | int):
        return NotImplemented
    a, b = np.asarray(one), np.asarray(other)
    mask = question(a, b)
    if mask.any() and not mask.all():
        apart = a - b
        mask = question(np.where(np.abs(apart) <= NOISE, 0.0, apart), 0.0)
    return np.asarray(mask).view(Many)
