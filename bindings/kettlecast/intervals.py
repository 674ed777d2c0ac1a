"""Intervals of forecasts from the members of an ensemble."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from functools import cached_property

import numpy as np
from numpy.typing import NDArray

from . import _core
from .errors import UnknownName
from .file_model import nearest
from .propagation import Plan, draws_of, highest_errors, reading_errors, tasks_of
from .scatter import Scatter

Vector = NDArray[np.float64]

# Quantities of a phase, and how those of the phases make that of the run.
_WHOLE = {
    "duration": "sum",
    "evaporated": "sum",
    "energy": "sum",
    "overshoot": "highest",
    "overshoot_reading": "highest",
    "time_to_reach": None,
    "start": None,
}


@dataclass(frozen=True)
class Interval:
    """Where a quantity is expected to lie.

    Attributes
    ----------
    low, high :
        Ends, in SI units; infinite where the members do not say how far it goes.
    level :
        Share of cases that it is meant to hold [-].
    not_reached :
        Share of members that never reached the set point of the phase [-]; 0 for a whole run.
    failed :
        Share of members that could not be run [-].
    """

    low: float
    high: float
    level: float
    not_reached: float = 0.0
    failed: float = 0.0


def _at(ordered: Vector, place: float) -> float:
    """Value between two neighbours of an ordered list; infinite ones are not averaged."""
    place = round(min(max(place, 0.0), ordered.size - 1.0), 9)
    below, above = ordered[math.floor(place)], ordered[math.ceil(place)]
    if below == above or math.isinf(below):
        return float(below)
    share = place - math.floor(place)
    return float(below + share * (above - below)) if share > 0.0 else float(below)


def central_interval(values: Vector, level: float) -> tuple[float, float]:
    """Ends of the central interval of equally likely values.

    Quantile p of n values is at place p (n + 1), so that a further value lies below it with
    probability p however few there are (Weibull plotting position; Hyndman & Fan 1996, type 6).
    A value that is not known (NaN) counts as lowest for the low end and as highest for the high
    one: when too many are not known, the interval is open.

    Parameters
    ----------
    values :
        Shape (n,), n of 1 or more; infinite ones are allowed.
    level :
        Share of cases it is meant to hold [-].
    """
    tail = 0.5 * (1.0 - level)
    unknown = np.isnan(values)
    low = np.sort(np.where(unknown, -np.inf, values))
    high = np.sort(np.where(unknown, np.inf, values))
    place = tail * (values.size + 1.0) - 1.0
    return _at(low, place), _at(high, values.size - 1.0 - place)


def interval_of(
    quantity: str,
    values: Vector,
    missed: NDArray[np.bool_],
    failed: NDArray[np.bool_],
    *,
    level: float,
) -> Interval | None:
    """Interval of a quantity of members; None if none of them has a value.

    Parameters
    ----------
    quantity :
        An overshoot is that of the members that reach the set point.
    values :
        Of each member, NaN where not known, shape (members,).
    missed, failed :
        Members that never reached the set point, and that could not be run, shape (members,).
    level :
        Share of cases it is meant to hold [-].
    """
    kept = values[~missed] if quantity.startswith("overshoot") else values
    if np.isnan(kept).all():
        return None
    ends = central_interval(kept, level)
    return Interval(*ends, level, float(missed.mean()), float(failed.mean()))


@dataclass(frozen=True, eq=False)
class Ensemble:
    """Batches drawn around a forecast.

    Attributes
    ----------
    plan :
        What the members were changed from.
    scatter :
        What they differ in, beside coefficients.
    members :
        Phase reports of each; empty for a member that could not be run.
    failures :
        Why a member could not be run; empty for one that was.
    misread :
        By name of an overshoot, what it is more than the reports of the members say, shape
        (members, phases) [K]. The reports count from the shifted set point. Above the planned one
        the true value lies by the error of the reading more, the highest reading by what
        its error changed since.
    """

    plan: Plan
    scatter: Scatter
    members: tuple[tuple[_core.PhaseReport, ...], ...]
    failures: tuple[str, ...]
    misread: dict[str, Vector]

    @cached_property
    def failed(self) -> NDArray[np.bool_]:
        """Whether each member could not be run, shape (members,)."""
        return np.array([bool(why) for why in self.failures])

    def _column(self, phase: int, quantity: str) -> Vector:
        """Values of one phase, from 0; NaN where a member has none."""
        if (
            quantity == "time_to_reach"
            and self.plan.recipe.phases[phase].regulated is _core.Regulated.none
        ):
            return np.full(len(self.members), np.nan)
        found = np.array([_value(one, phase, quantity) for one in self.members])
        if quantity in self.misread:
            found = np.maximum(found + self.misread[quantity][:, phase], 0.0)
        return found

    def missed(self, phase: int | None) -> NDArray[np.bool_]:
        """Whether each member ran but never reached the set point of a phase, from 1.

        False for a phase without a set point, and for a whole run (None).
        """
        if phase is None or self.plan.recipe.phases[phase - 1].regulated is _core.Regulated.none:
            return np.zeros(len(self.members), dtype=bool)
        return np.array(
            [bool(one) and one[phase - 1].time_to_reach is None for one in self.members]
        )

    def values(self, quantity: str, phase: int | None = None) -> Vector:
        """A quantity of every member in SI units, shape (members,).

        NaN: the member could not be run, or has no such value. Infinite: a time that was cut off
        by a limit in time.

        Parameters
        ----------
        quantity :
            duration, time_to_reach, start, overshoot, overshoot_reading, evaporated or energy.
        phase :
            From 1; None: of the whole run, where overshoot is the highest of all phases.
        """
        whole = {name: how for name, how in _WHOLE.items() if phase is not None or how}
        if quantity not in whole:
            raise UnknownName(
                f'quantity "{quantity}" is not known{nearest(quantity, whole)}; allowed '
                f"{'of a phase' if phase is not None else 'of a run'}: {', '.join(whole)}"
            )
        if phase is not None:
            return self._column(phase - 1, quantity)
        columns = [self._column(i, quantity) for i in range(len(self.plan.recipe.phases))]
        if _WHOLE[quantity] == "sum":
            return np.asarray(np.sum(columns, axis=0))
        return np.asarray(np.fmax.reduce(columns))

    def interval(self, quantity: str, phase: int | None, level: float) -> Interval | None:
        """Interval of a quantity, see `values`; None if no member has such a value.

        An overshoot is that of the members which reach the set point.
        """
        missed = self.missed(phase)
        return interval_of(quantity, self.values(quantity, phase), missed, self.failed, level=level)

    def notes(self) -> tuple[str, ...]:
        """Sentences about members that could not be run."""
        lost = [why for why in self.failures if why]
        if not lost:
            return ()
        return (
            f"{len(lost)} of {len(self.members)} drawn batches could not be run, and the "
            f"intervals count them as either end. The first: {lost[0]}",
        )

    def holds(self) -> str:
        """What the intervals hold, as a list of words."""
        fitted = "the spread of the coefficients, " if self.plan.drawn else ""
        return f"{fitted}{self.scatter}"


def _value(member: tuple[_core.PhaseReport, ...], phase: int, quantity: str) -> float:
    """A quantity of one phase of one member; see `Ensemble.values`."""
    if not member:
        return math.nan
    report = member[phase]
    cut_off = [one.ended is _core.EndReason.timed_out for one in member]
    if (quantity == "duration" and cut_off[phase]) or (
        quantity == "start" and any(cut_off[:phase])
    ):
        return math.inf
    found = getattr(report, quantity)
    if found is None:
        return math.inf if quantity == "time_to_reach" else math.nan
    return float(found)


def _held(plan: Plan, ran: Sequence[_core.EnsembleMember]) -> Vector:
    """From the set point reached to the end of each phase, shape (members, phases) [s]; else 0."""
    held = np.zeros((len(ran), len(plan.recipe.phases)))
    for j, member in enumerate(ran):
        for i, phase in enumerate(member.phases):
            if phase.time_to_reach is not None:
                held[j, i] = phase.duration - phase.time_to_reach
    return held


def run_ensemble(plan: Plan, scatter: Scatter, *, coefficients: bool = True) -> Ensemble:
    """Draw and run the members of an ensemble.

    Parameters
    ----------
    plan :
        What the members are changed from.
    scatter :
        What they differ in, beside coefficients.
    coefficients :
        Whether coefficients are drawn too.
    """
    draws = draws_of(plan, scatter)
    ran = _core.simulate_many(
        tasks_of(plan, draws, coefficients=coefficients), options=plan.options
    )
    return Ensemble(
        plan,
        scatter,
        tuple(tuple(one.phases) for one in ran),
        tuple(one.failure for one in ran),
        {
            "overshoot": reading_errors(plan, draws),
            "overshoot_reading": highest_errors(plan, scatter, draws, _held(plan, ran)),
        },
    )
