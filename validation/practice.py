"""A kettle that was never fitted, against facts of the trade.

One generic kettle, default coefficients: what it does has to lie where cooks and engineers expect
any such kettle. The ranges are common practice and have no source; a case out of its range says
that physics is missing or a default is off, and is not to be tuned away here.
"""

from __future__ import annotations

import math
from pathlib import Path

import numpy as np
from case import Case, Outcome, at_most, between

import kettlecast as kc

TITLE = "A generic, unfitted kettle against common practice"
SOURCE = "common practice, no source"
ICE, FOREVER = 273.15, 250.0  # a set point [degC] that no product reaches
DIAMETER = 0.70
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
STIR = kc.Agitation(speed=25.0 / 60.0)

NOTES = (
    f"{KETTLE.name}: 120 L, {DIAMETER:g} m wide, anchor at 25 rpm, 24 kW under the floor, 8 kW "
    "electric jacket, all coefficients at their defaults.",
    "Sweating: 90 degC in the mean and 90 % of the free juice out of the pieces.",
    "Coefficients: from the heater side of the floor to the liquid. Oil stands in for a viscous "
    "sauce.",
    "Not answered here: steam jackets, cooling water in the jacket, power drawn by the agitator.",
)


def addition(food: str, mass: float, celsius: float, piece: float = 0.0) -> kc.Addition:
    """A liquid, or pieces of a size [m] taken as spheres, poured within 20 s."""
    shape = kc.Shape.sphere if piece else kc.Shape.none
    return kc.Addition(
        name=food,
        food=kc.food(food),
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
) -> kc.Phase:
    """A stirred, open phase with one end rule; temperatures that end it are the probe's."""
    return kc.Phase(
        name="phase",
        regulated=regulated,
        set_point=celsius + ICE,
        ends=[kc.EndRule(kind=end[0], value=end[1])],
        additions=additions or [],
        agitation=STIR,
    )


def run(*phases: kc.Phase, start: float = 22.0, **coefficients: float) -> kc.Forecast:
    """Forecast from a temperature of the kettle [degC]."""
    changed = {name.replace("__", "."): value for name, value in coefficients.items()}
    return kc.forecast(
        KETTLE,
        kc.Recipe(name="practice", phases=list(phases)),
        coefficients=kc.Coefficients().replace(changed),
        start=kc.Start(floor=start + ICE, wall=start + ICE),
        options=kc.Options(output_interval=2.0),
    )


def signal(made: kc.Forecast, name: str) -> np.ndarray:
    """One column of the trace, temperatures in K."""
    return np.asarray(made.result.trace)[:, list(made.result.trace_names).index(name)]


def first(time: np.ndarray, met: np.ndarray) -> float:
    """First time at which something is met; infinite if never."""
    return float(time[int(np.argmax(met))]) if met.any() else math.inf


def fat_and_onions() -> list[Case]:
    """2 kg of oil on a floor set to 138 degC, then 20 lb of cold onions at 149 degC."""
    oil = phase(
        kc.Regulated.floor, 138.0, (kc.EndKind.held, 60.0), [addition("cooking oil", 2.0, 22.0)]
    )
    pieces = addition("onion", 20.0 * 0.45359237, 4.0, 0.010)
    sweat = phase(kc.Regulated.floor, 149.0, (kc.EndKind.elapsed, 2400.0), [pieces])
    made = run(oil, sweat)
    reached = made.result.phases[0].time_to_reach or math.inf
    time = signal(made, "time") - made.result.phases[1].start
    core, surface = (
        signal(made, "onion.core_temperature"),
        signal(made, "onion.surface_temperature"),
    )
    mean = 0.5 * (core + surface)
    free = pieces.mass * pieces.food.composition.water * pieces.food.juice_fraction
    given = signal(made, "liquid.water") + signal(made, "vapour.mass")
    hot = (time > 0.0) & (mean >= 90.0 + ICE)
    soft = first(time, hot & (given >= 0.9 * free))
    text = "20 lb of onions, 4 degC, 10 mm, on a floor at 149 degC"
    minutes = f"{first(time, hot) / 60.0:.2g} min"
    oil_name = "2 kg of oil on a floor set to 138 degC: ready"
    return [
        between(oil_name, SOURCE, reached / 60.0, (2.0, 5.0), "min"),
        between(f"{text}: sweated", SOURCE, soft / 60.0, (5.0, 25.0), "min"),
        Case(f"{text}: 90 degC in the mean", SOURCE, "-", minutes, "-", "none", None),
    ]


def heating_time(mass: float, start: float, target: float, jacket: bool) -> float:
    """Time to heat water at full power [min]; the jacket is brought to 100 degC if in use."""
    heat = phase(
        kc.Regulated.probe,
        FOREVER,
        (kc.EndKind.above, target + ICE),
        [addition("water", mass, start)],
    )
    made = run(heat.replace(jacket=kc.JacketUse.heat if jacket else kc.JacketUse.off, jacket_limit=100.0 + ICE))
    return made.result.phases[0].duration / 60.0


def water() -> list[Case]:
    """A full kettle to the boil, and what the jacket brings."""
    without = heating_time(60.0, 4.0, 90.0, False)
    with_jacket = heating_time(60.0, 4.0, 90.0, True)
    full = heating_time(115.0, 12.0, 99.0, False)
    return [
        between("Full kettle of water from 12 to 99 degC", SOURCE, full, (30.0, 70.0), "min"),
        between(
            "60 kg of water at 4 degC with the jacket at 100 degC: time to 90 degC as a share of "
            "that without",
            SOURCE,
            with_jacket / without,
            (0.5, 0.97),
        ),
    ]


def loss_at_boil() -> Case:
    """Heat that an open boiling surface loses besides its vapour."""
    time = 1500.0
    boil = phase(
        kc.Regulated.probe, FOREVER, (kc.EndKind.elapsed, time), [addition("water", 100.0, 99.9)]
    )
    made = run(boil, start=99.9, wall__loss=0.0, floor__loss=0.0)
    lost = made.balance.lost_energy / time / AREA / 1e3
    name = "Open at the boil: loss of the surface beyond boil-off"
    return between(name, SOURCE, lost, (1.0, 3.0), "kW/m2")


def thickened() -> list[Case]:
    """Milk thickened with sugar, egg and flour, heated under a floor-to-product limit."""
    foods = {"milk": (50.0, 5.0), "sugar": (12.0, 20.0), "egg": (8.0, 5.0), "flour": (3.0, 20.0)}
    additions = [addition(name, mass, celsius) for name, (mass, celsius) in foods.items()]
    heat = phase(kc.Regulated.probe, 84.0, (kc.EndKind.held, 300.0), additions)
    cases = []
    for limit in (15.0, 25.0):
        made = run(heat.replace(heat_limit=0.5, difference_limit=limit))
        difference = signal(made, "floor_sensor.reading") - signal(made, "probe.reading")
        name = f"Custard at half heat, floor at most {limit:g} K over product: excess"
        excess = max(0.0, float(difference.max()) - limit)
        cases.append(at_most(name, f"{SOURCE}: bands of 2 to 5 K", excess, 2.0, "K"))
    return cases


def overall_coefficient(food: str, speed: float) -> float:
    """From the heater side of the floor to 80 kg of a liquid [W/(m2 K)], after 700 s at 30 %."""
    heat = phase(
        kc.Regulated.probe, FOREVER, (kc.EndKind.elapsed, 900.0), [addition(food, 80.0, 20.0)]
    ).replace(heat_limit=0.3, agitation=kc.Agitation(speed=speed))
    made = run(heat, floor_sensor__position=1.0, floor_sensor__lag=0.2, floor__loss=0.0)
    time = signal(made, "time")
    floor = np.interp(700.0, time, signal(made, "floor_sensor.reading"))
    liquid = np.interp(700.0, time, signal(made, "liquid.temperature"))
    power = 0.3 * KETTLE.floor_power * kc.Coefficients()["floor.efficiency"]
    return float(power / AREA / (floor - liquid))


def coefficients() -> list[Case]:
    """Overall coefficients of a stirred watery, a stirred viscous and a resting viscous liquid."""
    ranges = (
        ("Stirred water", "water", STIR.speed, (600.0, 1500.0)),
        ("Stirred viscous sauce", "cooking oil", STIR.speed, (200.0, 600.0)),
        ("Unstirred thick product", "cooking oil", 0.0, (50.0, 200.0)),
    )
    return [
        between(f"{name}: overall U", SOURCE, overall_coefficient(food, speed), span, "W/(m2 K)")
        for name, food, speed, span in ranges
    ]


def defaults() -> list[Case]:
    """Defaults that stand for parts of any kettle."""
    lag = kc.Coefficients()["probe.lag"]
    bare = kc.Coefficients()["wall.loss"]
    return [
        between("Probe in stirred liquid: time constant", SOURCE, lag, (5.0, 20.0), "s"),
        between(
            "Outside of wall or jacket, between insulated (1) and bare metal (20)",
            SOURCE,
            bare,
            (1.0, 20.0),
            "W/(m2 K)",
        ),
        between("Thermostat band", SOURCE, kc.Controller().dead_band, (2.0, 5.0), "K"),
    ]


def outcome(folder: Path) -> Outcome:
    """Runs the comparison; nothing is written to `folder`."""
    cases = [
        *fat_and_onions(),
        *water(),
        loss_at_boil(),
        *thickened(),
        *coefficients(),
        *defaults(),
    ]
    return Outcome(TITLE, tuple(cases), NOTES)
