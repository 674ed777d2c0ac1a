"""Facts of the trade about jackets of steam and of cold water, and about thick product."""

from __future__ import annotations

import math

import numpy as np
from case import Case
from practice_kettle import (
    DIAMETER,
    FOREVER,
    ICE,
    SCRAPER,
    SPEEDS,
    across,
    addition,
    at_speeds,
    minutes,
    phase,
    run,
    signal,
)

import kettlecast as kc

PSI = 6894.757  # [Pa]
#: The shell: a dished floor of the usual depth and a straight wall; filled to 80 % [m], [m3].
SHELL, DISH = 0.55, 0.1935 * DIAMETER
FILL = 0.150
AMPLE = 500e3  #: more steam than any of these kettles can condense [W]


def kettle(coverage: float, psig: float, supply: float = AMPLE) -> kc.Kettle:
    """150 L with steam on a share of the height of its shell, 3 mm of stainless steel all over."""
    return kc.Kettle(
        name="generic with steam",
        diameter=DIAMETER,
        height=SHELL - DISH,
        floor_shape=kc.FloorShape.dished,
        floor_thickness=0.003,
        floor_metal=kc.MetalKind.stainless_steel,
        jacket=kc.Jacket(
            kind=kc.JacketKind.steam,
            power=supply,
            height=coverage * SHELL - DISH,
            under_floor=True,
            steam_pressure=psig * PSI,
        ),
        agitator=kc.AgitatorKind.anchor,
        agitator_diameter=0.66,
    )


def scraped(body: kc.Kettle) -> kc.Kettle:
    """The same with scrapers."""
    return body.replace(agitator=kc.AgitatorKind.scraped_anchor, agitator_diameter=SCRAPER)


def heated_area(body: kc.Kettle, volume: float) -> float:
    """Of wall and floor with steam behind it and product before it [m2]."""
    shape = kc.VesselShape(floor=body.floor_shape, diameter=DIAMETER, wall_height=body.height)
    wet = kc.vessel.wetting(shape, volume)
    return wet.floor_area + min(wet.wall_area, math.pi * DIAMETER * body.jacket.height)


def overall_coefficient(body: kc.Kettle, food: str, thick: str, rpm: float) -> float:
    """Heat into 140 L from 40 to 80 degC, over wetted jacketed area and steam less product.

    Under a lid; what the agitator puts in does not count.
    """
    what = kc.food(food)
    volume = 0.140
    mass = volume * kc.properties.foods.density(what, 60.0 + ICE)
    content = [addition(food, mass, 20.0, thick=thick)]
    heat = phase(kc.Regulated.probe, FOREVER, (kc.EndKind.above, 82.0 + ICE), content, rpm)
    made = run(body, heat.replace(cover=kc.Cover.lid))
    time, product = signal(made, "time"), signal(made, "liquid.temperature")
    span = slice(*np.searchsorted(product, (40.0 + ICE, 80.0 + ICE)))
    time, product = time[span], product[span]
    stirring = made.balance.stirring_energy / made.result.duration * (time[-1] - time[0])
    gained = mass * kc.properties.foods.specific_heat(what, 60.0 + ICE) * (product[-1] - product[0])
    steam = kc.properties.steam.temperature(body.jacket.steam_pressure)
    driven = float(np.trapezoid(steam - product, time))
    return float(gained - stirring) / driven / heated_area(body, volume)


def coefficients() -> list[Case]:
    """Overall coefficients with steam of 10 psig on two thirds of the shell."""
    body = kettle(2.0 / 3.0, 10.0)
    stirred, resting = (600.0, 1500.0), (50.0, 200.0)
    viscous, unit = (200.0, 600.0), "W/(m2 K)"

    def scraped_at_speeds(food: str) -> list[float]:
        return at_speeds(lambda rpm: overall_coefficient(scraped(body), food, food, rpm))

    water = at_speeds(lambda rpm: overall_coefficient(body, "water", "", rpm))
    made = [across("Overall U, steam to stirred water", water, stirred, unit)]
    for food in ("tomato sauce", "apple sauce"):
        name = f"Overall U, steam to scraped {food}"
        made.append(across(name, scraped_at_speeds(food), viscous, unit))
    for food in ("tomato sauce", "tomato paste"):
        alone = [overall_coefficient(scraped(body), food, food, 0.0)]
        made.append(across(f"Overall U, steam to resting {food}", alone, resting, unit))
    return made


def boiling_time(body: kc.Kettle, rpm: float) -> float:
    """Of 150 L of water from 12 to 99 degC under a lid [min]."""
    end = (kc.EndKind.above, 99.0 + ICE)
    heat = phase(kc.Regulated.probe, FOREVER, end, [addition("water", 999.0 * FILL, 12.0)], rpm)
    return minutes(run(body, heat.replace(cover=kc.Cover.lid)))


def to_the_boil() -> list[Case]:
    """A full kettle of water; a boiler of the usual size, and one without a limit."""
    span = (20.0, 45.0)
    made = []
    for supply, told in ((0.25e6 * FILL, "0.25 kW of steam per litre"), (AMPLE, "ample steam")):
        for psig, coverage, share in ((5.0, 0.5, "half"), (15.0, 2.0 / 3.0, "two thirds")):
            body = kettle(coverage, psig, supply)
            times = [boiling_time(body, rpm) for rpm in SPEEDS]
            name = f"Full kettle of water to the boil, {psig:g} psig on {share}, {told}"
            made.append(across(name, times, span, "min"))
    return made


def cooling() -> Case:
    """150 L from 90 to 40 degC with 30 L/min of cold water in the jacket."""

    def cooled(inlet: float, rpm: float) -> float:
        body = kettle(2.0 / 3.0, 10.0)
        cold = kc.JacketFlow(flow=0.5, inlet_temperature=inlet + ICE)
        body = body.replace(jacket=body.jacket.replace(cooling=cold))
        content = [addition("water", 965.0 * FILL, 90.0)]
        cool = phase(kc.Regulated.none, -ICE, (kc.EndKind.below, 40.0 + ICE), content, rpm)
        return minutes(run(body, cool.replace(jacket=kc.JacketUse.cool), start=90.0))

    times = [cooled(inlet, rpm) for inlet in (10.0, 15.0) for rpm in SPEEDS]
    name = "150 L cooled from 90 to 40 degC, 30 L/min of 10 to 15 degC in the jacket"
    return across(name, times, (30.0, 90.0), "min")


def power_drawn() -> list[Case]:
    """Work of scrapers in 140 L of thick product."""

    def kilowatts(food: str, thick: str, rpm: float) -> float:
        content = [addition(food, 140.0, 70.0, thick=thick)]
        turn = phase(kc.Regulated.none, -ICE, (kc.EndKind.elapsed, 120.0), content, rpm)
        made = run(scraped(kettle(2.0 / 3.0, 10.0)), turn, start=70.0)
        span = made.result.duration - made.result.phases[0].loaded
        return made.balance.stirring_energy / span / 1e3

    return [
        across(
            f"Power drawn by scrapers in {thick}",
            at_speeds(lambda rpm, of=(food, thick): kilowatts(*of, rpm)),
            (0.2, 2.0),
            "kW",
        )
        for food, thick in (("potato", "mashed potato"), ("tomato paste", "tomato paste"))
    ]


def cases() -> list[Case]:
    """All of this file."""
    return [*coefficients(), *to_the_boil(), cooling(), *power_drawn()]
