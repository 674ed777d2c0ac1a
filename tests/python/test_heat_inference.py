"""Heat that was not logged, inferred from readings, recipe and controller."""

import csv
import shutil
from pathlib import Path

import numpy as np
import pytest
from log_files import RECIPES, events, log, told

from kettlecast import _core
from kettlecast.demo import demo_path
from kettlecast.errors import FileFormatError, InvalidArgument
from kettlecast.findings import Severity
from kettlecast.fitting import fit
from kettlecast.kettle_file import read_kettle
from kettlecast.recipe_file import read_recipe
from kettlecast.run_log import Run, read_run

KETTLE = read_kettle(demo_path("kettle.toml"))
LOGS = {**RECIPES, "stew_79kg_cold": "stew.toml"}


def without(folder: Path, name: str, *words: str) -> Path:
    """A demo log with its events, but without the columns that have one of the words."""
    shutil.copy(demo_path(f"{name}.events.csv"), folder)
    with demo_path(f"{name}.csv").open(encoding="utf-8", newline="") as file:
        table = list(csv.reader(file))
    kept = [at for at, column in enumerate(table[0]) if not any(word in column for word in words)]
    path = folder / f"{name}.csv"
    path.write_text("".join(",".join(row[at] for at in kept) + "\n" for row in table))
    return path


def pair(folder: Path, name: str) -> tuple[Run, Run]:
    """A demo run with logged heat and with inferred heat."""
    recipe = read_recipe(demo_path(LOGS[name]))
    logged = read_run(demo_path(f"{name}.csv"), recipe=recipe)
    path = without(folder, name, "heat")
    return logged, read_run(path, recipe=recipe, heat="inferred", kettle=KETTLE)


@pytest.mark.parametrize("name", LOGS)
def test_inferred_heat_agrees_with_the_log(name: str, tmp_path: Path) -> None:
    logged, inferred = pair(tmp_path, name)
    ends = [*logged.phases[1:], logged.events[-1].time]
    for start, end in zip(logged.phases, ends, strict=True):
        rows = (logged.time >= start) & (logged.time < end)
        on = [np.mean(one.floor_heat[rows] > 0.0) for one in (logged, inferred)]
        # a hold of 10 min has two or three pulses of some 20 s; a start seen late costs one of 16 s
        assert on[1] == pytest.approx(on[0], abs=0.03)
    assert inferred.floor_heat.sum() == pytest.approx(logged.floor_heat.sum(), rel=0.02)
    # the jacket of the log is also off while it is at its limit, which the model knows itself
    assert inferred.jacket_heat.sum() == pytest.approx(logged.jacket_heat.sum(), rel=0.03)
    assert set(np.unique(inferred.floor_heat)) == set(np.unique(logged.floor_heat))


def test_a_run_says_where_its_heat_comes_from(tmp_path: Path) -> None:
    logged, inferred = pair(tmp_path, "water_boil_60kg")
    assert (logged.heat_source, inferred.heat_source) == ("logged", "inferred")
    (note,) = [one for one in inferred.findings if one.severity is not Severity.warning]
    assert (note.severity, note.signal) == (Severity.note, "floor_heat")
    assert note.seen.startswith(
        "not logged, inferred from readings, recipe and controller: on for 89%"
    )


def test_fits_with_and_without_logged_heat_agree(tmp_path: Path) -> None:
    logged, inferred = (fit(KETTLE, run) for run in pair(tmp_path, "water_boil_60kg"))
    for name, one in logged.params.items():
        assert abs(inferred.params[name].value - one.value) < one.stderr
    assert "heat inferred" in inferred.fit_report()
    assert "heat inferred" not in logged.fit_report()
    assert inferred.runs[0].probe_rms == pytest.approx(logged.runs[0].probe_rms, abs=0.02)


# --- switching by hand: 60 degC, dead band 2 K, one row each 20 s so that no median is taken


def switched(
    folder: Path,
    probe: list[float],
    *,
    floor: list[float] | None = None,
    phase: dict[str, object] | None = None,
    controller: dict[str, object] | None = None,
) -> list[float]:
    """Inferred floor heat of one phase at 60 degC that ends with the last row."""
    floors = floor or [70.0] * len(probe)
    lines = [f"{20 * i},{floors[i]},{value},20" for i, value in enumerate(probe)]
    path = log(folder, lines, "time_s,floor_C,probe_C,agitator_rpm")
    events(folder, "0,phase start,1", f"{20 * len(probe)},end,")
    one = _core.Phase(
        name="hold",
        regulated=_core.Regulated.probe,
        set_point=333.15,
        ends=[_core.EndRule(kind=_core.EndKind.elapsed, value=60.0)],
    ).replace(**(phase or {}))  # type: ignore[arg-type]
    kettle = KETTLE.replace(controller=KETTLE.controller.replace(**(controller or {})))  # type: ignore[arg-type]
    recipe = _core.Recipe(name="hold", phases=[one])
    run = read_run(path, recipe=recipe, heat="inferred", kettle=kettle)
    return list(run.floor_heat)


def test_on_below_the_band_and_off_above_the_set_point(tmp_path: Path) -> None:
    probe = [57.0, 59.0, 60.1, 59.0, 58.5, 57.9, 59.0, 60.1]
    assert switched(tmp_path, probe) == [1, 1, 0, 0, 0, 1, 1, 0]


def test_a_first_reading_inside_the_band_is_off(tmp_path: Path) -> None:
    assert switched(tmp_path, [59.0, 59.0, 57.9, 59.0]) == [0, 0, 1, 1]


def test_the_heat_limit_is_the_level(tmp_path: Path) -> None:
    assert switched(tmp_path, [57.0, 59.0, 61.0], phase={"heat_limit": 0.6}) == [0.6, 0.6, 0.0]


def test_ceilings_switch_the_heat_off(tmp_path: Path) -> None:
    floor = [90.0, 100.5, 99.0, 97.5, 97.0]
    limited = switched(tmp_path, [20.0] * 5, floor=floor, phase={"floor_limit": 373.15})
    assert limited == [1, 0, 0, 1, 1]
    apart = switched(tmp_path, [20.0] * 5, floor=floor, phase={"difference_limit": 80.0})
    assert apart == [1, 0, 0, 1, 1]


def test_the_heat_stays_on_for_its_shortest_time(tmp_path: Path) -> None:
    probe = [57.0, 61.0, 61.0, 61.0, 61.0]
    held = switched(tmp_path, probe, controller={"minimum_on_time": 50.0})
    assert held == [1, 1, 1, 0, 0]


def test_a_phase_without_regulation_is_not_heated(tmp_path: Path) -> None:
    assert switched(tmp_path, [20.0] * 3, phase={"regulated": _core.Regulated.none}) == [0, 0, 0]


def test_heat_is_off_after_the_end(tmp_path: Path) -> None:
    path = log(tmp_path, [f"{20 * i},50" for i in range(6)], "time_s,probe_C")
    events(tmp_path, "20,phase start,1", "80,end,")
    water = read_recipe(demo_path("water_boil.toml"))
    run = read_run(path, recipe=water, heat="inferred", kettle=KETTLE)
    assert list(run.floor_heat) == [0, 1, 1, 1, 0, 0]


def test_a_steam_kettle_is_heated_by_its_jacket(tmp_path: Path) -> None:
    probe = [50, 83, 81.5, 80.9, 70.0]  # set point 82 degC, dead band 1 K
    lines = [f"{20 * i},{value + 10},{value},25" for i, value in enumerate(probe)]
    path = log(tmp_path, lines, "time_s,floor_C,probe_C,agitator_rpm")
    events(tmp_path, "0,phase start,1", "80,phase start,2", "100,end,")
    run = read_run(
        path,
        recipe=read_recipe(demo_path("custard.toml")),
        heat="inferred",
        kettle=read_kettle(demo_path("steam_kettle.toml")),
    )
    # at most 50 % in the first phase; the second one is cooled
    assert list(run.jacket_heat) == [0.5, 0.0, 0.0, 0.5, 0.0]
    assert not run.floor_heat.any()


# --- refusals


def test_a_log_without_heat_says_both_ways_out(tmp_path: Path) -> None:
    path = without(tmp_path, "water_boil_60kg", "heat")
    with pytest.raises(FileFormatError) as caught:
        read_run(path)
    for part in (
        'columns={"floor_heat": ',
        'heat="inferred" with kettle= and recipe=',
        'heat="none"',
    ):
        assert part in str(caught.value)


def test_heat_is_off_if_it_is_said_so(tmp_path: Path) -> None:
    run = read_run(without(tmp_path, "water_boil_60kg", "heat"), heat="none")
    assert run.heat_source == "none"
    assert not run.floor_heat.any() and not run.jacket_heat.any()
    assert 'taken as off throughout, as heat="none" says' in told(run, "floor_heat")[0]


@pytest.mark.parametrize("heat", ["inferred", "none"])
def test_logged_heat_is_never_replaced(heat: str) -> None:
    with pytest.raises(
        InvalidArgument, match="this one has floor_heat and jacket_heat; leave heat"
    ):
        read_run(demo_path("water_boil_60kg.csv"), heat=heat)  # type: ignore[arg-type]


def test_what_inferring_needs(tmp_path: Path) -> None:
    path = without(tmp_path, "stew_70kg", "heat")
    stew, water = (read_recipe(demo_path(f"{name}.toml")) for name in ("stew", "water_boil"))
    pi = KETTLE.replace(
        controller=KETTLE.controller.replace(kind=_core.ControllerKind.proportional_integral)
    )
    for how, message in (
        (
            {"heat": "guessed"},
            '"guessed" is not allowed; allowed: "logged", "inferred", "closed_loop", "none"',
        ),
        ({"heat": "inferred"}, "needs the kettle and the recipe; not given: kettle= and recipe="),
        ({"heat": "inferred", "recipe": stew}, "not given: kettle="),
        (
            {"heat": "inferred", "recipe": stew, "kettle": pi},
            'needs a kettle with an on_off controller; "commissary A" has proportional_integral',
        ),
        (
            {"heat": "inferred", "recipe": water, "kettle": KETTLE},
            'it has 5, recipe "water to 90 degC" has 1',
        ),
    ):
        with pytest.raises(InvalidArgument) as caught:
            read_run(path, **how)  # type: ignore[arg-type]
        assert message in str(caught.value)


def test_a_phase_that_a_missing_reading_switches_is_refused(tmp_path: Path) -> None:
    path = without(tmp_path, "stew_70kg", "heat", "floor")
    stew = read_recipe(demo_path("stew.toml"))
    with pytest.raises(InvalidArgument) as caught:
        read_run(path, recipe=stew, heat="inferred", kettle=KETTLE)
    assert 'phase 1 "heat the oil" depends on the floor, which is not in the log' in str(
        caught.value
    )
