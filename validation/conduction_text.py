"""Numbers in the inputs of rows on conduction: lengths, temperatures, times."""

from __future__ import annotations

import re
from dataclasses import dataclass

import kettlecast as kc

_NUMBER = r"([-\u2212]?\d*\.?\d+(?:e[-+]?\d+)?)"
_LENGTHS = {"mm": 1e-3, "cm": 1e-2, "m": 1.0, "in": 0.0254, "ft": 0.3048}
_TIMES = {"s": 1.0, "min": 60.0, "h": 3600.0, "hour": 3600.0, "day": 86400.0, "month": 2592000.0}
_FLUIDS = (
    r"(?:air|gas|water|oven|oil|steam|bath|ambient|fluid|medium|brine|room|surface|face|T\u221e)"
)
_SHAPES = {
    kc.Shape.cylinder: ("cyl", "log", "carcass", "sausage", "shaft", "rod", "can ", "frank"),
    kc.Shape.sphere: ("sph", "apple", "egg", "potato", "orange", "ball", "tomato", "melon"),
    kc.Shape.slab: ("slab", "plate", "steak", "wall", "patty", "sheet", "fillet", "board"),
}


def _as_number(text: str) -> float:
    return float(text.replace("\u2212", "-"))


def after_text(pattern: str, text: str) -> float | None:
    """The number that the group of a pattern holds."""
    found = re.search(pattern, text)
    return None if found is None else _as_number(found[1])


def given(name: str, text: str) -> float | None:
    """The number after a name, with or without an equals sign."""
    return after_text(rf"(?:^|[\s,;(]){name}\s*=?\s*{_NUMBER}", text)


def shape_of(text: str) -> kc.Shape | None:
    """Shape that a word of the text names."""
    for shape, words in _SHAPES.items():
        if any(word in f"{text.lower()} " for word in words):
            return shape
    return None


def length_of(text: str, *, to_centre: bool = False) -> float | None:
    """First length that is no package [m]; `to_centre`: half of it unless it is called a half."""
    units = "|".join(_LENGTHS)
    found = re.search(rf"{_NUMBER}\s*({units})\b(?!2|\s*package|/)", text)
    if found is None:
        return None
    length = _as_number(found[1]) * _LENGTHS[found[2]]
    before = text[: found.start()]
    whole = not re.search(r"(?:half|radius|\bR|\br0?)[^,;]*$", before)
    return 0.5 * length if to_centre and whole else length


def time_of(text: str) -> float | None:
    """First time [s]."""
    units = "|".join(_TIMES)
    found = re.search(rf"(?:^|[\s,;]){_NUMBER}\s*({units})s?\b(?!/)", text)
    return None if found is None else _as_number(found[1]) * _TIMES[found[2]]


def diffusivity_of(text: str) -> float | None:
    """Diffusivity [m2/s], as given or from k, rho and cp."""
    alpha = given("alpha", text)
    if alpha is not None:
        return alpha * (0.3048**2 / 3600.0 if "ft2/h" in text else 1.0)
    parts = [given(name, text) for name in ("k", "rho", "cp")]
    if None in parts:
        return None
    k, rho, cp = (float(part or 0.0) for part in parts)
    return k / (rho * cp)


def film_of(text: str) -> float | None:
    """Film coefficient h [W/(m2 K)]."""
    return given("h", text)


def biot_of(text: str) -> float | None:
    """Biot number with the half thickness or radius [-]."""
    film, conductivity = film_of(text), given("k", text)
    length = length_of(text, to_centre=True)
    if film is None or conductivity is None or length is None:
        return given("Bi", text)
    return kc.transfer.conduction.biot_number(film, length, conductivity)


@dataclass(frozen=True)
class Degrees:
    """Temperatures of a row, in its unit: at the start, at the end, of the fluid or surface."""

    start: float | None
    end: float | None
    fluid: float | None
    celsius: bool


def temperatures(text: str) -> Degrees:
    """What a row says of temperatures: "25->2 degC", "air -11 degC", "1000 degF face"."""
    span = re.search(rf"{_NUMBER}\s*(?:\u00b0[CF])?\s*\u2192\s*{_NUMBER}", text)
    fluid = after_text(rf"{_FLUIDS}\s*(?:at\s*)?{_NUMBER}\s*\u00b0", text)
    face = after_text(rf"{_NUMBER}\s*\u00b0[CF]\s*(?:face|surface)", text)
    begin = after_text(rf"{_NUMBER}\s*\u00b0[CF]\s*(?:start|initial)", text)
    bare = after_text(rf"(?:^|[,;]\s*){_NUMBER}\s*\u00b0[CF]\s*(?:[,;]|$)", text)
    if span is not None:
        start, end = _as_number(span[1]), _as_number(span[2])
        return Degrees(start, end, fluid, "\u00b0F" not in text)
    start_of = begin if begin is not None else bare
    return Degrees(start_of, None, face if fluid is None else fluid, "\u00b0F" not in text)
