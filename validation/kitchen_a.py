"""The demo kettle: fit three logged runs, forecast two more in closed loop.

What was weighed and measured on the day (masses, temperatures, room) is used. Pours are forecast
at their planned delays, because nobody knows beforehand how slow hands will be; a second line
gives the same with the delays that happened. The logs come from a finer-grained plant than ours.
"""

from __future__ import annotations

from pathlib import Path

import numpy as np
from case import Case, Outcome, absolute, at_most, between, relative

import kettlecast as kc
from kettlecast.demo import demo_path

TITLE = "Kitchen A: fitted on three runs, two stews forecast in closed loop"
SOURCE = "kitchen_a (made by a finer-grained plant)"
ICE = 273.15

FITTED = {
    "water_boil_60kg": "water_boil.toml",
    "water_steps_60kg": "water_steps.toml",
    "stew_70kg": "stew.toml",
}
ROOMS = {"stew_70kg_again": 27.0 + ICE, "stew_79kg_cold": 23.0 + ICE}
HEATING_PHASES = (1, 3, 5)
#: With pours as planned, hands that were up to 16 s slower are part of the error, which is 4 % of
#: phase 5; with pours as they happened, the model is on its own.
REACH_LIMIT = {"planned": 0.06, "as it happened": 0.04}
TOTAL_LIMIT = {"planned": 0.02, "as it happened": 0.015}
OVERSHOOT_LIMIT = 0.7  # [K]
SMOOTHED = 10.0  # [s], logs are averaged over this long before their peak is read off
DIFFERENCE_LIMIT = 60.0  # [s]
BALANCE_LIMIT = 1e-6
TOLERANCE_LIMIT = 0.05  # [s], shift of a phase end when the tolerance is halved


def planned_recipe(name: str) -> kc.Recipe:
    """The stew as planned; with diced carrot before the lentils for the cold run."""
    stew = kc.read_recipe(demo_path("stew.toml"))
    if name != "stew_79kg_cold":
        return stew
    stew = stew.with_more(
        "carrot",
        "9.07 kg",
        temperature="2 degC",
        phase=3,
        piece="12 mm",
        shape="sphere",
        delay="75 s",
        pour_time="30 s",
    )
    phases = list(stew.phases)
    late = [
        one.replace(delay=110.0) if one.name == "lentil" else one for one in phases[2].additions
    ]
    phases[2] = phases[2].replace(additions=sorted(late, key=lambda one: one.delay))
    return stew.replace(phases=phases)


def as_weighed(recipe: kc.Recipe, run: kc.Run, *, real_delays: bool) -> kc.Recipe:
    """The recipe with mass and temperature of each addition as the events of a run say."""
    poured = {(_phase_of(time, run), one.name): one for time, one in run.pours}
    phases = []
    for number, phase in enumerate(recipe.phases, start=1):
        additions = []
        for one in phase.additions:
            was = poured[number, one.name]
            changed = one.replace(mass=was.mass, temperature=was.temperature)
            additions.append(changed.replace(delay=was.delay) if real_delays else changed)
        phases.append(phase.replace(additions=additions))
    return recipe.replace(phases=phases)


def _phase_of(time: float, run: kc.Run) -> int:
    return sum(start <= time for start in run.phases)


def _forecast(
    fit: kc.Fit, recipe: kc.Recipe, name: str, *, tolerance: float | None = None, draws: int = 0
) -> kc.Forecast:
    room = fit.kettle.surroundings.replace(temperature=ROOMS[name])
    options = kc.Options() if tolerance is None else kc.Options(tolerance=tolerance)
    return kc.forecast(fit, recipe, room=room, draws=draws, options=options)


def _times(name: str, run: kc.Run, made: kc.Forecast, when: str) -> list[Case]:
    cases = []
    for number in HEATING_PHASES:
        reached = run.reached[number - 1]
        if reached is None:
            continue
        logged = reached - run.phases[number - 1]
        got = made.result.phases[number - 1].time_to_reach or float("inf")
        cases.append(
            relative(
                f"{name}, {when}: phase {number}, start to set point",
                SOURCE,
                (logged, got),
                REACH_LIMIT[when],
                "s",
            )
        )
    cases.append(
        relative(
            f"{name}, {when}: total", SOURCE, (_total(run), made.duration), TOTAL_LIMIT[when], "s"
        )
    )
    return cases


def _logged_overshoot(run: kc.Run, recipe: kc.Recipe, number: int) -> float:
    """Highest reading over the set point of a phase; the noise of the log smoothed [K]."""
    phase, reached = recipe.phases[number - 1], run.reached[number - 1]
    assert reached is not None and run.floor_reading is not None
    samples = max(1, round(SMOOTHED / float(np.median(np.diff(run.time)))))
    floor = phase.regulated is kc.Regulated.floor
    reading = run.floor_reading if floor else run.probe_reading
    smooth = np.convolve(reading, np.full(samples, 1.0 / samples), mode="same")
    end = [*run.phases[1:], run.events[-1].time][number - 1]
    after = (run.time >= reached) & (run.time <= end)
    return float(np.max(smooth[after])) - phase.set_point


def _overshoots(name: str, run: kc.Run, made: kc.Forecast) -> list[Case]:
    """Overshoot of the reading of each heating phase."""
    cases = []
    for number in HEATING_PHASES:
        logged = _logged_overshoot(run, made.recipe, number)
        got = made.result.phases[number - 1].overshoot_reading or 0.0
        told = f"{name}: phase {number}, overshoot of the reading"
        cases.append(absolute(told, SOURCE, (logged, got), OVERSHOOT_LIMIT, "K"))
    return cases


def _total(run: kc.Run) -> float:
    return run.events[-1].time - run.phases[0]


def _intervals(name: str, run: kc.Run, made: kc.Forecast) -> list[Case]:
    """Whether what was logged lies in the 90 % intervals of the forecast by plan."""
    told = {"time to set point": ("time_to_reach", "s"), "overshoot": ("overshoot_reading", "K")}
    cases = []
    for number in HEATING_PHASES:
        reached = run.reached[number - 1]
        if reached is None:
            continue
        logged = {
            "time to set point": reached - run.phases[number - 1],
            "overshoot": _logged_overshoot(run, made.recipe, number),
        }
        for words, (quantity, unit) in told.items():
            found = made.interval(quantity, number)
            assert found is not None
            title = f"{name}: phase {number}, {words} in the 90 % interval"
            cases.append(between(title, SOURCE, logged[words], (found.low, found.high), unit))
    whole = made.interval("duration")
    assert whole is not None
    title = f"{name}: total in the 90 % interval"
    return [*cases, between(title, SOURCE, _total(run), (whole.low, whole.high), "s")]


def _vapour(name: str, made: kc.Forecast) -> Case:
    """Evaporated water against the most that the heaters could evaporate.

    Bound: heater energy over the latent heat at the boiling point. Below zero is refused too.
    """
    evaporated = sum(phase.evaporated for phase in made.result.phases)
    latent = float(
        kc.properties.water.latent_heat(
            kc.properties.water.saturation_temperature(made.kettle.surroundings.pressure)
        )
    )
    bound = made.balance.heater_energy / latent
    return Case(
        f"{name}: evaporated water",
        "energy bound: heater energy over latent heat",
        f"0 to {bound:.3g} kg",
        f"{evaporated:.3g} kg",
        "-",
        "between",
        0.0 <= evaporated <= bound,
    )


def _books(name: str, made: kc.Forecast) -> list[Case]:
    source = "conservation of energy and mass"
    return [
        at_most(f"{name}: heat balance", source, made.balance.heat_residual, BALANCE_LIMIT),
        at_most(f"{name}: water balance", source, made.balance.mass_residual, BALANCE_LIMIT),
    ]


def _shift(fit: kc.Fit, recipe: kc.Recipe, name: str, made: kc.Forecast) -> Case:
    finer = _forecast(fit, recipe, name, tolerance=0.5 * kc.Options().tolerance)
    pairs = zip(made.result.phases, finer.result.phases, strict=True)
    shift = max(abs(a.start + a.duration - b.start - b.duration) for a, b in pairs)
    return at_most(
        f"{name}: phase ends with half the tolerance",
        "independence of the step size",
        shift,
        TOLERANCE_LIMIT,
        "s",
    )


def fitted() -> kc.Fit:
    """The demo kettle fitted to its first three runs."""
    kettle = kc.read_kettle(demo_path("kettle.toml"))
    runs = [
        kc.read_run(demo_path(f"{name}.csv"), recipe=kc.read_recipe(demo_path(file)))
        for name, file in FITTED.items()
    ]
    return kc.fit(kettle, runs)


def outcome(folder: Path) -> Outcome:
    """Runs the comparison; nothing is written to `folder`."""
    fit = fitted()
    cases: list[Case] = []
    totals: dict[str, dict[str, float]] = {"planned": {}, "as it happened": {}}
    runs = {}
    for name in ROOMS:
        planned = planned_recipe(name)
        run = runs[name] = kc.read_run(demo_path(f"{name}.csv"), recipe=planned)
        for when in totals:
            recipe = as_weighed(planned, run, real_delays=when != "planned")
            made = _forecast(fit, recipe, name, draws=100 if when == "planned" else 0)
            totals[when][name] = made.duration
            cases += _times(name, run, made, when)
            if when == "planned":
                cases += _intervals(name, run, made)
                cases += [_vapour(name, made), *_books(name, made), _shift(fit, recipe, name, made)]
            else:
                cases += _overshoots(name, run, made)
    again, cold = ROOMS
    logged = _total(runs[cold]) - _total(runs[again])
    for when, made_totals in totals.items():
        pair = (logged, made_totals[cold] - made_totals[again])
        cases.append(absolute(f"{cold} less {again}, {when}", SOURCE, pair, DIFFERENCE_LIMIT, "s"))
    quality = "; ".join(
        f"{one.name} probe {one.probe_rms:.2f} K, floor {one.floor_rms or 0:.2f} K"
        for one in fit.runs
    )
    return Outcome(TITLE, tuple(cases), (f"RMS in the fit: {quality}.",))
