"""The command line on logs of every format, and its options for them."""

from pathlib import Path

import pytest
from cli_runs import KETTLE, QUICK, WATER, plain, run
from log_formats import FORMATS, text
from test_heat_inference import without


@pytest.mark.parametrize("kind", FORMATS)
def test_check_reads_every_format(kind: str, tmp_path: Path) -> None:
    path = FORMATS[kind](tmp_path)
    result = run("check", path)
    assert result.exit_code == 0, result.stderr
    assert f"{path}: 40 rows over 1:18 min" in result.stdout
    assert "note: line 1: file: byte 0xB0" in result.stdout or "Latin-1" not in kind


@pytest.mark.parametrize(
    ("rows", "options"),
    [
        (
            ["timestamp;probe_C;floor_heat_pct", "3/4/2026 10:00;20,5;9", "3/4/2026 10:01;21;9"],
            ("--dates", "day first"),
        ),
        (["time_s;probe_C;floor_heat_pct", "0;21,234;100", "2;21,235;100"], ("--decimal", ",")),
        (["time_s;probe_C", "0;20", "2;20.1"], ("--heat", "none")),
    ],
)
def test_what_a_log_does_not_say_can_be_said(
    rows: list[str], options: tuple[str, str], tmp_path: Path
) -> None:
    path = text(tmp_path, rows)
    refused = run("check", path)
    assert refused.exit_code == 1
    assert str(path) in refused.stderr
    assert run("check", path, *options).exit_code == 0


def test_a_zone_takes_out_the_change_of_the_clock(tmp_path: Path) -> None:
    times = [f"2026-10-25 02:{m:02d}:00" for m in range(30, 60)]
    times += [f"2026-10-25 02:{m:02d}:00" for m in range(30)]
    lines = [f"{time};{20 + i};100" for i, time in enumerate(times)]
    path = text(tmp_path, ["clock;probe_C;floor_heat_pct", *lines])
    assert "was it changed to or from summer time?" in run("check", path).stdout
    assert run("check", path).exit_code == 3
    found = plain("check", path, "--zone", "Europe/Berlin")
    assert found["duration_s"] == 59 * 60
    assert found["started"] == "2026-10-25T02:30:00+02:00"


def test_a_sheet_is_named_and_a_wrong_one_told(tmp_path: Path) -> None:
    path = FORMATS["workbook"](tmp_path)
    assert run("check", path, "--sheet", "log").exit_code == 0
    result = run("check", path, "--sheet", "lag")
    assert result.exit_code == 1
    assert 'sheet "lag" is not there (did you mean "log"?); there are: log' in result.stderr


def test_heat_is_inferred_for_check_and_fit(tmp_path: Path) -> None:
    path = without(tmp_path, "water_boil_60kg", "heat")
    given = (path, "--recipe", WATER, "--heat", "inferred")
    found = plain("check", *given, "--kettle", KETTLE)
    assert found["heat_source"] == "inferred"
    assert run("check", *given).exit_code == 1
    result = run("fit", KETTLE, "--run", f"{path}:{WATER}", "--heat", "inferred", *QUICK)
    assert result.exit_code == 0, result.stderr
    assert "heat inferred" in result.stdout


def test_help_names_the_options_of_logs() -> None:
    said = run("check", "--help").stdout
    for option in ("--zone", "--dates", "--decimal", "--sheet", "--heat", "--kettle"):
        assert option in said
