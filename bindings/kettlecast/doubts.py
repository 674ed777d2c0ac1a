"""What looks wrong with the runs of a fit: changes that would explain its residuals.

Every candidate is tried by a score test, which takes slopes only. The few that promise most are
taken as true in turn and the kettle is fitted again. What then remains best, is significant among
so many candidates, and is not so small that nobody would mind, is a doubt.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace

import numpy as np

from .doubt_candidates import COVERS, Candidate, Change, candidates_of
from .doubt_state import State, linearised
from .doubt_words import change_text
from .errors import IntegrationFailure, InvalidArgument
from .fit_logs import search_of
from .fit_problem import CARDS
from .fit_result import Fit
from .fit_search import Search, learned_count
from .losses import loss_slopes
from .score_test import Linear, Tested, score_test, surprise

# A change smaller than this share of its prior spread is what happens every day.
_LEAST_SIZE = 0.5
# A likelihood ratio of 8 is fairly strong evidence for one of two explanations; below that they
# are told as one doubt. Source: Royall, Statistical evidence (1997), section 1.6.
_AS_GOOD = 2.0 * math.log(8.0)
_REFITS = 4  # candidates that are fitted again for each doubt
_REFIT_EVALUATIONS = 12
# How late a pour is first thought to have come [s]; refined between the best of these so often.
_DELAYS = np.array([7.5, 15.0, 30.0, 60.0, 120.0, 240.0])
_REFINEMENTS = 3
# Prior spreads that leaving a lid off, or on, counts as.
_LID_SIZE = 3.0


@dataclass(frozen=True)
class Explanation:
    """A change that would explain residuals.

    Attributes
    ----------
    run :
        Name of the run concerned; "" for all runs.
    change :
        What, in words, with its size and standard error.
    candidate :
        The same for programs.
    size, error :
        In prior spreads of the card of the candidate [-].
    fall, chi_square :
        By how much chi-square of all runs falls once it is allowed for, and from where [-].
    chance :
        Probability that one of all candidates does as well though nothing is wrong [-].
    likelihood_ratio :
        Fall of -2 log likelihood [-].
    """

    run: str
    change: str
    candidate: Candidate
    size: float
    error: float
    fall: float
    chi_square: float
    chance: float
    likelihood_ratio: float

    @property
    def rank(self) -> float:
        """Fall of -2 log likelihood less what a change of such size costs [-].

        Mistakes may be large: their sizes have Cauchy's distribution with the prior spread.
        """
        size = _LID_SIZE if self.candidate.change in COVERS else self.size
        return self.likelihood_ratio - 2.0 * math.log1p(size**2)

    def __str__(self) -> str:
        return f"{self.run}: {self.change}" if self.run else self.change


@dataclass(frozen=True)
class Doubt:
    """Something that looks wrong: its best explanation, and others that are about as good."""

    best: Explanation
    others: tuple[Explanation, ...] = ()

    def __str__(self) -> str:
        best = self.best
        where = f"{best.run}: its" if best.run else "All runs: their"
        told = (
            f"{where} residuals are explained by {best.change} "
            f"(chi-square falls by {best.fall:.0f} of {best.chi_square:.0f})"
        )
        if not self.others:
            return f"{told}."
        return f"{told}; as well by {', or '.join(str(one) for one in self.others)}."


@dataclass(frozen=True)
class _Round:
    """One search for a doubt: where the fit stands and how its tests are judged."""

    fit: Fit
    logged: Search
    state: State
    linear: Linear
    chi_square: float
    candidates: Sequence[Candidate]

    def chance(self, likelihood_ratio: float) -> float:
        weights = loss_slopes(self.linear.residuals, self.linear.sensors.loss)
        slopes = self.linear.slopes
        learned = learned_count(slopes.T @ (weights[:, None] * slopes))
        count = float(self.linear.sensors.count.sum())
        return min(1.0, len(self.candidates) * surprise(likelihood_ratio, count, learned))

    def explanation(self, candidate: Candidate, tested: Tested) -> Explanation:
        one = None if candidate.run is None else self.logged.observed[candidate.run]
        text = change_text(candidate, one, self.state.start, size=tested.size, error=tested.error)
        return Explanation(
            run="" if one is None else one.run.name,
            change=text,
            candidate=candidate,
            size=tested.size,
            error=tested.error,
            fall=tested.fall,
            chi_square=self.chi_square,
            chance=self.chance(tested.likelihood_ratio),
            likelihood_ratio=tested.likelihood_ratio,
        )


def _round(
    fit: Fit, state: State, candidates: Sequence[Candidate]
) -> tuple[_Round, list[Explanation]]:
    """The explanations that slopes alone promise, best first."""
    linear, columns = linearised(state, candidates)
    chi = float(linear.sensors.chi_squares(linear.residuals).sum())
    this = _Round(fit, search_of(fit, "doubts"), state, linear, chi, candidates)
    promised = []
    for candidate, column in columns.items():
        tested = score_test(linear, column, 1.0 if candidate.change in COVERS else None)
        if tested is not None:
            promised.append(this.explanation(candidate, tested))
    return this, sorted(promised, key=lambda one: -one.rank)


def _best_delay(this: _Round, promised: Explanation) -> float:
    """Delay of a pour that explains most [prior spreads], from replays with such delays.

    Slopes tell too little, because a pour acts at once.
    """
    candidate = promised.candidate
    sizes = _DELAYS / CARDS[candidate.card].spread * np.sign(promised.size)
    best = promised.size
    for _ in range(_REFINEMENTS):
        tried = [replace(candidate, jump=float(size)) for size in sizes]
        linear, columns = linearised(this.state, tried)
        gains = []
        for one in tried:
            tested = score_test(linear, columns[one], one.jump)
            gains.append(-np.inf if tested is None else tested.likelihood_ratio)
        top = int(np.argmax(gains))
        best = float(sizes[top])
        sizes = np.linspace(sizes[max(top - 1, 0)], sizes[min(top + 1, sizes.size - 1)], 6)
    return best


def _verified(this: _Round, promised: Explanation) -> tuple[Explanation, State] | None:
    """The explanation after fitting again; None if such a run cannot be."""
    candidate = promised.candidate
    try:
        delayed = candidate.change is Change.delay
        size = candidate.bounded(_best_delay(this, promised) if delayed else promised.size)
        state = this.state.with_change(candidate, size, _REFIT_EVALUATIONS)
    except (IntegrationFailure, InvalidArgument):
        return None
    smooth = [] if candidate.change in COVERS else [candidate.subject]
    linear, columns = linearised(state, smooth)
    sensors = linear.sensors
    before, after = this.linear, linear
    gained = sensors.deviance(before.residuals, this.state.scaled) - sensors.deviance(
        after.residuals, state.scaled
    )
    chi = float(sensors.chi_squares(after.residuals).sum())
    more = score_test(linear, columns[smooth[0]]) if smooth else None
    error = promised.error if more is None else more.error
    # The rest of the way is told by slopes at the new place; it is taken if it is short.
    rest = more if more is not None and abs(more.size) < 0.5 * abs(size) else None
    tested = Tested(
        size=size + (rest.size if rest else 0.0),
        error=error,
        likelihood_ratio=gained + (max(0.0, rest.likelihood_ratio) if rest else 0.0),
        fall=this.chi_square - chi + (rest.fall if rest else 0.0),
    )
    return this.explanation(candidate, tested), state


def _next_doubt(
    fit: Fit, state: State, candidates: Sequence[Candidate], level: float
) -> tuple[Doubt, State] | None:
    this, promised = _round(fit, state, candidates)
    # Slopes promise too little where a change acts far from straight, such as a lid: once one
    # candidate is significant, the next best are fitted again with it.
    likely = promised[:_REFITS] if any(one.chance < level for one in promised) else []
    checked = [found for one in likely if (found := _verified(this, one)) is not None]
    checked = sorted(checked, key=lambda found: -found[0].rank)
    if not checked:
        return None
    best, moved = checked[0]
    if best.chance > level or abs(best.size) < _LEAST_SIZE:
        return None
    others = [
        one for one, _ in checked[1:] if one.rank > best.rank - _AS_GOOD and one.chance < level
    ]
    told = {one.candidate.subject: one for one in reversed(others)}
    told.pop(best.candidate.subject, None)
    return Doubt(best, tuple(one for one in others if one in told.values())), moved


def doubts(fit: Fit, *, level: float = 0.01, most: int = 3) -> tuple[Doubt, ...]:
    """What looks wrong with the runs, or is missing from the fit, most telling first.

    Tried are, for each run: mass, temperature and time of each pour, the room, the heat of floor
    and jacket, the offsets of its sensors, and its lid; and for all runs the coefficients that
    were not fitted. Residuals are weighed as in the fit.

    Parameters
    ----------
    fit :
        With its logs.
    level :
        Probability of a false alarm among all candidates [-]; Bonferroni's correction.
    most :
        Number of doubts at which the search ends; each is allowed for when the next is looked for.

    Raises
    ------
    InvalidArgument
        The fit was read from a file.
    """
    search = search_of(fit, "doubts")
    state = State(search, fit.coefficients, fit.of_runs, np.asarray(fit.scaled()), fit.errors)
    candidates = candidates_of(fit, search)
    found: list[Doubt] = []
    while len(found) < most and candidates:
        step = _next_doubt(fit, state, candidates, level)
        if step is None:
            break
        doubt, state = step
        found.append(doubt)
        candidates = [one for one in candidates if one.subject != doubt.best.candidate.subject]
    return tuple(found)
