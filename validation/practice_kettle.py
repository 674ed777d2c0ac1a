"""Generic kettles that were never fitted, and how to run them and judge ranges of the trade."""

from __future__ import annotations

import math
from collections.abc import Callable, Sequence

import numpy as np
from case import Case

import kettlecast as kc
from kettlecast.consistencies import consistency

SOURCE = "common practice, no source"
ICE, FOREVER = 273.15, 250.0  # a set point [degC] that no product reaches

#: Turns of a scraping agitator [rpm]; a fact that names no speed has to hold over all of them.
SPEEDS = (15.0, 25.0, 50.0)

#: Lengths [m].
DIAMETER, SCRAPER = 0.70, 0.69
AREA = math.pi / 4.0 * DIAMETER**2

#: 120 L, 0.2 kW per litre under the floor.
KETTLE = kc.Kettle(
    name="generic",
    diameter=DIAMETER,
    height=0.40,
    working_volume=0.120,
    floor_power=24e3,
    jacket=kc.Jacket(power=8e3, height=0.22),
    agitator=kc.AgitatorKind.anchor,
    agitator_diameter=0.66,
)


def addition(
    food: str, mass: float, celsius: float, piece: float = 0.0, thick: str = ""
) -> kc.Addition:
    """A liquid, of a bundled consistency or none, or pieces of a size [m] taken as spheres."""
    shape = kc.Shape.sphere if piece else kc.Shape.none
    what = kc.food(food)
    return kc.Addition(
        name=food,
        food=what.replace(consistency=consistency(thick)) if thick else what,
        mass=mass,
        temperature=celsius + ICE,
        shape=shape,
        piece_size=piece,
        pour_time=20.0,
    )


def phase(
    regulated: kc.Regulated,
    celsius: float,
    end: tuple[kc.EndKind, float],
    additions: list[kc.Addition] | None = None,
    rpm: float = 25.0,
) -> kc.Phase:
    """A stirred, open phase with one end rule; temperatures that end it are the probe's."""
    return kc.Phase(
        name="phase",
        regulated=regulated,
        set_point=celsius + ICE,
        ends=[kc.EndRule(kind=end[0], value=end[1])],
        additions=additions or [],
        agitation=kc.Agitation(speed=rpm / 60.0),
        jacket_limit=200.0 + ICE,
    )


def run(
    kettle: kc.Kettle, *phases: kc.Phase, start: float = 22.0, **coefficients: float
) -> kc.Forecast:
    """Forecast from a temperature of the kettle [degC]."""
    changed = {name.replace("__", "."): value for name, value in coefficients.items()}
    return kc.forecast(
        kettle,
        kc.Recipe(name="practice", phases=list(phases)),
        coefficients=kc.Coefficients().replace(changed),
        start=kc.Start(floor=start + ICE, wall=start + ICE),
        options=kc.Options(output_interval=2.0),
    )


def signal(made: kc.Forecast, name: str) -> np.ndarray:
    """One column of the trace, temperatures in K."""
    return np.asarray(made.result.trace)[:, list(made.result.trace_names).index(name)]


def minutes(made: kc.Forecast) -> float:
    """Of the last phase; infinite if it ran into its time limit."""
    last = made.result.phases[-1]
    return math.inf if last.ended == kc.EndReason.timed_out else last.duration / 60.0


def first(time: np.ndarray, met: np.ndarray) -> float:
    """First time at which something is met; infinite if never."""
    return float(time[int(np.argmax(met))]) if met.any() else math.inf


def at_speeds(got: Callable[[float], float]) -> list[float]:
    """A figure at each of the speeds [rpm]."""
    return [got(rpm) for rpm in SPEEDS]


def across(
    name: str, got: Sequence[float], span: tuple[float, float], unit: str = "", source: str = SOURCE
) -> Case:
    """Figures, one per speed or setting, all of which have to lie in a range."""
    low, high = span
    told = f"{low:.4g} to {high:.4g} {unit}".strip()
    least, most = min(got), max(got)
    came = f"{least:.4g} to {most:.4g} {unit}".strip()
    return Case(name, source, told, came, "-", "in range", bool(low <= least and most <= high))
