"""How warm a kettle still is when the next batch begins."""

from __future__ import annotations

from . import _core
from .errors import InvalidArgument
from .fit_result import Fit
from .forecasting import Forecast, forecast
from .units import number


def start_after(
    last: Forecast,
    idle: str | float = 0.0,
    *,
    kettle: Fit | None = None,
    coefficients: _core.Coefficients | None = None,
) -> _core.Start:
    """Temperatures of a kettle that was emptied after a batch and then stood open and unheated [K].

    Emptying takes no time and carries no heat of the metal away.

    Parameters
    ----------
    last :
        Forecast of the batch before.
    idle :
        Between emptying and the start of the next batch, as text with a unit or in s.
    kettle :
        The fit behind `last`, if there is one.
    coefficients :
        Those that `last` was made with, if they are not the handbook's.

    Raises
    ------
    InvalidArgument
        `idle` is no time, or is below 0.

    Examples
    --------
    >>> from kettlecast import read_kettle, read_recipe
    >>> from kettlecast.demo import demo_path
    >>> batch = forecast(
    ...     read_kettle(demo_path("kettle.toml")), read_recipe(demo_path("water_boil.toml"))
    ... )
    >>> start_after(batch, "1 h").floor < start_after(batch).floor
    True
    """
    warm = _end_of(last)
    pause = number(idle, "time")
    if pause < 0.0:
        raise InvalidArgument(f"start_after: idle must be 0 s or more, got {idle}")
    if pause == 0.0:
        return warm
    rule = _core.EndRule(kind=_core.EndKind.elapsed, value=pause)
    empty = _core.Recipe(
        name="idle", phases=[_core.Phase(name="idle", ends=[rule], time_limit=pause + 1.0)]
    )
    stood = forecast(
        kettle or last.kettle,
        empty,
        room=last.kettle.surroundings,
        coefficients=coefficients,
        start=warm,
        draws=0,
    )
    return _end_of(stood)


def _end_of(run: Forecast) -> _core.Start:
    names = list(run.result.trace_names)
    row = run.result.trace[-1]
    floor, wall = (float(row[names.index(f"{node}.temperature")]) for node in ("floor", "wall"))
    return _core.Start(floor=floor, wall=wall)
