"""What further data would tell, from matrices alone: optimal design of linear Gaussian models."""

from __future__ import annotations

from collections.abc import Callable, Mapping

import numpy as np

from .fit_problem import Vector


def posterior(covariance: Vector, information: Vector) -> Vector:
    """Covariance of the coefficients after data with some information about them.

        C1 = (C0^-1 + J' W J)^-1

    Source: Chaloner & Verdinelli, Statistical Science 10 (1995) 273, eq. (3) and before.
    """
    # Symmetric in whatever is known exactly, and without an inverse of the covariance.
    middle = np.eye(len(covariance)) + covariance @ information
    after = np.linalg.solve(middle, covariance)
    return np.asarray(0.5 * (after + after.T))


def gain(before: Vector, after: Vector) -> float:
    """Expected gain of information, which D-optimal data make largest [bit].

        0.5 log2(det C0 / det C1)

    Source: Lindley, Annals of Mathematical Statistics 27 (1956) 986; same place as `posterior`.
    """
    (_, first), (_, second) = (np.linalg.slogdet(one) for one in (before, after))
    return float(0.5 * (first - second) / np.log(2.0))


def without_nuisance(information: Vector, count: int) -> Vector:
    """Information about the first `count` coefficients where the others are not known.

    The others have priors of spread 1: Schur complement of the block that holds them.
    """
    kept, mixed = information[:count, :count], information[:count, count:]
    others = information[count:, count:] + np.eye(len(information) - count)
    return np.asarray(kept - mixed @ np.linalg.solve(others, mixed.T))


def in_order(
    covariance: Vector,
    informations: Mapping[str, Vector],
    count: int,
    worth: Callable[[Vector, Vector], float],
) -> list[tuple[str, Vector]]:
    """Which data to take one after the other, each the best after those before it.

    Parameters
    ----------
    covariance :
        Of the coefficients now.
    informations :
        By name; the same data may be taken again.
    count :
        How many to take.
    worth :
        Of a covariance after data, given the one before; the largest is best.

    Returns
    -------
    list
        Name, and covariance after it.
    """
    chosen: list[tuple[str, Vector]] = []
    now = covariance
    for _ in range(count):
        after = {name: posterior(now, one) for name, one in informations.items()}
        best = max(after, key=lambda name: worth(now, after[name]))
        now = after[best]
        chosen.append((best, now))
    return chosen
