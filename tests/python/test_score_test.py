"""Score tests of linear problems, where they are exact, and their probabilities."""

import numpy as np
import pytest
from scipy import stats

from kettlecast.score_test import Linear, Sensors, score_test, surprise


def linear_problem(seed: int) -> tuple[Linear, np.ndarray]:
    """Residuals at the best fit of three coefficients with priors, and a fourth column."""
    generator = np.random.default_rng(seed)
    slopes = generator.normal(size=(60, 3))
    column = generator.normal(size=60) + slopes[:, 0]
    data = generator.normal(size=60) + 0.8 * column
    best = np.linalg.solve(slopes.T @ slopes + np.eye(3), -slopes.T @ data)
    sensors = Sensors(np.zeros(60, dtype=int), np.array([60.0]), None, "linear")
    return Linear(data + slopes @ best, slopes, best, sensors), column


def test_a_linear_problem_is_solved_exactly() -> None:
    # Independent: least squares of all four with the rows of three priors below the data.
    linear, column = linear_problem(1)
    tested = score_test(linear, column)
    assert tested is not None
    data = linear.residuals - linear.slopes @ linear.scaled
    four = np.column_stack([linear.slopes, column])
    rows = np.vstack([four, np.eye(3, 4)])
    solution, rest, *_ = np.linalg.lstsq(rows, -np.concatenate([data, np.zeros(3)]), rcond=None)
    before = linear.residuals @ linear.residuals + linear.scaled @ linear.scaled
    assert tested.size == pytest.approx(solution[3])
    assert tested.likelihood_ratio == pytest.approx(before - rest[0])
    assert tested.error == pytest.approx(np.linalg.inv(rows.T @ rows)[3, 3] ** 0.5)


def test_what_the_fitted_coefficients_can_do_is_no_candidate() -> None:
    # Priors hold coefficients by one unit; slopes of a million make them free.
    linear, _ = linear_problem(2)
    steep = Linear(linear.residuals, 1e6 * linear.slopes, linear.scaled, linear.sensors)
    assert score_test(steep, steep.slopes @ [1.0, -2.0, 0.5]) is None


@pytest.mark.parametrize("loss", ["soft_l1", "huber"])
def test_an_outlier_counts_for_less(loss: str) -> None:
    linear, column = linear_problem(3)
    far = linear.residuals.copy()
    far[np.argmax(column)] += 200.0
    sensors = Sensors(np.zeros(60, dtype=int), np.array([60.0]), None, loss)
    robust = score_test(Linear(far, linear.slopes, linear.scaled, sensors), column)
    plain = score_test(Linear(far, linear.slopes, linear.scaled, linear.sensors), column)
    assert robust is not None and plain is not None
    assert abs(robust.size + 0.8) < 0.5 < abs(plain.size + 0.8)


@pytest.mark.parametrize("free", [8, 30, 200])
@pytest.mark.parametrize("t", [0.5, 2.0, 4.0])
def test_surprise_is_the_tail_of_students_t(free: int, t: float) -> None:
    # Expected: Student's t of scipy. Wallace states errors of the deviate below 0.02 here, which
    # change a tail by less than this share at four deviations.
    count = free + 4.0
    ratio = count * np.log1p(t**2 / free)
    expected = 2.0 * stats.t.sf(t, free)
    assert surprise(ratio, count, 3.0) == pytest.approx(expected, rel=0.08)


def test_no_fall_is_no_surprise() -> None:
    assert surprise(-1.0, 50.0, 3.0) == 1.0
