"""Cells of a Parquet table as text."""

from __future__ import annotations

import io
from typing import Any

from .log_rows import LARGEST, MOST_CELLS, CountKnown, Rows, nothing_below, too_large, with_header
from .log_sheets import cell_text


def parquet_rows(nothing: Rows, data: bytes, known: CountKnown) -> Rows:
    """Cells of a table; the names count as line 1, so the first row is line 2.

    Parameters
    ----------
    nothing :
        Names the file.
    data :
        Its bytes.
    known :
        Not needed here: a table of this kind names its columns.

    Raises
    ------
    FileFormatError
        pyarrow is not installed, or the file is broken, too large or without rows.
    """
    try:
        import pyarrow
        import pyarrow.parquet
    except ImportError as error:
        raise nothing.refused(
            'a Parquet file, which needs pyarrow: pip install "kettlecast[parquet]"; '
            "or save the log as CSV or XLSX"
        ) from error
    try:
        file = pyarrow.parquet.ParquetFile(io.BytesIO(data))
        _check_size(nothing, file.metadata)
        table = file.read()
    except (pyarrow.ArrowException, OSError, UnicodeDecodeError) as error:
        raise nothing.refused(f"a broken Parquet file: {error}") from error
    if not table.num_rows or not table.num_columns:
        raise nothing_below(nothing)
    columns = [[cell_text(value) for value in column.to_pylist()] for column in table.columns]
    body = [(line, list(row)) for line, row in enumerate(zip(*columns, strict=True), start=2)]
    return with_header(nothing, [(1, list(table.column_names)), *body], 0)


def _check_size(nothing: Rows, metadata: Any) -> None:
    groups = range(metadata.num_row_groups)
    unpacked = sum(metadata.row_group(group).total_byte_size for group in groups)
    if unpacked > LARGEST or metadata.num_rows * metadata.num_columns > MOST_CELLS:
        raise too_large(nothing)
