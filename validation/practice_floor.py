"""Facts of the trade about a kettle with a heated floor."""

from __future__ import annotations

import math

from case import Case, between
from practice_kettle import (
    AREA,
    FOREVER,
    ICE,
    KETTLE,
    SOURCE,
    SPEEDS,
    across,
    addition,
    first,
    minutes,
    phase,
    run,
    signal,
)

import kettlecast as kc

POUND = 0.45359237  # [kg]


def onions() -> kc.Addition:
    """20 lb of cold onions in dice of a centimetre."""
    return addition("onion", 20.0 * POUND, 4.0, 0.010)


def oil_ready(rpm: float) -> kc.Phase:
    """2 kg of oil on a floor set to 138 degC."""
    end = (kc.EndKind.held, 60.0)
    return phase(kc.Regulated.floor, 138.0, end, [addition("cooking oil", 2.0, 22.0)], rpm)


def fried(rpm: float) -> kc.Forecast:
    """Onions in the oil, on a floor set to 149 degC."""
    end = (kc.EndKind.elapsed, 2400.0)
    return run(KETTLE, oil_ready(rpm), phase(kc.Regulated.floor, 149.0, end, [onions()], rpm))


def sweated(made: kc.Forecast) -> tuple[float, float]:
    """Minutes until the onions have 90 degC in the mean, and until 90 % of their juice is out."""
    time = signal(made, "time") - made.result.phases[1].start
    core, surface = (signal(made, f"onion.{part}_temperature") for part in ("core", "surface"))
    pieces = onions()
    free = pieces.mass * pieces.food.composition.water * pieces.food.juice_fraction
    given = signal(made, "liquid.water") + signal(made, "vapour.mass")
    hot = (time > 0.0) & (0.5 * (core + surface) >= 90.0 + ICE)
    return first(time, hot) / 60.0, first(time, hot & (given >= 0.9 * free)) / 60.0


def fat_and_onions() -> list[Case]:
    """Oil made hot, onions sweated and browned in it."""
    runs = [fried(25.0)]  # the speed that cooks name with these times
    ready = [(made.result.phases[0].time_to_reach or math.inf) / 60.0 for made in runs]
    hot, soft = zip(*map(sweated, runs), strict=True)
    text = "20 lb of onions, 4 degC, 10 mm, on a floor at 149 degC"
    return [
        across("2 kg of oil on a floor set to 138 degC: ready", ready, (2.0, 5.0), "min"),
        across(f"{text}: 90 degC in the mean", hot, (5.0, 25.0), "min"),
        across(f"{text}: juice out", soft, (5.0, 25.0), "min"),
        browning(runs),
    ]


def browning(sauteed: list[kc.Forecast]) -> Case:
    """Browning index of the pieces, over that of as many simmered as long."""

    def index(made: kc.Forecast) -> float:
        return kc.browning(made, signal="onion.surface_temperature")[0].time

    def simmered(rpm: float) -> kc.Forecast:
        water = [addition("water", 20.0, 22.0)]
        heat = phase(kc.Regulated.probe, 95.0, (kc.EndKind.held, 60.0), water, rpm)
        keep = phase(kc.Regulated.probe, 95.0, (kc.EndKind.elapsed, 2400.0), [onions()], rpm)
        return run(KETTLE, heat, keep)

    ratios = [index(made) / index(simmered(25.0)) for made in sauteed]
    name = "Onions sauteed at 149 degC, 40 min: browning index over that of simmered ones"
    return across(name, ratios, (1.0, math.inf))


def heating(mass: float, celsius: tuple[float, float], rpm: float) -> kc.Phase:
    """Water heated at full power from one temperature to another."""
    begin, target = celsius
    end = (kc.EndKind.above, target + ICE)
    return phase(kc.Regulated.probe, FOREVER, end, [addition("water", mass, begin)], rpm)


def full_kettle() -> list[Case]:
    """A full kettle to the boil, open and under a lid."""
    made = []
    for cover, told in ((kc.Cover.open, "open"), (kc.Cover.lid, "under a lid")):
        phases = [heating(115.0, (12.0, 99.0), rpm).replace(cover=cover) for rpm in SPEEDS]
        times = [minutes(run(KETTLE, one)) for one in phases]
        made.append(
            across(f"Full kettle of water from 12 to 99 degC, {told}", times, (30.0, 70.0), "min")
        )
    return made


def savings() -> list[Case]:
    """What the jacket brings, and what a hot kettle saves."""
    phases = [heating(60.0, (4.0, 90.0), rpm) for rpm in SPEEDS]
    plain = [minutes(run(KETTLE, one)) for one in phases]
    jacket = {"jacket": kc.JacketUse.heat, "jacket_limit": 100.0 + ICE}
    helped = [minutes(run(KETTLE, one.replace(**jacket))) for one in phases]
    again = [minutes(run(KETTLE, one, start=90.0)) for one in phases]

    def share(times: list[float]) -> list[float]:
        return [time / alone for time, alone in zip(times, plain, strict=True)]

    text = "60 kg of water at 4 degC"
    return [
        across(
            f"{text} with the jacket at 100 degC: time to 90 degC as a share of that without",
            share(helped),
            (0.5, 0.97),
        ),
        across(
            f"{text} in a kettle at 90 degC from the last batch: time to 90 degC as a share of "
            "that from 22 degC",
            share(again),
            (0.7, 0.98),
        ),
    ]


def loss_at_boil() -> Case:
    """Heat that an open boiling surface loses besides its vapour."""
    time = 1500.0
    content = [addition("water", 100.0, 99.9)]
    boil = phase(kc.Regulated.probe, FOREVER, (kc.EndKind.elapsed, time), content)
    made = run(KETTLE, boil, start=99.9, wall__loss=0.0, floor__loss=0.0)
    lost = made.balance.lost_energy / time / AREA / 1e3
    name = "Open at the boil: loss of the surface beyond boil-off"
    return between(name, SOURCE, lost, (1.0, 3.0), "kW/m2")


def defaults() -> list[Case]:
    """Defaults that stand for parts of any kettle."""
    lag = kc.Coefficients()["probe.lag"]
    bare = kc.Coefficients()["wall.loss"]
    outside = "Outside of wall or jacket, between insulated (1) and bare metal (20)"
    return [
        between("Probe in stirred liquid: time constant", SOURCE, lag, (5.0, 20.0), "s"),
        between(outside, SOURCE, bare, (1.0, 20.0), "W/(m2 K)"),
        between("Thermostat band", SOURCE, kc.Controller().dead_band, (2.0, 5.0), "K"),
    ]


def cases() -> list[Case]:
    """All of this file."""
    return [*fat_and_onions(), *full_kettle(), *savings(), loss_at_boil(), *defaults()]
