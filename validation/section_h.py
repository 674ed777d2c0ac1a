"""Food-safety tables and lethality (section H)."""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping

from case_file import ICE, Row, expected_number

import kettlecast as kc
from kettlecast import safety_tables, units

REASONS: Mapping[str, str] = {}

_MINUS = "\u2212"
_DEGREES = re.compile(r"(-?[\d.]+)\s*°\s*([FC])")
_RULES = {
    "whole-roast": "whole roast",
    "(A)(2)": "comminuted",
    "(A)(3)": "poultry and stuffed",
    "poultry": "poultry and stuffed",
    "(A)(1)": "intact",
    "reheating": "reheating",
}


def _temperatures(text: str) -> list[float]:
    """All temperatures of a text [K]."""
    found = _DEGREES.findall(text.replace(_MINUS, "-"))
    return [float(units.to_si(float(n), f"deg{unit}", "temperature")) for n, unit in found]


def _seconds(value: float, row: Row) -> float:
    """A time [s] in the unit of the row."""
    unit = expected_number(row)[1] or "s"
    return float(units.in_unit(value, unit, "time"))


def _difference(value: float, row: Row) -> float:
    return value * (1.8 if "F" in row["unit"] else 1.0)


def _fsis(row: Row) -> float | None:
    temperature = _temperatures(row["title"])[0]
    if "scaling" in row["quantity"]:
        hold = safety_tables.required_hold("fsis beef 6.5 log", temperature)
        assert hold.table.log_reductions is not None
        decimal = hold.time / hold.table.log_reductions
        return _seconds(kc.properties.lethality.hold_time(7.0, decimal), row)
    found = re.match(r"([\d.]+)-log time", row["quantity"])
    if found is None:
        return None
    hold = safety_tables.required_hold(f"fsis beef {found[1]} log", temperature)
    return _seconds(hold.time, row)


def _implied(row: Row) -> float | None:
    column = re.search(r"([\d.]+)-log", row["title"])
    if column is None:
        return None
    reference = (_temperatures(row["quantity"]) or [units.temperature("140 degF")])[0]
    decimal, z = safety_tables.death_times(f"fsis beef {column[1]} log", reference)
    return _difference(z, row) if row["quantity"] == "z" else _seconds(decimal, row)


def _food_code(row: Row) -> float | None:
    rule = next((name for word, name in _RULES.items() if word in row["title"]), None)
    if rule is None:
        return None
    year = re.search(r"\b(?:19|20)\d\d\b", row["quantity"])
    older = safety_tables.hold_table(rule).editions if "older" in row["quantity"] else ()
    edition = year[0] if year else "2013" if older else None
    temperature = _temperatures(f"{row['title']} {row['inputs']}")[0]
    return _seconds(safety_tables.required_hold(rule, temperature, edition).time, row)


def _fahrenheit(temperature: float) -> float:
    """As the library prints it, for text with a unit is read to 1e-9 K only."""
    return float(units.exact_text(temperature, "temperature", "us").split()[0])


def _holding(row: Row) -> float:
    limit = safety_tables.limit("cold holding" if "cold" in row["title"] else "hot holding")
    if "F" in row["unit"]:
        return _fahrenheit(limit.temperature)
    return units.temperature(limit.celsius) - ICE  # as printed, which is rounded


def _reheating(row: Row) -> float | None:
    table = safety_tables.hold_table("reheating")
    (line,) = table.rows
    if "F" in row["unit"]:
        return _fahrenheit(line.temperature)
    if "C" in row["unit"]:
        return units.temperature(line.celsius) - ICE
    whole = row["unit"] in ("h", "min") and table.within is not None
    return _seconds(table.within if whole else line.time, row)


def _cooling(row: Row) -> float | None:
    rule = safety_tables.cooling()
    for stage in rule.stages:
        if f"→{_fahrenheit(stage.temperature):g}" in row["quantity"]:
            return _seconds(stage.time, row)
    return None


def _binding(row: Row) -> float | None:
    ambient = re.search(r"ambient[^,;]*", row["inputs"])
    start = re.search(r"start[^,;]*", row["inputs"])
    if ambient is None:
        return None
    given = _temperatures(start[0])[0] if start else None
    limits = safety_tables.cooling_limits(_temperatures(ambient[0])[0], given)
    stage = 0 if "stage 1" in row["quantity"] else -1
    return _seconds(limits.time_constants[stage], row)


def _death_curve(row: Row) -> float | None:
    lethality = kc.properties.lethality
    points = re.findall(r"D\(([^)]*)\)\s*=\s*([\d.]+ \w+)", row["inputs"])
    (t1, d1), (t2, d2) = ((_temperatures(t)[0], units.time(d)) for t, d in points)
    z = lethality.z_value(t1, d1, t2, d2)
    if row["quantity"] == "z":
        return _difference(z, row)
    logs = re.match(r"([\d.]+)-log", row["quantity"])
    at = _temperatures(row["quantity"])
    if logs is None or not at:
        return None
    decimal = lethality.decimal_reduction_time(at[0], d1, t1, z)
    return _seconds(lethality.hold_time(float(logs[1]), decimal), row)


def _z_step(row: Row) -> float | None:
    decimal = re.search(r"D\s*=\s*([\d.]+ \w+)", row["inputs"])
    z = re.search(r"\bz\s*=\s*([\d.]+)\s*°([CF])", row["inputs"])
    if decimal is None or z is None:
        return None
    rise = units.temperature_difference(f"{z[1]} deg{z[2]}")
    reference, at = _temperatures(row["inputs"])[0], _temperatures(row["quantity"])[0]
    lethality = kc.properties.lethality
    found = lethality.decimal_reduction_time(at, units.time(decimal[1]), reference, rise)
    return _seconds(found, row)


def _lethal_rate(row: Row) -> float | None:
    reference = re.search(r"Tref\s*=?\s*([\d.]+)\s*°([CF])", row["inputs"])
    z = re.search(r"\bz\s*=?\s*([\d.]+)\s*°([CF])", row["inputs"])
    at = _temperatures(row["quantity"]) or _temperatures(row["title"])
    if reference is None or z is None or not at:
        return None
    return kc.properties.lethality.lethal_rate(
        at[0],
        units.temperature(f"{reference[1]} deg{reference[2]}"),
        units.temperature_difference(f"{z[1]} deg{z[2]}"),
    )


def _ramp(row: Row) -> float | None:
    """Process time of "100→121.1 °C in 10 min, hold 5 min, →100 °C in 6 min; Tref ..., z ..."."""
    program, _, rest = row["inputs"].partition(";")
    reference = re.search(r"Tref\s*([\d.]+)\s*°([CF])", rest)
    z = re.search(r"\bz\s*([\d.]+)\s*°([CF])", rest)
    first = re.match(r"\s*([\d.]+)", program)
    scale = re.search(r"°\s*([CF])", program)
    if reference is None or z is None or first is None or scale is None:
        return None
    times, values = [0.0], [float(first[1])]
    for part in program.split(","):
        target = re.search(r"→\s*([\d.]+)", part)
        duration = re.search(r"(?:in|hold)\s+([\d.]+ \w+)", part)
        if duration is None:
            return None
        times.append(times[-1] + units.time(duration[1]))
        values.append(float(target[1]) if target else values[-1])
    kelvin = [units.temperature(f"{value} deg{scale[1]}") for value in values]
    found = kc.properties.lethality.process_time(
        times,
        kelvin,
        units.temperature(f"{reference[1]} deg{reference[2]}"),
        units.temperature_difference(f"{z[1]} deg{z[2]}"),
    )
    return _seconds(found, row)


def _pasteurisation(row: Row) -> float | None:
    lethality = kc.properties.lethality
    if row["quantity"].startswith("z"):
        return lethality.pasteurisation_z()
    minutes = re.match(r"([\d.]+)\s*min", row["quantity"])
    if minutes is None:
        return None
    return float(minutes[1]) * lethality.pasteurisation_rate(_temperatures(row["quantity"])[0])


_KINDS: Mapping[str, Callable[[Row], float | None]] = {
    "FSIS time": _fsis,
    "implied by the FSIS": _implied,
    "Food Code": _food_code,
    "poultry": _food_code,
    "holding": _holding,
    "reheating": _reheating,
    "which cooling stage": _binding,
    "cooling": _cooling,
    "thermal-death-time": _death_curve,
    "z-value step": _z_step,
    "lethal rate": _lethal_rate,
    "F0": _ramp,
    "pasteurisation unit": _pasteurisation,
}


def value(row: Row) -> float | None:
    kind = next((kind for word, kind in _KINDS.items() if word in row["title"]), None)
    return None if kind is None else kind(row)
