"""Sugar syrup, brine and the stages of cooked sugar (section C)."""

from __future__ import annotations

from collections.abc import Mapping

from case_file import ICE, ONE_ATMOSPHERE, Limit, Row, number, stated_limit

import kettlecast as kc

REASONS: Mapping[str, str] = {
    "C-17": "a misprint: 240 degF stands beside 121 degC, 250 is meant and held by the library"
}

#: Tables of saturated density hold 1000 times the relative density of this temperature [K].
TABLE_TEMPERATURE = ICE + 17.5


def value(row: Row) -> float | None:
    """Answer of the library to a row, by the subject that its title names."""
    title = row["title"]
    if title.startswith("candy stage"):
        return _stage(row)
    if "NaCl" in title or "seawater" in title:
        return _brine(row)
    if "solubility" in title:
        return _saturation(row)
    if "Baum" in title:
        brix = _number_before("°Brix", row["inputs"])
        return None if brix is None else float(kc.properties.sugar.baume(0.01 * brix))
    return _syrup(row)


def _number_before(unit: str, text: str) -> float | None:
    words = text.split(unit)[0].split()
    return float(words[-1].strip(",")) if len(text.split(unit)) > 1 and words else None


def _stage(row: Row) -> float | None:
    misprint, broken, _ = row["note"].partition("does not match")
    if broken and f"printed {float(row['expected']):g} {row['unit']}" in misprint:
        return None
    try:
        stage = kc.candy.stage(row["title"].removeprefix("candy stage "))
    except kc.UnknownName:
        return None
    if row["quantity"] == "sugar":
        return None if stage.sugar is None else 100.0 * stage.sugar
    fahrenheit = row["unit"].endswith("F")
    printed = stage.degrees_fahrenheit if fahrenheit else stage.degrees_celsius
    return float(printed[0 if row["quantity"] == "from" else 1])


def _brine(row: Row) -> float | None:
    salt = kc.properties.salt
    salinity = number(r"\bS", row["inputs"])
    if "saturated" in row["title"]:
        return salt.saturated_boiling_temperature(ONE_ATMOSPHERE) - ICE
    if salinity is not None:
        return salt.sea_salt_elevation(salinity, ONE_ATMOSPHERE)
    percent = _number_before("% NaCl", row["inputs"])
    return None if percent is None else salt.boiling_elevation(0.01 * percent, ONE_ATMOSPHERE)


def _saturation(row: Row) -> float | None:
    sugar, celsius = kc.properties.sugar, number(r"\bt", row["inputs"])
    if celsius is None:
        return None
    saturated = sugar.saturation(celsius + ICE)
    if row["quantity"] == "saturation":
        return 100.0 * saturated
    return 1e3 * sugar.relative_density(saturated, TABLE_TEMPERATURE)


def _syrup(row: Row) -> float | None:
    sugar, title, quantity = kc.properties.sugar, row["title"], row["quantity"]
    if "boiling-point elevation" in title:
        percent = number("elevation at ", quantity)
        return None if percent is None else sugar.boiling_elevation(0.01 * percent, ONE_ATMOSPHERE)
    if "boiling point" in title:
        percent = _number_before("g sucrose", row["inputs"])
        if percent is None:
            return None
        return sugar.boiling_temperature(0.01 * percent, ONE_ATMOSPHERE) - ICE
    celsius = _number_before("°C", row["inputs"]) if "visc" in title else number("cp at", quantity)
    if celsius is None:
        return None
    if "solid sucrose" in title:
        return 1e-3 * sugar.solid_specific_heat(celsius + ICE)
    percent = _number_before("mass %", row["inputs"])
    return None if percent is None else 1e3 * sugar.viscosity(0.01 * percent, celsius + ICE)


def limit(row: Row) -> Limit:
    """As stated; that of boiling syrup depends on its sugar."""
    stated = stated_limit(row)
    percent = _number_before("g sucrose", row["inputs"])
    if stated.value is None or percent is None:
        return stated
    return Limit(0.5 if percent <= 60 else 1.3 if percent <= 86 else 5.0, of_expected=False)
