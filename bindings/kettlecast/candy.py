"""Stages of cooked sugar, at sea level and where the air is thinner.

A stage is a content of water. Syrup of that content boils at another temperature when the pressure
is another; beyond 165 degC it no longer boils but browns, and the pressure does not matter.
"""

from __future__ import annotations

from dataclasses import dataclass

from . import units
from ._core import properties
from .errors import InvalidArgument, UnknownName

_SEA_LEVEL = 101325.0  # [Pa]
_LAST_BOILING = 438.15  # 165 degC [K]
_LOWEST, _HIGHEST = 2e4, 2e5  # pressures that a kettle may see [Pa]


@dataclass(frozen=True)
class Stage:
    """One stage of cooked sugar as printed, at sea level."""

    name: str
    degrees_fahrenheit: tuple[float, float]  #: from, to [degF]
    degrees_celsius: tuple[float, float]  #: from, to, rounded in the source on its own [degC]
    sugar: float | None  #: typical mass fraction; None where hardly any water is left [kg/kg]
    used_for: str

    @property
    def temperatures(self) -> tuple[float, float]:
        """From, to [K], of the Fahrenheit column, which is the finer one."""
        low, high = self.degrees_fahrenheit
        return units.to_si(low, "degF", "temperature"), units.to_si(high, "degF", "temperature")


#: Temperatures and uses: McGee, On Food and Cooking (2004), chapter 12, table of sugar syrups. Its
#: hard ball starts at "240 degF" beside 121 degC, a misprint for 250. The Celsius column of the
#: browned stages is rounded to whole fives or tens. Sugar: figures common in teaching; teaching
#: slides that give soft ball 244-248 degF have its line mixed up with firm ball.
STAGES = (
    Stage("thread", (215, 235), (102, 113), 0.80, "syrups, preserves"),
    Stage("soft ball", (235, 240), (113, 116), 0.85, "fondant, fudge"),
    Stage("firm ball", (245, 250), (118, 121), 0.87, "caramel candies"),
    Stage("hard ball", (250, 265), (121, 130), 0.92, "marshmallows, nougat"),
    Stage("soft crack", (270, 290), (132, 143), 0.95, "taffy"),
    Stage("hard crack", (300, 310), (149, 154), 0.99, "butterscotch, brittle"),
    Stage("hard candy", (320, 335), (160, 168), None, "hard candies, toffee"),
    Stage("light caramel", (340, 340), (170, 170), None, "syrups, colour and flavour"),
    Stage("medium caramel", (355, 360), (180, 182), None, "spun sugar, sugar cages"),
    Stage("dark caramel", (375, 380), (188, 190), None, "colour"),
    Stage("black caramel", (410, 410), (205, 205), None, "colour"),
)


def stage(name: str) -> Stage:
    """A stage by name; case does not matter.

    Raises
    ------
    UnknownName
        No such stage; the message lists those there are.

    Examples
    --------
    >>> stage("Soft ball").degrees_fahrenheit
    (235, 240)
    """
    wanted = " ".join(name.lower().replace("_", " ").replace("-", " ").split())
    for one in STAGES:
        if one.name == wanted:
            return one
    there = ", ".join(one.name for one in STAGES)
    raise UnknownName(f'stage "{name}" is not known; there are: {there}')


def boiling_at(temperature: float, pressure: float) -> float:
    """Temperature at which syrup that boils at `temperature` at sea level boils elsewhere [K].

    Equal content of water: p_sat(T) / p = p_sat(T_0) / p_0, as the activity of the water hardly
    depends on temperature. Above 165 degC syrup browns instead and the temperature stays.

    Parameters
    ----------
    temperature :
        At sea level [K].
    pressure :
        Where it is cooked, 20 to 200 kPa [Pa].

    Raises
    ------
    InvalidArgument
        The pressure is out of range.
    """
    if not _LOWEST <= pressure <= _HIGHEST:
        raise InvalidArgument(f"pressure {pressure:g} Pa; allowed: {_LOWEST:g} to {_HIGHEST:g} Pa")
    if temperature > _LAST_BOILING:
        return temperature
    water = properties.water
    own = float(water.saturation_pressure(temperature)) * pressure / _SEA_LEVEL
    return float(water.saturation_temperature(own))


def stage_temperatures(name: str, pressure: float = _SEA_LEVEL) -> tuple[float, float]:
    """From which to which temperature syrup is at a stage [K], by pressure [Pa].

    Raises
    ------
    UnknownName
        No such stage.
    InvalidArgument
        The pressure is out of range.
    """
    low, high = stage(name).temperatures
    return boiling_at(low, pressure), boiling_at(high, pressure)


def stages_at(temperature: float, pressure: float = _SEA_LEVEL) -> list[str]:
    """Names of the stages that a temperature [K] lies in, by pressure [Pa]; none between two.

    Raises
    ------
    InvalidArgument
        The pressure is out of range.
    """
    found = []
    for one in STAGES:
        low, high = stage_temperatures(one.name, pressure)
        if low <= temperature <= high:
            found.append(one.name)
    return found
