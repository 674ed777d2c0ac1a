"""A fit near its best, with slopes of all that may be missing from it."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace

import numpy as np

from . import _core
from .doubt_candidates import Candidate, changed, lever_of
from .error_model import ErrorModel, stated_errors
from .fit_problem import CARDS, Observed, Vector
from .fit_search import Search
from .score_test import Linear, Sensors

# Share of the cost worth a step when explanations are compared: far below what tells them apart.
_FINE = 1e-6


@dataclass(frozen=True)
class State:
    """A search, where it ended, and the errors it counts with."""

    search: Search
    start: _core.Coefficients  #: shared values, and those that are not fitted
    of_runs: Sequence[_core.Coefficients]
    scaled: Vector
    errors: ErrorModel

    def with_change(self, candidate: Candidate, size: float, evaluations: int) -> State:
        """Fitted again with the candidate taken as it is said to be."""
        search, start = self.search, self.start
        if candidate.run is None:
            name = candidate.card
            here = _core.to_scaled(start, [name])[0]
            start = _core.from_scaled(start, [name], point=[here + size])
        else:
            runs = list(search.observed)
            runs[candidate.run] = changed(runs[candidate.run], candidate, size)
            search = replace(search, observed=runs)
        options = replace(search.options, max_evaluations=evaluations, tolerance=_FINE)
        brief = replace(search, options=options)
        found = brief.minimise(start, self.errors)
        start = start.replace({name: found.of_runs[0][name] for name in search.shared})
        return State(search, start, found.of_runs, found.scaled, self.errors)


def _row_weights(one: Observed, errors: ErrorModel) -> Vector:
    """Weight of each residual of a run [1/K], floor then probe."""
    floor, probe = errors.weights(one)
    count = one.time.size
    floors = 0 if one.floor is None else count
    return np.concatenate(
        [
            np.full(floors, np.sqrt(floor) / errors.floor_error),
            np.full(count, np.sqrt(probe) / errors.probe_error),
        ]
    )


def _stacked(one: Observed, floor: Vector, probe: Vector) -> Vector:
    return probe if one.floor is None else np.concatenate([floor, probe])


def _sensors(state: State) -> Sensors:
    observed, options = state.search.observed, state.search.options
    count = np.zeros(2)
    rows = []
    for one in observed:
        floors = 0 if one.floor is None else one.time.size
        rows += [np.zeros(floors, dtype=int), np.ones(one.time.size, dtype=int)]
        floor, probe = state.errors.weights(one)
        count += [floor * floors, probe * one.time.size]
    stated = None
    if options.estimate_errors:
        given, found = stated_errors(options), state.errors
        ratios = (given.floor_error / found.floor_error, given.probe_error / found.probe_error)
        stated = np.array(ratios) ** 2
    return Sensors(np.concatenate(rows), count, stated, options.loss)


def _free(state: State) -> list[int]:
    """Fitted values that are not at a bound."""
    kept = []
    for i, ((name, _), at) in enumerate(zip(state.search.labels(), state.scaled, strict=True)):
        card = CARDS[name]
        ends = [_core.Coefficients({name: end}) for end in (card.lower, card.upper)]
        lower, upper = (_core.to_scaled(end, [name])[0] for end in ends)
        if min(at - lower, upper - at) > 1e-3 * (upper - lower):
            kept.append(i)
    return kept


def _jump_column(state: State, candidate: Candidate, run: int, here: Vector) -> Vector:
    """Change of the readings of a run when a candidate is taken at its size, per prior spread."""
    one = state.search.observed[run]
    other = _core.replay(
        state.search.kettle,
        state.of_runs[run],
        plan=changed(one, candidate, candidate.jump).plan,
        options=state.search.options.integration,
    )
    shown = _stacked(one, other.floor_reading, other.probe_reading)
    return (shown - here) / candidate.jump


@dataclass(frozen=True)
class _RunSlopes:
    """Weighted residuals of one run and their slopes."""

    residuals: Vector
    fitted: Vector
    columns: dict[Candidate, Vector]


def _of_run(
    state: State, run: int, names: Sequence[str], candidates: Sequence[Candidate]
) -> _RunSlopes:
    one, here = state.search.observed[run], state.of_runs[run]
    smooth = [candidate for candidate in candidates if not candidate.jump]
    levers = [*map(lever_of, names), *(candidate.lever for candidate in smooth)]
    found = _core.replay_slopes(
        state.search.kettle,
        here,
        plan=one.plan,
        levers=levers,
        options=state.search.options.integration,
    )
    units = [*_core.scaled_slopes(here, names), *(candidate.unit(here) for candidate in smooth)]
    weights = _row_weights(one, state.errors)
    slopes = weights[:, None] * _stacked(one, found.floor_reading, found.probe_reading)
    slopes = slopes * np.array(units)
    model = _stacked(one, found.replay.floor_reading, found.replay.probe_reading)
    log = one.probe if one.floor is None else np.concatenate([one.floor, one.probe])
    columns = {candidate: slopes[:, len(names) + k] for k, candidate in enumerate(smooth)}
    columns |= {
        candidate: weights * _jump_column(state, candidate, run, model)
        for candidate in candidates
        if candidate.jump
    }
    return _RunSlopes(weights * (model - log), slopes[:, : len(names)], columns)


def linearised(
    state: State, candidates: Iterable[Candidate]
) -> tuple[Linear, dict[Candidate, Vector]]:
    """Residuals and slopes of a fit at its best, and the slopes by each candidate."""
    tried, labels = list(candidates), state.search.labels()
    runs = []
    owns = []
    for i, one in enumerate(state.search.observed):
        own = [k for k, (_, run) in enumerate(labels) if run in ("", one.run.name)]
        concerned = [candidate for candidate in tried if candidate.run in (None, i)]
        runs.append(_of_run(state, i, [labels[k][0] for k in own], concerned))
        owns.append(own)
    ends = np.cumsum([0, *(run.residuals.size for run in runs)])
    slopes = np.zeros((ends[-1], len(labels)))
    columns = {candidate: np.zeros(ends[-1]) for candidate in tried}
    for run, own, begin, end in zip(runs, owns, ends[:-1], ends[1:], strict=True):
        slopes[begin:end, own] = run.fitted
        for candidate, column in run.columns.items():
            columns[candidate][begin:end] = column
    free = _free(state)
    residuals = np.concatenate([run.residuals for run in runs])
    return Linear(residuals, slopes[:, free], state.scaled[free], _sensors(state)), columns
