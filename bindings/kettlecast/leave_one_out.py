"""How well a fit follows runs it has not seen: each run is left out in turn."""

from __future__ import annotations

from dataclasses import dataclass, replace

import numpy as np
import pandas as pd

from . import _core
from .errors import InvalidArgument
from .fit_logs import search_of
from .fit_problem import Vector
from .fit_result import Fit
from .fit_search import Search


@dataclass(frozen=True)
class HeldOut:
    """A run judged by the other runs; RMS of model less log [K].

    Attributes
    ----------
    name :
        Of the run that was left out.
    floor_rms, probe_rms :
        With the coefficients of the other runs; floor None where it was not logged.
    floor_fitted, probe_fitted :
        The same when the run was fitted too.
    converged :
        Whether the fit to the other runs did.
    """

    name: str
    floor_rms: float | None
    probe_rms: float
    floor_fitted: float | None
    probe_fitted: float
    converged: bool = True

    @property
    def probe_ratio(self) -> float:
        """How many times larger residuals of the probe are in a run that was not fitted [-]."""
        return self.probe_rms / self.probe_fitted

    @property
    def floor_ratio(self) -> float | None:
        """The same of the floor sensor [-]; None where it was not logged."""
        if self.floor_rms is None or self.floor_fitted is None:
            return None
        return self.floor_rms / self.floor_fitted


@dataclass(frozen=True)
class LeaveOneOut:
    """Every run of a fit, judged by the others."""

    runs: tuple[HeldOut, ...]

    @property
    def probe_ratio(self) -> float:
        """RMS of the probe in runs not fitted, relative to fitted ones, all runs together [-]."""
        squares = [(one.probe_rms**2, one.probe_fitted**2) for one in self.runs]
        return _root_ratio(squares)

    @property
    def floor_ratio(self) -> float | None:
        """The same of the floor sensor [-]; None where no run logged it."""
        squares = [
            (one.floor_rms**2, one.floor_fitted**2)
            for one in self.runs
            if one.floor_rms is not None and one.floor_fitted is not None
        ]
        return _root_ratio(squares) if squares else None

    def table(self) -> pd.DataFrame:
        """One row per run: RMS of floor and probe left out and fitted [K], and their ratios."""
        rows = [
            {
                "run": one.name,
                "floor_rms": one.floor_rms,
                "floor_fitted": one.floor_fitted,
                "floor_ratio": one.floor_ratio,
                "probe_rms": one.probe_rms,
                "probe_fitted": one.probe_fitted,
                "probe_ratio": one.probe_ratio,
                "converged": one.converged,
            }
            for one in self.runs
        ]
        return pd.DataFrame(rows).set_index("run")


def _root_ratio(squares: list[tuple[float, float]]) -> float:
    unseen, fitted = np.sum(squares, axis=0)
    return float(np.sqrt(unseen / fitted))


def _rms(residuals: Vector) -> float:
    return float(np.sqrt(np.mean(residuals**2)))


def _without(fit: Fit, search: Search, index: int) -> HeldOut:
    from .fitting import for_forecasts

    others = [one for i, one in enumerate(search.observed) if i != index]
    rest = replace(search, observed=others)
    found = rest.minimise(fit.coefficients, fit.errors)
    learned = for_forecasts(rest, found, fit.coefficients)
    one, seen = search.observed[index], fit.runs[index]
    shown = _core.replay(fit.kettle, learned, plan=one.plan, options=search.options.integration)
    floor = None if one.floor is None else _rms(shown.floor_reading - one.floor)
    probe = _rms(shown.probe_reading - one.probe)
    return HeldOut(seen.name, floor, probe, seen.floor_rms, seen.probe_rms, found.converged)


def leave_one_out(fit: Fit) -> LeaveOneOut:
    """Refit without each run in turn and replay the run left out with what the others say.

    The refits start from the fit and keep its errors. What belongs to the day of a run (hands,
    room, scales) is as stated in the run left out, as in a forecast.

    Parameters
    ----------
    fit :
        Of two runs or more, with its logs.

    Raises
    ------
    InvalidArgument
        The fit was read from a file, or is one of a single run.
    """
    search = search_of(fit, "leave_one_out")
    if len(search.observed) < 2:
        raise InvalidArgument(
            "leave_one_out: the fit has 1 run; allowed: 2 or more, so that one can be left out"
        )
    return LeaveOneOut(tuple(_without(fit, search, i) for i in range(len(search.observed))))
