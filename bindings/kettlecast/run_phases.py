"""What a recipe says about a run whose phases began at known times: covers, jackets, control."""

from __future__ import annotations

import itertools
from collections.abc import Sequence

import numpy as np

from . import _core
from .errors import InvalidArgument
from .event_log import Event, EventKind
from .findings import Array

Covers = tuple[tuple[float, _core.Cover], ...]
Limits = tuple[tuple[float, float | None], ...]
Pours = tuple[tuple[float, _core.Addition], ...]

_LIDS = {EventKind.lid_on: _core.Cover.lid, EventKind.lid_off: _core.Cover.open}


def covers_of(
    recipe: _core.Recipe | None, phases: Sequence[float], events: Sequence[Event], start: float
) -> Covers:
    """Time [s] and cover from then on, by the phases and by `lid on` and `lid off`."""
    planned = recipe.phases if recipe is not None else []
    steps = [(time, phase.cover) for time, phase in zip(phases, planned, strict=False)]
    steps += [(event.time, _LIDS[event.kind]) for event in events if event.kind in _LIDS]
    steps.sort(key=lambda step: step[0])
    return tuple(steps) if steps and steps[0][0] <= start else ((start, _core.Cover.open), *steps)


def jackets_of(recipe: _core.Recipe | None, phases: Sequence[float]) -> tuple[Limits, Limits]:
    """Limits of the jacket where it heats, and where it cools."""
    use = _core.JacketUse
    pairs = list(zip(phases, recipe.phases if recipe is not None else [], strict=False))
    limits = [(at, one.jacket_limit if one.jacket == use.heat else None) for at, one in pairs]
    cooling = [(at, one.jacket_cool_limit if one.jacket == use.cool else None) for at, one in pairs]
    return tuple(limits), tuple(cooling)


def check_phases(
    where: str, heat: str, recipe: _core.Recipe | None, starts: Sequence[float]
) -> None:
    """Raises InvalidArgument unless the recipe is there and the start of each phase is known."""
    if recipe is None:
        raise InvalidArgument(f'{where}: heat="{heat}" needs the recipe; not given: recipe=')
    if len(starts) != len(recipe.phases):
        raise InvalidArgument(
            f'{where}: heat="{heat}" needs the start of each phase in the events file; '
            f'it has {len(starts)}, recipe "{recipe.name}" has {len(recipe.phases)}'
        )


def phases_as_they_happened(
    recipe: _core.Recipe,
    starts: Sequence[float],
    pours: Pours,
    covers: Covers,
    ends: tuple[float, float],
) -> tuple[_core.Phase, ...]:
    """Phases that last as long as they did, for a run in closed loop from the first one on.

    A phase is parted where a lid went on or off. After the last phase nothing is heated.

    Parameters
    ----------
    recipe :
        Gives what each phase regulates, its limits and its stirring.
    starts :
        Start of each phase by the clock of the log, shape (phases,) [s].
    pours :
        Start of each pour [s], and addition.
    covers :
        Time [s] and cover from then on.
    ends :
        End of the last phase, and of the log [s].
    """
    end, last = ends
    final = recipe.phases[-1]
    rest = _core.Phase(name="after the end", agitation=final.agitation, cover=final.cover)
    planned = [*zip(starts, recipe.phases, strict=True), (end, rest)]
    edges = sorted({*starts, end, last, *(time for time, _ in covers)})
    edges = [edge for edge in edges if starts[0] <= edge <= last]
    found = []
    for begin, until in itertools.pairwise(edges):
        phase = [one for time, one in planned if time <= begin][-1]
        cover = ([phase.cover] + [one for time, one in covers if time <= begin])[-1]
        first = begin == starts[0]
        mine = [(at, one) for at, one in pours if (first or begin <= at) and at < until]
        found.append(_part(phase.replace(cover=cover), begin, until, mine))
    return tuple(found)


def _part(
    phase: _core.Phase, begin: float, until: float, pours: Sequence[tuple[float, _core.Addition]]
) -> _core.Phase:
    """A phase from one time to another with what was poured in it."""
    length = until - begin
    additions = []
    for at, addition in pours:
        delay = max(0.0, at - begin)
        pour_time = min(addition.pour_time, length - delay)  # none goes on into the next part
        additions.append(addition.replace(delay=delay, pour_time=pour_time))
    rule = _core.EndRule(kind=_core.EndKind.elapsed, value=length)
    return phase.replace(ends=[rule], time_limit=length + 1.0, additions=additions)


def end_of(events: Sequence[Event], time: Array) -> float:
    """When the last phase ended, by its event or with the log [s]."""
    ends = [one.time for one in events if one.kind is EventKind.end]
    return float(np.min([*ends, time[-1]]))
