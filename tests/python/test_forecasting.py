"""Forecasts from Python: intervals, tables in both systems, JSON, and what is refused."""

import json
import pickle

import numpy as np
import pytest

from kettlecast import _core, units
from kettlecast.demo import demo_path
from kettlecast.errors import InvalidArgument
from kettlecast.fit_result import Fit
from kettlecast.fitting import fit
from kettlecast.forecasting import forecast
from kettlecast.kettle_file import read_kettle
from kettlecast.recipe_file import read_recipe
from kettlecast.run_log import read_run

KETTLE = read_kettle(demo_path("kettle.toml"))
WATER = read_recipe(demo_path("water_boil.toml"))
STEPS = read_recipe(demo_path("water_steps.toml"))


@pytest.fixture(scope="module")
def fitted() -> Fit:
    run = read_run(demo_path("water_boil_60kg.csv"), recipe=WATER)
    return fit(KETTLE, run, vary=["floor.efficiency", "probe.lag"])


@pytest.fixture(scope="module")
def now(fitted: Fit):
    return forecast(fitted, WATER, draws=40)


def test_intervals_hold_the_point(now) -> None:
    row = now.phases.loc[1]
    for name in ("to_reach", "duration"):
        assert row[f"{name}_low_min"] < row[f"{name}_min"] < row[f"{name}_high_min"]
    members = now.ensemble.values("duration")
    assert members.shape == (40,)
    assert members.min() < now.duration < members.max()


def test_interval_is_that_of_the_members(now) -> None:
    values = now.ensemble.values("duration") / 60.0
    low, high = np.quantile(values, [0.05, 0.95], method="weibull")
    row = now.phases.loc[1]  # the only phase, so its duration is that of the run
    assert (row["duration_low_min"], row["duration_high_min"]) == pytest.approx((low, high))


def test_interval_widens_with_its_level(fitted: Fit) -> None:
    wide, narrow = (
        forecast(fitted, WATER, draws=40, level=level).phases.loc[1] for level in (0.95, 0.5)
    )
    assert wide["duration_low_min"] < narrow["duration_low_min"]
    assert narrow["duration_high_min"] < wide["duration_high_min"]


def test_same_seed_gives_the_same_forecast(fitted: Fit) -> None:
    one, same, other = (forecast(fitted, WATER, draws=4, seed=seed) for seed in (1, 1, 2))
    assert one.members == same.members
    assert one.members != other.members
    assert one.duration == same.duration == other.duration


@pytest.mark.parametrize("kettle", ["plain", "fit"])
def test_without_draws_there_is_no_interval(kettle: str, fitted: Fit) -> None:
    result = forecast(fitted, WATER, draws=0) if kettle == "fit" else forecast(KETTLE, WATER)
    assert result.members == ()
    assert result.ensemble is None
    assert result.interval("duration") is None
    assert not [column for column in result.phases if column.endswith(("low_min", "high_min"))]


def test_run_is_the_sum_of_its_phases_and_the_books_close() -> None:
    result = forecast(KETTLE, STEPS)
    table = result.phases
    assert table["duration_min"].sum() * 60.0 == pytest.approx(result.duration)
    starts = np.concatenate([[0.0], table["duration_min"].cumsum()[:-1]])
    assert table["start_min"].to_numpy() == pytest.approx(starts)
    assert table["energy_kWh"].sum() * 3.6e6 == pytest.approx(result.balance.heater_energy)
    assert abs(result.balance.heat_residual) < 1e-9
    assert abs(result.balance.mass_residual) < 1e-9


def test_poured_mass_is_what_is_left_and_what_boiled_away() -> None:
    result = forecast(KETTLE, WATER)
    left = result.result.product_mass + result.phases["evaporated_kg"].sum()
    assert left == pytest.approx(60.0, abs=1e-6)


def test_us_table_is_the_metric_one_in_other_units() -> None:
    # degF = 1.8 degC + 32 and lb = 0.45359237 kg by definition (NIST SP 811, appendix B).
    result = forecast(KETTLE, WATER)
    metric, us = result.phases, result.to_dataframe("us")
    assert us["peak_F"].to_numpy() == pytest.approx(metric["peak_C"].to_numpy() * 1.8 + 32.0)
    assert us["overshoot_F"].to_numpy() == pytest.approx(metric["overshoot_K"].to_numpy() * 1.8)
    pounds = metric["evaporated_kg"].to_numpy() / 0.45359237
    assert us["evaporated_lb"].to_numpy() == pytest.approx(pounds)
    assert us["duration_min"].equals(metric["duration_min"])


def test_unknown_system_is_refused() -> None:
    with pytest.raises(InvalidArgument, match='must be "metric" or "us", got \'imperial\''):
        forecast(KETTLE, WATER).to_dataframe("imperial")


def test_trace_covers_the_run_in_celsius() -> None:
    result = forecast(KETTLE, WATER)
    trace = result.trace
    assert trace["time_s"].iloc[0] == 0.0
    assert trace["time_s"].iloc[-1] == pytest.approx(result.duration)
    assert (np.diff(trace["time_s"]) >= 0.0).all()
    assert trace["agitator.speed_rpm"].max() == pytest.approx(20.0)  # as the recipe says
    assert trace["floor_sensor.reading_C"].iloc[0] == pytest.approx(23.0)  # of the room
    assert set(trace["phase"]) == {1}
    assert trace["floor.heat"].between(0.0, 1.0).all()


def test_trace_names_every_addition_of_the_same_name_apart() -> None:
    stew = read_recipe(demo_path("stew.toml"))
    twice = stew.with_more("lentil", "2 kg", temperature="5 degC")
    result = forecast(KETTLE, twice)
    assert len(result.trace.columns) == len(result.result.trace_names)


def test_json_holds_the_table(now) -> None:
    plain = json.loads(now.to_json())
    assert plain["recipe"] == "water to 90 degC"
    assert plain["duration_min"] == pytest.approx(now.duration / 60.0)
    assert plain["interval_level"] == 0.9
    assert plain["phases"][0]["ended"] == "held"
    assert plain["phases"][0]["number"] == 1
    assert set(plain["balance"]) >= {"heater_energy", "heat_residual"}


def test_warm_room_and_warm_kettle_are_quicker() -> None:
    cold = forecast(KETTLE, WATER).duration
    warm = forecast(KETTLE, WATER, room=KETTLE.surroundings.replace(temperature=308.15))
    hot = forecast(KETTLE, WATER, start=_core.Start(floor=370.0, wall=350.0))
    assert warm.duration < cold
    assert hot.duration < cold


def test_phase_that_cannot_get_there_times_out() -> None:
    phase = WATER.phases[0].replace(time_limit=300.0)
    result = forecast(KETTLE, WATER.replace(phases=[phase]))
    row = result.phases.loc[1]
    assert row["ended"] == "TIMED OUT"
    assert row["duration_min"] == pytest.approx(5.0)
    assert np.isnan(row["to_reach_min"])
    assert json.loads(result.to_json())["phases"][0]["to_reach_min"] is None


def test_overfull_kettle_is_refused_with_its_name() -> None:
    flood = WATER.with_more("water", "300 kg", temperature="14 degC")
    with pytest.raises(InvalidArgument, match=r"heat the water|commissary A") as caught:
        forecast(KETTLE, flood)
    assert "360" in str(caught.value) or "m3" in str(caught.value) or "L" in str(caught.value)


def test_coefficients_beside_a_fit_are_refused(fitted: Fit) -> None:
    with pytest.raises(InvalidArgument, match="a fit brings its coefficients"):
        forecast(fitted, WATER, coefficients=_core.Coefficients())


@pytest.mark.parametrize(("level", "draws"), [(0.0, 5), (1.0, 5), (0.9, -1)])
def test_impossible_level_or_draws_are_refused(level: float, draws: int) -> None:
    with pytest.raises(InvalidArgument, match=r"level must be in 0\.\.1 and draws >= 0"):
        forecast(KETTLE, WATER, level=level, draws=draws)


def test_water_takes_as_long_as_its_enthalpy_over_the_power() -> None:
    # Without losses all heat of the floor ends in water and metal. From 14 to 90 degC water takes
    # up 376.97 - 58.75 = 318.2 kJ/kg (IAPWS-95 at 0.1 MPa). Steel and elements take up more, so
    # only the difference of two masses is free of them, but for the wall wetted besides.
    dry = {"floor.loss": 0.0, "wall.loss": 0.0, "evaporation.factor": 0.02}
    values = _core.Coefficients(dry | {"floor.efficiency": 1.0})
    more = WATER.with_more("water", "6 kg", temperature="14 degC")
    lighter, heavier = (forecast(KETTLE, one, coefficients=values) for one in (WATER, more))
    longer = heavier.result.phases[0].time_to_reach - lighter.result.phases[0].time_to_reach
    wall = 0.003 * 6.0 / (1000.0 * 0.8 / 4.0) * 7900.0 * 500.0 * 76.0  # [J], 3 mm of steel
    water = 6.0 * 318.2e3
    assert longer == pytest.approx((water + wall) / units.power("18 kW"), rel=0.02)


def test_forecasts_and_fits_pickle(fitted: Fit, now) -> None:
    back = pickle.loads(pickle.dumps(now))
    assert back.phases.equals(now.phases)
    assert back.trace.equals(now.trace)
    assert back.balance == now.balance
    again = pickle.loads(pickle.dumps(fitted))
    assert again.coefficients == fitted.coefficients
    assert forecast(again, WATER, draws=0).duration == now.duration
