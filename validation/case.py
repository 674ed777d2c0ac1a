"""One validated number with its limit, and tables of many."""

from __future__ import annotations

import html
from collections.abc import Sequence
from dataclasses import dataclass, field
from pathlib import Path

import numpy as np
from numpy.typing import NDArray

Vector = NDArray[np.float64]

SHARED = Path(__file__).resolve().parents[2] / "shared"
COLUMNS = ("case", "source", "expected", "got", "error", "limit", "verdict")


@dataclass(frozen=True)
class Case:
    """What was expected, what came out, and how far apart they may lie.

    Attributes
    ----------
    name, source :
        What is checked; where the expected value comes from.
    expected, got, error, limit :
        As shown, with units.
    holds :
        Whether the error is within the limit; None if the number is shown without a limit.
    """

    name: str
    source: str
    expected: str
    got: str
    error: str
    limit: str
    holds: bool | None

    @property
    def verdict(self) -> str:
        """Of the table."""
        return {True: "within", False: "BROKEN", None: "shown"}[self.holds]

    def row(self) -> tuple[str, ...]:
        """Cells in the order of `COLUMNS`."""
        return (
            self.name,
            self.source,
            self.expected,
            self.got,
            self.error,
            self.limit,
            self.verdict,
        )


def _text(value: float, unit: str) -> str:
    return f"{value:.5g} {unit}".strip()


def relative(
    name: str, source: str, pair: tuple[float, float], limit: float | None, unit: str = ""
) -> Case:
    """A case whose error is a share of the expected value; `pair` is (expected, got)."""
    expected, got = pair
    error = got / expected - 1.0
    holds = None if limit is None else abs(error) <= limit
    told = "none" if limit is None else f"{100 * limit:.3g} %"
    return Case(
        name, source, _text(expected, unit), _text(got, unit), f"{100 * error:+.2g} %", told, holds
    )


def absolute(
    name: str, source: str, pair: tuple[float, float], limit: float | None, unit: str = ""
) -> Case:
    """A case whose error is a difference; `pair` is (expected, got)."""
    expected, got = pair
    holds = None if limit is None else abs(got - expected) <= limit
    told = "none" if limit is None else _text(limit, unit)
    return Case(
        name,
        source,
        _text(expected, unit),
        _text(got, unit),
        f"{got - expected:+.3g} {unit}".strip(),
        told,
        holds,
    )


def at_most(name: str, source: str, got: float, limit: float | None, unit: str = "") -> Case:
    """A case that is itself an error, such as an RMS."""
    told = "none" if limit is None else f"<= {_text(limit, unit)}"
    holds = None if limit is None else abs(got) <= limit
    return Case(name, source, _text(0.0, unit), _text(got, unit), _text(got, unit), told, holds)


def at_least(name: str, source: str, got: float, limit: float, unit: str = "") -> Case:
    """A case that has to come out large, such as the error of a model that is wrong on purpose."""
    return Case(
        name,
        source,
        f"> {_text(limit, unit)}",
        _text(got, unit),
        "-",
        f">= {_text(limit, unit)}",
        got >= limit,
    )


@dataclass(frozen=True)
class Curve:
    """Model less log of one run over time, for a plot."""

    name: str
    minutes: Vector
    difference: Vector  #: [K]


@dataclass(frozen=True)
class Outcome:
    """All cases of one subject.

    Attributes
    ----------
    notes :
        What was assumed and fitted, one sentence each.
    skipped :
        Why nothing was run; empty if it was.
    """

    title: str
    cases: tuple[Case, ...] = ()
    notes: tuple[str, ...] = ()
    curves: tuple[Curve, ...] = ()
    skipped: str = ""
    broken: tuple[Case, ...] = field(init=False)

    def __post_init__(self) -> None:
        broken = tuple(case for case in self.cases if case.holds is False)
        object.__setattr__(self, "broken", broken)


def absent(title: str, folder: Path) -> Outcome:
    """An outcome that says that the folder with the logs is not there."""
    return Outcome(title, skipped=f"skipped: {folder.name} is not there (looked for {folder})")


def markdown(outcomes: Sequence[Outcome]) -> str:
    """Tables of all outcomes as Markdown."""
    lines = ["# Validation", "", summary(outcomes), ""]
    for one in outcomes:
        lines += [f"## {one.title}", ""]
        lines += [one.skipped, ""] if one.skipped else []
        lines += [f"- {note}" for note in one.notes] + [""]
        if one.cases:
            lines.append("| " + " | ".join(COLUMNS) + " |")
            lines.append("|" + "---|" * len(COLUMNS))
            for case in one.cases:
                cells = (cell.replace("|", "\\|") for cell in case.row())
                lines.append("| " + " | ".join(cells) + " |")
            lines.append("")
    return "\n".join(lines)


def web_page(outcomes: Sequence[Outcome]) -> str:
    """Tables of all outcomes as one HTML page."""
    parts = [
        "<!doctype html><meta charset='utf-8'><title>Validation</title>",
        "<style>body{font:15px sans-serif;margin:2em}td,th{padding:.2em .6em;"
        "border-bottom:1px solid #ccc;text-align:left}.BROKEN{background:#fcc}</style>",
        f"<h1>Validation</h1><p>{html.escape(summary(outcomes))}</p>",
    ]
    for one in outcomes:
        parts.append(f"<h2>{html.escape(one.title)}</h2>")
        parts += [f"<p>{html.escape(text)}</p>" for text in (one.skipped, *one.notes) if text]
        if not one.cases:
            continue
        parts.append("<table><tr>" + "".join(f"<th>{name}</th>" for name in COLUMNS) + "</tr>")
        for case in one.cases:
            cells = "".join(f"<td>{html.escape(cell)}</td>" for cell in case.row())
            parts.append(f"<tr class='{case.verdict}'>{cells}</tr>")
        parts.append("</table>")
    return "\n".join(parts) + "\n"


def summary(outcomes: Sequence[Outcome]) -> str:
    """Counts of all cases in one sentence."""
    cases = [case for one in outcomes for case in one.cases]
    held = sum(case.holds is True for case in cases)
    shown = sum(case.holds is None for case in cases)
    broken = sum(case.holds is False for case in cases)
    skipped = sum(bool(one.skipped) for one in outcomes)
    return (
        f"{held} cases within their limits, {broken} broken, {shown} shown without a limit, "
        f"{skipped} of {len(outcomes)} subjects skipped."
    )
