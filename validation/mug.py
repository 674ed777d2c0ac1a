"""A mug of hot water cooling open and under a film of oil that stops evaporation only.

One set of coefficients has to follow both. With the same cover in both, no set can: that is the
check that fails when evaporation is wrong. Mug and room are not known: 8 cm wide, 12 cm high,
0.3 L, a wall that holds as much heat as 5 mm of stoneware, room at 24 degC because the longest
log levels off near 25 degC. The first two minutes, in which the mug warms, are left out.
"""

from __future__ import annotations

from pathlib import Path

import numpy as np
from case import SHARED, Case, Outcome, absent, at_least, at_most
from water_logs import ICE, Followed, WaterLog, as_run, columns, follow, values_note

import kettlecast as kc

TITLE = "Mug of hot water, open and under oil"
FOLDER = SHARED / "data" / "mug_cooling_oil_film"
SOURCE = "mug_cooling_oil_film (fastR2 cooling water data, commit 8e8768f)"
PAIRS = {
    "first pair": ("CoolingWater_si", "CoolingWaterOil_si"),
    "second pair, read off a plot": ("CoolingWater2_si", "CoolingWaterOil2_si"),
}
WARM_UP = 120.0  # [s]
RMS_LIMIT = 1.5  # [K], of the first pair, logged in steps of 1 F by a falling thermometer
FORCED_FACTOR = 3.0  # how much worse the same cover in both has to be at least

KETTLE = kc.Kettle(
    name="mug",
    diameter=0.08,
    height=0.12,
    floor_power=1.0,  # never on
    floor_thickness=0.003,
    floor_metal=kc.MetalKind.stainless_steel,
    wall_thickness=0.0025,
    surroundings=kc.Surroundings(temperature=24.0 + ICE),
)
FREE = ["wall.loss", "floor.loss", "evaporation.factor"]
OPTIONS = kc.FitOptions(
    interval=60.0, correlation_time=300.0, integration=kc.Options(tolerance=1e-5)
)


def _run(name: str, cover: kc.Cover, folder: Path) -> kc.Run:
    data = columns(FOLDER / f"{name}.csv")
    warm = (data["t_s"] >= WARM_UP) & np.append(True, np.diff(data["t_s"]) > 0.0)
    time, water = data["t_s"][warm], data["T_C"][warm]
    log = WaterLog(name, time, water, np.zeros_like(time), 0.3, float(water[0]), cover=cover)
    return as_run(log, folder)


def _fit(
    pair: tuple[str, str], covers: tuple[kc.Cover, kc.Cover], folder: Path
) -> tuple[kc.Fit, list[Followed]]:
    runs = [_run(name, cover, folder) for name, cover in zip(pair, covers, strict=True)]
    fit = kc.fit(KETTLE, runs, vary=FREE, fixed={"probe.lag": 5.0}, options=OPTIONS)
    return fit, [follow(fit, run, KETTLE.surroundings) for run in runs]


def outcome(folder: Path, pairs: tuple[str, ...] = tuple(PAIRS)) -> Outcome:
    """Runs the comparison; `folder` takes temporary files."""
    if not FOLDER.exists():
        return absent(TITLE, FOLDER)
    cases: list[Case] = []
    notes = ["Assumed: mug of 8 cm with 0.3 L, room 24 degC."]
    curves = []
    for told in pairs:
        pair = PAIRS[told]
        fit, followed = _fit(pair, (kc.Cover.open, kc.Cover.oil_film), folder)
        notes.append(f"{told}: {values_note(fit)}")
        for one in followed:
            curves.append(one.curve())
            cases.append(at_most(f"{one.name}, RMS", SOURCE, one.rms, RMS_LIMIT, "K"))
        best = max(one.rms for one in followed)
        for cover in (kc.Cover.open, kc.Cover.oil_film):
            _, forced = _fit(pair, (cover, cover), folder)
            worst = max(one.rms for one in forced)
            cases.append(
                at_least(
                    f"{told}, RMS with {cover.name} forced on both",
                    SOURCE,
                    worst,
                    FORCED_FACTOR * best,
                    "K",
                )
            )
    return Outcome(TITLE, tuple(cases), tuple(notes), tuple(curves))
