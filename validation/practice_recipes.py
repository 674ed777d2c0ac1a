"""Facts of the trade about what is cooked: custard, candy, a reduction."""

from __future__ import annotations

import math

import numpy as np
from case import Case, relative
from practice_kettle import (
    FOREVER,
    ICE,
    KETTLE,
    SCRAPER,
    SOURCE,
    SPEEDS,
    across,
    addition,
    at_speeds,
    phase,
    run,
    signal,
)

import kettlecast as kc

#: Milk, egg and flour bind as custard does; sugar dissolves in it [kg], [degC].
CUSTARD = (
    addition("milk", 50.0, 5.0, thick="custard"),
    addition("egg", 8.0, 5.0, thick="custard"),
    addition("sugar", 12.0, 20.0),
    addition("wheat flour", 3.0, 20.0),
)
DENVER = 1600.0  #: altitude [m]
SUGAR, WATER = 20.0, 8.0  #: in the pan [kg]
LATENT = 2.257  #: of water at 100 degC, any steam table [MJ/kg]


def custard() -> list[Case]:
    """Sugar- and egg-thickened milk under a lid, half heat, a limit of floor less product."""
    body = KETTLE.replace(agitator=kc.AgitatorKind.scraped_anchor, agitator_diameter=SCRAPER)
    mass = sum(part.mass for part in CUSTARD)

    def heated(content: list[kc.Addition], limit: float, rpm: float) -> kc.Forecast:
        end = (kc.EndKind.held, 300.0)
        heat = phase(kc.Regulated.probe, 84.0, end, content, rpm)
        heat = heat.replace(heat_limit=0.5, difference_limit=limit, cover=kc.Cover.lid)
        return run(body, heat)

    made = []
    for limit in (15.0, 25.0):
        runs = [heated(list(CUSTARD), limit, rpm) for rpm in SPEEDS]
        name = f"Custard at half heat, floor at most {limit:g} K over product: most that it was"
        most = [
            float((signal(one, "floor_sensor.reading") - signal(one, "probe.reading")).max())
            for one in runs
        ]
        band = f"{SOURCE}: limit and dead band of {body.controller.dead_band:g} K"
        made.append(across(name, most, (0.0, limit + body.controller.dead_band), "K", band))
        if limit == 15.0:
            water = [heated([addition("water", mass, 5.0)], limit, rpm) for rpm in SPEEDS]
            name = "Custard under that limit: time to 84 degC over that of as much water"
            ratios = [reached(one) / reached(other) for one, other in zip(runs, water, strict=True)]
            made.append(across(name, ratios, (1.0, 5.0)))
    return made


def reached(made: kc.Forecast) -> float:
    """Time to the set point [s]; infinite if never."""
    return made.result.phases[0].time_to_reach or math.inf


def syrup(target: float, altitude: float, rpm: float) -> tuple[np.ndarray, np.ndarray]:
    """Share of sugar [%] and reading of the probe [degC] while syrup boils down to a reading."""
    air = kc.Surroundings(pressure=kc.properties.pressure_at_altitude(altitude))
    pan = kc.Kettle(
        name="candy",
        diameter=0.5,
        height=0.4,
        floor_power=12e3,
        agitator=kc.AgitatorKind.scraped_anchor,
        agitator_diameter=0.49,
        surroundings=air,
    )
    content = [addition("sugar", SUGAR, 22.0), addition("water", WATER, 22.0)]
    end = (kc.EndKind.above, target + ICE)
    made = run(pan, phase(kc.Regulated.probe, FOREVER, end, content, rpm))
    share = 100.0 * SUGAR / (SUGAR + signal(made, "liquid.water"))
    return share, signal(made, "probe.reading") - ICE


def candy() -> list[Case]:
    """Stages of syrup by what the probe shows, at sea level and in thinner air."""
    made = []
    for stage, target, sugar in (("Soft ball", 115.0, 85.0), ("Hard crack", 150.0, 99.0)):
        ends = at_speeds(lambda rpm, to=target: float(syrup(to, 0.0, rpm)[0][-1]))
        name = f"{stage}, probe at {target:g} degC at sea level: sugar"
        made.append(
            across(
                name,
                ends,
                (sugar - 2.0, sugar + 2.0),
                "%",
                "percentages common in teaching, +- 2 % for their rounding",
            )
        )
        high = []
        for rpm, share in zip(SPEEDS, ends, strict=True):
            shares, readings = syrup(target, DENVER, rpm)
            poured = int(np.argmin(shares))
            high.append(target - float(np.interp(share, shares[poured:], readings[poured:])))
        name = f"{stage} of the same sugar at {DENVER:g} m: probe lower by"
        rule = f"{SOURCE}: about 5 K; 1 degF per 500 ft gives 5.8, boiling water 5.3"
        made.append(across(name, high, (4.0, 7.0), "K", rule))
    return made


def reduction() -> list[Case]:
    """60 kg of stock made hot, then boiled until 12 % of it has left."""

    def reduced(rpm: float) -> kc.Forecast:
        end = (kc.EndKind.above, 99.0 + ICE)
        heat = phase(kc.Regulated.probe, FOREVER, end, [addition("stock", 60.0, 20.0)], rpm)
        boil = phase(kc.Regulated.probe, FOREVER, (kc.EndKind.share_lost, 0.12), None, rpm)
        return run(KETTLE, heat, boil)

    runs = [reduced(rpm) for rpm in SPEEDS]
    boiled = [made.result.phases[1] for made in runs]
    heat = [one.energy / one.evaporated / 1e6 for one in boiled]
    before = 60.0 - runs[0].result.phases[0].evaporated
    left = 0.88 * before, runs[0].result.product_mass
    name = "Stock boiled until 12 % of its mass is lost"
    return [
        relative(f"{name}: mass left", "mass balance", left, 1e-3, "kg"),
        across(
            f"{name}: heat per mass",
            heat,
            (LATENT, 1.15 * LATENT),
            "MJ/kg",
            f"latent heat at 100 degC; {SOURCE}: losses of up to 15 % beside it",
        ),
    ]


def cases() -> list[Case]:
    """All of this file."""
    return [*custard(), *candy(), *reduction()]
