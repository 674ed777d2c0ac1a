"""Which column holds which signal of a log, and in which unit."""

from __future__ import annotations

from collections.abc import Mapping

from . import units
from .errors import FileFormatError, InvalidArgument
from .findings import Finding, Severity
from .log_options import LogOptions
from .log_rows import Rows
from .log_signals import SIGNALS, Heading, heading, unit_written, units_text, usual_names

REQUIRED = ("time", "probe")
HEAT = ("floor_heat", "jacket_heat")
_MEANING = {
    "floor": "the run has no floor reading",
    "floor_heat": "taken as no floor heat",
    "jacket_heat": "taken as no jacket heat",
    "agitator": "taken as not stirred",
}


def find_columns(rows: Rows, options: LogOptions) -> dict[str, int]:
    """Index of the column of each signal that the file has.

    Raises
    ------
    FileFormatError
        A signal that is needed has no column, or a signal has several.
    """
    places: dict[str, int] = {}
    for signal in SIGNALS:
        chosen = options.columns.get(signal)
        found = _named(rows, signal) if chosen is None else _chosen(rows, signal, chosen)
        if len(found) > 1:
            told = f'several columns for "{signal}": {", ".join(rows.header[at] for at in found)}'
            raise rows.refused(f'{told}; choose with columns={{"{signal}": ...}}', key=signal)
        if found and any(rows.cell(row, found[0]) for row in range(len(rows.cells))):
            places[signal] = found[0]
        elif signal in REQUIRED:
            raise _empty(rows, signal, found[0]) if found else missing(rows, signal)
    _check_shared(rows, places)
    return places


def _check_shared(rows: Rows, places: Mapping[str, int]) -> None:
    """A column may be one signal only, also where columns were chosen."""
    owner: dict[int, str] = {}
    for signal, place in places.items():
        if place in owner:
            raise rows.refused(
                f'column "{rows.header[place]}" is chosen for "{owner[place]}" and "{signal}"; '
                "allowed: one signal for a column",
                key=signal,
            )
        owner[place] = signal


def _chosen(rows: Rows, signal: str, column: str) -> list[int]:
    found = [at for at, name in enumerate(rows.header) if name == column]
    if not found:
        listed = f"columns there are: {', '.join(rows.header)}"
        raise rows.refused(f'no column "{column}" for "{signal}"; {listed}', key=signal)
    return found


def _named(rows: Rows, signal: str) -> list[int]:
    """Columns whose name tells the signal; names that tell more go first."""
    told = [(at, heading(column)) for at, column in enumerate(rows.header)]
    mine = [(at, one.rank) for at, one in told if one.signal == signal]
    best = min((rank for _, rank in mine), default=0)
    return [at for at, rank in mine if rank == best]


def _empty(rows: Rows, signal: str, place: int) -> FileFormatError:
    told = f'column "{rows.header[place]}" of "{signal}" has no value in any row{rows.empty_hint}'
    return rows.refused(told, key=signal)


def missing(rows: Rows, *signals: str, other: str = "") -> FileFormatError:
    """The error for a log that has a column for none of some signals, with another way out."""
    names = " or ".join(f'"{signal}"' for signal in signals)
    usual = " or ".join(name for signal in signals for name in usual_names(signal))
    listed = f"columns there are: {', '.join(rows.header)}"
    how = f'columns={{"{signals[0]}": "name of the column"}}'
    told = f"no column for {names} (such as {usual}); {listed}; say which with {how}"
    told += f"; or say {other}" if other else ""
    return rows.refused(told, key=signals[0])


def unit_of(rows: Rows, signal: str, place: int, given: Mapping[str, str]) -> str | None:
    """The unit of a column, as given or as its name tells; None for times that tell themselves.

    Raises
    ------
    InvalidArgument
        The unit given is not one of the signal.
    FileFormatError
        The name tells no unit, or one that is not known.
    """
    column = rows.header[place]
    if signal in given:
        unit = unit_written(given[signal], signal)
        if unit is None:
            raise InvalidArgument(
                f'units: "{given[signal]}" is not a unit of "{signal}"; '
                f"allowed: {units_text(signal)}"
            )
        return unit
    told = heading(column)
    unit = told.unit if told.signal == signal else _of_other_name(column, signal)
    if unit is not None or (signal == "time" and not told.told):
        return unit
    raise _no_unit(rows, signal, column, told)


def _of_other_name(column: str, signal: str) -> str | None:
    """The unit told by a column of any name that was chosen for a signal, such as T7_C."""
    suffix = column.rpartition("_")[2]
    return heading(f"{signal}_{suffix}").unit or heading(_renamed(column, signal)).unit


def _renamed(column: str, signal: str) -> str:
    """The name with what stands before its brackets replaced by the signal."""
    at = min((column.find(sign) for sign in "[(" if sign in column), default=len(column))
    return f"{signal} {column[at:]}".strip()


def _no_unit(rows: Rows, signal: str, column: str, told: Heading) -> FileFormatError:
    example = units.kind_named(SIGNALS[signal]).example.split(" ")[-1]
    how = f'say it with units={{"{signal}": "{example}"}}'
    if told.told:
        return rows.refused(
            f'column "{column}": unit "{told.told}" is not known for "{signal}"; '
            f"allowed: {units_text(signal)}; or {how}",
            key=column,
        )
    return rows.refused(
        f'the name of column "{column}" does not tell the unit of "{signal}"; {how}', key=column
    )


def absent(rows: Rows, places: Mapping[str, int]) -> list[Finding]:
    """Findings about signals without a column, or with a column that is empty."""
    found = []
    for signal, meaning in _MEANING.items():
        if signal in places:
            continue
        here = [rows.header[at] for at in _named(rows, signal)]
        why = f'column "{here[0]}" has no value' if here else "no column"
        # a kettle that is heated by its jacket has no floor heat to log
        severity = Severity.note if signal == "floor_heat" else Severity.warning
        how = f'a column, or columns={{"{signal}": ...}}'
        lines = (rows.header_line, rows.header_line)
        found.append(Finding(severity, lines, signal, f"{why}, {meaning}", how))
    return found
