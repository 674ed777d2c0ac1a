"""What a fit is given: readings at equal intervals, coefficients they can tell, and weights."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field

import numpy as np
from numpy.typing import NDArray

from . import _core
from .run_log import Run
from .run_plan import begin_of, run_plan

Vector = NDArray[np.float64]

CARDS = {card.name: card for card in _core.coefficient_cards()}


@dataclass(frozen=True)
class FitOptions:
    """How residuals are weighed.

    A residual counts as one standard deviation when it is as large as the error given here; the
    errors hold sensor noise and what a lumped model cannot follow. Residuals of a log are alike
    from sample to sample, so `interval / correlation_time` of each is counted. Errors and
    correlation time are first guesses where `estimate_errors` is set: the residuals of a first
    search then tell better, see `ErrorModel`.
    """

    floor_error: float = 1.0  #: of floor readings [K]
    probe_error: float = 0.4  #: of probe readings [K]
    correlation_time: float = 120.0  #: of the residuals [s]
    interval: float = 10.0  #: logs are averaged over this long [s]
    loss: str = "soft_l1"  #: how large residuals count: linear, soft_l1 or huber
    estimate_errors: bool = True  #: from the residuals
    max_evaluations: int = 60
    #: A step that lowers the cost by a smaller share ends the search [-]. The cost is a
    #: log-likelihood of some tens: what is left then is far below one standard error.
    tolerance: float = 1e-4
    starts: int = 1  #: searches, the first from the defaults, the others from within the priors
    #: Ten times coarser than a forecast: readings then err by millikelvins.
    integration: _core.Options = field(default_factory=lambda: _core.Options(tolerance=1e-5))


@dataclass(frozen=True)
class Observed:
    """What a run showed at the output times of its plan [K]."""

    run: Run
    plan: _core.RunPlan
    time: Vector
    floor: Vector | None
    probe: Vector

    @property
    def count(self) -> int:
        """Number of readings."""
        return self.time.size * (1 if self.floor is None else 2)

    @property
    def step(self) -> float:
        """Interval of the readings [s]."""
        return float(np.median(np.diff(self.time)))


def _averaged(time: Vector, values: Vector, edges: Vector) -> Vector:
    where = np.digitize(time, edges) - 1
    count = np.bincount(where, minlength=edges.size)
    total = np.bincount(where, weights=values, minlength=edges.size)
    return np.asarray(total[count > 0] / count[count > 0])


def observe(run: Run, room: _core.Surroundings, interval: float) -> Observed:
    """Readings of a run averaged over `interval` [s]; slower logs are taken as they are.

    In closed loop, readings before the first phase are left out: what was done then is not known.
    """
    rows = run.time >= begin_of(run)
    times = run.time[rows]
    edges = np.arange(times[0], times[-1] + interval, interval)
    if np.median(np.diff(times)) > 0.5 * interval:
        edges = times
    time = _averaged(times, times, edges)
    floor = None
    if run.floor_reading is not None:
        floor = _averaged(times, run.floor_reading[rows], edges)
    probe = _averaged(times, run.probe_reading[rows], edges)
    return Observed(run, run_plan(run, room, time), time, floor, probe)


def _heats(run: Run, by_jacket: bool) -> tuple[bool, bool]:
    """Whether floor and jacket heat in a run, as logged or as the controller may switch them."""
    regulates = any(one.regulated is not _core.Regulated.none for one in run.closed_loop)
    jacket = any(one.jacket is _core.JacketUse.heat for one in run.closed_loop)
    by_floor = bool(np.any(run.floor_heat > 0.0)) or (regulates and not by_jacket)
    return by_floor, bool(np.any(run.jacket_heat > 0.0)) or jacket or (regulates and by_jacket)


def _not_heated(kettle: _core.Kettle, runs: Sequence[Run]) -> set[str]:
    """Coefficients of floor heater and jacket that such runs say nothing about."""
    jacket, kind = kettle.jacket, kettle.jacket.kind
    heats = [_heats(run, _core.heats_by_jacket(kettle)) for run in runs]
    by_floor = any(floor for floor, _ in heats) and kettle.floor_power > 0.0
    by_jacket = any(jacket for _, jacket in heats)
    cooled = any(limit is not None for run in runs for _, limit in run.cooling_limits)
    electric = kind is _core.JacketKind.electric
    unused = set()
    if jacket.height == 0.0 and not jacket.under_floor:
        unused |= {name for name in CARDS if name.startswith("jacket.")}
    if not (cooled or (by_jacket and not electric)):
        unused.add("jacket.film_factor")
    if not electric:
        unused.add("jacket.conductance")
    if not by_jacket or kind is _core.JacketKind.liquid:
        unused.add("jacket.efficiency")
    if not by_floor:
        unused.add("floor.efficiency")
    if not (by_floor or by_jacket):
        unused.add("floor.boiling_factor")
    if kettle.floor_power == 0.0:
        unused |= {"elements.heat_capacity", "elements.lag"}
        if not jacket.under_floor:
            unused |= {"floor.film_factor", "floor.resistance_factor"}
    if jacket.under_floor:
        unused.add("floor.loss")
    return unused


def informative(kettle: _core.Kettle, runs: Sequence[Run]) -> list[str]:
    """Names of the coefficients that such runs can say anything about.

    Left out are what differs from run to run (hands, room, scales), the jacket without a jacket,
    the floor heater and its elements on a kettle that is heated by its jacket, the floor sensor
    where it was not logged, pieces where none were added, the lid where none was used, and heat
    and cold that were never on.
    """
    additions = [addition for run in runs for _, addition in run.pours]
    pieces = any(addition.shape is not _core.Shape.none for addition in additions)
    lid = any(cover is _core.Cover.lid for run in runs for _, cover in run.covers)
    open_surface = any(cover is _core.Cover.open for run in runs for _, cover in run.covers)
    floor_logged = any(run.floor_reading is not None for run in runs)
    unused = {"agitator.heat_capacity", "agitator.power_factor"}
    unused |= {name for name, card in CARDS.items() if card.of_run}
    unused |= _not_heated(kettle, runs)
    if not floor_logged:
        unused |= {name for name in CARDS if name.startswith("floor_sensor.")}
    if not pieces:
        unused |= {"piece.film_factor", "piece.coating_factor", "juice.rate"}
        unused |= {"solids.thickening", "floor.contact_resistance"}
    if not lid:
        unused.add("evaporation.lid_factor")
    if not (lid or open_surface):
        unused.add("evaporation.factor")
    return [name for name in CARDS if name not in unused]
