"""The report of a fit as text, read from the top: is it good, what does it know, what to do."""

from __future__ import annotations

import textwrap
from collections.abc import Iterable, Sequence

import numpy as np

from .clock_text import clock_text
from .doubts import Doubt, doubts
from .fit_result import Fit, Param, RunQuality
from .known_combinations import Inseparable, determined_directions, inseparable
from .leave_one_out import HeldOut, LeaveOneOut

# Below this share of its prior spread a coefficient counts as not learned from the runs.
_HARDLY_LEARNED = 0.1
_HEAT = {"inferred": "inferred", "closed_loop": "in closed loop", "none": "none"}
# A run left out whose residuals are this many times larger than fitted ones tells something new.
_NEWS = 2.0
# A coefficient this many prior spreads away from the handbook's value stands in for something else.
_FAR = 3.0
_WIDTH = 98
# What a log must hold to tell coefficients whose names begin so; common practice, no source.
_TOLD_BY = {
    "jacket.": "a run heated by the jacket alone",
    "wall.loss": "a log that goes on for half an hour after all heat is off",
    "floor.loss": "a log that goes on for half an hour after all heat is off",
    "wall.film_factor": "a run heated by the jacket alone",
    "liquid.": "a run with stretches without stirring",
    "elements.": "a log of every second of the first minutes of heating",
    "floor.": "a water run from cold with the floor at full power",
    "floor_sensor.": "a run that holds a temperature for some minutes after full power",
    "evaporation.lid": "the same simmer with the lid on and with it off",
    "evaporation.": "a log of ten minutes at 90 degC without lid",
    "piece.": "a run with pieces poured into hot liquid",
    "juice.": "a run with pieces poured into hot liquid",
    "solids.": "a run with pieces poured into hot liquid",
    "probe.height": "a run with too little product to cover the probe",
    "probe.": "a log that goes on after the set point was reached",
}


def _listed(items: Iterable[str], mark: str = "- ") -> list[str]:
    """Items as paragraphs with a mark."""
    return [
        line
        for item in items
        for line in textwrap.wrap(
            item, _WIDTH, initial_indent=f"  {mark}", subsequent_indent="    "
        )
    ]


def _headline(fit: Fit) -> list[str]:
    state = "converged" if fit.success else "did NOT converge"
    runs = "1 run" if len(fit.runs) == 1 else f"{len(fit.runs)} runs"
    return [
        f"Fit of kettle {fit.kettle.name!r} to {runs}: {state} after {fit.nfev} "
        f"evaluations ({fit.message})",
        f"  {fit.ndata} readings, worth about {fit.neffective:.0f} independent ones; "
        f"{fit.nvarys} coefficients, of which the runs decide {determined_directions(fit)} "
        f"combinations; reduced chi-square {fit.redchi:.2f}",
    ]


def _largest(fit: Fit, index: int, sensor: str) -> str:
    """Largest residual of a sensor and when it was; empty for a fit without its readings."""
    if not fit.comparison:
        return ""
    curves = fit.comparison[index]
    log, model, time = curves[f"{sensor}_log"], curves[f"{sensor}_model"], curves["time"]
    if log is None or model is None or time is None:
        return ""
    far = int(np.argmax(np.abs(model - log)))
    return f", largest {model[far] - log[far]:+.1f} K at {clock_text(float(time[far]))}"


def _sensor(name: str, rms: float | None, largest: str, unseen: float | None) -> str:
    if rms is None:
        return f"    {name} not logged"
    left_out = "" if unseen is None else f"; left out of the fit {unseen:.2f} K"
    return f"    {name} {rms:.2f} K{largest}{left_out}"


def _run(fit: Fit, index: int, run: RunQuality, unseen: HeldOut | None) -> list[str]:
    heat = "" if run.heat_source == "logged" else f" (heat {_HEAT[run.heat_source]})"
    floor, probe = (None, None) if unseen is None else (unseen.floor_rms, unseen.probe_rms)
    return [
        f"  {run.name}{heat}",
        _sensor("floor", run.floor_rms, _largest(fit, index, "floor"), floor),
        _sensor("probe", run.probe_rms, _largest(fit, index, "probe"), probe),
    ]


def _runs(fit: Fit, held_out: LeaveOneOut | None) -> list[str]:
    lines = ["How well each run is followed (RMS of model less log):"]
    for index, run in enumerate(fit.runs):
        lines += _run(fit, index, run, held_out.runs[index] if held_out else None)
    if any(run.heat_source == "closed_loop" for run in fit.runs):
        lines.append(
            "  Closed loop: the controller of the kettle was taken as it is on its plate; a dead "
            "band that differs from it moves the coefficients."
        )
    return lines


def _coefficient(fit: Fit, one: Param) -> str:
    notes = [f"before {one.init_value:.4g}", f"learned {fit.learned(one.label):.0%}"]
    if one.at_bound:
        notes.append(f"AT BOUND [{one.min:g}, {one.max:g}]")
    unit = "" if one.unit == "-" else f" {one.unit}"
    value = f"{one.value:.4g} +/- {one.stderr:.2g}{unit}"
    return f"  {one.label:<26} {value:<34} ({', '.join(notes)})"


def _silent(fit: Fit) -> list[str]:
    """Labels of coefficients that stayed as they were and as uncertain."""
    return [
        label
        for label, one in fit.params.items()
        if fit.learned(label) < _HARDLY_LEARNED and abs(fit.moved(label)) < 1.0
        if not one.at_bound
    ]


def _learned(fit: Fit, silent: Sequence[str]) -> list[str]:
    lines = ["What was learned (value +/- standard error):"]
    lines += [_coefficient(fit, one) for label, one in fit.params.items() if label not in silent]
    return lines + [f"  {name:<26} {value:.4g} (given)" for name, value in fit.fixed.items()]


def _untold(fit: Fit, silent: Sequence[str], together: Sequence[Inseparable]) -> list[str]:
    told = [str(one) for one in together]
    if silent:
        told.append(
            f"These runs say next to nothing about {', '.join(silent)}: there the handbook's "
            "values stand."
        )
    bound = [one.label for one in fit.params.values() if one.at_bound]
    if bound:
        told.append(
            f"{', '.join(bound)}: the runs pull beyond what is allowed, so no error is known."
        )
    return [
        "What these runs cannot tell:",
        *_listed(told or ["Nothing: each coefficient is known by itself."]),
    ]


def _far(fit: Fit) -> list[str]:
    return [
        f"{label} is {abs(fit.moved(label)):.1f} prior spreads away from the handbook's "
        f"{one.init_value:.3g}: it may stand in for something that went otherwise than logged."
        for label, one in fit.params.items()
        if abs(fit.moved(label)) > _FAR
    ]


def _wrong(fit: Fit, found: Sequence[Doubt] | None) -> list[str]:
    told = _far(fit)
    if found is None:
        told.append("The runs were not asked: the fit was read from a file, without its logs.")
    elif found:
        told = [*(str(one) for one in found), *told]
    elif not told:
        told = [
            "Nothing: no single change of a run, and no coefficient that was not fitted, would "
            "explain what is left over."
        ]
    return ["What looks wrong:", *_listed(told)]


def _logs_to_make(names: Iterable[str]) -> list[str]:
    """Which log would tell of some coefficients, each log once."""
    wanted: dict[str, list[str]] = {}
    for name in names:
        start = max((key for key in _TOLD_BY if name.startswith(key)), key=len, default="")
        if start:
            wanted.setdefault(_TOLD_BY[start], []).append(name)
    return [f"To learn {', '.join(names)}: {log}." for log, names in wanted.items()]


def _advice(
    fit: Fit, found: Sequence[Doubt] | None, untold: Sequence[str], held_out: LeaveOneOut | None
) -> list[str]:
    told = []
    if not fit.success:
        told.append("Allow more evaluations (FitOptions.max_evaluations) before using this fit.")
    for one in found or ():
        name = one.best.candidate.coefficient
        if name:
            told.append(f"Fit {name} too.")
        else:
            told.append(f"Check the log of {one.best.run}, correct it and fit again.")
    told += [
        f"{one.label} is at its bound: check the type plate and the log, or give its value."
        for one in fit.params.values()
        if one.at_bound
    ]
    news = [one for one in held_out.runs if one.probe_ratio > _NEWS] if held_out else []
    if news:
        shown = ", ".join(f"{one.name} ({one.probe_ratio:.1f} times)" for one in news)
        told.append(
            f"Followed much worse by a fit without it: {shown}. Such a run holds what the others "
            "do not; log another of its kind before trusting forecasts of that kind."
        )
    told += _logs_to_make(untold)
    return ["What to do next:", *_listed(told or ["Use the fit."])]


def fit_report(fit: Fit, held_out: LeaveOneOut | None = None) -> str:
    """Text with quality per run, what was learned, what was not, what looks wrong, what to do.

    Parameters
    ----------
    fit :
        One read from a file is reported without what needs its logs.
    held_out :
        From `Fit.leave_one_out`, to be told beside how well each run was fitted.
    """
    silent = _silent(fit)
    together = inseparable(fit)
    found = doubts(fit) if fit.search else None
    params = fit.params
    untold = dict.fromkeys(params[label].name for label in silent)
    parts = [
        _headline(fit),
        _runs(fit, held_out),
        _learned(fit, silent),
        _untold(fit, silent, together),
        _wrong(fit, found),
        _advice(fit, found, list(untold), held_out),
    ]
    return "\n".join(line for part in parts for line in part)
