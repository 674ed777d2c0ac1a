"""Optimal design against textbook formulas and known optimal designs."""

import numpy as np
import pytest

from kettlecast.demo import demo_path
from kettlecast.design import gain, in_order, posterior, without_nuisance
from kettlecast.errors import InvalidArgument
from kettlecast.forecast_target import Target, average_slopes
from kettlecast.recipe_file import read_recipe

GENERATOR = np.random.default_rng(5)
WATER = read_recipe(demo_path("water_boil.toml"))


def covariance(size: int) -> np.ndarray:
    root = GENERATOR.normal(size=(size, size))
    return root @ root.T + 0.1 * np.eye(size)


def test_posterior_is_that_of_the_linear_gaussian_model() -> None:
    # Source: Rasmussen & Williams, Gaussian Processes for Machine Learning (2006) eq. (2.8) with
    # the matrix inversion lemma (A.9): C - C X' (X C X' + S)^-1 X C.
    before, slopes = covariance(4), GENERATOR.normal(size=(7, 4))
    noise = np.diag(GENERATOR.uniform(0.2, 2.0, 7))
    crossed = before @ slopes.T
    textbook = before - crossed @ np.linalg.solve(slopes @ crossed + noise, crossed.T)
    ours = posterior(before, slopes.T @ np.linalg.inv(noise) @ slopes)
    np.testing.assert_allclose(ours, textbook, rtol=1e-10, atol=1e-12)


def test_mean_of_n_readings() -> None:
    # A prior of variance v and n readings of variance s: 1 / (1/v + n/s).
    after = posterior(np.array([[4.0]]), np.array([[10 / 0.5]]))
    assert after[0, 0] == pytest.approx(1.0 / (1.0 / 4.0 + 10.0 / 0.5))
    # Capacity of a Gaussian channel (Shannon 1948): half the binary logarithm of 1 + signal/noise.
    assert gain(np.array([[4.0]]), after) == pytest.approx(0.5 * np.log2(1.0 + 4.0 * 10.0 / 0.5))


def test_what_is_known_exactly_stays_so() -> None:
    after = posterior(np.diag([0.0, 1.0]), np.ones((2, 2)))
    np.testing.assert_allclose(after, [[0.0, 0.0], [0.0, 0.5]], atol=1e-15)


def test_nuisance_is_a_block_of_the_whole_posterior() -> None:
    slopes = GENERATOR.normal(size=(20, 5))
    whole = np.linalg.inv(slopes.T @ slopes + np.eye(5))[:3, :3]
    kept = posterior(np.eye(3), without_nuisance(slopes.T @ slopes, 3))
    np.testing.assert_allclose(kept, whole, rtol=1e-10, atol=1e-12)


@pytest.mark.parametrize(
    ("degree", "support"),
    # Source: Atkinson & Donev, Optimum Experimental Designs (1992) ch. 11, from memory: D-optimal
    # designs on [-1, 1] have as many equal points as coefficients, at the ends and at the zeros of
    # the derivative of a Legendre polynomial: line +-1, parabola 0 and +-1, cubic +-1 and +-0.447.
    [(1, [-1.0, 1.0]), (2, [-1.0, 0.0, 1.0]), (3, [-1.0, -(0.2**0.5), 0.2**0.5, 1.0])],
)
def test_runs_in_order_come_to_the_d_optimal_design(degree: int, support: list[float]) -> None:
    places = np.linspace(-1.0, 1.0, 41)
    rows = np.vander(places, degree + 1, increasing=True)
    informations = {f"{x:.3f}": np.outer(row, row) for x, row in zip(places, rows, strict=True)}
    # The sequential algorithm comes to the design from any start; the first readings are its start.
    count = 400
    chosen = in_order(np.eye(degree + 1) * 100.0, informations, count, gain)
    taken = np.array([float(name) for name, _ in chosen])
    shares = [np.mean(np.abs(taken - x) < 0.051) for x in support]
    np.testing.assert_allclose(shares, 1.0 / len(support), atol=0.02)


def test_no_other_pair_tells_more_about_a_line_than_its_ends() -> None:
    rows = np.array([[1.0, x] for x in (-1.0, -0.5, 0.0, 0.5, 1.0)])
    informations = {str(row[1]): np.outer(row, row) for row in rows}
    chosen = in_order(np.eye(2), informations, 2, gain)
    assert {name for name, _ in chosen} == {"-1.0", "1.0"}
    # (I + X'X) of the two ends is 3 I.
    np.testing.assert_allclose(chosen[-1][1], np.eye(2) / 3.0, atol=1e-15)


def test_average_slopes_of_a_plane_are_its_own_and_nothing_is_left() -> None:
    points, slopes = GENERATOR.normal(size=(60, 3)), np.array([2.0, -1.0, 0.0])
    found, left = average_slopes(points, 100.0 + points @ slopes, Target(WATER))
    np.testing.assert_allclose(found, slopes, atol=1e-10)
    assert left == pytest.approx(0.0, abs=1e-18)


def test_what_a_plane_leaves_is_the_noise() -> None:
    points, noise = GENERATOR.normal(size=(4000, 3)), GENERATOR.normal(0.0, 3.0, 4000)
    found, left = average_slopes(points, points @ np.array([2.0, -1.0, 0.0]) + noise, Target(WATER))
    # Standard error of a slope s / sqrt(n), of a variance s^2 sqrt(2/n); four of each.
    np.testing.assert_allclose(found, [2.0, -1.0, 0.0], atol=4.0 * 3.0 / 4000**0.5)
    assert left == pytest.approx(9.0, rel=4.0 * (2.0 / 4000) ** 0.5)


def test_a_target_that_seldom_happens_is_refused() -> None:
    values = np.full(60, np.nan)
    values[:5] = 1.0
    with pytest.raises(InvalidArgument, match="happens in 5 of 60 forecasts only"):
        average_slopes(GENERATOR.normal(size=(60, 3)), values, Target(WATER))
