"""From standard deviations of what a forecast rests on to drawn batches.

Every input has a stream of random numbers of its own, keyed by what it is: the same seed and day
give the pour of the onions in phase 2 the same lateness in every recipe that has such a pour. Two
forecasts then share what they have in common, and it cancels in their difference.

What the model leaves out of a batch it leaves out of a like one too, and less so of an unlike
one. Its error is therefore a random function of the mass poured so far: normal with the standard
deviation of `Scatter`, and between masses m and n correlated by exp(-(ln(m/n) / L)^2 / 2). One
member of it is z1 cos(k x) + z2 sin(k x) with x = ln(m) / L and three standard normal numbers
(random Fourier features: Rahimi & Recht, Advances in Neural Information Processing Systems 20,
2007).
"""

from __future__ import annotations

import math
import zlib
from collections import Counter
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from statistics import NormalDist

import numpy as np
from numpy.typing import NDArray

from . import _core
from .fit_problem import FitOptions
from .scatter import Scatter

Vector = NDArray[np.float64]

_READINGS = {
    _core.Regulated.none: {},
    _core.Regulated.floor: {"floor_reading": 1.0},
    _core.Regulated.probe: {"probe_reading": 1.0},
    _core.Regulated.core: {"probe_reading": 1.0},
    _core.Regulated.difference: {"floor_reading": 1.0, "probe_reading": -1.0},
}
_ENDS_ON_SIGNAL = (_core.EndKind.above, _core.EndKind.below)
_BESIDE_FREEZING = 1e-3  # [K]
# L above: a batch a tenth larger is another batch. Common practice, no source.
_ALIKE = 0.1
# Days that the lateness of hands is known from: other hands on another day are slower or faster
# together, so that the lateness of a batch has Student's distribution. Common practice, no source.
DAYS_OF_HANDS = 5.0
# Name of the error of the highest reading of a phase, beside that of the set point.
HIGHEST = "highest"


@dataclass(frozen=True)
class Input:
    """One number that a batch may differ in.

    Attributes
    ----------
    kind :
        Name of a member of `Scatter`.
    phase :
        Number of the phase, from 1; 0 for what is not of one phase.
    name :
        Of the addition, or HIGHEST for the error of the highest reading; else empty.
    occurrence :
        Which of the additions of that name in the phase, from 1.
    """

    kind: str
    phase: int = 0
    name: str = ""
    occurrence: int = 1

    def stream(self, seed: int, day: int) -> np.random.Generator:
        """Random numbers of this input alone."""
        words = (zlib.crc32(word.encode()) for word in (self.kind, self.name))
        key = (*words, self.phase, self.occurrence, day)
        return np.random.default_rng(np.random.SeedSequence(seed, spawn_key=key))


@dataclass(frozen=True, eq=False)
class Plan:
    """What every member of an ensemble is changed from.

    Attributes
    ----------
    kettle, recipe :
        As planned.
    start :
        Temperatures at the start; None: those of the room.
    options :
        Accuracy of the members.
    centre :
        Coefficients of the forecast.
    drawn :
        Coefficients of each member; empty: the centre for all.
    count, seed :
        Of the members.
    day :
        Plans of one day share the draws of what they have in common, plans of different days
        share coefficients only.
    """

    kettle: _core.Kettle
    recipe: _core.Recipe
    start: _core.Start | None
    options: _core.Options
    centre: _core.Coefficients
    drawn: tuple[_core.Coefficients, ...]
    count: int
    seed: int
    day: int = 0


def room_start(kettle: _core.Kettle) -> _core.Start:
    """A kettle as warm as its room [K]."""
    room = kettle.surroundings.temperature
    return _core.Start(floor=room, wall=room)


def prior_draws(
    centre: _core.Coefficients, count: int, seed: int
) -> tuple[_core.Coefficients, ...]:
    """Coefficients drawn from the spreads of their cards around `centre`."""
    names = [card.name for card in _core.coefficient_cards()]
    middle = np.array(_core.to_scaled(centre, names))
    points = middle + np.random.default_rng(seed).standard_normal((count, len(names)))
    return tuple(_core.from_scaled(centre, names, point=point) for point in points)


def addition_occurrences(phase: _core.Phase) -> Iterator[tuple[_core.Addition, int]]:
    """Additions of a phase, each with which of that name it is."""
    seen: Counter[str] = Counter()
    for one in phase.additions:
        seen[one.name] += 1
        yield one, seen[one.name]


def inputs_of(recipe: _core.Recipe) -> list[Input]:
    """Everything that batches of a recipe may differ in."""
    found = [Input("room")]
    for number, phase in enumerate(recipe.phases, start=1):
        signals = [phase.regulated]
        signals += [rule.signal for rule in phase.ends if rule.kind in _ENDS_ON_SIGNAL]
        kinds = {kind: None for signal in signals for kind in _READINGS[signal]}
        found += [Input(kind, number, which) for kind in kinds for which in ("", HIGHEST)]
        for one, occurrence in addition_occurrences(phase):
            for kind in ("hand_delay", "ingredient_temperature", "mass"):
                found.append(Input(kind, number, one.name, occurrence))
    return found


def poured_so_far(recipe: _core.Recipe) -> list[float]:
    """Mass poured until the end of each phase [kg]."""
    masses = [sum(one.mass for one in phase.additions) for phase in recipe.phases]
    return [sum(masses[: i + 1]) for i in range(len(masses))]


def _size_of_errors(plan: Plan, residuals: float) -> Vector:
    """Factor on model errors, known from few residuals; the same on any day."""
    if math.isinf(residuals):
        return np.ones(plan.count)
    square = Input("residuals").stream(plan.seed, 0).chisquare(residuals, plan.count)
    return np.asarray(np.sqrt(residuals / square))


def draws_of(plan: Plan, scatter: Scatter) -> dict[Input, Vector]:
    """Change of each input, shape (count,); longer draws begin with the shorter ones."""
    poured = poured_so_far(plan.recipe)
    pace = Input("pace").stream(plan.seed, plan.day).chisquare(DAYS_OF_HANDS, plan.count)
    slower = np.sqrt(DAYS_OF_HANDS / pace)
    larger = _size_of_errors(plan, scatter.residuals)
    found = {}
    for one in inputs_of(plan.recipe):
        normal = one.stream(plan.seed, plan.day).standard_normal((plan.count, 3)).T
        if one.kind in ("floor_reading", "probe_reading"):
            angle = normal[0] * np.log(max(poured[one.phase - 1], 1.0)) / _ALIKE
            normal[0] = normal[1] * np.cos(angle) + normal[2] * np.sin(angle)
        found[one] = getattr(scatter, one.kind) * normal[0]
        if one.kind == "hand_delay":
            found[one] = found[one] * slower
        elif one.kind in ("floor_reading", "probe_reading"):
            found[one] = found[one] * larger
    return found


def _poured(one: _core.Addition, shifts: Mapping[str, float], latest: float) -> _core.Addition:
    """An addition later, warmer and heavier than planned; a pour is over when its phase is."""
    late = min(one.delay + abs(shifts["hand_delay"]), latest - one.pour_time)
    temperature = one.temperature + shifts["ingredient_temperature"]
    freezing = one.food.freezing_point
    if one.temperature >= freezing:
        temperature = max(temperature, min(one.temperature, freezing + _BESIDE_FREEZING))
    else:
        temperature = min(temperature, max(one.temperature, freezing - _BESIDE_FREEZING))
    return one.replace(
        delay=max(one.delay, late),
        temperature=temperature,
        mass=one.mass * float(np.exp(shifts["mass"])),
    )


def _latest(phase: _core.Phase) -> float:
    """When the phase is over at the latest, since its start [s]."""
    elapsed = [rule.value for rule in phase.ends if rule.kind is _core.EndKind.elapsed]
    return min([*elapsed, phase.time_limit])


def misread_signs(signal: _core.Regulated) -> Mapping[str, float]:
    """How errors of floor and probe reading enter what is regulated [-]."""
    return _READINGS[signal]


def shared_model_error(poured: float, other: float) -> float:
    """Correlation of the model error at two masses poured so far [kg]; see the module."""
    distance = math.log(max(poured, 1.0) / max(other, 1.0)) / _ALIKE
    return math.exp(-0.5 * distance**2)


def _misread(signal: _core.Regulated, errors: Mapping[str, float]) -> float:
    return sum(sign * errors[kind] for kind, sign in _READINGS[signal].items())


def _changed_phase(phase: _core.Phase, number: int, shifts: Mapping[Input, float]) -> _core.Phase:
    errors = {
        kind: shifts.get(Input(kind, number), 0.0) for kind in ("floor_reading", "probe_reading")
    }
    latest = _latest(phase)
    additions = []
    for one, occurrence in addition_occurrences(phase):
        kinds = ("hand_delay", "ingredient_temperature", "mass")
        own = {kind: shifts[Input(kind, number, one.name, occurrence)] for kind in kinds}
        additions.append(_poured(one, own, latest))
    ends = [
        rule.replace(value=rule.value + _misread(rule.signal, errors))
        if rule.kind in _ENDS_ON_SIGNAL
        else rule
        for rule in phase.ends
    ]
    return phase.replace(
        additions=additions,
        ends=ends,
        set_point=phase.set_point + _misread(phase.regulated, errors),
    )


def _task(
    plan: Plan, coefficients: _core.Coefficients, shifts: Mapping[Input, float]
) -> _core.ForecastTask:
    room = plan.kettle.surroundings
    warmer = room.replace(temperature=room.temperature + shifts[Input("room")])
    kettle = plan.kettle.replace(surroundings=warmer)
    phases = [
        _changed_phase(phase, number, shifts)
        for number, phase in enumerate(plan.recipe.phases, start=1)
    ]
    return _core.ForecastTask(
        kettle=kettle,
        coefficients=coefficients,
        recipe=plan.recipe.replace(phases=phases),
        start=plan.start or room_start(kettle),
    )


def tasks_of(
    plan: Plan, draws: Mapping[Input, Vector], *, coefficients: bool = True
) -> list[_core.ForecastTask]:
    """One task per member: coefficients, recipe, room and start as drawn.

    Parameters
    ----------
    plan :
        What the members are changed from.
    draws :
        Changes of the inputs, see `draws_of`.
    coefficients :
        Whether coefficients are drawn; otherwise all members have those of the forecast.
    """
    chosen = plan.drawn if coefficients and plan.drawn else (plan.centre,) * plan.count
    return [
        _task(plan, chosen[i], {one: float(values[i]) for one, values in draws.items()})
        for i in range(plan.count)
    ]


def reading_errors(plan: Plan, draws: Mapping[Input, Vector], which: str = "") -> Vector:
    """Error of what each phase is regulated on, shape (members, phases) [K].

    Parameters
    ----------
    plan, draws :
        As for `tasks_of`.
    which :
        Empty: when the set point is reached; HIGHEST: of the highest reading.
    """
    errors = np.zeros((plan.count, len(plan.recipe.phases)))
    for i, phase in enumerate(plan.recipe.phases):
        for kind, sign in _READINGS[phase.regulated].items():
            errors[:, i] += sign * draws[Input(kind, i + 1, which)]
    return errors


def highest_errors(
    plan: Plan, scatter: Scatter, draws: Mapping[Input, Vector], held: Vector
) -> Vector:
    """Error of the highest reading above the set point, shape (members, phases) [K].

    An error that is e when the set point is reached is ``e r + sqrt(1 - r^2) z`` a time t later,
    with r = exp(-t / T) and T the correlation time of residuals (first-order autoregression). The
    set point of the model holds e already, so that ``e (1 - r)`` and the rest are left. For z
    stands the largest of 1 + t / T independent errors, ``s F^-1(F(z)^(1/n))`` with the normal
    distribution F.

    Parameters
    ----------
    plan, scatter, draws :
        As for `draws_of` and `tasks_of`.
    held :
        From the set point reached to the end of the phase, shape (members, phases) [s].
    """
    normal, time = NormalDist(), FitOptions().correlation_time
    fresh = reading_errors(plan, draws, HIGHEST)
    for i, phase in enumerate(plan.recipe.phases):
        size = math.hypot(*(getattr(scatter, kind) for kind in _READINGS[phase.regulated]))
        for j in range(plan.count if size > 0.0 else 0):
            below = normal.cdf(fresh[j, i] / size) ** (1.0 / (1.0 + held[j, i] / time))
            fresh[j, i] = size * normal.inv_cdf(min(max(below, 1e-12), 1.0 - 1e-12))
    alike = np.exp(-held / time)
    first = reading_errors(plan, draws)
    return np.asarray(first * (1.0 - alike) + np.sqrt(1.0 - alike**2) * fresh)
