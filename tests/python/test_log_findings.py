"""What is found wrong in logs that are wrong on purpose, and nothing in good ones."""

import re
from pathlib import Path

import pytest
from log_files import RECIPES, altered, events, log, rows, told

from kettlecast import _core
from kettlecast.demo import demo_path
from kettlecast.findings import Severity
from kettlecast.recipe_changes import with_more
from kettlecast.recipe_file import read_recipe
from kettlecast.run_log import read_run


@pytest.mark.parametrize("name", RECIPES)
def test_nothing_is_found_in_good_logs(name: str) -> None:
    run = read_run(demo_path(f"{name}.csv"), recipe=read_recipe(demo_path(RECIPES[name])))
    assert run.findings == ()


def test_an_addition_that_was_not_planned_is_found() -> None:
    stew = read_recipe(demo_path("stew.toml"))
    path = demo_path("stew_79kg_cold.csv")
    (only,) = read_run(path, recipe=stew).findings
    assert (only.severity, only.lines) == (Severity.warning, (10, 10))
    assert '"carrot" is not (or not so often) in recipe "lentil stew"' in only.seen
    more = with_more(
        stew, "carrot", "20 lb", "2 C", phase=3, piece="12 mm", shape="sphere", pour_time="30 s"
    )
    run = read_run(path, recipe=more)
    assert run.findings == ()
    assert run.pours[3][1].shape is _core.Shape.sphere


def test_rows_that_cannot_be_read_are_reported(tmp_path: Path) -> None:
    lines = rows()
    for index in (10, 11, 12):
        lines[index] = f"{2 * index},30,ERR,100,0,20"
    lines[20] = "40,30,,100,0,20"
    run = read_run(log(tmp_path, lines))
    assert run.time.size == 46
    assert told(run, "probe") == [
        'warning: lines 12 to 14: probe: "ERR", row left out; expected: a number',
        "warning: line 22: probe: empty cell, row left out; expected: a number",
    ]


def test_columns_that_are_absent_are_reported(tmp_path: Path) -> None:
    lines = [f"{2 * i},{20 + i},100" for i in range(5)]
    run = read_run(log(tmp_path, lines, "time_s,probe_C,floor_heat_pct"))
    assert run.floor_reading is None
    assert not run.agitator_speed.any()
    assert "no column, taken as not stirred" in told(run, "agitator")[0]
    assert "no column, taken as no jacket heat" in told(run, "jacket_heat")[0]


def test_gaps_and_clocks_that_stand_or_run_back(tmp_path: Path) -> None:
    lines = rows()
    lines[30:35] = []
    del lines[31:41]
    lines.insert(5, lines[4])
    lines[15], lines[16] = lines[16], lines[15]
    run = read_run(log(tmp_path, lines))
    found = told(run, "time")
    # rows 0 and 1 are lines 2 and 3; the doubled row 4 stands on lines 6 and 7
    assert "error: lines 6 to 7: time: the row is repeated; expected: time that rises" in found
    assert any(
        re.match(r"error: lines 17 to 18: time: time runs backward by 2 s", x) for x in found
    )
    gaps = [x for x in found if "gap of" in x]
    assert gaps == [
        "warning: lines 32 to 34: time: gap of 22 s; expected: a row every 2 s",
    ]


def test_a_stuck_probe(tmp_path: Path) -> None:
    def stuck(cells: list[str]) -> list[str]:
        return [*cells[:2], "60.00", *cells[3:]] if 900 <= float(cells[0]) < 1300 else cells

    run = read_run(altered(tmp_path, "water_boil_60kg", stuck))
    (found,) = told(run, "probe")
    assert found.startswith(
        "warning: lines 452 to 651: probe: reads 60 degC without change for 398"
    )
    assert "is the sensor stuck?" in found


@pytest.mark.parametrize(("heat", "floor_rise", "found"), [(50, 0.0, 1), (0, 0.1, 1), (0, 0.0, 0)])
def test_a_steady_reading_is_stuck_if_heat_or_floor_say_so(
    tmp_path: Path, heat: int, floor_rise: float, found: int
) -> None:
    lines = [f"{2 * i},{30 + floor_rise * i},20,{heat},0,20" for i in range(200)]
    assert len(told(read_run(log(tmp_path, lines)), "probe")) == found


def test_boiling_holds_a_reading_rightly(tmp_path: Path) -> None:
    def boiling(cells: list[str]) -> list[str]:
        return [*cells[:2], "99.80", *cells[3:]] if 900 <= float(cells[0]) < 1300 else cells

    run = read_run(altered(tmp_path, "water_boil_60kg", boiling))
    assert told(run, "probe") == []


def test_values_out_of_range(tmp_path: Path) -> None:
    lines = rows()
    lines[7] = "14,33,850,100,0,20"
    lines[8] = "16,33,20,140,0,20"
    run = read_run(log(tmp_path, lines))
    assert told(run, "probe") == [
        "error: line 9: probe: reads 850 degC; expected: -40 to 250 degC",
    ]
    assert told(run, "floor_heat") == [
        "error: line 10: floor_heat: reads 140 %; expected: 0 to 100 %",
    ]


def test_shares_from_0_to_1_declared_as_per_cent(tmp_path: Path) -> None:
    lines = [line.replace(",100,", ",1,") for line in rows()]
    run = read_run(log(tmp_path, lines))
    (found,) = told(run, "floor_heat")
    assert "never above 1 %" in found
    right = read_run(log(tmp_path, lines), units={"floor_heat": "1"})
    assert right.floor_heat.max() == 1.0
    assert told(right, "floor_heat") == []


def fahrenheit(cells: list[str]) -> list[str]:
    return [*cells[:2], f"{float(cells[2]) * 1.8 + 32:.1f}", *cells[3:]]


@pytest.mark.parametrize("name", ["water_boil_60kg", "stew_70kg", "water_steps_60kg"])
def test_fahrenheit_declared_as_celsius(tmp_path: Path, name: str) -> None:
    path = altered(tmp_path, name, fahrenheit)
    recipe = read_recipe(demo_path(RECIPES[name]))
    (suspect,) = [
        item for item in read_run(path, recipe=recipe).findings if "degF" in item.expected
    ]
    assert (suspect.signal, suspect.severity) == ("probe", Severity.error)
    assert 'say units={"probe": "degF"}' in suspect.expected
    right = read_run(path, recipe=recipe, units={"probe": "degF"})
    assert right.findings == ()


def test_fahrenheit_is_suspected_without_a_recipe(tmp_path: Path) -> None:
    run = read_run(altered(tmp_path, "water_boil_60kg", fahrenheit))
    (found,) = told(run, "probe")
    assert found.startswith("error: ")
    assert "with a product of mostly water" in found


def test_without_events_a_high_reading_is_only_noted(tmp_path: Path) -> None:
    path = altered(tmp_path, "water_boil_60kg", fahrenheit)
    (tmp_path / "water_boil_60kg.events.csv").unlink()
    run = read_run(path)
    (found,) = told(run, "probe")
    assert found.startswith("note: ")
    (missing,) = told(run, "events")
    assert "water_boil_60kg.events.csv beside the log, or events=" in missing


def test_hot_oil_is_no_suspicion(tmp_path: Path) -> None:
    events(tmp_path, "0,phase start,1", "1,add,oil 2 kg at 20 C", "998,end,")
    lines = [f"{2 * i},{150 + i % 3},{140 + i % 2},50,0,20" for i in range(500)]
    assert told(read_run(log(tmp_path, lines)), "probe") == []


def test_hot_oil_before_the_water_is_no_suspicion(tmp_path: Path) -> None:
    added = ("1,add,oil 2 kg at 20 C", "600,add,water 40 kg at 20 C")
    events(tmp_path, "0,phase start,1", *added, "998,end,")
    probe = [140 + i % 2 if i < 300 else 60 + i % 2 for i in range(500)]
    lines = [f"{2 * i},{150 + i % 3},{value},50,0,20" for i, value in enumerate(probe)]
    assert told(read_run(log(tmp_path, lines)), "probe") == []


# Sugar boils down to syrup: soft ball is at 113 to 116 degC, hard crack at 149 to 154 degC (McGee,
# On Food and Cooking, 2004).
@pytest.mark.parametrize(("sugar", "suspected"), [("6 kg", False), ("1 kg", True)])
def test_hot_syrup_is_no_suspicion(tmp_path: Path, sugar: str, suspected: bool) -> None:
    pours = ["1,add,water 18 kg at 20 C", f"2,add,sugar {sugar} at 20 C"]
    events(tmp_path, "0,phase start,1", *pours, "998,end,")
    lines = [f"{2 * i},160,{min(20 + i, 150)},100,0,20" for i in range(500)]
    found = [one for one in told(read_run(log(tmp_path, lines)), "probe") if "above 115" in one]
    assert bool(found) == suspected


# Steam heats while the probe does not move: as suspicious as with a heated floor.
def test_a_stuck_probe_is_found_while_steam_is_on(tmp_path: Path) -> None:
    header = "time_s,probe_C,jacket_heat_pct"
    lines = [f"{2 * i},40.0,100" for i in range(300)]
    (found,) = told(read_run(log(tmp_path, lines, header)), "probe")
    assert "without change for 598 s" in found
