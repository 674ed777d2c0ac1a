"""Saved fits: what is read back is what was written, and damaged files are refused."""

import json
import os
import stat
from collections.abc import Callable
from pathlib import Path
from typing import Any

import numpy as np
import pytest

from kettlecast.demo import demo_path
from kettlecast.errors import FileFormatError
from kettlecast.fit_file import read_fit, write_text_safely
from kettlecast.fit_result import Fit
from kettlecast.fitting import fit
from kettlecast.forecasting import forecast
from kettlecast.kettle_file import read_kettle
from kettlecast.recipe_file import read_recipe
from kettlecast.run_log import read_run

WATER = read_recipe(demo_path("water_boil.toml"))


@pytest.fixture(scope="module")
def small_fit() -> Fit:
    run = read_run(demo_path("water_boil_60kg.csv"), recipe=WATER)
    kettle = read_kettle(demo_path("kettle.toml"))
    return fit(kettle, run, vary=["floor.efficiency", "probe.lag"], fixed={"floor.loss": 5.0})


@pytest.fixture
def saved(small_fit: Fit, tmp_path: Path) -> Path:
    small_fit.save(tmp_path / "fit.json")
    return tmp_path / "fit.json"


def test_read_back_is_what_was_written(small_fit: Fit, saved: Path) -> None:
    back = read_fit(saved)
    for name in ("kettle", "coefficients", "params", "fixed", "runs", "options", "message"):
        assert getattr(back, name) == getattr(small_fit, name), name
    for name in ("chisqr", "redchi", "ndata", "neffective", "nfev", "success"):
        assert getattr(back, name) == getattr(small_fit, name), name
    np.testing.assert_array_equal(back.covar, small_fit.covar)
    np.testing.assert_array_equal(back.scaled_covar, small_fit.scaled_covar)
    told = set(small_fit.fit_report().splitlines())
    learned = [line for line in back.fit_report().splitlines() if "learned" in line]
    assert len(learned) == 3 and told.issuperset(learned)


def test_forecast_of_a_saved_fit_is_that_of_the_fit(small_fit: Fit, saved: Path) -> None:
    one, other = (forecast(it, WATER, draws=5) for it in (small_fit, read_fit(saved)))
    assert one.to_json() == other.to_json()


def test_saving_leaves_no_other_files(saved: Path) -> None:
    assert [path.name for path in saved.parent.iterdir()] == ["fit.json"]


def test_interrupted_saving_keeps_the_old_file(saved: Path, monkeypatch) -> None:
    before = saved.read_text()

    def fails(*_: object) -> None:
        raise KeyboardInterrupt

    monkeypatch.setattr(os, "replace", fails)
    with pytest.raises(KeyboardInterrupt):
        write_text_safely(saved, "half")
    assert saved.read_text() == before
    assert [path.name for path in saved.parent.iterdir()] == ["fit.json"]


@pytest.mark.skipif(os.name == "nt", reason="permissions of files as on Unix")
def test_saved_fit_can_be_read_by_the_others_in_the_kitchen(small_fit: Fit, tmp_path) -> None:
    before = os.umask(0o022)
    try:
        small_fit.save(tmp_path / "fit.json")
    finally:
        os.umask(before)
    assert stat.S_IMODE((tmp_path / "fit.json").stat().st_mode) == 0o644


@pytest.mark.parametrize(
    ("text", "reason"),
    [
        ("", "not a JSON file"),
        ('{"format": "kettlecast-fit-2", "kettle"', "not a JSON file"),
        ("[]", "format must be 'kettlecast-fit-2', got None"),
        ("{}", "format must be 'kettlecast-fit-2', got None"),
        ('{"format": "kettlecast-fit-9"}', "got 'kettlecast-fit-9'"),
    ],
)
def test_file_that_is_no_fit_is_refused(text: str, reason: str, tmp_path: Path) -> None:
    path = tmp_path / "fit.json"
    path.write_text(text)
    with pytest.raises(FileFormatError, match=reason) as caught:
        read_fit(path)
    assert str(path) in str(caught.value)
    assert caught.value.file == str(path)


def test_bytes_that_are_no_text_are_refused(tmp_path: Path) -> None:
    path = tmp_path / "fit.json"
    path.write_bytes(b"\xff\xfe\x00{")
    with pytest.raises(FileFormatError, match="not a JSON file"):
        read_fit(path)


def test_absent_file_is_named(tmp_path: Path) -> None:
    with pytest.raises(FileFormatError, match=r"absent\.json"):
        read_fit(tmp_path / "absent.json")


PARTS = (
    "kettle",
    "coefficients",
    "params",
    "fixed",
    "covar",
    "scaled_covar",
    "runs",
    "per_run",
    "of_runs",
    "errors",
    "options",
    "chisqr",
    "redchi",
    "ndata",
    "neffective",
    "nfev",
    "success",
    "message",
    "version",
    "kept_draws",
)


@pytest.mark.parametrize("part", PARTS)
def test_missing_part_is_named(part: str, saved: Path) -> None:
    plain = json.loads(saved.read_text())
    del plain[part]
    saved.write_text(json.dumps(plain))
    with pytest.raises(FileFormatError, match=part):
        read_fit(saved)


def test_list_of_parts_is_complete(saved: Path) -> None:
    assert set(json.loads(saved.read_text())) == {"format", *PARTS}


def _in(*keys: str, value: Any) -> Callable[[dict[str, Any]], None]:
    def change(plain: dict[str, Any]) -> None:
        for key in keys[:-1]:
            plain = plain[key]
        plain[keys[-1]] = value

    return change


@pytest.mark.parametrize(
    ("change", "reason"),
    [
        (_in("kettle", "diameter", value=-1.0), "diameter must be between"),
        (_in("kettle", "diameter", value=float("nan")), "diameter must be between"),
        (_in("kettle", "floor_metal", value="tin"), "tin"),
        (_in("kettle", "colour", value="red"), "colour"),
        (_in("coefficients", "floor.effort", value=1.0), "floor.effort"),
        (_in("coefficients", "floor.efficiency", value=17.0), "floor.efficiency must be between"),
        (_in("coefficients", "floor.efficiency", value="a"), "coefficients"),
        (_in("params", "floor.effort", value={}), "floor.effort|params|Param"),
        (_in("params", value=[]), "params|items"),
        (_in("params", "probe.lag", "value", value=-5.0), "probe.lag"),
        (_in("params", "probe.lag", "value", value="a"), "probe.lag"),
        (_in("fixed", value={"floor.effort": 1.0}), "floor.effort"),
        (_in("runs", value=[1]), "RunQuality|runs"),
        (_in("options", "colour", value="red"), "colour"),
        (_in("scaled_covar", value=[[1.0]]), "scaled_covar"),
        (_in("scaled_covar", value=[[1.0], [1.0, 2.0]]), "scaled_covar"),
        (_in("scaled_covar", value="wide"), "scaled_covar"),
        (_in("scaled_covar", value=[[float("nan")] * 2] * 2), "scaled_covar"),
        (_in("scaled_covar", value=[[-1.0, 0.0], [0.0, -1.0]]), "scaled_covar"),
        (_in("covar", value=[[1.0]]), "covar"),
    ],
)
def test_impossible_part_is_refused(
    change: Callable[[dict[str, Any]], None], reason: str, saved: Path
) -> None:
    plain = json.loads(saved.read_text())
    change(plain)
    saved.write_text(json.dumps(plain))
    with pytest.raises(FileFormatError, match=reason) as caught:
        read_fit(saved)
    assert str(saved) in str(caught.value)
