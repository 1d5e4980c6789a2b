"""Moisture: what content wood settles at in air of some temperature and humidity.

A board in a shed follows the air until it neither gains nor loses water. Movement takes the content from here.

>>> round(equilibrium(20, 0.65), 2), round(equilibrium(70, 0.50, degrees="F"), 2)
(12.0, 9.25)
"""

from __future__ import annotations

from typing import Literal, overload

import numpy as np
import numpy.typing as npt

from ..errors import MoistureError
from ..sources import Source

Array = npt.NDArray[np.float64]
Degrees = Literal["C", "F"]

EQUILIBRIUM = Source("Wood Handbook FPL-GTR-282 (2021)", "Eq. 4-5", standing="transcribed")

_TERMS: dict[str, tuple[tuple[float, float, float], ...]] = {
    "C": (
        (349.0, 1.29, 0.0135),
        (0.805, 0.000736, -0.00000273),
        (6.27, -0.00938, -0.000303),
        (1.91, 0.0407, -0.000293),
    ),
    "F": (
        (330.0, 0.452, 0.00415),
        (0.791, 0.000463, -0.000000844),
        (6.34, 0.000775, -0.0000935),
        (1.09, 0.0284, -0.0000904),
    ),
}
"""W, K, K1 and K2 as constant, linear and quadratic terms in the temperature."""


@overload
def equilibrium(temperature: float, humidity: float, *, degrees: Degrees = "C") -> float: ...
@overload
def equilibrium(temperature: Array, humidity: npt.ArrayLike, *, degrees: Degrees = "C") -> Array: ...
@overload
def equilibrium(temperature: npt.ArrayLike, humidity: Array, *, degrees: Degrees = "C") -> Array: ...


def equilibrium(temperature: npt.ArrayLike, humidity: npt.ArrayLike, *, degrees: Degrees = "C") -> float | Array:
    """Equilibrium moisture content of wood in still air.

    Parameters
    ----------
    temperature : array_like, shape (...)
        Of the air, in degrees Celsius, or Fahrenheit if so said.
    humidity : array_like, shape (...)
        Relative humidity as a fraction, 0 to 1.
    degrees : "C" or "F"

    Returns
    -------
    content : ndarray, shape (...), or float
        Water as % of the oven-dry wood. NaN where an argument is NaN.

    Raises
    ------
    MoistureError
        If a humidity is less than 0 or more than 1, as a percentage would be; if degrees are neither C nor F.

    Notes
    -----
    ``1800/W · (K h / (1 − K h) + (K1 K h + 2 K1 K2 K² h²) / (1 + K1 K h + K1 K2 K² h²))``, Wood Handbook
    FPL-GTR-282 Eq. 4-5 with its constants for either unit; its Table 4-2 runs from −1 to 132 °C and to 95 %
    humidity. Species differ a little, and what was wetter before stays up to 1 or 2 % above it.
    """
    if degrees not in _TERMS:
        raise MoistureError(f"degrees is {degrees!r}. Choose 'C' or 'F'.")
    t, h = np.asarray(temperature, dtype=float), np.asarray(humidity, dtype=float)
    if np.any((h < 0) | (h > 1)):
        wrong = h[(h < 0) | (h > 1)].flat[0]
        raise MoistureError(f"humidity is {wrong:g}. Write it as a fraction from 0 to 1: 0.65 for 65 %.")
    w, k, k1, k2 = (a + b * t + c * t * t for a, b, c in _TERMS[degrees])
    kh = k * h
    layered = (k1 * kh + 2 * k1 * k2 * kh * kh) / (1 + k1 * kh + k1 * k2 * kh * kh)
    content = 1800 / w * (kh / (1 - kh) + layered)
    return float(content) if content.ndim == 0 else content
