"""Bundled foods, and foods that a recipe file describes."""

from __future__ import annotations

import difflib
import functools
from collections.abc import Mapping
from importlib import resources
from pathlib import Path
from types import MappingProxyType
from typing import Annotated

import pydantic

from . import _core
from .consistencies import ConsistencyTable, known_consistency
from .errors import InvalidArgument, UnknownName
from .file_model import Table, Worded, plain_name, quantity, read_toml, refusal, validate

_Share = Annotated[float, quantity("share")]
# the name of a bundled one, or a table
_Consistency = Annotated[
    ConsistencyTable,
    pydantic.BeforeValidator(known_consistency),
    Worded({"examples": ["custard", "tomato paste"]}),
]


class FoodTable(Table):
    """Table `[foods.NAME]` of a file; components in per cent by mass, absent ones are 0.

    `consistency` is the name of a bundled one, or a table of its own.
    """

    also: tuple[str, ...] = ()
    water: _Share = 0.0
    protein: _Share = 0.0
    fat: _Share = 0.0
    carbohydrate: _Share = 0.0
    fibre: _Share = 0.0
    ash: _Share = 0.0
    freezing_point: Annotated[float, quantity("temperature")] | None = None
    juice_fraction: _Share | None = None
    sugar: _Share | None = None
    salt: _Share | None = None
    consistency: _Consistency | None = None
    source: str = ""


class _FoodsFile(Table):
    foods: dict[str, FoodTable]


def foods_from(tables: Mapping[str, FoodTable], path: str | Path) -> dict[str, _core.Food]:
    """The foods of the `foods` tables of a file by plain name, other names included.

    Raises
    ------
    FileFormatError
        A composition that does not add up, or one name for two foods.
    """
    found: dict[str, _core.Food] = {}
    problems: list[tuple[str, str]] = []
    for name, table in tables.items():
        try:
            made = _food(name, table)
        except InvalidArgument as error:
            problems.append((f"foods.{name}", str(error)))
            continue
        for word in (name, *table.also):
            if found.setdefault(plain_name(word), made) is not made:
                other = found[plain_name(word)].name
                problems.append((f"foods.{name}", f'"{word}" already names "{other}"'))
    if problems:
        raise refusal(path, problems)
    return found


def _food(name: str, table: FoodTable) -> _core.Food:
    parts = table.given("water", "protein", "fat", "carbohydrate", "fibre", "ash")
    rest = table.given("freezing_point", "juice_fraction", "sugar", "salt", "source")
    if table.consistency is not None:
        rest["consistency"] = table.consistency.made()
    food = _core.Food(name=name, composition=_core.Composition(**parts), **rest)
    _core.check(food)
    return food


@functools.cache
def bundled_foods() -> Mapping[str, _core.Food]:
    """The bundled foods by plain name, other names included."""
    path = Path(str(resources.files(__package__) / "foods.toml"))
    tables = validate(_FoodsFile, read_toml(path), path)
    return MappingProxyType(foods_from(tables.foods, path))


def food_names() -> list[str]:
    """Names of the bundled foods, in alphabetical order, without other names."""
    return sorted({food.name for food in bundled_foods().values()})


def food(name: str, own: Mapping[str, _core.Food] | None = None) -> _core.Food:
    """A food by name; case, underscores and hyphens do not matter.

    Parameters
    ----------
    name :
        For example "carrot".
    own :
        Foods by plain name that come before the bundled ones.

    Raises
    ------
    UnknownName
        No such food; the message lists the nearest names.

    Examples
    --------
    >>> food("Carrots").name
    'carrot'
    """
    known = {**bundled_foods(), **(own or {})}
    wanted = plain_name(name)
    if wanted in known:
        return known[wanted]
    close = difflib.get_close_matches(wanted, known, n=3, cutoff=0.5)
    names = list(dict.fromkeys(known[word].name for word in close)) or food_names()
    told = "nearest" if close else "there are"
    raise UnknownName(
        f'food "{name}" is not known; {told}: {", ".join(names)}; '
        f'a recipe file can describe it under [foods."{name}"]'
    )
