"""What a fit leaves over: residuals over time, how long they stay alike, and how they scatter."""

from __future__ import annotations

import textwrap
from statistics import NormalDist
from typing import TYPE_CHECKING

import numpy as np

from .error_model import autocorrelation
from .fit_logs import search_of
from .fit_problem import Observed, Vector
from .fit_result import Fit
from .plot_marks import GREY, INK, SMALL, Stretch, plain_frame, shade_phases

if TYPE_CHECKING:
    from matplotlib.axes import Axes
    from matplotlib.figure import Figure

# Colour, dashes, width and mark of each sensor; told apart by dashes and mark without colour.
_LOOKS = {"floor": ("#3f6b35", (0, (4, 1.5)), 1.0, "s"), "probe": ("#b8500f", "-", 1.3, "o")}
_LONGEST_LAG = 900.0  # [s]
_SHARE_OF_RUN = 0.4  # lags beyond this share of a run hold too few pairs to tell
_LABEL_GAP = 0.06  # of the time axis: pours closer than this share one label


def _stretches(one: Observed) -> list[Stretch]:
    starts = [time / 60.0 for time in one.run.phases]
    ends = [*starts[1:], float(one.time[-1]) / 60.0]
    return [
        Stretch(number, "", start, end)
        for number, (start, end) in enumerate(zip(starts, ends, strict=True), start=1)
    ]


def _mark_pours(axes: Axes, one: Observed) -> None:
    """A dotted line for each pour with its name; names of pours soon after each other together."""
    groups: list[tuple[float, list[str]]] = []
    length = float(one.time[-1]) / 60.0
    for time, addition in one.run.pours:
        minutes = time / 60.0
        axes.axvline(minutes, color=INK, lw=0.8, ls=":")
        name = addition.name.replace("_", " ")
        if groups and minutes - groups[-1][0] < _LABEL_GAP * length:
            groups[-1][1].append(name)
        else:
            groups.append((minutes, [name]))
    for minutes, names in groups:
        axes.text(
            minutes + 0.004 * length,
            0.02,
            "+ " + ", ".join(names),
            transform=axes.get_xaxis_transform(),
            va="bottom",
            ha="left" if minutes < 0.8 * length else "right",
            fontsize=SMALL - 1.0,
            color=INK,
        )


def _number_phases(axes: Axes, stretches: list[Stretch]) -> None:
    for stretch in stretches:
        middle = 0.5 * (stretch.start + stretch.end)
        axes.text(
            middle,
            0.97,
            str(stretch.number),
            transform=axes.get_xaxis_transform(),
            ha="center",
            va="top",
            fontsize=SMALL - 0.5,
            color="#555555",
        )


def _over_time(axes: Axes, one: Observed, residuals: dict[str, Vector]) -> None:
    minutes = one.time / 60.0
    for name, values in residuals.items():
        colour, dashes, width, _ = _LOOKS[name]
        axes.plot(minutes, values, color=colour, ls=dashes, lw=width, label=name, zorder=3)
    axes.axhline(0.0, color=INK, lw=0.6)
    axes.set_xlim(0.0, minutes[-1])
    low, high = axes.get_ylim()
    margin = 0.13 * (high - low)  # for the numbers of phases and the names of pours
    axes.set_ylim(low - margin, high + margin)
    stretches = _stretches(one)
    shade_phases(axes, stretches)
    _number_phases(axes, stretches)
    _mark_pours(axes, one)
    told = ", ".join(
        f"{name} {np.sqrt(np.mean(values**2)):.2f} K" for name, values in residuals.items()
    )
    axes.set_title(f"{one.run.name} (RMS: {told})", fontsize=SMALL + 1.0, loc="left")
    axes.set_ylabel("model less log [K]", fontsize=SMALL + 0.5)


def _alike(axes: Axes, one: Observed, residuals: dict[str, Vector]) -> None:
    """Autocorrelation over lag, and the band of what has none."""
    count = one.time.size
    lags = int(min(_LONGEST_LAG / one.step, _SHARE_OF_RUN * count))
    minutes = np.arange(lags + 1) * one.step / 60.0
    for name, values in residuals.items():
        colour, dashes, width, _ = _LOOKS[name]
        axes.plot(minutes, autocorrelation(values)[: lags + 1], c=colour, ls=dashes, lw=width)
    band = 1.96 / np.sqrt(count)
    axes.axhspan(-band, band, facecolor="none", edgecolor=GREY, hatch="////", lw=0, alpha=0.6)
    axes.axhline(0.0, color=INK, lw=0.6)
    axes.set_xlim(0.0, minutes[-1])
    axes.set_ylim(-0.6, 1.05)
    axes.set_title("autocorrelation", fontsize=SMALL + 0.5, loc="left")


def _quantiles(axes: Axes, residuals: dict[str, Vector]) -> None:
    """Sorted residuals in standard deviations over normal quantiles.

    Plotting positions: (i - 3/8) / (n + 1/4), Blom, Statistical estimates (1958).
    """
    for name, values in residuals.items():
        spread = float(np.std(values)) or 1.0
        count = values.size
        normal = [NormalDist().inv_cdf((i - 0.375) / (count + 0.25)) for i in range(1, count + 1)]
        shown = np.sort((values - values.mean()) / spread)
        colour, _, _, mark = _LOOKS[name]
        face = "none" if name == "floor" else colour
        (points,) = axes.plot(normal, shown, ls="none", marker=mark, ms=2.6)
        points.set(markeredgecolor=colour, markerfacecolor=face, markeredgewidth=0.6)
    axes.axline((0.0, 0.0), slope=1.0, color=INK, lw=0.8)
    axes.set_title("sorted [std. dev.]", fontsize=SMALL + 0.5, loc="left")


def plot_residuals(fit: Fit) -> Figure:
    """Residuals of floor and probe over time, their autocorrelation and their normal quantiles.

    Parameters
    ----------
    fit :
        With its logs; one row of panels per run.

    Raises
    ------
    InvalidArgument
        The fit was read from a file.
    """
    from matplotlib.figure import Figure
    from matplotlib.lines import Line2D

    search = search_of(fit, "plot_residuals")
    count = len(fit.runs)
    figure = Figure(figsize=(11.0, 1.2 + 2.6 * count), layout="constrained")
    grid = figure.subplots(count, 3, squeeze=False, width_ratios=(3.2, 1.0, 1.0))
    for row, one, curves in zip(grid, search.observed, fit.comparison, strict=True):
        residuals = {}
        for name in _LOOKS:
            log, model = curves[f"{name}_log"], curves[f"{name}_model"]
            if log is not None and model is not None:
                residuals[name] = model - log
        _over_time(row[0], one, residuals)
        _alike(row[1], one, residuals)
        _quantiles(row[2], residuals)
        for axes in row:
            plain_frame(axes)
    labels = ("time [min]", "lag [min]", "normal [std. dev.]")
    for axes, label in zip(grid[-1], labels, strict=True):
        axes.set_xlabel(label, fontsize=SMALL + 0.5)
    handles = [
        Line2D([], [], color=c, ls=ls, lw=w, marker=m, ms=4, mfc="none" if n == "floor" else c)
        for n, (c, ls, w, m) in _LOOKS.items()
    ]
    figure.legend(handles, list(_LOOKS), loc="outside upper right", ncols=2, fontsize=SMALL)
    figure.suptitle(f"Fit of {fit.kettle.name}: what is left over", fontsize=12)
    note = (
        "Shaded and numbered: phases. Dotted: pours. Hatched: where 95 % of the autocorrelations "
        "of independent residuals lie. Residuals that scatter normally follow the line."
    )
    figure.supxlabel(textwrap.fill(note, 130), fontsize=SMALL - 0.5, color="#555555")
    return figure
