"""One made log written in every format that is read."""

import datetime
from collections.abc import Callable
from pathlib import Path

import openpyxl
import pandas as pd

#: What all the files hold: elapsed time [s], floor, probe [degC], floor heat [%], speed [rpm].
SAMPLES = [(2.0 * i, 30.5 + i / 2, 20.25 + i / 8, 100, 20) for i in range(40)]
NAMES = ["time_s", "floor_C", "probe_C", "floor_heat_pct", "agitator_rpm"]
BRACKETS = [
    "Time [s]",
    "Floor (degC)",
    "Probe [\N{DEGREE SIGN}C]",
    "Floor heat [%]",
    "Agitator [rpm]",
]
START = datetime.datetime(2026, 3, 3, 9, 58, 30)

Cell = float | int | str | datetime.datetime


def clocked() -> list[list[Cell]]:
    """The samples with the time of a clock in place of the elapsed time."""
    return [[START + datetime.timedelta(seconds=row[0]), *row[1:]] for row in SAMPLES]


def text(folder: Path, rows: list[str], encoding: str = "utf-8", end: str = "\n") -> Path:
    path = folder / "run.csv"
    path.write_bytes((end.join(rows) + end).encode(encoding))
    return path


def delimited(
    folder: Path, delimiter: str, *, names: list[str] = NAMES, mark: str = ".", **how: str
) -> Path:
    rows = [delimiter.join(str(value).replace(".", mark) for value in row) for row in SAMPLES]
    return text(folder, [delimiter.join(names), *rows], **how)


def workbook(folder: Path, rows: list[list[Cell]], **sheets: list[list[Cell]]) -> Path:
    """An XLSX file with these rows in its first sheet, and other sheets by name."""
    book = openpyxl.Workbook()
    for title, content in {"log": rows, **sheets}.items():
        sheet = book.active if title == "log" else book.create_sheet(title)
        sheet.title = title
        for row in content:
            sheet.append(row)
    path = folder / "run.xlsx"
    book.save(path)
    return path


def parquet(folder: Path, rows: list[list[Cell]], names: list[str]) -> Path:
    path = folder / "run.parquet"
    pd.DataFrame(rows, columns=names).to_parquet(path)
    return path


CLOCKED = ["timestamp", *NAMES[1:]]
IN_COLONS = ["Time [h:mm:ss]", *NAMES[1:]]


def colons(folder: Path) -> Path:
    made = [
        ",".join([f"0:{int(row[0]) // 60:02d}:{int(row[0]) % 60:02d}", *map(str, row[1:])])
        for row in SAMPLES
    ]
    return text(folder, [",".join(IN_COLONS), *made])


FORMATS: dict[str, Callable[[Path], Path]] = {
    "comma": lambda folder: delimited(folder, ","),
    "comma, CRLF": lambda folder: delimited(folder, ",", end="\r\n"),
    "tab": lambda folder: delimited(folder, "\t"),
    "semicolon, decimal comma": lambda folder: delimited(folder, ";", mark=","),
    "tab, decimal comma, UTF-16": lambda folder: delimited(
        folder, "\t", mark=",", encoding="utf-16"
    ),
    "UTF-8 with mark": lambda folder: delimited(folder, ",", encoding="utf-8-sig"),
    "UTF-16 without mark": lambda folder: delimited(folder, ";", encoding="utf-16-le"),
    "brackets, Latin-1": lambda folder: delimited(folder, ";", names=BRACKETS, encoding="latin-1"),
    "h:mm:ss": colons,
    "workbook": lambda folder: workbook(folder, [NAMES, *map(list, SAMPLES)]),
    "workbook with dates": lambda folder: workbook(folder, [CLOCKED, *clocked()]),
    "Parquet": lambda folder: parquet(folder, list(map(list, SAMPLES)), NAMES),
    "Parquet with dates": lambda folder: parquet(folder, clocked(), CLOCKED),
}
