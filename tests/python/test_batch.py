"""Sums of whole batches from Python: what is refused, and how it is told."""

import pytest

import kettlecast as kc

batch = kc.transfer.batch
NODES = {
    "floor_capacity": 20e3,
    "liquid_capacity": 418e3,
    "conductance": 1500.0,
    "floor_loss": 0.0,
    "liquid_loss": 10.0,
    "surroundings": 293.15,
}


def test_a_temperature_beyond_the_medium_is_refused() -> None:
    with pytest.raises(kc.OutsideValidity, match="no time brings the batch to this temperature"):
        batch.time_to_temperature(4e5, 800.0, 373.15, 293.15, 380.0)
    with pytest.raises(kc.OutsideValidity, match="no area brings"):
        batch.required_area(4e5, 800.0, 373.15, 293.15, 373.15, 60.0)
    with pytest.raises(kc.OutsideValidity, match="a flowing medium brings at most"):
        batch.flowing_medium_area_conductance(2000.0, 1000.0)
    with pytest.raises(kc.OutsideValidity, match="the liquid never reaches this temperature"):
        batch.two_node_time_to(363.15, 100.0, 293.15, 293.15, **NODES)


@pytest.mark.parametrize(
    ("call", "told"),
    [
        (lambda: batch.time_to_temperature(0.0, 1.0, 300.0, 300.0, 310.0), "heat_capacity must be"),
        (lambda: batch.time_to_temperature(1e5, -1.0, 300.0, 300.0, 310.0), "conductance must be"),
        (lambda: batch.time_to_temperature(1e5, 1.0, 300.0, -5.0, 310.0), "start must be between"),
        (lambda: batch.temperature_after(1e5, 1.0, float("nan"), 300.0, 1.0), "medium must be"),
        (lambda: batch.temperature_after(1e5, 1.0, 300.0, 300.0, -1.0), "time must be between"),
        (lambda: batch.shell_and_tube_conductance(1.0, 1.0, 1.0, 0), "shells must be between"),
        (lambda: batch.boil_off_heat(1.0, 1.5, 2e6), "share must be between 0 and 1"),
        (lambda: batch.temperature_after_passes(0.0, 400.0, 300.0, 1.0), "effectiveness must be"),
    ],
)
def test_impossible_input_is_told(call: object, told: str) -> None:
    with pytest.raises(kc.InvalidArgument, match=told):
        call()  # type: ignore[operator]


# Cengel, Heat and Mass Transfer, problem 4-17: milk in a glass in water of 60 degC, 5.8 min
def test_milk_in_a_glass() -> None:
    rate = batch.lumped_rate(120.0, 1.0 / 0.0105, 998.0, 4182.0)
    time = batch.time_to_temperature(1.0, rate, 333.15, 276.15, 311.15)
    assert time / 60.0 == pytest.approx(5.8, abs=0.05)
