"""Two forecasts side by side: how much longer, hotter and drier."""

from __future__ import annotations

import json
from dataclasses import dataclass
from typing import TYPE_CHECKING

import numpy as np
import pandas as pd

from .clock_text import clock_text
from .errors import InvalidArgument
from .forecasting import Forecast

if TYPE_CHECKING:
    from matplotlib.figure import Figure


@dataclass(frozen=True, eq=False)
class Comparison:
    """A changed batch against a known one.

    Attributes
    ----------
    table :
        One row per phase and one for the whole run. Differences are changed less known: minutes,
        kelvin, kilograms.
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

    def longer_interval(self) -> tuple[float, float] | None:
        """Interval of `longer` [s] from the spread of the fit; None without a fit.

        Both forecasts use the same draws of coefficients, so that what is unknown about the
        kettle cancels where it acts on both.
        """
        before, after = self.known.member_durations(), self.changed.member_durations()
        if before.size == 0 or before.size != after.size:
            return None
        tail = 0.5 * (1.0 - self.known.level)
        low, high = np.quantile(after - before, [tail, 1.0 - tail])
        return float(low), float(high)

    def sentence(self) -> str:
        """The answer in one sentence."""
        way = "longer" if self.longer >= 0.0 else "less"
        text = f"{self.changed.recipe.name} takes {clock_text(abs(self.longer))} min {way}"
        interval = self.longer_interval()
        if interval is not None:
            sign = 1.0 if self.longer >= 0.0 else -1.0
            ends = " to ".join(clock_text(end) for end in sorted(sign * end for end in interval))
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
            "longer_interval_min": None if interval is None else [x / 60.0 for x in interval],
            "phases": json.loads(self.table.reset_index().to_json(orient="records")),
        }
        return json.dumps(plain, indent=1)

    def plot(self) -> Figure:
        """Product temperature of both batches, and their phases side by side."""
        from .plots import plot_comparison

        return plot_comparison(self)


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
    table.loc["total"] = total | {"phase": "whole run"}
    return Comparison(table, known, changed)
