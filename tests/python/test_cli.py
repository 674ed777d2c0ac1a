"""The command line: what it prints, where, and with which exit code."""

import csv
import dataclasses
import os
import signal
import subprocess
import sys
import time
from pathlib import Path

import pytest
from cli_runs import COMMANDS, KETTLE, LOG, PAIR, QUICK, STEW, WATER, plain, run, started

from kettlecast import cli
from kettlecast.cli_input import read_runs
from kettlecast.cli_output import CAUTION
from kettlecast.demo import demo_path
from kettlecast.fit_file import read_fit
from kettlecast.fit_result import Fit
from kettlecast.fitting import fit
from kettlecast.kettle_file import read_kettle
from kettlecast.recipe_file import read_recipe
from kettlecast.recipe_writer import write_recipe
from kettlecast.run_log import read_run


@pytest.fixture(scope="module")
def small_fit() -> Fit:
    log = read_run(LOG, recipe=read_recipe(WATER))
    return fit(read_kettle(KETTLE), log, vary=["floor.efficiency", "probe.lag"])


@pytest.fixture
def saved(small_fit: Fit, tmp_path: Path) -> Path:
    small_fit.save(tmp_path / "fit.json")
    return tmp_path / "fit.json"


@pytest.fixture
def slow_recipe(tmp_path: Path) -> Path:
    """Water that has five minutes for what takes half an hour."""
    text = WATER.read_text(encoding="utf-8")
    path = tmp_path / "slow.toml"
    path.write_text(text.replace('hold = "300 s"', 'hold = "300 s"\ntime_limit = "5 min"'))
    return path


# --- what all commands share


@pytest.mark.parametrize("command", COMMANDS)
def test_help_tells_json_and_exit_codes(command: str) -> None:
    result = run(command, "--help")
    said = " ".join(result.stdout.split())
    assert result.exit_code == 0
    assert "--json" in said
    assert "Exit codes: 0 done. 1 " in said


def test_help_lists_all_commands_and_the_caution() -> None:
    said = run("--help").stdout
    for command in COMMANDS:
        assert f" {command} " in said
    assert "".join(CAUTION.split()) in "".join(said.split())  # however it is wrapped


def test_version_names_the_program() -> None:
    result = run("--version")
    assert result.exit_code == 0
    assert result.stdout.startswith("kettlecast")


@pytest.mark.parametrize(
    ("arguments", "told"),
    [
        (["fry"], "fry"),
        (["forecast", KETTLE], "RECIPE"),
        (["fit", KETTLE], "--run"),
        (["forecast", KETTLE, WATER, "--draws", "-1"], "--draws"),
        (["forecast", KETTLE, WATER, "--plot", "picture.doc"], ".png, .svg, .pdf"),
        (["forecast", KETTLE, WATER, "--trace", "nowhere/trace.csv"], "there is no folder"),
        (["fit", KETTLE, "--run", PAIR, "--out", "nowhere/fit.json"], "there is no folder"),
        (["fit", KETTLE, "--run", PAIR, "--fix", "probe.lag"], "must be NAME=VALUE"),
        (["fit", KETTLE, "--run", PAIR, "--fix", "probe.lag=slow"], '"slow" of probe.lag'),
        (["compare", KETTLE, WATER], "give either --with or --more"),
        (["compare", KETTLE, WATER, "--with", WATER, "--more", "water=1 kg"], "give either"),
        (["compare", KETTLE, WATER, "--more", "water"], "must be NAME=VALUE"),
        (["schema", "oven"], "must be kettle or recipe"),
    ],
)
def test_wrong_use_ends_with_2(arguments: list[object], told: str) -> None:
    result = run(*arguments)
    assert result.exit_code == 2
    assert result.stdout == ""
    assert told in " ".join(result.stderr.split())


def test_piped_output_is_plain_and_codes_reach_the_shell(slow_recipe: Path) -> None:
    process = started("forecast", KETTLE, slow_recipe)
    told, complaint = process.communicate(timeout=60)
    assert process.returncode == 3
    assert "\x1b" not in told + complaint
    assert "Attention: " in complaint
    assert "Attention: " not in told


def test_wrong_input_reaches_the_shell_without_a_traceback() -> None:
    process = started("forecast", "absent.toml", WATER)
    told, complaint = process.communicate(timeout=60)
    assert (process.returncode, told) == (1, "")
    assert complaint == "kettlecast: absent.toml: No such file or directory\n"


@pytest.mark.skipif(os.name == "nt", reason="signals as on Unix")
def test_ctrl_c_stops_a_fit_long_before_its_end() -> None:
    names = (("stew_70kg", "stew"), ("water_steps_60kg", "water_steps"))
    runs = [f"{demo_path(f'{log}.csv')}:{demo_path(f'{recipe}.toml')}" for log, recipe in names]
    # The fit says on standard error when it begins, so that the signal cannot come too early.
    code = (
        "import signal, sys\n"
        # A job that a shell runs in the background ignores SIGINT, and so do its children.
        "signal.signal(signal.SIGINT, signal.default_int_handler)\n"
        "from kettlecast import cli, fitting\n"
        "def begun(*a, **k):\n"
        "    print('begun', file=sys.stderr, flush=True)\n"
        "    return fitting.fit(*a, **k)\n"
        "cli.fit_kettle = begun\n"
        "cli.main()\n"
    )
    arguments = ["fit", str(KETTLE), *(part for pair in runs for part in ("--run", pair))]
    with subprocess.Popen(
        [sys.executable, "-c", code, *arguments],
        stdout=subprocess.PIPE,
        stderr=subprocess.PIPE,
        text=True,
    ) as process:
        assert process.stderr is not None
        assert process.stderr.readline() == "begun\n"
        time.sleep(0.3)
        process.send_signal(signal.SIGINT)
        sent = time.perf_counter()
        told, complaint = process.communicate(timeout=60)
        # The fit takes ten seconds and more; a busy machine needs most of a second to leave Python.
        assert time.perf_counter() - sent < 2.0
    assert (process.returncode, told) == (130, "")
    assert complaint == "kettlecast: stopped\n"


# --- forecast


def test_forecast_prints_times_as_minutes_and_seconds() -> None:
    found = plain("forecast", KETTLE, WATER)
    seconds = round(found["duration_min"] * 60.0)
    said = run("forecast", KETTLE, WATER).stdout
    assert f"Whole run: {seconds // 60}:{seconds % 60:02d} min" in said
    assert "no interval: a plain kettle, not a fit" in said
    assert CAUTION in said


def test_forecast_json_holds_phases_books_and_caution() -> None:
    found = plain("forecast", KETTLE, STEW)
    assert set(found) == {
        "kettle",
        "recipe",
        "duration_min",
        "product_mass_kg",
        "duration_interval_min",
        "interval_level",
        "interval_holds",
        "notes",
        "phases",
        "balance",
        "caution",
    }
    assert [phase["phase"] for phase in found["phases"]] == [
        "heat the oil",
        "sweat onions",
        "load and heat",
        "simmer",
        "spinach",
    ]
    assert sum(one["duration_min"] for one in found["phases"]) == pytest.approx(
        found["duration_min"]
    )


def test_forecast_of_a_saved_fit_has_intervals(saved: Path) -> None:
    found = plain("forecast", saved, WATER, "--draws", 10)
    phase = found["phases"][0]
    assert phase["duration_low_min"] < phase["duration_min"] < phase["duration_high_min"]
    said = run("forecast", saved, WATER, "--draws", 10).stdout
    assert "90% interval" in said
    assert "Intervals hold the spread of the coefficients, hands " in said
    assert plain("forecast", saved, WATER, "--draws", 0)["interval_level"] is None


def test_forecast_in_us_units() -> None:
    metric, us = (run("forecast", KETTLE, WATER, *more).stdout for more in ([], ["--us"]))
    assert "[degC]" in metric
    assert "[degF]" not in metric
    assert "[degF]" in us
    assert "[lb]" in us
    assert "[degC]" not in us


def test_warm_room_is_quicker() -> None:
    usual, warm = (
        plain("forecast", KETTLE, WATER, *more)["duration_min"]
        for more in ([], ["--room", "95 degF"])
    )
    assert warm < usual


def test_wrong_room_is_told() -> None:
    result = run("forecast", KETTLE, WATER, "--room", "27")
    assert result.exit_code == 1
    assert '"27" is not a temperature: the unit is missing' in result.stderr


def test_forecast_writes_picture_and_trace(tmp_path: Path) -> None:
    picture, trace = tmp_path / "out.png", tmp_path / "out.csv"
    found = plain("forecast", KETTLE, WATER, "--us", "--plot", picture, "--trace", trace)
    assert picture.read_bytes()[:8] == b"\x89PNG\r\n\x1a\n"  # signature by the PNG standard
    with trace.open(newline="") as file:
        rows = list(csv.DictReader(file))
    assert float(rows[-1]["time_s"]) == pytest.approx(found["duration_min"] * 60.0)
    assert "probe.reading_C" in rows[0]


def test_phase_that_timed_out_ends_with_3(slow_recipe: Path) -> None:
    result = run("forecast", KETTLE, slow_recipe)
    assert result.exit_code == 3
    assert "TIMED OUT" in result.stdout
    assert 'phase "heat the water" ran into its time limit of 5:00 min' in result.stderr
    found = plain("forecast", KETTLE, slow_recipe, code=3)
    assert found["phases"][0]["ended"] == "TIMED OUT"


# --- compare


def test_more_is_the_same_as_the_other_recipe(tmp_path: Path) -> None:
    how = {"phase": 3, "piece": "12 mm", "shape": "sphere", "delay": "75 s", "pour_time": "30 s"}
    changed = read_recipe(STEW).with_more("carrot", "20 lb", "36 degF", **how)
    write_recipe(changed, tmp_path / "more.toml")
    options = [
        part for name, value in how.items() for part in (f"--{name.replace('_', '-')}", value)
    ]
    by_words = plain("compare", KETTLE, STEW, "--more", "carrot=20 lb", "--at", "36 degF", *options)
    by_file = plain("compare", KETTLE, STEW, "--with", tmp_path / "more.toml")
    assert by_words == by_file
    assert by_words["longer_min"] > 0.0
    assert by_words["phases"][-1]["number"] == "total"


def test_compare_says_the_answer_and_draws_it(saved: Path, tmp_path: Path) -> None:
    more = ("--more", "water=6 kg", "--draws", 10, "--plot", tmp_path / "both.svg")
    result = run("compare", saved, WATER, *more)
    assert result.exit_code == 0
    assert "Water to 90 degC takes " in result.stdout
    assert " min longer (90% interval " in result.stdout
    assert CAUTION in result.stdout
    assert "<svg" in (tmp_path / "both.svg").read_text()


def test_phase_by_name_is_the_phase_by_number() -> None:
    carrot = ("--more", "carrot=5 lb", "--at", "36 degF", "--phase")
    by_name, by_number = (
        plain("compare", KETTLE, STEW, *carrot, phase) for phase in ("load and heat", 3)
    )
    assert by_name == by_number


# --- fit


def test_fit_saves_what_a_forecast_can_read(tmp_path: Path) -> None:
    out, picture = tmp_path / "fit.json", tmp_path / "fit.png"
    result = run("fit", KETTLE, "--run", PAIR, *QUICK, "--out", out, "--plot", picture)
    assert result.exit_code == 0
    assert "water_boil_60kg" in result.stdout
    assert "floor.efficiency" in result.stdout
    assert list(read_fit(out).params) == ["floor.efficiency", "probe.lag"]
    assert picture.stat().st_size > 10_000


def test_fit_json_holds_coefficients_and_runs() -> None:
    found = plain("fit", KETTLE, "--run", PAIR, *QUICK, "--fix", "floor.loss=5")
    assert found["converged"] is True
    assert found["fixed"] == {"floor.loss": 5.0}
    assert [one["coefficient"] for one in found["coefficients"]] == list(QUICK[1::2])
    assert {"value", "stderr", "unit", "at_bound"} <= set(found["coefficients"][0])
    assert [one["name"] for one in found["runs"]] == ["water_boil_60kg"]


def test_fit_tells_how_well_runs_left_out_are_followed() -> None:
    steps = f"{demo_path('water_steps_60kg.csv')}:{demo_path('water_steps.toml')}"
    runs = ("--run", PAIR, "--run", steps)
    found = plain("fit", KETTLE, *runs, *QUICK, "--hold-out")
    assert [one["name"] for one in found["held_out"]] == ["water_boil_60kg", "water_steps_60kg"]
    logs = [
        read_run(demo_path(f"{log}.csv"), recipe=read_recipe(demo_path(f"{recipe}.toml")))
        for log, recipe in (
            ("water_boil_60kg", "water_boil"),
            ("water_steps_60kg", "water_steps"),
        )
    ]
    expected = fit(read_kettle(KETTLE), logs, vary=list(QUICK[1::2])).leave_one_out()
    assert [one["probe_rms"] for one in found["held_out"]] == pytest.approx(
        [one.probe_rms for one in expected.runs]
    )
    alone = run("fit", KETTLE, "--run", PAIR, *QUICK, "--hold-out")
    assert alone.exit_code == 1
    assert "the fit has 1 run; allowed: 2 or more" in alone.stderr


def test_common_recipe_is_that_of_logs_without_one() -> None:
    alone = plain("fit", KETTLE, "--run", LOG, "--recipe", WATER, *QUICK)
    assert alone == plain("fit", KETTLE, "--run", PAIR, *QUICK)


def test_fit_that_did_not_converge_ends_with_3(small_fit: Fit, monkeypatch) -> None:
    failed = dataclasses.replace(small_fit, success=False, message="too many evaluations")
    monkeypatch.setattr(cli, "fit_kettle", lambda *_, **__: failed)
    assert plain("fit", KETTLE, "--run", PAIR, code=3)["converged"] is False
    result = run("fit", KETTLE, "--run", PAIR)
    assert result.exit_code == 3
    assert "the fit did not converge: too many evaluations" in result.stderr


@pytest.mark.parametrize(
    ("text", "log", "recipe"),
    [
        ("monday.csv", "monday.csv", None),
        ("monday.csv:stew.toml", "monday.csv", "stew.toml"),
        (r"C:\logs\monday.csv", r"C:\logs\monday.csv", None),
        (r"C:\logs\monday.csv:stew.toml", r"C:\logs\monday.csv", "stew.toml"),
        (r"C:\logs\monday.csv:D:\stew.toml", r"C:\logs\monday.csv", r"D:\stew.toml"),
        ("10:30 monday.csv:stew.toml", "10:30 monday.csv", "stew.toml"),
    ],
)
def test_log_and_recipe_are_taken_apart(
    text: str, log: str, recipe: str | None, monkeypatch
) -> None:
    seen: list[tuple[object, object]] = []
    monkeypatch.setattr("kettlecast.cli_input.read_recipe", str)
    monkeypatch.setattr(
        "kettlecast.cli_input.read_run", lambda path, recipe, **_: seen.append((path, recipe))
    )
    read_runs([text], None, {})
    assert seen == [(log, recipe)]
