"""A pumped, insulated water bath: fit at 2 and 3 L, predict 2.5 L.

The heater is immersed: a thin floor without loss to below. A paddle stands for the pump. Cover,
diameter and insulation are not known: open, 15 cm wide and 20 cm high, and the insulation, which
takes up heat while the bath warms, is an unheated jacket.
"""

from __future__ import annotations

from pathlib import Path

import numpy as np
from case import SHARED, Outcome, absent, at_most, relative
from water_logs import ICE, WaterLog, as_run, columns, follow, values_note

import kettlecast as kc

TITLE = "Circulated bath at full power: fitted at 2 and 3 L, predicted at 2.5 L"
FOLDER = SHARED / "data" / "circulated_bath_2-3L"
SOURCE = "circulated_bath_2-3L (SSY226 bath data, commit 4662283)"
FITTED = {"heating_2L": 2.0, "heating_3L": 3.0}
PREDICTED = {"heating_2-5L": 2.5}
RMS_LIMIT, TIME_LIMIT = 1.0, 0.04

KETTLE = kc.Kettle(
    name="circulated bath",
    diameter=0.15,
    height=0.20,
    floor_power=1218.0,
    floor_thickness=0.002,
    floor_metal=kc.MetalKind.stainless_steel,
    wall_thickness=0.001,
    jacket=kc.Jacket(height=0.20),
    agitator=kc.AgitatorKind.paddle,
    agitator_diameter=0.10,
)

#: Free coefficients and why.
FREE = {
    "elements.lag": "immersed heater",
    "evaporation.factor": "opening of the bath",
    "jacket.heat_capacity": "vessel and insulation",
    "jacket.conductance": "into the insulation",
    "wall.loss": "outside of the insulation",
    "agitator.heat_capacity": "pump and heater body",
    "probe.lag": "unknown sensor",
    "probe.offset": "reading shifts while the heater is on",
}
#: Held: the electric power is stated and the heater is immersed.
HELD = {"floor.efficiency": 1.0, "floor.loss": 0.0}
OPTIONS = kc.FitOptions(integration=kc.Options(tolerance=1e-5))


def read(name: str, litres: float) -> tuple[WaterLog, kc.Surroundings]:
    """Log and room of one file; the heater is on from the first row."""
    data = columns(FOLDER / f"{name}.csv")
    time, water = data["t_s"], data["T_water_C"]
    # The water is as warm as the first ten readings, because single ones scatter by 0.6 K.
    start = float(np.mean(water[:10]))
    log = WaterLog(name, time, water, np.ones_like(time), litres, start, rpm=60.0)
    return log, kc.Surroundings(temperature=float(np.mean(data["T_room_C"])) + ICE)


def outcome(folder: Path) -> Outcome:
    """Runs the comparison; `folder` takes temporary files."""
    if not FOLDER.exists():
        return absent(TITLE, FOLDER)
    logs = {name: read(name, litres) for name, litres in (FITTED | PREDICTED).items()}
    runs = {name: as_run(log, folder) for name, (log, _) in logs.items()}
    rooms = {name: room for name, (_, room) in logs.items()}
    fit = kc.fit(
        KETTLE,
        [runs[name] for name in FITTED],
        vary=list(FREE),
        fixed=HELD,
        rooms={name: rooms[name] for name in FITTED},
        options=OPTIONS,
    )
    cases, curves = [], []
    for name in runs:
        one = follow(fit, runs[name], rooms[name])
        new = name in PREDICTED
        kind = "predicted" if new else "fitted"
        source = SOURCE if new else f"{SOURCE}, used in the fit"
        cases.append(
            at_most(
                f"{name} {kind}, RMS of 10 s means",
                source,
                one.rms,
                RMS_LIMIT if new else None,
                "K",
            )
        )
        cases.append(
            relative(
                f"{name} {kind}, 30 to 85 degC",
                source,
                one.duration(30.0, 85.0),
                TIME_LIMIT if new else None,
                "s",
            )
        )
        curves.append(one.curve())
    notes = (
        "Assumed: bath of 15 cm and 20 cm height, open; 1218 W reach the water in full.",
        values_note(fit),
        "Readings ripple by 0.6 K with a period of 10 s.",
    )
    return Outcome(TITLE, tuple(cases), notes, tuple(curves))
