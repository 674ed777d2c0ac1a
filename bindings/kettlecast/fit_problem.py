"""A fit as a least-squares problem: scaled coefficients in, weighted residuals out."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field

import numpy as np
from numpy.typing import NDArray

from . import _core
from .run_log import Run
from .run_plan import run_plan

Vector = NDArray[np.float64]

CARDS = {card.name: card for card in _core.coefficient_cards()}

# Step of the difference quotient in units of the prior spread: 1 % of a spread moves readings by
# much more than the integration error and much less than their curvature.
_STEP = 1e-2


@dataclass(frozen=True)
class FitOptions:
    """How residuals are weighed.

    A residual counts as one standard deviation when it is as large as the error given here; the
    errors hold sensor noise and what a lumped model cannot follow. Residuals of a log are alike
    from sample to sample, so `interval / correlation_time` of each is counted.
    """

    floor_error: float = 1.0  #: of floor readings [K]
    probe_error: float = 0.4  #: of probe readings [K]
    correlation_time: float = 120.0  #: of the residuals [s]
    interval: float = 10.0  #: logs are averaged over this long [s]
    loss: str = "soft_l1"  #: as in scipy.optimize.least_squares
    max_evaluations: int = 60
    integration: _core.Options = field(default_factory=_core.Options)


@dataclass(frozen=True)
class Observed:
    """What a run showed at the output times of its plan [K]."""

    run: Run
    plan: _core.RunPlan
    time: Vector
    floor: Vector | None
    probe: Vector


def _averaged(time: Vector, values: Vector, edges: Vector) -> Vector:
    where = np.digitize(time, edges) - 1
    count = np.bincount(where, minlength=edges.size)
    total = np.bincount(where, weights=values, minlength=edges.size)
    return np.asarray(total[count > 0] / count[count > 0])


def observe(run: Run, room: _core.Surroundings, interval: float) -> Observed:
    """Readings of a run averaged over `interval` [s]; slower logs are taken as they are."""
    edges = np.arange(run.time[0], run.time[-1] + interval, interval)
    if np.median(np.diff(run.time)) > 0.5 * interval:
        edges = run.time
    time = _averaged(run.time, run.time, edges)
    floor = None if run.floor_reading is None else _averaged(run.time, run.floor_reading, edges)
    probe = _averaged(run.time, run.probe_reading, edges)
    return Observed(run, run_plan(run, room, time), time, floor, probe)


def informative(kettle: _core.Kettle, runs: Sequence[Run]) -> list[str]:
    """Names of the coefficients that such runs can say anything about.

    Left out are the jacket without a jacket, the floor sensor where it was not logged, pieces
    where none were added, the lid where none was used, and heaters that were never on.
    """
    additions = [addition for run in runs for _, addition in run.pours]
    pieces = any(addition.shape is not _core.Shape.none for addition in additions)
    lid = any(cover is _core.Cover.lid for run in runs for _, cover in run.covers)
    open_surface = any(cover is _core.Cover.open for run in runs for _, cover in run.covers)
    floor_logged = any(run.floor_reading is not None for run in runs)
    unused = {"agitator.heat_capacity"}
    if kettle.jacket_height == 0.0:
        unused |= {name for name in CARDS if name.startswith("jacket.")}
    if not any(np.any(run.jacket_heat > 0.0) for run in runs):
        unused.add("jacket.efficiency")
    if not any(np.any(run.floor_heat > 0.0) for run in runs):
        unused |= {"floor.efficiency", "floor.boiling_factor"}
    if not floor_logged:
        unused |= {name for name in CARDS if name.startswith("floor_sensor.")}
    if not pieces:
        unused |= {"piece.film_factor", "juice.rate", "solids.thickening"}
        unused.add("floor.contact_resistance")
    if not lid:
        unused.add("evaporation.lid_factor")
    if not (lid or open_surface):
        unused.add("evaporation.factor")
    return [name for name in CARDS if name not in unused]


class FitProblem:
    """Residuals of all runs as a function of scaled coefficients.

    A scaled coefficient is 0 at its default and 1 one prior spread above; of coefficients that
    are scales or rates the logarithm is taken.

    Parameters
    ----------
    kettle :
        As on its type plate.
    observed :
        What the runs showed.
    names :
        Coefficients to fit, in this order.
    base :
        Values of all coefficients; those not fitted stay as they are.
    """

    def __init__(
        self,
        kettle: _core.Kettle,
        observed: Sequence[Observed],
        names: Sequence[str],
        base: _core.Coefficients,
        options: FitOptions,
    ) -> None:
        self.kettle = kettle
        self.observed = tuple(observed)
        self.names = tuple(names)
        self.base = base
        self.options = options
        self._plans = [one.plan for one in observed]
        self.lower = np.array([self.scaled_value(n, CARDS[n].lower) for n in names])
        self.upper = np.array([self.scaled_value(n, CARDS[n].upper) for n in names])

    @staticmethod
    def scaled_value(name: str, value: float) -> float:
        """A value as its distance from the default in prior spreads."""
        card = CARDS[name]
        if card.positive:
            return float(np.log(value / card.value) / card.spread)
        return float((value - card.value) / card.spread)

    @staticmethod
    def _unscaled(name: str, scaled: float) -> float:
        card = CARDS[name]
        if card.positive:
            value = card.value * float(np.exp(scaled * card.spread))
        else:
            value = card.value + scaled * card.spread
        return min(max(value, card.lower), card.upper)

    def scaled(self, values: Mapping[str, float]) -> Vector:
        """Scaled coefficients, shape (n,), of values by name."""
        return np.array([self.scaled_value(name, values[name]) for name in self.names])

    def values(self, point: Vector) -> dict[str, float]:
        """Values by name of scaled coefficients."""
        return {n: self._unscaled(n, x) for n, x in zip(self.names, point, strict=True)}

    def slopes(self, point: Vector) -> Vector:
        """Change of each value per change of its scaled coefficient, shape (n,)."""
        values = self.values(point)
        return np.array(
            [
                values[n] * CARDS[n].spread if CARDS[n].positive else CARDS[n].spread
                for n in self.names
            ]
        )

    def coefficients(self, point: Vector) -> _core.Coefficients:
        """All coefficients at a point."""
        return self.base.replace(self.values(point))

    def replays(self, points: Sequence[Vector]) -> list[list[_core.Replay]]:
        """Replays of every run at every point: one list of runs per point."""
        sets = [self.coefficients(point) for point in points]
        runs = range(len(self._plans))
        tasks = [(run, coefficients) for coefficients in sets for run in runs]
        options = self.options.integration
        flat = _core.replay_many(self.kettle, self._plans, tasks=tasks, options=options)
        return [flat[i : i + len(self._plans)] for i in range(0, len(flat), len(self._plans))]

    def differences(self, replays: Sequence[_core.Replay]) -> list[tuple[Vector | None, Vector]]:
        """Model less log for floor and probe of each run [K]."""
        pairs = []
        for one, replay in zip(self.observed, replays, strict=True):
            floor = None if one.floor is None else replay.floor_reading - one.floor
            pairs.append((floor, replay.probe_reading - one.probe))
        return pairs

    def _data_residuals(self, replays: Sequence[_core.Replay]) -> Vector:
        parts = []
        for one, (floor, probe) in zip(self.observed, self.differences(replays), strict=True):
            spacing = float(np.median(np.diff(one.time)))
            weight = np.sqrt(min(1.0, spacing / self.options.correlation_time))
            if floor is not None:
                parts.append(weight / self.options.floor_error * floor)
            parts.append(weight / self.options.probe_error * probe)
        return np.concatenate(parts)

    def residuals(self, point: Vector) -> Vector:
        """Weighted residuals of the data, then those of the priors."""
        return np.concatenate([self._data_residuals(self.replays([point])[0]), point])

    def jacobian(self, point: Vector) -> Vector:
        """Derivative of the residuals by the scaled coefficients, by difference quotients."""
        n = point.size
        steps = np.where(point + _STEP < self.upper, _STEP, -_STEP)
        replays = self.replays([point, *(point + np.diag(steps))])
        columns = [self._data_residuals(one) for one in replays]
        data = np.stack([(columns[i + 1] - columns[0]) / steps[i] for i in range(n)], axis=1)
        return np.vstack([data, np.eye(n)])

    def effective_count(self) -> float:
        """Number of independent values in the data, by the correlation time [-]."""
        total = 0.0
        for one in self.observed:
            channels = 1 if one.floor is None else 2
            spacing = float(np.median(np.diff(one.time)))
            share = min(1.0, spacing / self.options.correlation_time)
            total += channels * one.time.size * share
        return total
