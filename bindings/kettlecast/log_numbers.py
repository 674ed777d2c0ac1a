"""Numbers in the cells of a log, with a decimal point or a decimal comma."""

from __future__ import annotations

import math
import re
from collections.abc import Iterable, Iterator

from .log_rows import Rows

_POINT = re.compile(r"[+-]?(?:[0-9]+(?:\.[0-9]*)?|\.[0-9]+)(?:[eE][+-]?[0-9]+)?")
_COMMA = re.compile(r"[+-]?(?:[0-9]+,[0-9]*|,[0-9]+)(?:[eE][+-]?[0-9]+)?")
_THOUSANDS = re.compile(r"[+-]?[1-9][0-9]{0,2},[0-9]{3}")  # 1,234 may mean 1234 or 1.234


def number(cell: str, mark: str) -> float:
    """A number with the decimal mark "." or ","; NaN if the cell is none."""
    plain = cell.replace("\N{MINUS SIGN}", "-")
    if mark == ",":
        # a point would part thousands here
        plain = "" if "." in plain else plain.replace(",", ".")
    if _POINT.fullmatch(plain) is None:
        return math.nan
    value = float(plain)
    return value if math.isfinite(value) else math.nan


def decimal_mark(rows: Rows, places: Iterable[int], told: str | None) -> str:
    """The decimal mark of the numbers in some columns.

    Parameters
    ----------
    rows :
        Cells of the log.
    places :
        Columns that hold numbers.
    told :
        The mark if it was said, then nothing is looked for.

    Raises
    ------
    FileFormatError
        Points and commas are mixed, or every comma may as well part thousands.
    """
    if told is not None:
        return told
    columns = list(places)
    commas = list(_cells_with(rows, columns, ",", _COMMA))
    if not commas:
        return "."
    line, cell = commas[0]
    points = next(_cells_with(rows, columns, ".", _POINT), None)
    if points is not None:
        raise rows.refused(
            f'numbers with a decimal comma ("{cell}") and with a decimal point ("{points[1]}" on '
            f"line {points[0]}); allowed: one of them in a file",
            line=line,
        )
    if all(_THOUSANDS.fullmatch(one) for _, one in commas):
        raise rows.refused(
            f'"{cell}" may mean {cell.replace(",", ".")} or {cell.replace(",", "")}, and no number '
            'of the file shows which; say decimal="," (or write numbers without commas)',
            line=line,
        )
    return ","


def _cells_with(
    rows: Rows, places: list[int], mark: str, pattern: re.Pattern[str]
) -> Iterator[tuple[int, str]]:
    """Line and text of the cells that are numbers with the mark."""
    for row, line in enumerate(rows.lines):
        for place in places:
            cell = rows.cell(row, place)
            if mark in cell and pattern.fullmatch(cell):
                yield line, cell
