"""Printed smoke points and viscosities of oils."""

import pytest

import kettlecast as kc
from kettlecast import oils

ICE = 273.15


# Source: Wikipedia, Template: Smoke point of cooking oils
@pytest.mark.parametrize(
    ("name", "low", "high"),
    [
        ("butter", 150, 150),
        ("clarified butter", 250, 250),
        ("rapeseed", 220, 230),
        ("refined peanut oil", 232, 232),
        ("Lard", 190, 190),
        ("safflower, unrefined", 107, 107),
    ],
)
def test_smoke_points_are_those_printed(name: str, low: float, high: float) -> None:
    point = oils.oil(name).smoke_point
    assert point is not None
    assert [kelvin - ICE for kelvin in point] == pytest.approx([low, high], abs=1e-6)


def test_every_oil_has_an_order_and_a_source() -> None:
    for name in oils.oil_names():
        found = oils.oil(name)
        assert found.source
        assert found.smoke_point is not None or found.viscosity is not None
        if found.smoke_point is not None:
            assert 370.0 < found.smoke_point[0] <= found.smoke_point[1] < 560.0


# Source: Diamante & Lan (2014): at 38 degC, and an energy of flow of 21 to 30 kJ/mol over 26-90
def test_viscosity_of_an_oil_starts_from_the_printed_one() -> None:
    assert oils.viscosity("walnut oil", ICE + 38.0) == pytest.approx(0.0296, rel=1e-6)
    for name in ("walnut", "rice bran"):
        cold, hot = oils.viscosity(name, ICE + 38.0), oils.viscosity(name, ICE + 90.0)
        fall = kc.properties.oil.arrhenius_viscosity
        assert fall(cold, ICE + 38.0, 30e3, ICE + 90.0) < hot < fall(cold, ICE + 38.0, 21e3, 363.15)


def test_what_is_not_printed_is_not_invented() -> None:
    with pytest.raises(kc.OutsideValidity, match="no printed viscosity"):
        oils.viscosity("lard", 350.0)
    with pytest.raises(kc.UnknownName, match="nearest: walnut"):
        oils.oil("wallnut")
