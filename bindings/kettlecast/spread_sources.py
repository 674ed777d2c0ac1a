"""Where the spread of a forecast comes from."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pandas as pd
from numpy.typing import NDArray

from .errors import UnknownName
from .file_model import nearest
from .intervals import Ensemble, run_ensemble
from .scatter import NOTHING

# Members of Scatter that are switched on together, by the name of their column.
_GROUPS = {
    "model_error": ("floor_reading", "probe_reading"),
    "hands": ("hand_delay",),
    "ingredient_temperatures": ("ingredient_temperature",),
    "masses": ("mass",),
    "room": ("room",),
}
_SHOWN = {
    "duration": (60.0, "min"),
    "overshoot": (1.0, "K"),
    "overshoot_reading": (1.0, "K"),
    "evaporated": (1.0, "kg"),
    "energy": (3.6e6, "kWh"),
}


def _variances(ensemble: Ensemble, quantity: str) -> NDArray[np.float64]:
    """Of each phase and of the whole run; NaN where members have no finite value."""
    phases = [*range(1, len(ensemble.plan.recipe.phases) + 1), None]
    columns = [ensemble.values(quantity, phase)[~ensemble.failed] for phase in phases]
    found = [np.var(one) if np.isfinite(one).all() else np.nan for one in columns]
    sizes = [np.abs(one).max(initial=0.0) for one in columns]
    # Rounding is no spread: a phase that lasts as long as the recipe says has none.
    return np.array(
        [0.0 if v < (1e-9 * size) ** 2 else v for v, size in zip(found, sizes, strict=True)]
    )


def spread_sources(together: Ensemble, quantity: str) -> pd.DataFrame:
    """Share of the variance of each phase and of the run that each source makes alone [-].

    Every source is switched on alone, with the draws it has in the ensemble. The shares add up to
    1 as far as the sources add up; what `sum` differs from 1 is what they do together.

    Parameters
    ----------
    together :
        The ensemble behind a forecast.
    quantity :
        duration, overshoot, overshoot_reading, evaporated or energy.

    Raises
    ------
    UnknownName
        Another quantity.
    """
    if quantity not in _SHOWN:
        raise UnknownName(
            f'spread_sources: quantity "{quantity}" is not known{nearest(quantity, _SHOWN)}; '
            f"allowed: {', '.join(_SHOWN)}"
        )
    all_of_it = _variances(together, quantity)
    alone = {}
    if together.plan.drawn:
        alone["coefficients"] = run_ensemble(together.plan, NOTHING)
    for name, kinds in _GROUPS.items():
        only = replace(
            NOTHING,
            residuals=together.scatter.residuals,
            **{kind: getattr(together.scatter, kind) for kind in kinds},
        )
        if any(getattr(only, kind) > 0.0 for kind in kinds):
            alone[name] = run_ensemble(together.plan, only, coefficients=False)
    factor, unit = _SHOWN[quantity]
    named = [phase.name for phase in together.plan.recipe.phases]
    table = pd.DataFrame({"phase": [*named, "whole run"]})
    table[f"sd_{unit}"] = np.sqrt(all_of_it) / factor
    spreads = np.where(all_of_it > 0.0, all_of_it, np.nan)
    for name, ensemble in alone.items():
        table[name] = _variances(ensemble, quantity) / spreads
    table["sum"] = table[list(alone)].sum(axis=1, skipna=False)
    table.index = pd.Index([*range(1, len(named) + 1), "total"], name="number")
    return table
