"""Marks that several plots share: labels at line ends, heads of phases, lanes of duty."""

from __future__ import annotations

import textwrap
from collections.abc import Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING

import numpy as np

if TYPE_CHECKING:
    from matplotlib.axes import Axes
    from matplotlib.lines import Line2D

INK = "#1b1b1b"
GREY = "#8a8a8a"
PAPER = "#f1efe9"
SMALL = 8.5  #: size of labels [pt]

_HEAD_CHARACTERS = 135  # of size SMALL that fit side by side above the axes of a full-width plot
_HEAD_LEAST = 7  # a phase with room for fewer characters shows its number only

_SAMPLE = (1.02, 1.06)  # from where to where a sample of a line is drawn, in widths of the axes
_LABEL_HEIGHT = 15.0  # from label to label [pt]
_LAID_OUT = 0.85  # height of axes once titles have their room, as a share of that before


@dataclass(frozen=True)
class Stretch:
    """A phase on the time axis [min], with its name and what it heats to."""

    number: int
    name: str
    start: float
    end: float
    goal: str = ""


def spread_heights(heights: Sequence[float], gap: float, top: float) -> list[float]:
    """Heights of labels: as given, but at least `gap` apart and none above `top`."""
    order = np.argsort(heights)
    placed = np.array(heights, dtype=float)[order]
    middle = float(placed.mean()) if placed.size else 0.0
    for i in range(1, placed.size):
        placed[i] = max(placed[i], placed[i - 1] + gap)
    if placed.size:
        placed -= max(0.0, 0.5 * (placed[0] + placed[-1]) - middle)
        placed -= max(0.0, placed[-1] - top)
    result = np.empty_like(placed)
    result[order] = placed
    return [float(height) for height in result]


def label_line_ends(axes: Axes, lines: Sequence[Line2D]) -> None:
    """Name and a sample of each line at the right of the axes, tied to where the line ends."""
    from matplotlib.lines import Line2D

    bottom, top = axes.get_ylim()
    inches = float(axes.get_window_extent().height) / axes.figure.dpi
    gap = _LABEL_HEIGHT / (72.0 * _LAID_OUT * inches) * (top - bottom)
    ends = [np.asarray(line.get_xydata())[-1] for line in lines]
    heights = spread_heights([float(end[1]) for end in ends], gap, top - 0.5 * gap)
    for line, end, placed in zip(lines, ends, heights, strict=True):
        at = (placed - bottom) / (top - bottom)
        axes.annotate(
            "",
            xy=(float(end[0]), float(end[1])),
            xytext=(_SAMPLE[0], at),
            textcoords="axes fraction",
            arrowprops={"arrowstyle": "-", "color": GREY, "lw": 0.5, "shrinkA": 0, "shrinkB": 0},
        )
        sample = Line2D(_SAMPLE, (at, at))
        sample.update_from(line)  # the only public way to copy a pattern of dashes
        sample.set(transform=axes.transAxes, clip_on=False, label="_sample")
        axes.add_artist(sample)
        place = (_SAMPLE[1] + 0.01, at)
        text = str(line.get_label())
        axes.text(*place, text, transform=axes.transAxes, va="center", fontsize=SMALL, color=INK)


def shade_phases(axes: Axes, stretches: Sequence[Stretch]) -> None:
    """Every second phase on a darker ground, with a line where one begins."""
    for stretch in stretches:
        if stretch.number % 2:
            axes.axvspan(stretch.start, stretch.end, color=PAPER, zorder=0, lw=0)
        axes.axvline(stretch.start, color=GREY, lw=0.6, zorder=1)


def head_phases(axes: Axes, stretches: Sequence[Stretch]) -> list[str]:
    """Number, name and goal of each phase above the axes.

    Returns
    -------
    list
        Names of the phases too narrow for more than their number, for a line below the plot.
    """
    left, right = axes.get_xlim()
    narrow = []
    for stretch in stretches:
        room = int((stretch.end - stretch.start) / (right - left) * _HEAD_CHARACTERS)
        name = f"{stretch.number} {stretch.name}"
        text = str(stretch.number)
        if room < _HEAD_LEAST:
            narrow.append(" ".join(part for part in (name, stretch.goal) if part))
        else:
            text = "\n".join([*textwrap.wrap(name, room), *textwrap.wrap(stretch.goal, room)])
        axes.annotate(
            text,
            xy=(0.5 * (stretch.start + stretch.end), 1.0),
            xycoords=("data", "axes fraction"),
            xytext=(0, 4),
            textcoords="offset points",
            ha="center",
            va="bottom",
            fontsize=SMALL,
            color=INK,
        )
    return narrow


def duty_lanes(axes: Axes, minutes: Sequence[float], lanes: Sequence[tuple[str, object]]) -> None:
    """Shares from 0 to 1 over time, one lane below the other, each named at its left."""
    count = len(lanes)
    for i, (_, share) in enumerate(lanes):
        base = 1.25 * (count - 1 - i)
        values = np.asarray(share, dtype=float)
        axes.fill_between(
            minutes, base, base + values, step="post", color="#5b5b5b", lw=0, zorder=2
        )
        axes.axhline(base, color=GREY, lw=0.6, zorder=1)
    axes.set_yticks([1.25 * (count - 1 - i) + 0.5 for i in range(count)], [n for n, _ in lanes])
    axes.tick_params(axis="y", length=0, labelsize=SMALL)
    axes.set_ylim(-0.15, 1.25 * count - 0.1)


def plain_frame(axes: Axes) -> None:
    """Axes without the box at top and right."""
    axes.spines[["top", "right"]].set_visible(False)
    axes.tick_params(labelsize=SMALL)
