"""What a fit found, and how sure it is."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from pathlib import Path
from typing import TYPE_CHECKING

import numpy as np
import pandas as pd
from numpy.typing import NDArray

from . import _core
from .error_model import ErrorModel
from .fit_draws import scaled_draws
from .fit_problem import CARDS, FitOptions
from .fit_search import Search

if TYPE_CHECKING:
    from matplotlib.figure import Figure

    from .doubts import Doubt
    from .fit_profile import ProfileInterval
    from .known_combinations import Inseparable
    from .leave_one_out import LeaveOneOut
    from .scatter import Scatter

Vector = NDArray[np.float64]

# Pairs of coefficients whose correlation is stronger than this are named in the report.
STRONG_CORRELATION = 0.9


@dataclass(frozen=True)
class Param:
    """One fitted coefficient, in the unit of its card; names as users of lmfit know them."""

    name: str
    value: float
    stderr: float
    init_value: float
    at_bound: bool
    run: str = ""  #: whose value it is; empty: of all runs

    @property
    def label(self) -> str:
        """Name, and the run where every run has its own value."""
        return f"{self.name} [{self.run}]" if self.run else self.name

    @property
    def unit(self) -> str:
        """Unit of value and stderr."""
        return CARDS[self.name].unit

    @property
    def min(self) -> float:
        """Lower bound."""
        return CARDS[self.name].lower

    @property
    def max(self) -> float:
        """Upper bound."""
        return CARDS[self.name].upper


@dataclass(frozen=True)
class RunQuality:
    """How well one run is followed; RMS of model less log [K].

    Attributes
    ----------
    floor_slow, probe_slow :
        The part of it that neighbouring readings share, and noise does not: root of the mean
        product of neighbouring residuals [K].
    lateness :
        How much later than planned each pour began [s], where the recipe plans one.
    """

    name: str
    floor_rms: float | None
    probe_rms: float
    probe_autocorrelation: float
    sha256: str
    heat_source: str = "logged"
    floor_slow: float | None = None
    probe_slow: float | None = None
    lateness: tuple[float, ...] = ()


@dataclass(frozen=True, eq=False)
class Fit:
    """A kettle with fitted coefficients.

    Attributes
    ----------
    kettle, coefficients :
        Use both for forecasts, or give the fit itself to `forecast`.
    params :
        Fitted coefficients by name; those with a value of their own in every run as
        "name [run]".
    per_run :
        Names of the coefficients with a value of their own in every run. `coefficients` holds
        their mean, or the default where they belong to a day (hands, room, scales).
    of_runs :
        Coefficients of each run.
    errors :
        How large residuals are and how long they stay alike.
    fixed :
        Coefficients that were given, by name.
    covar, scaled_covar :
        Covariance of the values, and of the scaled coefficients, shape (n, n), in the order of
        `params`.
    chisqr, redchi :
        Sum of squared weighted residuals; the same per degree of freedom, where the data count
        as `neffective` independent values.
    runs :
        Quality of each run.
    comparison :
        Readings of log and model of each run: time [s], floor and probe [K].
    search, found :
        The logs and what was searched for, and where the search ended, which asking further
        needs; None for a fit that was read from a file.
    version :
        Of kettlecast that made the fit.
    kept_draws :
        Scaled draws that a file keeps in place of the logs, shape (draws, n); else None.
    """

    kettle: _core.Kettle
    coefficients: _core.Coefficients
    params: Mapping[str, Param]
    fixed: Mapping[str, float]
    covar: Vector
    scaled_covar: Vector
    chisqr: float
    redchi: float
    ndata: int
    neffective: float
    nfev: int
    success: bool
    message: str
    runs: tuple[RunQuality, ...]
    per_run: tuple[str, ...]
    of_runs: tuple[_core.Coefficients, ...]
    errors: ErrorModel
    options: FitOptions = field(default_factory=FitOptions)
    comparison: tuple[dict[str, Vector | None], ...] = ()
    search: Search | None = None
    found: _core.MapFit | None = None
    kept_draws: Vector | None = None
    version: str = _core.__version__
    _drawn: dict[tuple[int, int], Vector] = field(default_factory=dict, repr=False)

    @property
    def nvarys(self) -> int:
        """Number of fitted coefficients."""
        return len(self.params)

    def correl(self) -> pd.DataFrame:
        """Correlation matrix of the fitted coefficients."""
        spread = np.sqrt(np.diag(self.scaled_covar))
        names = list(self.params)
        return pd.DataFrame(self.scaled_covar / np.outer(spread, spread), names, names)

    def strong_pairs(self) -> list[tuple[str, str, float]]:
        """Pairs of coefficients that the data hardly tell apart, strongest first."""
        matrix = self.correl().to_numpy()
        names = list(self.params)
        pairs = [
            (names[i], names[j], float(matrix[i, j]))
            for i in range(len(names))
            for j in range(i)
            if abs(matrix[i, j]) > STRONG_CORRELATION
        ]
        return sorted(pairs, key=lambda pair: -abs(pair[2]))

    def learned(self, name: str) -> float:
        """Share of the prior spread of a coefficient that the data took away, 0 to 1 [-]."""
        index = list(self.params).index(name)
        return float(max(0.0, 1.0 - np.sqrt(self.scaled_covar[index, index])))

    def moved(self, name: str) -> float:
        """How far a coefficient moved from its prior, in prior spreads [-]."""
        return float(self.scaled()[list(self.params).index(name)])

    def scaled(self) -> Vector:
        """Fitted values in prior spreads from their priors, in the order of `params` [-]."""
        shared = [one.name for one in self.params.values() if not one.run]
        own = [_core.to_scaled(one, self.per_run) for one in self.of_runs]
        return np.concatenate([_core.to_scaled(self.coefficients, shared), *own])

    def draws(self, count: int, seed: int) -> list[_core.Coefficients]:
        """Sets of coefficients drawn from the spread of the fit.

        Parameters
        ----------
        count :
            Number of sets.
        seed :
            Of the random numbers; the same seed gives the same sets.
        """
        shared = [one.name for one in self.params.values() if not one.run]
        of_kettle = [name for name in self.per_run if not CARDS[name].of_run]
        points = self.scaled_draws(count, seed)
        own = self._of_next_run(points[:, len(shared) :], np.random.default_rng([seed, 1]))
        return [
            _core.from_scaled(self.coefficients, [*shared, *of_kettle], point=[*point, *extra])
            for point, extra in zip(points[:, : len(shared)], own, strict=True)
        ]

    def scaled_draws(self, count: int, seed: int) -> Vector:
        """Draws behind `draws`, in prior spreads, shape (count, n) in the order of `params`."""
        if (count, seed) not in self._drawn:
            self._drawn[count, seed] = scaled_draws(self, count, seed)
        return self._drawn[count, seed]

    def _of_next_run(self, points: Vector, generator: np.random.Generator) -> Vector:
        """Values of the next run of coefficients of the kettle that differ from run to run.

        They scatter around the mean of the runs as those do, and as one run with the prior spread.
        """
        kept = [i for i, name in enumerate(self.per_run) if not CARDS[name].of_run]
        values = points.reshape(len(points), len(self.runs), len(self.per_run))[:, :, kept]
        mean = values.mean(axis=1)
        squares = np.sum((values - mean[:, None, :]) ** 2, axis=1)
        scatter = np.sqrt((1.0 + squares) / len(self.runs))
        return np.asarray(mean + scatter * generator.standard_normal(mean.shape))

    def profile(self, label: str, level: float = 0.9) -> ProfileInterval:
        """Interval of one fitted value from the cost itself, see `profile_of`."""
        from .fit_profile import profile_of

        return profile_of(self, label, level)

    def scatter(self, held_out: float | None = None) -> Scatter:
        """What differs from batch to batch, as far as the fitted runs tell.

        Model errors are the slow part of the residuals, RMS over the runs, enlarged by
        ``sqrt(n / (n - p))`` with n independent readings and p coefficients that they decided.
        Lateness of hands is that of the logged pours; the usual lateness counts for two more.
        The rest is as `Scatter` has it.

        Parameters
        ----------
        held_out :
            RMS of residuals of runs that were not fitted over that of fitted ones [-], if known;
            enlarges the model errors in place of the root above.

        Raises
        ------
        InvalidArgument
            `held_out` is not above 0.
        """
        from .scatter import scatter_of

        return scatter_of(self, held_out)

    def table(self) -> pd.DataFrame:
        """One row per coefficient: value, standard error, start, bounds, unit."""
        rows = [
            {
                "coefficient": one.label,
                "value": one.value,
                "stderr": one.stderr,
                "unit": one.unit,
                "start": one.init_value,
                "min": one.min,
                "max": one.max,
                "learned": self.learned(one.label),
                "at_bound": one.at_bound,
            }
            for one in self.params.values()
        ]
        return pd.DataFrame(rows).set_index("coefficient")

    def inseparable(self) -> tuple[Inseparable, ...]:
        """Coefficients the runs cannot tell apart, see `known_combinations.inseparable`."""
        from .known_combinations import inseparable

        return inseparable(self)

    def information_criteria(self, effective: float | None = None) -> _core.Information:
        """AIC, AICc and BIC, see `model_choice.information_criteria`."""
        from .model_choice import information_criteria

        return information_criteria(self, effective)

    def leave_one_out(self) -> LeaveOneOut:
        """How well each run is followed by a fit of the others, see `leave_one_out`."""
        from .leave_one_out import leave_one_out

        return leave_one_out(self)

    def doubts(self, *, level: float = 0.01, most: int = 3) -> tuple[Doubt, ...]:
        """What looks wrong with the runs, and what would explain it, see `doubts.doubts`."""
        from .doubts import doubts

        return doubts(self, level=level, most=most)

    def fit_report(self, held_out: LeaveOneOut | None = None) -> str:
        """The fit in words and numbers.

        Parameters
        ----------
        held_out :
            From `leave_one_out`, to be told beside how well each run was fitted.
        """
        from .fit_report import fit_report

        return fit_report(self, held_out)

    def plot(self) -> Figure:
        """Readings of log and model, and their difference, for each run."""
        from .plots import plot_fit

        return plot_fit(self)

    def plot_residuals(self) -> Figure:
        """Residuals over time, their autocorrelation and their quantiles for each run."""
        from .plot_residuals import plot_residuals

        return plot_residuals(self)

    def save(self, path: str | Path) -> None:
        """Write the fit to a JSON file, see `read_fit`."""
        from .fit_file import write_fit

        write_fit(self, path)
