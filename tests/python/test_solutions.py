"""Syrup and brine from Python: values, and ranges that are refused."""

import pytest

import kettlecast as kc


def test_sugar_salt_and_both_boil_as_published() -> None:
    properties = kc.properties
    # Source: H. T. Brown (1912), 60 % sucrose
    syrup = properties.sugar.boiling_temperature(0.60, 101325.0)
    assert syrup - 273.15 == pytest.approx(103.0, abs=0.5)
    # Source: saturated brine at 1 atm (from memory)
    brine = properties.salt.saturated_boiling_temperature(101325.0)
    assert brine - 273.15 == pytest.approx(108.7, abs=0.3)
    # Source: Ross (1975), product of the activities
    both = properties.solutes.water_activity(water=1.0, sugar=0.5, salt=0.1)
    parts = properties.solutes.water_activity(1.0, 0.5, 0.0) * properties.solutes.water_activity(
        1.0, 0.0, 0.1
    )
    assert both == pytest.approx(parts, rel=1e-12)
    assert properties.solutes.boiling_temperature(1.0, 0.0, 0.0, 101325.0) == pytest.approx(
        float(properties.water.saturation_temperature(101325.0)), abs=1e-9
    )


def test_arguments_out_of_range_are_refused() -> None:
    sugar = kc.properties.sugar
    with pytest.raises(kc.InvalidArgument, match="sugar"):
        sugar.boiling_temperature(60.0, 101325.0)
    with pytest.raises(kc.InvalidArgument, match="pressure"):
        sugar.boiling_temperature(0.6, 1.0)
    with pytest.raises(kc.InvalidArgument, match="temperature"):
        sugar.viscosity(0.6, 20.0)
    with pytest.raises(kc.InvalidArgument, match="water"):
        kc.properties.solutes.water_activity(-1.0, 0.0, 0.0)
