"""Water, steam and the standard atmosphere (section B)."""

from __future__ import annotations

from collections.abc import Callable, Mapping

from case_file import ICE, ONE_ATMOSPHERE, Row, number

import kettlecast as kc
from kettlecast import units

REASONS: Mapping[str, str] = {}

Value = Callable[[float], float]  #: of the temperature [K]

WATER_SCALE = {
    "kPa": 1e-3,
    "MPa": 1e-6,
    "MPa/K": 1e-6,
    "kJ/(kg K)": 1e-3,
    "kJ/kg": 1e-3,
    "µPa s": 1e6,
    "mW/(m K)": 1e3,
    "mN/m": 1e3,
    "Btu_IT/lb": 1.0 / 2326.0,
}


def _states(name: str, text: str) -> Value | None:
    """What a released equation gives, when a row names the release or leaves saturation."""
    states = kc.properties.water_states
    if "SR6-08" in text:
        return {
            "rho": states.ambient_density,
            "cp": states.ambient_specific_heat,
            "mu": states.ambient_viscosity,
            "k": states.ambient_conductivity,
        }.get(name)
    if "SR1-86" in text:
        return {
            "psat": states.saturation_pressure,
            "dp/dT": states.saturation_pressure_slope,
            "rho liquid": states.saturated_liquid_density,
            "rho vapour": states.saturated_vapour_density,
            "h liquid": states.saturated_liquid_enthalpy,
            "h vapour": states.saturated_vapour_enthalpy,
        }.get(name)
    density, megapascal = number("rho", text), number(r"\bp", text)
    if density is not None and name in ("mu", "k"):
        function = states.viscosity if name == "mu" else states.conductivity
        return lambda t: function(density, t)
    compressed = {
        "v": states.compressed_volume,
        "rho": states.compressed_density,
        "h": states.compressed_enthalpy,
        "cp": states.compressed_specific_heat,
    }.get(name)
    if compressed is None or megapascal is None:
        return states.surface_tension if name == "sigma" else None
    return lambda t: compressed(t, 1e6 * megapascal)


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
    value = _states(quantity, text) or _water(quantity)
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
    if value is None or kelvin is None:
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
    properties = kc.properties
    pressure = float(properties.pressure_at_altitude(altitude))
    if row["quantity"] == "Tboil":
        name = "degF" if "F" in row["unit"] else "degC"
        return float(units.in_unit(_saturation(pressure), name, "temperature"))
    found = {
        "p": pressure,
        "T": float(properties.temperature_at_altitude(altitude)),
        "rho": float(properties.density_at_altitude(altitude)),
    }
    return found.get(row["quantity"])
