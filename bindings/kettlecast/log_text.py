"""Text of a log: its encoding, the character between its cells, and its header."""

from __future__ import annotations

import codecs
import csv
import re
from dataclasses import replace

from .findings import Finding, Severity
from .log_rows import (
    MOST_CELLS,
    CountKnown,
    Rows,
    header_at,
    nothing_below,
    shaped_header,
    too_large,
    with_header,
)

_DELIMITERS = {",": "comma", ";": "semicolon", "\t": "tab"}
_MARKS = (
    (codecs.BOM_UTF8, "utf-8-sig", "UTF-8"),
    (codecs.BOM_UTF16_LE, "utf-16", "UTF-16"),
    (codecs.BOM_UTF16_BE, "utf-16", "UTF-16"),
)
_NO_TEXT = re.compile("[\x00-\x08\x0e-\x1f]")
_ENOUGH = 2  # names of columns by which a header is known
_LOOKED_AT = 200  # lines in which delimiter and header are looked for

_Table = list[tuple[int, list[str]]]


def text_rows(nothing: Rows, data: bytes, known: CountKnown) -> Rows:
    """Cells of a text file separated by comma, semicolon or tab; empty lines are skipped.

    Parameters
    ----------
    nothing :
        Names the file.
    data :
        Its bytes: UTF-8, UTF-16, or Latin-1, which is noted.
    known :
        As for `read_rows`.

    Raises
    ------
    FileFormatError
        Not text, no delimiter that can be told, a quotation mark that is not closed, or no row.
    """
    text, findings = _decoded(nothing, data)
    rows = replace(nothing, findings=findings)
    ends = text.replace("\r\n", "\n").replace("\r", "\n").split("\n")
    lines = [(number, line) for number, line in enumerate(ends, start=1) if line.strip(" \t,;")]
    if len(lines) < 2:
        raise nothing_below(rows)
    delimiter, at = _delimiter(rows, lines[:_LOOKED_AT], known)
    above = _split(lines[: at + 1], delimiter)
    return with_header(rows, above + _cells(rows, lines[at + 1 :], delimiter), at)


def _decoded(nothing: Rows, data: bytes) -> tuple[str, tuple[Finding, ...]]:
    encoding, name = _encoding(data)
    findings: tuple[Finding, ...] = ()
    try:
        text = data.decode(encoding)
    except UnicodeDecodeError as error:
        if name == "UTF-16":
            raise nothing.refused(f"begins as UTF-16 text, but is not: {error.reason}") from error
        text, findings = data.decode("latin-1"), (_as_latin(data, error.start),)
    found = _NO_TEXT.search(text)
    if found is not None:
        line = text.count("\n", 0, found.start()) + 1
        code = f"U+{ord(found[0]):04X}"
        told = f"holds the character {code}, which no text has; allowed: CSV text, XLSX, Parquet"
        raise nothing.refused(told, line=line)
    return text, findings


def _encoding(data: bytes) -> tuple[str, str]:
    """What Python calls the encoding, and what people call it."""
    for mark, encoding, name in _MARKS:
        if data.startswith(mark):
            return encoding, name
    start = data[:200]
    for first, encoding in ((1, "utf-16-le"), (0, "utf-16-be")):
        if len(start) > 3 and start[first::2].count(0) > 0.8 * len(start[first::2]):
            return encoding, "UTF-16"
    return "utf-8", "UTF-8"


def _as_latin(data: bytes, start: int) -> Finding:
    line = data.count(b"\n", 0, start) + 1
    byte, sign = data[start], data[start : start + 1].decode("latin-1")
    shown = f'"{sign}"' if sign.isprintable() else "a control character"
    seen = f"byte 0x{byte:02X} is not UTF-8, so the file was read as Latin-1: {shown}"
    return Finding(Severity.note, (line, line), "file", seen, "UTF-8 or UTF-16 text")


def _split(lines: list[tuple[int, str]], delimiter: str) -> _Table:
    return [(at, next(csv.reader([line], delimiter=delimiter))) for at, line in lines]


def _cells(rows: Rows, lines: list[tuple[int, str]], delimiter: str) -> _Table:
    """Cells of the data; a quotation mark must be closed on its line."""
    table: _Table = []
    count = 0
    for at, line in lines:
        try:
            cells = next(csv.reader([line], delimiter=delimiter, strict=True))
        except csv.Error as error:
            told = f'a cell has a quotation mark that is not closed: "{line[:60]}"'
            raise rows.refused(told, line=at) from error
        count += len(cells)
        if count > MOST_CELLS:
            raise too_large(rows)
        table.append((at, cells))
    return table


def _delimiter(rows: Rows, lines: list[tuple[int, str]], known: CountKnown) -> tuple[str, int]:
    """The character between the cells, and the index of the header."""
    tables = {sign: _split(lines, sign) for sign in _DELIMITERS}
    best = {sign: header_at(table, known) for sign, table in tables.items()}
    most = max(count for count, _ in best.values())
    if most >= _ENOUGH:
        fitting = {sign: at for sign, (count, at) in best.items() if count == most}
    else:
        shaped = {sign: shaped_header(table) for sign, table in tables.items()}
        fitting = {sign: at for sign, at in shaped.items() if at is not None}
    if len(fitting) == 1:
        return next(iter(fitting.items()))
    raise _untold(rows, lines, [_DELIMITERS[sign] for sign in fitting])


def _untold(rows: Rows, lines: list[tuple[int, str]], fitting: list[str]) -> Exception:
    tried = ", ".join(_DELIMITERS.values())
    if fitting:
        which = " or ".join(fitting)
        told = f"the cells may be separated by {which} (tried: {tried}); allowed: one in a file"
        return rows.refused(told)
    first, text = lines[0]
    shown = text if len(text) <= 60 else f"{text[:60]}..."
    return rows.refused(
        f"no line names columns such as time_s and probe_C, with cells separated by one of: "
        f'{tried}; line {first} is "{shown}"'
    )
