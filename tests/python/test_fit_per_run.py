"""Values of their own in every run, several starts and profile intervals, on made logs."""

import dataclasses

import numpy as np
import pytest
from made_logs import KETTLE, drive_runs, made_log

import kettlecast as kc
from kettlecast.errors import InvalidArgument, UnknownName
from kettlecast.fit_result import Fit

VARY = ["floor.efficiency", "floor.film_factor"]
OPTIONS = kc.FitOptions(
    loss="linear", floor_error=0.2, probe_error=0.2, correlation_time=10.0, estimate_errors=False
)
OFFSETS = {"boil": 0.9, "steps": -0.6}


@pytest.fixture(scope="module")
def runs() -> list[kc.Run]:
    like = drive_runs()
    return [
        made_log(like[name], {"floor.efficiency": 0.93, "probe.offset": offset}, seed)
        for seed, (name, offset) in enumerate(OFFSETS.items())
    ]


@pytest.fixture(scope="module")
def fitted(runs: list[kc.Run]) -> Fit:
    return kc.fit(KETTLE, runs, vary=VARY, per_run=["probe.offset"], options=OPTIONS)


def test_each_run_gets_its_own_value(fitted: Fit) -> None:
    for name, offset in OFFSETS.items():
        one = fitted.params[f"probe.offset [{name}]"]
        assert one.run == name
        assert abs(one.value - offset) < 4.0 * one.stderr
        assert one.stderr < 0.2
    assert abs(fitted.params["floor.efficiency"].value - 0.93) < 0.01


def test_one_value_for_both_runs_does_not_do(runs: list[kc.Run], fitted: Fit) -> None:
    shared = kc.fit(KETTLE, runs, vary=[*VARY, "probe.offset"], options=OPTIONS)
    assert shared.chisqr > 2.0 * fitted.chisqr


def test_the_next_run_has_the_mean_and_its_scatter(fitted: Fit) -> None:
    assert fitted.coefficients["probe.offset"] == pytest.approx(
        np.mean([one["probe.offset"] for one in fitted.of_runs])
    )
    drawn = np.array([one["probe.offset"] for one in fitted.draws(400, 1)])
    # Between the runs lie 1.5 K, the prior adds a run of 0.7 K: sqrt((0.7^2 + 2 x 0.75^2) / 2).
    assert np.std(drawn) == pytest.approx(0.9, rel=0.15)


def test_what_belongs_to_a_day_is_not_carried_on(runs: list[kc.Run]) -> None:
    found = kc.fit(KETTLE, runs, vary=VARY, per_run=["probe.offset", "pour.delay"], options=OPTIONS)
    assert found.coefficients["pour.delay"] == 0.0
    assert all(one["pour.delay"] == 0.0 for one in found.draws(20, 1))


def test_impossible_questions_are_refused(runs: list[kc.Run]) -> None:
    with pytest.raises(UnknownName, match=r"probe\.offset"):
        kc.fit(KETTLE, runs, per_run=["probe.ofset"])
    with pytest.raises(InvalidArgument, match="both fixed and per run"):
        kc.fit(KETTLE, runs, per_run=["probe.offset"], fixed={"probe.offset": 0.0})


def test_several_starts_end_in_one_minimum(runs: list[kc.Run], fitted: Fit) -> None:
    many = kc.fit(
        KETTLE,
        runs,
        vary=VARY,
        per_run=["probe.offset"],
        options=dataclasses.replace(OPTIONS, starts=4),
    )
    assert many.found is not None and many.found.starts_at_best == 4
    for label, one in fitted.params.items():
        assert abs(many.params[label].value - one.value) < 0.1 * one.stderr


def test_profile_of_a_nearly_linear_value_is_its_normal_interval(fitted: Fit) -> None:
    found = fitted.profile("probe.offset [boil]", level=0.9)
    one = fitted.params["probe.offset [boil]"]
    assert found.lower is not None and found.upper is not None
    # 1.645 standard errors: normal distribution, 90 %.
    assert found.upper - found.lower == pytest.approx(2.0 * 1.645 * one.stderr, rel=0.05)


def test_profile_says_when_a_side_is_open() -> None:
    # A run without a lid says nothing about it, and one prior spread below its value is its bound.
    soak = made_log(drive_runs()["soak"], {}, 5)
    soak = dataclasses.replace(soak, covers=((0.0, kc.Cover.open),))
    vary = ["floor.efficiency", "evaporation.lid_factor"]
    found = kc.fit(KETTLE, soak, vary=vary, options=OPTIONS)
    interval = found.profile("evaporation.lid_factor")
    assert interval.lower is None and interval.upper is not None
    assert "unbounded below" in str(interval)


def test_profile_needs_the_logs_and_a_known_name(fitted: Fit) -> None:
    with pytest.raises(UnknownName, match="was not fitted"):
        fitted.profile("probe.lag")
    with pytest.raises(InvalidArgument, match="has no logs"):
        dataclasses.replace(fitted, search=None).profile("floor.efficiency")
