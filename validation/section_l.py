"""Units and common practice (section L)."""

from __future__ import annotations

from collections.abc import Callable, Mapping

from case_file import ICE, Row

from kettlecast import units

REASONS: Mapping[str, str] = {}

_UNITS: Mapping[str, Callable[[], float]] = {
    "unit: 1 lb": lambda: units.mass("1 lb"),
    "unit: 1 US gallon": lambda: units.volume("1 gal"),
    "temperature 32 °F": lambda: units.temperature("32 degF") - ICE,
    "temperature 70 °F": lambda: units.temperature("70 degF") - ICE,
    "temperature 135 °F": lambda: units.temperature("135 degF") - ICE,
    "temperature 165 °F": lambda: units.temperature("165 degF") - ICE,
    "temperature 212 °F": lambda: units.temperature("212 degF") - ICE,
    "temperature -40 °F": lambda: units.temperature("-40 degF") - ICE,
    "temperature DIFFERENCE 18 °F": lambda: units.temperature_difference("18 degF"),
}


def value(row: Row) -> float | None:
    made = _UNITS.get(row["title"])
    return None if made is None else made()
