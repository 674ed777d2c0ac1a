"""Logs of a kettle that is heated and cooled by its jacket, and fits to them."""

import dataclasses
from pathlib import Path

import numpy as np
import pytest
from cli_runs import run as command
from steam_logs import KETTLE, made_log, planned

import kettlecast as kc
from kettlecast import _core
from kettlecast.demo import demo_path
from kettlecast.findings import Severity
from kettlecast.fit_problem import informative
from kettlecast.run_plan import run_plan

TRUTH = {"jacket.film_factor": 0.6, "wall.film_factor": 1.3, "wall.loss": 9.0, "probe.lag": 18.0}


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return tmp_path_factory.mktemp("steam")


@pytest.fixture(scope="module")
def logged(folder: Path) -> kc.Run:
    return kc.read_run(made_log(folder, TRUTH, 7), recipe=planned(folder))


@pytest.fixture(scope="module")
def fitted(logged: kc.Run) -> kc.Fit:
    return kc.fit(KETTLE, logged)


def test_a_log_needs_no_floor_heat_where_the_jacket_heats(logged: kc.Run) -> None:
    assert not logged.floor_heat.any()
    assert logged.jacket_heat.max() == 1.0
    (told,) = logged.findings
    assert (told.severity, told.signal) == (Severity.note, "floor_heat")
    assert logged.jacket_limits == ((0.0, None), (logged.phases[1], None))
    assert logged.cooling_limits == ((0.0, None), (logged.phases[1], pytest.approx(275.15)))


def test_a_log_without_any_heat_is_refused(folder: Path) -> None:
    path = folder / "cold.csv"
    path.write_text("time_s,probe_C\n0,20\n2,20\n", encoding="utf-8")
    with pytest.raises(kc.FileFormatError) as caught:
        kc.read_run(path)
    assert str(caught.value) == (
        f'{path}: no column for "floor_heat" or "jacket_heat" (such as floor_heat_pct or '
        "jacket_heat_pct); columns there are: time_s, probe_C; "
        'say which with columns={"floor_heat": "name of the column"}; '
        'or say heat="inferred" with kettle= and recipe=, if an on/off controller switched it, '
        'heat="closed_loop" with recipe=, if the controller on the plate of the kettle did, '
        'or heat="none", if nothing was heated'
    )


def test_settings_follow_steam_and_cold_water(logged: kc.Run) -> None:
    plan = run_plan(logged, KETTLE.surroundings, logged.time)
    first, last = plan.settings[0], plan.settings[-1]
    assert (first.cooling, last.cooling) == (0.0, 1.0)
    assert last.cool_limit == pytest.approx(275.15)
    assert first.jacket_limit > 473.15  # steam sets its own


# Identity: a run replayed with the coefficients it was made with shows the same readings.
def test_replay_of_a_cooled_run_is_its_forecast(logged: kc.Run) -> None:
    plan = run_plan(logged, KETTLE.surroundings, logged.time)
    shown = _core.replay(KETTLE, kc.Coefficients(TRUTH), plan=plan)
    difference = shown.probe_reading - logged.probe_reading
    assert float(np.sqrt(np.mean(difference**2))) == pytest.approx(0.15, rel=0.15)
    assert abs(shown.balance.heat_residual) < 1e-8


# A valve that throttles the cold water at a temperature: no jacket passes below its limit.
def test_a_limit_of_the_cold_jacket_is_kept_in_a_replay(logged: kc.Run) -> None:
    when = logged.phases[1]
    limited = dataclasses.replace(logged, cooling_limits=((0.0, None), (when, 333.15)))
    plan = run_plan(limited, KETTLE.surroundings, logged.time)
    shown = _core.replay(KETTLE, kc.Coefficients(TRUTH), plan=plan)
    assert shown.probe_reading[-1] > 333.15 - 2.0
    assert logged.probe_reading[-1] < 305.0


def test_a_steam_kettle_is_asked_for_what_it_can_tell(logged: kc.Run) -> None:
    asked = set(informative(KETTLE, [logged]))
    assert {"jacket.film_factor", "jacket.efficiency", "wall.film_factor"} <= asked
    assert {"floor.film_factor", "floor.resistance_factor"} <= asked  # steam lies under the floor
    unknowable = {"floor.efficiency", "elements.heat_capacity", "elements.lag", "floor.loss"}
    assert not asked & (unknowable | {"jacket.conductance"})
    wall_only = KETTLE.replace(jacket=KETTLE.jacket.replace(under_floor=False))
    asked = set(informative(wall_only, [logged]))
    assert not asked & {"floor.film_factor", "floor.resistance_factor", "floor.efficiency"}
    assert "floor.loss" in asked


@pytest.mark.parametrize(
    ("kind", "cooled", "heated", "film", "conductance", "efficiency"),
    [
        ("steam", True, True, True, False, True),
        ("steam", False, True, True, False, True),
        ("steam", False, False, False, False, False),
        ("liquid", False, True, True, False, False),
        ("electric", True, True, True, True, True),
        ("electric", False, True, False, True, True),
    ],
)
def test_a_jacket_is_asked_for_the_film_that_was_used(
    logged: kc.Run,
    kind: str,
    cooled: bool,
    heated: bool,
    film: bool,
    conductance: bool,
    efficiency: bool,
) -> None:
    kettle = KETTLE.replace(jacket=KETTLE.jacket.replace(kind=kc.JacketKind.__members__[kind]))
    run = logged
    if not cooled:
        run = dataclasses.replace(run, cooling_limits=())
    if not heated:
        run = dataclasses.replace(run, jacket_heat=np.zeros_like(run.jacket_heat))
    asked = set(informative(kettle, [run]))
    assert ("jacket.film_factor" in asked) == film
    assert ("jacket.conductance" in asked) == conductance
    assert ("jacket.efficiency" in asked) == efficiency


def test_a_fit_finds_the_film_of_the_jacket_again(fitted: kc.Fit) -> None:
    assert fitted.success
    found = fitted.params["jacket.film_factor"]
    assert abs(found.value - TRUTH["jacket.film_factor"]) < 2.0 * found.stderr
    # The log says far more than the prior, whose spread is 35 %.
    assert found.stderr < 0.1 * found.value
    assert fitted.runs[0].probe_rms < 0.3


def test_a_fit_forecasts_the_next_batch(fitted: kc.Fit, folder: Path) -> None:
    truth = kc.forecast(KETTLE, planned(folder), coefficients=kc.Coefficients(TRUTH))
    usual = kc.forecast(KETTLE, planned(folder))
    again = kc.forecast(fitted, planned(folder), draws=0)
    missed = [abs(one.duration - truth.duration) for one in (usual, again)]
    assert missed[1] < 0.01 * truth.duration
    assert missed[1] < 0.2 * missed[0]


def test_fit_and_check_by_command(folder: Path, logged: kc.Run) -> None:
    recipe = folder / "steam.toml"
    checked = command("check", logged.file, "--recipe", recipe)
    assert checked.exit_code == 0
    assert "note: line 1: floor_heat: no column, taken as no floor heat" in checked.stdout
    kettle = demo_path("steam_kettle.toml")
    pair = f"{logged.file}:{recipe}"
    one = command("fit", kettle, "--run", pair, "--vary", "jacket.film_factor")
    assert one.exit_code == 0
    assert "jacket.film_factor" in one.stdout
    assert one.stderr == ""
