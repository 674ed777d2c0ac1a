"""Plots of forecasts, fits and comparisons; readable without colour."""

from __future__ import annotations

import re
import textwrap
from collections import Counter
from collections.abc import Callable, Iterator
from typing import TYPE_CHECKING, Any

import numpy as np

from . import _core, units
from .clock_text import clock_text
from .endings import level_text, rule_text
from .errors import InvalidArgument
from .plot_marks import (
    GREY,
    INK,
    PAPER,
    SMALL,
    Stretch,
    duty_lanes,
    head_phases,
    label_line_ends,
    plain_frame,
    shade_phases,
)

if TYPE_CHECKING:
    from matplotlib.axes import Axes
    from matplotlib.figure import Figure

    from .comparing import Comparison
    from .fit_result import Fit, RunQuality
    from .forecasting import Forecast

    Degrees = Callable[[Any], Any]

_PRODUCT, _PROBE, _FLOOR, _JACKET = "#0b3c5d", "#b8500f", "#3f6b35", "#8a1f2b"
_PIECES = ("#6a3d78", "#7a5c00", "#00635d", "#8c2f45")
_SEEN = 0.5  # a boiling point this much above that of water has a line of its own [K]
_DOTS: tuple[Any, ...] = ((0, (1, 1.2)), (0, (3, 1, 1, 1)), (0, (1, 3)), (0, (5, 1, 1, 1, 1, 1)))


def _new_figure(width: float, height: float) -> Figure:
    from matplotlib.figure import Figure

    return Figure(figsize=(width, height), layout="constrained")


def _degrees(system: units.System) -> tuple[Degrees, str]:
    """Function from degC to the degrees shown, and their sign."""
    unit, sign = {"metric": ("degC", "\N{DEGREE SIGN}C"), "us": ("degF", "\N{DEGREE SIGN}F")}[
        system
    ]

    def shown(celsius: Any) -> Any:
        return units.in_unit(np.asarray(celsius) + 273.15, unit, "temperature")

    return shown, sign


def _goal(phase: _core.Phase, system: units.System) -> str:
    """What a phase is regulated on, and what ends it unless that is a time."""
    idle = {
        _core.JacketUse.off: "no heat",
        _core.JacketUse.heat: "jacket only",
        _core.JacketUse.cool: "cooling",
    }
    goal = idle[phase.jacket]
    if phase.regulated is not _core.Regulated.none:
        goal = level_text(phase.regulated, phase.set_point, system, digits=3)
    ends = [
        rule_text(rule, system, digits=3)
        for rule in phase.ends
        if rule.kind not in (_core.EndKind.held, _core.EndKind.elapsed)
    ]
    text = f"{goal}, until {' or '.join(ends)}" if ends else goal
    return _unbroken(text)


def _unbroken(text: str) -> str:
    """Text with degree signs, whose numbers stay with their units."""
    signed = text.replace("degC", "\N{DEGREE SIGN}C").replace("degF", "\N{DEGREE SIGN}F")
    return re.sub(r"(?<=\d) (?=\S)", "\N{NO-BREAK SPACE}", signed)


def _stretches(forecast: Forecast, system: units.System = "metric") -> list[Stretch]:
    pairs = zip(forecast.result.phases, forecast.recipe.phases, strict=True)
    return [
        Stretch(
            number,
            report.name,
            report.start / 60.0,
            (report.start + report.duration) / 60.0,
            _goal(phase, system),
        )
        for number, (report, phase) in enumerate(pairs, start=1)
    ]


def _pieces(forecast: Forecast) -> Iterator[tuple[str, float]]:
    """Names of additions in pieces as the trace has them, and when they were poured [s]."""
    seen: Counter[str] = Counter()
    for report, phase in zip(forecast.result.phases, forecast.recipe.phases, strict=True):
        for addition in phase.additions:
            if addition.shape is _core.Shape.none:
                continue
            seen[addition.name] += 1
            again = seen[addition.name]
            name = addition.name if again == 1 else f"{addition.name}_{again}"
            for size in (".small", ".large") if addition.size_spread else ("",):
                yield name + size, report.start + addition.delay


def _uses_jacket(forecast: Forecast) -> bool:
    return bool((forecast.trace[["jacket.heat", "jacket.cooling"]] > 0.0).any(axis=None))


def _boils_hotter(forecast: Forecast) -> bool:
    """Whether what is dissolved raises the boiling point enough to be seen."""
    water = _core.properties.water.saturation_temperature(forecast.kettle.surroundings.pressure)
    return float(forecast.trace["liquid.boiling_point_C"].max()) + 273.15 > water + _SEEN


def _looks(forecast: Forecast) -> Iterator[tuple[str, str, float, dict[str, Any]]]:
    """Label, column of the trace, since when [s], and look of each line."""
    yield "floor reading", "floor_sensor.reading_C", 0.0, {"c": _FLOOR, "ls": "-.", "lw": 1.1}
    yield "product", "product.temperature_C", 0.0, {"c": _PRODUCT, "ls": "-", "lw": 2.2}
    yield "probe reading", "probe.reading_C", 0.0, {"c": _PROBE, "ls": "--", "lw": 1.3}
    if _uses_jacket(forecast):
        look = {"c": _JACKET, "ls": (0, (7, 2, 1, 2, 1, 2)), "lw": 0.9}
        yield "jacket", "jacket.temperature_C", 0.0, look
    if _boils_hotter(forecast):
        yield "boiling point", "liquid.boiling_point_C", 0.0, {"c": INK, "ls": ":", "lw": 1.2}
    for i, (name, poured) in enumerate(_pieces(forecast)):
        look = {"c": _PIECES[i % len(_PIECES)], "ls": _DOTS[i % len(_DOTS)]}
        look["lw"] = 1.5 + 0.4 * (i // len(_DOTS))
        plain = name.replace("_", " ").replace(".", ", ")
        yield f"{plain} core", f"{name}.core_temperature_C", poured, look


def _temperatures(axes: Axes, forecast: Forecast, degrees: Degrees) -> None:
    trace = forecast.trace
    minutes = trace["time_s"].to_numpy() / 60.0
    lines = []
    for label, column, since, look in _looks(forecast):
        shown = (trace["time_s"] >= since).to_numpy()
        if column in trace and shown.any():
            values = degrees(trace[column].to_numpy()[shown])
            lines += axes.plot(minutes[shown], values, label=label, zorder=3, **look)
    label_line_ends(axes, lines)


def _set_points(axes: Axes, forecast: Forecast, degrees: Degrees) -> None:
    for stretch, phase in zip(_stretches(forecast), forecast.recipe.phases, strict=True):
        if phase.regulated not in (_core.Regulated.none, _core.Regulated.difference):
            level = float(degrees(phase.set_point - 273.15))
            axes.hlines(level, stretch.start, stretch.end, color=INK, lw=0.8, zorder=2)


def _phase_ends(axes: Axes, forecast: Forecast) -> None:
    """A hatched band where the end of each phase is expected to lie."""
    right = axes.get_xlim()[1]
    for low, high in _end_intervals(forecast):
        axes.axvspan(
            low / 60.0,
            min(high / 60.0, right),
            facecolor="none",
            edgecolor=GREY,
            hatch="/////",
            lw=0,
            zorder=1,
            alpha=0.7,
        )


def _end_intervals(forecast: Forecast) -> Iterator[tuple[float, float]]:
    """Interval of the end of each phase [s]; those of which no end is known are left out."""
    count = len(forecast.recipe.phases)
    ends = [forecast.interval("start", number) for number in range(2, count + 1)]
    for found in (*ends, forecast.interval("duration")):
        if found is not None and np.isfinite(found.low):
            yield found.low, found.high


def _footnote(forecast: Forecast, narrow: list[str]) -> str:
    text = "Thin level lines are set points."
    if forecast.ensemble is not None:
        text += (
            f" Hatched: {forecast.level:.0%} interval of the end of a phase; it holds "
            f"{forecast.ensemble.holds()}."
        )
    if narrow:
        text += " Phases: " + "; ".join(narrow) + "."
    return textwrap.fill(text, 130)


def _duties(forecast: Forecast) -> list[tuple[str, Any]]:
    """What is on over time, as shares of full; what the kettle does not have is left out."""
    trace, kettle = forecast.trace, forecast.kettle
    duties = []
    if kettle.floor_power > 0.0:
        duties.append(("floor heat", trace["floor.heat"]))
    if kettle.jacket.height > 0.0 or kettle.jacket.under_floor:
        heat = {
            _core.JacketKind.electric: "jacket heat",
            _core.JacketKind.steam: "steam",
            _core.JacketKind.liquid: "hot flow",
        }
        duties.append((heat[kettle.jacket.kind], trace["jacket.heat"]))
    if (trace["jacket.cooling"] > 0.0).any():
        duties.append(("cold flow", trace["jacket.cooling"]))
    speed = trace["agitator.speed_rpm"]
    fastest = float(speed.abs().max())
    reversing = ", reversing" if (speed < 0.0).any() else ""
    label = f"agitator\n(full: {fastest:.0f} rpm{reversing})"
    return [*duties, (label, speed.abs() / (fastest or 1.0))]


def plot_forecast(forecast: Forecast, system: units.System = "metric") -> Figure:
    """Temperatures over time with phases and set points; heat and stirring below.

    Parameters
    ----------
    forecast :
        As `forecast` gives it; with a fit the interval of each phase end is hatched.
    system :
        "metric" (degC) or "us" (degF).
    """
    degrees, sign = _degrees(system)
    figure = _new_figure(11.0, 7.2)
    duties = _duties(forecast)
    axes, lanes = figure.subplots(2, 1, sharex=True, height_ratios=(4.2, len(duties) / 3.0))
    stretches = _stretches(forecast, system)
    latest = [high for _, high in _end_intervals(forecast) if np.isfinite(high)]
    axes.set_xlim(0.0, max([forecast.duration, *latest]) / 60.0)
    for part in (axes, lanes):
        shade_phases(part, stretches)
        _phase_ends(part, forecast)
        plain_frame(part)
    _temperatures(axes, forecast, degrees)
    _set_points(axes, forecast, degrees)
    narrow = head_phases(axes, stretches)
    duty_lanes(lanes, (forecast.trace["time_s"] / 60.0).tolist(), duties)
    axes.set_ylabel(f"temperature [{sign}]")
    lanes.set_xlabel("time [min]")
    title = f"{forecast.recipe.name} on {forecast.kettle.name}: {clock_text(forecast.duration)} min"
    figure.suptitle(title, fontsize=12)
    figure.supxlabel(_footnote(forecast, narrow), fontsize=SMALL - 0.5, color="#555555")
    return figure


def _run_readings(axes: Axes, curves: dict[str, Any], run: RunQuality) -> None:
    minutes = curves["time"] / 60.0
    lines = []
    for name, colour, width in (("floor", _FLOOR, 5.0), ("probe", _PROBE, 3.0)):
        if curves[f"{name}_log"] is None:
            continue
        log, model = curves[f"{name}_log"] - 273.15, curves[f"{name}_model"] - 273.15
        style = "--" if name == "floor" else "-"
        lines += axes.plot(minutes, log, color=colour, lw=width, alpha=0.45, label=f"{name} log")
        lines += axes.plot(minutes, model, color=INK, lw=1.0, ls=style, label=f"{name} model")
    axes.set_xlim(0.0, minutes[-1])
    label_line_ends(axes, lines)
    axes.set_title(run.name, fontsize=10, loc="left")
    axes.set_ylabel("reading [\N{DEGREE SIGN}C]", fontsize=SMALL + 0.5)


def _run_residuals(axes: Axes, curves: dict[str, Any], run: RunQuality) -> None:
    minutes = curves["time"] / 60.0
    told = []
    for name, style, colour in (("floor", "--", _FLOOR), ("probe", "-", _PROBE)):
        if curves[f"{name}_log"] is None:
            continue
        difference = curves[f"{name}_model"] - curves[f"{name}_log"]
        axes.plot(minutes, difference, c=colour, ls=style, lw=1.0)
        word = "dashed" if name == "floor" else "solid"
        told.append(f"{name} ({word}) {getattr(run, f'{name}_rms'):.2f} K")
    axes.axhline(0.0, color=INK, lw=0.6)
    axes.set_xlim(0.0, minutes[-1])
    axes.set_title("RMS " + ", ".join(told), fontsize=SMALL + 0.5, loc="left")
    axes.set_ylabel("model less log [K]", fontsize=SMALL + 0.5)


def plot_fit(fit: Fit) -> Figure:
    """Readings of log and model, and their difference, one row per run.

    Raises
    ------
    InvalidArgument
        The fit was read from a file, which holds no readings.
    """
    if not fit.comparison:
        raise InvalidArgument(
            f"plot_fit: the fit of {fit.kettle.name!r} holds no readings, because it was read from "
            "a file; plot it right after fitting"
        )
    count = len(fit.runs)
    figure = _new_figure(11.0, 1.0 + 2.5 * count)
    grid = figure.subplots(count, 2, squeeze=False, width_ratios=(1.5, 1.0))
    for row, curves, run in zip(grid, fit.comparison, fit.runs, strict=True):
        _run_readings(row[0], curves, run)
        _run_residuals(row[1], curves, run)
        for axes in row:
            plain_frame(axes)
    for axes in grid[-1]:
        axes.set_xlabel("time [min]")
    figure.suptitle(f"Fit of {fit.kettle.name}: readings of log and model", fontsize=12)
    return figure


def _timeline(axes: Axes, height: float, stretches: list[Stretch], known: list[Stretch]) -> None:
    """One bar of phases with their times; beneath, how much longer than the known ones."""
    for stretch, before in zip(stretches, known, strict=True):
        length = stretch.end - stretch.start
        face = PAPER if stretch.number % 2 else "white"
        axes.barh(height, length, 0.62, stretch.start, color=face, edgecolor=INK, lw=0.9)
        longer = 60.0 * (length - (before.end - before.start))
        more = f"\n{'+' if longer > 0 else ''}{clock_text(longer)}" if round(longer) else ""
        text = f"{stretch.number}: {clock_text(60.0 * length)}{more}"
        if length > 0.07 * axes.get_xlim()[1]:
            middle = stretch.start + 0.5 * length
            axes.text(middle, height, text, ha="center", va="center", fontsize=SMALL)


def _whole_run(axes: Axes, height: float, forecast: Forecast) -> None:
    """A line with caps where the end of the run is expected to lie."""
    found = forecast.interval("duration")
    if found is None or not (np.isfinite(found.low) and np.isfinite(found.high)):
        return
    ends = np.array([found.low, found.high]) / 60.0
    axes.plot(ends, [height, height], color=INK, lw=1.4, marker="|", ms=9, clip_on=False, zorder=4)


def plot_comparison(comparison: Comparison) -> Figure:
    """Product temperature of both batches over time, and their phases as bars."""
    known, changed = comparison.known, comparison.changed
    figure = _new_figure(11.0, 6.6)
    axes, bars = figure.subplots(2, 1, sharex=True, height_ratios=(3.0, 1.1))
    axes.set_xlim(0.0, 1.002 * max(known.duration, changed.duration) / 60.0)
    looks = ((known, "known", GREY, "-", 2.4), (changed, "changed", INK, "--", 1.5))
    lines = []
    for one, name, colour, style, width in looks:
        minutes = one.trace["time_s"].to_numpy() / 60.0
        values = one.trace["product.temperature_C"].to_numpy()
        lines += axes.plot(minutes, values, color=colour, ls=style, lw=width, label=name)
    label_line_ends(axes, lines)
    before, after = _stretches(known), _stretches(changed)
    _timeline(bars, 1.0, before, before)
    _timeline(bars, 0.0, after, before)
    _whole_run(bars, 1.0, known)
    _whole_run(bars, 0.0, changed)
    bars.set_yticks([1.0, 0.0], ["known", "changed"])
    bars.set_ylim(-0.5, 1.5)
    bars.tick_params(axis="y", length=0)
    axes.set_ylabel("product temperature [\N{DEGREE SIGN}C]")
    bars.set_xlabel("time [min]")
    for part in (axes, bars):
        plain_frame(part)
    figure.suptitle(textwrap.fill(comparison.sentence(), 100), fontsize=11.5)
    names = "; ".join(f"{stretch.number} {stretch.name}" for stretch in before)
    text = f"Phases: {names}."
    if comparison.longer_interval() is not None:
        text += f" Lines with caps: {known.level:.0%} interval of the end of the run."
    figure.supxlabel(textwrap.fill(text, 130), fontsize=SMALL - 0.5, color="#555555")
    return figure
