"""Fits to logs without heat, with the controller of the kettle in the model."""

import csv
from pathlib import Path

import numpy as np
import pytest
from cli_runs import run
from log_files import told
from test_heat_inference import LOGS, without

import kettlecast as kc
from kettlecast import _core
from kettlecast.demo import demo_path
from kettlecast.errors import FileFormatError, InvalidArgument
from kettlecast.fit_problem import informative, observe
from kettlecast.run_phases import phases_as_they_happened

KETTLE = kc.read_kettle(demo_path("kettle.toml"))
STEPS = kc.read_recipe(demo_path("water_steps.toml"))
ICE = 273.15
TRUTH = {
    "floor.efficiency": 0.93,
    "floor.film_factor": 1.2,
    "jacket.efficiency": 0.8,
    "probe.lag": 18.0,
}


def made_log(
    folder: Path, recipe: kc.Recipe, *, noise: float = 0.1, early: float = 0.0, late: float = 0.0
) -> Path:
    """A log of the model in closed loop without heat; it may begin early and end late [s]."""
    fine = kc.Options(output_interval=5.0)
    made = kc.forecast(KETTLE, recipe, coefficients=kc.Coefficients(TRUTH), options=fine)
    trace, phases = made.trace, made.result.phases
    generator = np.random.default_rng(4)
    rows = [("time_s", "floor_C", "probe_C", "agitator_rpm")]
    first = (trace["floor_sensor.reading_C"].iloc[0], trace["probe.reading_C"].iloc[0])
    rows += [(f"{t:.3f}", *first, "0") for t in np.arange(0.0, early, 5.0)]
    for i, row in trace.iterrows():
        more = generator.normal(0.0, noise if i else 0.0, 2)
        floor, probe = row["floor_sensor.reading_C"] + more[0], row["probe.reading_C"] + more[1]
        rows.append((f"{row['time_s'] + early:.3f}", floor, probe, row["agitator.speed_rpm"]))
    end = made.duration + early
    rows += [(f"{end + t:.3f}", 60.0, 60.0, "0") for t in np.arange(5.0, late + 1.0, 5.0)]
    path = folder / "made.csv"
    with path.open("w", encoding="utf-8", newline="") as file:
        csv.writer(file).writerows(rows)
    lines = ["time_s,event,detail"]
    for number, (phase, planned) in enumerate(zip(phases, recipe.phases, strict=True), start=1):
        lines.append(f"{phase.start + early:.4f},phase start,{number}")
        lines += [
            f"{phase.start + early + one.delay:.4f},add,{one.name} {one.mass:g} kg "
            f"at {one.temperature - ICE:g} C"
            for one in planned.additions
        ]
    path.with_suffix(".events.csv").write_text("\n".join([*lines, f"{end:.4f},end,"]) + "\n")
    return path


def closed(path: Path, recipe: kc.Recipe) -> kc.Run:
    return kc.read_run(path, recipe=recipe, heat="closed_loop")


# --- fits


def test_known_coefficients_are_found_within_three_standard_errors(tmp_path: Path) -> None:
    found = kc.fit(KETTLE, closed(made_log(tmp_path, STEPS), STEPS), vary=list(TRUTH))
    assert found.success
    for name, truth in TRUTH.items():
        one = found.params[name]
        assert abs(one.value - truth) < 3.0 * one.stderr, name
        assert one.stderr < 0.2 * abs(truth - one.init_value), name


def test_forecast_and_log_in_closed_loop_are_one(tmp_path: Path) -> None:
    log = closed(made_log(tmp_path, STEPS, noise=0.0), STEPS)
    one = observe(log, KETTLE.surroundings, 5.0)
    shown = _core.replay(KETTLE, kc.Coefficients(TRUTH), plan=one.plan)
    np.testing.assert_allclose(shown.probe_reading, one.probe, atol=0.02)
    assert one.floor is not None
    np.testing.assert_allclose(shown.floor_reading, one.floor, atol=0.1)


def test_the_clock_may_start_before_the_first_phase(tmp_path: Path) -> None:
    log = closed(made_log(tmp_path, STEPS, noise=0.0, early=300.0), STEPS)
    one = observe(log, KETTLE.surroundings, 5.0)
    assert one.time[0] >= log.phases[0] == 300.0
    shown = _core.replay(KETTLE, kc.Coefficients(TRUTH), plan=one.plan)
    np.testing.assert_allclose(shown.probe_reading, one.probe, atol=0.02)


def test_nothing_is_heated_after_the_end(tmp_path: Path) -> None:
    log = closed(made_log(tmp_path, STEPS, late=120.0), STEPS)
    assert log.closed_loop[-1].regulated is kc.Regulated.none
    assert sum(one.ends[0].value for one in log.closed_loop) == pytest.approx(log.time[-1], abs=0.1)
    assert len(log.closed_loop) == len(STEPS.phases) + 1


@pytest.mark.parametrize("name", ["water_boil_60kg", "water_steps_60kg"])
def test_fits_with_logged_heat_and_in_closed_loop_agree(name: str, tmp_path: Path) -> None:
    recipe = kc.read_recipe(demo_path(LOGS[name]))
    logged = kc.fit(KETTLE, kc.read_run(demo_path(f"{name}.csv"), recipe=recipe))
    loop = kc.fit(KETTLE, closed(without(tmp_path, name, "heat"), recipe))
    for one in logged.params.values():
        other = loop.params[one.name]
        assert abs(other.value - one.value) < 1.5 * max(one.stderr, other.stderr), one.name
    forecasts = [kc.forecast(fit, recipe) for fit in (logged, loop)]
    low, high = np.quantile(forecasts[0].ensemble.values("duration"), [0.05, 0.95])
    assert abs(forecasts[1].duration - forecasts[0].duration) < high - low
    report = loop.fit_report()
    assert "heat in closed loop" in report
    assert "the controller of the kettle was taken as it is on its plate" in report
    assert "closed loop" not in logged.fit_report()


def test_heaters_that_a_phase_uses_can_be_learned(tmp_path: Path) -> None:
    names = informative(KETTLE, [closed(made_log(tmp_path, STEPS), STEPS)])
    assert {"floor.efficiency", "jacket.efficiency"} <= set(names)
    water = kc.read_recipe(demo_path("water_boil.toml"))
    names = informative(KETTLE, [closed(without(tmp_path, "water_boil_60kg", "heat"), water)])
    assert "floor.efficiency" in names and "jacket.efficiency" not in names


def test_fit_in_closed_loop_on_the_command_line(tmp_path: Path) -> None:
    log = f"{made_log(tmp_path, STEPS)}:{demo_path('water_steps.toml')}"
    quick = [word for name in TRUTH for word in ("--vary", name)]
    result = run("fit", demo_path("kettle.toml"), "--run", log, "--heat", "closed_loop", *quick)
    assert result.exit_code == 0, result.stderr
    assert "heat in closed loop" in result.stdout


# --- phases as they happened


def phases(pours=(), covers=(), ends=(1500.0, 1500.0)) -> tuple[kc.Phase, ...]:  # type: ignore[no-untyped-def]
    two = STEPS.replace(phases=STEPS.phases[:2])
    return phases_as_they_happened(two, (100.0, 900.0), pours, covers, ends)


def test_phases_last_as_long_as_they_did() -> None:
    found = phases()
    assert [one.ends[0].value for one in found] == [800.0, 600.0]
    assert all(one.ends[0].kind is kc.EndKind.elapsed for one in found)
    assert [one.set_point for one in found] == [one.set_point for one in STEPS.phases[:2]]


def test_pours_begin_when_they_did_and_end_with_their_phase() -> None:
    water = STEPS.phases[0].additions[0]
    pours = ((90.0, water), (130.0, water.replace(pour_time=40.0)), (880.0, water))
    slow = (*pours[:2], (880.0, water.replace(pour_time=60.0)))
    first, second = phases(slow)
    assert [one.delay for one in first.additions] == [0.0, 30.0, 780.0]
    assert [one.pour_time for one in first.additions] == [water.pour_time, 40.0, 20.0]
    assert not second.additions


def test_a_lid_parts_a_phase() -> None:
    covers = ((100.0, kc.Cover.open), (500.0, kc.Cover.lid), (900.0, kc.Cover.open))
    found = phases(covers=covers)
    assert [one.cover for one in found] == [kc.Cover.open, kc.Cover.lid, kc.Cover.open]
    assert [one.ends[0].value for one in found] == [400.0, 400.0, 600.0]


# --- refusals


def test_what_a_closed_loop_needs(tmp_path: Path) -> None:
    path = without(tmp_path, "water_boil_60kg", "heat")
    with pytest.raises(InvalidArgument, match='heat="closed_loop" needs the recipe; not given'):
        kc.read_run(path, heat="closed_loop")
    with pytest.raises(InvalidArgument, match='it has 1, recipe "water in steps" has 3'):
        kc.read_run(path, heat="closed_loop", recipe=STEPS)
    with pytest.raises(FileFormatError, match='heat="closed_loop" with recipe='):
        kc.read_run(path)
    with pytest.raises(InvalidArgument, match="this one has floor_heat and jacket_heat; leave"):
        kc.read_run(demo_path("water_boil_60kg.csv"), heat="closed_loop", recipe=STEPS)


def test_the_log_says_that_the_controller_switches(tmp_path: Path) -> None:
    path = without(tmp_path, "water_boil_60kg", "heat")
    one = closed(path, kc.read_recipe(demo_path("water_boil.toml")))
    assert one.heat_source == "closed_loop"
    assert "switched by the controller of the kettle in closed loop" in told(one, "floor_heat")[0]
