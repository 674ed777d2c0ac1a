"""Which units each kind of quantity may be written in, and what pint calls them."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType

from .unit_kind import Kind
from .unit_tables_heat import ENGINEERING


def _lengths() -> dict[str, str]:
    inches = dict.fromkeys(("in", "inch", "inches"), "inch")
    return {"m": "meter", "cm": "centimeter", "mm": "millimeter", "ft": "foot", **inches}


def _temperatures(celsius: str, fahrenheit: str) -> dict[str, str]:
    spellings = {"K": "kelvin"}
    spellings |= dict.fromkeys(("degC", "\N{DEGREE SIGN}C", "C"), celsius)
    return spellings | dict.fromkeys(("degF", "\N{DEGREE SIGN}F", "F"), fahrenheit)


_VOLUMES = {
    **dict.fromkeys(("L", "l"), "liter"),
    **dict.fromkeys(("mL", "ml"), "milliliter"),
    **dict.fromkeys(("m3", "m^3", "m\N{SUPERSCRIPT THREE}"), "meter**3"),
    **dict.fromkeys(("fl oz", "floz"), "US_fluid_ounce"),
    **dict.fromkeys(("gal", "gallon", "gallons"), "US_liquid_gallon"),
    **dict.fromkeys(("qt", "quart", "quarts"), "US_liquid_quart"),
    **dict.fromkeys(("pt", "pint", "pints"), "US_liquid_pint"),
    "cup": "US_liquid_cup",
}

_PRESSURES = {
    "Pa": "pascal",
    "hPa": "hectopascal",
    "kPa": "kilopascal",
    "MPa": "megapascal",
    "mbar": "millibar",
    "bar": "bar",
    "atm": "standard_atmosphere",
    "inHg": "inch_Hg",
    "mmHg": "millimeter_Hg",
    **dict.fromkeys(("psi", "psia"), "pound_force_per_square_inch"),
}

#: Gauge pressures and the absolute unit they count in.
GAUGE: Mapping[str, str] = MappingProxyType(
    {"psig": "psi", "barg": "bar", "bar g": "bar", "kPag": "kPa", "mbarg": "mbar"}
)

_TIMES = {
    "s": "second",
    "sec": "second",
    "min": "minute",
    "h": "hour",
    "hr": "hour",
}

_TURNS = {
    **dict.fromkeys(("rpm", "1/min", "rev/min"), "1/minute"),
    **dict.fromkeys(("1/s", "rev/s"), "1/second"),
}

_POWERS = {
    "W": "watt",
    "kW": "kilowatt",
    # the table Btu, as engineers use it; pint's plain "Btu" is another one
    **dict.fromkeys(("BTU/h", "Btu/h", "BTU/hr", "Btu/hr"), "Btu_it/hour"),
    **dict.fromkeys(("MBH", "kBtu/h"), "kiloBtu_it/hour"),
    "kJ/h": "kilojoule/hour",
    "kcal/h": "kilointernational_calorie/hour",
    **dict.fromkeys(("boiler hp", "BHP"), "boiler_horsepower"),
    "hp": "horsepower",
    **dict.fromkeys(("TR", "ton of refrigeration"), "refrigeration_ton"),
}

_MASSES = {
    "kg": "kilogram",
    "g": "gram",
    **dict.fromkeys(("lb", "lbs"), "pound"),
    "oz": "ounce",
    "t": "metric_ton",
}

_GAINS = {
    "%/K": "percent/kelvin",
    "1/K": "1/kelvin",
    "%/degC": "percent/delta_degC",
    "%/degF": "percent/delta_degF",
}

#: Every kind of quantity by name.
KINDS: Mapping[str, Kind] = MappingProxyType(
    {
        "temperature": Kind(
            si="kelvin",
            si_unit="K",
            example="165 degF",
            allowed="degC, degF, K",
            units=_temperatures("degC", "degF"),
            metric=("degC",),
            us=("degF",),
        ),
        "temperature_difference": Kind(
            si="kelvin",
            si_unit="K",
            example="2 K",
            allowed="K, degC, degF",
            units=_temperatures("delta_degC", "delta_degF"),
            metric=("K",),
            us=("degF",),
        ),
        "mass": Kind(
            si="kilogram",
            si_unit="kg",
            example="12 kg",
            allowed="kg, g, lb, oz, t",
            units=_MASSES,
            metric=("kg", "g"),
            us=("lb", "oz"),
        ),
        "length": Kind(
            si="meter",
            si_unit="m",
            example="8 mm",
            allowed="m, cm, mm, in, ft",
            units=_lengths(),
            metric=("m", "mm"),
            us=("in",),
        ),
        "altitude": Kind(
            si="meter",
            si_unit="m",
            example="1600 m",
            allowed="m, km, ft",
            units={"m": "meter", "km": "kilometer", "ft": "foot"},
            metric=("m",),
            us=("ft",),
        ),
        "power": Kind(
            si="watt",
            si_unit="W",
            example="18 kW",
            allowed="W, kW, BTU/h, MBH, kJ/h, kcal/h, boiler hp, hp, TR",
            units=_POWERS,
            metric=("kW", "W"),
            us=("kW", "W"),  # electric ratings are in kW there too
        ),
        "time": Kind(
            si="second",
            si_unit="s",
            example="25 min",
            allowed='s, min, h, or "1:30" (min:s), "1:30:00" (h:min:s)',
            units=_TIMES,
            metric=("h", "min", "s"),
            us=("h", "min", "s"),
        ),
        "volume": Kind(
            si="meter**3",
            si_unit="m3",
            example="40 L",
            allowed="L, mL, m3, gal, qt, pt, cup, fl oz",
            units=_VOLUMES,
            metric=("L", "mL"),
            us=("gal", "fl oz"),
        ),
        "pressure": Kind(
            si="pascal",
            si_unit="Pa",
            example="1002 hPa",
            allowed="Pa, hPa, kPa, MPa, mbar, bar, atm, psi, inHg, mmHg, and psig, barg",
            units=_PRESSURES,
            metric=("hPa", "Pa"),
            us=("psi",),
        ),
        "gauge_pressure": Kind(
            si="pascal",
            si_unit="Pa",
            example="10 psig",
            allowed="psig, barg, kPag, mbarg",
            units={unit: _PRESSURES[absolute] for unit, absolute in GAUGE.items()},
            metric=("barg",),
            us=("psig",),
        ),
        "angle": Kind(
            si="radian",
            si_unit="rad",
            example="15 deg",
            allowed="deg, rad",
            units={"deg": "degree", "rad": "radian"},
            metric=("deg",),
            us=("deg",),
        ),
        "rotation_speed": Kind(
            si="1/second",
            si_unit="1/s",
            example="25 rpm",
            allowed="rpm, 1/min, 1/s",
            units=_TURNS,
            metric=("rpm",),
            us=("rpm",),
        ),
        "speed": Kind(
            si="meter/second",
            si_unit="m/s",
            example="0.1 m/s",
            allowed="m/s, ft/min",
            units={"m/s": "meter/second", "ft/min": "foot/minute"},
            metric=("m/s",),
            us=("ft/min",),
        ),
        "share": Kind(
            si="dimensionless",
            si_unit="1",
            example="60 %",
            allowed="%",
            units={"%": "percent", "1": "dimensionless"},
            metric=("%",),
            us=("%",),
        ),
        "gain": Kind(
            si="1/kelvin",
            si_unit="1/K",
            example="10 %/K",
            allowed="%/K, %/degF, 1/K",
            units=_GAINS,
            metric=("%/K",),
            us=("%/degF",),
        ),
        **ENGINEERING,
    }
)
