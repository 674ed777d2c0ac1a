"""What somebody should be told about a forecast besides its numbers."""

from __future__ import annotations

from collections.abc import Iterator

import numpy as np
from numpy.typing import NDArray

from . import _core
from .units import as_text

# Share of the usable volume from which little is left for foam and splashing; a usual working fill
# is 65 to 85 % (common practice, no source).
_NEARLY_FULL = 0.95
# Share of its greatest amount below which the water of a liquid counts as boiled away.
_DRY = 0.02
_ICE = 273.15


class _Signals:
    """Columns of a trace by name, SI units."""

    def __init__(self, result: _core.ForecastResult) -> None:
        self._columns = {name: i for i, name in enumerate(result.trace_names)}
        self._values = result.trace

    def __getitem__(self, name: str) -> NDArray[np.float64]:
        return np.asarray(self._values[:, self._columns[name]])


def notes_of(
    kettle: _core.Kettle, recipe: _core.Recipe, result: _core.ForecastResult
) -> tuple[str, ...]:
    """Sentences about limits that a forecast meets, each with its phase.

    Told are an agitator that product does not cover once the phase is loaded, a kettle that is
    nearly full, liquid that boils dry or is cooled until it may freeze.

    Parameters
    ----------
    kettle, recipe :
        What was run.
    result :
        Its signals and phases.
    """
    signals = _Signals(result)
    phase = signals["phase"].astype(int)
    found: list[str] = []
    for index, planned in enumerate(recipe.phases):
        report = result.phases[index]
        rows = (phase == index) & (signals["time"] >= report.start + report.loaded)
        where = f'phase {index + 1} "{planned.name}"'
        found += [f"In {where} {text}." for text in _of_phase(kettle, signals, rows)]
    return tuple(found)


def _of_phase(kettle: _core.Kettle, signals: _Signals, rows: NDArray[np.bool_]) -> Iterator[str]:
    volume = signals["product.volume"][rows]
    stirred = np.abs(signals["agitator.speed"][rows]) > 0.0
    covering = _core.covering_volume(kettle)
    if stirred.any() and (least := float(volume[stirred].min())) < covering:
        yield (
            f"the agitator turns in {as_text(least, 'volume', digits=3)} of product; "
            f"{as_text(covering, 'volume', digits=3)} cover it"
        )
    usable = _core.usable_volume(kettle)
    if volume.size and (most := float(volume.max())) > _NEARLY_FULL * usable:
        share = f"{100.0 * most / usable:.0f} %"
        yield f"the kettle is filled to {share} of its usable {as_text(usable, 'volume', digits=3)}"
    water = signals["liquid.water"]
    if water[rows].size and water[rows][-1] < _DRY * water.max() < water[rows][0]:
        yield "the liquid boils dry"
    if (coldest := float(signals["liquid.temperature"][rows].min(initial=1e3))) < _ICE:
        yield (
            f"the liquid is cooled to {as_text(coldest, 'temperature', digits=3)}; that it may "
            "freeze is left out"
        )
