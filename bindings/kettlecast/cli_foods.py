"""What the command line tells about foods."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from typing import Any

from . import _core
from .cli_output import say, table
from .consistencies import consistency_name
from .file_model import plain_name
from .foods import bundled_foods
from .units import System, as_text

_PARTS = ("water", "protein", "fat", "carbohydrate", "fibre", "ash")
_DISSOLVED = ("sugar", "salt")


def food_plain(food: _core.Food) -> dict[str, Any]:
    """A food as plain values in SI units."""
    nested = {key: getattr(food, key).to_dict() for key in ("composition", "consistency")}
    return food.to_dict() | nested


def _shares(food: _core.Food) -> list[str]:
    shares = [getattr(food.composition, part) for part in _PARTS]
    shares += [getattr(food, part) for part in _DISSOLVED]
    return [f"{100.0 * share:.1f}" for share in shares]


def say_foods(foods: Iterable[_core.Food]) -> None:
    """Make-up of foods as a table."""
    rows = [[food.name, *_shares(food)] for food in foods]
    table(["food [% by mass]", *_PARTS, *(f"({part})" for part in _DISSOLVED)], rows)
    say(
        "Sugar is part of the carbohydrate, salt part of the ash. "
        "`kettlecast foods NAME` tells all about one."
    )


def say_food(food: _core.Food, system: System) -> None:
    """All about one food."""
    names = sorted(name for name, one in bundled_foods().items() if one == food)
    others = [name for name in names if name != plain_name(food.name)]
    say(food.name + (f" (also {', '.join(others)})" if others else ""))
    shares = dict(zip((*_PARTS, *_DISSOLVED), _shares(food), strict=True))
    for part in _PARTS:
        say(f"  {part:22}{shares[part]:>5} %")
        within = {"carbohydrate": "sugar", "ash": "salt"}.get(part)
        if within:
            say(f"  {'  of it ' + within:22}{shares[within]:>5} %")
    say(f"  {'begins to freeze at':22}{as_text(food.freezing_point, 'temperature', system)}")
    say(f"  {'juice given up':22}{100.0 * food.juice_fraction:.0f} % of the water of cooked pieces")
    for line in _consistency_lines(food.consistency, system):
        say(f"  {line}")
    say(f"  source: {food.source}")


def _consistency_lines(liquid: _core.Consistency, system: System) -> Iterator[str]:
    if liquid == _core.Consistency():
        yield f"{'consistency':22}like water, as a liquid"
        return
    yield f"{'consistency':22}{consistency_name(liquid) or 'its own'}"
    if liquid.consistency > 0.0:
        at = as_text(liquid.reference_temperature, "temperature", system)
        law = f"K = {liquid.consistency:g} Pa s^n, n = {liquid.flow_index:g} at {at}"
        dry = f" and {100.0 * liquid.reference_solids:g} % dry matter"
        yield f"{'':22}{law}{dry if liquid.solids_exponent else ''}"
    if liquid.thickening_factor > 1.0:
        ends = (liquid.thickens_from, liquid.thickens_until)
        low, high = (as_text(end, "temperature", system) for end in ends)
        yield f"{'':22}thickens from {low} to {high}, up to {liquid.thickening_factor:g} times"
    yield f"{'':22}source: {liquid.source}"
