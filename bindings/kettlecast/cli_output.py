"""What the command line prints: tables, times with intervals, JSON, findings, progress."""

from __future__ import annotations

import json
import math
from collections.abc import Iterable, Iterator, Mapping, Sequence
from contextlib import contextmanager
from dataclasses import asdict
from typing import TYPE_CHECKING, Any

import typer
from rich.box import SIMPLE_HEAD
from rich.console import Console
from rich.table import Table

from . import _core
from .clock_text import clock_text, range_text
from .comparing import Comparison
from .endings import ending_text
from .findings import Finding, Severity
from .fit_result import Fit
from .forecasting import Forecast
from .leave_one_out import LeaveOneOut
from .run_log import Run
from .units import System

if TYPE_CHECKING:
    import pandas as pd
    from rich.console import JustifyMethod

CAUTION = (
    "Caution: hot surfaces, steam and moving agitators. The food-safety limits of local code and "
    "of licensed practice come first; a forecast is no measurement."
)

EXIT_WRONG_INPUT = 1
EXIT_ATTENTION = 3
EXIT_STOPPED = 130

_PIPED_WIDTH = 100  # columns of a table that no terminal limits


def out() -> Console:
    """Standard output; plain text without colour when it is no terminal."""
    console = Console(highlight=False, markup=False)
    return (
        console
        if console.is_terminal
        else Console(highlight=False, markup=False, width=_PIPED_WIDTH)
    )


def say(text: str) -> None:
    """One text on standard output, never wrapped."""
    out().print(text, soft_wrap=True)


def complain(text: str) -> None:
    """One text on standard error, never wrapped."""
    Console(stderr=True, highlight=False, markup=False).print(text, soft_wrap=True)


def told(error: Exception) -> str:
    """What an error says; of an error of the system, the file and what is wrong with it."""
    if isinstance(error, OSError) and error.filename is not None:
        return f"{error.filename}: {error.strerror}"
    return str(error)


def say_json(plain: Any) -> None:
    """JSON and nothing else on standard output; what is not a finite number becomes null."""
    typer.echo(json.dumps(_finite(plain), indent=1))


def _finite(plain: Any) -> Any:
    if isinstance(plain, Mapping):
        return {str(key): _finite(value) for key, value in plain.items()}
    if isinstance(plain, (list, tuple)):
        return [_finite(value) for value in plain]
    return None if isinstance(plain, float) and not math.isfinite(plain) else plain


@contextmanager
def working(text: str) -> Iterator[None]:
    """Shows on a terminal that something takes a while."""
    console = Console(stderr=True)
    if not console.is_terminal:
        yield
        return
    with console.status(text):
        yield


def attention(reasons: Sequence[str]) -> None:
    """Ends with exit code 3 if there are reasons to look twice, which are printed."""
    for reason in reasons:
        complain(f"Attention: {reason}")
    if reasons:
        raise typer.Exit(EXIT_ATTENTION)


def table(columns: Sequence[str], rows: Iterable[Sequence[str]], left: int = 1) -> None:
    """A table; the first `left` columns are words, the rest numbers."""
    made = Table(box=SIMPLE_HEAD, pad_edge=False, header_style="bold")
    for i, name in enumerate(columns):
        number = i >= left  # words wrap, numbers do not
        justify: JustifyMethod = "right" if number else "left"
        made.add_column(name, justify=justify, vertical="top", no_wrap=number)
    for row in rows:
        made.add_row(*row)
    out().print(made)


def _time_cell(row: pd.Series[Any], name: str) -> str:
    """A time, and below it its interval where there is one."""
    value = 60.0 * row[f"{name}_min"]
    low, high = (60.0 * row.get(f"{name}_{end}_min", math.nan) for end in ("low", "high"))
    cell = range_text(value, low, high).replace(" (", "\n").replace(" to ", "..").rstrip(")")
    missed = row.get("not_reached", 0.0)
    if name == "to_reach" and missed > 0.0:
        cell += f"\nnever in {missed:.0%}"
    return cell


def _figure(value: float, digits: int = 1) -> str:
    """A number with as many decimals, "-" for none; never "-0.0"."""
    return f"{round(value, digits) + 0.0:.{digits}f}" if math.isfinite(value) else "-"


def _figure_cell(row: pd.Series[Any], name: str, unit: str, digits: int = 1) -> str:
    """A number, and below it its interval where there is one."""
    low, high = (row.get(f"{name}_{end}_{unit}", math.nan) for end in ("low", "high"))
    middle = _figure(row[f"{name}_{unit}"], digits)
    ends = (_figure(low, digits), _figure(high, digits))
    if math.isnan(low) or math.isnan(high) or ends == (middle, middle):
        return middle
    return f"{middle}\n{ends[0]}..{ends[1]}"


def total_text(forecast: Forecast) -> str:
    """Duration of the whole run with its interval."""
    found = forecast.interval("duration")
    if found is None:
        return f"{clock_text(forecast.duration)} min (no interval: a plain kettle, not a fit)"
    text = range_text(forecast.duration, found.low, found.high)
    return f"{text} min, {found.level:.0%} interval"


def _say_what_intervals_hold(forecast: Forecast) -> None:
    if forecast.ensemble is not None:
        say(f"Intervals hold {forecast.ensemble.holds()}.")


def say_forecast(forecast: Forecast, system: System) -> None:
    """Phases of a forecast as a table, and the whole run in a sentence."""
    sign, over, mass = ("F", "F", "lb") if system == "us" else ("C", "K", "kg")
    rows: list[list[str]] = []
    for number, row in forecast.to_dataframe(system).iterrows():
        cells = [_time_cell(row, name) for name in ("to_reach", "duration")]
        highest = _figure(row[f"peak_reading_{sign}"])
        beyond = _figure_cell(row, "overshoot_reading", over)
        lost, energy = _figure_cell(row, "evaporated", mass, 2), _figure(row["energy_kWh"], 2)
        ended = ending_text(forecast, len(rows), system)
        rows.append([f"{number} {row['phase']}", ended, *cells, highest, beyond, lost, energy])
    unit = "degF" if system == "us" else "degC"
    head = ["phase", "ends by", "set point\nreached after", "phase\nlasts", f"highest\n[{unit}]"]
    head += [f"over\n[{'degF' if system == 'us' else 'K'}]", f"steam\n[{mass}]", "energy\n[kWh]"]
    say(f"{forecast.recipe.name} on {forecast.kettle.name}, times in minutes:seconds")
    table(head, rows, left=2)
    say(f"Whole run: {total_text(forecast)}.")
    _say_what_intervals_hold(forecast)
    for note in forecast.notes:
        say(note)


def say_comparison(comparison: Comparison) -> None:
    """Both batches phase by phase, and the answer in a sentence."""
    rows = []
    for number, row in comparison.table.iterrows():
        times = [_time_cell(row, name) for name in ("known", "changed", "longer")]
        name = row["phase"] if number == "total" else f"{number} {row['phase']}"
        over, lost = _figure(row["peak_hotter_K"]), _figure_cell(row, "evaporated_more", "kg", 2)
        rows.append([name, *times, over, lost, _figure(row["energy_more_kWh"], 2)])
    head = ["phase", "known", "changed", "longer", "hotter\n[K]", "more steam\n[kg]"]
    table([*head, "more energy\n[kWh]"], rows)
    say(comparison.sentence()[:1].upper() + comparison.sentence()[1:])
    if comparison.longer_interval() is None:
        return
    _say_what_intervals_hold(comparison.changed)
    if comparison.same_day():
        say("Both batches share hands, ingredients and room, as if cooked on the same day.")


def forecast_doubts(*forecasts: Forecast) -> list[str]:
    """Phases that ran into their time limit."""
    return [
        f'{one.recipe.name}: phase "{phase.name}" ran into its time limit of '
        f"{clock_text(phase.duration)} min before its end was reached"
        for one in forecasts
        for phase in one.result.phases
        if phase.ended is _core.EndReason.timed_out
    ]


def fit_doubts(fit: Fit) -> list[str]:
    """Why a fit should not be used as it stands."""
    return [] if fit.success else [f"the fit did not converge: {fit.message}"]


def fit_plain(fit: Fit, held_out: LeaveOneOut | None = None) -> dict[str, Any]:
    """A fit as plain values."""
    rows = fit.table().reset_index().to_dict(orient="records")
    runs = ("name", "floor_rms", "probe_rms", "sha256")
    return {
        "kettle": fit.kettle.name,
        "converged": fit.success,
        "message": fit.message,
        "reduced_chi_square": fit.redchi,
        "runs": [{key: getattr(run, key) for key in runs} for run in fit.runs],
        "coefficients": rows,
        "fixed": dict(fit.fixed),
        "strong_pairs": fit.strong_pairs(),
        "inseparable": [str(one) for one in fit.inseparable()],
        "doubts": [str(one) for one in fit.doubts()] if fit.search else None,
        "held_out": [asdict(one) for one in held_out.runs] if held_out else None,
    }


def complain_of(run: Run) -> None:
    """Warnings and errors of a log on standard error."""
    for finding in run.findings:
        if finding.severity is not Severity.note:
            complain(f"{run.name}: {finding}")


def finding_plain(finding: Finding) -> dict[str, Any]:
    """A finding as plain values."""
    return {
        "severity": finding.severity.value,
        "lines": list(finding.lines),
        "signal": finding.signal,
        "seen": finding.seen,
        "expected": finding.expected,
    }


def run_plain(run: Run) -> dict[str, Any]:
    """A log as plain values: size, pours, phases and findings."""
    pours = [{"time_s": t, "name": one.name, "mass_kg": one.mass} for t, one in run.pours]
    return {
        "file": run.file,
        "rows": int(run.time.size),
        "duration_s": float(run.time[-1] - run.time[0]),
        "started": None if run.started is None else run.started.isoformat(),
        "heat_source": run.heat_source,
        "phase_starts_s": list(run.phases),
        "reached_s": list(run.reached),
        "pours": pours,
        "findings": [finding_plain(finding) for finding in run.findings],
    }


def say_run(run: Run) -> None:
    """Size of a log and its findings."""
    length = clock_text(float(run.time[-1] - run.time[0]))
    say(
        f"{run.file}: {run.time.size} rows over {length} min, {len(run.phases)} phases, "
        f"{len(run.pours)} pours"
    )
    for finding in run.findings:
        say(f"  {finding}")
    if not run.findings:
        say("  nothing looks wrong")
