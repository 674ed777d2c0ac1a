"""Edible oils (section D)."""

from __future__ import annotations

import re
from collections.abc import Mapping

from case_file import ICE, Limit, Row, number, stated_limit

import kettlecast as kc

REASONS: Mapping[str, str] = {}


def value(row: Row) -> float | None:
    """Answer of the library to a row, by the subject that its title names."""
    title, quantity = row["title"], row["quantity"]
    if title.startswith("smoke point"):
        return _smoke_point(row)
    if title.startswith("Arrhenius"):
        return _fall(row)
    if title.startswith("range check"):
        low, high = (float(kelvin) for kelvin in re.findall(r"[\d.]+(?= ?K|\u2013)", row["inputs"]))
        return 1e3 * float(kc.properties.oil.viscosity(high if "hot" in quantity else low))
    celsius = number("", row["inputs"].removeprefix("pure fat, "))
    if celsius is None:
        return None
    if "component" in title:
        return _fat(quantity, celsius + ICE)
    if title.startswith("oil viscosity"):
        return kc.oils.viscosity(quantity, celsius + ICE)
    return _mean_oil(quantity, celsius + ICE)


def _smoke_point(row: Row) -> float | None:
    name = re.sub(r"\(.*?\)", "", row["title"].removeprefix("smoke point:"))
    try:
        point = kc.oils.oil(name.split("/")[0]).smoke_point
    except kc.UnknownName:
        return None
    return None if point is None else point[0 if row["quantity"] == "low" else 1] - ICE


def _fall(row: Row) -> float | None:
    energy = number("Ea", row["inputs"])
    found = re.search(r"(\d+)\u2192(\d+)", row["inputs"])
    if energy is None or found is None:
        return None
    start, end = float(found[1]) + ICE, float(found[2]) + ICE
    return kc.properties.oil.arrhenius_viscosity(1.0, start, 1e3 * energy, end)


def _fat(quantity: str, kelvin: float) -> float | None:
    foods, fat = kc.properties.foods, kc.food("cooking oil")
    scale = {
        "rho": (foods.density, 1.0),
        "cp": (foods.specific_heat, 1e-3),
        "k": (foods.conductivity, 1.0),
    }
    if quantity not in scale:
        return None
    function, factor = scale[quantity]
    return float(function(fat, kelvin)) * factor


def _mean_oil(quantity: str, kelvin: float) -> float | None:
    oil = kc.properties.oil
    scale = {"rho": (oil.density, 1.0), "mu": (oil.viscosity, 1e3), "cp": (oil.specific_heat, 1e-3)}
    if quantity not in scale:
        return None
    function, factor = scale[quantity]
    return float(function(kelvin)) * factor


def limit(row: Row) -> Limit:
    """As stated; the ends of a range of thirteen oils are shown beside the mean oil."""
    return Limit(None) if row["tolerance"] == "range" else stated_limit(row)
