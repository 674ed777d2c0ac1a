"""Steam and cold liquid in the jacket, stirring heat and boiling syrup, against closed forms.

Kern's batches have one overall coefficient. Here it is constant because the film of the product,
nine tenths of the resistance, is that of a liquid of one viscosity; it is made of the correlations
of transfer.agitation, .condensation and .jacket in series with all of the wall.
"""

from __future__ import annotations

import math
from pathlib import Path

import numpy as np
from case import Case, Outcome, relative
from closed_forms import (
    ICE,
    SHEET,
    column,
    ideal,
    mean_specific_heat,
    metal_capacity,
    phase,
    poured,
    run,
    signal,
    wet_height,
    when,
)

import kettlecast as kc

TITLE = "Jackets, stirring heat and boiling syrup against closed forms"
MASS, SPEED, THICKNESS = 58.0, 5.0, 0.5  # [kg], [1/s], viscosity [Pa s]
STAINLESS_CONDUCTIVITY = 16.6  # [W/(m K)], AISI 304 at 400 K, Incropera & DeWitt, table A.1
GAUGE = 0.0  # of the steam [Pa]: no wall hot enough to boil the liquid
BETTER = 6.0  # factor on the film in the jacket
GAP = 2e-3  # of the jacket [m]

LIMITS = (
    "Kern's batches: 2 %. Liquid of 0.5 Pa s at any temperature; "
    "its conductivity and specific heat move the coefficient by 2 % either way about 60 degC; "
    "natural convection adds less than 1 % to the film.",
    "The jacket of the model is one stirred body, so that conductance and capacity flow of the "
    "medium stand in series; Kern's medium changes along its way and takes more: shown.",
    "Stirring heat: 1 %, the density of water at the mean temperature. Boiling syrup: 0.5 %.",
)


def liquid(mass: float, celsius: float) -> kc.Addition:
    """Water as thick as THICKNESS at any temperature and shear."""
    even = kc.Consistency(consistency=THICKNESS, flow_index=1.0, activation_energy=0.0)
    water = poured(mass, celsius)
    return water.replace(food=water.food.replace(consistency=even))


def jacketed(wall: float, cold: kc.JacketFlow | None = None) -> kc.Kettle:
    """A column with its jacket as high as the product wets the wall, and an anchor."""
    kettle = column(60.0)
    return kettle.replace(
        floor_power=0.0,
        wall_thickness=wall,
        agitator=kc.AgitatorKind.anchor,
        jacket=kc.Jacket(
            kind=kc.JacketKind.steam,
            power=2e6,
            height=wet_height(kettle, MASS),
            gap=GAP,
            steam_pressure=GAUGE,
            cooling=cold or kc.JacketFlow(),
        ),
    )


def product_film(kettle: kc.Kettle, celsius: float) -> float:
    """Of the stirred liquid at the wall [W/(m2 K)]."""
    water, films, at = kc.properties.water, kc.transfer.agitation, celsius + ICE
    conductivity, density = float(water.conductivity(at)), float(water.density(at))
    nusselt = films.wall_nusselt(
        kc.Impeller.anchor,
        films.reynolds(density, SPEED, kettle.agitator_diameter, THICKNESS),
        films.prandtl(float(water.specific_heat(at)), THICKNESS, conductivity),
    )
    return films.film_coefficient(nusselt, conductivity, kettle.diameter)


def conductance(kettle: kc.Kettle, product: float, jacket: float) -> float:
    """U A between product and jacket [W/K]."""
    overall = kc.transfer.jacket.overall_coefficient(
        product, jacket, kettle.wall_thickness, STAINLESS_CONDUCTIVITY
    )
    return overall * math.pi * kettle.diameter * kettle.jacket.height


def steam_film(kettle: kc.Kettle, product: float, celsius: float) -> float:
    """Of the condensate, with the wall where the films put it [W/(m2 K)]."""
    steam, water = kc.properties.steam, kc.properties.water
    hot = steam.temperature(GAUGE)
    behind = product / BETTER  # what a film of steam is compared with
    film = 1e4
    for _ in range(20):
        subcooling = (hot - celsius - ICE) * behind / (behind + film)
        middle = hot - 0.5 * subcooling
        viscosity, conductivity = float(water.viscosity(middle)), float(water.conductivity(middle))
        prandtl = float(water.specific_heat(middle)) * viscosity / conductivity
        film = kc.transfer.condensation.jacket_coefficient(
            float(water.density(middle)),
            float(steam.density(GAUGE)),
            conductivity,
            viscosity,
            float(steam.latent_heat(GAUGE)),
            prandtl,
            subcooling,
            kettle.jacket.height,
        )
    return BETTER * film


def between_temperatures(kettle: kc.Kettle, made: kc.Forecast, span: tuple[float, float]) -> float:
    """Time from one temperature of the liquid to another, up or down [s]."""
    time, liquid_temperature = signal(made, "time"), signal(made, "liquid.temperature") - ICE
    if span[1] > span[0]:
        return when(made, span[1]) - when(made, span[0])
    fall = -liquid_temperature
    return float(np.diff(np.interp([-span[0], -span[1]], fall, time))[0])


def capacity(kettle: kc.Kettle, span: tuple[float, float]) -> float:
    """Heat capacity of liquid, sheet floor and the half of the wall that goes with it [J/K]."""
    return MASS * mean_specific_heat(*sorted(span)) + metal_capacity(kettle, 0.0)


def kern_steam(wall: float) -> Case:
    """Isothermal medium: 58 kg from 40 to 80 degC by steam of 100 degC."""
    kettle, span = jacketed(wall), (40.0, 80.0)
    heat = phase(3000.0, [liquid(MASS, 20.0)], 250.0)
    heat = heat.replace(agitation=kc.Agitation(speed=SPEED), jacket_limit=200.0 + ICE)
    made = run(kettle, ideal(wall__film_factor=1.0, jacket__film_factor=BETTER), 20.0, heat)
    product = product_film(kettle, 60.0)
    exact = kc.transfer.batch.time_to_temperature(
        capacity(kettle, span),
        conductance(kettle, product, steam_film(kettle, product, 60.0)),
        kc.properties.steam.temperature(GAUGE),
        span[0] + ICE,
        span[1] + ICE,
    )
    name = f"58 kg by steam of 100 degC through {1e3 * wall:g} mm of wall, 40 to 80 degC: time"
    pair = exact, between_temperatures(kettle, made, span)
    return relative(name, "Kern (1950), ch. 18, isothermal medium", pair, 0.02, "s")


def gap_film(kettle: kc.Kettle, celsius: float) -> float:
    """Of the cold liquid in the jacket [W/(m2 K)]."""
    water, jacket, at = kc.properties.glycol, kc.transfer.jacket, celsius + ICE
    conductivity, viscosity = water.conductivity(0.0, at), water.viscosity(0.0, at)
    prandtl = kc.transfer.agitation.prandtl(water.specific_heat(0.0, at), viscosity, conductivity)
    section = math.pi * (kettle.diameter + GAP) * GAP
    reynolds = kettle.jacket.cooling.flow * 2.0 * GAP / (section * viscosity)
    ratio = kettle.diameter / (kettle.diameter + 2.0 * GAP)
    nusselt = jacket.gap_nusselt(reynolds, prandtl, ratio, 2.0 * GAP / kettle.jacket.height)
    return BETTER * nusselt * conductivity / (2.0 * GAP)


def kern_cold_water() -> list[Case]:
    """Non-isothermal medium: 58 kg from 80 to 50 degC by 0.5 kg/s of water of 10 degC."""
    inlet, span = 10.0, (80.0, 50.0)
    cold = kc.JacketFlow(flow=0.5, inlet_temperature=inlet + ICE)
    kettle = jacketed(2e-4, cold)
    cool = phase(2400.0, [liquid(MASS, 90.0)]).replace(
        agitation=kc.Agitation(speed=SPEED), jacket=kc.JacketUse.cool
    )
    made = run(kettle, ideal(wall__film_factor=1.0, jacket__film_factor=BETTER), 90.0, cool)
    capacity_flow = cold.flow * kc.properties.glycol.specific_heat(0.0, inlet + ICE)
    # The jacket lies a third of the way from inlet to product at these conductances.
    own = conductance(kettle, product_film(kettle, 65.0), gap_film(kettle, inlet + 55.0 / 3.0))
    in_series = 1.0 / (1.0 / own + 1.0 / capacity_flow)
    batch = kc.transfer.batch
    got = between_temperatures(kettle, made, span)
    name = "58 kg by 0.5 kg/s of water of 10 degC in the jacket, 80 to 50 degC: time"
    forms = (
        (f"{name}, stirred jacket", "conductances in series", in_series, 0.02),
        (
            f"{name}, jacket with a way through it",
            "Kern (1950), ch. 18, non-isothermal medium",
            batch.flowing_medium_conductance(own, capacity_flow),
            None,
        ),
    )
    return [
        relative(
            told,
            source,
            (
                batch.time_to_temperature(
                    capacity(kettle, span),
                    effective,
                    inlet + ICE,
                    span[0] + ICE,
                    span[1] + ICE,
                ),
                got,
            ),
            limit,
            "s",
        )
        for told, source, effective, limit in forms
    ]


def stirring_heat() -> Case:
    """58 kg stirred for an hour without heat or loss."""
    start, speed, duration = 60.0, 10.0, 3600.0
    kettle = jacketed(SHEET).replace(jacket=kc.Jacket(), floor_power=1.0)
    rest = phase(duration, [liquid(MASS, start)]).replace(agitation=kc.Agitation(speed=speed))
    made = run(kettle, ideal(agitator__power_factor=1.0), start, rest)
    power = kc.transfer.agitation.stirring_heat(
        kc.Impeller.anchor,
        float(kc.properties.water.density(start + ICE)),
        THICKNESS,
        speed,
        kettle.agitator_diameter,
    )
    rise = float(signal(made, "liquid.temperature")[-1]) - start - ICE
    held = MASS * mean_specific_heat(start, start + 5.0) + metal_capacity(kettle, MASS)
    pair = power * duration / held, rise
    name = "58 kg of liquid of 0.5 Pa s stirred at 10 turns per second for 1 h: rise"
    return relative(name, "P t / (m cp)", pair, 0.01, "K")


def boiling_syrup() -> Case:
    """Water that 5 kW boil out of syrup of 75 % sugar, whose boiling point rises meanwhile."""
    sugar, water, start, duration = 45.0, 15.0, 108.0, 300.0
    kettle, lid = column(60.0), kc.Cover.lid
    sweet = poured(sugar, start).replace(name="sugar", food=kc.food("sugar"))
    first = phase(600.0, [sweet, poured(water, start)], 250.0, lid)
    made = run(kettle, ideal(), start, first, phase(duration, None, 250.0, lid))
    now = signal(made, "time") >= first.ends[0].value
    boiling = signal(made, "liquid.temperature")[now]
    middle = 0.5 * float(boiling[0] + boiling[-1])
    left = float(signal(made, "liquid.water")[now].mean())
    held = (
        sugar * kc.properties.foods.specific_heat(kc.food("sugar"), middle)
        + left * float(kc.properties.water.specific_heat(middle))
        + metal_capacity(kettle, sugar + left)
    )
    spent = kettle.floor_power * duration - held * float(boiling[-1] - boiling[0])
    latent = float(kc.properties.water.latent_heat(middle))
    pair = kc.transfer.batch.mass_of_vapour(spent, latent), made.result.phases[1].evaporated
    name = "5 kW into boiling syrup of 75 % sugar: boiled off in 300 s"
    source = "latent heat at its boiling point, less what warms the syrup"
    return relative(name, source, pair, 5e-3, "kg")


def outcome(folder: Path) -> Outcome:
    """Runs the comparison; nothing is written to `folder`."""
    cases = [
        kern_steam(2e-4),
        kern_steam(3e-3),
        *kern_cold_water(),
        stirring_heat(),
        boiling_syrup(),
    ]
    return Outcome(TITLE, tuple(cases), LIMITS)
