"""The columns of a logged run in SI."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from pathlib import Path
from types import MappingProxyType

import numpy as np

from . import units
from .findings import Array, Finding, Severity
from .log_clock import LogClock, read_time
from .log_columns import HEAT, absent, find_columns, unit_of
from .log_numbers import decimal_mark, number
from .log_options import LogOptions
from .log_rows import Rows, read_rows
from .log_signals import CLOCK, COLONS, SIGNALS, count_known


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
    clock :
        The clock behind the times, None for elapsed time.
    findings :
        How the file was read, rows left out because a cell cannot be read, columns that are absent.
    rows :
        The cells, for messages.
    """

    file: str
    sha256: str
    lines: Array
    columns: Mapping[str, Array]
    units: Mapping[str, str]
    clock: LogClock | None
    findings: tuple[Finding, ...]
    rows: Rows

    def between(self, first: int, last: int) -> tuple[int, int]:
        """Lines of the file from one row to another."""
        return int(self.lines[first]), int(self.lines[last])

    def text(self, signal: str, value: float) -> str:
        """A value as the file has it, with its unit."""
        unit = self.units[signal]
        inside = float(units.in_unit(value, unit, SIGNALS[signal]))
        return f"{inside:.5g}" if unit == "1" else f"{inside:.5g} {unit}"

    def heat(self) -> Array | None:
        """The larger share of floor and jacket at each row, None if neither is known [-]."""
        known = [self.columns[signal] for signal in HEAT if signal in self.columns]
        return np.max(known, axis=0) if known else None

    def with_heat(self, heats: Mapping[str, Array], finding: Finding) -> LogTable:
        """The same log with heat that it does not hold, and a finding that says so."""
        made = {signal: frozen(values) for signal, values in heats.items()}
        kept = [one for one in self.findings if one.signal not in HEAT]
        return replace(
            self,
            columns=MappingProxyType({**self.columns, **made}),
            units=MappingProxyType({**self.units, **dict.fromkeys(made, "%")}),
            findings=(*kept, finding),
        )


def frozen(values: Array) -> Array:
    """The same array, read-only from now on."""
    values.setflags(write=False)
    return values


def read_table(path: str | Path, options: LogOptions | None = None) -> LogTable:
    """The signals of a log in SI.

    Parameters
    ----------
    path :
        CSV, XLSX or Parquet file with named columns.
    options :
        What the file does not say itself.

    Raises
    ------
    FileFormatError
        The file is empty or broken, or a column or its unit is missing; the message lists them.
    InvalidArgument
        A unit that is not one of its signal, or a sheet of a file without sheets.
    """
    how = options or LogOptions()
    chosen = list(how.columns.values())
    rows = read_rows(path, lambda cells: count_known(cells, chosen), how.sheet)
    places = find_columns(rows, how)
    spelled = {signal: unit_of(rows, signal, place, how.units) for signal, place in places.items()}
    _check_widths(rows)
    how = replace(how, decimal=_mark(rows, places, spelled["time"], how))
    time = read_time(rows, places["time"], spelled["time"], how)
    values = _numbers(rows, places, str(how.decimal)) | {"time": time.values}
    spelled["time"] = time.unit
    kept, left_out = _readable(rows, places, values, time.unit)
    made = {signal: _si(values[signal][kept], signal, str(spelled[signal])) for signal in places}
    return LogTable(
        file=rows.file,
        sha256=rows.sha256,
        lines=frozen(np.array(rows.lines)[kept]),
        columns=MappingProxyType(made),
        units=MappingProxyType({signal: str(unit) for signal, unit in spelled.items()}),
        clock=time.clock,
        findings=(*rows.findings, *time.findings, *absent(rows, places), *left_out),
        rows=rows,
    )


def _si(values: Array, signal: str, unit: str) -> Array:
    # times are in seconds already
    return frozen(values if signal == "time" else units.to_si(values, unit, SIGNALS[signal]))


def _check_widths(rows: Rows) -> None:
    """Cells beyond the named columns mean that the cells before them may be in wrong columns."""
    width = len(rows.header)
    for line, cells in zip(rows.lines, rows.cells, strict=True):
        if any(cell.strip() for cell in cells[width:]):
            raise rows.refused(
                f"{len(cells)} cells below {width} column names; allowed: one cell for each name "
                "(numbers with a decimal comma need semicolons or tabs between the cells)",
                line=line,
            )


def _mark(rows: Rows, places: Mapping[str, int], time_unit: str | None, how: LogOptions) -> str:
    """The decimal mark of the file; times with colons may have one of their own."""
    colons = time_unit is None or time_unit in (CLOCK, *COLONS)
    columns = [at for signal, at in places.items() if not (colons and signal == "time")]
    return decimal_mark(rows, columns, how.decimal)


def _numbers(rows: Rows, places: Mapping[str, int], mark: str) -> dict[str, Array]:
    """Numbers of each signal but time as they stand in the file, NaN where there is none."""
    return {
        signal: np.array([number(rows.cell(row, place), mark) for row in range(len(rows.cells))])
        for signal, place in places.items()
        if signal != "time"
    }


def _readable(
    rows: Rows, places: Mapping[str, int], values: Mapping[str, Array], time_unit: str
) -> tuple[Array, list[Finding]]:
    """A mask of the rows in which every signal can be read, and findings about the others."""
    unread = np.array([np.isnan(values[signal]) for signal in places])
    kept: Array = np.logical_not(unread.any(axis=0))
    faults: list[tuple[int, str, str]] = []
    for row in np.flatnonzero(~kept):
        line = rows.lines[row]
        if unread[:, row].all():
            faults.append((line, "file", _shown(rows, int(row))))
            continue
        wrong = [signal for signal, bad in zip(places, unread[:, row], strict=True) if bad]
        faults += [(line, signal, rows.cell(int(row), places[signal])) for signal in wrong]
    if not kept.any():
        raise _nothing_read(rows, faults[0], time_unit)
    return kept, _left_out(faults)


def _shown(rows: Rows, row: int) -> str:
    return " ".join(cell.strip() for cell in rows.cells[row] if cell.strip())[:80]


def _nothing_read(rows: Rows, fault: tuple[int, str, str], time_unit: str) -> Exception:
    line, signal, cell = fault
    if signal == "file":
        told = f'no row can be read, the first is "{cell}"; allowed: a time and numbers in each'
        return rows.refused(told, line=line)
    allowed = "a number" if cell else f"a number{rows.empty_hint}"
    if signal == "time" and time_unit == CLOCK:
        allowed = "a time of a clock such as 2026-03-29 01:59:30"
    elif signal == "time" and ":" in cell:
        allowed = f'a time in {time_unit}; or say units={{"time": "clock"}}, "h:mm:ss" or "mm:ss"'
    elif "," in cell:
        allowed = "a number without marks between thousands"
    told = f'no row can be read: {signal} is "{cell}"; allowed: {allowed}'
    return rows.refused(told, key=signal, line=line)


def _left_out(faults: Sequence[tuple[int, str, str]]) -> list[Finding]:
    """One finding for each stretch of lines with the same unreadable cell."""
    found: list[Finding] = []
    open_at: dict[tuple[str, str], int] = {}
    for line, signal, cell in faults:
        seen = f'"{cell}", row left out' if cell else "empty cell, row left out"
        at = open_at.get((signal, seen))
        if at is not None and found[at].lines[1] == line - 1:
            found[at] = replace(found[at], lines=(found[at].lines[0], line))
            continue
        expected = "readings in every line" if signal == "file" else "a number"
        if signal == "time":
            expected = "a time, written as in the other lines"
        open_at[(signal, seen)] = len(found)
        found.append(Finding(Severity.warning, (line, line), signal, seen, expected))
    return found
