"""Profile intervals: how far one coefficient can go before the logs speak against it."""

from __future__ import annotations

from dataclasses import dataclass
from statistics import NormalDist
from typing import TYPE_CHECKING

import numpy as np
import pandas as pd
from numpy.typing import NDArray

from . import _core
from .errors import InvalidArgument, UnknownName
from .fit_problem import CARDS

if TYPE_CHECKING:
    from .fit_result import Fit


@dataclass(frozen=True, eq=False)
class ProfileInterval:
    """Interval of one coefficient, all others fitted again at every point.

    Attributes
    ----------
    label :
        Of the coefficient, as in `Fit.params`.
    unit :
        Of all numbers.
    lower, upper :
        Ends; None where the cost never rises as far: the side is unbounded.
    reasons :
        Why an end is missing, in words; empty for ends that were found.
    points :
        Values tried, and by how much chi-square rises there.
    """

    label: str
    unit: str
    level: float
    lower: float | None
    upper: float | None
    reasons: tuple[str, str]
    points: pd.DataFrame

    def __str__(self) -> str:
        low = "unbounded below" if self.lower is None else f"{self.lower:.4g}"
        high = "unbounded above" if self.upper is None else f"{self.upper:.4g}"
        unit = "" if self.unit == "-" else f" {self.unit}"
        text = f"{self.label}: {self.level:.0%} interval {low} to {high}{unit}"
        why = "; ".join(reason for reason in self.reasons if reason)
        return f"{text} ({why})" if why else text


def _quantile(level: float) -> float:
    """Quantile of chi-square with one degree of freedom [-]."""
    return NormalDist().inv_cdf(0.5 + 0.5 * level) ** 2


def profile_of(fit: Fit, label: str, level: float = 0.9) -> ProfileInterval:
    """Profile-likelihood interval of one fitted coefficient.

    Unlike a standard error it follows bends and bounds: a coefficient that the logs limit on one
    side only is said to be unbounded on the other.

    Parameters
    ----------
    fit :
        With its logs: one that `fit` returned, not one read from a file.
    label :
        Of the coefficient, as in `Fit.params`.
    level :
        Share of cases that the interval is meant to hold, 0 to 1.

    Raises
    ------
    InvalidArgument
        The fit has no logs, or the level is not between 0 and 1.
    UnknownName
        The coefficient was not fitted.

    Notes
    -----
    Source: Venzon & Moolgavkar, Applied Statistics 37 (1988) 87.
    """
    labels = list(fit.params)
    if label not in labels:
        raise UnknownName(f"profile: {label!r} was not fitted; fitted are {', '.join(labels)}")
    if fit.search is None:
        raise InvalidArgument("profile: a fit read from a file has no logs; fit the runs again")
    if not 0.0 < level < 1.0:
        raise InvalidArgument(f"profile: level must lie between 0 and 1, got {level}")
    found = fit.search.profile(
        fit.coefficients,
        fit.errors,
        fit.scaled(),
        index=labels.index(label),
        rise=0.5 * _quantile(level),
    )
    name = fit.params[label].name

    def unscaled(values: NDArray[np.float64] | list[float]) -> list[float]:
        base = fit.coefficients
        return [_core.from_scaled(base, [name], point=[float(one)])[name] for one in values]

    ends = [
        unscaled([side.value])[0] if side.found else None for side in (found.lower, found.upper)
    ]
    points = pd.DataFrame({"value": unscaled(found.values), "chi_square": 2.0 * found.rises})
    reasons = (found.lower.reason, found.upper.reason)
    return ProfileInterval(label, CARDS[name].unit, level, ends[0], ends[1], reasons, points)
