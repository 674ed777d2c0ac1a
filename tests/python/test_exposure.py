"""Lethality, time above a level and browning along the trace of a forecast."""

import math
from types import SimpleNamespace
from typing import Any, cast

import numpy as np
import pytest
from numpy.typing import NDArray

import kettlecast as kc
from kettlecast.demo import demo_path
from kettlecast.errors import InvalidArgument, UnknownName
from kettlecast.exposure import browning, lethality, time_above, time_below
from kettlecast.forecasting import Forecast, forecast
from kettlecast.kettle_file import read_kettle
from kettlecast.recipe_file import read_recipe

ICE = 273.15


def traced(names: list[str], rows: list[list[float]]) -> Forecast:
    """A forecast of which only the trace is there, temperatures in degC turned into K."""
    trace = np.array(rows, dtype=float)
    for i, name in enumerate(names):
        if name.endswith(("temperature", ".reading")):
            trace[:, i] += ICE
    result = SimpleNamespace(trace_names=names, trace=trace)
    return Forecast(cast(Any, None), cast(Any, None), cast(Any, result))


#: Ramp of 10 min, hold of 5 min, ramp of 6 min.
RETORT = traced(
    ["time", "beef.core_temperature"],
    [[0.0, 100.0], [600.0, 121.1], [900.0, 121.1], [1260.0, 100.0]],
)


@pytest.fixture(scope="module")
def stew() -> Forecast:
    return forecast(read_kettle(demo_path("kettle.toml")), read_recipe(demo_path("stew.toml")))


def column(run: Forecast, name: str) -> NDArray[np.float64]:
    return run.result.trace[:, run.result.trace_names.index(name)]


def test_the_process_time_of_two_ramps_and_a_hold_is_exact() -> None:
    # Integral of 10^((T - 121.1)/10) over the two ramps and the hold: 8.267664709 min
    found = lethality(RETORT, signal="beef.core_temperature", z="10 K", reference="121.1 degC")
    assert found.process_time / 60.0 == pytest.approx(8.267664709, rel=1e-8)
    assert found.log_reductions is None
    assert "no statement" in found.caution


def test_log_reductions_are_the_process_time_over_d() -> None:
    # definition of D; 18 degF are 10 K
    found = lethality(
        RETORT,
        signal="beef.core_temperature",
        z="18 degF",
        reference="121.1 degC",
        decimal_reduction_time="30 s",
    )
    assert found.log_reductions == pytest.approx(2.0 * 8.267664709, rel=1e-8)


def test_times_above_and_below_by_hand() -> None:
    # 110.55 degC is half way of both ramps: 5 + 5 + 3 min at or above it, from 5 min on
    above = time_above(RETORT, signal="beef.core_temperature", level="110.55 degC")
    assert above.total == pytest.approx(780.0, abs=1e-5)
    assert above.longest == above.total
    assert above.first == pytest.approx(300.0, abs=1e-5)
    below = time_below(RETORT, signal="beef.core_temperature", level="110.55 degC")
    assert (below.total, below.longest) == pytest.approx((480.0, 300.0), abs=1e-5)
    assert below.first == 0.0
    never = time_above(RETORT, signal="beef.core_temperature", level="130 degC")
    assert (never.total, never.longest, never.first) == (0.0, 0.0, None)


def test_a_second_addition_of_one_name_is_told_apart() -> None:
    names = ["time", "beef.core_temperature", "beef.core_temperature", "product.level"]
    run = traced(names, [[0.0, 60.0, 10.0, 0.2], [100.0, 60.0, 10.0, 0.4]])
    assert time_above(run, signal="beef.core_temperature", level="50 degC").total == 100.0
    assert time_above(run, signal="beef_2.core_temperature", level="50 degC").total == 0.0
    assert time_above(run, signal="product.level", level=0.3).first == pytest.approx(50.0)


def test_browning_at_one_temperature_is_arrhenius() -> None:
    # k = 42000 1/s exp(-64151/(R T)) (Zanoni, Peri & Bruno, LWT 28, 1995, 604)
    run = traced(["time", "floor.temperature"], [[0.0, 185.0], [60.0, 185.0]])
    ratio = math.exp(-64151.0 / 8.314462618 * (1.0 / 458.15 - 1.0 / 423.15))
    (found,) = browning(run)
    assert found.time == pytest.approx(60.0 * ratio, rel=1e-9)
    assert found.at_highest_energy > found.time
    assert "not a measurement" in found.caution
    # E = ln(10) R Tref^2 / z makes the rate at T the power -(Tref - T) Tref / (z T) of ten
    (cool,) = browning(
        traced(["time", "floor.temperature"], [[0.0, 150.0], [60.0, 150.0]]),
        z="35 K",
        reference="185 degC",
    )
    assert cool.time == pytest.approx(60.0 * 10.0 ** (-458.15 / 423.15), rel=1e-9)
    with pytest.raises(InvalidArgument, match="not both"):
        browning(run, z="35 K", activation_energy=1e5)


def test_sums_along_a_real_forecast(stew: Forecast) -> None:
    # The same integrals over straight lines, by a fine rectangle rule.
    time = column(stew, "time")
    fine = np.linspace(time[0], time[-1], 2_000_001)
    middle = 0.5 * (fine[1:] + fine[:-1])
    core = np.interp(middle, time, column(stew, "lentil.core_temperature"))
    step = fine[1] - fine[0]
    found = lethality(stew, signal="lentil.core_temperature", z="7 K", reference="70 degC")
    assert found.process_time == pytest.approx(
        float(np.sum(10.0 ** ((core - 343.15) / 7.0)) * step), rel=1e-6
    )
    above = time_above(stew, signal="lentil.core_temperature", level="70 degC")
    assert above.total == pytest.approx(float(np.sum(core >= 343.15) * step), abs=10 * step)
    below = time_below(stew, signal="lentil.core_temperature", level="70 degC")
    assert above.total + below.total == pytest.approx(stew.duration, abs=1e-6)


def test_surfaces_that_may_scorch(stew: Forecast) -> None:
    found = {one.signal: one for one in browning(stew)}
    pieces = {name for name in stew.result.trace_names if name.endswith(".surface_temperature")}
    assert set(found) == {"floor.temperature"} | pieces
    # The floor is the hottest of them wherever heat goes from it into the food.
    assert max(found.values(), key=lambda one: one.time).signal == "floor.temperature"
    assert all(one.at_highest_energy > 0.0 for one in found.values())


def test_what_is_refused(stew: Forecast) -> None:
    with pytest.raises(UnknownName, match=r"lentil\.core_temperature"):
        time_above(stew, signal="lentils.core_temperature", level="70 degC")
    with pytest.raises(UnknownName, match="not in the trace"):
        time_above(stew, signal="time", level=1.0)
    with pytest.raises(InvalidArgument, match="not a temperature"):
        lethality(stew, signal="vapour.mass", z="7 K", reference="70 degC")
    with pytest.raises(InvalidArgument, match="z"):
        lethality(stew, signal="product.temperature", z=0.0, reference="70 degC")
    with pytest.raises(InvalidArgument, match="reference"):
        lethality(stew, signal="product.temperature", z=7.0, reference=70.0)


def test_numbers_that_make_no_sense_are_refused() -> None:
    thermal, kinetics = kc.properties.lethality, kc.properties.browning
    with pytest.raises(InvalidArgument, match="temperature"):
        thermal.lethal_rate(70.0, 343.15, 7.0)
    with pytest.raises(InvalidArgument, match="temperature"):
        thermal.pasteurisation_rate(60.0)
    with pytest.raises(InvalidArgument, match="shorter at the higher"):
        thermal.z_value(330.0, 10.0, 340.0, 20.0)
    with pytest.raises(InvalidArgument, match="decimal_reduction"):
        thermal.log_reductions(10.0, 0.0)
    with pytest.raises(InvalidArgument, match="activation_energy"):
        kinetics.rate(423.15, 423.15, 64.0)


def test_a_loop_by_its_closed_form_from_python() -> None:
    # exact switching of exponentials: 600 ln(131/129) + 600 ln(71/69) s
    loop = kc.ThermostatLoop(
        off_level=20.0, on_level=220.0, time_constant=600.0, low=89.0, high=91.0
    )
    cycle = kc.control.thermostat_cycle(loop)
    assert cycle.period == pytest.approx(26.37497477, rel=1e-9)
    with pytest.raises(InvalidArgument, match="never cycles"):
        kc.control.thermostat_cycle(loop.replace(on_level=90.0))
