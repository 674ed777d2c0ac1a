"""Foods from composition (section A)."""

from __future__ import annotations

from collections.abc import Mapping

from case_file import ICE, Row, number

import kettlecast as kc

REASONS: Mapping[str, str] = {}

COMPONENTS = ("water", "protein", "carbohydrate", "fibre", "fat", "ash")


def _food(row: Row) -> tuple[kc.Food, float] | None:
    """Food of a row and the sum of its mass fractions as printed."""
    title, inputs = row["title"], row["inputs"]
    for name in COMPONENTS:
        if f"polynomial: {name} at" in title:
            return _made(**{name: 1.0}), 1.0
    if "mixture rules" in title or "ASHRAE Table 3" in title:
        parts = {name: number(name, inputs) or 0.0 for name in ("water", "protein", "fat", "ash")}
        fibre = number("of which fibre", inputs) or 0.0
        parts |= {"carbohydrate": (number("carbohydrate", inputs) or 0.0) - fibre, "fibre": fibre}
        whole = sum(parts.values())
        return _made(**{name: part / whole for name, part in parts.items()}), whole / 100.0
    return None


def _made(**parts: float) -> kc.Food:
    zero = dict.fromkeys(("water", "protein", "fat", "carbohydrate", "fibre", "ash"), 0.0)
    return kc.Food(name="case", composition=kc.Composition(**(zero | parts)))


def value(row: Row) -> float | None:
    found, foods = _food(row), kc.properties.foods
    celsius = number(" T", " " + row["inputs"])
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
