"""Text with units. Expected values: exact definitions, NIST SP 811 appendix B (from memory)."""

import math
import pickle
import subprocess
import sys

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from kettlecast import units
from kettlecast.errors import InvalidArgument, UnknownName

POUND = 0.45359237  # [kg], exact
GALLON = 0.003785411784  # [m3], exact, US liquid
PSI = POUND * 9.80665 / 0.0254**2  # [Pa], from the exact pound, gravity and inch


# 70, 135 and 165 degF: temperatures of the FDA Food Code; degC = (degF - 32) / 1.8 is exact
@pytest.mark.parametrize(
    ("text", "celsius"),
    [
        ("32 degF", 0.0),
        ("70 degF", 21.1111),
        ("135 degF", 57.2222),
        ("165 degF", 73.8889),
        ("212 degF", 100.0),
        ("-40 degF", -40.0),
        ("\N{MINUS SIGN}40 \N{DEGREE SIGN}F", -40.0),
        ("165F", 73.8889),
        ("40 C", 40.0),
        ("273.15 K", 0.0),
    ],
)
def test_temperatures(text: str, celsius: float) -> None:
    assert units.temperature(text) - 273.15 == pytest.approx(celsius, abs=1e-4)


@pytest.mark.parametrize(
    ("text", "kelvin"), [("18 degF", 10.0), ("5 degF", 5 / 1.8), ("2 K", 2.0), ("2 C", 2.0)]
)
def test_a_difference_has_no_offset(text: str, kelvin: float) -> None:
    assert units.temperature_difference(text) == pytest.approx(kelvin, rel=1e-12)


@pytest.mark.parametrize(
    ("text", "kind", "expected"),
    [
        ("1 lb", "mass", POUND),
        ("20 lbs", "mass", 20 * POUND),
        ("16 oz", "mass", POUND),
        ("1 t", "mass", 1000.0),
        ("1 gal", "volume", GALLON),
        ("12 fl oz", "volume", 12 * GALLON / 128),
        ("4 qt", "volume", GALLON),
        ("1 quart", "volume", GALLON / 4),
        ("1 in", "length", 0.0254),
        ("1 ft", "length", 0.3048),
        ("5280 ft", "altitude", 1609.344),
        ("3412.141633 BTU/h", "power", 1000.0),
        ("18 kW", "power", 18000.0),
        ("25 rpm", "rotation_speed", 25 / 60),
        ("60 %", "share", 0.6),
        ("60%", "share", 0.6),
        ("1002 hPa", "pressure", 100200.0),
        ("1 atm", "pressure", 101325.0),
        ("14.5 psi", "pressure", 14.5 * PSI),
        ("90 s", "time", 90.0),
        ("25 min", "time", 1500.0),
        ("1.5 h", "time", 5400.0),
        ("1:30", "time", 90.0),
        ("90:00", "time", 5400.0),
        ("1:30:00", "time", 5400.0),
        ("10 %/degF", "gain", 0.18),
        ("1e1 kg", "mass", 10.0),
        (".5 kg", "mass", 0.5),
        ("1 kWh", "energy", 3.6e6),
        ("1 Btu", "energy", 1055.05585262),
        ("1 kcal", "energy", 4186.8),
        ("100 MBH", "power", 1e5 * 1055.05585262 / 3600.0),
        ("1 Btu/(lb degF)", "specific_heat", 4186.8),
        ("0.9 kcal/(kg degC)", "specific_heat", 0.9 * 4186.8),
        ("970.3 Btu/lb", "specific_energy", 970.3 * 2326.0),
        ("50 cP", "viscosity", 0.05),
        ("1 Btu/(h ft2 degF)", "heat_transfer_coefficient", 1055.05585262 / 3600 / 0.3048**2 * 1.8),
        ("1 Btu/(h ft degF)", "conductivity", 1055.05585262 / 3600 / 0.3048 * 1.8),
        ("4 W/cm2", "heat_flux", 4e4),
        ("62.4 lb/ft3", "density", 62.4 * POUND / 0.3048**3),
        ("8.34 lb/gal", "density", 8.34 * POUND / GALLON),
        ("34.5 lb/h", "mass_flow", 34.5 * POUND / 3600),
        ("10 ft2", "area", 0.9290304),
    ],
)
def test_values(text: str, kind: str, expected: float) -> None:
    # 3412.141633 Btu/h per kW has ten digits; all others are exact
    assert units.parse(text, kind) == pytest.approx(expected, rel=1e-9)


# 34.5 lb/h of water at 212 degF to steam, 970.3 Btu/lb (steam tables): 33 475 Btu/h, and a ton of
# refrigeration, 12 000 Btu/h. Both are rounded in the trade: 0.01 % and 1e-6.
def test_boiler_horsepower_and_tons() -> None:
    steam = units.parse("34.5 lb/h", "mass_flow") * units.parse("970.3 Btu/lb", "specific_energy")
    assert units.power("1 boiler hp") == pytest.approx(steam, rel=1e-4)
    assert units.power("1 TR") == pytest.approx(units.power("12000 Btu/h"), rel=1e-6)


def test_engineering_units_are_written_back() -> None:
    assert units.as_text(4186.8, "specific_heat", "us") == "1 Btu/(lb degF)"
    assert units.as_text(7.2e6, "energy") == "2 kWh"
    for kind in ("viscosity", "density", "heat_flux", "area"):
        for system in ("metric", "us"):
            text = units.exact_text(0.0123, kind, system)  # type: ignore[arg-type]
            assert units.parse(text, kind) == 0.0123
    with pytest.raises(
        InvalidArgument, match="allowed: J/\\(kg K\\), kJ/\\(kg K\\), kcal/\\(kg K\\), Btu"
    ):
        units.parse("1 furlong", "specific_heat")


def test_gauge_pressure_needs_the_ambient_pressure() -> None:
    assert units.pressure("5 psig", 101325.0) == pytest.approx(101325.0 + 5 * PSI, rel=1e-12)
    assert units.pressure("0.5 bar g", 1e5) == pytest.approx(1.5e5, rel=1e-12)
    with pytest.raises(InvalidArgument, match=r'"5 psig" is not a pressure here: a gauge pressure'):
        units.pressure("5 psig")
    with pytest.raises(InvalidArgument, match=r"below vacuum with an ambient of 100000 Pa"):
        units.pressure("-2 barg", 1e5)


@pytest.mark.parametrize(
    ("text", "kind", "message"),
    [
        (
            "12 kgs",
            "mass",
            '"12 kgs" is not a mass: unit "kgs" unknown; allowed: kg, g, lb, oz, t',
        ),
        ("12", "mass", '"12" is not a mass: the unit is missing, for example "12 kg"'),
        ("0.6", "share", '"0.6" is not a share: the unit is missing, for example "60 %"'),
        ("", "mass", '"" is not a mass: it must start with a number, for example "12 kg"'),
        ("nan kg", "mass", '"nan kg" is not a mass: it must start with a number'),
        ("1e999 kg", "mass", '"1e999 kg" is not a mass: the number is too large'),
        ("2,5 kg", "mass", '"2,5 kg" is not a mass: a comma in a number is refused'),
        ("1,000 kg", "mass", '"1,000 kg" is not a mass: a comma in a number is refused'),
        ("12 fl oz", "mass", 'unit "fl oz" unknown; allowed: kg, g, lb, oz, t'),
        ("3 kg", "altitude", '"3 kg" is not an altitude: unit "kg" unknown; allowed: m, km, ft'),
        ("20 kg extra", "mass", 'unit "kg extra" unknown'),
        ("-300 degC", "temperature", "colder than absolute zero (-273.15 degC)"),
        ("1:75", "time", '"1:75" is not a time: with colons write min:s as "1:30"'),
        ("1:5", "time", '"1:5" is not a time: with colons write min:s'),
        ("1:75:00", "time", "each part after a colon from 00 to 59"),
        ("3500 W/m^2/degC", "power", 'unit "W/m^2/degC" unknown; allowed: W, kW, BTU/h, MBH'),
        ("2 degF/min", "temperature", 'unit "degF/min" unknown; allowed: degC, degF, K'),
    ],
)
def test_refusals(text: str, kind: str, message: str) -> None:
    with pytest.raises(InvalidArgument) as caught:
        units.parse(text, kind)
    assert message in str(caught.value)


def test_an_unknown_kind_lists_the_known() -> None:
    with pytest.raises(UnknownName, match='quantity "weight" is not known; there are: temp'):
        units.parse("1 kg", "weight")


def test_a_bare_number_is_si_where_numbers_are_taken() -> None:
    assert units.number(300, "temperature") == 300.0
    assert units.number("27 degC", "temperature") == pytest.approx(300.15, abs=1e-9)


def test_arrays_keep_their_shape_and_differences_stay_differences() -> None:
    readings = units.to_si(np.array([10.0, 20.0]), "degC", "temperature")
    np.testing.assert_allclose(readings, [283.15, 293.15], rtol=1e-12)
    assert float(np.ptp(readings)) == pytest.approx(10.0, abs=1e-9)


@pytest.mark.parametrize(
    ("value", "kind", "metric", "us"),
    [
        (347.0388889, "temperature", "73.89 degC", "165 degF"),
        (10.0, "temperature_difference", "10 K", "18 degF"),
        (20 * POUND, "mass", "9.072 kg", "20 lb"),
        (0.0254, "length", "25.4 mm", "1 in"),
        (1500.0, "time", "25 min", "25 min"),
        (40 * GALLON, "volume", "151.4 L", "40 gal"),
        (25 / 60, "rotation_speed", "25 rpm", "25 rpm"),
    ],
)
def test_text_for_people(value: float, kind: str, metric: str, us: str) -> None:
    assert units.as_text(value, kind) == metric
    assert units.as_text(value, kind, "us") == us


def test_an_unknown_system_is_refused() -> None:
    with pytest.raises(UnknownName, match='system "imperial" is not known; there are: metric, us'):
        units.as_text(1.0, "mass", "imperial")  # type: ignore[arg-type]


@given(
    value=st.floats(min_value=1e-3, max_value=1e4),
    kind=st.sampled_from(["mass", "length", "time", "power", "share", "gain", "rotation_speed"]),
    system=st.sampled_from(["metric", "us"]),
)
def test_exact_text_reads_back_to_the_same_number(
    value: float, kind: str, system: units.System
) -> None:
    assert units.parse(units.exact_text(value, kind, system), kind) == value


@given(celsius=st.integers(min_value=-400, max_value=3000))
def test_exact_text_of_a_temperature_is_short(celsius: int) -> None:
    value = units.temperature(f"{celsius / 10} degC")
    for system in ("metric", "us"):
        text = units.exact_text(value, "temperature", system)  # type: ignore[arg-type]
        assert units.temperature(text) == value
        assert len(text) <= len("-1234.56 degC")


# 22 degC = 71.6 degF and 36 degF = 2.2222... degC, exact
def test_exact_text_keeps_to_its_system_where_that_is_short() -> None:
    assert units.exact_text(295.15, "temperature", "us") == "71.6 degF"
    assert units.exact_text(units.temperature("36 degF"), "temperature") == "36 degF"
    assert units.exact_text(8.0, "mass", "us") == "8 kg"
    assert units.exact_text(20 * POUND, "mass", "us") == "20 lb"


def test_the_registry_is_made_at_first_use_only() -> None:
    code = (
        "import sys, kettlecast.units as u, kettlecast.recipe_file, kettlecast.foods;"
        "print(u._registry.cache_info().currsize); u.mass('1 kg');"
        "print(u._registry.cache_info().currsize)"
    )
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert done.stdout.split() == ["0", "1"]


def test_results_are_plain_floats_that_pickle() -> None:
    value = units.mass("20 lb")
    assert type(value) is float
    assert math.isclose(pickle.loads(pickle.dumps(value)), 20 * POUND, rel_tol=1e-12)
