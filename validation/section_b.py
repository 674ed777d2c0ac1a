"""Water, steam and the standard atmosphere (section B)."""

from __future__ import annotations

from collections.abc import Callable, Mapping

from case_file import ICE, ONE_ATMOSPHERE, Limit, Row, number, stated_limit

import kettlecast as kc
from kettlecast import units

REASONS: Mapping[str, str] = {}

Value = Callable[[float], float]  #: of the temperature [K]

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


def value(row: Row) -> float | None:
    quantity, text = row["quantity"], f"{row['inputs']} {row['title']}"
    altitude = number("(?:Z=|altitude)", text)
    if altitude is not None:
        return _altitude_value(row, altitude)
    value = _water(quantity)
    pressure = number(r"\bp", text)
    if quantity == "Tsat":
        return _boiling(row, pressure)
    gauge = number("pressure", row["inputs"])
    kelvin = number(r"\bT", text)
    celsius = number(r"\bt", row["inputs"])
    if gauge is not None:
        return _steam(quantity, gauge, row["unit"])
    if kelvin is None and celsius is not None:
        kelvin = celsius + ICE
    given_density = "rho=" in text and quantity != "rho"
    far_from_saturation = "3 MPa" in text or given_density
    if value is None or kelvin is None or far_from_saturation:
        return None
    return float(value(kelvin)) * WATER_SCALE.get(row["unit"], 1.0)


def _saturation(pressure: float) -> float:
    return float(kc.properties.water.saturation_temperature(pressure))


def _steam(quantity: str, gauge: float, unit: str) -> float | None:
    """Steam of a jacket at a gauge pressure [psi] over one atmosphere."""
    steam = kc.properties.steam
    pressure = units.pressure(f"{gauge} psi")
    if quantity == "Tsat":
        return steam.temperature(pressure, ONE_ATMOSPHERE) - ICE
    plain = {"h_fg": steam.latent_heat, "rho vapour": steam.density}.get(quantity)
    return None if plain is None else plain(pressure, ONE_ATMOSPHERE) * WATER_SCALE.get(unit, 1.0)


def _boiling(row: Row, pressure: float | None) -> float | None:
    gauge = number("pressure", row["inputs"])
    if gauge is not None:
        return _steam("Tsat", gauge, row["unit"])
    return None if pressure is None else _saturation(1e6 * pressure)


def _altitude_value(row: Row, altitude: float) -> float | None:
    pressure = float(kc.properties.pressure_at_altitude(altitude))
    if row["quantity"] == "Tboil":
        name = "degF" if "F" in row["unit"] else "degC"
        return float(units.in_unit(_saturation(pressure), name, "temperature"))
    return pressure if row["quantity"] == "p" else None


def limit(row: Row) -> Limit:
    """As stated, but no tighter than the error that the docstring of a fit states."""
    if row["id"] in SHOWN and row["quantity"] not in LIMITED:
        return Limit(None)
    stated = stated_limit(row)
    fitted = WATER_FIT.get(row["quantity"], 0.0)
    if not stated.of_expected or stated.value is None:
        return stated
    return Limit(max(stated.value, fitted))
