"""The same samples in every kind of file, and files that can be read in two ways or in none."""

import gzip
import hashlib
import sys
import zipfile
from pathlib import Path

import numpy as np
import openpyxl
import pytest
from log_files import told
from log_formats import CLOCKED, FORMATS, NAMES, SAMPLES, START, clocked, parquet, text, workbook

from kettlecast import log_rows
from kettlecast.errors import FileFormatError, InvalidArgument, UnknownName
from kettlecast.findings import Severity
from kettlecast.run_log import read_run


@pytest.mark.parametrize("kind", FORMATS)
def test_the_same_samples_read_equal(kind: str, tmp_path: Path) -> None:
    path = FORMATS[kind](tmp_path)
    run = read_run(path)
    time, floor, probe, heat, speed = np.array(SAMPLES, dtype=float).T
    assert run.floor_reading is not None
    np.testing.assert_array_equal(run.time, time)
    np.testing.assert_allclose(run.floor_reading, floor + 273.15, rtol=0, atol=1e-9)
    np.testing.assert_allclose(run.probe_reading, probe + 273.15, rtol=0, atol=1e-9)
    np.testing.assert_allclose(run.floor_heat, heat / 100, rtol=0, atol=1e-12)
    np.testing.assert_allclose(run.agitator_speed, speed / 60, rtol=1e-12)
    assert run.sha256 == hashlib.sha256(path.read_bytes()).hexdigest()
    assert run.started == (START if "dates" in kind else None)
    kept = [one for one in run.findings if one.signal not in ("events", "jacket_heat")]
    assert len(kept) == ("Latin-1" in kind)


# --- text


def test_latin_1_is_noted_with_its_line(tmp_path: Path) -> None:
    run = read_run(FORMATS["brackets, Latin-1"](tmp_path))
    assert told(run, "file") == [
        "note: line 1: file: byte 0xB0 is not UTF-8, so the file was read as Latin-1: "
        '"\N{DEGREE SIGN}"; expected: UTF-8 or UTF-16 text'
    ]


def test_lines_above_the_column_names_are_noted(tmp_path: Path) -> None:
    above = ["Logger 12", "", "Serial;0815", "Date;03.04.2026"]
    rows = ["time_s;probe_C;floor_heat_pct", "0;20,5;100", "2;20,75;100", "4;21;100"]
    run = read_run(text(tmp_path, above + rows))
    np.testing.assert_allclose(run.probe_reading - 273.15, [20.5, 20.75, 21.0], atol=1e-9)
    assert told(run, "file") == [
        'note: lines 1 to 4: file: above the column names, not used: "Logger 12 / Serial 0815 / '
        'Date 03.04.2026"; expected: column names in the first line'
    ]
    assert "line 5: jacket_heat: no column" in told(run, "jacket_heat")[0]


def test_a_line_of_words_below_the_data_is_one_finding(tmp_path: Path) -> None:
    rows = ["time_s,probe_C,floor_heat_pct", "0,20,100", "2,21,100", "end of log"]
    run = read_run(text(tmp_path, rows))
    assert told(run, "file") == [
        'warning: line 4: file: "end of log", row left out; expected: readings in every line'
    ]


def test_a_column_without_any_value_counts_as_absent(tmp_path: Path) -> None:
    rows = ["time_s,probe_C,floor_heat_pct,agitator_rpm", "0,20,100,", "2,21,100,"]
    run = read_run(text(tmp_path, rows))
    assert run.time.size == 2
    (found,) = told(run, "agitator")
    assert 'column "agitator_rpm" has no value, taken as not stirred' in found


HEAD = "time_s;probe_C;floor_heat_pct"


@pytest.mark.parametrize(
    ("rows", "line", "message"),
    [
        # 1,234 may be 1.234 or 1234, and nothing else in the file shows a comma
        ([HEAD, "0;1,234;100", "2;1,235;100"], 2, '"1,234" may mean 1.234 or 1234'),
        ([HEAD, "0;20,5;100", "2;20.7;100"], 2, 'and with a decimal point ("20.7" on line 3)'),
        (["time_s,probe_C,floor_heat_pct", "0,20,5,100"], 2, "4 cells below 3 column names"),
        ([HEAD, "0;1.234,5;100", "2;1.235,5;100"], 2, "without marks between thousands"),
        ([HEAD, '0;"20;100', "2;20;100"], 2, "a quotation mark that is not closed"),
        ([HEAD, "0;20\x00;100", "2;20;100"], 2, "holds the character U+0000"),
        (["time_s|probe_C|heat", "0|20|100"], None, "separated by one of: comma, semicolon, tab"),
        (
            ["a,b;c,d", "1,2;3,4"],
            None,
            "may be separated by comma or semicolon (tried: comma, semi",
        ),
        (
            [HEAD, "a;b;c", "d;e;f"],
            2,
            'no row can be read, the first is "a b c"; allowed: a time and',
        ),
        ([HEAD, "0;20.5 C;100"], 2, 'probe is "20.5 C"; allowed: a number'),
        ([HEAD, "0:00:02;20;100"], 2, 'allowed: a time in s; or say units={"time": "clock"}'),
        ([HEAD, ";;", "  "], None, "empty: no row below the header"),
    ],
)
def test_text_that_cannot_be_read_in_one_way(
    tmp_path: Path, rows: list[str], line: int | None, message: str
) -> None:
    path = text(tmp_path, rows)
    with pytest.raises(FileFormatError) as caught:
        read_run(path)
    assert str(caught.value).startswith(f"{path}: " + (f"line {line}: " if line else ""))
    assert message in str(caught.value)
    assert caught.value.line == line


def test_a_decimal_comma_can_be_said(tmp_path: Path) -> None:
    path = text(tmp_path, [HEAD, "0;21,234;100", "2;21,235;100"])
    run = read_run(path, decimal=",")
    np.testing.assert_allclose(run.probe_reading - 273.15, [21.234, 21.235], atol=1e-9)
    with pytest.raises(InvalidArgument, match=r'decimal: "x" is not allowed; allowed: "\." or ","'):
        read_run(path, decimal="x")


# A number of any column decides for the file: 1234,5 cannot hold a mark between thousands.
@pytest.mark.parametrize("decisive", ["0,125", "1234,567", "7,5", "-0,125"])
def test_one_decisive_number_is_enough(tmp_path: Path, decisive: str) -> None:
    rows = ["time_s;probe_C;floor_heat_pct;agitator_rpm", f"0;21,234;100;{decisive}"]
    run = read_run(text(tmp_path, [*rows, "2;21,235;100;0"]))
    assert run.probe_reading[0] - 273.15 == pytest.approx(21.234, abs=1e-9)


# --- column names


@pytest.mark.parametrize(
    ("name", "kelvin"),
    [
        ("probe_C", 273.15 + 68),
        ("Probe_F", 293.15),
        ("probe_K", 68.0),
        ("Probe [\N{DEGREE SIGN}F]", 293.15),
        ("Probe (\N{DEGREE SIGN}C)", 273.15 + 68),
        ("PROBE [\N{DEGREE FAHRENHEIT}]", 293.15),
        ("probe (degf)", 293.15),
        ("Probe[K]", 68.0),
    ],
)
def test_units_in_column_names(tmp_path: Path, name: str, kelvin: float) -> None:
    run = read_run(text(tmp_path, [f"Time [min];{name};Floor heat [1]", "0;68;0.5", "1;68;0.5"]))
    assert run.probe_reading[0] == pytest.approx(kelvin, abs=1e-9)  # 68 degF is 20 degC
    assert list(run.time) == [0.0, 60.0]
    assert run.floor_heat[0] == 0.5


@pytest.mark.parametrize(
    ("name", "message"),
    [
        (
            "Probe [bar]",
            'column "Probe [bar]": unit "bar" is not known for "probe"; allowed: degC, degF, K; '
            'or say it with units={"probe": "degF"}',
        ),
        ("Probe", 'the name of column "Probe" does not tell the unit of "probe"; say it with'),
        ("Probe [C];probe (F)", 'several columns for "probe": Probe [C], probe (F); choose'),
    ],
)
def test_units_that_cannot_be_told(tmp_path: Path, name: str, message: str) -> None:
    path = text(tmp_path, [f"time_s;{name};floor_heat_pct", "0;20;20;20"])
    with pytest.raises(FileFormatError) as caught:
        read_run(path)
    assert message in str(caught.value)


def test_names_that_had_a_meaning_keep_it(tmp_path: Path) -> None:
    rows = ["time_s,probe_C,Probe [raw],probe,timestamp,floor_heat_pct", "0,20,9,8,x,100"]
    run = read_run(text(tmp_path, [*rows, "2,21,9,8,x,100"]))
    np.testing.assert_allclose(run.probe_reading - 273.15, [20.0, 21.0], atol=1e-9)
    assert list(run.time) == [0.0, 2.0]


def test_a_column_is_one_signal_only(tmp_path: Path) -> None:
    path = text(tmp_path, [HEAD, "0;20;100"])
    with pytest.raises(
        FileFormatError, match='"probe_C" is chosen for "floor" and "probe"; allowed'
    ):
        read_run(path, columns={"floor": "probe_C"})


# --- workbooks


def test_a_sheet_can_be_chosen_and_the_first_is_noted(tmp_path: Path) -> None:
    other = [["Logger", "A"], [], NAMES, *([row[0], row[1] + 1, *row[2:]] for row in SAMPLES)]
    path = workbook(tmp_path, [NAMES, *map(list, SAMPLES)], **{"second run": other})
    first, second = read_run(path), read_run(path, sheet="second run")
    assert (
        'note: line 1: file: sheet "log" was read, the first of: log, second run'
        in told(first, "file")[0]
    )
    assert first.floor_reading is not None and second.floor_reading is not None
    np.testing.assert_allclose(second.floor_reading - first.floor_reading, 1.0, atol=1e-9)
    assert told(second, "file")[0].startswith("note: line 1: file: above the column names")
    with pytest.raises(
        UnknownName, match=r'sheet "second" is not there \(did you mean "second run'
    ):
        read_run(path, sheet="second")


def test_lines_of_a_sheet_are_its_rows(tmp_path: Path) -> None:
    book = openpyxl.Workbook()
    sheet = book.active
    sheet["B2"] = "A kettle, Monday"
    sheet.merge_cells("B2:F2")
    for place, name in enumerate(NAMES, start=2):
        sheet.cell(row=5, column=place, value=name)
    for at, row in enumerate(SAMPLES):
        for place, value in enumerate(row, start=2):
            sheet.cell(row=7 + 2 * at, column=place, value=value)  # every second row is empty
    sheet["D11"] = "#DIV/0!"
    book.save(tmp_path / "run.xlsx")
    run = read_run(tmp_path / "run.xlsx")
    assert run.time.size == len(SAMPLES) - 1
    assert told(run, "probe") == [
        'warning: line 11: probe: "#DIV/0!", row left out; expected: a number'
    ]
    assert told(run, "file")[0].startswith(
        'note: line 2: file: above the column names, not used: "A kettle, Monday"'
    )


def test_formulas_count_with_their_saved_values_only(tmp_path: Path) -> None:
    rows = [[row[0], row[1], "=A1+1", *row[3:]] for row in SAMPLES]
    with pytest.raises(FileFormatError) as caught:
        read_run(workbook(tmp_path, [NAMES, *rows]))
    assert (
        'column "probe_C" of "probe" has no value in any row; a formula whose value was never'
        in (str(caught.value))
    )


def test_saved_values_of_formulas_are_read(tmp_path: Path) -> None:
    path = workbook(tmp_path, [NAMES, *map(list, SAMPLES)])
    edited = tmp_path / "formulas.xlsx"
    with zipfile.ZipFile(path) as old, zipfile.ZipFile(edited, "w") as new:
        for name in old.namelist():
            data = old.read(name)
            if name == "xl/worksheets/sheet1.xml":
                # ISO/IEC 29500-1, 18.3.1.4: a cell holds its formula in f and the value saved in v
                data = data.replace(b"<v>20.25</v>", b"<f>20+1/4</f><v>20.25</v>", 1)
                assert b"<f>20+1/4</f>" in data
            new.writestr(name, data)
    np.testing.assert_array_equal(read_run(edited).probe_reading, read_run(path).probe_reading)


def test_files_of_other_kinds_are_refused(tmp_path: Path) -> None:
    old = tmp_path / "run.xls"
    old.write_bytes(bytes.fromhex("d0cf11e0a1b11ae1") + bytes(512))  # [MS-CFB] 2.2: its signature
    packed = tmp_path / "run.csv.gz"
    packed.write_bytes(gzip.compress(b"time_s,probe_C\n"))
    archive = tmp_path / "run.zip"
    with zipfile.ZipFile(archive, "w") as file:
        file.writestr("run.csv", "time_s,probe_C\n")
    broken = tmp_path / "broken.xlsx"
    broken.write_bytes(workbook(tmp_path, [NAMES, *map(list, SAMPLES)]).read_bytes()[:2000])
    half = tmp_path / "half.parquet"
    half.write_bytes(parquet(tmp_path, clocked(), CLOCKED).read_bytes()[:500])
    named = tmp_path / "named.parquet"
    named.write_bytes((tmp_path / "run.parquet").read_bytes().replace(b"probe_C", b"\xb2robe_C"))
    for path, message in (
        (named, "a broken Parquet file: "),
        (old, "a workbook of the old .xls kind, or one with a password; save it as .xlsx"),
        (packed, "a packed file; unpack it first: CSV, XLSX and Parquet are read"),
        (archive, "a zip archive without a workbook"),
        (broken, "a broken XLSX file: "),
        (half, "a broken Parquet file: "),
    ):
        with pytest.raises(FileFormatError) as caught:
            read_run(path)
        assert str(caught.value).startswith(f"{path}: {message}")


def test_a_sheet_of_a_file_without_sheets_is_refused(tmp_path: Path) -> None:
    with pytest.raises(InvalidArgument, match=r'run\.csv has no sheets, got "a"; only XLSX has'):
        read_run(FORMATS["comma"](tmp_path), sheet="a")


@pytest.mark.parametrize("kind", ["comma", "workbook", "Parquet"])
@pytest.mark.parametrize("limit", ["LARGEST", "MOST_CELLS"])
def test_too_large_files_are_refused_with_the_limit(
    kind: str, limit: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    path = FORMATS[kind](tmp_path)
    for module in ("log_rows", "log_text", "log_sheets", "log_parquet"):
        module = sys.modules[f"kettlecast.{module}"]
        if hasattr(module, limit):
            monkeypatch.setattr(module, limit, 100)
    with pytest.raises(FileFormatError, match=r"too large: a log may hold \d+ MB when unpacked"):
        read_run(path)


def test_a_zip_bomb_is_not_unpacked(tmp_path: Path) -> None:
    path = tmp_path / "bomb.xlsx"
    with zipfile.ZipFile(path, "w", zipfile.ZIP_DEFLATED) as file:
        file.writestr("[Content_Types].xml", "")
        with file.open("xl/worksheets/sheet1.xml", "w") as inside:
            for _ in range(log_rows.LARGEST // 10_000_000 + 1):
                inside.write(bytes(10_000_000))
    assert path.stat().st_size < 1_000_000
    with pytest.raises(FileFormatError, match="a log may hold 200 MB when unpacked"):
        read_run(path)


def test_parquet_without_its_library_says_how_to_get_it(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    path = FORMATS["Parquet"](tmp_path)
    monkeypatch.setitem(sys.modules, "pyarrow", None)
    with pytest.raises(FileFormatError) as caught:
        read_run(path)
    assert 'needs pyarrow: pip install "kettlecast[parquet]"' in str(caught.value)


def test_missing_cells_of_a_table_are_reported(tmp_path: Path) -> None:
    rows = [list(row) for row in SAMPLES]
    rows[4][2] = float("nan")
    run = read_run(parquet(tmp_path, rows, NAMES))
    assert told(run, "probe") == [
        "warning: line 6: probe: empty cell, row left out; expected: a number"
    ]
    assert {one.severity for one in run.findings} == {Severity.warning}
