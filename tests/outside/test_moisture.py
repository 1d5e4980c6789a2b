"""Equilibrium moisture content, held against the Wood Handbook FPL-GTR-282 (2021), Table 4-2 and Eq. 4-5."""

from __future__ import annotations

import numpy as np
import pint
import pytest

from benchjoin.errors import MoistureError
from benchjoin.wood.moisture import equilibrium

UNITS = pint.UnitRegistry()

# Table 4-2: degrees Fahrenheit, relative humidity in %, moisture content in %
TABLE = [
    (70, 5, 1.3),
    (70, 30, 6.2),
    (70, 50, 9.2),
    (70, 75, 14.4),
    (70, 85, 17.9),
    (70, 95, 23.9),
    (30, 75, 14.9),
    (100, 50, 8.7),
]
TENTH = 0.061  # the table is rounded to tenths, at 70 °F and 85 % the other way: Eq. 4-5 gives 17.96
# Eq. 4-5 worked elsewhere at 20 °C: relative humidity in %, moisture content in %
AT_20 = [(50, 9.27), (65, 12.00), (75, 14.45), (80, 16.04), (85, 18.00), (90, 20.53), (95, 23.94)]


def celsius(fahrenheit):
    return UNITS.Quantity(fahrenheit, "degF").to("degC").magnitude


@pytest.mark.parametrize("temperature, humidity, printed", TABLE)
def test_fahrenheit_matches_table_4_2(temperature, humidity, printed):
    assert equilibrium(temperature, humidity / 100, degrees="F") == pytest.approx(printed, abs=TENTH)


@pytest.mark.parametrize("temperature, humidity, printed", TABLE)
def test_celsius_matches_table_4_2(temperature, humidity, printed):
    assert equilibrium(celsius(temperature), humidity / 100) == pytest.approx(printed, abs=TENTH)


@pytest.mark.parametrize("humidity, worked", AT_20)
def test_twenty_degrees_matches_the_equation_worked_elsewhere(humidity, worked):
    assert equilibrium(20, humidity / 100) == pytest.approx(worked, abs=0.006)


def test_both_sets_of_constants_agree():
    fahrenheit = np.linspace(30, 120, 10)[:, np.newaxis]
    humidity = np.linspace(0.05, 0.95, 19)
    found = equilibrium(fahrenheit, humidity, degrees="F")
    assert found.shape == (10, 19)
    assert found == pytest.approx(equilibrium(celsius(fahrenheit), humidity), abs=0.05)


def test_celsius_fed_to_the_fahrenheit_constants_would_show():
    assert abs(equilibrium(20, 0.65, degrees="F") - 12.00) > 0.2


@pytest.mark.parametrize("humidity", [65, 1.01, -0.1, np.array([0.5, 65])])
def test_a_percentage_is_not_taken_for_a_fraction(humidity):
    with pytest.raises(MoistureError, match=r"0\.65 for 65 %"):
        equilibrium(20, humidity)


@pytest.mark.parametrize("degrees", ["K", "c", None])
def test_degrees_that_are_neither_are_refused(degrees):
    with pytest.raises(MoistureError, match="'C' or 'F'"):
        equilibrium(20, 0.65, degrees=degrees)


def test_dry_air_leaves_no_water_and_saturated_air_more_than_95_percent():
    assert equilibrium(20, 0.0) == 0.0
    assert equilibrium(70, 1.0, degrees="F") == pytest.approx(28.8, abs=0.06)  # Eq. 4-5 at h = 1


def test_what_is_not_known_stays_unknown_and_a_number_gives_a_number():
    assert np.isnan(equilibrium(20, float("nan")))
    assert isinstance(equilibrium(20, 0.5), float)
