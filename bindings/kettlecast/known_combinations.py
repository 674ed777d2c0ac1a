"""Which coefficients the runs of a fit cannot tell apart, and which combination of them is known.

The spread of a fit is narrow across some direction and wide along others. Coefficients that lie
together on such a ridge are known badly each, and well in one combination: a product of powers of
those that are scales, a sum of those that are not.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from .fit_problem import CARDS, Vector
from .fit_result import STRONG_CORRELATION, Fit, Param

# A coefficient whose share in a combination is smaller than this is left out of it.
_LEAST_SHARE = 0.1


@dataclass(frozen=True)
class Combination:
    """A combination of coefficients that the runs determine.

    Attributes
    ----------
    weights :
        Exponent of each coefficient that is a scale, factor of each that is not, by label.
    formula :
        The combination in words.
    spread :
        Its standard deviation: relative where all are scales, else in `unit`.
    unit :
        Unit of the sum; "" where all are scales.
    """

    weights: dict[str, float]
    formula: str
    spread: float
    unit: str

    def __str__(self) -> str:
        known = f"{self.spread:.2g} {self.unit}" if self.unit else f"{100.0 * self.spread:.2g} %"
        known = known.removesuffix(" -")  # the unit of numbers in coefficient cards
        return f"{self.formula}, to {known}"


@dataclass(frozen=True)
class Inseparable:
    """Coefficients that the runs cannot tell apart, by label, and what they tell about them."""

    names: tuple[str, ...]
    known: tuple[Combination, ...]

    def __str__(self) -> str:
        *first, last = self.names
        told = " and ".join(str(one) for one in self.known)
        return (
            f"{', '.join(first)} and {last} cannot be told apart by these runs: only {told}, "
            "is known."
        )


def determined_directions(fit: Fit) -> int:
    """How many independent combinations the runs tell more about than the priors [-]."""
    information = np.linalg.inv(fit.scaled_covar) - np.eye(fit.nvarys)
    return int(np.sum(np.linalg.eigvalsh(information) > 1.0))


def _correlations(matrix: Vector) -> Vector:
    spread = np.sqrt(np.diag(matrix))
    return np.asarray(matrix / np.outer(spread, spread))


def _ridges(covariance: Vector) -> list[list[int]]:
    """Groups of coefficients that are tied in pairs, or with all others held still."""
    pairs = np.abs(_correlations(covariance)) > STRONG_CORRELATION
    precision = np.asarray(np.linalg.inv(covariance), dtype=np.float64)
    # One that is known no worse than with all others held still lies on no ridge.
    on_ridge = np.diag(covariance) * np.diag(precision) > 1.0 / (1.0 - STRONG_CORRELATION**2)
    held = np.abs(_correlations(precision)) > STRONG_CORRELATION
    tied = pairs | (held & np.outer(on_ridge, on_ridge))
    groups: list[list[int]] = []
    left = set(range(len(tied)))
    while left:
        group, fresh = set[int](), {min(left)}
        while fresh:
            group |= fresh
            fresh = {int(j) for i in fresh for j in np.flatnonzero(tied[i])} - group
        left -= group
        if len(group) > 1:
            groups.append(sorted(group))
    return groups


def _term(one: Param, weight: float) -> str:
    if CARDS[one.name].positive:
        return one.label if abs(weight - 1.0) < 0.05 else f"{one.label}^{weight:.2g}"
    return one.label if abs(weight - 1.0) < 0.05 else f"{weight:.2g} x {one.label}"


def _product(members: Sequence[Param], weights: Sequence[float], spread: float) -> Combination:
    """All are scales: the weights are exponents, the largest of them 1."""
    order = np.argsort(-np.abs(weights))
    unit = weights[order[0]]
    powers = [(members[i], weights[i] / unit) for i in order]
    formula = " x ".join(_term(one, power) for one, power in powers)
    relative = float(np.expm1(spread / abs(unit)))
    return Combination({one.label: power for one, power in powers}, formula, relative, "")


def _sum(members: Sequence[Param], weights: Sequence[float], spread: float) -> Combination:
    """Some are not scales: a sum in the unit of the first of those; scales by their logarithm."""
    lead = next(i for i, one in enumerate(members) if not CARDS[one.name].positive)
    order = [lead, *(i for i in range(len(members)) if i != lead)]
    factors = [(members[i], weights[i] / weights[lead]) for i in order]
    text = members[lead].label
    for one, factor in factors[1:]:
        sign = "-" if factor < 0.0 else "+"
        shown = f"ln({one.label})" if CARDS[one.name].positive else one.label
        text += f" {sign} {abs(factor):.2g} x {shown}"
    size = spread / abs(weights[lead])
    weights_by_name = {one.label: factor for one, factor in factors}
    return Combination(weights_by_name, text, float(size), members[lead].unit)


def _combination(members: Sequence[Param], direction: Vector, covariance: Vector) -> Combination:
    """Combination along a direction in standard deviations of the coefficients."""
    shares = np.where(np.abs(direction) < _LEAST_SHARE, 0.0, direction)
    scaled = shares / np.sqrt(np.diag(covariance))
    spread = float(np.sqrt(scaled @ covariance @ scaled))
    kept = [i for i, share in enumerate(shares) if share != 0.0]
    weights = [float(scaled[i] / CARDS[members[i].name].spread) for i in kept]
    chosen = [members[i] for i in kept]
    scales = all(CARDS[one.name].positive for one in chosen)
    return (_product if scales else _sum)(chosen, weights, spread)


def inseparable(fit: Fit) -> tuple[Inseparable, ...]:
    """Groups of coefficients that the runs cannot tell apart, and what is known of each group.

    Two belong together if their correlation exceeds 0.9, or their partial correlation does while
    neither would be known so badly if the others were. What is known are the directions in which
    the correlations of a group leave less than a tenth of the variance.

    Parameters
    ----------
    fit :
        Of one coefficient or more; those at a bound are left out.
    """
    free = [i for i, one in enumerate(fit.params.values()) if not one.at_bound]
    params = [list(fit.params.values())[i] for i in free]
    covariance = fit.scaled_covar[np.ix_(free, free)]
    found = []
    for group in _ridges(covariance) if free else []:
        part = covariance[np.ix_(group, group)]
        members = [params[i] for i in group]
        values, vectors = np.linalg.eigh(_correlations(part))
        narrow = max(1, int(np.sum(values < 1.0 - STRONG_CORRELATION)))
        known = tuple(_combination(members, vectors[:, k], part) for k in range(narrow))
        found.append(Inseparable(tuple(one.label for one in members), known))
    return tuple(found)
