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

# A combination counts as known if it leaves less of the variance than a strong correlation does.
_NARROW = 1.0 - STRONG_CORRELATION
# One of more coefficients than this says nothing to a reader.
_MOST_TERMS = 4


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
        told = "; and ".join(str(one) for one in self.known)
        return (
            f"{', '.join(first)} and {last} cannot be told apart by these runs; known is only "
            f"{told}."
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


def _power(one: Param, weight: float) -> str:
    size = abs(weight)
    return one.label if abs(size - 1.0) < 0.05 else f"{one.label}^{size:.2g}"


def _product(members: Sequence[Param], weights: Sequence[float], spread: float) -> Combination:
    """All are scales: the weights are exponents, the largest of them 1."""
    order = np.argsort(-np.abs(weights))
    unit = weights[order[0]]
    powers = [(members[i], weights[i] / unit) for i in order]
    formula = _power(*powers[0])
    for one, power in powers[1:]:
        formula += f" {'/' if power < 0.0 else 'x'} {_power(one, power)}"
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
    scaled = direction / np.sqrt(np.diag(covariance))
    spread = float(np.sqrt(scaled @ covariance @ scaled))
    cards = [CARDS[one.name] for one in members]
    weights = [float(share / card.spread) for share, card in zip(scaled, cards, strict=True)]
    scales = all(card.positive for card in cards)
    return (_product if scales else _sum)(members, weights, spread)


def _narrowest(correlations: Vector, support: Sequence[int]) -> float:
    return float(np.linalg.eigvalsh(correlations[np.ix_(support, support)])[0])


def _fewest(correlations: Vector, group: Sequence[int]) -> list[int]:
    """The coefficients of a known combination, as few as will do; none if there is none."""
    support = list(group)
    if len(support) < 2 or _narrowest(correlations, support) >= _NARROW:
        return []
    while len(support) > 2:
        fewer = [[i for i in support if i != out] for out in support]
        best = min(fewer, key=lambda one: _narrowest(correlations, one))
        if _narrowest(correlations, best) >= _NARROW:
            break
        support = best
    return support


def _supports(covariance: Vector, group: Sequence[int]) -> list[list[int]]:
    """Coefficients of each known combination of a group; one of each is set aside for the next."""
    correlations = _correlations(covariance)
    left, found = list(group), []
    while support := _fewest(correlations, left):
        found.append(support)
        left.remove(max(support, key=lambda i: float(covariance[i, i])))
    # A ridge that others bend is not as narrow; it is told as it is.
    return [support for support in found or [list(group)] if len(support) <= _MOST_TERMS]


def _along(params: Sequence[Param], covariance: Vector, support: Sequence[int]) -> Combination:
    """The narrowest combination of some coefficients."""
    part = covariance[np.ix_(support, support)]
    direction = np.asarray(np.linalg.eigh(_correlations(part))[1][:, 0])
    return _combination([params[i] for i in support], direction, part)


def inseparable(fit: Fit) -> tuple[Inseparable, ...]:
    """Groups of coefficients that the runs cannot tell apart, and what is known of each group.

    Two belong together if their correlation exceeds 0.9, or their partial correlation does while
    neither would be known so badly if the others were. What is known are combinations of few of
    them that leave less than a tenth of the variance.

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
        supports = _supports(covariance, group)
        known = tuple(_along(params, covariance, support) for support in supports)
        named = sorted({i for support in supports for i in support})
        if named:
            found.append(Inseparable(tuple(params[i].label for i in named), known))
    return tuple(found)
