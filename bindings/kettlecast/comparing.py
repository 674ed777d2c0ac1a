"""Two forecasts side by side: how much longer, hotter and drier."""

from __future__ import annotations

import json
import math
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

import numpy as np
import pandas as pd

from .clock_text import clock_text, ends_text
from .errors import InvalidArgument
from .forecast_tables import unit_of
from .forecasting import Forecast
from .intervals import Interval, interval_of
from .linear_spread import Linear, linear_spread

if TYPE_CHECKING:
    from matplotlib.figure import Figure


# Stem of the columns of each difference that comes with an interval.
INTERVALS = {
    "duration": "longer",
    "overshoot": "overshoot_more",
    "evaporated": "evaporated_more",
}


@dataclass(frozen=True, eq=False)
class Comparison:
    """A changed batch against a known one.

    Attributes
    ----------
    table :
        One row per phase and one for the whole run, whose overshoot is the highest of all phases.
        Differences are changed less known: minutes, kelvin, kilograms; with a fit or scatter each
        has columns for the ends of its interval.
    known, changed :
        The two forecasts.
    """

    table: pd.DataFrame
    known: Forecast
    changed: Forecast

    @property
    def longer(self) -> float:
        """How much longer the changed batch takes [s]."""
        return self.changed.duration - self.known.duration

    def interval(self, quantity: str, phase: int | None = None) -> Interval | None:
        """Where a difference, changed less known, is expected to lie, in SI units.

        Members are compared one by one: the coefficients of both batches are the same draws, and
        so are, in forecasts of the same day, hands, ingredients and room where the batches have
        them in common, and model errors as far as the batches are alike. What is unknown cancels
        where it acts on both. Forecast one of them with another `day` for batches that are cooked
        apart.

        Parameters
        ----------
        quantity :
            duration, time_to_reach, start, overshoot, overshoot_reading, evaporated or energy.
        phase :
            Number from 1; None: of the whole run.

        Returns
        -------
        Interval or None
            None if one of the forecasts has no drawn batches or they have not the same number.
        """
        before, after = self.known.ensemble, self.changed.ensemble
        if before is None or after is None or len(before.members) != len(after.members):
            return None
        with np.errstate(invalid="ignore"):  # neither end known: infinite less infinite
            values = after.values(quantity, phase) - before.values(quantity, phase)
        missed = before.missed(phase) | after.missed(phase)
        failed = before.failed | after.failed
        return interval_of(quantity, values, missed, failed, level=self.known.level)

    def longer_interval(self) -> tuple[float, float] | None:
        """Interval of `longer` [s]; None without a fit or scatter. See `interval`."""
        found = self.interval("duration")
        return None if found is None else (found.low, found.high)

    def linear(self, quantity: str = "duration", phase: int | None = None) -> Linear:
        """Spread of a difference to first order, by source, for batches of one day.

        Parameters
        ----------
        quantity, phase :
            As for `Forecast.linear`.

        Raises
        ------
        InvalidArgument
            A forecast was made without a fit or without `sensitivities=True`, or from another fit.
        """
        if self.known.fit is not self.changed.fit:
            raise InvalidArgument("linear: the two forecasts come from different fits")
        less = self.known.gradient(quantity, phase)
        scatter = self.known.linear_scatter()
        assert self.known.fit is not None
        return linear_spread(self.known.fit, scatter, self.changed.gradient(quantity, phase), less)

    def same_day(self) -> bool:
        """Whether both forecasts share the draws of what they have in common."""
        both = [one.ensemble for one in (self.known, self.changed)]
        days = {(one.plan.seed, one.plan.day) for one in both if one is not None}
        return len(days) == 1

    def sentence(self) -> str:
        """The answer in one sentence."""
        way = "longer" if self.longer >= 0.0 else "less"
        text = f"{self.changed.recipe.name} takes {clock_text(abs(self.longer))} min {way}"
        interval = self.longer_interval()
        if interval is not None:
            sign = 1.0 if self.longer >= 0.0 else -1.0
            ends = ends_text(*sorted(sign * end for end in interval))
            text += f" ({self.known.level:.0%} interval {ends})"
        changed, known = clock_text(self.changed.duration), clock_text(self.known.duration)
        return f"{text}: {changed} min instead of {known} min."

    def to_json(self) -> str:
        """Table and total as JSON text."""
        interval = self.longer_interval()
        plain = {
            "known": self.known.recipe.name,
            "changed": self.changed.recipe.name,
            "longer_min": self.longer / 60.0,
            "longer_interval_min": interval and [_or_none(end / 60.0) for end in interval],
            "interval_level": self.known.level if interval else None,
            "same_day": self.same_day() if interval else None,
            "phases": json.loads(self.table.reset_index().to_json(orient="records")),
        }
        return json.dumps(plain, indent=1)

    def plot(self) -> Figure:
        """Product temperature of both batches, and their phases side by side."""
        from .plots import plot_comparison

        return plot_comparison(self)


def _or_none(value: float) -> float | None:
    return value if math.isfinite(value) else None


def _with_intervals(comparison: Comparison) -> pd.DataFrame:
    """The table with the ends of the interval of each difference."""
    columns = {}
    phases = [*range(1, len(comparison.known.recipe.phases) + 1), None]
    for quantity, stem in INTERVALS.items():
        unit, size = unit_of(quantity)
        found = [comparison.interval(quantity, phase) for phase in phases]
        for end in ("low", "high"):
            columns[f"{stem}_{end}_{unit}"] = [
                np.nan if one is None else getattr(one, end) / size for one in found
            ]
    return comparison.table.assign(**columns)


def compare(known: Forecast, changed: Forecast) -> Comparison:
    """Compare two forecasts phase by phase.

    Parameters
    ----------
    known, changed :
        Forecasts of recipes with the same number of phases.

    Raises
    ------
    InvalidArgument
        The numbers of phases differ.
    """
    before, after = known.phases, changed.phases
    if len(before) != len(after):
        raise InvalidArgument(
            f"compare: {known.recipe.name!r} has {len(before)} phases, "
            f"{changed.recipe.name!r} has {len(after)}; both must have the same number"
        )
    table = pd.DataFrame(
        {
            "phase": before["phase"],
            "known_min": before["duration_min"],
            "changed_min": after["duration_min"],
            "longer_min": after["duration_min"] - before["duration_min"],
            "peak_hotter_K": after["peak_C"] - before["peak_C"],
            "overshoot_more_K": after["overshoot_K"] - before["overshoot_K"],
            "evaporated_more_kg": after["evaporated_kg"] - before["evaporated_kg"],
            "energy_more_kWh": after["energy_kWh"] - before["energy_kWh"],
        }
    )
    sums = ["known_min", "changed_min", "longer_min", "evaporated_more_kg", "energy_more_kWh"]
    total = {column: np.nan for column in table} | table[sums].sum().to_dict()
    highest = after["overshoot_K"].max() - before["overshoot_K"].max()
    table.loc["total"] = total | {"phase": "whole run", "overshoot_more_K": highest}
    comparison = Comparison(table, known, changed)
    if comparison.interval("duration") is None:
        return comparison
    return replace(comparison, table=_with_intervals(comparison))
