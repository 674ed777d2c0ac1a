"""Slopes of forecasts against quotients of differences, and spreads through them."""

import dataclasses

import numpy as np
import pytest

import kettlecast as kc
from kettlecast.demo import demo_path
from kettlecast.errors import InvalidArgument, UnknownName
from kettlecast.fit_result import Fit
from kettlecast.linear_spread import Gradient, linear_spread
from kettlecast.sensitivities import Sensitivities

KETTLE = kc.read_kettle(demo_path("kettle.toml"))
STEW = kc.read_recipe(demo_path("stew.toml"))
FINE = kc.Options(tolerance=1e-8, output_interval=3600.0)


@pytest.fixture(scope="module")
def slopes() -> Sensitivities:
    made = kc.forecast(KETTLE, STEW, options=FINE, sensitivities=True)
    assert made.sensitivities is not None
    return made.sensitivities


@pytest.fixture(scope="module")
def fitted() -> Fit:
    files = {"water_boil_60kg": "water_boil.toml", "water_steps_60kg": "water_steps.toml"}
    runs = [
        kc.read_run(demo_path(f"{name}.csv"), recipe=kc.read_recipe(demo_path(recipe)))
        for name, recipe in files.items()
    ]
    vary = ["floor.efficiency", "floor.film_factor", "evaporation.factor", "probe.lag"]
    return kc.fit(KETTLE, runs, vary=vary)


def duration(recipe: kc.Recipe = STEW, **changed: float) -> float:
    values = kc.Coefficients({name.replace("__", "."): at for name, at in changed.items()})
    return kc.forecast(KETTLE, recipe, coefficients=values, options=FINE).duration


def with_addition(phase: int, **changed: float) -> kc.Recipe:
    phases = list(STEW.phases)
    additions = list(phases[phase - 1].additions)
    additions[0] = additions[0].replace(**changed)
    phases[phase - 1] = phases[phase - 1].replace(additions=additions)
    return STEW.replace(phases=phases)


def test_slopes_by_coefficients_are_quotients_of_differences(slopes: Sensitivities) -> None:
    found = slopes.of("duration")
    for name, at, step in (("floor.efficiency", 0.85, 1e-4), ("evaporation.factor", 0.7, 1e-4)):
        key = name.replace(".", "__")
        quotient = (duration(**{key: at + step}) - duration(**{key: at - step})) / (2 * step)
        assert found[name] == pytest.approx(quotient, rel=1e-3)


def test_slopes_by_pours_are_quotients_of_differences(slopes: Sensitivities) -> None:
    found = slopes.of("duration")
    water = STEW.phases[2].additions[0]
    later = duration(with_addition(3, delay=water.delay + 0.1))
    warmer = duration(with_addition(3, temperature=water.temperature + 0.01))
    heavier = duration(with_addition(3, mass=water.mass * 1.0001))
    planned = duration()
    assert found["phase 3: water: delay"] == pytest.approx((later - planned) / 0.1, rel=0.01)
    assert found["phase 3: water: temperature"] == pytest.approx(
        (warmer - planned) / 0.01, rel=0.01
    )
    assert found["phase 3: water: mass factor"] == pytest.approx(
        (heavier - planned) / 1e-4, rel=0.01
    )


def test_phases_add_up_to_the_run(slopes: Sensitivities) -> None:
    parts = sum(slopes.of("duration", phase) for phase in range(1, len(STEW.phases) + 1))
    np.testing.assert_allclose(parts, slopes.of("duration"), rtol=1e-12, atol=1e-12)
    table = slopes.table()
    assert list(table.index) == [one.label for one in slopes.levers]
    np.testing.assert_array_equal(table["duration", 0], slopes.of("duration"))


def test_what_is_not_there_is_said(slopes: Sensitivities) -> None:
    with pytest.raises(UnknownName, match=r"allowed of a run: duration, evaporated, energy"):
        slopes.of("time_to_reach")
    with pytest.raises(UnknownName, match="phase 9 is not there; allowed: 1 to 5"):
        slopes.of("duration", 9)
    short = STEW.replace(phases=[STEW.phases[0].replace(time_limit=20.0)])
    made = kc.forecast(KETTLE, short, sensitivities=True)
    assert made.sensitivities is not None
    assert made.sensitivities.of("time_to_reach", 1).isna().all()


def test_spread_through_slopes_is_that_of_drawn_batches(fitted: Fit) -> None:
    # Water to the boil, where nothing switches: slopes do not see where in its cycle a thermostat
    # hands a hot floor on to the next phase, which adds to the spread of a stew.
    water = kc.read_recipe(demo_path("water_boil.toml"))
    made = kc.forecast(fitted, water, draws=200, sensitivities=True)
    assert made.ensemble is not None
    for quantity in ("duration", "evaporated", "energy"):
        drawn = made.ensemble.values(quantity)
        # 200 draws tell a standard deviation within 5 % (chi-square), bends come on top.
        assert made.linear(quantity).spread == pytest.approx(np.std(drawn), rel=0.15)


def test_spread_of_a_difference_leaves_out_what_is_common(fitted: Fit) -> None:
    known, changed = (
        kc.forecast(fitted, recipe, draws=0, sensitivities=True)
        for recipe in (STEW, STEW.with_more("water", "20 lb", phase=3))
    )
    answer = kc.compare(known, changed).linear()
    assert answer.value == pytest.approx(changed.duration - known.duration)
    assert answer.spread < 0.7 * known.linear().spread
    assert kc.compare(known, known).linear().spread == pytest.approx(0.0, abs=1e-9)


def test_spreads_are_put_together_as_in_the_guide(fitted: Fit) -> None:
    # JCGM 100:2008, 5.1.2: u^2 = sum (slope u)^2 for inputs that are independent.
    nothing = np.zeros(fitted.nvarys)
    inputs = {("mass", 1, "a", 1): 300.0, ("mass", 2, "b", 1): -400.0, ("room", 0, "", 1): 2.0}
    scatter = dataclasses.replace(kc.Scatter(), mass=0.01, room=3.0)
    found = linear_spread(fitted, scatter, Gradient(100.0, nothing, inputs, {}))
    assert found.table.loc["masses", "sd"] == pytest.approx(5.0)
    assert found.table.loc["room", "sd"] == pytest.approx(6.0)
    assert found.spread == pytest.approx(np.sqrt(61.0))
    # Lateness s |t| with Student's t of 5 degrees of freedom: E|t| = 2 sqrt(5) Gamma(3) / (4
    # sqrt(pi) Gamma(2.5)) = 0.9490, E t^2 = 5/3 (Johnson, Kotz & Balakrishnan, Continuous
    # univariate distributions, chapter 28; from memory).
    late = Gradient(0.0, nothing, {("hand_delay", 1, "a", 1): 1.0, ("room", 0, "", 1): 0.0}, {})
    hands = linear_spread(fitted, dataclasses.replace(scatter, hand_delay=10.0), late).table
    assert hands.loc["hands", "shift"] == pytest.approx(9.490, rel=1e-3)
    assert hands.loc["hands", "sd"] == pytest.approx(8.753, rel=1e-3)


def test_a_forecast_without_slopes_says_how_to_get_them(fitted: Fit) -> None:
    with pytest.raises(InvalidArgument, match="sensitivities=True"):
        kc.forecast(fitted, STEW, draws=0).linear()
    with pytest.raises(InvalidArgument, match="drawn batches"):
        kc.forecast(fitted, STEW, draws=0, sensitivities=True).linear("overshoot_reading", 1)
