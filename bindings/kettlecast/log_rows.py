"""The cells of a log as text with the line of each row, whatever kind of file it comes in."""

from __future__ import annotations

import hashlib
from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
from pathlib import Path

from .errors import FileFormatError, InvalidArgument
from .findings import Finding, Severity

#: How many cells of a row are names of columns that the reader looks for.
CountKnown = Callable[[Sequence[str]], int]

# Nothing larger is read, so that a small file cannot unpack into more than the memory holds.
LARGEST = 200_000_000  #: bytes, unpacked
MOST_CELLS = 20_000_000

_HEADER_WITHIN = 100  # rows that may hold the column names
_SHOWN = 120  # characters of the lines above the column names that a finding quotes


@dataclass(frozen=True)
class Rows:
    """Cells of a log as text.

    Attributes
    ----------
    file :
        Path as given.
    header, header_line :
        Names of the columns, and their line.
    lines :
        Line of each row, counted from 1.
    cells :
        Text of each row; a row may be shorter or longer than the header.
    findings :
        What was seen on the way from bytes to cells.
    sha256 :
        Checksum of the bytes of the file.
    empty_hint :
        What an empty cell of such a file may come from.
    """

    file: str
    header: tuple[str, ...] = ()
    lines: tuple[int, ...] = ()
    cells: tuple[list[str], ...] = ()
    header_line: int = 1
    findings: tuple[Finding, ...] = ()
    sha256: str = ""
    empty_hint: str = ""

    def cell(self, row: int, place: int) -> str:
        """Text of one cell, "" where the row ends before it."""
        cells = self.cells[row]
        return cells[place].strip() if place < len(cells) else ""

    def refused(self, text: str, *, key: str = "", line: int | None = None) -> FileFormatError:
        """An error about this file."""
        where = self.file if line is None else f"{self.file}: line {line}"
        return FileFormatError(f"{where}: {text}", file=self.file, key=key, line=line)


def read_rows(path: str | Path, known: CountKnown, sheet: str | None = None) -> Rows:
    """The cells of a file: CSV text, an XLSX workbook or a Parquet table, told by its content.

    Parameters
    ----------
    path :
        The file.
    known :
        Tells how many cells of a row are names of columns; the row with most is the header.
    sheet :
        Name of the sheet of a workbook; None for its first.

    Raises
    ------
    FileFormatError
        The file cannot be opened, is of no such kind, too large, or holds no row below its header.
    InvalidArgument
        `sheet` is given for a file without sheets.
    """
    from .log_parquet import parquet_rows
    from .log_sheets import sheet_rows
    from .log_text import text_rows

    nothing = Rows(str(path))
    data = _bytes(path, nothing)
    if data.startswith(b"PK\x03\x04"):
        rows = sheet_rows(nothing, data, known, sheet)
    else:
        _refuse_kind(nothing, data)
        if sheet is not None:
            raise InvalidArgument(f'sheet: {path} has no sheets, got "{sheet}"; only XLSX has')
        rows = (parquet_rows if data.startswith(b"PAR1") else text_rows)(nothing, data, known)
    return replace(rows, sha256=hashlib.sha256(data).hexdigest())


def _bytes(path: str | Path, nothing: Rows) -> bytes:
    try:
        with Path(path).open("rb") as file:
            data = file.read(LARGEST + 1)
    except OSError as error:
        raise nothing.refused(str(error.strerror)) from error
    if len(data) > LARGEST:
        raise too_large(nothing)
    return data


def too_large(rows: Rows) -> FileFormatError:
    """The error for a file of which more would be read than is allowed."""
    return rows.refused(
        f"too large: a log may hold {LARGEST // 1_000_000} MB when unpacked and "
        f"{MOST_CELLS // 1_000_000} million cells; cut out the run"
    )


def _refuse_kind(nothing: Rows, data: bytes) -> None:
    if data.startswith(b"\xd0\xcf\x11\xe0"):
        raise nothing.refused(
            "a workbook of the old .xls kind, or one with a password; "
            "save it as .xlsx without a password, or as CSV"
        )
    if data.startswith((b"\x1f\x8b", b"BZh", b"\xfd7zXZ", b"7z\xbc\xaf", b"\x28\xb5\x2f\xfd")):
        raise nothing.refused("a packed file; unpack it first: CSV, XLSX and Parquet are read")


def with_header(rows: Rows, table: Sequence[tuple[int, list[str]]], at: int) -> Rows:
    """Rows below a header, with a note about what stands above it.

    Parameters
    ----------
    rows :
        What is known so far.
    table :
        Line and cells of every row that is not empty.
    at :
        Index of the header among them.

    Raises
    ------
    FileFormatError
        No row below the header.
    """
    if at + 1 >= len(table):
        raise nothing_below(rows)
    line, header = table[at]
    lines, cells = zip(*table[at + 1 :], strict=True)
    return replace(
        rows,
        header=tuple(cell.strip() for cell in header),
        header_line=line,
        lines=lines,
        cells=cells,
        findings=(*rows.findings, *_above(table[:at])),
    )


def nothing_below(rows: Rows) -> FileFormatError:
    """The error for a file without data."""
    return rows.refused("empty: no row below the header")


def _above(table: Sequence[tuple[int, list[str]]]) -> list[Finding]:
    """A note about the lines above the column names."""
    if not table:
        return []
    text = " / ".join(" ".join(cell.strip() for cell in row if cell.strip()) for _, row in table)
    shown = text if len(text) <= _SHOWN else f"{text[:_SHOWN]}..."
    lines = (table[0][0], table[-1][0])
    seen = f'above the column names, not used: "{shown}"'
    return [Finding(Severity.note, lines, "file", seen, "column names in the first line")]


def header_at(table: Sequence[tuple[int, list[str]]], known: CountKnown) -> tuple[int, int]:
    """How many column names the best row among the first has, and its index."""
    counts = [known(row) for _, row in table[:_HEADER_WITHIN]]
    best = max(counts, default=0)
    return best, counts.index(best) if counts else 0


def shaped_header(table: Sequence[tuple[int, list[str]]]) -> int | None:
    """Index of the row that can be a header by its shape: names above rows that are as wide.

    For files in which no name of a column is known, so that an error can list the names.
    """
    widths = [_width(row) for _, row in table]
    width = widths[-1] if widths else 0
    for index, (_, row) in enumerate(table[:-1]):
        names = [cell.strip() for cell in row[:width]]
        named = all(name and not name[0].isdigit() and name[0] not in "+-." for name in names)
        if widths[index] == width and named:
            same = all(one == width for one in widths[index:])
            return index if same and width > 1 else None
    return None


def _width(row: Sequence[str]) -> int:
    return max((place + 1 for place, cell in enumerate(row) if cell.strip()), default=0)
