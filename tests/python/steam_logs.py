"""A made log of the steam kettle: the model's own forecast with other coefficients, and noise."""

from collections.abc import Mapping
from pathlib import Path

import numpy as np

import kettlecast as kc
from kettlecast.demo import demo_path

KETTLE = kc.read_kettle(demo_path("steam_kettle.toml"))
RECIPE = """
[recipe]
name = "water up and down"

[[phase]]
name = "up"
regulate = "probe"
set_point = "85 degC"
hold = "4 min"
stir = "20 rpm"

[[phase.add]]
food = "water"
mass = "70 kg"
temperature = "14 degC"

[[phase]]
name = "down"
until = { probe_below = "30 degC" }
time_limit = "3 h"
stir = "20 rpm"
jacket = { use = "cool", above = "2 degC" }
"""
NOISE = 0.15  # [K]
STEP = 4.0  # [s]


def planned(folder: Path) -> kc.Recipe:
    path = folder / "steam.toml"
    path.write_text(RECIPE, encoding="utf-8")
    return kc.read_recipe(path)


def made_log(
    folder: Path, truth: Mapping[str, float], seed: int, kettle: kc.Kettle = KETTLE
) -> Path:
    """A log without a floor heat column, and its events, written as a logger writes them."""
    recipe = planned(folder)
    found = kc.forecast(
        kettle,
        recipe,
        coefficients=kc.Coefficients(truth),
        options=kc.Options(output_interval=STEP),
    )
    trace = found.trace
    time = np.arange(0.0, found.duration, STEP)
    generator = np.random.default_rng(seed)
    columns = [time]
    for name in ("floor_sensor", "probe"):
        values = np.interp(time, trace["time_s"], trace[f"{name}.reading_C"])
        noise = generator.normal(0.0, NOISE, time.size)
        noise[:2] = 0.0  # a fit takes the temperatures of the start from the first rows
        columns.append(values + noise)
    place = np.searchsorted(trace["time_s"], time, side="right") - 1
    columns.append(100.0 * trace["jacket.heat"].to_numpy()[place])
    columns.append(trace["agitator.speed_rpm"].to_numpy()[place])
    rows = [",".join(f"{value:.2f}" for value in row) for row in zip(*columns, strict=True)]
    header = "time_s,floor_C,probe_C,jacket_heat_pct,agitator_rpm"
    path = folder / f"steam_{seed}.csv"
    path.write_text("\n".join([header, *rows]) + "\n", encoding="utf-8")
    lines = ["time_s,event,detail", "0,phase start,1", "0,add,water 70 kg at 14 C"]
    lines += [f"{found.result.phases[1].start:.2f},phase start,2", f"{found.duration:.2f},end,"]
    path.with_suffix(".events.csv").write_text("\n".join(lines) + "\n", encoding="utf-8")
    return path
