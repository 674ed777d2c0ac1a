"""Recipe files: phases in TOML with units as text, read and written."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path
from typing import Annotated, Any

import pydantic

from . import _core
from .errors import FileFormatError, InvalidArgument, UnknownName
from .file_model import Reads, Table, Worded, choice, quantity, read_toml, refusal, validate
from .foods import FoodTable, food, foods_from
from .units import parse

_Mass = Annotated[float, quantity("mass")]
_Temperature = Annotated[float, quantity("temperature")]
_Difference = Annotated[float, quantity("temperature_difference")]
_Time = Annotated[float, quantity("time")]
_Turns = Annotated[float, quantity("rotation_speed")]
_Length = Annotated[float, quantity("length")]
_Shape = Annotated[_core.Shape, choice(_core.Shape, leave_out="none")]
_Regulated = Annotated[_core.Regulated, choice(_core.Regulated, leave_out="none")]
_Cover = Annotated[_core.Cover, choice(_core.Cover)]
# a temperature or a difference, which only the key `regulate` beside it tells
_SetPoint = Annotated[float, Reads(str, {"type": "string", "examples": ["92 degC", "40 K"]})]


def _mass_or_share(text: object) -> tuple[_core.EndKind, float]:
    if "%" in str(text):
        return _core.EndKind.share_lost, parse(text, "share")
    return _core.EndKind.mass_lost, parse(text, "mass")


# a mass, or a share of what the phase holds
_Loss = Annotated[
    tuple[_core.EndKind, float],
    Reads(_mass_or_share, {"type": "string", "examples": ["2.5 kg", "12 %"]}),
]


class _Until(Table):
    """Readings that end a phase; `difference` is floor reading less probe reading, `core` that of a
    probe in the coldest piece."""

    probe_above: _Temperature | None = None
    probe_below: _Temperature | None = None
    floor_above: _Temperature | None = None
    floor_below: _Temperature | None = None
    core_above: _Temperature | None = None
    core_below: _Temperature | None = None
    difference_above: _Difference | None = None
    difference_below: _Difference | None = None


class _Stir(Table):
    speed: _Turns
    on: _Time | None = None
    off: _Time | None = None
    reversing: pydantic.StrictBool | None = None


class _Jacket(Table):
    """A jacket that heats below a temperature, or cools above one."""

    use: Annotated[_core.JacketUse, choice(_core.JacketUse, leave_out="off")] = _core.JacketUse.heat
    below: _Temperature | None = None
    above: _Temperature | None = None
    level: Annotated[float, quantity("share")] | None = None

    @pydantic.model_validator(mode="after")
    def _limit_of_its_use(self) -> _Jacket:
        cools = self.use == _core.JacketUse.cool
        if cools and (self.below is not None or self.level is not None):
            raise InvalidArgument("a jacket that cools takes above only, not below or level")
        if not cools and self.above is not None:
            raise InvalidArgument("a jacket that heats takes below and level, not above")
        return self


class _Add(Table):
    food: str
    name: str | None = None
    mass: _Mass
    temperature: _Temperature
    piece: _Length | None = None
    shape: _Shape | None = None
    spread: Annotated[float, quantity("share")] | None = None
    delay: _Time | None = None
    pour_time: _Time | None = None

    @pydantic.model_validator(mode="after")
    def _piece_has_shape(self) -> _Add:
        if (self.piece is None) != (self.shape is None):
            raise InvalidArgument("piece and shape go together; liquids have neither")
        if self.spread is not None and self.piece is None:
            raise InvalidArgument("spread is that of the pieces; give piece and shape with it")
        return self


class _Phase(Table):
    name: str
    regulate: _Regulated | None = None
    set_point: _SetPoint | None = None
    hold: _Time | None = None
    duration: _Time | None = None
    until: _Until | None = None
    lose: _Loss | None = None
    time_limit: _Time | None = None
    stir: Annotated[_Stir, Worded({"examples": ["20 rpm"]})] | None = None
    heat_limit: Annotated[float, quantity("share")] | None = None
    floor_limit: _Temperature | None = None
    difference_limit: _Difference | None = None
    jacket: Annotated[_Jacket, Worded({"enum": ["off", "on", "cool"]})] | None = None
    cover: _Cover | None = None
    prompt: str | None = None
    add: tuple[_Add, ...] = ()

    @pydantic.field_validator("set_point")
    @classmethod
    def _set_point_by_signal(cls, value: Any, info: pydantic.ValidationInfo) -> Any:
        differs = info.data.get("regulate") == _core.Regulated.difference
        return parse(value, "temperature_difference" if differs else "temperature")

    @pydantic.field_validator("stir", mode="before")
    @classmethod
    def _plain_speed(cls, value: Any) -> Any:
        return value if isinstance(value, dict) else {"speed": value}

    @pydantic.field_validator("jacket", mode="before")
    @classmethod
    def _plain_jacket(cls, value: Any) -> Any:
        words: dict[Any, Any] = {"off": None, "on": {}, "cool": {"use": "cool"}}
        if isinstance(value, dict):
            return value
        if not isinstance(value, str) or value not in words:
            raise InvalidArgument(
                f'"{value}" is not allowed; write "off", "on", "cool", {{ below = ... }} or '
                '{ use = "cool", above = ... }'
            )
        return words[value]

    @pydantic.model_validator(mode="after")
    def _regulated_has_set_point(self) -> _Phase:
        if (self.set_point is None) != (self.regulate is None):
            raise InvalidArgument("regulate and set_point go together; without heat give neither")
        return self


class _Head(Table):
    name: str


class _RecipeFile(Table):
    recipe: _Head
    phase: tuple[_Phase, ...]
    foods: dict[str, FoodTable] = pydantic.Field(default_factory=dict)


def read_recipe(path: str | Path) -> _core.Recipe:
    """A recipe from a TOML file.

    The file has `[recipe]` with a name, a `[[phase]]` for each phase with a `[[phase.add]]` for
    each addition. Of several end rules (hold, duration, until, lose) the first that is met ends the
    phase.

    A food of its own stands under `[foods.NAME]`: shares of its components, and, if they are not
    nothing, freezing_point, juice_fraction, sugar, salt and `consistency`. That is a bundled one by
    name (`consistency = "custard"`) or a table `[foods.NAME.consistency]` with the members of
    `Consistency`. To cook a bundled food with another consistency, describe it anew so.

    Raises
    ------
    FileFormatError
        Names the file and, for every problem in it, the key (lists counted from 1), the value and
        what is allowed.

    Examples
    --------
    >>> from kettlecast.demo import demo_path
    >>> [phase.name for phase in read_recipe(demo_path("water_boil.toml")).phases]
    ['heat the water']
    """
    tables = validate(_RecipeFile, read_toml(path), path)
    own = foods_from(tables.foods, path)
    _check_foods(tables, own, path)
    phases = [_phase(phase, own) for phase in tables.phase]
    recipe = _core.Recipe(name=tables.recipe.name, phases=phases)
    try:
        _core.check(recipe)
    except InvalidArgument as error:
        raise FileFormatError(f"{path}: {error}", file=str(path)) from error
    return recipe


def recipe_schema() -> dict[str, Any]:
    """JSON Schema of a recipe file, for editors."""
    return _RecipeFile.model_json_schema()


def _check_foods(tables: _RecipeFile, own: Mapping[str, _core.Food], path: str | Path) -> None:
    problems = []
    for index, phase in enumerate(tables.phase, start=1):
        for number, add in enumerate(phase.add, start=1):
            try:
                food(add.food, own)
            except UnknownName as error:
                problems.append((f"phase[{index}].add[{number}].food", str(error)))
    if problems:
        raise refusal(path, problems)


def _phase(table: _Phase, own: Mapping[str, _core.Food]) -> _core.Phase:
    values = table.given(
        "name", "time_limit", "heat_limit", "floor_limit", "difference_limit", "cover", "prompt"
    )
    if table.regulate is not None:
        values |= {"regulated": table.regulate, "set_point": table.set_point}
    if table.stir is not None:
        stir = table.stir.given("speed", "reversing", on_time="on", off_time="off")
        values["agitation"] = _core.Agitation(**stir)
    if table.jacket is not None:
        values |= table.jacket.given(
            jacket="use", jacket_limit="below", jacket_cool_limit="above", jacket_share="level"
        )
    additions = [_addition(add, own) for add in table.add]
    return _core.Phase(ends=_ends(table), additions=additions, **values)


def _ends(table: _Phase) -> list[_core.EndRule]:
    ends = []
    if table.hold is not None:
        ends.append(_core.EndRule(kind=_core.EndKind.held, value=table.hold))
    if table.duration is not None:
        ends.append(_core.EndRule(kind=_core.EndKind.elapsed, value=table.duration))
    for key, value in (table.until.given(*_Until.model_fields) if table.until else {}).items():
        signal, kind = key.split("_")
        rule = {"kind": _core.EndKind.__members__[kind], "value": value}
        ends.append(_core.EndRule(signal=_core.Regulated.__members__[signal], **rule))
    if table.lose is not None:
        loss, amount = table.lose
        ends.append(_core.EndRule(kind=loss, value=amount))
    return ends


def _addition(table: _Add, own: Mapping[str, _core.Food]) -> _core.Addition:
    values = table.given(
        "mass",
        "temperature",
        "shape",
        "delay",
        "pour_time",
        piece_size="piece",
        size_spread="spread",
    )
    return _core.Addition(name=table.name or table.food, food=food(table.food, own), **values)
