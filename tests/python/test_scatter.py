"""What differs from batch to batch: draws with the stated spread, shared where batches agree."""

import dataclasses
import math
import pickle

import numpy as np
import pytest

import kettlecast as kc
from kettlecast.demo import demo_path
from kettlecast.propagation import (
    HIGHEST,
    Input,
    Plan,
    draws_of,
    highest_errors,
    prior_draws,
    tasks_of,
)
from kettlecast.scatter import NOTHING

KETTLE = kc.read_kettle(demo_path("kettle.toml"))
STEW = kc.read_recipe(demo_path("stew.toml"))
WATER = kc.read_recipe(demo_path("water_boil.toml"))
USUAL = kc.Scatter()
COUNT = 4000


def plan(recipe: kc.Recipe, count: int = COUNT, seed: int = 1, day: int = 0) -> Plan:
    return Plan(KETTLE, recipe, None, kc.Options(), kc.Coefficients(), (), count, seed, day)


def near(found: float, wanted: float) -> bool:
    """A standard deviation of n normal draws scatters by s / sqrt(2 n); five of them."""
    return abs(found - wanted) < 5.0 * wanted / math.sqrt(2.0 * COUNT)


def test_each_input_spreads_as_stated() -> None:
    draws = draws_of(plan(STEW), USUAL)
    for one, values in draws.items():
        # Hands are known from few days: Student's t with 5 degrees of freedom, variance 5/3.
        wider = math.sqrt(5.0 / 3.0) if one.kind == "hand_delay" else 1.0
        assert near(float(np.sqrt(np.mean(values**2))), wider * getattr(USUAL, one.kind)), one


def test_inputs_are_drawn_apart() -> None:
    # Correlations of n independent normal draws scatter by 1 / sqrt(n); six of them.
    values = np.array(list(draws_of(plan(STEW), USUAL).values()))
    apart = np.corrcoef(values) - np.eye(len(values))
    assert np.abs(apart).max() < 6.0 / math.sqrt(COUNT)


def test_longer_draws_begin_with_the_shorter_ones() -> None:
    few, many = (draws_of(plan(STEW, count), USUAL) for count in (10, 50))
    for one, values in few.items():
        assert np.array_equal(many[one][:10], values)


def test_a_changed_batch_shares_what_it_has_in_common() -> None:
    more = STEW.with_more("carrot", "20 lb", "36 degF", phase=3, piece="12 mm", shape="sphere")
    before, after = (draws_of(plan(one), USUAL) for one in (STEW, more))
    for one, values in before.items():
        early = one.phase < 3  # model errors after the carrot are those of another batch
        if early or not one.kind.endswith("_reading"):
            assert np.array_equal(after[one], values), one
    assert Input("mass", 3, "carrot") in after.keys() - before.keys()
    other = draws_of(plan(STEW, day=1), USUAL)
    assert not any(np.array_equal(other[one], values) for one, values in before.items())


@pytest.mark.parametrize(("factor", "correlation"), [(1.02, 0.980), (1.1, 0.635), (1.3, 0.032)])
def test_model_error_is_shared_as_far_as_batches_are_alike(
    factor: float, correlation: float
) -> None:
    # exp(-(ln(factor) / 0.1)^2 / 2), and four standard errors of a correlation of n pairs.
    phase = WATER.phases[0]
    poured = phase.additions[0].replace(mass=60.0 * factor)
    larger = WATER.replace(phases=[phase.replace(additions=[poured])])
    one = Input("probe_reading", 1)
    pair = [draws_of(plan(recipe), USUAL)[one] for recipe in (WATER, larger)]
    assert np.corrcoef(pair)[0, 1] == pytest.approx(correlation, abs=4.0 / math.sqrt(COUNT))


def additions(recipe: kc.Recipe) -> list[kc.Addition]:
    return [one for phase in recipe.phases for one in phase.additions]


def test_hands_are_never_early_and_pours_end_with_their_phase() -> None:
    slow = dataclasses.replace(NOTHING, hand_delay=400.0)
    small = plan(STEW, 60)
    for task in tasks_of(small, draws_of(small, slow)):
        for late, planned in zip(additions(task.recipe), additions(STEW), strict=True):
            assert late.delay >= planned.delay
        onion = task.recipe.phases[1].additions[0]
        assert onion.delay + onion.pour_time <= 540.0  # the phase lasts nine minutes


def test_what_is_chilled_does_not_freeze_and_what_is_frozen_does_not_thaw() -> None:
    wild = dataclasses.replace(NOTHING, ingredient_temperature=30.0)
    small = plan(STEW, 60)
    for task in tasks_of(small, draws_of(small, wild)):
        for one, planned in zip(additions(task.recipe), additions(STEW), strict=True):
            point = one.food.freezing_point
            assert (one.temperature < point) == (planned.temperature < point)


def test_nothing_that_differs_gives_the_plan_again() -> None:
    for task in tasks_of(plan(STEW, 3), draws_of(plan(STEW, 3), NOTHING)):
        assert task.recipe == STEW
        assert task.kettle == KETTLE


def test_set_points_and_ends_move_by_the_error_of_their_reading() -> None:
    rule = kc.EndRule(kind=kc.EndKind.above, signal=kc.Regulated.probe, value=340.0)
    phase = WATER.phases[0].replace(
        regulated=kc.Regulated.difference, set_point=30.0, ends=[rule, kc.EndRule(value=60.0)]
    )
    small = plan(WATER.replace(phases=[phase]), 20)
    draws = draws_of(small, USUAL)
    for i, task in enumerate(tasks_of(small, draws)):
        floor, probe = (draws[Input(f"{name}_reading", 1)][i] for name in ("floor", "probe"))
        found = task.recipe.phases[0]
        assert found.set_point == pytest.approx(30.0 + floor - probe)
        assert [one.value for one in found.ends] == pytest.approx([340.0 + probe, 60.0])
    assert Input("floor_reading", 1, HIGHEST) in draws


@pytest.mark.parametrize(("held", "mean", "spread"), [(0.0, 0.0, 0.0), (480.0, 1.163, 1.188)])
def test_highest_of_many_errors(held: float, mean: float, spread: float) -> None:
    # The largest of 5 normal numbers (one per 120 s and the first) has mean 1.163 and standard
    # deviation 0.669 (Harter, Biometrika 48 (1961) 151, from memory). With r = exp(-480/120) the
    # error of the set point adds (1 - r)^2: (0.982^2 + 0.669^2)^(1/2) = 1.188.
    many = plan(WATER)
    found = highest_errors(many, USUAL, draws_of(many, USUAL), np.full((COUNT, 1), held))
    one = found[:, 0] / USUAL.probe_reading
    assert one.mean() == pytest.approx(mean, abs=5.0 / math.sqrt(COUNT))
    assert one.std() == pytest.approx(spread, abs=5.0 * spread / math.sqrt(2.0 * COUNT))


def test_prior_draws_spread_as_the_cards_say() -> None:
    cards = {card.name: card for card in kc.coefficient_cards()}
    found = prior_draws(kc.Coefficients(), COUNT, 3)
    for name in ("floor.film_factor", "probe.lag"):
        logs = np.log([one[name] for one in found])
        assert near(float(logs.std()), cards[name].spread)


@pytest.mark.parametrize("value", [-1.0, math.nan, math.inf])
def test_impossible_scatter_is_refused(value: float) -> None:
    with pytest.raises(kc.InvalidArgument, match="Scatter: room must be 0 or more"):
        kc.Scatter(room=value)


@pytest.fixture(scope="module")
def fitted() -> kc.Fit:
    run = kc.read_run(demo_path("water_boil_60kg.csv"), recipe=WATER)
    return kc.fit(KETTLE, run, vary=["floor.efficiency", "probe.lag"])


def test_hands_are_learned_from_the_events() -> None:
    # demo/stew_70kg.events.csv less the delays of demo/stew.toml, by hand.
    run = kc.read_run(demo_path("stew_70kg.csv"), recipe=STEW)
    late = [7.28 - 0.0, 16.44 - 10.0, 10.68 - 10.0, 82.12 - 80.0, 26.76 - 15.0]
    assert run.lateness == pytest.approx(late)
    assert kc.read_run(demo_path("stew_70kg.csv")).lateness == ()


def test_scatter_of_a_fit_is_that_of_its_runs(fitted: kc.Fit) -> None:
    found = fitted.scatter()
    # One pour 2.44 s late, and the usual 10 s counted twice.
    assert found.hand_delay == pytest.approx(math.sqrt((2.44**2 + 2 * 10.0**2) / 3.0))
    curves, run = fitted.comparison[0], fitted.runs[0]
    off = curves["probe_model"] - curves["probe_log"]
    # Autoregression of first order: c1 = s^2 r, c2 = s^2 r^2, so s^2 = c1^2 / c2.
    first, second = np.mean(off[1:] * off[:-1]), np.mean(off[2:] * off[:-2])
    slow = math.sqrt(first**2 / second)
    assert fitted.scatter(held_out=1.0).probe_reading == pytest.approx(slow)
    assert slow <= found.probe_reading < 1.2 * run.probe_rms
    assert fitted.scatter(held_out=2.0).probe_reading == pytest.approx(2.0 * slow)
    assert found.room == USUAL.room
    with pytest.raises(kc.InvalidArgument, match="held_out must be above 0"):
        fitted.scatter(held_out=0.0)


def test_a_saved_fit_has_the_same_scatter(fitted: kc.Fit, tmp_path) -> None:
    fitted.save(tmp_path / "fit.json")
    assert kc.read_fit(tmp_path / "fit.json").scatter() == fitted.scatter()
    assert pickle.loads(pickle.dumps(fitted.scatter())) == fitted.scatter()
