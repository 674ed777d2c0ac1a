"""Sensors, drives and intervals that are wrong on purpose, and the same checks on good logs."""

import random
from collections.abc import Callable
from pathlib import Path

import pytest
from log_files import RECIPES, altered, log, rows, told

from kettlecast.demo import demo_path
from kettlecast.findings import Severity
from kettlecast.recipe_file import read_recipe
from kettlecast.run_log import Run, read_run

LOGS = {**RECIPES, "stew_79kg_cold": "stew.toml"}


def run_of(path: Path, **how: object) -> Run:
    return read_run(path, recipe=read_recipe(demo_path(LOGS[path.stem])), **how)  # type: ignore[arg-type]


def wrong(run: Run) -> list[str]:
    """What is found, but for the addition that the recipe of one log does not have."""
    return [str(one) for one in run.findings if '"carrot" is not' not in one.seen]


def readings(change: Callable[[float], float]) -> Callable[[list[str]], list[str]]:
    """A change of both readings of a row."""
    return lambda row: [row[0], *(f"{change(float(cell)):.2f}" for cell in row[1:3]), *row[3:]]


# --- good logs, however they are sampled and rounded


@pytest.mark.parametrize("name", LOGS)
def test_rounded_readings_are_not_wrong(name: str, tmp_path: Path) -> None:
    assert wrong(run_of(altered(tmp_path, name, readings(round)))) == []


@pytest.mark.parametrize("name", LOGS)
def test_noisy_readings_are_not_wrong(name: str, tmp_path: Path) -> None:
    noise = random.Random(7)
    path = altered(tmp_path, name, readings(lambda value: value + noise.gauss(0.0, 0.7)))
    assert wrong(run_of(path)) == []


@pytest.mark.parametrize("every", [5, 30])
@pytest.mark.parametrize("name", LOGS)
def test_slow_logs_are_not_wrong(name: str, every: int, tmp_path: Path) -> None:
    path = altered(tmp_path, name, lambda row: row)
    lines = path.read_text(encoding="utf-8").splitlines()
    path.write_text("\n".join([lines[0], *lines[1::every]]) + "\n", encoding="utf-8")
    assert wrong(run_of(path)) == []


# --- sensors


@pytest.mark.parametrize("name", LOGS)
def test_exchanged_sensors(name: str, tmp_path: Path) -> None:
    path = altered(tmp_path, name, lambda row: [row[0], row[2], row[1], *row[3:]])
    (found,) = told(run_of(path), "floor")
    assert found.startswith("error: lines ")
    assert "below the probe for" in found and "with the floor heat on" in found
    right = run_of(path, columns={"floor": "probe_C", "probe": "floor_C"})
    assert wrong(right) == []


def test_a_product_hotter_than_a_floor_that_is_off_is_right(tmp_path: Path) -> None:
    lines = [f"{2 * i},{40 + i % 3},{80 - i % 2},0,100,20" for i in range(400)]
    assert told(read_run(log(tmp_path, lines)), "floor") == []


def test_a_spike_is_told_with_its_line(tmp_path: Path) -> None:
    lines = rows()
    lines[20] = "40,40,61.5,100,0,20"
    assert told(read_run(log(tmp_path, lines)), "probe") == [
        "warning: line 22: probe: jumps to 61.5 degC from 21.9 degC and returns; "
        "expected: a reading between those beside it; a loose contact?"
    ]


def test_many_spikes_are_one_finding(tmp_path: Path) -> None:
    lines = rows(200)
    for at in range(20, 180, 20):
        lines[at] = f"{2 * at},{30 + at / 2},0.5,100,0,20"
    (found,) = told(read_run(log(tmp_path, lines)), "probe")
    assert found.startswith(
        "warning: lines 22 to 162: probe: 8 single readings jump by up to 35.4 K"
    )


@pytest.mark.parametrize("after", [60.0, 4.0])
def test_a_step_that_stays_is_no_spike(tmp_path: Path, after: float) -> None:
    lines = [
        f"{2 * i},{90 + i % 3},{(20 if i < 60 else after) + i % 2},100,0,20" for i in range(120)
    ]
    assert told(read_run(log(tmp_path, lines)), "probe") == []


@pytest.mark.parametrize(
    ("name", "limit"), [("stew_70kg", 60.0), ("water_boil_60kg", 60.0), ("water_steps_60kg", 40.0)]
)
def test_a_probe_at_its_limit(name: str, limit: float, tmp_path: Path) -> None:
    def clip(row: list[str]) -> list[str]:
        return [*row[:2], f"{min(float(row[2]), limit):.2f}", *row[3:]]

    (found,) = told(run_of(altered(tmp_path, name, clip)), "probe")
    assert found.startswith("warning: lines ")
    assert f"probe: stays at its highest value, {limit:g} degC, for " in found


@pytest.mark.parametrize("name", ["stew_70kg", "stew_70kg_again", "stew_79kg_cold"])
def test_a_floor_at_its_limit(name: str, tmp_path: Path) -> None:
    def clip(row: list[str]) -> list[str]:
        return [row[0], f"{min(float(row[1]), 115.0):.2f}", *row[2:]]

    (found,) = told(run_of(altered(tmp_path, name, clip)), "floor")
    assert "floor: stays at its highest value, 115 degC, for " in found


def test_a_sensor_at_its_lower_limit(tmp_path: Path) -> None:
    # cools by 0.1 K/s towards -10 degC, shown no lower than 5 degC
    lines = [f"{2 * i},20,{max(5.0, 40 - 0.2 * i):.1f},0,0,20" for i in range(250)]
    (found,) = told(read_run(log(tmp_path, lines)), "probe")
    assert found.startswith("warning: lines 177 to 251: probe: stays at its lowest value, 5 degC")


def test_a_reading_held_by_its_controller_is_not_at_its_limit(tmp_path: Path) -> None:
    # rises by 0.1 K/s to a set point of 60 degC and is held there with the heat off
    lines = [
        f"{2 * i},{30 + i % 3},{min(60.0, 20 + 0.2 * i):.1f},{100 if i < 200 else 0},0,20"
        for i in range(300)
    ]
    assert told(read_run(log(tmp_path, lines)), "probe") == []


# --- drives and shares


def test_turns_per_second_declared_as_rpm(tmp_path: Path) -> None:
    path = altered(tmp_path, "stew_70kg", lambda row: [*row[:5], f"{float(row[5]) / 60:.4f}"])
    (found,) = told(run_of(path), "agitator")
    assert found.startswith("warning: lines 2 to ")
    assert (
        'never above 0.4167 rpm; expected: 2 to 300 rpm; if the log is in 1/s, say units={"'
        in found
    )
    right = run_of(path, units={"agitator": "1/s"})
    assert right.agitator_speed.max() == pytest.approx(25 / 60, rel=1e-4)
    assert wrong(right) == []


def test_rpm_declared_as_turns_per_second(tmp_path: Path) -> None:
    path = altered(tmp_path, "stew_70kg", lambda row: row)
    found = told(run_of(path, units={"agitator": "1/s"}), "agitator")
    assert found == [
        "warning: lines 2 to 1936: agitator: never above 25 1/s; expected: 2 to 300 rpm; "
        'if the log is in rpm, say units={"agitator": "rpm"}'
    ]


def test_an_agitator_that_rests_is_right(tmp_path: Path) -> None:
    lines = [line.rpartition(",")[0] + ",0" for line in rows()]
    assert told(read_run(log(tmp_path, lines)), "agitator") == []


def test_shares_beyond_1_are_told_without_per_cent(tmp_path: Path) -> None:
    (found,) = told(read_run(log(tmp_path, rows()), units={"floor_heat": "1"}), "floor_heat")
    assert found == "error: lines 2 to 51: floor_heat: reads 100; expected: 0 to 1"


# --- times


def test_a_change_of_the_interval_is_noted(tmp_path: Path) -> None:
    path = altered(tmp_path, "water_boil_60kg", lambda row: row)
    lines = path.read_text(encoding="utf-8").splitlines()
    path.write_text("\n".join([*lines[:401], *lines[401::5]]) + "\n", encoding="utf-8")
    (found,) = run_of(path).findings
    assert (found.severity, found.signal) == (Severity.note, "time")
    assert found.seen == "rows every 10 s, before every 2 s"
    assert abs(found.lines[0] - 401) <= 6  # told to half of the window in which medians are taken


def test_an_interval_that_jitters_has_not_changed(tmp_path: Path) -> None:
    jitter = random.Random(3)
    lines = rows(300)
    made = [
        f"{2 * i + jitter.uniform(-0.4, 0.4):.2f},{line.partition(',')[2]}"
        for i, line in enumerate(lines)
    ]
    assert told(read_run(log(tmp_path, made)), "time") == []


def test_a_log_with_many_intervals_is_told_in_one_sentence(tmp_path: Path) -> None:
    time, lines = 0, []
    for i in range(400):
        time += 2 if (i // 40) % 2 else 10
        lines.append(f"{time},{30 + i / 10},{20 + i / 20},100,0,20")
    (found,) = told(read_run(log(tmp_path, lines)), "time")
    assert found.startswith("note: lines 2 to 401: time: rows every 2 to 10 s, in 10 stretches")


def test_a_repeated_time_with_other_readings(tmp_path: Path) -> None:
    lines = rows()
    lines[10] = lines[9].split(",")[0] + ",35.1,21.1,100,0,20"
    assert (
        "error: lines 11 to 12: time: time is repeated with other readings; expected: time that"
        in (told(read_run(log(tmp_path, lines)), "time")[0])
    )
