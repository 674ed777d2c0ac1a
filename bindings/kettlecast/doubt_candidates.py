"""What may be wrong with the runs of a fit, or missing from it: changes that could explain it.

Each candidate has a size in prior spreads of the card it belongs to, of the logarithm for scales,
as fitted coefficients have. It acts through a slope of the readings, and as a change of the log.
"""

from __future__ import annotations

import enum
from collections.abc import Callable, Iterator
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

import numpy as np

from . import _core
from .fit_problem import CARDS, Observed, informative
from .fit_search import Search

if TYPE_CHECKING:
    from .fit_result import Fit


class Change(enum.Enum):
    """What is changed; the value is the card that gives the prior spread."""

    mass = "addition.mass_factor"
    temperature = "addition.temperature_offset"
    delay = "pour.delay"
    room = "room.offset"
    floor_heat = "floor.efficiency"
    jacket_heat = "jacket.efficiency"
    floor_sensor = "floor_sensor.offset"
    probe = "probe.offset"
    lid_off = "lid off"
    lid_on = "lid on"
    coefficient = ""


_OF_POURS = {
    Change.mass: _core.LeverKind.addition_mass,
    Change.temperature: _core.LeverKind.addition_temperature,
    Change.delay: _core.LeverKind.addition_delay,
}
COVERS = {Change.lid_off: _core.Cover.open, Change.lid_on: _core.Cover.lid}
# A pour that came at another time leaves a spike in the residuals, whose slope by the time says
# nothing about one that came much later; so that is tried as well, by a replay [s].
_MUCH_LATER = 60.0
_INDEX = {name: i for i, name in enumerate(CARDS)}


def lever_of(name: str) -> _core.Lever:
    """Lever of a coefficient."""
    return _core.Lever(kind=_core.LeverKind.coefficient, index=_INDEX[name])


@dataclass(frozen=True)
class Candidate:
    """One change: of a run by its index, of one of its pours, or of a coefficient of all runs.

    Attributes
    ----------
    jump :
        Size at which the readings are replayed instead of differentiated [prior spreads]; 0: not.
    """

    change: Change
    run: int | None = None
    pour: int | None = None
    coefficient: str = ""
    jump: float = 0.0

    @property
    def card(self) -> str:
        """Name of the card that gives the prior spread; "" for a lid, which is on or off."""
        if self.change in COVERS:
            return ""
        return self.coefficient or self.change.value

    @property
    def subject(self) -> Candidate:
        """What is changed, however its effect is told."""
        return replace(self, jump=0.0)

    @property
    def lever(self) -> _core.Lever:
        """What the readings are differentiated by."""
        if self.pour is None:
            return lever_of(self.card)
        return _core.Lever(kind=_OF_POURS[self.change], index=self.pour)

    def unit(self, at: _core.Coefficients) -> float:
        """Change of the lever per prior spread, with the coefficients of the run."""
        if self.pour is None:
            return float(_core.scaled_slopes(at, [self.card])[0])
        return CARDS[self.card].spread

    def bounded(self, size: float) -> float:
        """The size [prior spreads], within the bounds of the card."""
        if self.change in COVERS:
            return 1.0
        card = CARDS[self.card]
        ends = [_core.Coefficients({card.name: end}) for end in (card.lower, card.upper)]
        lower, upper = (_core.to_scaled(end, [card.name])[0] for end in ends)
        return float(np.clip(size, lower, upper))


def _of_run(index: int, one: Observed, kettle: _core.Kettle) -> Iterator[Candidate]:
    yield Candidate(Change.room, index)
    if one.plan.closed_loop:
        return  # there a sensor acts on the controller, and pours and covers are the recipe's
    for pour in range(len(one.plan.pours)):
        yield from (Candidate(change, index, pour) for change in _OF_POURS)
        late = _MUCH_LATER / CARDS[Change.delay.value].spread
        yield from (Candidate(Change.delay, index, pour, jump=jump) for jump in (-late, late))
    yield Candidate(Change.probe, index)
    if one.floor is not None:
        yield Candidate(Change.floor_sensor, index)
    if kettle.floor_power > 0.0 and np.any(one.run.floor_heat > 0.0):
        yield Candidate(Change.floor_heat, index)
    if np.any(one.run.jacket_heat > 0.0):
        yield Candidate(Change.jacket_heat, index)
    covers = {setting.cover for setting in one.plan.settings}
    if _core.Cover.lid in covers:
        yield Candidate(Change.lid_off, index, jump=1.0)
    if _core.Cover.open in covers:
        yield Candidate(Change.lid_on, index, jump=1.0)


def candidates_of(fit: Fit, search: Search) -> list[Candidate]:
    """Every change that is tried on a fit.

    Left out is what was fitted: per run, and with a single run what all runs share.
    """
    single = len(search.observed) == 1
    fitted = set(search.per_run) | (set(search.shared) if single else set())
    found = [
        candidate
        for i, one in enumerate(search.observed)
        for candidate in _of_run(i, one, fit.kettle)
        if candidate.card not in fitted
    ]
    runs = [one.run for one in search.observed]
    known = {*search.shared, *search.per_run}
    shared = [name for name in informative(fit.kettle, runs) if name not in known]
    if single:
        # What one run shares with itself is told once.
        shared = [name for name in shared if name not in {one.card for one in found}]
    return found + [Candidate(Change.coefficient, coefficient=name) for name in shared]


def _poured(one: Observed, pour: int, change: Change, size: float) -> Observed:
    pours = list(one.plan.pours)
    timed = pours[pour]
    step = CARDS[change.value].spread * size
    addition = timed.addition
    if change is Change.mass:
        timed = timed.replace(addition=addition.replace(mass=addition.mass * float(np.exp(step))))
    elif change is Change.temperature:
        timed = timed.replace(addition=addition.replace(temperature=addition.temperature + step))
    else:
        timed = timed.replace(time=max(timed.time + step, float(one.run.time[0])))
    pours[pour] = timed
    return replace(one, plan=one.plan.replace(pours=pours))


def _in_room(one: Observed, shift: float) -> Observed:
    room = one.plan.surroundings
    warmer = room.replace(temperature=room.temperature + shift)
    return replace(one, plan=one.plan.replace(surroundings=warmer))


def _heated(one: Observed, signal: str, factor: float) -> Observed:
    signals = one.plan.signals
    # A replay takes shares of the nominal power up to 1.5.
    heat = np.minimum(np.asarray(getattr(signals, signal)) * factor, 1.5)
    return replace(one, plan=one.plan.replace(signals=signals.replace(**{signal: heat})))


def _covered(one: Observed, cover: _core.Cover) -> Observed:
    """The run with an open surface under a lid all the time, or with its lid left off."""
    other = {_core.Cover.lid: _core.Cover.open, _core.Cover.open: _core.Cover.lid}[cover]
    settings = [
        setting.replace(cover=cover) if setting.cover is other else setting
        for setting in one.plan.settings
    ]
    return replace(one, plan=one.plan.replace(settings=settings))


def changed(one: Observed, candidate: Candidate, size: float) -> Observed:
    """A run as it was if the candidate holds; its readings less what a wrong sensor added."""
    change = candidate.change
    if candidate.pour is not None:
        return _poured(one, candidate.pour, change, size)
    if change in COVERS:
        return _covered(one, COVERS[change])
    step = CARDS[candidate.card].spread * size
    ways: dict[Change, Callable[[], Observed]] = {
        Change.room: lambda: _in_room(one, step),
        Change.floor_heat: lambda: _heated(one, "floor_heat", float(np.exp(step))),
        Change.jacket_heat: lambda: _heated(one, "jacket_heat", float(np.exp(step))),
        Change.probe: lambda: replace(one, probe=one.probe - step),
        Change.floor_sensor: lambda: replace(
            one, floor=None if one.floor is None else one.floor - step
        ),
    }
    return ways[change]()
