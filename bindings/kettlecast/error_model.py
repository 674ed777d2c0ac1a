"""How large the residuals of a fit are, and how long they stay alike."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

import numpy as np

from .fit_problem import FitOptions, Observed, Vector

# What is known before any residual is seen counts as much as this: so many independent residuals
# of the stated error, and a log of such a length [s] with the stated correlation time.
STATED_RESIDUALS = 4.0
_STATED_LENGTH = 1800.0


@dataclass(frozen=True)
class ErrorModel:
    """Standard deviations and correlation times of the residuals of floor sensor and probe.

    They hold the noise of the sensors and what a lumped model cannot follow. A stretch of a log
    as long as the correlation time tells as much as one independent reading.
    """

    floor_error: float  #: [K]
    probe_error: float  #: [K]
    floor_time: float  #: [s]
    probe_time: float  #: [s]

    def weights(self, one: Observed) -> tuple[float, float]:
        """How many independent readings each of floor and probe counts as, at most 1 [-]."""
        return min(1.0, one.step / self.floor_time), min(1.0, one.step / self.probe_time)

    def effective(self, observed: Iterable[Observed]) -> float:
        """Number of independent readings in some runs [-]."""
        total = 0.0
        for one in observed:
            floor, probe = self.weights(one)
            total += one.time.size * (probe + (floor if one.floor is not None else 0.0))
        return total


def stated_errors(options: FitOptions) -> ErrorModel:
    """The errors as the options state them."""
    time = options.correlation_time
    return ErrorModel(options.floor_error, options.probe_error, time, time)


def autocorrelation(residuals: Vector) -> Vector:
    """Autocorrelation of a series at lags of 0, 1, 2 ... samples [-]; of a constant 1, 0, 0 ..."""
    centred = residuals - residuals.mean()
    power = float(centred @ centred)
    count = centred.size
    if power <= 0.0:
        return np.asarray(np.eye(1, count)[0])
    spectrum = np.fft.rfft(centred, 2 * count)
    return np.asarray(np.fft.irfft(np.abs(spectrum) ** 2)[:count] / power)


def autocorrelation_time(residuals: Vector) -> float:
    """Integrated autocorrelation time of a series, in samples, at least 1 [-].

        1 + 2 (rho_1 + rho_2 + ...), summed by pairs as long as a pair is above zero

    Source: Geyer, Statistical Science 7 (1992) 473, initial positive sequence.
    """
    rho = autocorrelation(residuals)
    pairs = rho[: rho.size - rho.size % 2].reshape(-1, 2).sum(axis=1)
    ends = np.flatnonzero(pairs <= 0.0)
    kept = pairs[: ends[0]] if ends.size else pairs
    return max(1.0, 2.0 * float(kept.sum()) - 1.0)


def _of_sensor(
    series: Sequence[tuple[Vector, float]], stated: tuple[float, float], fitted: float
) -> tuple[float, float]:
    """Error and correlation time from the residuals of one sensor in all runs.

    `series` holds the residuals [K] and the interval [s] of each run, `fitted` how many values
    were fitted to them.
    """
    error, time = stated
    lengths = [residuals.size * step for residuals, step in series]
    times = [step * autocorrelation_time(residuals) for residuals, step in series]
    together = _STATED_LENGTH * time + float(np.dot(lengths, times))
    pooled = together / (_STATED_LENGTH + sum(lengths))
    independent = sum(lengths) / pooled
    squares = sum(
        float(np.mean(residuals**2)) * n for (residuals, _), n in zip(series, lengths, strict=True)
    )
    sum_of_squares = STATED_RESIDUALS * error**2 + squares / pooled
    free = STATED_RESIDUALS + max(independent - fitted, 0.25 * independent)
    return float(np.sqrt(sum_of_squares / free)), pooled


def estimated_errors(
    residuals: Sequence[tuple[Vector | None, Vector]],
    observed: Sequence[Observed],
    stated: ErrorModel,
    learned: float,
) -> ErrorModel:
    """Errors from what a fit left over, drawn to the stated ones where there is little of it.

    Parameters
    ----------
    residuals :
        Model less log of floor (None: not logged) and probe of each run [K].
    observed :
        The runs.
    stated :
        What was assumed before.
    learned :
        How many coefficients the data determined; shared among the sensors by their readings.
    """
    steps = [one.step for one in observed]
    floors = [
        (pair[0], step) for pair, step in zip(residuals, steps, strict=True) if pair[0] is not None
    ]
    probes = [(pair[1], step) for pair, step in zip(residuals, steps, strict=True)]
    share = len(floors) / (len(floors) + len(probes))
    floor = (stated.floor_error, stated.floor_time)
    if floors:
        floor = _of_sensor(floors, floor, share * learned)
    probe = _of_sensor(probes, (stated.probe_error, stated.probe_time), (1.0 - share) * learned)
    return ErrorModel(floor[0], probe[0], floor[1], probe[1])
