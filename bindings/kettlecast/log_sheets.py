"""Cells of an XLSX workbook as text."""

from __future__ import annotations

import datetime
import io
import warnings
import zipfile
from collections.abc import Iterator
from dataclasses import replace
from typing import Any

from .errors import FileFormatError, UnknownName
from .file_model import nearest
from .findings import Finding, Severity
from .log_rows import (
    LARGEST,
    MOST_CELLS,
    CountKnown,
    Rows,
    header_at,
    nothing_below,
    shaped_header,
    too_large,
    with_header,
)

_MOST_ROWS = 1_048_576  # of a sheet, ISO/IEC 29500 leaves it open, all programs agree on it
_FORMULA = "; a formula whose value was never saved reads as empty: save the file once more"


def sheet_rows(nothing: Rows, data: bytes, known: CountKnown, sheet: str | None) -> Rows:
    """Cells of one sheet; lines are its rows. Formulas count with the values saved with them.

    Parameters
    ----------
    nothing :
        Names the file.
    data :
        Its bytes.
    known :
        As for `read_rows`.
    sheet :
        Name of the sheet; None for the first.

    Raises
    ------
    FileFormatError
        Not a workbook, broken, too large unpacked, or without rows.
    UnknownName
        No sheet of that name.
    """
    _check_archive(nothing, data)
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")  # about styles and the like, which no log depends on
        names, chosen, table = _read(nothing, data, sheet)
    findings = [] if sheet is not None or len(names) == 1 else [_first_of(names)]
    rows = replace(nothing, findings=tuple(findings), empty_hint=_FORMULA)
    if not table:
        raise nothing_below(rows)
    count, at = header_at(table, known)
    shaped = at if count > 1 else shaped_header(table)
    if shaped is None:
        raise rows.refused(
            f'no row of sheet "{chosen}" names columns such as time_s and probe_C; '
            f"sheets there are: {', '.join(names)}"
        )
    return with_header(rows, table, shaped)


def _check_archive(nothing: Rows, data: bytes) -> None:
    """A zip archive that unpacks to a size that may be read and holds a workbook."""
    try:
        entries = zipfile.ZipFile(io.BytesIO(data)).infolist()
    except zipfile.BadZipFile as error:
        raise nothing.refused(f"a broken XLSX file: {error}") from error
    if sum(entry.file_size for entry in entries) > LARGEST:
        raise too_large(nothing)
    if not any(entry.filename == "[Content_Types].xml" for entry in entries):
        raise nothing.refused("a zip archive without a workbook; unpack it first, or save as XLSX")


def _read(
    nothing: Rows, data: bytes, sheet: str | None
) -> tuple[list[str], str, list[tuple[int, list[str]]]]:
    """Names of the sheets, the one taken, and line and cells of its rows that are not empty."""
    import openpyxl

    try:
        book = openpyxl.load_workbook(io.BytesIO(data), read_only=True, data_only=True)
        sheets = {one.title: one for one in book.worksheets}
    except Exception as error:  # openpyxl lets through whatever the broken part causes
        raise nothing.refused(f"a broken XLSX file: {error}") from error
    if sheet is not None and sheet not in sheets:
        there = ", ".join(sheets)
        raise UnknownName(
            f'{nothing.file}: sheet "{sheet}" is not there{nearest(sheet, sheets)}; '
            f"there are: {there}"
        )
    if not sheets:
        raise nothing.refused("a workbook without a sheet of cells")
    chosen = sheet if sheet is not None else next(iter(sheets))
    try:
        table = list(_not_empty(nothing, sheets[chosen]))
    except FileFormatError:
        raise
    except (ValueError, KeyError, TypeError, IndexError, SyntaxError, zipfile.BadZipFile) as error:
        raise nothing.refused(f'sheet "{chosen}" is broken: {error}') from error
    return list(sheets), chosen, table


def _not_empty(nothing: Rows, sheet: Any) -> Iterator[tuple[int, list[str]]]:
    sheet.reset_dimensions()  # the size that a file claims is often wrong
    count = 0
    for line, row in enumerate(sheet.iter_rows(values_only=True), start=1):
        count += len(row)
        if count > MOST_CELLS or line > _MOST_ROWS:
            raise too_large(nothing)
        cells = [cell_text(value) for value in row]
        if any(cells):
            yield line, cells


def _first_of(names: list[str]) -> Finding:
    seen = f'sheet "{names[0]}" was read, the first of: {", ".join(names)}'
    return Finding(Severity.note, (1, 1), "file", seen, "one sheet, or sheet= to choose")


def cell_text(value: object) -> str:
    """A cell of a sheet or table as it would stand in a CSV file; floats keep every digit."""
    if value is None or value != value:  # empty, or not a number
        return ""
    if isinstance(value, bool):
        return str(int(value))
    if isinstance(value, datetime.datetime):
        return value.isoformat(sep=" ")
    if isinstance(value, datetime.timedelta):
        return _elapsed_text(value)
    return str(value).strip()


def _elapsed_text(value: datetime.timedelta) -> str:
    micros = value // datetime.timedelta(microseconds=1)
    sign, whole = ("-" if micros < 0 else ""), abs(micros) // 1_000_000
    part = f".{abs(micros) % 1_000_000:06d}" if micros % 1_000_000 else ""
    return f"{sign}{whole // 3600}:{whole // 60 % 60:02d}:{whole % 60:02d}{part}"
