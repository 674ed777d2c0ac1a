"""The command line on logs, foods, schemas and the demo."""

import functools
import itertools
import json
from pathlib import Path

import pytest
from cli_runs import KETTLE, LOG, STEW, WATER, plain, run
from log_files import in_fahrenheit

from kettlecast import demo_run
from kettlecast.cli_output import CAUTION
from kettlecast.demo import demo_path
from kettlecast.fit_result import Fit
from kettlecast.fitting import fit
from kettlecast.foods import food_names
from kettlecast.forecasting import forecast
from kettlecast.kettle_file import read_kettle
from kettlecast.recipe_file import read_recipe
from kettlecast.run_log import read_run


@pytest.fixture(scope="module")
def small_fit() -> Fit:
    log = read_run(LOG, recipe=read_recipe(WATER))
    return fit(read_kettle(KETTLE), log, vary=["floor.efficiency", "probe.lag"])


# --- check


def test_clean_log_is_told_so() -> None:
    result = run("check", LOG, "--recipe", WATER)
    assert result.exit_code == 0
    assert "1 phases, 1 pours" in result.stdout
    assert "nothing looks wrong" in result.stdout


def test_check_json_holds_pours_and_findings() -> None:
    found = plain("check", demo_path("stew_70kg.csv"), "--recipe", STEW)
    names = [pour["name"] for pour in found["pours"]]
    assert names == ["oil", "onion", "water", "lentil", "spinach_frozen"]
    assert found["findings"] == []
    assert found["phase_starts_s"] == [0.0, 350.0, 890.04, 1870.04, 3370.08]  # of the events file


def test_log_with_errors_ends_with_3(tmp_path: Path) -> None:
    log = tmp_path / "backward.csv"
    log.write_text("time_s,probe_C,floor_heat_pct\n0,20,100\n4,21,100\n2,22,100\n")
    result = run("check", log)
    assert result.exit_code == 3
    assert "error: lines 3 to 4: time: time runs backward by 2 s" in result.stdout
    assert "a fit refuses this log" in result.stderr
    found = plain("check", log, code=3)
    assert {"severity", "lines", "signal", "seen", "expected"} == set(found["findings"][0])


@pytest.fixture
def fahrenheit_log(tmp_path: Path) -> Path:
    return in_fahrenheit(tmp_path, LOG.stem)


def test_fahrenheit_declared_as_celsius_is_found_and_can_be_declared(fahrenheit_log: Path) -> None:
    result = run("check", fahrenheit_log, "--recipe", WATER)
    assert result.exit_code == 3
    assert "degF" in result.stdout
    units = ("--unit", "probe=degF", "--unit", "floor=degF")
    assert run("check", fahrenheit_log, "--recipe", WATER, *units).exit_code == 0


def test_column_can_be_named(tmp_path: Path) -> None:
    log = tmp_path / "log.csv"
    log.write_text("time_s,T7_C,floor_heat_pct\n0,20,100\n2,21,100\n4,22,100\n")
    assert run("check", log).exit_code == 1
    assert run("check", log, "--column", "probe=T7_C").exit_code == 0


# --- foods, schema, demo


def test_foods_are_all_listed_and_add_up() -> None:
    found = plain("foods")
    assert [one["name"] for one in found] == food_names()
    for one in found:
        # Tables round each component to 0.1 % and more, so the sum may miss 100 % by 2 %.
        assert sum(one["composition"].values()) == pytest.approx(1.0, abs=0.02)
    said = run("foods").stdout
    for name in food_names():
        assert name in said


@pytest.mark.parametrize(("kind", "key"), [("kettle", "kettle"), ("recipe", "phase")])
def test_schema_is_json_schema(kind: str, key: str) -> None:
    found = plain("schema", kind)
    assert found == json.loads(run("schema", kind).stdout)
    assert key in found["properties"]


@pytest.fixture
def quick_demo(small_fit: Fit, monkeypatch) -> None:
    monkeypatch.setattr(demo_run, "fit_demo_kettle", lambda: small_fit)
    monkeypatch.setattr(demo_run, "forecast", functools.partial(forecast, draws=5))


# Ends of phases as written in the events files of the demo [s].
LOGGED = {
    "stew_70kg": [0, 350, 890.04, 1870.04, 3370.08, 3870.04],
    "stew_70kg_again": [0, 340, 880.04, 1852.04, 3352.08, 3855.04],
    "stew_79kg_cold": [0, 350, 890.04, 2027.04, 3527.08, 3994.04],
}


@pytest.mark.usefixtures("quick_demo")
def test_demo_json_holds_forecast_answer_and_logs() -> None:
    found = plain("demo")
    assert set(found) == {"fit", "forecast", "comparison", "logged_min", "caution"}
    assert found["comparison"]["known"] == "lentil stew"
    for name, edges in LOGGED.items():
        logged = found["logged_min"][name]
        lengths = [(b - a) / 60.0 for a, b in itertools.pairwise(edges)]
        assert logged["phases"] == pytest.approx(lengths)
        assert logged["total"] == pytest.approx(edges[-1] / 60.0)


@pytest.mark.usefixtures("quick_demo")
def test_demo_says_what_it_found() -> None:
    result = run("demo")
    assert result.exit_code == 0
    for part in ("90% interval", "twenty more pounds", "64:30", "64:15", "66:34", "2:04", "2:19"):
        assert part in result.stdout, part
    assert CAUTION in result.stdout


def test_cold_carrot_is_poured_before_the_lentils() -> None:
    more = demo_run.with_cold_carrot(read_recipe(STEW))
    poured = {one.name: one for one in more.phases[2].additions}
    assert poured["carrot"].mass == pytest.approx(20 * 0.45359237)  # lb by definition
    assert poured["carrot"].temperature == pytest.approx(273.15 + 4.0 / 1.8)  # 36 degF
    assert (poured["carrot"].delay, poured["lentil"].delay) == (75.0, 110.0)
