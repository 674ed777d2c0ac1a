"""A made kitchen whose truth is known: kettles drawn from the priors, days drawn from a scatter.

The kitchen draws its days by itself, without the code under test: hands late by the absolute
value of a normal number, ingredients and room normal, masses lognormal, sensors with noise of
first-order autoregression. The controller sees the set point when the true reading is off by a
normal error, as large as the noise of the sensor; in two batches of one day these errors are alike
as `kettlecast.propagation` says, drawn here from their covariance.
"""

import math
from dataclasses import dataclass

import numpy as np

import kettlecast as kc

LATE, WARMER, HEAVIER, ROOM = 8.0, 2.0, 0.01, 2.0  # [s], [K], [-], [K]
FLOOR_NOISE, PROBE_NOISE, NOISE_TIME = 1.0, 0.4, 60.0  # [K], [K], [s]
QUANTUM = 0.1  # of a logged reading [K]
STEP = 2.0  # of a log [s]
SCATTER = kc.Scatter(LATE, WARMER, HEAVIER, ROOM, FLOOR_NOISE, PROBE_NOISE)
UNKNOWN = (
    "floor.efficiency",
    "floor.capacity_factor",
    "floor.film_factor",
    "evaporation.factor",
    "piece.film_factor",
    "probe.lag",
)
COARSE = kc.Options(tolerance=1e-4, output_interval=3600.0)
FIT = kc.FitOptions(integration=COARSE, max_evaluations=25)

KETTLE = kc.Kettle(
    name="made kettle",
    diameter=0.45,
    height=0.40,
    floor_power=9000.0,
    surroundings=kc.Surroundings(temperature=295.15),
)


def _phase(name: str, set_point: float, hold: float, additions: list[kc.Addition]) -> kc.Phase:
    return kc.Phase(
        name=name,
        regulated=kc.Regulated.probe,
        set_point=set_point,
        ends=[kc.EndRule(kind=kc.EndKind.held, value=hold)],
        additions=additions,
        agitation=kc.Agitation(speed=0.4),
    )


def _water(mass: float, celsius: float, delay: float) -> kc.Addition:
    return kc.Addition(
        name="water",
        food=kc.food("water"),
        mass=mass,
        temperature=celsius + 273.15,
        delay=delay,
        pour_time=20.0,
    )


def recipe(more_water: float = 0.0, carrot: float = 4.0) -> kc.Recipe:
    """Water is warmed, then cold carrots come in."""
    pieces = kc.Addition(
        name="carrot",
        food=kc.food("carrot"),
        mass=carrot,
        temperature=278.15,
        shape=kc.Shape.sphere,
        piece_size=0.012,
        delay=10.0,
        pour_time=15.0,
    )
    return kc.Recipe(
        name="carrots",
        phases=[
            _phase("warm", 333.15, 60.0, [_water(12.0 + more_water, 14.0, 5.0)]),
            _phase("cook", 363.15, 120.0, [pieces]),
        ],
    )


KNOWN = recipe()
CHANGED = recipe(more_water=1.5, carrot=6.0)


@dataclass(frozen=True)
class Day:
    """One batch as it went: the recipe with what really happened, and what the sensors said."""

    cooked: kc.Recipe
    result: object
    misread: tuple[float, ...]  # set point seen this much too high [K]
    lateness: tuple[float, ...]

    @property
    def truth(self) -> dict[str, float]:
        """What an interval should hold, SI units."""
        phases = self.result.phases
        over = (one.overshoot + e for one, e in zip(phases, self.misread, strict=True))
        return {
            "phase 1": phases[0].duration,
            "phase 2": phases[1].duration,
            "total": self.result.duration,
            "overshoot": max(list(over)[1], 0.0),
            "evaporated": sum(one.evaporated for one in phases),
        }


def true_coefficients(generator: np.random.Generator) -> kc.Coefficients:
    """A kettle drawn from the prior spreads of its cards."""
    cards = {card.name: card for card in kc.coefficient_cards()}
    values = {}
    for name in UNKNOWN:
        card = cards[name]
        value = card.value * math.exp(card.spread * generator.normal())
        values[name] = min(max(value, card.lower), card.upper)
    return kc.Coefficients(values)


def misread(noise: np.random.Generator) -> list[float]:
    """Errors of the set points of a batch [K]."""
    return [PROBE_NOISE * noise.normal() for _ in KNOWN.phases]


def _poured(planned: kc.Recipe) -> np.ndarray:
    return np.cumsum([sum(one.mass for one in phase.additions) for phase in planned.phases])


def misread_alike(first: list[float], noise: np.random.Generator) -> list[float]:
    """Errors of the changed batch on the day on which the known one had the errors `first` [K]."""
    apart = np.log(_poured(CHANGED) / _poured(KNOWN)) / 0.1
    alike = np.exp(-0.5 * apart**2)
    fresh = np.sqrt(1.0 - alike**2) * misread(noise)
    return (alike * first + fresh).tolist()


def cook(
    planned: kc.Recipe,
    truth: kc.Coefficients,
    generator: np.random.Generator,
    misread: list[float],
    step: float = 3600.0,
) -> Day:
    """One batch of a recipe on one day; `misread` is the error of each set point [K]."""
    lateness, phases = [], []
    for phase, error in zip(planned.phases, misread, strict=True):
        additions = []
        for one in phase.additions:
            late = abs(LATE * generator.normal())
            changed = one.replace(
                delay=one.delay + late,
                temperature=one.temperature + WARMER * generator.normal(),
                mass=one.mass * math.exp(HEAVIER * generator.normal()),
            )
            additions.append(changed)
            lateness.append(late)
        phases.append(phase.replace(additions=additions, set_point=phase.set_point + error))
    cooked = planned.replace(phases=phases)
    room = KETTLE.surroundings.temperature + ROOM * generator.normal()
    result = kc.forecast(
        KETTLE,
        cooked,
        coefficients=truth,
        room=KETTLE.surroundings.replace(temperature=room),
        options=COARSE.replace(output_interval=step),
    )
    return Day(cooked, result.result, tuple(misread), tuple(lateness))


def _noise(count: int, size: float, generator: np.random.Generator) -> np.ndarray:
    """First-order autoregression with correlation exp(-t / NOISE_TIME) [K]."""
    alike = math.exp(-STEP / NOISE_TIME)
    fresh = math.sqrt(1.0 - alike**2) * generator.normal(size=count)
    values = [generator.normal()]
    for one in fresh[1:]:
        values.append(alike * values[-1] + one)
    return size * np.array(values)


def log_of(day: Day, generator: np.random.Generator, name: str) -> kc.Run:
    """What a logger and an events file say of a day: times, masses and temperatures as poured."""
    names, trace = list(day.result.trace_names), day.result.trace
    time = np.arange(0.0, day.result.duration, STEP)
    place = np.searchsorted(trace[:, 0], time, side="right") - 1

    def reading(sensor: str, noise: float) -> np.ndarray:
        exact = np.interp(time, trace[:, 0], trace[:, names.index(f"{sensor}.reading")])
        return QUANTUM * np.round((exact + _noise(time.size, noise, generator)) / QUANTUM)

    starts = [one.start for one in day.result.phases]
    pours = [
        (start + one.delay, one)
        for start, phase in zip(starts, day.cooked.phases, strict=True)
        for one in phase.additions
    ]
    return kc.Run(
        name=name,
        time=time,
        floor_reading=reading("floor_sensor", FLOOR_NOISE),
        probe_reading=reading("probe", PROBE_NOISE),
        floor_heat=trace[place, names.index("floor.heat")],
        jacket_heat=np.zeros(time.size),
        agitator_speed=trace[place, names.index("agitator.speed")],
        events=(),
        pours=tuple(pours),
        phases=tuple(starts),
        reached=(None,) * len(starts),
        covers=((0.0, kc.Cover.open),),
        jacket_limits=(),
        cooling_limits=(),
        findings=(),
        file=name,
        sha256="",
        lateness=day.lateness,
    )
