"""The kettle model where it reduces to a closed form, against the exact forms of transfer.batch.

Kettles here are extreme on purpose: floor and wall of sheet metal, violent stirring and films six
times the handbook's, so that all of the product has one temperature; no evaporation but where it is
what is checked. What is left of a real kettle is named with each limit.
"""

from __future__ import annotations

import math
from pathlib import Path

import numpy as np
from case import Case, Outcome, absolute, relative

import kettlecast as kc

TITLE = "The kettle model against closed forms"
ICE = 273.15
SHEET = 1e-3  # [m]

#: Sheet metals of the model: AISI 304 and plain carbon steel, Incropera & DeWitt, table A.1
#: [J/(m3 K)].
STAINLESS, CARBON = 7900.0 * 515.0, 7854.0 * 487.0
CARBON_CONDUCTIVITY = 56.7  # [W/(m K)], same table
#: The wall counts as wet this far above the level, and levels take water at 60 degC.
SPLASH, LEVEL_DENSITY = 0.02, 983.2
EMISSIVITY = 0.96  # water, Incropera & DeWitt, table A.11

IDEAL = {
    "floor.efficiency": 1.0,
    "floor.loss": 0.0,
    "floor.film_factor": 6.0,
    "wall.loss": 0.0,
    "wall.film_factor": 6.0,
    "evaporation.factor": 0.02,
    "evaporation.lid_factor": 0.0,
    "elements.heat_capacity": 0.005,
    "elements.lag": 0.5,
    "liquid.turnover": 0.05,
    "liquid.mixing_turns": 0.2,
    "agitator.heat_capacity": 1.0,
    "agitator.power_factor": 1e-4,
    "probe.lag": 0.2,
    "floor_sensor.lag": 0.2,
}
LIMITS = (
    "Heating and cooling with a loss: 0.5 %. The specific heat of water moves by 0.9 % between 4 "
    "and 95 degC, and the closed form knows its mean only; the film inside the wall, 0.2 % of the "
    "resistance, counts as none; radiation of the surface is taken at one mean temperature.",
    "Mixing: 0.05 K, from the metal that the rising level covers and from the specific heat.",
    "Boil-off: 0.5 %; the surface under its lid gives off up to 0.4 % of the heat by radiation.",
    "Elements and liquid: time 0.2 %, elements 0.2 K, overshoot 2 %. The elements are the first "
    "node, the liquid with its sheet metal the second; the sheet floor between them holds 5 % of "
    "what the elements hold per kelvin and is a tenth as far above the liquid.",
)


def column(room: float, power: float = 5e3, height: float = 2.0) -> kc.Kettle:
    """Slender column of water: the free surface is small against the wall."""
    return kc.Kettle(
        name="column",
        diameter=0.2,
        height=height,
        floor_power=power,
        floor_thickness=SHEET,
        wall_thickness=SHEET,
        agitator=kc.AgitatorKind.scraped_anchor,
        agitator_diameter=0.19,
        surroundings=kc.Surroundings(temperature=room + ICE),
    )


def ideal(**changed: float) -> kc.Coefficients:
    """Coefficients of a kettle without losses, some changed (a dot written as two underscores)."""
    return kc.Coefficients().replace(
        IDEAL | {name.replace("__", "."): value for name, value in changed.items()}
    )


def poured(mass: float, celsius: float) -> kc.Addition:
    """Water poured at once."""
    return kc.Addition(name="water", food=kc.food("water"), mass=mass, temperature=celsius + ICE)


def phase(
    duration: float,
    additions: list[kc.Addition] | None = None,
    set_point: float = 0.0,
    cover: kc.Cover = kc.Cover.oil_film,
) -> kc.Phase:
    """A violently stirred phase of a given length; heated if it has a set point [degC]."""
    return kc.Phase(
        name="phase",
        regulated=kc.Regulated.probe if set_point else kc.Regulated.none,
        set_point=set_point + ICE if set_point else 0.0,
        ends=[kc.EndRule(kind=kc.EndKind.elapsed, value=duration)],
        time_limit=2 * duration,
        additions=additions or [],
        agitation=kc.Agitation(speed=10.0),
        cover=cover,
    )


def run(
    kettle: kc.Kettle, coefficients: kc.Coefficients, celsius: float, *phases: kc.Phase
) -> kc.Forecast:
    """Forecast of a kettle that starts at a temperature [degC]."""
    return kc.forecast(
        kettle,
        kc.Recipe(name="closed form", phases=list(phases)),
        coefficients=coefficients,
        start=kc.Start(floor=celsius + ICE, wall=celsius + ICE),
        options=kc.Options(tolerance=1e-6, output_interval=1.0),
    )


def mean_specific_heat(start: float, end: float) -> float:
    """Of water between two temperatures [degC], by the enthalpy of the model [J/(kg K)]."""
    enthalpy = kc.properties.water.specific_enthalpy
    return float(enthalpy(end + ICE) - enthalpy(start + ICE)) / (end - start)


def wet_height(kettle: kc.Kettle, mass: float) -> float:
    """Of the wall, with the splashed rim [m]."""
    return mass / LEVEL_DENSITY / (math.pi / 4.0 * kettle.diameter**2) + SPLASH


def metal_capacity(kettle: kc.Kettle, mass: float) -> float:
    """Heat capacity of sheet floor, its elements and the wetted wall [J/K]."""
    floor = CARBON * SHEET * math.pi / 4.0 * kettle.diameter**2
    wall = STAINLESS * SHEET * math.pi * kettle.diameter * wet_height(kettle, mass)
    return floor + wall + IDEAL["elements.heat_capacity"] * kettle.floor_power


def radiation_conductance(kettle: kc.Kettle, celsius: float) -> float:
    """Of the free surface, between its temperature and the room [W/K]."""
    hot, cold = celsius + ICE, kettle.surroundings.temperature
    flux = EMISSIVITY * 5.670374419e-8 * (hot**4 - cold**4)
    return math.pi / 4.0 * kettle.diameter**2 * flux / (hot - cold)


def signal(made: kc.Forecast, name: str) -> np.ndarray:
    """One column of the trace, temperatures in K."""
    names = list(made.result.trace_names)
    return np.asarray(made.result.trace)[:, names.index(name)]


def when(made: kc.Forecast, celsius: float) -> float:
    """Time at which the product first reaches a temperature [s]."""
    time, product = signal(made, "time"), signal(made, "product.temperature") - ICE
    at = int(np.argmax(product >= celsius))
    if at == 0:
        return math.inf
    share = (celsius - product[at - 1]) / (product[at] - product[at - 1])
    return float(time[at - 1] + share * (time[at] - time[at - 1]))


def heating(loss: float) -> Case:
    """58 kg from 15 to 85 degC at 5 kW."""
    mass, start, target = 58.0, 15.0, 85.0
    kettle = column(22.0)
    made = run(kettle, ideal(wall__loss=loss), start, phase(9000.0, [poured(mass, start)], 250.0))
    capacity = mass * mean_specific_heat(start, target) + metal_capacity(kettle, mass)
    outside = loss * math.pi * kettle.diameter * wet_height(kettle, mass)
    exact = kc.transfer.batch.time_to_temperature(
        capacity,
        outside + radiation_conductance(kettle, 50.0),
        kettle.surroundings.temperature,
        start + ICE,
        target + ICE,
        power=kettle.floor_power,
    )
    name = f"58 kg of water at 5 kW, 15 to 85 degC, wall loss {loss:g} W/(m2 K): time"
    return relative(name, "constant power with linear loss", (exact, when(made, target)), 5e-3, "s")


def cooling() -> Case:
    """58 kg from 80 degC for an hour in a room of 20 degC."""
    mass, start, loss, duration = 58.0, 80.0, 30.0, 3600.0
    kettle = column(20.0)
    made = run(kettle, ideal(wall__loss=loss), start, phase(duration, [poured(mass, start)]))
    outside = loss * math.pi * kettle.diameter * wet_height(kettle, mass)
    exact = kc.transfer.batch.temperature_after(
        mass * mean_specific_heat(60.0, start) + metal_capacity(kettle, mass),
        outside + radiation_conductance(kettle, 70.0),
        20.0 + ICE,
        start + ICE,
        duration,
    )
    fallen = float(start + ICE - signal(made, "product.temperature")[-1])
    name = "58 kg of water under an oil film, 80 degC, after 1 h in 20 degC: fall"
    return relative(name, "lumped body", (start + ICE - exact, fallen), 5e-3, "K")


def cold_addition() -> list[Case]:
    """20 lb of cold water into a hot batch: mixed temperature and time back."""
    hot, cold, mass, added = 82.0, 4.0, 45.0, 20.0 * 0.45359237
    batch, kettle = kc.transfer.batch, column(60.0, height=2.4)
    wait = 30.0
    pour = phase(wait, [poured(added, cold)])
    heat = phase(2000.0, None, 250.0)
    made = run(kettle, ideal(), hot, phase(60.0, [poured(mass, hot)]), pour, heat)
    time, product = signal(made, "time"), signal(made, "product.temperature")
    mixed = float(np.interp(60.0 + wait, time, product))
    metal = metal_capacity(kettle, mass)
    expected = batch.mixing_temperature(
        mass * mean_specific_heat(69.0, hot) + metal,
        hot + ICE,
        added * mean_specific_heat(cold, 69.0),
        cold + ICE,
    )
    after = time > 60.0 + wait
    back = float(np.interp(hot + ICE, product[after], time[after])) - 60.0 - wait
    capacity = (mass + added) * mean_specific_heat(69.0, hot)
    exact = batch.time_to_temperature(
        capacity + metal_capacity(kettle, mass + added),
        radiation_conductance(kettle, 75.0),
        kettle.surroundings.temperature,
        expected,
        hot + ICE,
        power=kettle.floor_power,
    )
    name = "20 lb of water at 4 degC into 45 kg at 82 degC"
    return [
        absolute(f"{name}: mixed", "heat balance", (expected - ICE, mixed - ICE), 0.05, "degC"),
        relative(f"{name}: time back at 5 kW", "heat balance", (exact, back), 5e-3, "s"),
    ]


def boiling() -> Case:
    """Boil-off at constant power."""
    kettle = column(60.0)
    lid = kc.Cover.lid
    first = phase(900.0, [poured(58.0, 99.9)], 250.0, lid)
    made = run(kettle, ideal(), 99.9, first, phase(600.0, None, 250.0, lid))
    boiling_point = float(kc.properties.water.saturation_temperature(101325.0))
    latent = float(kc.properties.water.latent_heat(boiling_point))
    exact = 600.0 * kc.transfer.batch.mass_of_vapour(kettle.floor_power, latent)
    pair = exact, made.result.phases[1].evaporated
    return relative("5 kW into boiling water: boiled off in 600 s", "latent heat", pair, 5e-3, "kg")


def overshoot() -> list[Case]:
    """Elements and liquid: switched off at 90 degC, peak after it."""
    mass, start, target, power = 100.0, 20.0, 90.0, 20e3
    kettle = column(20.0, power).replace(diameter=0.6, height=0.6, agitator_diameter=0.57)
    coefficients = ideal(elements__heat_capacity=1.0, elements__lag=40.0 / 3.0, wall__loss=10.0)
    made = run(kettle, coefficients, start, phase(2400.0, [poured(mass, start)], target))
    time, liquid = signal(made, "time"), signal(made, "liquid.temperature")
    off = float(time[np.nonzero(signal(made, "floor.heat"))[0][-1]])
    # The film and the sheet between elements and liquid stand in series with the elements' lag.
    beyond = signal(made, "floor.temperature") - liquid
    elements = coefficients["elements.heat_capacity"] * power
    sheet = 0.5 * SHEET / CARBON_CONDUCTIVITY / (math.pi / 4.0 * kettle.diameter**2)
    in_series = sheet + float(np.interp(0.5 * off, time, beyond)) / power
    resistance = coefficients["elements.lag"] / elements + in_series
    nodes = {
        "floor_capacity": elements,
        "liquid_capacity": mass * mean_specific_heat(start, target)
        + metal_capacity(kettle, mass)
        - IDEAL["elements.heat_capacity"] * power,
        "conductance": 1.0 / resistance,
        "floor_loss": 0.0,
        "liquid_loss": 10.0 * math.pi * kettle.diameter * wet_height(kettle, mass)
        + radiation_conductance(kettle, 60.0),
        "surroundings": 20.0 + ICE,
    }
    batch, begin = kc.transfer.batch, start + ICE
    # The probe trails the rise by its lag; the heat goes off when the probe reads the set point.
    rise = (np.interp(off - 10.0, time, liquid) - np.interp(off - 60.0, time, liquid)) / 50.0
    limit = target + ICE + float(rise) * coefficients["probe.lag"]
    exact = batch.two_node_time_to(limit, power, begin, begin, **nodes)
    floor, reached = batch.two_node_after(exact, power, begin, begin, **nodes)
    _, peak = batch.two_node_peak(0.0, floor, reached, **nodes)
    got = made.result.phases[0].overshoot or math.nan
    hot = float(np.interp(off, time, signal(made, "elements.temperature"))) - ICE
    name = "Elements of 20 kJ/K under 100 kg of water, switched off at 90 degC"
    source = "two linear nodes"
    return [
        relative(f"{name}: time", source, (exact, off), 2e-3, "s"),
        absolute(f"{name}: elements then", source, (floor - ICE, hot), 0.2, "degC"),
        relative(f"{name}: overshoot", source, (peak - target - ICE, got), 0.02, "K"),
    ]


def outcome(folder: Path) -> Outcome:
    """Runs the comparison; nothing is written to `folder`."""
    cases = [heating(0.0), heating(30.0), cooling(), *cold_addition(), boiling(), *overshoot()]
    return Outcome(TITLE, tuple(cases), LIMITS)
