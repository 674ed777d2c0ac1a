"""Whether more coefficients are worth it: information criteria of a fit."""

from __future__ import annotations

import numpy as np

from . import _core
from .fit_logs import search_of
from .fit_result import Fit


def information_criteria(fit: Fit, effective: float | None = None) -> _core.Information:
    """AIC, AICc and BIC of a fit, smaller is better [-].

    Only differences between fits of the same runs mean something, and only where `effective` is
    the same. Every fitted coefficient counts as one; errors that were estimated count as one more
    for each sensor.

        D = n_floor log(s_floor^2) + n_probe log(s_probe^2),  s RMS residual, n independent readings

    Source: Burnham, Anderson, Model selection and multimodel inference (2002), section 2.2.

    Parameters
    ----------
    fit :
        With its logs.
    effective :
        How many independent readings the runs are worth [-]. Default: `neffective` of the fit.

    Raises
    ------
    InvalidArgument
        The fit was read from a file.
    """
    search = search_of(fit, "information_criteria")
    count = fit.neffective if effective is None else effective
    if not fit.options.estimate_errors:
        return _core.information_of(0.5 * fit.chisqr, count=count, parameters=fit.nvarys)
    weights = np.array([fit.errors.weights(one) for one in search.observed])
    sizes = np.array([one.time.size for one in search.observed])
    squares = np.array([[(run.floor_rms or 0.0) ** 2, run.probe_rms**2] for run in fit.runs])
    logged = np.array([[run.floor_rms is not None, True] for run in fit.runs])
    readings = weights * sizes[:, None] * logged
    sensors = readings.sum(axis=0) > 0.0
    of_sensor = readings.sum(axis=0)[sensors]
    mean_squares = (readings * squares).sum(axis=0)[sensors] / of_sensor
    # One pooled variance with the same deviance: the geometric mean of those of the sensors.
    pooled = np.exp(np.dot(of_sensor, np.log(mean_squares)) / of_sensor.sum())
    parameters = fit.nvarys + int(sensors.sum()) - 1
    cost = 0.5 * count * float(pooled)
    return _core.information_of(cost, count=count, parameters=parameters, estimated=True)
