"""Forecasts a recipe on a kettle: how long each phase takes and how far it overshoots."""

from __future__ import annotations

import json
import math
from dataclasses import dataclass, replace
from functools import cached_property
from typing import TYPE_CHECKING, Any

import pandas as pd

from . import _core
from .errors import InvalidArgument, UnknownName
from .file_model import nearest
from .fit_draws import USUAL_SEED
from .fit_result import Fit
from .forecast_notes import notes_of
from .forecast_tables import INTERVAL_COLUMNS, phases_table, trace_table
from .intervals import Ensemble, Interval, run_ensemble
from .linear_spread import Gradient, Linear, gradient_of, linear_spread
from .propagation import Plan, prior_draws, room_start
from .scatter import Scatter
from .sensitivities import Sensitivities, sensitivities_of

if TYPE_CHECKING:
    from matplotlib.figure import Figure

# Batches drawn behind an interval: enough for its ends to settle within about a tenth.
_DRAWS = 100
# Accuracy of these batches: a hundredth of a second of a phase time.
_TOLERANCE = 1e-5


@dataclass(frozen=True, eq=False)
class Forecast:
    """What will happen: one row per phase, and every signal over time.

    Attributes
    ----------
    kettle, recipe :
        What was run.
    result :
        Arrays and reports in SI units, as the compiled core gives them.
    ensemble :
        The same batch drawn again and again, see `Scatter`; None without a fit or scatter.
    level :
        Share of cases that the intervals are meant to hold [-].
    sensitivities :
        Slopes by everything the forecast rests on, if they were asked for.
    fit :
        The fit it was made from; None for a plain kettle.
    """

    kettle: _core.Kettle
    recipe: _core.Recipe
    result: _core.ForecastResult
    ensemble: Ensemble | None = None
    level: float = 0.9
    sensitivities: Sensitivities | None = None
    fit: Fit | None = None

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
        """Sentences about limits that are met, such as an agitator that is not covered.

        Drawn batches that could not be run are told of too.
        """
        lost = self.ensemble.notes() if self.ensemble is not None else ()
        return (*notes_of(self.kettle, self.recipe, self.result), *lost)

    def to_dataframe(self, system: str = "metric") -> pd.DataFrame:
        """One row per phase; `system` is "metric" (degC, kg) or "us" (degF, lb)."""
        return phases_table(self.result.phases, self.recipe, self._intervals(), system)

    def _intervals(self) -> dict[str, list[Interval | None]] | None:
        """Intervals of each phase by quantity; None without an ensemble."""
        if self.ensemble is None:
            return None
        numbers = range(1, len(self.recipe.phases) + 1)
        return {
            name: [self.interval(name, number) for number in numbers] for name in INTERVAL_COLUMNS
        }

    @property
    def members(self) -> tuple[tuple[_core.PhaseReport, ...], ...]:
        """Phase reports of each drawn batch, empty for one that could not be run."""
        return self.ensemble.members if self.ensemble is not None else ()

    def interval(self, quantity: str, phase: int | str | None = None) -> Interval | None:
        """Where a quantity is expected to lie, in SI units.

        The forecast itself is by plan. Hands are only ever late, so it can lie at the lower end
        of its interval, or just below.

        Parameters
        ----------
        quantity :
            duration, time_to_reach, start, overshoot, overshoot_reading, evaporated or energy.
        phase :
            Number from 1, or name; None: the whole run, where overshoot is the highest of all
            phases, and time_to_reach and start have no meaning.

        Returns
        -------
        Interval or None
            None without a fit or scatter, and where no drawn batch has such a value.

        Raises
        ------
        UnknownName
            No such quantity or phase.
        """
        number = None if phase is None else self._number(phase)
        if self.ensemble is None:
            return None
        return self.ensemble.interval(quantity, number, self.level)

    def linear(self, quantity: str = "duration", phase: int | str | None = None) -> Linear:
        """Spread of a quantity to first order, by source; needs no drawn batches.

        Parameters
        ----------
        quantity :
            duration, time_to_reach, start, overshoot, overshoot_reading, evaporated or energy.
        phase :
            Number from 1, or name; None: the whole run, for duration, evaporated and energy.

        Raises
        ------
        InvalidArgument
            The forecast was made without a fit or without `sensitivities=True`.
        UnknownName
            No such quantity or phase.
        """
        fit = self._fit_of_slopes()
        return linear_spread(fit, self.linear_scatter(), self.gradient(quantity, phase))

    def linear_scatter(self) -> Scatter:
        """What `linear` lets batches differ in: as drawn, or as the fit says."""
        return self._fit_of_slopes().scatter() if self.ensemble is None else self.ensemble.scatter

    def gradient(self, quantity: str = "duration", phase: int | str | None = None) -> Gradient:
        """Slopes of a quantity as `linear` uses them; arguments and errors as there."""
        number = None if phase is None else self._number(phase)
        fit = self._fit_of_slopes()
        assert self.sensitivities is not None
        return gradient_of(fit, self.recipe, self.sensitivities, quantity=quantity, phase=number)

    def _fit_of_slopes(self) -> Fit:
        if self.fit is None or self.sensitivities is None:
            raise InvalidArgument(
                "linear: needs a forecast from a fit with slopes; allowed: "
                "forecast(fit, recipe, sensitivities=True)"
            )
        return self.fit

    def _number(self, phase: int | str) -> int:
        names = [one.name for one in self.recipe.phases]
        if isinstance(phase, int) and 1 <= phase <= len(names):
            return phase
        if phase not in names:
            raise UnknownName(
                f"phase {phase!r} is not in recipe {self.recipe.name!r}"
                f"{nearest(str(phase), names)}; there are 1 to {len(names)}: {', '.join(names)}"
            )
        return names.index(str(phase)) + 1

    def spread_sources(self, quantity: str = "duration") -> pd.DataFrame:
        """Which source makes how much of the spread: shares of variance of phases and run [-].

        Takes a further ensemble per source.

        Parameters
        ----------
        quantity :
            duration, overshoot, overshoot_reading, evaporated or energy.

        Raises
        ------
        InvalidArgument
            The forecast has no ensemble.
        UnknownName
            No such quantity.
        """
        from .spread_sources import spread_sources

        if self.ensemble is None:
            raise InvalidArgument(
                "spread_sources: this forecast has no drawn batches; forecast from a fit, or give "
                "scatter=, with draws above 0"
            )
        return spread_sources(self.ensemble, quantity)

    def to_json(self) -> str:
        """Phases and books as JSON text."""
        plain: dict[str, Any] = {
            "kettle": self.kettle.name,
            "recipe": self.recipe.name,
            "duration_min": self.duration / 60.0,
            "product_mass_kg": self.result.product_mass,
            "duration_interval_min": self._duration_interval(),
            "interval_level": self.level if self.ensemble is not None else None,
            "interval_holds": self.ensemble.holds() if self.ensemble is not None else None,
            "notes": list(self.notes),
            "phases": json.loads(self.phases.reset_index().to_json(orient="records")),
            "balance": self.balance.to_dict(),
        }
        return json.dumps(plain, indent=1)

    def _duration_interval(self) -> list[float | None] | None:
        found = self.interval("duration")
        if found is None:
            return None
        return [end / 60.0 if math.isfinite(end) else None for end in (found.low, found.high)]

    def plot(self) -> Figure:
        """Temperatures, heat and stirring over time."""
        from .plots import plot_forecast

        return plot_forecast(self)


def _ensemble(
    body: Fit | _core.Kettle, plan: Plan, scatter: Scatter | None, known: bool
) -> Ensemble | None:
    """The members around a forecast; None if nothing says what they differ in."""
    if plan.count == 0:
        return None
    if isinstance(body, Fit):
        drawn = tuple(body.draws(plan.count, plan.seed))
        return run_ensemble(replace(plan, drawn=drawn), scatter or body.scatter())
    if scatter is None:
        return None
    drawn = () if known else prior_draws(plan.centre, plan.count, plan.seed)
    return run_ensemble(replace(plan, drawn=drawn), scatter)


def forecast(
    kettle: Fit | _core.Kettle,
    recipe: _core.Recipe,
    *,
    coefficients: _core.Coefficients | None = None,
    room: _core.Surroundings | None = None,
    start: _core.Start | None = None,
    options: _core.Options | None = None,
    scatter: Scatter | None = None,
    level: float = 0.9,
    draws: int = _DRAWS,
    seed: int = USUAL_SEED,
    day: int = 0,
    sensitivities: bool = False,
) -> Forecast:
    """Run a recipe in closed loop and report each phase.

    Parameters
    ----------
    kettle :
        A fit, or a kettle as on its type plate; without a fit, handbook coefficients are used.
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
    scatter :
        What differs from batch to batch. Default: what the fit says, see `Fit.scatter`. With a
        plain kettle an interval is given only with scatter; its coefficients are then drawn from
        the spreads of the handbook, unless `coefficients` says what they are.
    level, draws, seed :
        Of the intervals: share of cases they are meant to hold, number of batches drawn (0: no
        intervals), and seed of the random numbers. Forecasts with the same seed share the draws
        of what they have in common, so that it cancels when they are compared.
    day :
        Number of the day. Forecasts of different days share the draws of coefficients only: hands,
        ingredients, room and model error are those of another day.
    sensitivities :
        Whether slopes by all coefficients and inputs are wanted too; they take a few runs more.

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
    centre = fitted.coefficients if fitted else coefficients or _core.Coefficients()
    fine = options or _core.Options()
    result = _core.simulate(
        body, centre, recipe=recipe, start=start or room_start(body), options=fine
    )
    coarse = fine.replace(output_interval=3600.0, tolerance=max(_TOLERANCE, fine.tolerance))
    plan = Plan(body, recipe, start, coarse, centre, (), draws, seed, day)
    ensemble = _ensemble(kettle, plan, scatter, coefficients is not None)
    slopes = None
    if sensitivities:
        begin = start or room_start(body)
        slopes = sensitivities_of(body, centre, recipe, start=begin, options=fine)
    return Forecast(body, recipe, result, ensemble, level, slopes, fitted)
