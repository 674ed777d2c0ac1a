"""Kettle files: the type plate of a kettle in TOML, with units as text."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated, Any

import pydantic

from . import _core
from .errors import FileFormatError, InvalidArgument
from .file_model import Table, choice, quantity, read_toml, validate

_Length = Annotated[float, quantity("length")]
_Power = Annotated[float, quantity("power")]
_Difference = Annotated[float, quantity("temperature_difference")]
_Time = Annotated[float, quantity("time")]
_Metal = Annotated[_core.MetalKind, choice(_core.MetalKind)]


class _Body(Table):
    name: str
    diameter: _Length
    height: _Length
    floor: Annotated[_core.FloorShape, choice(_core.FloorShape)] | None = None
    floor_depth: _Length | None = None
    tilt: Annotated[float, quantity("angle")] | None = None
    working_volume: Annotated[float, quantity("volume")] | None = None


class _Floor(Table):
    power: _Power = 0.0
    thickness: _Length | None = None
    metal: _Metal | None = None


class _Flow(Table):
    flow: Annotated[float, quantity("mass_flow")]
    inlet: Annotated[float, quantity("temperature")]
    glycol: Annotated[float, quantity("share")] | None = None


class _Jacket(Table):
    kind: Annotated[_core.JacketKind, choice(_core.JacketKind)] | None = None
    power: _Power | None = None
    height: _Length
    under_floor: pydantic.StrictBool | None = None
    gap: _Length | None = None
    pressure: Annotated[float, quantity("gauge_pressure")] | None = None
    air: Annotated[float, quantity("share")] | None = None
    heating: _Flow | None = None
    cooling: _Flow | None = None


class _Wall(Table):
    thickness: _Length | None = None
    metal: _Metal | None = None


class _Agitator(Table):
    kind: Annotated[_core.AgitatorKind, choice(_core.AgitatorKind)]
    diameter: _Length | None = None
    height: _Length | None = None
    blades: pydantic.StrictInt | None = None


class _Control(Table):
    kind: Annotated[_core.ControllerKind, choice(_core.ControllerKind)] | None = None
    dead_band: _Difference | None = None
    minimum_on_time: _Time | None = None
    gain: Annotated[float, quantity("gain")] | None = None
    integral_time: _Time | None = None
    reached_within: _Difference | None = None
    settle_after_pour: _Time | None = None


class _Room(Table):
    temperature: Annotated[float, quantity("temperature")] | None = None
    pressure: Annotated[float, quantity("pressure")] | None = None
    altitude: Annotated[float, quantity("altitude")] | None = None
    humidity: Annotated[float, quantity("share")] | None = None
    air_speed: Annotated[float, quantity("speed")] | None = None

    @pydantic.model_validator(mode="after")
    def _one_pressure(self) -> _Room:
        if self.pressure is not None and self.altitude is not None:
            raise InvalidArgument("give pressure or altitude, not both")
        if self.altitude is not None:
            standard_pressure(self.altitude)
        return self


class _KettleFile(Table):
    kettle: _Body
    floor: _Floor
    jacket: _Jacket | None = None
    wall: _Wall = _Wall()
    agitator: _Agitator | None = None
    control: _Control = _Control()
    room: _Room = _Room()


def standard_pressure(altitude: float) -> float:
    """Pressure of the standard atmosphere at a height above sea level [Pa].

    Source: US Standard Atmosphere 1976, see `kettlecast.properties.pressure_at_altitude`.
    Range:  -2000 m to 11 000 m

    Parameters
    ----------
    altitude :
        Above sea level [m].

    Raises
    ------
    InvalidArgument
        The altitude is out of range.
    """
    if not -2000.0 <= altitude <= 11000.0:
        raise InvalidArgument(f"altitude must be between -2000 and 11000 m, got {altitude:g} m")
    return float(_core.properties.pressure_at_altitude(altitude))


def read_kettle(path: str | Path) -> _core.Kettle:
    """A kettle from a TOML file.

    Keys that are absent take the default of `Kettle`. Tables: `kettle` (name, diameter, height of
    the straight wall, floor, floor_depth, tilt, working_volume), `floor` (power, thickness, metal),
    `jacket` (kind, power, height, under_floor, gap, pressure and air of steam, `heating` and
    `cooling` with flow, inlet and glycol), `wall` (thickness, metal), `agitator` (kind, diameter,
    height, blades), `control` (kind, dead_band, minimum_on_time, gain, integral_time,
    reached_within, settle_after_pour), `room` (temperature, pressure or altitude, humidity,
    air_speed).

    Raises
    ------
    FileFormatError
        Names the file and, for every problem in it, the key, the value and what is allowed.

    Examples
    --------
    >>> from kettlecast.demo import demo_path
    >>> read_kettle(demo_path("kettle.toml")).floor_power
    18000.0
    """
    kettle = _kettle(validate(_KettleFile, read_toml(path), path))
    try:
        _core.check(kettle)
    except InvalidArgument as error:
        raise FileFormatError(f"{path}: {error}", file=str(path)) from error
    return kettle


def kettle_schema() -> dict[str, Any]:
    """JSON Schema of a kettle file, for editors."""
    return _KettleFile.model_json_schema()


def _kettle(tables: _KettleFile) -> _core.Kettle:
    values = tables.kettle.given(
        "name", "diameter", "height", "floor_depth", "tilt", "working_volume", floor_shape="floor"
    )
    floor, wall = tables.floor, tables.wall
    values |= floor.given(floor_power="power", floor_thickness="thickness", floor_metal="metal")
    values |= wall.given(wall_thickness="thickness", wall_metal="metal")
    if tables.jacket is not None:
        values["jacket"] = _jacket(tables.jacket)
    if tables.agitator is not None:
        values |= tables.agitator.given(
            "blades", agitator="kind", agitator_diameter="diameter", agitator_height="height"
        )
    controller = _core.Controller(**tables.control.given(*_Control.model_fields))
    return _core.Kettle(controller=controller, surroundings=_surroundings(tables.room), **values)


def _jacket(table: _Jacket) -> _core.Jacket:
    values = table.given(
        "kind", "power", "height", "under_floor", "gap", steam_pressure="pressure", air_share="air"
    )
    for name in ("heating", "cooling"):
        flow: _Flow | None = getattr(table, name)
        if flow is not None:
            values[name] = _core.JacketFlow(
                **flow.given("flow", "glycol", inlet_temperature="inlet")
            )
    return _core.Jacket(**values)


def _surroundings(room: _Room) -> _core.Surroundings:
    values = room.given("temperature", "pressure", "air_speed", relative_humidity="humidity")
    if room.altitude is not None:
        values["pressure"] = standard_pressure(room.altitude)
    return _core.Surroundings(**values)
