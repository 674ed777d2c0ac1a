"""The report of a fit as text."""

from __future__ import annotations

from .fit_result import Fit

# Below this share of its prior spread a coefficient counts as not learned from the runs.
_HARDLY_LEARNED = 0.1
_HEAT = {"inferred": "inferred", "closed_loop": "in closed loop", "none": "none"}


def _headline(fit: Fit) -> list[str]:
    state = "converged" if fit.success else "did NOT converge"
    runs = "1 run" if len(fit.runs) == 1 else f"{len(fit.runs)} runs"
    return [
        f"Fit of kettle {fit.kettle.name!r} to {runs}: {state} after {fit.nfev} "
        f"evaluations ({fit.message})",
        f"  {fit.ndata} readings, worth about {fit.neffective:.0f} independent ones; "
        f"{fit.nvarys} coefficients; reduced chi-square {fit.redchi:.2f}",
        f"  residuals: floor {fit.errors.floor_error:.2f} K, alike for "
        f"{fit.errors.floor_time:.0f} s; probe {fit.errors.probe_error:.2f} K, alike for "
        f"{fit.errors.probe_time:.0f} s",
    ]


def _runs(fit: Fit) -> list[str]:
    lines = ["Runs (RMS of model less log):"]
    for run in fit.runs:
        floor = "   -  " if run.floor_rms is None else f"{run.floor_rms:.2f} K"
        heat = "" if run.heat_source == "logged" else f"   heat {_HEAT[run.heat_source]}"
        lines.append(
            f"  {run.name:<24} floor {floor}   probe {run.probe_rms:.2f} K"
            f"   probe autocorrelation {run.probe_autocorrelation:.2f}{heat}"
        )
    if any(run.heat_source == "closed_loop" for run in fit.runs):
        lines.append(
            "  Closed loop: the controller of the kettle was taken as it is on its plate; a dead "
            "band that differs from it moves the coefficients."
        )
    return lines


def _coefficients(fit: Fit) -> list[str]:
    lines = ["Coefficients (value +/- standard error):"]
    for one in fit.params.values():
        notes = [f"started at {one.init_value:.4g}", f"learned {fit.learned(one.label):.0%}"]
        if one.at_bound:
            notes.append(f"AT BOUND [{one.min:g}, {one.max:g}]")
        unit = "" if one.unit == "-" else f" {one.unit}"
        value = f"{one.value:.4g} +/- {one.stderr:.2g}{unit}"
        lines.append(f"  {one.label:<26} {value:<34} ({', '.join(notes)})")
    lines += [f"  {name:<26} {value:.4g} (given)" for name, value in fit.fixed.items()]
    return lines


def _doubts(fit: Fit) -> list[str]:
    lines = []
    silent = [
        name
        for name, one in fit.params.items()
        if fit.learned(name) < _HARDLY_LEARNED and abs(fit.moved(name)) < 1.0
    ]
    if silent:
        lines.append(
            f"These runs say next to nothing about {', '.join(silent)}: the values shown are "
            "little more than the handbook's."
        )
    for first, second, value in fit.strong_pairs()[:5]:
        kind = "only their product or ratio" if value < 0 else "only how they move together"
        lines.append(
            f"{first} and {second} can hardly be told apart (correlation {value:+.2f}): "
            f"{kind} is known well."
        )
    return lines


def fit_report(fit: Fit) -> str:
    """Text with quality per run, coefficients, and what the runs could not tell."""
    parts = [_headline(fit), _runs(fit), _coefficients(fit), _doubts(fit)]
    return "\n".join(line for part in parts for line in part)
