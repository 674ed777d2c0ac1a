"""Fits: known coefficients are found again in made readings, and bad input is refused."""

import dataclasses
from collections.abc import Mapping

import numpy as np
import pytest

from kettlecast import _core
from kettlecast.demo import demo_path
from kettlecast.errors import InvalidArgument, UnknownName
from kettlecast.fit_problem import FitOptions
from kettlecast.fit_result import Fit
from kettlecast.fitting import fit
from kettlecast.kettle_file import read_kettle
from kettlecast.recipe_file import read_recipe
from kettlecast.run_log import Run, read_run
from kettlecast.run_plan import run_plan

KETTLE = read_kettle(demo_path("kettle.toml"))
TRUTH = {"floor.efficiency": 0.93, "floor.film_factor": 1.3, "probe.lag": 20.0}
FLOOR_NOISE, PROBE_NOISE = 0.3, 0.1  # of a made reading [K]
STILL = 2  # rows without noise: a fit takes the temperatures of the start from them
# Noise that is independent from row to row, weighed as such: what least squares assumes when it
# states standard errors and chi-square.
WHITE = FitOptions(
    floor_error=FLOOR_NOISE,
    probe_error=PROBE_NOISE,
    interval=2.0,
    correlation_time=2.0,
    loss="linear",
)


@pytest.fixture(scope="module")
def water() -> Run:
    recipe = read_recipe(demo_path("water_boil.toml"))
    return read_run(demo_path("water_boil_60kg.csv"), recipe=recipe)


def made_run(like: Run, truth: Mapping[str, float], seed: int) -> Run:
    """The heat and pours of a run with readings of the model and noise on them."""
    plan = run_plan(like, KETTLE.surroundings, like.time)
    shown = _core.replay(KETTLE, _core.Coefficients(truth), plan=plan)
    generator = np.random.default_rng(seed)
    floor, probe = (generator.normal(0.0, 1.0, like.time.size) for _ in range(2))
    floor[:STILL] = probe[:STILL] = 0.0
    return dataclasses.replace(
        like,
        floor_reading=shown.floor_reading + FLOOR_NOISE * floor,
        probe_reading=shown.probe_reading + PROBE_NOISE * probe,
    )


@pytest.fixture(scope="module")
def recovered(water: Run) -> Fit:
    return fit(KETTLE, made_run(water, TRUTH, 11), vary=list(TRUTH), options=WHITE)


def test_known_coefficients_are_found_within_three_standard_errors(recovered: Fit) -> None:
    assert recovered.success
    for name, truth in TRUTH.items():
        found = recovered.params[name]
        assert abs(found.value - truth) < 3.0 * found.stderr, name
        assert found.stderr < 0.05 * abs(truth - found.init_value), name


def test_usual_weights_find_known_coefficients_too(water: Run) -> None:
    found = fit(KETTLE, made_run(water, TRUTH, 4), vary=list(TRUTH))
    for name, truth in TRUTH.items():
        assert abs(found.params[name].value - truth) < 3.0 * found.params[name].stderr, name


def test_reduced_chi_square_of_white_noise_is_one(recovered: Fit) -> None:
    # Variance of chi-square with n degrees of freedom is 2n; four standard deviations.
    spread = (2.0 / (recovered.neffective - recovered.nvarys)) ** 0.5
    assert abs(recovered.redchi - 1.0) < 4.0 * spread


def test_rms_of_a_perfect_model_is_the_noise(recovered: Fit) -> None:
    # Standard deviation of a standard deviation from n values is s / sqrt(2 n); four of them.
    quality = recovered.runs[0]
    count = recovered.ndata / 2
    for found, noise in ((quality.floor_rms, FLOOR_NOISE), (quality.probe_rms, PROBE_NOISE)):
        assert found == pytest.approx(noise, rel=4.0 / (2.0 * count) ** 0.5)


def test_two_runs_tell_more_than_one(water: Run, recovered: Fit) -> None:
    runs = [made_run(water, TRUTH, seed) for seed in (11, 12)]
    runs[1] = dataclasses.replace(runs[1], name="second")
    both = fit(KETTLE, runs, vary=list(TRUTH), options=WHITE)
    assert [run.name for run in both.runs] == ["water_boil_60kg", "second"]
    for name in TRUTH:
        assert both.params[name].stderr < recovered.params[name].stderr


def test_correlations_are_one_with_themselves_and_symmetric(recovered: Fit) -> None:
    matrix = recovered.correl().to_numpy()
    assert np.diag(matrix) == pytest.approx(1.0)
    assert matrix == pytest.approx(matrix.T, abs=1e-9)
    assert np.abs(matrix).max() <= 1.0 + 1e-9


def test_standard_errors_are_the_roots_of_the_covariance(recovered: Fit) -> None:
    errors = [one.stderr for one in recovered.params.values()]
    assert errors == pytest.approx(np.sqrt(np.diag(recovered.covar)).tolist())


def test_draws_spread_as_the_fit_says(recovered: Fit) -> None:
    count = 2000
    draws = recovered.draws(count, 5)
    for name, found in recovered.params.items():
        values = np.array([one[name] for one in draws])
        # Mean of n draws scatters by s / sqrt(n), their spread by s / sqrt(2 n); five of each,
        # and 2 % because a draw of a positive coefficient is lognormal.
        assert abs(values.mean() - found.value) < (5.0 / count**0.5 + 0.02) * found.stderr
        assert values.std() == pytest.approx(found.stderr, rel=5.0 / (2 * count) ** 0.5 + 0.02)


def test_same_seed_gives_the_same_draws(recovered: Fit) -> None:
    assert recovered.draws(5, 1) == recovered.draws(5, 1)
    assert recovered.draws(5, 1) != recovered.draws(5, 2)


def test_fixed_coefficients_stay_and_are_reported(water: Run) -> None:
    found = fit(KETTLE, water, vary=["probe.lag"], fixed={"floor.efficiency": 0.9})
    assert list(found.params) == ["probe.lag"]
    assert found.coefficients["floor.efficiency"] == 0.9
    assert "floor.efficiency           0.9 (given)" in found.fit_report()


def test_a_coefficient_at_its_bound_is_named(water: Run) -> None:
    # With half its real power on the plate the floor would need an efficiency far above 1.1. The
    # errors are held: such residuals would else say that nothing can be learned.
    weak = KETTLE.replace(floor_power=9000.0)
    stated = dataclasses.replace(WHITE, estimate_errors=False)
    found = fit(weak, water, vary=["floor.efficiency"], options=stated)
    assert found.params["floor.efficiency"].at_bound
    assert "AT BOUND [0.3, 1.1]" in found.fit_report()


def test_too_few_evaluations_are_said_not_raised(water: Run) -> None:
    found = fit(KETTLE, water, vary=list(TRUTH), options=FitOptions(max_evaluations=1))
    assert not found.success
    assert "did NOT converge" in found.fit_report()


def test_no_runs_are_refused() -> None:
    with pytest.raises(InvalidArgument, match="no runs given; allowed: one Run or more"):
        fit(KETTLE, [])


def test_run_with_errors_is_refused_with_the_finding(tmp_path) -> None:
    log = tmp_path / "backward.csv"
    log.write_text("time_s,probe_C,floor_heat_pct\n0,20,100\n4,21,100\n2,22,100\n")
    with pytest.raises(InvalidArgument, match=r"'backward' cannot be used: error: .*runs backward"):
        fit(KETTLE, read_run(log))


def test_unknown_coefficient_is_refused_with_its_name(water: Run) -> None:
    with pytest.raises(UnknownName, match=r"floor\.efficency"):
        fit(KETTLE, water, vary=["floor.efficency"])
    with pytest.raises(UnknownName, match=r"floor\.efficency"):
        fit(KETTLE, water, fixed={"floor.efficency": 0.9})


def test_room_of_an_unknown_run_is_refused_with_the_known_ones(water: Run) -> None:
    with pytest.raises(
        InvalidArgument, match=r"\['monday'\], allowed are the runs water_boil_60kg"
    ):
        fit(KETTLE, water, rooms={"monday": KETTLE.surroundings})


def test_rooms_change_the_fit(water: Run) -> None:
    cold = KETTLE.surroundings.replace(temperature=278.15)
    # A floor that gets more heat than it did has some to lose, so that no loss lies at its bound.
    known = {"evaporation.factor": 0.5, "floor.efficiency": 0.95}
    here, there = (
        fit(KETTLE, water, vary=["floor.loss"], fixed=known, rooms=rooms)
        for rooms in (None, {"water_boil_60kg": cold})
    )
    assert not there.params["floor.loss"].at_bound
    # The same loss of heat over a larger difference means a smaller coefficient of loss.
    assert there.params["floor.loss"].value < here.params["floor.loss"].value
