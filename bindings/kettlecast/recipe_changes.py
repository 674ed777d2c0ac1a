"""Recipes with more of an ingredient."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from . import _core
from .errors import InvalidArgument, UnknownName
from .file_model import nearest, plain_name
from .foods import food
from .units import number


def with_more(
    recipe: _core.Recipe,
    name: str,
    mass: str | float,
    temperature: str | float | None = None,
    *,
    phase: str | int | None = None,
    piece: str | float | None = None,
    shape: str | _core.Shape | None = None,
    delay: str | float | None = None,
    pour_time: str | float | None = None,
) -> _core.Recipe:
    """A recipe with more of an ingredient, or with a new one.

    More of an ingredient already there joins its addition, or is poured right after it as a
    further addition of the same name if it differs in temperature, pieces or delay; its pour time
    is in proportion to its mass. All other additions keep their delays.

    Parameters
    ----------
    recipe :
        Not changed.
    name :
        Name of an addition of the recipe, or of a bundled food.
    mass :
        How much more, as text or [kg].
    temperature :
        As text or [K]; default: that of the addition already there.
    phase :
        Name or number from 1; needed if the ingredient is in no phase or in several.
    piece, shape :
        Size as text or [m], and "slab", "cylinder" or "sphere"; default: those of the addition
        already there, none (a liquid) for a new ingredient.
    delay :
        From the start of the phase to the start of the pour, as text or [s]; default: right after
        the addition already there, or after the last pour of the phase.
    pour_time :
        Of the further mass, as text or [s]; default: in proportion to mass, 0 for a new ingredient.

    Raises
    ------
    UnknownName
        Phase or food not known; the message lists the nearest.
    InvalidArgument
        The phase or temperature is needed and was not given, or the recipe cannot be run so.
    """
    further = number(mass, "mass")
    if not further > 0:
        raise InvalidArgument(f'mass of "{name}" must be above 0 kg, got {further:g} kg')
    given = {
        "temperature": None if temperature is None else number(temperature, "temperature"),
        "piece_size": None if piece is None else number(piece, "length"),
        "shape": _shape(shape) if isinstance(shape, str) else shape,
        "delay": None if delay is None else number(delay, "time"),
        "pour_time": None if pour_time is None else number(pour_time, "time"),
    }
    present = {key: value for key, value in given.items() if value is not None}
    values: dict[str, Any] = {"mass": further} | present
    index = _phase_index(recipe, name, phase)
    changed = _with_addition(recipe.phases[index], name, values, _own_foods(recipe))
    phases = [*recipe.phases[:index], changed, *recipe.phases[index + 1 :]]
    result = recipe.replace(phases=phases)
    _core.check(result)
    return result


def _shape(shape: str) -> _core.Shape:
    members = _core.Shape.__members__
    if shape not in members:
        known = ", ".join(members)
        raise UnknownName(
            f'shape "{shape}" is not known{nearest(shape, members)}; there are: {known}'
        )
    return members[shape]


def _phase_index(recipe: _core.Recipe, name: str, phase: str | int | None) -> int:
    names = [entry.name for entry in recipe.phases]
    listed = ", ".join(f'{number} "{entry}"' for number, entry in enumerate(names, start=1))
    if isinstance(phase, str):
        if phase not in names:
            told = f'phase "{phase}" is not in recipe "{recipe.name}"{nearest(phase, names)}'
            raise UnknownName(f"{told}; there are: {listed}")
        return names.index(phase)
    if phase is not None:
        if not 1 <= phase <= len(names):
            told = f'recipe "{recipe.name}" has phases 1 to {len(names)}, got phase {phase}'
            raise InvalidArgument(f"{told}; there are: {listed}")
        return phase - 1
    holding = [index for index, entry in enumerate(recipe.phases) if _same_name(entry, name)]
    if len(holding) == 1:
        return holding[0]
    where = "several phases" if holding else "no phase"
    raise InvalidArgument(
        f'"{name}" is in {where} of recipe "{recipe.name}"; say which with phase=, by name or '
        f"number: {listed}"
    )


def _same_name(phase: _core.Phase, name: str) -> list[int]:
    wanted = plain_name(name)
    pairs = enumerate(phase.additions)
    return [index for index, entry in pairs if plain_name(entry.name) == wanted]


def _own_foods(recipe: _core.Recipe) -> dict[str, _core.Food]:
    """Foods of the recipe by the names of its additions."""
    additions = [addition for phase in recipe.phases for addition in phase.additions]
    return {plain_name(entry.name): entry.food for entry in additions}


def _with_addition(
    phase: _core.Phase, name: str, values: dict[str, Any], own: Mapping[str, _core.Food]
) -> _core.Phase:
    additions = list(phase.additions)
    present = _same_name(phase, name)
    if not present:
        return phase.replace(additions=[*additions, _new(phase, name, values, own)])
    wanted = {"temperature": additions[present[-1]].temperature} | values
    joined = [index for index in present if _joins(additions[index], wanted)]
    index = joined[0] if joined else present[-1]
    base = additions[index]
    pour_time = values.get("pour_time", base.pour_time * values["mass"] / base.mass)
    if joined:
        total = {"mass": base.mass + values["mass"], "pour_time": base.pour_time + pour_time}
        additions[index] = base.replace(**total)
    else:
        after = {"delay": base.delay + base.pour_time, "pour_time": pour_time}
        additions.insert(index + 1, base.replace(**(after | values)))
    return phase.replace(additions=additions)


def _joins(addition: _core.Addition, values: dict[str, Any]) -> bool:
    """Whether more of an ingredient differs from an addition in nothing but mass and pour time."""
    keys = ("temperature", "piece_size", "shape", "delay")
    return all(getattr(addition, key) == values[key] for key in keys if key in values)


def _new(
    phase: _core.Phase, name: str, values: dict[str, Any], own: Mapping[str, _core.Food]
) -> _core.Addition:
    if "temperature" not in values:
        raise InvalidArgument(
            f'"{name}" is not in phase "{phase.name}" yet: its temperature is needed, for example '
            'temperature="36 degF"'
        )
    after = {"delay": _core.loaded_after(phase)}
    return _core.Addition(name=name, food=food(name, own), **(after | values))
