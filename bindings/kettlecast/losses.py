"""How much a squared weighted residual counts."""

from __future__ import annotations

import numpy as np

from .fit_problem import Vector


def losses(residuals: Vector, loss: str) -> Vector:
    """What each residual adds to chi-square [-], for the losses of `FitOptions`."""
    squares = np.asarray(residuals) ** 2
    values = {
        "linear": squares,
        "soft_l1": 2.0 * (np.sqrt(1.0 + squares) - 1.0),
        "huber": np.where(squares > 1.0, 2.0 * np.sqrt(squares) - 1.0, squares),
    }
    return np.asarray(values[loss])


def loss_slopes(residuals: Vector, loss: str) -> Vector:
    """Slope of the loss of each residual by its square, at most 1 [-]."""
    squares = np.asarray(residuals) ** 2
    slopes = {
        "linear": np.ones_like(squares),
        "soft_l1": 1.0 / np.sqrt(1.0 + squares),
        "huber": np.minimum(1.0, 1.0 / np.sqrt(np.maximum(squares, 1.0))),
    }
    return np.asarray(slopes[loss])
