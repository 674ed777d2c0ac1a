"""Water brought to the boil in the model at several altitudes, against standard atmosphere and
steam tables.
"""

from __future__ import annotations

from pathlib import Path

from case import Case, Outcome, absolute

import kettlecast as kc

TITLE = "Boiling water in the kettle model by altitude"
SOURCE = "US Standard Atmosphere 1976 for the pressure, IAPWS-IF97 for where it boils"
ICE = 273.15

#: Boiling point of water [degC] at an altitude [m]; computed from the two standards.
EXPECTED = {
    0.0: 99.9743,
    1000.0: 96.64928,
    1524.0: 94.90421,
    2000.0: 93.31719,
    3048.0: 89.81648,
}
NOTES = (
    "20 kg under a lid for half an hour on 6 kW; the reading of the probe at the end. The water "
    "itself is up to 0.5 K above its boiling point while it boils off.",
)


def boiled(altitude: float) -> Case:
    """Reading of the probe in boiling water."""
    air = kc.Surroundings(pressure=kc.properties.pressure_at_altitude(altitude))
    kettle = kc.Kettle(name="pot", diameter=0.35, height=0.35, floor_power=6e3, surroundings=air)
    water = kc.Addition(name="water", food=kc.food("water"), mass=20.0, temperature=60.0 + ICE)
    boil = kc.Phase(
        name="boil",
        regulated=kc.Regulated.probe,
        set_point=250.0 + ICE,
        ends=[kc.EndRule(kind=kc.EndKind.elapsed, value=1800.0)],
        additions=[water],
        cover=kc.Cover.lid,
    )
    made = kc.forecast(kettle, kc.Recipe(name="water", phases=[boil]))
    names = list(made.result.trace_names)
    reading = float(made.result.trace[-1, names.index("probe.reading")]) - ICE
    name = f"Water at the boil at {altitude:g} m"
    return absolute(name, SOURCE, (EXPECTED[altitude], reading), 0.5, "degC")


def outcome(folder: Path) -> Outcome:
    """Runs the comparison; nothing is written to `folder`."""
    return Outcome(TITLE, tuple(boiled(altitude) for altitude in EXPECTED), NOTES)
