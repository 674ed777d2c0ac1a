"""One validated number with its limit, and tables of many."""

from __future__ import annotations

import html
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field, replace
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
    group :
        Heading in the table, for subjects of many cases.
    known :
        Whether it is known to be out of its range, with what is missing said in the notes; such a
        case is no broken limit.
    """

    name: str
    source: str
    expected: str
    got: str
    error: str
    limit: str
    holds: bool | None
    group: str = ""
    known: bool = False

    @property
    def verdict(self) -> str:
        """Of the table."""
        out = "OUT, known" if self.known else "BROKEN"
        return {True: "within", False: out, None: "shown"}[self.holds]

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


def between(name: str, source: str, got: float, span: tuple[float, float], unit: str = "") -> Case:
    """A case that has to come out in a range, such as one of common practice."""
    low, high = span
    told = f"{low:.5g} to {_text(high, unit)}"
    return Case(name, source, told, _text(got, unit), "-", "in range", low <= got <= high)


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
    left_out :
        What could have been a case and is none, and why, one sentence each.
    gaps :
        Names of cases known to be out of their range, and what is missing.
    """

    title: str
    cases: tuple[Case, ...] = ()
    notes: tuple[str, ...] = ()
    curves: tuple[Curve, ...] = ()
    skipped: str = ""
    left_out: tuple[str, ...] = ()
    gaps: Mapping[str, str] = field(default_factory=dict)
    broken: tuple[Case, ...] = field(init=False)

    def __post_init__(self) -> None:
        cases = tuple(
            replace(case, known=case.holds is False and case.name in self.gaps)
            for case in self.cases
        )
        object.__setattr__(self, "cases", cases)
        broken = tuple(case for case in cases if case.holds is False and not case.known)
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
        lines += [f"- {note}" for note in (*one.notes, *one.left_out)] + [""]
        if one.cases:
            lines.append("| " + " | ".join(COLUMNS) + " |")
            lines.append("|" + "---|" * len(COLUMNS))
            for case in one.cases:
                cells = (cell.replace("|", "\\|") for cell in case.row())
                lines.append("| " + " | ".join(cells) + " |")
            lines.append("")
    return "\n".join(lines)


STYLE = """
body{font:15px sans-serif;margin:0 2em 3em;max-width:110em}
table{border-collapse:collapse;width:100%}
td,th{padding:.2em .6em;border-bottom:1px solid #ddd;text-align:left;vertical-align:top}
td:nth-child(n+3):nth-child(-n+6){white-space:nowrap;text-align:right}
thead th{position:sticky;top:0;background:#eee;border-bottom:2px solid #888}
th.group{background:#f6f6f6;padding-top:1em}
.BROKEN{background:#fcc}.shown{color:#666}
"""


def web_page(outcomes: Sequence[Outcome]) -> str:
    """Tables of all outcomes as one HTML page; broken limits stand first."""
    parts = [
        "<!doctype html><html lang='en'><head><meta charset='utf-8'><title>Validation</title>",
        f"<style>{STYLE}</style></head><body>",
        f"<h1>Validation</h1><p>{html.escape(summary(outcomes))}</p><ul>",
    ]
    for number, one in enumerate(outcomes):
        told = one.skipped or f"{len(one.cases)} cases, {len(one.broken)} broken"
        link = f"<a href='#subject{number}'>{html.escape(one.title)}</a>"
        parts.append(f"<li>{link}: {html.escape(told)}</li>")
    parts.append("</ul>")
    broken = [case for one in outcomes for case in one.broken]
    if broken:
        parts += ["<h2>Broken limits</h2>", *_table(broken)]
    for number, one in enumerate(outcomes):
        parts.append(f"<h2 id='subject{number}'>{html.escape(one.title)}</h2>")
        parts += [f"<p>{html.escape(text)}</p>" for text in (one.skipped, *one.notes) if text]
        if one.left_out:
            items = "".join(f"<li>{html.escape(text)}</li>" for text in one.left_out)
            told = f"{len(one.left_out)} left out, with the reasons"
            parts.append(f"<details><summary>{told}</summary><ul>{items}</ul></details>")
        parts += _table(one.cases)
    return "\n".join([*parts, "</body></html>"]) + "\n"


def _table(cases: Sequence[Case]) -> list[str]:
    """Rows of cases under their groups."""
    if not cases:
        return []
    heads = "".join(f"<th>{name}</th>" for name in COLUMNS)
    parts, group = [f"<table><thead><tr>{heads}</tr></thead><tbody>"], ""
    for case in cases:
        if case.group != group:
            group = case.group
            span = f"<th class='group' colspan='{len(COLUMNS)}'>{html.escape(group)}</th>"
            parts.append(f"<tr>{span}</tr>")
        cells = "".join(f"<td>{html.escape(cell)}</td>" for cell in case.row())
        parts.append(f"<tr class='{case.verdict}'>{cells}</tr>")
    return [*parts, "</tbody></table>"]


def summary(outcomes: Sequence[Outcome]) -> str:
    """Counts of all cases in one sentence."""
    cases = [case for one in outcomes for case in one.cases]
    held = sum(case.holds is True for case in cases)
    shown = sum(case.holds is None for case in cases)
    broken = sum(len(one.broken) for one in outcomes)
    known = sum(case.known for case in cases)
    skipped = sum(bool(one.skipped) for one in outcomes)
    return (
        f"{held} cases within their limits, {broken} broken, {known} known to be out, "
        f"{shown} shown without a limit, "
        f"{skipped} of {len(outcomes)} subjects skipped."
    )
