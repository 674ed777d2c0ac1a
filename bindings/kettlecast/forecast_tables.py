"""Tables of forecasts: SI numbers to what people read."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

import numpy as np
import pandas as pd
from numpy.typing import NDArray

from . import _core
from .errors import InvalidArgument
from .intervals import Interval

_ICE = 273.15
_POUND = 0.45359237  # [kg], exact
_KILOWATT_HOUR = 3.6e6  # [J]

REASONS = {
    _core.EndReason.held: "held",
    _core.EndReason.elapsed: "time over",
    _core.EndReason.signal: "signal reached",
    _core.EndReason.mass_lost: "mass lost",
    _core.EndReason.timed_out: "TIMED OUT",
}


# Stem of the columns of each quantity that comes with an interval.
INTERVAL_COLUMNS = {
    "time_to_reach": "to_reach",
    "duration": "duration",
    "overshoot": "overshoot",
    "overshoot_reading": "overshoot_reading",
    "evaporated": "evaporated",
}

Intervals = Mapping[str, Sequence[Interval | None]]


def unit_of(quantity: str, us: bool = False) -> tuple[str, float]:
    """Ending of the columns of a quantity, and how much of SI one of its unit is."""
    if quantity in ("overshoot", "overshoot_reading"):
        return ("F", 1.0 / 1.8) if us else ("K", 1.0)
    if quantity == "evaporated":
        return ("lb", _POUND) if us else ("kg", 1.0)
    return "min", 60.0


def _interval_columns(intervals: Intervals, us: bool) -> dict[str, list[float]]:
    """Low and high ends by name of the column, NaN without an interval; share not reached [-]."""
    columns = {}
    for quantity, stem in INTERVAL_COLUMNS.items():
        unit, size = unit_of(quantity, us)
        for end in ("low", "high"):
            columns[f"{stem}_{end}_{unit}"] = [
                np.nan if one is None else getattr(one, end) / size for one in intervals[quantity]
            ]
    columns["not_reached"] = [
        np.nan if one is None else one.not_reached for one in intervals["time_to_reach"]
    ]
    return columns


def _row(phase: _core.PhaseReport, planned: _core.Phase, us: bool) -> dict[str, object]:
    temperature, mass = ("F", "lb") if us else ("C", "kg")
    factor = 1.8 if us else 1.0

    def level(kelvin: float) -> float:
        if planned.regulated is _core.Regulated.difference:
            return np.nan  # the highest difference is no temperature
        return (kelvin - _ICE) * factor + (32.0 if us else 0.0)

    def difference(kelvin: float | None) -> float:
        return np.nan if kelvin is None else kelvin * factor

    over = "F" if us else "K"
    return {
        "phase": phase.name,
        "start_min": phase.start / 60.0,
        "to_reach_min": np.nan if phase.time_to_reach is None else phase.time_to_reach / 60.0,
        "duration_min": phase.duration / 60.0,
        "ended": REASONS[phase.ended],
        f"peak_{temperature}": level(phase.peak),
        f"peak_reading_{temperature}": level(phase.peak_reading),
        f"overshoot_{over}": difference(phase.overshoot),
        f"overshoot_reading_{over}": difference(phase.overshoot_reading),
        f"evaporated_{mass}": phase.evaporated / (_POUND if us else 1.0),
        "energy_kWh": phase.energy / _KILOWATT_HOUR,
    }


def phases_table(
    phases: Sequence[_core.PhaseReport],
    recipe: _core.Recipe,
    intervals: Intervals | None,
    system: str,
) -> pd.DataFrame:
    """One row per phase, indexed by its number from 1."""
    if system not in ("metric", "us"):
        raise InvalidArgument(f'system must be "metric" or "us", got {system!r}')
    pairs = zip(phases, recipe.phases, strict=True)
    table = pd.DataFrame([_row(phase, planned, system == "us") for phase, planned in pairs])
    table.index = pd.RangeIndex(1, len(table) + 1, name="number")
    if intervals is not None:
        table = table.assign(**_interval_columns(intervals, system == "us"))
    return table


def signal_names(names: Sequence[str]) -> list[str]:
    """Names of the signals of a trace, those of a second addition of one name numbered."""
    found = []
    for i, name in enumerate(names):
        piece, _, quantity = name.partition(".")
        again = names[:i].count(name)
        found.append(f"{piece}_{again + 1}.{quantity}" if again else name)
    return found


def trace_table(names: Sequence[str], values: NDArray[np.float64]) -> pd.DataFrame:
    """Signals over time; temperatures and readings in degC, the rest as named."""
    columns = {}
    for i, name in enumerate(signal_names(names)):
        column = values[:, i]
        if name.endswith(("temperature", ".reading", ".boiling_point")):
            columns[f"{name}_C"] = column - _ICE
        elif name == "phase":
            columns[name] = column.astype(int) + 1
        elif name == "agitator.speed":
            columns["agitator.speed_rpm"] = column * 60.0
        else:
            columns[name + _UNITS[name]] = column
    return pd.DataFrame(columns)


_UNITS = {
    "time": "_s",
    "floor.heat": "",
    "jacket.heat": "",
    "jacket.cooling": "",
    "liquid.water": "_kg",
    "vapour.mass": "_kg",
    "product.level": "_m",
    "product.volume": "_m3",
    "product.mass": "_kg",
}
