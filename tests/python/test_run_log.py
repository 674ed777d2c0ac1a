"""Logged runs: what is read from a log, and logs that cannot be read."""

import hashlib
import pickle
from pathlib import Path

import numpy as np
import pytest
from log_files import HEADER, log, rows

from kettlecast import _core
from kettlecast.demo import demo_path
from kettlecast.errors import FileFormatError, InvalidArgument, UnknownName
from kettlecast.event_log import EventKind
from kettlecast.recipe_file import read_recipe
from kettlecast.run_log import read_run


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
