"""Units of heat, properties and flows, as engineers and data sheets write them.

Btu and kcal are those of the International Table (1 Btu/lb = 2326 J/kg exactly, 1 kcal = 4.1868
kJ), in which steam tables and heat-transfer handbooks are printed; those of food labels differ by
0.07 %.
"""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType

from .unit_kind import Kind

_BTU, _KCAL, _DEGREE = "Btu_it", "kilointernational_calorie", "delta_degF"
_HOUR_FOOT = f"{_BTU}/hour/foot"


def _each(spellings: str, unit: str) -> dict[str, str]:
    """One unit under several spellings, divided by bars."""
    return dict.fromkeys(spellings.split("|"), unit)


def _kind(si: tuple[str, str], example: str, units: dict[str, str], us: tuple[str, ...]) -> Kind:
    """A kind whose metric output is its SI unit; `si` as pint and as people write it."""
    written = {si[1]: si[0], **units}
    first = [text for text, unit in written.items() if text == _first_of(unit, written)]
    return Kind(si[0], si[1], example, ", ".join(first), written, (si[1],), us)


def _first_of(unit: str, written: Mapping[str, str]) -> str:
    """The first of several spellings of a unit; error messages offer only that one."""
    return next(text for text, one in written.items() if one == unit)


_ENERGY = {
    "J": "joule",
    "kJ": "kilojoule",
    "MJ": "megajoule",
    "Wh": "watt_hour",
    "kWh": "kilowatt_hour",
    **_each("kcal", _KCAL),
    **_each("Btu|BTU", _BTU),
    "therm": "therm",
}
_SPECIFIC_HEATS = {
    "kJ/(kg K)": "kilojoule/kilogram/kelvin",
    **_each("kcal/(kg K)|kcal/(kg degC)", f"{_KCAL}/kilogram/kelvin"),
    **_each("Btu/(lb degF)|BTU/(lb degF)|Btu/(lb F)", f"{_BTU}/pound/{_DEGREE}"),
}
_SPECIFIC_ENERGIES = {
    "kJ/kg": "kilojoule/kilogram",
    "kcal/kg": f"{_KCAL}/kilogram",
    **_each("Btu/lb|BTU/lb", f"{_BTU}/pound"),
}
_VISCOSITIES = {"mPa s": "millipascal*second", **_each("cP|cp", "centipoise"), "P": "poise"}
_COEFFICIENTS = {
    "kW/(m2 K)": "kilowatt/meter**2/kelvin",
    **_each("kcal/(h m2 K)|kcal/(h m2 degC)", f"{_KCAL}/hour/meter**2/kelvin"),
    **_each("Btu/(h ft2 degF)|BTU/(h ft2 degF)|Btu/(h ft2 F)", f"{_HOUR_FOOT}**2/{_DEGREE}"),
}
_CONDUCTIVITIES = {
    "mW/(m K)": "milliwatt/meter/kelvin",
    **_each("Btu/(h ft degF)|BTU/(h ft degF)|Btu/(h ft F)", f"{_HOUR_FOOT}/{_DEGREE}"),
}
_FLUXES = {
    "kW/m2": "kilowatt/meter**2",
    "W/cm2": "watt/centimeter**2",
    "W/in2": "watt/inch**2",
    **_each("Btu/(h ft2)|BTU/(h ft2)", f"{_HOUR_FOOT}**2"),
}
_DENSITIES = {
    **_each("g/cm3|g/mL|kg/L", "gram/centimeter**3"),
    "lb/ft3": "pound/foot**3",
    "lb/gal": "pound/US_liquid_gallon",
}
_MASS_FLOWS = {
    "kg/s": "kilogram/second",
    "kg/min": "kilogram/minute",
    "kg/h": "kilogram/hour",
    "g/s": "gram/second",
    "lb/min": "pound/minute",
    "lb/h": "pound/hour",
}
_AREAS = {"cm2": "centimeter**2", "ft2": "foot**2", "in2": "inch**2"}

#: Kinds by name, taken over by `unit_tables.KINDS`.
ENGINEERING: Mapping[str, Kind] = MappingProxyType(
    {
        "energy": Kind(
            si="joule",
            si_unit="J",
            example="12 kWh",
            allowed="J, kJ, MJ, Wh, kWh, kcal, Btu, therm",
            units=_ENERGY,
            metric=("kWh", "kJ", "J"),
            us=("kWh", "Btu"),
        ),
        "specific_heat": _kind(
            ("joule/kilogram/kelvin", "J/(kg K)"),
            "4186 J/(kg K)",
            _SPECIFIC_HEATS,
            ("Btu/(lb degF)",),
        ),
        "specific_energy": _kind(
            ("joule/kilogram", "J/kg"), "2257 kJ/kg", _SPECIFIC_ENERGIES, ("Btu/lb",)
        ),
        "viscosity": _kind(("pascal*second", "Pa s"), "50 mPa s", _VISCOSITIES, ("cP",)),
        "heat_transfer_coefficient": _kind(
            ("watt/meter**2/kelvin", "W/(m2 K)"),
            "800 W/(m2 K)",
            _COEFFICIENTS,
            ("Btu/(h ft2 degF)",),
        ),
        "conductivity": _kind(
            ("watt/meter/kelvin", "W/(m K)"), "0.6 W/(m K)", _CONDUCTIVITIES, ("Btu/(h ft degF)",)
        ),
        "heat_flux": _kind(("watt/meter**2", "W/m2"), "3 W/cm2", _FLUXES, ("W/in2",)),
        "density": _kind(("kilogram/meter**3", "kg/m3"), "1040 kg/m3", _DENSITIES, ("lb/ft3",)),
        "mass_flow": _kind(("kilogram/second", "kg/s"), "45 kg/h", _MASS_FLOWS, ("lb/h",)),
        "area": _kind(("meter**2", "m2"), "0.5 m2", _AREAS, ("ft2",)),
    }
)
