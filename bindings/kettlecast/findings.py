"""What the checks of a log report: severity, lines, what is there and what should be."""

from __future__ import annotations

import enum
from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any

import numpy as np

Array = np.ndarray[Any, np.dtype[Any]]


class Severity(enum.Enum):
    """How much a finding matters: a run with an `error` cannot be used as it stands."""

    note = "note"
    warning = "warning"
    error = "error"


@dataclass(frozen=True)
class Finding:
    """Something in a log that its reader should know.

    Attributes
    ----------
    severity :
        `note`, `warning` or `error`.
    lines :
        First and last line concerned, counted from 1; of the events file if `signal` is "events".
        Rows of a sheet count as it numbers them, those of a Parquet file from 2.
    signal :
        Signal concerned, for example "probe"; "file" for the log as a whole, or "events".
    seen, expected :
        What the file holds and what it should.
    """

    severity: Severity
    lines: tuple[int, int]
    signal: str
    seen: str
    expected: str

    def __str__(self) -> str:
        first, last = self.lines
        where = f"line {first}" if first == last else f"lines {first} to {last}"
        told = f"{self.severity.value}: {where}: {self.signal}: {self.seen}"
        return f"{told}; expected: {self.expected}"


def stretches(marked: Array) -> Iterator[tuple[int, int]]:
    """First and last index of each run of True."""
    edges = np.flatnonzero(np.diff(np.concatenate(([False], marked, [False])).astype(int)))
    yield from ((int(start), int(stop) - 1) for start, stop in edges.reshape(-1, 2))
