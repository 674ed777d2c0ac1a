"""Thermostat and PI control (section I)."""

from __future__ import annotations

from collections.abc import Mapping

from case_file import Row, number, rows

import kettlecast as kc

REASONS: Mapping[str, str] = {}

_CYCLE = {
    "max": "highest",
    "min": "lowest",
    "on time": "on_time",
    "off time": "off_time",
    "period": "period",
    "duty": "duty",
}
_ANSWER = {
    "wn": "natural_frequency",
    "zeta": "damping",
    "overshoot": "overshoot",
    "peak time": "peak_time",
}
_ULTIMATE = {"w_u": "frequency", "Ku": "gain", "Pu": "period"}


def _inputs(row: Row) -> str:
    """Inputs of a row, with those of the row that "as set 1" or "same loop" refers to."""
    text = row["inputs"]
    named = number("as set", text)
    for other in rows("I") if named is not None or "same loop" in text else ():
        given = other["inputs"]
        if other["title"].endswith(f"set {named or 0:g}") or (named is None and "Kc=" in given):
            return f"{text}; {given}"
    return text


def _thermostat(row: Row) -> float | None:
    text = _inputs(row)
    words = ("off level", "on level", "time constant", "dead time", "set point", "±")
    off, on, time_constant, dead_time, set_point, half = (number(word, text) for word in words)
    if "L→0" in text or "no dead time" in row["title"]:
        dead_time = 0.0
    given = (off, on, time_constant, dead_time, set_point, half)
    if None in given or row["quantity"] not in _CYCLE:
        return None
    loop = kc.ThermostatLoop(
        off_level=off,
        on_level=on,
        time_constant=time_constant,
        dead_time=dead_time,
        low=set_point - half,
        high=set_point + half,
    )
    return float(getattr(kc.control.thermostat_cycle(loop), _CYCLE[row["quantity"]]))


def _pi(row: Row) -> float | None:
    text = _inputs(row)
    gain, time_constant, own, integral = (number(rf"\b{w}", text) for w in ("K", "tau", "Kc", "Ti"))
    if gain is None or time_constant is None or own is None or integral is None:
        return None
    weight = number("set-point weight", row["title"]) or 0.0
    loop = kc.PiLoop(
        plant_gain=gain,
        time_constant=time_constant,
        gain=own,
        integral_time=integral,
        set_point_weight=weight,
    )
    if "integral" in row["quantity"]:
        return kc.control.load_error_integral(loop, 1.0)
    if row["quantity"] not in _ANSWER:
        return None
    found = getattr(kc.control.pi_response(loop), _ANSWER[row["quantity"]])
    return None if found is None else float(found)


def _ultimate(row: Row) -> float | None:
    gain, time_constant, dead_time = (number(rf"\b{w}", row["inputs"]) for w in ("K", "tau", "L"))
    if gain is None or time_constant is None or dead_time is None:
        return None
    cycle = kc.control.ultimate_cycle(gain, time_constant, dead_time)
    name = _ULTIMATE.get(row["quantity"])
    return None if name is None else float(getattr(cycle, name))


def value(row: Row) -> float | None:
    if "thermostat" in row["title"]:
        return _thermostat(row)
    return _ultimate(row) if "ultimate" in row["title"] else _pi(row)
