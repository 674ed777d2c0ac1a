"""Published values that Python can reach: foods (A), water (B), oil (D) and units (L).

A row of the case files counts as "source number" if its expected value is printed in the source
(or recalled from it), as "own number" if it was computed from the source's equations. Limits are
those of the case files, widened to the error that the docstring of a fitted polynomial states.
Rows that the public properties cannot express are left out and counted. Rows of water by another
formulation or at another pressure than saturation differ by more than their digits: shown only.
"""

from __future__ import annotations

import csv
import re
from collections.abc import Callable, Mapping
from pathlib import Path

from case import SHARED, Case, Outcome, absent, absolute, relative

import kettlecast as kc
from kettlecast import units

TITLE = "Published values of foods, water, oil and units"
FOLDER = SHARED / "checks" / "cases"
ICE = 273.15
ONE_ATMOSPHERE = 101325.0

Row = Mapping[str, str]
Value = Callable[[float], float]  #: of the temperature [degC], in the unit of the row

#: Relative error stated for the fits of properties/water.hpp; saturation is IAPWS-IF97 itself.
WATER_FIT = {
    "cp": 5.1e-5,
    "rho": 8.2e-6,
    "k": 8.5e-5,
    "mu": 3.8e-5,
    "h_fg": 1.1e-5,
    "sigma": 2.5e-5,
    "rho vapour": 1e-5,
    "Pr": 1.8e-4,
}
WATER_SCALE = {
    "kPa": 1e-3,
    "MPa": 1e-6,
    "kJ/(kg K)": 1e-3,
    "kJ/kg": 1e-3,
    "µPa s": 1e6,
    "mW/(m K)": 1e3,
    "mN/m": 1e3,
    "Btu_IT/lb": 1.0 / 2326.0,
}

#: Formulation SR1-86 (density and enthalpy), and liquid at 0.1 MPa instead of saturation.
SHOWN = {"B-22", "B-24"}
LIMITED = {"psat", "dp/dT"}  #: of the rows shown, those that are compared all the same

COMPONENTS = ("water", "protein", "carbohydrate", "fibre")


def rows(section: str) -> list[Row]:
    """Rows of one case file."""
    path = FOLDER / f"{section}_cases.csv"
    lines = path.read_text(encoding="utf-8").splitlines()
    return list(csv.DictReader(line for line in lines if not line.startswith("#")))


def _number(pattern: str, text: str) -> float | None:
    found = re.search(pattern + r"\s*=?\s*([-\u2212]?[\d.]+)", text)
    return None if found is None else float(found[1].replace("\u2212", "-"))


def _water(name: str) -> Value | None:
    water = kc.properties.water
    plain: dict[str, Callable[[float], float]] = {
        "psat": water.saturation_pressure,
        "pws": water.saturation_pressure,
        "rho": water.density,
        "rho liquid": water.density,
        "cp": water.specific_heat,
        "h_fg": water.latent_heat,
        "mu": water.viscosity,
        "k": water.conductivity,
        "sigma": water.surface_tension,
        "rho vapour": water.vapour_density,
        "Pr": lambda t: water.specific_heat(t) * water.viscosity(t) / water.conductivity(t),
        "h liquid": water.specific_enthalpy,
        "h vapour": lambda t: water.specific_enthalpy(t) + water.latent_heat(t),
    }
    return plain.get(name)


def _food(row: Row) -> tuple[kc.Food, float] | None:
    """Food of a row and the sum of its mass fractions as printed."""
    title, inputs = row["title"], row["inputs"]
    for name in COMPONENTS:
        if f"polynomial: {name} at" in title:
            return _made(**{name: 1.0}), 1.0
    if "mixture rules" in title or "ASHRAE Table 3" in title:
        parts = {name: _number(name, inputs) or 0.0 for name in ("water", "protein", "fat", "ash")}
        fibre = _number("of which fibre", inputs) or 0.0
        parts |= {"carbohydrate": (_number("carbohydrate", inputs) or 0.0) - fibre, "fibre": fibre}
        whole = sum(parts.values())
        return _made(**{name: part / whole for name, part in parts.items()}), whole / 100.0
    return None


def _made(**parts: float) -> kc.Food:
    zero = dict.fromkeys(("water", "protein", "fat", "carbohydrate", "fibre", "ash"), 0.0)
    return kc.Food(name="case", composition=kc.Composition(**(zero | parts)))


def _food_value(row: Row) -> float | None:
    found, foods = _food(row), kc.properties.foods
    celsius = _number(" T", " " + row["inputs"])
    if found is None or (celsius is not None and celsius < 0.0):
        return None
    food, whole = found
    kelvin = (20.0 if celsius is None else celsius) + ICE
    quantity = row["quantity"]
    if quantity == "cp":
        return 1e-3 * float(foods.specific_heat(food, kelvin))
    if quantity.startswith("cp above freezing"):  # there the fractions are not scaled to 1
        return 1e-3 * whole * float(foods.specific_heat(food, kelvin))
    if quantity == "rho":
        return float(foods.density(food, kelvin))
    if quantity in ("k", "k parallel"):
        return float(foods.conductivity(food, kelvin))
    return None


def _water_value(row: Row) -> float | None:
    quantity, text = row["quantity"], f"{row['inputs']} {row['title']}"
    altitude = _number("(?:Z=|altitude)", text)
    if altitude is not None:
        return _altitude_value(row, altitude)
    value = _water(quantity)
    pressure = _number(r"\bp", text)
    if quantity == "Tsat":
        return _boiling(row, pressure)
    gauge = _number("pressure", row["inputs"])
    kelvin = _number(r"\bT", text)
    celsius = _number(r"\bt", row["inputs"])
    if gauge is not None:
        kelvin = _saturation(units.pressure(f"{gauge} psig", ONE_ATMOSPHERE))
    elif kelvin is None and celsius is not None:
        kelvin = celsius + ICE
    given_density = "rho=" in text and quantity != "rho"
    far_from_saturation = "3 MPa" in text or given_density
    if value is None or kelvin is None or far_from_saturation:
        return None
    return float(value(kelvin)) * WATER_SCALE.get(row["unit"], 1.0)


def _saturation(pressure: float) -> float:
    return float(kc.properties.water.saturation_temperature(pressure))


def _boiling(row: Row, pressure: float | None) -> float | None:
    gauge = _number("pressure", row["inputs"])
    if gauge is not None:
        return _saturation(units.pressure(f"{gauge} psig", ONE_ATMOSPHERE)) - ICE
    return None if pressure is None else _saturation(1e6 * pressure)


def _altitude_value(row: Row, altitude: float) -> float | None:
    pressure = float(kc.properties.pressure_at_altitude(altitude))
    if row["quantity"] == "Tboil":
        name = "degF" if "F" in row["unit"] else "degC"
        return float(units.in_unit(_saturation(pressure), name, "temperature"))
    return pressure if row["quantity"] == "p" else None


def _oil_value(row: Row) -> float | None:
    """Recalled values of cooking oils at one temperature; other rows are of other models."""
    celsius = _number("", row["inputs"])
    oil, quantity = kc.properties.oil, row["quantity"]
    if celsius is None or "oil" not in row["title"] or "component" in row["title"]:
        return None
    scale = {"rho": (oil.density, 1.0), "mu": (oil.viscosity, 1e3), "cp": (oil.specific_heat, 1e-3)}
    if quantity not in scale:
        return None
    function, factor = scale[quantity]
    return float(function(celsius + ICE)) * factor


_UNITS: Mapping[str, Callable[[], float]] = {
    "unit: 1 lb": lambda: units.mass("1 lb"),
    "unit: 1 US gallon": lambda: units.volume("1 gal"),
    "temperature 32 °F": lambda: units.temperature("32 degF") - ICE,
    "temperature 70 °F": lambda: units.temperature("70 degF") - ICE,
    "temperature 135 °F": lambda: units.temperature("135 degF") - ICE,
    "temperature 165 °F": lambda: units.temperature("165 degF") - ICE,
    "temperature 212 °F": lambda: units.temperature("212 degF") - ICE,
    "temperature -40 °F": lambda: units.temperature("-40 degF") - ICE,
    "temperature DIFFERENCE 18 °F": lambda: units.temperature_difference("18 degF"),
}


def _unit_value(row: Row) -> float | None:
    made = _UNITS.get(row["title"])
    return None if made is None else made()


VALUES: Mapping[str, Callable[[Row], float | None]] = {
    "A": _food_value,
    "B": _water_value,
    "D": _oil_value,
    "L": _unit_value,
}


def _case(row: Row, got: float) -> Case:
    kind = "own number" if row["check_kind"].startswith("own number") else "source number"
    name = f"{row['id']} {row['title']}: {row['quantity']}"
    source = f"{kind}; {row['source'][:90]} ({row['status']})"
    expected = float(row["expected"])
    pair, text = (expected, got), row["tolerance"]
    if row["id"] in SHOWN and row["quantity"] not in LIMITED:
        return relative(name, source, pair, None, row["unit"])
    limit = float(re.findall(r"[\d.]+(?:e-?\d+)?", text)[0] if text != "exact" else 1e-12)
    if "%" in text:
        return relative(name, source, pair, 0.01 * limit, row["unit"])
    if "ppm" in text:
        return relative(name, source, pair, 1e-6 * limit, row["unit"])
    if "abs" in text or (row["id"].startswith("L-") and "temperature" in row["title"].lower()):
        return absolute(name, source, pair, limit, row["unit"])
    fitted = WATER_FIT.get(row["quantity"], 0.0) if row["id"].startswith("B-") else 0.0
    return relative(name, source, pair, max(limit, fitted), row["unit"])


def outcome(folder: Path) -> Outcome:
    """Compares all rows that can be reached; nothing is written to `folder`."""
    if not FOLDER.exists():
        return absent(TITLE, FOLDER)
    cases, left = [], 0
    for section, value in VALUES.items():
        for row in rows(section):
            got = value(row)
            if got is None:
                left += 1
            else:
                cases.append(_case(row, got))
    source = sum(case.source.startswith("source") for case in cases)
    notes = (
        f"{source} source numbers and {len(cases) - source} own numbers compared; "
        f"{left} rows are of quantities that the public properties do not have.",
    )
    return Outcome(TITLE, tuple(cases), notes)
