"""The columns of a logged run in SI, and how they are found in a CSV file."""

from __future__ import annotations

import csv
import hashlib
import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path
from types import MappingProxyType

import numpy as np

from . import units
from .errors import FileFormatError, InvalidArgument, UnknownName
from .file_model import nearest
from .findings import Array, Finding, Severity

#: Signals of a log and the kind of quantity each is.
SIGNALS: Mapping[str, str] = MappingProxyType(
    {
        "time": "time",
        "floor": "temperature",
        "probe": "temperature",
        "floor_heat": "share",
        "jacket_heat": "share",
        "agitator": "rotation_speed",
    }
)
_REQUIRED = ("time", "probe")
_HEAT = ("floor_heat", "jacket_heat")  # one of them is required too
_SUFFIXES = {
    "time": {"s": "s", "min": "min", "h": "h"},
    "temperature": {"c": "degC", "f": "degF", "k": "K"},
    "share": {"pct": "%"},
    "rotation_speed": {"rpm": "rpm"},
}


@dataclass(frozen=True, eq=False)
class LogTable:
    """Columns of a log by signal.

    Attributes
    ----------
    file, sha256 :
        Path, and checksum of the bytes of the file.
    lines :
        Line of the file of each row, counted from 1.
    columns :
        Read-only arrays by signal, SI.
    units :
        Unit of each signal in the file.
    findings :
        Rows left out because a cell cannot be read, and columns that are absent.
    """

    file: str
    sha256: str
    lines: Array
    columns: Mapping[str, Array]
    units: Mapping[str, str]
    findings: tuple[Finding, ...]

    @staticmethod
    def kind(signal: str) -> str:
        """Kind of quantity of a signal."""
        return SIGNALS[signal]


@dataclass(frozen=True)
class Rows:
    """Text cells of a CSV file with the line of each row."""

    file: str
    header: tuple[str, ...]
    lines: tuple[int, ...]
    cells: tuple[list[str], ...]

    def refused(self, text: str, *, key: str = "", line: int | None = None) -> FileFormatError:
        """An error about this file."""
        where = self.file if line is None else f"{self.file}: line {line}"
        return FileFormatError(f"{where}: {text}", file=self.file, key=key, line=line)


def read_rows(path: str | Path) -> Rows:
    """The cells of a CSV file separated by comma, semicolon or tab; empty rows are skipped.

    Raises
    ------
    FileFormatError
        The file cannot be opened, is not UTF-8 text, or holds no row below its header.
    """
    file = str(path)
    try:
        text = Path(path).read_text(encoding="utf-8-sig")
    except OSError as error:
        raise FileFormatError(f"{file}: {error.strerror}", file=file) from error
    except UnicodeDecodeError as error:
        raise FileFormatError(f"{file}: not UTF-8 text: {error}", file=file) from error
    head = text.lstrip().split("\n", 1)[0]
    reader = csv.reader(text.splitlines(), delimiter=max(",;\t", key=head.count))
    rows = [(reader.line_num, row) for row in reader if any(cell.strip() for cell in row)]
    if len(rows) < 2:
        raise FileFormatError(f"{file}: empty: no row below the header", file=file)
    header = tuple(cell.strip() for cell in rows[0][1])
    lines, cells = zip(*rows[1:], strict=True)
    return Rows(file, header, lines, cells)


def read_table(
    path: str | Path,
    columns: Mapping[str, str] | None = None,
    units_of: Mapping[str, str] | None = None,
) -> LogTable:
    """The signals of a log in SI.

    Parameters
    ----------
    path :
        CSV file with a header.
    columns :
        Column of a signal where its name does not tell, for example `{"probe": "T7_C"}`.
    units_of :
        Unit of a signal where the column name does not tell, for example `{"probe": "degC"}`.

    Raises
    ------
    FileFormatError
        The file is empty, or a column or its unit is missing; the message lists the columns.
    UnknownName
        `columns` or `units_of` names a signal that does not exist.
    """
    _check_signals(columns or {}, "columns")
    _check_signals(units_of or {}, "units")
    rows = read_rows(path)
    places = _places(rows, columns or {})
    spelled = {
        signal: _unit(rows, signal, rows.header[place], units_of or {})
        for signal, place in places.items()
    }
    values, kept, findings = _numbers(rows, places)
    made = {
        signal: _frozen(units.to_si(values[:, index], spelled[signal], SIGNALS[signal]))
        for index, signal in enumerate(places)
    }
    return LogTable(
        file=rows.file,
        sha256=hashlib.sha256(Path(path).read_bytes()).hexdigest(),
        lines=_frozen(np.array(rows.lines)[kept]),
        columns=MappingProxyType(made),
        units=MappingProxyType(spelled),
        findings=(*_absent(rows, places), *findings),
    )


def column_unit(column: str, signal: str) -> str | None:
    """Unit told by a column name such as "probe_C", None if the name is of another form."""
    head, _, suffix = column.rpartition("_")
    if head.lower() != signal:
        return None
    return _suffix_unit(suffix, signal)


def _suffix_unit(suffix: str, signal: str) -> str | None:
    return _SUFFIXES[SIGNALS[signal]].get(suffix.lower())


def _check_signals(names: Mapping[str, str], argument: str) -> None:
    for name in names:
        if name not in SIGNALS:
            raise UnknownName(
                f'{argument}: signal "{name}" is not known{nearest(name, SIGNALS)}; '
                f"there are: {', '.join(SIGNALS)}"
            )


def _places(rows: Rows, columns: Mapping[str, str]) -> dict[str, int]:
    """Index of the column of each signal that the file has."""
    listed = f"columns there are: {', '.join(rows.header)}"
    places: dict[str, int] = {}
    for signal in SIGNALS:
        if signal in columns:
            found = [columns[signal]] if columns[signal] in rows.header else []
        else:
            found = [column for column in rows.header if column_unit(column, signal) is not None]
        if len(found) > 1:
            told = f'several columns for "{signal}": {", ".join(found)}'
            raise rows.refused(f'{told}; choose with columns={{"{signal}": ...}}', key=signal)
        if found:
            places[signal] = rows.header.index(found[0])
        elif signal in columns:
            raise rows.refused(
                f'no column "{columns[signal]}" for "{signal}"; {listed}', key=signal
            )
        elif signal in _REQUIRED:
            raise _missing(rows, signal)
    if not any(signal in places for signal in _HEAT):
        raise _missing(rows, *_HEAT)
    return places


def _missing(rows: Rows, *signals: str) -> FileFormatError:
    """The error for a log that has a column for none of some signals."""
    names = " or ".join(f'"{signal}"' for signal in signals)
    usual = [f"{signal}_{word}" for signal in signals for word in _named_suffixes(signal)]
    listed = f"columns there are: {', '.join(rows.header)}"
    how = f'columns={{"{signals[0]}": "name of the column"}}'
    told = f"no column for {names} (such as {' or '.join(usual)}); {listed}; say which with {how}"
    return rows.refused(told, key=signals[0])


def _named_suffixes(signal: str) -> list[str]:
    words = _SUFFIXES[SIGNALS[signal]]
    return [word.upper() if SIGNALS[signal] == "temperature" else word for word in words]


def _unit(rows: Rows, signal: str, column: str, units_of: Mapping[str, str]) -> str:
    allowed = units.kind_named(SIGNALS[signal])
    if signal in units_of:
        if units_of[signal] not in allowed.units:
            raise InvalidArgument(
                f'units: "{units_of[signal]}" is not a unit of "{signal}"; '
                f"allowed: {allowed.allowed}"
            )
        return units_of[signal]
    found = _suffix_unit(column.rpartition("_")[2], signal)
    if found is None:
        told = f'the name of column "{column}" does not tell the unit of "{signal}"'
        how = f'units={{"{signal}": "{allowed.example.split(" ")[-1]}"}}'
        raise rows.refused(f"{told}; say it with {how}", key=column)
    return found


def _numbers(rows: Rows, places: Mapping[str, int]) -> tuple[Array, Array, list[Finding]]:
    """Numbers of all rows that can be read, a mask of those rows, findings for the others."""
    values = np.empty((len(rows.cells), len(places)))
    faults: list[tuple[int, str, str]] = []
    for row, cells in enumerate(rows.cells):
        for index, (signal, place) in enumerate(places.items()):
            cell = cells[place].strip() if place < len(cells) else ""
            values[row, index] = _number(cell)
            if math.isnan(values[row, index]):
                faults.append((rows.lines[row], signal, cell))
    kept: Array = np.logical_not(np.isnan(values).any(axis=1))
    if not kept.any():
        line, signal, cell = faults[0]
        comma = "; write decimal points, not commas" if "," in cell else ""
        raise rows.refused(
            f'no row can be read: {signal} is "{cell}"{comma}', key=signal, line=line
        )
    return values[kept], kept, _left_out(faults)


def _number(cell: str) -> float:
    try:
        value = float(cell)
    except ValueError:
        return math.nan
    return value if math.isfinite(value) else math.nan


def _left_out(faults: Sequence[tuple[int, str, str]]) -> list[Finding]:
    """One finding for each stretch of lines with the same unreadable cell."""
    found: list[Finding] = []
    for line, signal, cell in faults:
        seen = f'"{cell}", row left out' if cell else "empty cell, row left out"
        last = found[-1] if found else None
        if last and (last.signal, last.seen) == (signal, seen) and last.lines[1] == line - 1:
            found[-1] = Finding(last.severity, (last.lines[0], line), signal, seen, last.expected)
        else:
            found.append(Finding(Severity.warning, (line, line), signal, seen, "a number"))
    return found


def _absent(rows: Rows, places: Mapping[str, int]) -> list[Finding]:
    taken = {
        "floor": "the run has no floor reading",
        "floor_heat": "taken as no floor heat",
        "jacket_heat": "taken as no jacket heat",
        "agitator": "taken as not stirred",
    }
    how = 'a column, or columns={{"{}": ...}}'
    # a kettle that is heated by its jacket has no floor heat to log
    weight = {"floor_heat": Severity.note}
    return [
        Finding(
            weight.get(signal, Severity.warning),
            (1, 1),
            signal,
            f"no column, {meaning}",
            how.format(signal),
        )
        for signal, meaning in taken.items()
        if signal not in places
    ]


def _frozen(values: Array) -> Array:
    values.setflags(write=False)
    return values
