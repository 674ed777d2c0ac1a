"""Foods from composition (section A).

Averages over 0-100 degC that name no temperature are compared with the estimate that has none
(Heldman & Singh); Choi & Okos, which the model uses, lie 4 % above the table for lean beef.
"""

from __future__ import annotations

import re
from collections.abc import Mapping

from case_file import ICE, Row, number

import kettlecast as kc

REASONS: Mapping[str, str] = {
    "A-46": "the table gives no water content; by any mixing rule 4.02 kJ/(kg K) takes 95 % water",
    "A-53": "ice at 20 degC does not exist; 1.958 kJ/(kg K) is that of ice at -17 degC",
}

PARTS = ("water", "protein", "fat", "carbohydrate", "fibre", "ash")


def value(row: Row) -> float | None:
    title = row["title"]
    if "component property" in title:
        return _component(row)
    if "heat capacity" in title:
        return _tabulated(row)
    if "ice fraction" in title:
        return _ice(row)
    return _mixed(row)


def _made(parts: Mapping[str, float], freezing_point: float | None = None) -> kc.Food:
    composition = kc.Composition(**(dict.fromkeys(PARTS, 0.0) | parts))
    onset = 0.0 if freezing_point is None else freezing_point
    return kc.Food(name="case", composition=composition, freezing_point=onset + ICE)


def _component(row: Row) -> float | None:
    """A property of one component alone."""
    found = re.search(r"polynomial: (\w+)", row["title"])
    celsius = number(" T", " " + row["inputs"])
    if found is None or celsius is None:
        return None
    name = "supercooled_water" if found[1] == "water" and celsius < 0.0 else found[1]
    part = getattr(kc.properties.components, name)
    functions = {
        "cp": (part.specific_heat, 1e-3),
        "k": (part.conductivity, 1.0),
        "rho": (part.density, 1.0),
    }
    function, scale = functions[row["quantity"]]
    return scale * float(function(celsius + ICE))


def _tabulated(row: Row) -> float | None:
    """Specific heat of a food by its name, its dry matter scaled to the water of the table."""
    label = row["title"].split(":", 1)[1]
    water = number("water", row["inputs"])
    if water is None or "not given" in row["inputs"]:
        return None
    found = _named(re.split(r"[\d(]", label)[0])
    if found is None:
        return None
    parts = {name: getattr(found.composition, name) for name in PARTS}
    dry = sum(parts.values()) - parts["water"]
    scale = (1.0 - 0.01 * water) / dry if dry > 0.0 else 0.0
    parts = {name: scale * part for name, part in parts.items()} | {"water": 0.01 * water}
    food, foods = _made(parts), kc.properties.foods
    celsius = number("", label)
    if celsius is None:
        return 1e-3 * foods.heldman_singh_specific_heat(food)
    return 1e-3 * foods.specific_heat(food, celsius + ICE)


def _named(label: str) -> kc.Food | None:
    """The bundled food that a label means: `Beef, lean` is beef, `Milk whole` is milk."""
    words = label.replace(",", " ").split()
    for count in range(len(words), 0, -1):
        try:
            return kc.food(" ".join(words[:count]))
        except kc.UnknownName:
            continue
    return None


def _ice(row: Row) -> float | None:
    """Ice of a food of which water, freezing point and temperature are given."""
    inputs = row["inputs"]
    water, onset = number("xwo", inputs), number("tf", inputs)
    celsius, mass = number(r"\bt", inputs), number(r"^", inputs)
    if water is None or onset is None or celsius is None:
        return None
    protein = number("xp", inputs) or 0.0
    food = _made({"water": water, "protein": protein, "fat": 1.0 - water - protein}, onset)
    foods = kc.properties.foods
    by = foods.ice_fraction if "Miles" in inputs else foods.tchigeov_ice_fraction
    ice = by(food, celsius + ICE)
    shares = {"x_ice": ice, "frozen water": ice, "unfrozen water": water - ice}
    share = shares.get(row["quantity"])
    return share if share is None or row["unit"] != "kg" else share * (mass or 1.0)


def _mixed(row: Row) -> float | None:
    """A property of a food by its composition, in per cent as printed."""
    inputs, quantity, foods = row["inputs"], row["quantity"], kc.properties.foods
    parts = {name: 0.01 * (number(name, inputs) or 0.0) for name in PARTS}
    parts["fibre"] = 0.01 * (number("fibre", inputs) or 0.0)
    if "of which fibre" in inputs:
        parts["carbohydrate"] -= parts["fibre"]
    onset = number("freezing point", inputs)
    food = _made(parts, onset)
    given = number(" T", " " + inputs)
    kelvin = (20.0 if given is None else given) + ICE
    if quantity.startswith("cp below freezing"):
        coldest = number("at", quantity)
        if coldest is None or onset is None:
            return None
        return 1e-3 * foods.chen_specific_heat(food, coldest + ICE)
    if quantity.startswith("cp above freezing"):  # there the fractions are not scaled to 1
        return 1e-3 * sum(parts.values()) * foods.specific_heat(food, kelvin)
    if quantity == "latent heat":
        return 1e-3 * foods.latent_heat(food)
    if kelvin < ICE:
        return _frozen(quantity, food, kelvin)
    unfrozen = {
        "cp": lambda: 1e-3 * foods.specific_heat(food, kelvin),
        "rho": lambda: foods.density(food, kelvin),
        "k": lambda: foods.conductivity(food, kelvin),
        "k parallel": lambda: foods.conductivity(food, kelvin),
        "k perpendicular": lambda: foods.series_conductivity(food, kelvin),
    }
    return unfrozen[quantity]() if quantity in unfrozen else None


def _frozen(quantity: str, food: kc.Food, kelvin: float) -> float | None:
    """Below the freezing point, with the ice of Tchigeov's equation as in the handbook."""
    foods = kc.properties.foods
    ice = foods.tchigeov_ice_fraction(food, kelvin)
    functions = {
        "rho": foods.frozen_density,
        "k": foods.frozen_conductivity,
        "k parallel": foods.frozen_conductivity,
        "k perpendicular": foods.frozen_series_conductivity,
    }
    function = functions.get(quantity)
    return ice if quantity == "x_ice" else function and function(food, kelvin, ice)
