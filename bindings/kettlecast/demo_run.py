"""What `kettlecast demo` does: fit a kettle, forecast a stew, and ask the logs who was right."""

from __future__ import annotations

import itertools
import json
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

from . import _core
from .cli_output import CAUTION, fit_plain, say, say_comparison, say_forecast, table
from .clock_text import clock_text, range_text
from .comparing import Comparison, compare
from .demo import demo_path
from .event_log import EventKind
from .fit_result import Fit
from .fitting import fit
from .forecasting import forecast
from .kettle_file import read_kettle
from .recipe_changes import with_more
from .recipe_file import read_recipe
from .run_log import Run, read_run
from .units import System

_FITTED = {
    "water_boil_60kg": "water_boil",
    "water_steps_60kg": "water_steps",
    "stew_70kg": "stew",
}
_LENTILS_LATER = 110.0  # [s] after the start of the phase; the carrot needs the operator's hands


@dataclass(frozen=True, eq=False)
class LoggedBatch:
    """What the events of a log say: how long each phase and the whole batch took [s]."""

    name: str
    durations: tuple[float, ...]

    @property
    def total(self) -> float:
        """Of the whole batch [s]."""
        return sum(self.durations)


@dataclass(frozen=True, eq=False)
class Demo:
    """The fit, the forecasts and what was logged."""

    fit: Fit
    comparison: Comparison
    stew: LoggedBatch
    again: LoggedBatch
    cold: LoggedBatch


def logged_batch(run: Run) -> LoggedBatch:
    """Durations of the phases of a log, from its events."""
    ends = [event.time for event in run.events if event.kind is EventKind.end]
    edges = [*run.phases, *ends]
    return LoggedBatch(run.name, tuple(b - a for a, b in itertools.pairwise(edges)))


def fit_demo_kettle() -> Fit:
    """The demo kettle, fitted to two runs with water and one stew."""
    runs = [
        read_run(demo_path(f"{log}.csv"), recipe=read_recipe(demo_path(f"{recipe}.toml")))
        for log, recipe in _FITTED.items()
    ]
    return fit(read_kettle(demo_path("kettle.toml")), runs)


def with_cold_carrot(stew: _core.Recipe) -> _core.Recipe:
    """The stew with twenty pounds of cold carrot, and the lentils poured after it."""
    more = with_more(
        stew,
        "carrot",
        "20 lb",
        "36 degF",
        phase="load and heat",
        piece="12 mm",
        shape="sphere",
        delay="75 s",
        pour_time="30 s",
    )
    phases = [
        phase.replace(
            additions=[
                one.replace(delay=_LENTILS_LATER) if one.name == "lentil" else one
                for one in phase.additions
            ]
        )
        for phase in more.phases
    ]
    return more.replace(phases=phases)


def run_demo() -> Demo:
    """Fit, forecast and compare with the logs; takes some ten seconds."""
    fitted = fit_demo_kettle()
    stew = read_recipe(demo_path("stew.toml"))
    now = forecast(fitted, stew)
    changed = forecast(fitted, with_cold_carrot(stew))
    names = ("stew_70kg", "stew_70kg_again", "stew_79kg_cold")
    logged = [logged_batch(read_run(demo_path(f"{name}.csv"))) for name in names]
    return Demo(fitted, compare(now, changed), *logged)


def _say_fit(fitted: Fit) -> None:
    state = "converged" if fitted.success else "did NOT converge"
    say(f"1. The kettle {fitted.kettle.name}, fitted to three of its logged runs ({state})")
    rows = []
    for run in fitted.runs:
        floor = "-" if run.floor_rms is None else f"{run.floor_rms:.2f}"
        rows.append([run.name, floor, f"{run.probe_rms:.2f}"])
    table(["run", "floor reading off\nby [K, RMS]", "probe reading off\nby [K, RMS]"], rows)


def _say_logs(demo: Demo) -> None:
    known, changed = demo.comparison.known, demo.comparison.changed
    say("\n4. What the logs of this kitchen say; (*) was used for the fit, the others were not")
    logged = [demo.stew.durations, demo.again.durations, demo.cold.durations]
    rows = []
    for i, (before, after) in enumerate(
        zip(known.result.phases, changed.result.phases, strict=True)
    ):
        times = [before.duration, *(one[i] for one in logged[:2]), after.duration, logged[2][i]]
        rows.append([f"{i + 1} {before.name}", *map(clock_text, times)])
    totals = [known.duration, demo.stew.total, demo.again.total, changed.duration, demo.cold.total]
    rows.append(["whole run", *map(clock_text, totals)])
    head = ["stew\nforecast", "stew\nlogged (*)", "stew again\nlogged", "with carrot\nforecast"]
    table(["phase", *head, "with carrot\nlogged"], rows)
    first, second = (demo.cold.total - one.total for one in (demo.stew, demo.again))
    told = range_text(demo.comparison.longer, *_interval(demo.comparison))
    say(
        f"Longer by forecast: {told} min. Longer by the logs: {clock_text(first)} min than the "
        f"first stew, {clock_text(second)} min than the second,\nwhich began warmer and had slower "
        "hands. The forecasts are for one day: same hands, same store, same room."
    )


def _interval(comparison: Comparison) -> Sequence[float]:
    found = comparison.longer_interval()
    return found if found is not None else (comparison.longer, comparison.longer)


def say_demo(demo: Demo, system: System = "metric") -> None:
    """The demo as text."""
    _say_fit(demo.fit)
    say("\n2. The stew, forecast phase by phase")
    say_forecast(demo.comparison.known, system)
    say("\n3. How much longer with twenty more pounds of cold carrot (36 degF, pieces of 12 mm)?")
    say_comparison(demo.comparison)
    _say_logs(demo)
    say(f"\nThe files of this demo lie in {demo_path('kettle.toml').parent}")
    say(CAUTION)


def demo_plain(demo: Demo) -> dict[str, Any]:
    """The demo as plain values."""
    return {
        "fit": fit_plain(demo.fit),
        "forecast": json.loads(demo.comparison.known.to_json()),
        "comparison": json.loads(demo.comparison.to_json()),
        "logged_min": {
            one.name: {"phases": [t / 60.0 for t in one.durations], "total": one.total / 60.0}
            for one in (demo.stew, demo.again, demo.cold)
        },
        "caution": CAUTION,
    }
