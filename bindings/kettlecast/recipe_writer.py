"""Recipes written as TOML that `read_recipe` reads back to the same recipe."""

from __future__ import annotations

import json
import math
from collections.abc import Iterator
from pathlib import Path

from . import _core
from .consistencies import consistency_name
from .errors import InvalidArgument
from .file_model import plain_name
from .foods import bundled_foods
from .units import System, exact_text

_LOSSES = {_core.EndKind.mass_lost: "mass", _core.EndKind.share_lost: "share"}
_CONSISTENCY_KINDS = dict.fromkeys(
    ("reference_temperature", "thickens_from", "thickens_until"), "temperature"
) | {"reference_solids": "share"}
_HOLDS = {_core.EndKind.held: "hold", _core.EndKind.elapsed: "duration"}


def write_recipe(recipe: _core.Recipe, path: str | Path, system: System = "metric") -> None:
    """Write a recipe as a TOML file that reads back to an equal recipe.

    Foods that are not bundled are described in the file. Values without a meaning, such as the
    limit of a jacket that is off, are left out. The end rules of a phase are written in
    the order hold, duration, until, lose; the first that is met ends the phase whatever the order.

    Parameters
    ----------
    recipe :
        A recipe that passes `check`.
    path :
        File to write; replaced if it is there.
    system :
        Units of the file, "metric" or "us".

    Raises
    ------
    InvalidArgument
        A recipe that cannot be run, two foods of one name, or two end rules of one kind in a phase.
    """
    _core.check(recipe)
    lines = ["[recipe]", f"name = {_quoted(recipe.name)}"]
    for phase in recipe.phases:
        lines += ["", "[[phase]]", *_phase_lines(phase, system)]
        for addition in phase.additions:
            lines += ["", "[[phase.add]]", *_addition_lines(addition, system)]
    for food in _own_foods(recipe):
        lines += ["", f"[foods.{_quoted(food.name)}]", *_food_lines(food, system)]
    Path(path).write_text("\n".join(lines) + "\n", encoding="utf-8")


def _quoted(text: str) -> str:
    """A TOML basic string; JSON escapes all that TOML wants escaped but DEL."""
    return json.dumps(text, ensure_ascii=False).replace("\x7f", "\\u007f")


def _amount(key: str, value: float, kind: str, system: System) -> str:
    return f'{key} = "{exact_text(value, kind, system)}"'


def _phase_lines(phase: _core.Phase, system: System) -> Iterator[str]:
    plain = _core.Phase()
    yield f"name = {_quoted(phase.name)}"
    if phase.regulated != _core.Regulated.none:
        differs = phase.regulated == _core.Regulated.difference
        kind = "temperature_difference" if differs else "temperature"
        yield f'regulate = "{phase.regulated.name}"'
        yield _amount("set_point", phase.set_point, kind, system)
    yield from _end_lines(phase, system)
    if phase.time_limit != plain.time_limit:
        yield _amount("time_limit", phase.time_limit, "time", system)
    yield from _stir_lines(phase.agitation, system)
    if phase.heat_limit != plain.heat_limit:
        yield _amount("heat_limit", phase.heat_limit, "share", system)
    if math.isfinite(phase.floor_limit):
        yield _amount("floor_limit", phase.floor_limit, "temperature", system)
    if math.isfinite(phase.difference_limit):
        value = phase.difference_limit
        yield _amount("difference_limit", value, "temperature_difference", system)
    yield from _jacket_lines(phase, system)
    if phase.cover != plain.cover:
        yield f'cover = "{phase.cover.name}"'
    if phase.prompt:
        yield f"prompt = {_quoted(phase.prompt)}"


def _end_lines(phase: _core.Phase, system: System) -> Iterator[str]:
    times: dict[str, str] = {}
    until: dict[str, str] = {}
    for rule in phase.ends:
        if rule.kind in _HOLDS:
            key, kind, place = _HOLDS[rule.kind], "time", times
        elif rule.kind in _LOSSES:
            key, kind, place = "lose", _LOSSES[rule.kind], times
        else:
            key, place = f"{rule.signal.name}_{rule.kind.name}", until
            differs = rule.signal == _core.Regulated.difference
            kind = "temperature_difference" if differs else "temperature"
        if key in place:
            raise InvalidArgument(
                f'Phase "{phase.name}": two end rules "{key}" cannot be written; keep the one that '
                "is met first"
            )
        place[key] = _amount(key, rule.value, kind, system)
    yield from (times[key] for key in ("hold", "duration") if key in times)
    if until:
        yield f"until = {{ {', '.join(until.values())} }}"
    if "lose" in times:
        yield times["lose"]


def _jacket_lines(phase: _core.Phase, system: System) -> Iterator[str]:
    plain = _core.Phase()
    if phase.jacket == _core.JacketUse.heat:
        parts = [_amount("below", phase.jacket_limit, "temperature", system)]
        if phase.jacket_share != plain.jacket_share:
            parts.append(_amount("level", phase.jacket_share, "share", system))
        yield f"jacket = {{ {', '.join(parts)} }}"
    elif phase.jacket == _core.JacketUse.cool:
        parts = ['use = "cool"']
        if phase.jacket_cool_limit != plain.jacket_cool_limit:
            parts.append(_amount("above", phase.jacket_cool_limit, "temperature", system))
        yield f"jacket = {{ {', '.join(parts)} }}"


def _stir_lines(agitation: _core.Agitation, system: System) -> Iterator[str]:
    speed = exact_text(agitation.speed, "rotation_speed", system)
    if agitation.on_time or agitation.off_time:
        on = _amount("on", agitation.on_time, "time", system)
        off = _amount("off", agitation.off_time, "time", system)
        back = ", reversing = true" if agitation.reversing else ""
        yield f'stir = {{ speed = "{speed}", {on}, {off}{back} }}'
    elif agitation.speed:
        yield f'stir = "{speed}"'


def _addition_lines(addition: _core.Addition, system: System) -> Iterator[str]:
    if addition.name != addition.food.name:
        yield f"name = {_quoted(addition.name)}"
    yield f"food = {_quoted(addition.food.name)}"
    yield _amount("mass", addition.mass, "mass", system)
    yield _amount("temperature", addition.temperature, "temperature", system)
    if addition.shape != _core.Shape.none:
        yield _amount("piece", addition.piece_size, "length", system)
        yield f'shape = "{addition.shape.name}"'
        if addition.size_spread:
            yield _amount("spread", addition.size_spread, "share", system)
    if addition.delay:
        yield _amount("delay", addition.delay, "time", system)
    if addition.pour_time:
        yield _amount("pour_time", addition.pour_time, "time", system)


def _own_foods(recipe: _core.Recipe) -> list[_core.Food]:
    found: dict[str, _core.Food] = {}
    for addition in (addition for phase in recipe.phases for addition in phase.additions):
        word = plain_name(addition.food.name)
        if found.setdefault(word, addition.food) != addition.food:
            raise InvalidArgument(
                f'Recipe "{recipe.name}": two different foods are called "{addition.food.name}"; '
                "give one of them another name"
            )
    bundled = bundled_foods()
    return [food for word, food in found.items() if bundled.get(word) != food]


def _food_lines(food: _core.Food, system: System) -> Iterator[str]:
    for key in ("water", "protein", "fat", "carbohydrate", "fibre", "ash"):
        yield _amount(key, getattr(food.composition, key), "share", system)
    yield _amount("freezing_point", food.freezing_point, "temperature", system)
    yield _amount("juice_fraction", food.juice_fraction, "share", system)
    for key in ("sugar", "salt"):
        if getattr(food, key):
            yield _amount(key, getattr(food, key), "share", system)
    yield f"source = {_quoted(food.source)}"
    yield from _consistency_lines(food, system)


def _consistency_lines(food: _core.Food, system: System) -> Iterator[str]:
    liquid, plain = food.consistency, _core.Consistency()
    if liquid == plain:
        return
    if name := consistency_name(liquid):
        yield f"consistency = {_quoted(name)}"
        return
    yield ""
    yield f"[foods.{_quoted(food.name)}.consistency]"
    for key, value in liquid.to_dict().items():
        if value == getattr(plain, key):
            continue
        if key == "source":
            yield f"source = {_quoted(value)}"
        elif key in _CONSISTENCY_KINDS:
            yield _amount(key, value, _CONSISTENCY_KINDS[key], system)
        else:
            yield f"{key} = {value!r}"
