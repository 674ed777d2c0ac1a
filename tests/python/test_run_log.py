"""Logged runs: what is read, and what is found wrong in logs that are wrong on purpose."""

import hashlib
import pickle
import re
from collections.abc import Callable
from pathlib import Path

import numpy as np
import pytest
from kettlecast import _core
from kettlecast.demo import demo_path
from kettlecast.errors import FileFormatError, InvalidArgument, UnknownName
from kettlecast.event_log import EventKind
from kettlecast.findings import Severity
from kettlecast.recipe_changes import with_more
from kettlecast.recipe_file import read_recipe
from kettlecast.run_log import Run, read_run

HEADER = "time_s,floor_C,probe_C,floor_heat_pct,jacket_heat_pct,agitator_rpm"
RECIPES = {
    "stew_70kg": "stew.toml",
    "stew_70kg_again": "stew.toml",
    "water_boil_60kg": "water_boil.toml",
    "water_steps_60kg": "water_steps.toml",
}


def rows(count: int = 50) -> list[str]:
    """A made log: one row each 2 s, everything in range and moving."""
    return [f"{2 * i},{30 + i / 2},{20 + i / 10},100,0,20" for i in range(count)]


def log(folder: Path, lines: list[str], header: str = HEADER) -> Path:
    path = folder / "run.csv"
    path.write_text("\n".join([header, *lines]) + "\n", encoding="utf-8")
    return path


def events(folder: Path, *lines: str) -> Path:
    path = folder / "run.events.csv"
    path.write_text("\n".join(["time_s,event,detail", *lines]) + "\n", encoding="utf-8")
    return path


def told(run: Run, signal: str) -> list[str]:
    return [str(item) for item in run.findings if item.signal == signal]


def altered(folder: Path, name: str, change: Callable[[list[str]], list[str]]) -> Path:
    """A demo log with its events, each row changed; line 1 is the header."""
    lines = demo_path(f"{name}.csv").read_text(encoding="utf-8").splitlines()
    beside = demo_path(f"{name}.events.csv").read_text(encoding="utf-8")
    (folder / f"{name}.events.csv").write_text(beside, encoding="utf-8")
    made = [",".join(change(line.split(","))) for line in lines[1:]]
    path = folder / f"{name}.csv"
    path.write_text("\n".join([lines[0], *made]) + "\n", encoding="utf-8")
    return path


def test_a_demo_run_in_si() -> None:
    path = demo_path("stew_70kg.csv")
    run = read_run(path, recipe=read_recipe(demo_path("stew.toml")))
    first = path.read_text(encoding="utf-8").splitlines()[1]
    assert first == "0.0,23.50,23.00,100,0,20"
    assert run.floor_reading is not None
    assert (run.name, run.time[0], run.time[-1]) == ("stew_70kg", 0.0, 3868.0)
    assert run.floor_reading[0] == pytest.approx(296.65, abs=1e-9)
    assert run.probe_reading[0] == pytest.approx(296.15, abs=1e-9)
    assert (run.floor_heat[0], run.jacket_heat[0]) == (1.0, 0.0)
    assert run.agitator_speed[0] == pytest.approx(20 / 60, rel=1e-12)
    assert run.phases == (0.0, 350.0, 890.04, 1870.04, 3370.08)
    assert run.reached == (290.0, 422.0, 1810.0, 1897.0, 3750.0)
    assert run.sha256 == hashlib.sha256(path.read_bytes()).hexdigest()
    assert run.events[-1].kind is EventKind.end


def test_pours_merge_what_happened_with_what_was_planned() -> None:
    run = read_run(demo_path("stew_70kg.csv"), recipe=read_recipe(demo_path("stew.toml")))
    times = [time for time, _ in run.pours]
    assert times == [7.28, 366.44, 900.72, 972.16, 3396.84]
    onion = run.pours[1][1]
    assert (onion.name, onion.mass, onion.shape) == ("onion", 8.0, _core.Shape.slab)
    assert onion.piece_size == pytest.approx(0.008, rel=1e-12)
    assert (onion.delay, onion.pour_time) == (pytest.approx(16.44, abs=1e-9), 35.0)
    assert run.pours[4][1].temperature == pytest.approx(255.15, abs=1e-9)
    assert run.pours[4][1].food.name == "spinach"


def test_the_temperature_of_the_events_wins_over_the_recipe() -> None:
    run = read_run(demo_path("stew_70kg_again.csv"), recipe=read_recipe(demo_path("stew.toml")))
    assert run.pours[2][1].temperature == pytest.approx(273.15 + 18.0, abs=1e-9)


def test_covers_and_jacket_limits_follow_the_phases() -> None:
    run = read_run(demo_path("stew_70kg.csv"), recipe=read_recipe(demo_path("stew.toml")))
    lids = [time for time, cover in run.covers if cover is _core.Cover.lid]
    assert lids == [1870.04]
    limits = [limit for _, limit in run.jacket_limits]
    assert [limit is not None for limit in limits] == [False, False, True, False, True]
    assert limits[2] == pytest.approx(371.15, abs=1e-9)


def test_a_lid_by_hand(tmp_path: Path) -> None:
    events(tmp_path, "0,phase start,1", "10,lid on,", "30,lid,off", "98,end,")
    run = read_run(log(tmp_path, rows()))
    cover = _core.Cover
    assert run.covers == ((0.0, cover.open), (10.0, cover.lid), (30.0, cover.open))


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


def test_arrays_are_read_only_and_the_run_pickles() -> None:
    run = read_run(demo_path("water_boil_60kg.csv"))
    with pytest.raises(ValueError, match="read-only"):
        run.probe_reading[0] = 0.0
    copy = pickle.loads(pickle.dumps(run))
    np.testing.assert_array_equal(copy.probe_reading, run.probe_reading)
    assert copy.pours == run.pours


def test_columns_of_other_names_are_mapped(tmp_path: Path) -> None:
    header = "clock_min,plate,T7_F,heat,jacket,turns"
    lines = ["0,30,68,50,0,20", "0.1,31,86,50,0,20"]
    names = ("time", "floor", "probe", "floor_heat", "jacket_heat", "agitator")
    mapping = dict(zip(names, header.split(","), strict=True))
    given = {"floor": "degC", "floor_heat": "%", "jacket_heat": "%", "agitator": "rpm"}
    run = read_run(log(tmp_path, lines, header), columns=mapping, units=given)
    np.testing.assert_allclose(run.time, [0.0, 6.0], atol=1e-12)
    np.testing.assert_allclose(run.probe_reading, [293.15, 303.15], atol=1e-9)
    np.testing.assert_allclose(run.floor_heat, [0.5, 0.5], rtol=1e-12)


def test_units_win_over_the_name_of_the_column(tmp_path: Path) -> None:
    run = read_run(log(tmp_path, rows()), units={"probe": "degF"})
    assert run.probe_reading[0] == pytest.approx(273.15 + (20 - 32) / 1.8, abs=1e-9)


def test_a_missing_column_lists_what_there_is(tmp_path: Path) -> None:
    path = log(tmp_path, ["0,1,2"], "time_s,T7_C,floor_heat_pct")
    with pytest.raises(FileFormatError) as caught:
        read_run(path)
    assert str(caught.value) == (
        f'{path}: no column for "probe" (such as probe_C or probe_F or probe_K); '
        "columns there are: time_s, T7_C, floor_heat_pct; "
        'say which with columns={"probe": "name of the column"}'
    )
    assert caught.value.key == "probe"


@pytest.mark.parametrize(
    ("header", "options", "message"),
    [
        (
            "time_s,T7,floor_heat_pct",
            {"columns": {"probe": "T7"}},
            'the name of column "T7" does not tell the unit of "probe"; say it with '
            'units={"probe": "degF"}',
        ),
        (
            "time_s,probe_C,floor_heat_pct",
            {"columns": {"probe": "T8"}},
            'no column "T8" for "probe"; columns there are: time_s, probe_C, floor_heat_pct',
        ),
        (
            "time_s,probe_C,probe_F,floor_heat_pct",
            {},
            'several columns for "probe": probe_C, probe_F; choose with columns={"probe": ...}',
        ),
    ],
)
def test_columns_that_cannot_be_told(
    tmp_path: Path, header: str, options: dict[str, dict[str, str]], message: str
) -> None:
    with pytest.raises(FileFormatError) as caught:
        read_run(log(tmp_path, ["0,1,2,3"], header), **options)  # type: ignore[arg-type]
    assert message in str(caught.value)


def test_signals_and_units_that_do_not_exist(tmp_path: Path) -> None:
    path = log(tmp_path, rows())
    with pytest.raises(UnknownName, match=r'signal "prob" is not known \(did you mean "probe"\?'):
        read_run(path, columns={"prob": "probe_C"})
    with pytest.raises(InvalidArgument, match='units: "kg" is not a unit of "probe"; allowed: deg'):
        read_run(path, units={"probe": "kg"})


def test_an_empty_log(tmp_path: Path) -> None:
    for text in ("", HEADER + "\n", HEADER + "\n\n\n"):
        (tmp_path / "run.csv").write_text(text, encoding="utf-8")
        with pytest.raises(FileFormatError, match=r"run\.csv: empty: no row below the header"):
            read_run(tmp_path / "run.csv")


def test_decimal_commas_are_refused_with_a_hint(tmp_path: Path) -> None:
    path = log(tmp_path, ["0;20,5;50", "2;20,7;50"], "time_s;probe_C;floor_heat_pct")
    with pytest.raises(FileFormatError, match="write decimal points, not commas") as caught:
        read_run(path)
    assert caught.value.line == 2


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
    assert "error: lines 6 to 7: time: time is repeated; expected: time that rises" in found
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


def test_a_pour_belongs_to_the_addition_of_its_own_phase(tmp_path: Path) -> None:
    stew = read_recipe(demo_path("stew.toml"))
    twice = with_more(stew, "onion", "1 kg", "5 C", phase=3, piece="3 mm", shape="slab")
    added = ("20,phase start,2", "30,phase start,3", "40,add,onion 1 kg at 5 C")
    events(tmp_path, "0,phase start,1", *added)
    ((_, onion),) = read_run(log(tmp_path, rows()), recipe=twice).pours
    assert onion.piece_size == pytest.approx(0.003, rel=1e-12)


def test_a_set_point_reached_before_the_first_phase_counts_for_none(tmp_path: Path) -> None:
    events(tmp_path, "0,set point reached,", "2,phase start,1", "98,end,")
    assert read_run(log(tmp_path, rows())).reached == (None,)


@pytest.mark.parametrize(
    ("line", "message"),
    [
        (
            "4,phase strt,2",
            'event "phase strt" is not known (did you mean "phase start"?); allowed',
        ),
        (
            "4,add,onion 8 at 5 C",
            'add "onion 8 at 5 C": write food, mass and temperature as "onion',
        ),
        ("4,add,onion 8 kgs at 5 C", 'add: "8 kgs" is not a mass: unit "kgs" unknown'),
        ("4,add,onion 8 kg at 5", 'add: "5" is not a temperature: the unit is missing'),
        ("4,add,onin 8 kg at 5 C", 'add: food "onin" is not known; nearest: onion'),
        ("4,phase start,3", 'phase start "3": the next phase is 2'),
        ("x,end,", '"x s" is not a time: it must start with a number'),
        ("-1,end,", "time -1 lies before the line above"),
    ],
)
def test_events_that_cannot_be_understood(tmp_path: Path, line: str, message: str) -> None:
    path = events(tmp_path, "0,phase start,1", line)
    with pytest.raises(FileFormatError) as caught:
        read_run(log(tmp_path, rows()))
    assert f"{path}: line 3: " in str(caught.value)
    assert message in str(caught.value)
    assert caught.value.line == 3


def test_events_against_log_and_recipe(tmp_path: Path) -> None:
    events(tmp_path, "0,phase start,1", "1,note,tasted, 5 stars", "900,end,")
    run = read_run(log(tmp_path, rows()), recipe=read_recipe(demo_path("water_steps.toml")))
    assert told(run, "events") == [
        "warning: line 4: events: end at 900 s lies outside of the log; "
        "expected: a time from 0 to 98 s, by the clock of the log",
        'warning: lines 2 to 4: events: 1 phases, recipe "water in steps" has 3; '
        "expected: the recipe that was cooked",
    ]


def test_an_events_file_that_is_named_must_be_there(tmp_path: Path) -> None:
    with pytest.raises(FileFormatError, match=r"absent\.csv: No such file or directory"):
        read_run(log(tmp_path, rows()), events=tmp_path / "absent.csv")
