"""Changes that would explain residuals, in words."""

from __future__ import annotations

import math

from . import _core
from .clock_text import clock_text
from .doubt_candidates import COVERS, Candidate, Change
from .fit_problem import CARDS, Observed


def _spread_text(size: float, error: float) -> str:
    """A size without its sign, with its error to two digits and the size to as many."""
    digits = 0
    if error > 0.0:
        digits = max(0, 1 - math.floor(math.log10(error)))
    return f"{abs(size):.{digits}f} +/- {error:.{digits}f}"


def _number(value: float) -> str:
    return f"{value:.3g}"


def _of_pour(candidate: Candidate, one: Observed, size: float, error: float) -> str:
    timed = one.plan.pours[candidate.pour or 0]
    name, step = timed.addition.name, CARDS[candidate.card].spread
    if [other.addition.name for other in one.plan.pours].count(name) > 1:
        name = f"{name} (of {clock_text(timed.time)})"
    if candidate.change is Change.mass:
        factor = math.exp(size * step)
        more = "more" if size > 0.0 else "less"
        mass = timed.addition.mass
        text = _spread_text(mass * (factor - 1.0), mass * factor * step * error)
        return f"{text} kg {more} {name} than the {_number(mass)} kg written"
    text = _spread_text(size * step, error * step)
    if candidate.change is Change.temperature:
        warmer = "warmer" if size > 0.0 else "colder"
        stated = timed.addition.temperature - 273.15
        return f"{name} {text} K {warmer} than the {_number(stated)} degC written"
    later = "later" if size > 0.0 else "earlier"
    return f"{name} poured {text} s {later} than written"


def _of_heat(candidate: Candidate, size: float, error: float) -> str:
    step = CARDS[candidate.card].spread
    factor = math.exp(size * step)
    text = _spread_text(100.0 * (factor - 1.0), 100.0 * factor * step * error)
    where = "floor" if candidate.change is Change.floor_heat else "jacket"
    if size > 0.0:
        return f"{text} % more heat from the {where} than in the other runs (mains high)"
    return f"{text} % less heat from the {where} than logged (an element out, or mains low)"


def _of_day(candidate: Candidate, size: float, error: float) -> str:
    step = CARDS[candidate.card].spread
    text = _spread_text(size * step, error * step)
    if candidate.change is Change.room:
        return f"a room {text} K {'warmer' if size > 0.0 else 'colder'} than stated"
    sensor = "probe" if candidate.change is Change.probe else "floor sensor"
    return f"a {sensor} that read {text} K too {'high' if size > 0.0 else 'low'} in this run"


def _of_all(candidate: Candidate, size: float, error: float, start: _core.Coefficients) -> str:
    name = candidate.card
    card = CARDS[name]
    here = _core.to_scaled(start, [name])[0]
    value = _core.from_scaled(start, [name], point=[here + size])[name]
    spread = error * card.spread * (value if card.positive else 1.0)
    unit = "" if card.unit == "-" else f" {card.unit}"
    return (
        f"{name} at {value:.3g} +/- {spread:.1g}{unit} instead of {start[name]:.3g} "
        "(it was not fitted)"
    )


def change_text(
    candidate: Candidate,
    one: Observed | None,
    start: _core.Coefficients,
    *,
    size: float,
    error: float,
) -> str:
    """A change with its size, for example "6.2 +/- 1.1 kg more water than the 42 kg written".

    Parameters
    ----------
    candidate :
        The change.
    one :
        Its run as logged; None for a change of all runs.
    start :
        Coefficients that were used.
    size, error :
        In prior spreads [-].
    """
    if one is None:
        return _of_all(candidate, size, error, start)
    if candidate.pour is not None:
        return _of_pour(candidate, one, size, error)
    if candidate.change in COVERS:
        off = candidate.change is Change.lid_off
        return "a lid that was left off" if off else "a lid that lay on it all the time"
    if candidate.change in (Change.floor_heat, Change.jacket_heat):
        return _of_heat(candidate, size, error)
    return _of_day(candidate, size, error)
