"""What differs from batch to batch, and what a fit says about it."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass, fields
from typing import TYPE_CHECKING

from .errors import InvalidArgument

if TYPE_CHECKING:
    from .fit_result import Fit, RunQuality

# Residuals that model errors are known from at least. Half of those that a fit has left over count:
# those of floor and probe go astray together.
_LEAST_RESIDUALS = 4.0
# Pours that the usual lateness of hands counts for, beside the pours of the runs.
_USUAL_POURS = 2


@dataclass(frozen=True)
class Scatter:
    """Standard deviations of what differs from one batch to the next.

    The values that stand here are common practice, no source. Batches draw each addition, each
    reading of each phase and the room on their own; what is 0 is as planned.

    Attributes
    ----------
    hand_delay :
        Of the start of each pour after its plan [s]. Hands are late, hardly ever early: a pour
        starts later by the absolute value of a normal draw with this standard deviation (half
        normal), so this is the root mean square of the lateness. Hands of one batch are slower or
        faster together by a factor that is drawn too, because few days are known.
    ingredient_temperature :
        Of each addition [K], normal. What is chilled does not freeze by it, nor what is frozen
        thaw.
    mass :
        Of each addition relative to its plan [-], lognormal.
    room :
        Of the room, and of a kettle that starts as warm as the room [K], normal.
    floor_reading, probe_reading :
        What the model leaves out, as an error of the reading that a phase is regulated or ended
        by [K], normal, once per phase: with the error e the phase ends where the reading of the
        model comes to the set point plus e. The error of its highest reading wanders off from e
        with the correlation time of residuals (`FitOptions`).
    residuals :
        Number of independent residuals that model errors are known from, above 2 [-]. The fewer,
        the less sure their size is itself: a common factor is drawn that gives them Student's
        distribution. Infinite: the sizes are exact.
    """

    hand_delay: float = 10.0
    ingredient_temperature: float = 2.0
    mass: float = 0.01
    room: float = 2.0
    floor_reading: float = 1.0
    probe_reading: float = 0.4
    residuals: float = math.inf

    def __post_init__(self) -> None:
        for one in fields(self):
            value = getattr(self, one.name)
            if one.name == "residuals":
                if not value > 2.0:
                    raise InvalidArgument(f"Scatter: residuals must be above 2, got {value!r}")
            elif not (math.isfinite(value) and value >= 0.0):
                raise InvalidArgument(f"Scatter: {one.name} must be 0 or more, got {value!r}")

    def __str__(self) -> str:
        told = [
            f"hands {self.hand_delay:.2g} s late",
            f"ingredients {self.ingredient_temperature:.2g} K",
            f"masses {100.0 * self.mass:.2g} %",
            f"room {self.room:.2g} K",
            f"model error of the floor reading {self.floor_reading:.2g} K",
            f"of the probe reading {self.probe_reading:.2g} K",
        ]
        return ", ".join(told)


NOTHING = Scatter(0.0, 0.0, 0.0, 0.0, 0.0, 0.0)


def _rms(values: Sequence[float]) -> float:
    return math.sqrt(sum(value * value for value in values) / len(values))


def _reading_error(runs: Sequence[RunQuality], signal: str, usual: float, larger: float) -> float:
    """Slow part of the residuals, each run counted alike [K]; `usual` where none was logged."""
    slow = [getattr(run, f"{signal}_slow") for run in runs]
    known = [value for value in slow if value is not None]
    return larger * _rms(known) if known else usual


def _hands(runs: Sequence[RunQuality], usual: float) -> float:
    seen = [late for run in runs for late in run.lateness]
    return _rms([*seen, *[usual] * _USUAL_POURS])


def scatter_of(fit: Fit, held_out: float | None) -> Scatter:
    """What the runs of a fit say about the scatter; see `Fit.scatter`."""
    if held_out is not None and not (math.isfinite(held_out) and held_out > 0.0):
        raise InvalidArgument(f"scatter: held_out must be above 0, got {held_out!r}")
    usual = Scatter()
    used = float(fit.nvarys - fit.scaled_covar.trace())  # coefficients that the data decided
    free = max(1.0, fit.neffective - used)
    larger = math.sqrt(fit.neffective / free) if held_out is None else held_out
    return Scatter(
        hand_delay=_hands(fit.runs, usual.hand_delay),
        floor_reading=_reading_error(fit.runs, "floor", usual.floor_reading, larger),
        probe_reading=_reading_error(fit.runs, "probe", usual.probe_reading, larger),
        residuals=max(_LEAST_RESIDUALS, 0.5 * free),
    )
