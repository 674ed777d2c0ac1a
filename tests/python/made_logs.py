"""Logs made by the model itself, for tests of what a fit says about them."""

from __future__ import annotations

import dataclasses
from collections.abc import Callable, Mapping

import numpy as np

from kettlecast import _core
from kettlecast.demo import demo_path
from kettlecast.fit_result import Fit
from kettlecast.fitting import fit
from kettlecast.kettle_file import read_kettle
from kettlecast.recipe_file import read_recipe
from kettlecast.run_log import Run, read_run
from kettlecast.run_plan import run_plan

KETTLE = read_kettle(demo_path("kettle.toml"))
TRUTH = {
    "floor.efficiency": 0.93,
    "floor.film_factor": 1.3,
    "probe.lag": 20.0,
    "evaporation.factor": 0.6,
}
VARY = [*TRUTH, "floor_sensor.offset", "probe.offset", "wall.loss"]
FLOOR_NOISE, PROBE_NOISE = 0.3, 0.1  # of a made reading [K]
STILL = 2  # rows without noise: a fit takes the temperatures of the start from them

Wrong = Callable[[Run], Run]


def _logged(name: str, recipe: str) -> Run:
    return read_run(demo_path(f"{name}.csv"), recipe=read_recipe(demo_path(recipe)))


def _with_water(run: Run, time: float, mass: float, temperature: float) -> Run:
    water = run.pours[0][1].replace(mass=mass, temperature=temperature)
    return dataclasses.replace(run, pours=(*run.pours, (time, water)))


def drive_runs() -> dict[str, Run]:
    """Three runs by name: to the boil and then under a lid, in steps, and one that cools down."""
    boil = _logged("water_boil_60kg", "water_boil.toml")
    steps = _logged("water_steps_60kg", "water_steps.toml")
    covers = ((0.0, _core.Cover.open), (1100.0, _core.Cover.lid))
    soak = dataclasses.replace(boil, floor_heat=np.where(boil.time > 900.0, 0.0, boil.floor_heat))
    runs = (
        dataclasses.replace(_with_water(boil, 700.0, 8.0, 278.15), name="boil", covers=covers),
        dataclasses.replace(steps, name="steps"),
        dataclasses.replace(_with_water(soak, 500.0, 6.0, 283.15), name="soak"),
    )
    return {run.name: run for run in runs}


def _noise(generator: np.random.Generator, time: np.ndarray, memory: float) -> np.ndarray:
    """Noise of unit variance; with a memory [s] half of its size stays alike for that long."""
    white = generator.standard_normal(time.size)
    if memory > 0.0:
        keep = np.exp(-float(np.median(np.diff(time))) / memory)
        slow = generator.standard_normal(time.size)
        for i in range(1, slow.size):
            slow[i] = keep * slow[i - 1] + np.sqrt(1.0 - keep**2) * slow[i]
        white = np.sqrt(0.5) * (white + slow)
    white[:STILL] = 0.0
    return white


def made_log(
    stated: Run,
    truth: Mapping[str, float],
    seed: int,
    *,
    wrong: Wrong = lambda run: run,
    warmer: float = 0.0,
    memory: float = 0.0,
) -> Run:
    """The run as stated, with readings of what really happened.

    Parameters
    ----------
    stated :
        What the log says.
    truth :
        Coefficients.
    seed :
        Of the noise.
    wrong :
        What really happened, from what is stated.
    warmer :
        Room less the room of the kettle [K].
    memory :
        Of the noise [s].
    """
    room = KETTLE.surroundings
    room = room.replace(temperature=room.temperature + warmer)
    plan = run_plan(wrong(stated), room, stated.time)
    shown = _core.replay(KETTLE, _core.Coefficients(truth), plan=plan)
    generator = np.random.default_rng(seed)
    floor, probe = (_noise(generator, stated.time, memory) for _ in range(2))
    return dataclasses.replace(
        stated,
        floor_reading=shown.floor_reading + FLOOR_NOISE * floor,
        probe_reading=shown.probe_reading + PROBE_NOISE * probe,
    )


def fitted_logs(seed: int, memory: float = 0.0, **truth: float) -> Fit:
    """A fit of three logs that say what happened."""
    runs = [
        made_log(run, TRUTH | truth, 10 * seed + i, memory=memory)
        for i, run in enumerate(drive_runs().values())
    ]
    return fit(KETTLE, runs, vary=VARY)
