"""An unstirred pot of water on an electric hot plate: fit at 1.0 L, predict 1.5 L.

The plate is the heater side of the floor (T10 is its temperature), the base of the pot is the
wetted side, and the contact between them is the resistance of the floor. Under the lid vapour
condenses on the wall above the water, so that the whole wall is warm and loses heat.

Runs of one volume cannot tell metal from power: T(t) stays the same if water, metal, power and
losses grow together. The mass of this pot is not known, so it is assumed and not fitted: 1.3 kg of
steel in wall and lid, usual for a 4 L pot (common practice, no source), spread over the wall as
2 mm. With 1, 1.5 and 2 mm the 1.5 L runs are predicted within 1.00, 0.75 and 0.53 K RMS at worst.
"""

from __future__ import annotations

import dataclasses
from collections.abc import Mapping
from pathlib import Path

import numpy as np
from case import SHARED, Case, Outcome, absent, at_most, relative
from water_logs import ICE, Followed, WaterLog, as_run, columns, follow, values_note

import kettlecast as kc

TITLE = "Pot with lid on a hot plate: fitted at 1.0 L, predicted at 1.5 L"
FOLDER = SHARED / "data" / "pot_1-3L"
SOURCE = "pot_1-3L (temperature-control data, commit 25f0353, Apache-2.0)"

# The switch was seen when the plate warms faster than this [K/s]; before, it drifts by 0.01 K/s.
SWITCHED_ON = 0.1
OPEN = "nolid_0cm_1.0L_a"
RMS_LIMIT, RMS_GOAL, TIME_LIMIT = 0.7, 0.5, 0.02
KNOWN_OUT = {
    "lid_0cm_1.5L_a predicted, switch-on to 90 degC": "2.05 % late; the pot's mass is assumed, "
    "see above, and the three runs of 1.5 L differ by 0.8 % among themselves"
}

KETTLE = kc.Kettle(
    name="pot on a hot plate",
    diameter=0.20,
    height=0.13,
    floor_power=300.0,  # nominal; about 250 W by the energy balance, so the efficiency is free
    floor_thickness=0.020,
    floor_metal=kc.MetalKind.stainless_steel,
    wall_thickness=0.002,
    agitator=kc.AgitatorKind.none,
)

#: Free coefficients and why.
FREE = {
    "floor.efficiency": "the power is not stated",
    "floor.capacity_factor": "plate and pot base are not a plain plate",
    "floor.resistance_factor": "contact between plate and pot",
    "floor.loss": "plate to the table",
    "wall.loss": "outside of the pot",
    "liquid.turnover": "the water is not stirred",
    "evaporation.lid_factor": "leak of the lid",
    "probe.offset": "thermocouples",
}
#: Held: the sensor sits on the plate; the probe is a bare thermocouple under water; the coil of
#: the plate follows at once (T10 rises within one sample).
HELD = {
    "elements.heat_capacity": 0.1,
    "elements.lag": 8.0,
    "floor_sensor.position": 1.0,
    "floor_sensor.offset": 0.0,
    "floor_sensor.lag": 3.0,
    "floor.film_factor": 1.0,
    "probe.height": 1e-3,
    "probe.lag": 5.0,
}
OPTIONS = kc.FitOptions(
    interval=30.0, correlation_time=300.0, integration=kc.Options(tolerance=1e-5)
)


def switched_on(time: np.ndarray, plate: np.ndarray) -> float:
    """Time of the last sample before the hot plate warms faster than `SWITCHED_ON` [s]."""
    return float(time[int(np.argmax(np.diff(plate) / np.diff(time) > SWITCHED_ON))])


def read(name: str, litres: float) -> tuple[WaterLog, kc.Surroundings, float]:
    """Log, room and time of switching on [s] of one file."""
    data = columns(FOLDER / f"{name}.csv")
    time, plate = data["t_s"], data["T10_C"]
    water = (data["T7_C"] + data["T8_C"] + data["T9_C"]) / 3.0
    begin = switched_on(time, plate)
    log = WaterLog(
        name,
        time,
        water,
        np.where(time > begin, 1.0, 0.0),
        litres,
        float(np.mean(water[:5])),
        plate,
        kc.Cover.lid,
    )
    room = kc.Surroundings(temperature=float(np.mean(data["T_room_C"])) + ICE)
    return log, room, begin


def _fit(known: Mapping[str, kc.Run], rooms: Mapping[str, kc.Surroundings]) -> kc.Fit:
    return kc.fit(
        KETTLE,
        list(known.values()),
        vary=list(FREE),
        fixed=HELD,
        rooms={name: rooms[name] for name in known},
        options=OPTIONS,
    )


def _backwards(
    runs: Mapping[str, kc.Run], rooms: Mapping[str, kc.Surroundings], folder: Path
) -> list[Case]:
    """The same pot fitted at the larger volume; and a run without a lid, which no fit has seen."""
    fit = _fit({name: run for name, run in runs.items() if "1.5L" in name}, rooms)
    cases = []
    for name, run in runs.items():
        if "1.0L" in name:
            told = f"{name} predicted from 1.5 L, RMS"
            cases.append(at_most(told, SOURCE, follow(fit, run, rooms[name]).rms, RMS_LIMIT, "K"))
    log, room, _ = read(OPEN, 1.0)
    run = as_run(dataclasses.replace(log, cover=kc.Cover.open), folder)
    told = f"{OPEN} predicted from runs with a lid, RMS"
    return [*cases, at_most(told, SOURCE, follow(fit, run, room).rms, None, "K")]


def _judge(one: Followed, begin: float, limits: bool) -> list[Case]:
    kind = "predicted" if limits else "fitted"
    source = SOURCE if limits else f"{SOURCE}, used in the fit"
    return [
        at_most(f"{one.name} {kind}, RMS", source, one.rms, RMS_LIMIT if limits else None, "K"),
        relative(
            f"{one.name} {kind}, switch-on to 90 degC",
            source,
            one.duration(None, 90.0, begin),
            TIME_LIMIT if limits else None,
            "s",
        ),
    ]


def outcome(folder: Path) -> Outcome:
    """Runs the comparison; `folder` takes temporary files."""
    if not FOLDER.exists():
        return absent(TITLE, FOLDER)
    volumes = ("1.0", "1.5")
    names = {f"lid_0cm_{volume}L_{run}": float(volume) for volume in volumes for run in "abc"}
    logs = {name: read(name, litres) for name, litres in names.items()}
    runs = {name: as_run(log, folder) for name, (log, _, _) in logs.items()}
    rooms = {name: room for name, (_, room, _) in logs.items()}
    known = [name for name, litres in names.items() if litres == 1.0]
    fit = _fit({name: runs[name] for name in known}, rooms)
    cases, curves = [], []
    for name in names:
        one = follow(fit, runs[name], rooms[name])
        cases += _judge(one, logs[name][2], name not in known)
        curves.append(one.curve())
    cases += _backwards(runs, rooms, folder)
    notes = (
        "Assumed: a 4 L pot, 20 cm wide and 13 cm high, because it held 3 L; 1.3 kg of steel in "
        "wall and lid.",
        "Same coefficients in all runs. Constant power from the last sample before the hot plate "
        f"(T10) warms faster than {SWITCHED_ON} K/s. Water is the mean of T7 to T9.",
        values_note(fit),
        f"The next goal is {RMS_GOAL} K. Thermocouples in the water differ by 0.5 to 1.5 K.",
        "Runs with a lid tell next to nothing about evaporation into the open; it is at its "
        "default in the run without one.",
        "The prediction leans on the metal of the pot, which no run of one volume can tell.",
    )
    return Outcome(TITLE, tuple(cases), notes, tuple(curves), gaps=KNOWN_OUT)
