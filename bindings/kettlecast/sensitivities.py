"""How the results of a forecast change with everything it rests on."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

import numpy as np
import pandas as pd
from numpy.typing import NDArray

from . import _core
from .errors import UnknownName
from .file_model import nearest
from .fit_problem import CARDS
from .propagation import Input, addition_occurrences

Vector = NDArray[np.float64]

#: Quantities with slopes, and their unit.
QUANTITIES = {
    "duration": "s",
    "time_to_reach": "s",
    "start": "s",
    "overshoot": "K",
    "overshoot_reading": "K",
    "evaporated": "kg",
    "energy": "J",
}
_SUMMED = ("duration", "evaporated", "energy")
_ADDITION_KINDS = {
    "hand_delay": (_core.LeverKind.addition_delay, "delay", "s"),
    "ingredient_temperature": (_core.LeverKind.addition_temperature, "temperature", "K"),
    "mass": (_core.LeverKind.addition_mass, "mass factor", "-"),
}


@dataclass(frozen=True)
class InputLever:
    """One input of a forecast and the lever of the core that moves it.

    Attributes
    ----------
    label :
        Coefficient by name, else "phase 2: onion: delay", "phase 2: set point", "start".
    unit :
        Of the input.
    lever :
        As the core knows it.
    input :
        What batches differ in by it; None for a coefficient and the start.
    """

    label: str
    unit: str
    lever: _core.Lever
    input: Input | None = None


def _of_recipe(recipe: _core.Recipe) -> Iterator[InputLever]:
    index = 0
    for number, phase in enumerate(recipe.phases, start=1):
        for one, occurrence in addition_occurrences(phase):
            for kind, (lever, word, unit) in _ADDITION_KINDS.items():
                yield InputLever(
                    f"phase {number}: {one.name}: {word}",
                    unit,
                    _core.Lever(kind=lever, index=index),
                    Input(kind, number, one.name, occurrence),
                )
            index += 1
        if phase.regulated is not _core.Regulated.none:
            set_point = _core.Lever(kind=_core.LeverKind.set_point, index=number - 1)
            yield InputLever(f"phase {number}: set point", "K", set_point)


def input_levers(recipe: _core.Recipe) -> list[InputLever]:
    """Everything a forecast of a recipe can be differentiated by.

    Coefficients that belong to a day stand for all additions at once and are left out, but for
    the room.
    """
    kind = _core.LeverKind
    found = [
        InputLever(name, card.unit, _core.Lever(kind=kind.coefficient, index=index))
        for index, (name, card) in enumerate(CARDS.items())
        if not card.of_run or name == "room.offset"
    ]
    found.append(InputLever("start", "K", _core.Lever(kind=kind.start, index=0)))
    return [*found, *_of_recipe(recipe)]


@dataclass(frozen=True, eq=False)
class Sensitivities:
    """Slopes of what a forecast says, exact through switching, pours and ends of phases.

    Where the order of events is about to change, for example where a thermostat would switch once
    more, results jump or bend; slopes hold on the near side only.

    Attributes
    ----------
    levers :
        What is differentiated by.
    result :
        Slopes of each phase, as the compiled core gives them.
    """

    levers: tuple[InputLever, ...]
    result: _core.ForecastSlopes

    def of(self, quantity: str, phase: int | None = None) -> pd.Series:
        """Slopes of one quantity by every input, in SI units per unit of the input.

        Parameters
        ----------
        quantity :
            duration, time_to_reach, start, overshoot, overshoot_reading, evaporated or energy.
        phase :
            From 1; None: of the whole run, for duration, evaporated and energy.

        Returns
        -------
        pandas.Series
            By label of the input; NaN where the phase has no such value, for example because it
            does not reach its set point.

        Raises
        ------
        UnknownName
            No such quantity or phase.
        """
        allowed = QUANTITIES if phase is not None else _SUMMED
        if quantity not in allowed:
            raise UnknownName(
                f'sensitivities: quantity "{quantity}" is not known{nearest(quantity, allowed)}; '
                f"allowed {'of a phase' if phase is not None else 'of a run'}: {', '.join(allowed)}"
            )
        if phase is not None and not 1 <= phase <= len(self.result.slopes):
            raise UnknownName(
                f"sensitivities: phase {phase} is not there; allowed: 1 to "
                f"{len(self.result.slopes)}"
            )
        phases = range(len(self.result.slopes)) if phase is None else [phase - 1]
        slopes = np.sum([self._row(quantity, i) for i in phases], axis=0)
        return pd.Series(slopes, [one.label for one in self.levers], name=quantity)

    def _row(self, quantity: str, phase: int) -> Vector:
        found = np.asarray(getattr(self.result.slopes[phase], quantity), dtype=np.float64)
        return found if found.size else np.full(len(self.levers), np.nan)

    def table(self) -> pd.DataFrame:
        """All slopes: one row per input, one column per quantity and phase (0: the whole run).

        In SI units per unit of the input, which the first column names.
        """
        columns: dict[tuple[str, int], pd.Series] = {
            (quantity, 0): self.of(quantity) for quantity in _SUMMED
        }
        for phase in range(1, len(self.result.slopes) + 1):
            columns |= {(quantity, phase): self.of(quantity, phase) for quantity in QUANTITIES}
        table = pd.DataFrame(columns)
        table.insert(0, ("unit", 0), [one.unit for one in self.levers])
        table.columns.names = ["quantity", "phase"]
        table.index.name = "input"
        return table


def sensitivities_of(
    kettle: _core.Kettle,
    coefficients: _core.Coefficients,
    recipe: _core.Recipe,
    *,
    start: _core.Start,
    options: _core.Options,
) -> Sensitivities:
    """Slopes of a forecast by all its coefficients and inputs.

    Source: forward-mode dual numbers (Griewank & Walther, Evaluating Derivatives, 2008).

    Parameters
    ----------
    kettle, coefficients, recipe, start, options :
        As for the forecast.
    """
    levers = tuple(input_levers(recipe))
    found = _core.simulate_slopes(
        kettle,
        coefficients,
        recipe=recipe,
        start=start,
        levers=[one.lever for one in levers],
        options=options,
    )
    return Sensitivities(levers, found)
