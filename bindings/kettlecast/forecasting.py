"""Forecasts a recipe on a kettle: how long each phase takes and how far it overshoots."""

from __future__ import annotations

import json
from dataclasses import dataclass
from functools import cached_property
from typing import TYPE_CHECKING, Any

import numpy as np
import pandas as pd
from numpy.typing import NDArray

from . import _core
from .errors import InvalidArgument
from .fit_result import Fit
from .forecast_notes import notes_of
from .forecast_tables import Spread, phases_table, spread_of, trace_table

if TYPE_CHECKING:
    from matplotlib.figure import Figure

# Draws of coefficients behind an interval: enough for its ends to settle within about a tenth.
_DRAWS = 100
_SEED = 20260101


@dataclass(frozen=True, eq=False)
class Forecast:
    """What will happen: one row per phase, and every signal over time.

    Attributes
    ----------
    kettle, recipe :
        What was run.
    result :
        Arrays and reports in SI units, as the compiled core gives them.
    members :
        Phase reports of the same recipe with coefficients drawn from the spread of the fit; empty
        without a fit. The interval they give holds the spread of the coefficients only, not
        slow hands and not what a lumped model leaves out.
    level :
        Share of cases that the intervals are meant to hold [-].
    """

    kettle: _core.Kettle
    recipe: _core.Recipe
    result: _core.ForecastResult
    members: tuple[tuple[_core.PhaseReport, ...], ...] = ()
    level: float = 0.9

    @property
    def duration(self) -> float:
        """Of the whole run [s]."""
        return self.result.duration

    @property
    def balance(self) -> _core.Balance:
        """Heat and mass books of the run."""
        return self.result.balance

    @cached_property
    def phases(self) -> pd.DataFrame:
        """One row per phase in degC, minutes, kilograms and kilowatt hours."""
        return self.to_dataframe()

    @cached_property
    def trace(self) -> pd.DataFrame:
        """All signals over time, temperatures in degC."""
        return trace_table(self.result.trace_names, self.result.trace)

    @cached_property
    def notes(self) -> tuple[str, ...]:
        """Sentences about limits that are met, such as an agitator that is not covered."""
        return notes_of(self.kettle, self.recipe, self.result)

    def to_dataframe(self, system: str = "metric") -> pd.DataFrame:
        """One row per phase; `system` is "metric" (degC, kg) or "us" (degF, lb)."""
        return phases_table(self.result.phases, self.recipe, self.spread(), system)

    def spread(self) -> Spread | None:
        """Lower and upper ends of the interval of each phase; None without a fit."""
        return spread_of(self.members, self.level) if self.members else None

    def member_durations(self) -> NDArray[np.float64]:
        """Total time of every member [s], shape (members,)."""
        return np.array([sum(phase.duration for phase in one) for one in self.members])

    def to_json(self) -> str:
        """Phases and books as JSON text."""
        plain: dict[str, Any] = {
            "kettle": self.kettle.name,
            "recipe": self.recipe.name,
            "duration_min": self.duration / 60.0,
            "product_mass_kg": self.result.product_mass,
            "interval_level": self.level if self.members else None,
            "notes": list(self.notes),
            "phases": json.loads(self.phases.reset_index().to_json(orient="records")),
            "balance": self.balance.to_dict(),
        }
        return json.dumps(plain, indent=1)

    def plot(self) -> Figure:
        """Temperatures, heat and stirring over time."""
        from .plots import plot_forecast

        return plot_forecast(self)


def forecast(
    kettle: Fit | _core.Kettle,
    recipe: _core.Recipe,
    *,
    coefficients: _core.Coefficients | None = None,
    room: _core.Surroundings | None = None,
    start: _core.Start | None = None,
    options: _core.Options | None = None,
    level: float = 0.9,
    draws: int = _DRAWS,
    seed: int = _SEED,
) -> Forecast:
    """Run a recipe in closed loop and report each phase.

    Parameters
    ----------
    kettle :
        A fit, or a kettle as on its type plate; without a fit, handbook coefficients are used
        and no interval is given.
    recipe :
        Not changed.
    coefficients :
        For a plain kettle, coefficients other than the handbook's.
    room :
        Surroundings, where they differ from those of the kettle.
    start :
        Temperatures of the kettle at the start. Default: those of the room.
    options :
        Accuracy and output.
    level, draws, seed :
        Of the interval from the spread of the fit: share of cases it is meant to hold, number of
        draws (0: no interval), and seed of the random numbers.

    Raises
    ------
    InvalidArgument
        The recipe cannot be run on this kettle, for example because it overflows.
    IntegrationFailure
        With time [s], phase and component.
    """
    fitted = kettle if isinstance(kettle, Fit) else None
    if fitted is not None and coefficients is not None:
        raise InvalidArgument("forecast: a fit brings its coefficients; give one of the two")
    if not 0.0 < level < 1.0 or draws < 0:
        raise InvalidArgument(f"forecast: level must be in 0..1 and draws >= 0: {level}, {draws}")
    body = fitted.kettle if fitted is not None else kettle
    assert isinstance(body, _core.Kettle)
    if room is not None:
        body = body.replace(surroundings=room)
    chosen = fitted.coefficients if fitted else coefficients or _core.Coefficients()
    warm = start or _core.Start(
        floor=body.surroundings.temperature, wall=body.surroundings.temperature
    )
    result = _core.simulate(
        body, chosen, recipe=recipe, start=warm, options=options or _core.Options()
    )
    members: tuple[tuple[_core.PhaseReport, ...], ...] = ()
    if fitted is not None and draws > 0:
        coarse = (options or _core.Options()).replace(output_interval=3600.0, tolerance=1e-5)
        runs = _core.simulate_many(
            body, fitted.draws(draws, seed), recipe=recipe, start=warm, options=coarse
        )
        members = tuple(tuple(one.phases) for one in runs)
    return Forecast(body, recipe, result, members, level)
