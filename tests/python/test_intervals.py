"""Intervals of drawn batches: ends, batches that fail or never get there, and sources."""

import json
import math
import pickle
from dataclasses import replace

import numpy as np
import pytest

import kettlecast as kc
from kettlecast.demo import demo_path
from kettlecast.intervals import central_interval
from kettlecast.scatter import NOTHING

KETTLE = kc.read_kettle(demo_path("kettle.toml"))
STEPS = kc.read_recipe(demo_path("water_steps.toml"))
WATER = kc.read_recipe(demo_path("water_boil.toml"))
ONLY_ROOM = replace(NOTHING, room=5.0)
INF = math.inf


def test_a_further_value_lies_inside_as_often_as_stated() -> None:
    # Of n + 1 exchangeable values the last is equally likely at every rank: exact for any n for
    # which the ends are values, here (n + 1) / 20 and 19 (n + 1) / 20 whole: n = 59.
    ordered = np.arange(1.0, 60.0)
    assert central_interval(ordered, 0.9) == pytest.approx((3.0, 57.0))
    mixed = np.random.default_rng(1).permutation(ordered)
    assert central_interval(mixed, 0.9) == pytest.approx((3.0, 57.0))


@pytest.mark.parametrize(
    ("odd", "count", "ends"),
    [
        (np.nan, 2, (1.0, 57.0)),  # 1 to 57 are known: the third lowest, the third highest
        (np.nan, 3, (-INF, INF)),
        (INF, 2, (3.0, 57.0)),
        (INF, 3, (3.0, INF)),
        (-INF, 2, (1.0, 55.0)),
        (-INF, 3, (-INF, 54.0)),
    ],
)
def test_too_many_that_are_not_known_open_the_interval(
    odd: float, count: int, ends: tuple[float, float]
) -> None:
    # Of 59 values the third from either end is an end; those not known count as both.
    values = np.concatenate([np.full(count, odd), np.arange(1.0, 60.0 - count)])
    assert central_interval(values, 0.9) == pytest.approx(ends)


def test_plain_kettle_has_intervals_only_with_scatter() -> None:
    assert kc.forecast(KETTLE, WATER).interval("duration") is None
    prior = kc.forecast(KETTLE, WATER, scatter=ONLY_ROOM, draws=30)
    known = kc.forecast(KETTLE, WATER, scatter=ONLY_ROOM, coefficients=kc.Coefficients(), draws=30)
    wide, narrow = (one.interval("duration") for one in (prior, known))
    assert wide.high - wide.low > 3.0 * (narrow.high - narrow.low) > 0.0
    assert "coefficients" in prior.ensemble.holds()
    assert "coefficients" not in known.ensemble.holds()


@pytest.fixture(scope="module")
def stepped() -> kc.Forecast:
    return kc.forecast(KETTLE, STEPS, scatter=kc.Scatter(), draws=40)


def test_phases_are_found_by_number_and_name(stepped: kc.Forecast) -> None:
    name = STEPS.phases[1].name
    assert stepped.interval("duration", 2) == stepped.interval("duration", name)
    with pytest.raises(kc.UnknownName, match="there are 1 to 3"):
        stepped.interval("duration", 4)
    with pytest.raises(kc.UnknownName, match=r'"duratoin".*did you mean "duration"'):
        stepped.interval("duratoin")
    with pytest.raises(kc.UnknownName, match="allowed of a run: duration"):
        stepped.interval("time_to_reach")


def test_a_run_is_the_sum_of_its_phases_in_every_member(stepped: kc.Forecast) -> None:
    drawn = stepped.ensemble
    for quantity in ("duration", "evaporated", "energy"):
        phases = sum(drawn.values(quantity, number) for number in (1, 2, 3))
        assert drawn.values(quantity) == pytest.approx(phases)
    starts = drawn.values("start", 2)
    assert starts == pytest.approx(drawn.values("duration", 1))


def test_table_and_json_hold_the_intervals(stepped: kc.Forecast) -> None:
    plain = json.loads(stepped.to_json())
    found = stepped.interval("duration")
    assert plain["duration_interval_min"] == pytest.approx([found.low / 60.0, found.high / 60.0])
    assert plain["interval_holds"].startswith("the spread of the coefficients, hands 10 s late")
    metric, us = stepped.phases.loc[1], stepped.to_dataframe("us").loc[1]
    assert metric["not_reached"] == 0.0
    for end in ("low", "high"):
        # 1.8 degF in 1 K, 0.45359237 kg in 1 lb (NIST SP 811, appendix B).
        assert us[f"overshoot_{end}_F"] == pytest.approx(1.8 * metric[f"overshoot_{end}_K"])
        pounds = metric[f"evaporated_{end}_kg"] / 0.45359237
        assert us[f"evaporated_{end}_lb"] == pytest.approx(pounds)


def test_what_is_never_reached_is_said_and_left_open() -> None:
    reach = kc.forecast(KETTLE, WATER).result.phases[0].time_to_reach
    # Half of the kettles drawn from the priors take longer than the usual one.
    short = WATER.phases[0].replace(time_limit=reach + 300.0)
    late = kc.forecast(KETTLE, WATER.replace(phases=[short]), scatter=ONLY_ROOM, draws=60)
    found = late.interval("time_to_reach", 1)
    assert 0.1 < found.not_reached < 0.9
    assert found.low < reach < INF == found.high
    assert late.interval("duration").high == INF
    row = json.loads(late.to_json())["phases"][0]
    assert row["to_reach_high_min"] is None
    assert row["not_reached"] == pytest.approx(found.not_reached)
    never = kc.forecast(
        KETTLE,
        WATER.replace(phases=[short.replace(time_limit=200.0)]),
        scatter=ONLY_ROOM,
        draws=20,
    )
    assert never.interval("overshoot", 1) is None
    assert never.interval("time_to_reach", 1).not_reached == 1.0


def test_batches_that_cannot_be_run_are_counted_and_open_the_interval() -> None:
    # Filled to a hundredth below what it holds: masses that scatter by a tenth overflow often.
    room_left = kc.usable_volume(KETTLE) * 985.0 - 60.0
    full = WATER.with_more("water", f"{room_left:.1f} kg", temperature="14 degC")
    result = kc.forecast(
        KETTLE,
        full,
        scatter=replace(NOTHING, mass=0.1),
        coefficients=kc.Coefficients(),
        draws=20,
    )
    lost = int(result.ensemble.failed.sum())
    assert 2 <= lost < 20
    assert any(f"{lost} of 20 drawn batches could not be run" in note for note in result.notes)
    found = result.interval("duration")
    assert (found.low, found.high, found.failed) == (-INF, INF, lost / 20)


def test_overshoot_counts_from_the_planned_set_point() -> None:
    # The true product stands above the planned set point by its highest value, whatever the
    # shifted set point of the member was.
    scatter = replace(NOTHING, probe_reading=0.5)
    drawn = kc.forecast(
        KETTLE, WATER, scatter=scatter, coefficients=kc.Coefficients(), draws=20
    ).ensemble
    peaks = np.array([one[0].peak for one in drawn.members])
    above = np.maximum(peaks - WATER.phases[0].set_point, 0.0)
    assert drawn.values("overshoot", 1) == pytest.approx(above, abs=1e-6)


def test_sources_alone_make_up_the_whole(stepped: kc.Forecast) -> None:
    table = stepped.spread_sources()
    assert list(table["phase"])[-1] == "whole run"
    assert math.isnan(table.loc[3, "sum"])  # lasts as long as the recipe says
    whole = table.loc["total"]
    assert 0.7 < whole["sum"] < 1.4  # sources add up but for what they do together
    assert whole["coefficients"] > 0.5  # a kettle that was never fitted
    found = stepped.ensemble.values("duration").std() / 60.0
    assert whole["sd_min"] == pytest.approx(found)


def test_a_single_source_makes_all_of_the_spread() -> None:
    result = kc.forecast(KETTLE, WATER, scatter=ONLY_ROOM, coefficients=kc.Coefficients(), draws=20)
    row = result.spread_sources().loc["total"]
    assert row["room"] == pytest.approx(1.0)
    assert list(row.index) == ["phase", "sd_min", "room", "sum"]
    with pytest.raises(kc.UnknownName, match='"mass" is not known'):
        result.spread_sources("mass")
    with pytest.raises(kc.InvalidArgument, match="no drawn batches"):
        kc.forecast(KETTLE, WATER).spread_sources()


def test_forecasts_with_an_ensemble_pickle(stepped: kc.Forecast) -> None:
    back = pickle.loads(pickle.dumps(stepped))
    assert back.phases.equals(stepped.phases)
    assert back.interval("evaporated") == stepped.interval("evaporated")
