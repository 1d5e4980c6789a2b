"""What a sweep gives back: named arrays over its axes, which variants cannot be built, and why."""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping, Sequence
from functools import cached_property
from typing import Any

import attrs
import numpy as np
import numpy.typing as npt

from ..borrowed import borrowed
from ..errors import AddressError, BenchjoinError, LengthError
from ..frame.address import alter
from ..frame.frame import Frame
from ..layout.lay_out import lay_out
from ..lengths import signed_mm
from .blocks import Block
from .outputs import Output

Words = tuple[str, ...]
Array = npt.NDArray[Any]
Values = Sequence[Any] | Array


@attrs.define(eq=False)
class Column:
    """One number over all variants: itself while it never differs, an array as soon as it does."""

    otherwise: float | bool
    shape: tuple[int, ...]
    sentence: str = ""
    steady: Any = None
    blocks: list[Block] = attrs.field(factory=list)
    found: Array | None = None
    last: Block | None = None

    def put(self, block: Block, number: Any) -> None:
        """The number in a block; what comes second for the same block says the same, as two joints of one rail do."""
        if self.last is block:
            return
        self.last = block
        if self.found is None and np.ndim(number) == 0 and (not self.blocks or number == self.steady):
            self.steady = number
            self.blocks.append(block)
            return
        if self.found is None:
            self.found = self._filled()
        self.found[block.key] = number

    def array(self) -> Array:
        """The number in every variant, to be read only; one that never differs takes no room."""
        if self.found is None and sum(math.prod(block.shape) for block in self.blocks) == math.prod(self.shape):
            return np.broadcast_to(np.asarray(self.steady), self.shape)
        found = self._filled() if self.found is None else self.found.view()
        found.flags.writeable = False
        return found

    def _filled(self) -> Array:
        found = np.full(self.shape, self.otherwise)
        for block in self.blocks:
            found[block.key] = self.steady
        return found


class Arrays(Mapping[Words, Array]):
    """The arrays of one output by their words: ``("back left leg", "bench/back rail", "top")``."""

    def __init__(self, output: Output, columns: Mapping[Words, Column]) -> None:
        self.output = output
        self._columns = columns

    def __getitem__(self, words: Words | str) -> Array:
        column = self._columns.get((words,) if isinstance(words, str) else tuple(words))
        if column is None:
            known = " or ".join(repr(key) for key in list(self)[:3])
            told = f"{words!r} is not among the {self.output.name}. There are {len(self)} of them, for example {known}."
            raise AddressError(told, address=words, known=tuple(self))
        return column.array()

    def __iter__(self) -> Iterator[Words]:
        return iter(self._columns)

    def __len__(self) -> int:
        return len(self._columns)

    def __contains__(self, words: object) -> bool:
        return words in self._columns or (words,) in self._columns

    def sentence(self, words: Words) -> str:
        """The sentence of a finding, with dots where variants differ."""
        return self._columns[words].sentence

    def __repr__(self) -> str:
        unit = f" [{self.output.unit}]" if self.output.unit else ""
        return f"<{len(self)} {self.output.name}{unit} by {', '.join(self.output.words)}>"


def _numeric(values: Values) -> Array:
    """Values of an axis as millimetres, where all are lengths; as they are where they are none."""
    try:
        return np.array([signed_mm(value, what="a value") for value in values], dtype=float)
    except LengthError:
        return np.array([str(value) for value in values], dtype=object)


@attrs.frozen(kw_only=True, eq=False, repr=False, slots=False)
class Swept:
    """Named arrays over the axes of a sweep.

    axes holds the values of each axis as they were given, in order; shape is that of every array. built says which
    variants can be laid out, and reasons is true, by reason, for those that cannot; dots stand in it where variants
    differ, and `why` gives the whole sentence for one of them. one_by_one counts the variants that had to be laid out
    one at a time.
    """

    frame: Frame
    piece: int
    axes: Mapping[str, Values]
    shape: tuple[int, ...]
    built: npt.NDArray[np.bool_]
    reasons: Mapping[str, npt.NDArray[np.bool_]]
    one_by_one: int
    values: Mapping[str, Values]
    outputs: Mapping[str, Arrays]

    def __getitem__(self, name: str) -> Arrays:
        if name not in self.outputs:
            told = f"{name!r} was not asked for. This sweep holds {', '.join(self.outputs)}."
            raise AddressError(told, address=name, known=tuple(self.outputs))
        return self.outputs[name]

    @property
    def dims(self) -> tuple[str, ...]:
        """Names of the axes, in order."""
        return tuple(self.axes)

    @cached_property
    def coords(self) -> Mapping[str, Array]:
        """Values of each axis as numbers: lengths in mm, others as they were given."""
        return {name: _numeric(values) for name, values in self.axes.items()}

    def keys(self) -> tuple[str, ...]:
        """Names of the outputs."""
        return tuple(self.outputs)

    def sel(self, **at: Any) -> dict[str, dict[Words, Array]]:
        """All outputs at values of some axes, the nearest of the axis; its other axes stay.

        An address with dots is handed over as ``sel(**{"bench.front.width": "3 1/2 in"})``.

        Raises
        ------
        AddressError
            If there is no such axis.
        """
        strange = [name for name in at if name not in self.axes]
        if strange:
            raise AddressError(f"{strange[0]!r} is no axis. There are {', '.join(self.axes)}.", address=strange[0])
        places = tuple(self._place(name, at[name]) if name in at else slice(None) for name in self.axes)
        return {name: {words: own[words][places] for words in own} for name, own in self.outputs.items()}

    def _place(self, name: str, wanted: Any) -> int:
        values = self.coords[name]
        if values.dtype.kind != "f":
            given = list(self.axes[name])
            if wanted not in given:
                raise AddressError(f"{wanted!r} is not on the axis {name}.", address=name, known=tuple(map(str, given)))
            return given.index(wanted)
        return int(np.abs(values - signed_mm(wanted, what=name)).argmin())

    def to_xarray(self, name: str) -> Any:
        """One output as an xarray Dataset: a variable for each number, over the axes, with units.

        Raises
        ------
        MissingLibrary
            If xarray is not installed.
        """
        xarray = borrowed("xarray", "Datasets")
        arrays = self[name]
        unit = {"units": arrays.output.unit} if arrays.output.unit else {}
        data = {", ".join(words): (self.dims, np.asarray(arrays[words]), unit) for words in arrays}
        return xarray.Dataset(data, coords={name: (name, own) for name, own in self.coords.items()})

    def changes(self, *place: int) -> dict[str, Any]:
        """The values of one variant by address, from its place along each axis.

        Raises
        ------
        AddressError
            If there is no such place.
        """
        whole = all(isinstance(n, int | np.integer) and not isinstance(n, bool) for n in place)
        if len(place) != len(self.shape) or not whole or np.any(np.abs(np.add(place, 0.5)) > self.shape):  # -n to n - 1
            lengths = " and ".join(f"0 to {n - 1} along {name}" for name, n in zip(self.axes, self.shape, strict=True))
            told = f"{place!r} is no place of a variant. Write one number for each axis: {lengths}."
            raise AddressError(told, address=place)
        at = place if len(place) == len(self.values) else place * len(self.values)
        return {address: values[n] for (address, values), n in zip(self.values.items(), at, strict=True)}

    def why(self, *place: int) -> str:
        """Why a variant cannot be built, by its place along each axis; nothing if it can.

        Raises
        ------
        AddressError
            If there is no such place.
        """
        changed = self.changes(*place)
        try:
            lay_out(alter(self.frame, changed))
        except BenchjoinError as error:
            return str(error)
        return ""

    def to_pandas(self, name: str) -> Any:
        """One output as a pandas DataFrame: a row for each variant, indexed by the axes as numbers (lengths in mm).

        ``attrs["units"]`` says the unit of its numbers.

        Raises
        ------
        MissingLibrary
            If pandas is not installed.
        """
        pandas = borrowed("pandas", "Data frames")
        arrays = self[name]
        rows = pandas.MultiIndex.from_product([list(own) for own in self.coords.values()], names=list(self.axes))
        heads = pandas.MultiIndex.from_tuples(list(arrays), names=arrays.output.words)
        data = {number: arrays[words].reshape(-1) for number, words in enumerate(arrays)}
        found = pandas.DataFrame(data, index=rows).set_axis(heads, axis=1)
        found.attrs["units"] = arrays.output.unit
        return found

    def plot(self, name: str, *words: Words | str, ax: Any = None) -> Any:
        """Draw some numbers of an output over the first axis, one line for each place along the others.

        Raises
        ------
        MissingLibrary
            If matplotlib is not installed.
        """
        from .plotting import plotted

        return plotted(self[name], self.axes, words, ax)

    def __repr__(self) -> str:
        size = " × ".join(f"{len(values)} {axis}" for axis, values in self.axes.items())
        lost = int((~self.built).sum())
        told = f"{lost} cannot be built" if lost else "all can be built"
        return f"<Sweep of {self.frame.name}: {size}; {told}; {', '.join(self.outputs)}>"
