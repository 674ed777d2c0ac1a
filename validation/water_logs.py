"""Logs of heated or cooling water from other people, as runs of a kettle."""

from __future__ import annotations

import csv
import dataclasses
from collections.abc import Mapping
from pathlib import Path

import numpy as np
from case import Curve, Vector

import kettlecast as kc
from kettlecast import _core
from kettlecast.fit_problem import observe

ICE = 273.15


@dataclasses.dataclass(frozen=True)
class WaterLog:
    """Readings of one vessel of water that is full from the start.

    Attributes
    ----------
    time :
        [s]
    probe, floor :
        [degC]; floor None if it was not logged.
    heat :
        Share of the nominal power [-].
    litres, poured_at :
        Volume [L] and temperature [degC] at the start.
    rpm :
        Of the agitator, here of what stands for a pump.
    """

    name: str
    time: Vector
    probe: Vector
    heat: Vector
    litres: float
    poured_at: float
    floor: Vector | None = None
    cover: kc.Cover = kc.Cover.open
    rpm: float = 0.0


def columns(path: Path) -> dict[str, Vector]:
    """Columns of a CSV file by name; empty cells become NaN."""
    with path.open(encoding="utf-8-sig", newline="") as lines:
        rows = list(csv.DictReader(lines))
    return {
        name: np.array([float(row[name]) if row[name].strip() else np.nan for row in rows])
        for name in rows[0]
    }


def as_run(log: WaterLog, folder: Path) -> kc.Run:
    """A run read back from a log and an events file written to a temporary folder."""
    signals = {
        "time_s": log.time,
        "probe_C": log.probe,
        "floor_heat_pct": 100.0 * log.heat,
        "agitator_rpm": np.full_like(log.time, log.rpm),
    }
    if log.floor is not None:
        signals["floor_C"] = log.floor
    path = folder / f"{log.name}.csv"
    with path.open("w", encoding="utf-8", newline="") as lines:
        writer = csv.writer(lines)
        writer.writerow(signals)
        writer.writerows(zip(*signals.values(), strict=True))
    density = float(kc.properties.water.density(log.poured_at + ICE))
    mass = log.litres * 1e-3 * density
    begin = log.time[0]
    folder.joinpath(f"{log.name}.events.csv").write_text(
        f"time_s,event,detail\n{begin},phase start,1\n"
        f"{begin},add,water {mass:.5f} kg at {log.poured_at:.3f} C\n",
        encoding="utf-8",
    )
    run = kc.read_run(path)
    return dataclasses.replace(run, covers=((float(begin), log.cover),))


@dataclasses.dataclass(frozen=True)
class Followed:
    """Log and model at the same times, averaged over the interval of the fit."""

    name: str
    time: Vector
    log: Vector  #: [degC]
    model: Vector  #: [degC]
    evaporated: float  #: [kg]

    @property
    def rms(self) -> float:
        """Of model less log [K]."""
        return float(np.sqrt(np.mean((self.model - self.log) ** 2)))

    def curve(self) -> Curve:
        """Model less log over time."""
        return Curve(self.name, self.time / 60.0, self.model - self.log)

    def duration(self, first: float | None, last: float, since: float = 0.0) -> tuple[float, float]:
        """Time of log and model from `first` (or the clock's `since`) to `last` [degC, s]."""

        def between(values: Vector) -> float:
            smooth = np.convolve(np.pad(values, 1, mode="edge"), np.full(3, 1 / 3), mode="valid")
            rising = np.maximum.accumulate(smooth)
            begin = since if first is None else np.interp(first, rising, self.time)
            return float(np.interp(last, rising, self.time) - begin)

        return between(self.log), between(self.model)


def follow(fit: kc.Fit, run: kc.Run, room: kc.Surroundings) -> Followed:
    """Drives the fitted kettle through a run, also one that the fit has not seen."""
    one = observe(run, room, fit.options.interval)
    replay = _core.replay(
        fit.kettle, fit.coefficients, plan=one.plan, options=fit.options.integration
    )
    return Followed(
        run.name,
        one.time,
        one.probe - ICE,
        replay.probe_reading - ICE,
        float(replay.evaporated[-1]),
    )


def values_note(fit: kc.Fit, of: Mapping[str, str] | None = None) -> str:
    """The fitted coefficients in one sentence."""
    said = of or {}
    pairs = (
        f"{name} {p.value:.3g} +/- {p.stderr:.2g} {p.unit}{said.get(name, '')}".strip()
        for name, p in fit.params.items()
    )
    return "Fitted: " + "; ".join(pairs) + "."
