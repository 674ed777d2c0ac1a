"""Text with a unit to SI numbers and back: `mass("20 lb")` is 9.0718474 [kg].

Number and unit are taken apart here and handed to pint separately; pint never parses text, because
its parser reads "2,5 kg" as 25 kg, "40 C" as coulomb and "1:30:00" as zero without a word.
"""

from __future__ import annotations

import functools
import math
import re
from typing import TYPE_CHECKING, Any, Literal

from .errors import InvalidArgument, UnknownName
from .unit_kind import Kind
from .unit_tables import GAUGE, KINDS

if TYPE_CHECKING:
    import numpy as np

System = Literal["metric", "us"]

_NUMBER = r"[+-]?(?:\d+(?:\.\d*)?|\.\d+)(?:[eE][+-]?\d+)?"
_QUANTITY = re.compile(rf"({_NUMBER})\s*(.*)")
_COMMA = re.compile(r"[+-]?\d+,\d")
_CLOCK = re.compile(r"(?:(\d+):)?(\d+):(\d\d)")
_ARTICLE = {"altitude": "an"}


@functools.cache
def _registry() -> Any:
    """The one application registry of pint; made at first use because that takes 0.2 s."""
    import pint

    registry: Any = pint.get_application_registry  # pint does not give it a type
    return registry()


def kind_named(kind: str) -> Kind:
    """Units and example of a kind of quantity such as "mass".

    Raises
    ------
    UnknownName
        No such kind; the message lists those there are.
    """
    if kind not in KINDS:
        raise UnknownName(f'quantity "{kind}" is not known; there are: {", ".join(KINDS)}')
    return KINDS[kind]


def _pint_unit(unit: str, kind: str) -> str:
    entry = kind_named(kind)
    if unit not in entry.units:
        raise InvalidArgument(f'unit "{unit}" unknown; allowed: {entry.allowed}')
    return entry.units[unit]


def to_si(value: Any, unit: str, kind: str) -> Any:
    """A number or numpy array in `unit` as SI, of the same type and shape.

    Raises
    ------
    InvalidArgument
        The unit is not one of the kind.
    """
    spelling = _pint_unit(unit, kind)
    return _registry().Quantity(value, spelling).to(kind_named(kind).si).magnitude


def parse(text: object, kind: str, *, ambient: float | None = None) -> float:
    """Text with a unit as an SI number of the given kind.

    Parameters
    ----------
    text :
        For example "20 lb", "165 degF", "25 min".
    kind :
        One of the names in `KINDS`.
    ambient :
        Pressure around the gauge [Pa]; needed for gauge pressures only.

    Raises
    ------
    InvalidArgument
        The text has no number, no unit or a unit of another kind, or a comma in the number.
    """
    entry = kind_named(kind)
    told = f'"{text}" is not {_ARTICLE.get(kind, "a")} {kind.replace("_", " ")}'
    plain = " ".join(str(text).replace("\N{MINUS SIGN}", "-").split())
    if kind == "time" and ":" in plain:
        return _clock(plain, told)
    number, unit = _split(plain, entry, told)
    if kind == "pressure" and unit in GAUGE:
        return _gauge(number, unit, ambient, told)
    try:
        value = float(to_si(number, unit, kind))
    except InvalidArgument as error:
        raise InvalidArgument(f"{told}: {error}") from None
    if not math.isfinite(value):
        raise InvalidArgument(f"{told}: the number is too large")
    if kind != "temperature":
        return value
    if value < 0:
        raise InvalidArgument(f"{told}: colder than absolute zero (-273.15 degC)")
    return round(value, 9)  # so that 71.6 degF is 22 degC to the last digit


def _split(plain: str, entry: Kind, told: str) -> tuple[float, str]:
    if _COMMA.match(plain):
        raise InvalidArgument(
            f"{told}: a comma in a number is refused, because 2,5 may be meant as 2.5 or as 25; "
            f'use a decimal point and no separators, for example "{entry.example}"'
        )
    found = _QUANTITY.fullmatch(plain)
    if found is None:
        raise InvalidArgument(f'{told}: it must start with a number, for example "{entry.example}"')
    if not found[2]:
        raise InvalidArgument(f'{told}: the unit is missing, for example "{entry.example}"')
    return float(found[1]), found[2]


def _clock(plain: str, told: str) -> float:
    found = _CLOCK.fullmatch(plain)
    if found is None or int(found[3]) > 59 or (found[1] is not None and int(found[2]) > 59):
        raise InvalidArgument(
            f'{told}: with colons write min:s as "1:30" or h:min:s as "1:30:00", '
            "each part after a colon from 00 to 59"
        )
    return 3600.0 * int(found[1] or 0) + 60.0 * int(found[2]) + int(found[3])


def _gauge(number: float, unit: str, ambient: float | None, told: str) -> float:
    if ambient is None:
        raise InvalidArgument(
            f"{told} here: a gauge pressure counts from the pressure of the room; "
            'give an absolute pressure such as "1002 hPa", or the ambient pressure with it'
        )
    value = float(to_si(number, GAUGE[unit], "pressure")) + ambient
    if value < 0:
        raise InvalidArgument(f"{told}: it lies below vacuum with an ambient of {ambient:g} Pa")
    return value


def temperature(text: str) -> float:
    """A temperature such as "165 degF" or "74 degC" [K]."""
    return parse(text, "temperature")


def temperature_difference(text: str) -> float:
    """A temperature difference such as "2 K" or "18 degF" (which is 10 K) [K]."""
    return parse(text, "temperature_difference")


def mass(text: str) -> float:
    """A mass such as "20 lb" [kg]."""
    return parse(text, "mass")


def length(text: str) -> float:
    """A length such as "8 mm" [m]."""
    return parse(text, "length")


def altitude(text: str) -> float:
    """A height above sea level such as "5280 ft" [m]."""
    return parse(text, "altitude")


def power(text: str) -> float:
    """A power such as "18 kW" [W]."""
    return parse(text, "power")


def time(text: str) -> float:
    """A time such as "90 s", "25 min", "1:30" (min:s) or "1:30:00" (h:min:s) [s]."""
    return parse(text, "time")


def volume(text: str) -> float:
    """A volume such as "40 gal" (US liquid measures) [m3]."""
    return parse(text, "volume")


def pressure(text: str, ambient: float | None = None) -> float:
    """A pressure such as "1002 hPa"; a gauge pressure such as "5 psig" needs `ambient` [Pa]."""
    return parse(text, "pressure", ambient=ambient)


def rotation_speed(text: str) -> float:
    """A speed of rotation such as "25 rpm", in turns per second [1/s]."""
    return parse(text, "rotation_speed")


def speed(text: str) -> float:
    """A speed such as "0.1 m/s" [m/s]."""
    return parse(text, "speed")


def share(text: str) -> float:
    """A share such as "60 %" [-]."""
    return parse(text, "share")


def gain(text: str) -> float:
    """Share of the power per kelvin of a controller such as "10 %/K" [1/K]."""
    return parse(text, "gain")


def number(value: str | float, kind: str) -> float:
    """Text with a unit, or a number that is SI already, as an SI number."""
    return parse(value, kind) if isinstance(value, str) else float(value)


def in_unit(value: float | np.ndarray, unit: str, kind: str) -> Any:
    """An SI number or array expressed in `unit`, without the unit.

    Raises
    ------
    InvalidArgument
        The unit is not one of the kind.
    """
    spelling = _pint_unit(unit, kind)
    return _registry().Quantity(value, kind_named(kind).si).to(spelling).magnitude


def as_text(value: float, kind: str, system: System = "metric", *, digits: int = 4) -> str:
    """An SI number as text for people, for example `as_text(347.04, "temperature", "us")`.

    Parameters
    ----------
    value :
        SI number of the kind.
    kind :
        One of the names in `KINDS`.
    system :
        "metric" or "us".
    digits :
        Significant digits.
    """
    unit = _display_unit(value, kind, system)
    rounded = float(f"{float(in_unit(value, unit, kind)):.{digits}g}")
    return f"{_without_exponent(rounded)} {unit}"


def exact_text(value: float, kind: str, system: System = "metric") -> str:
    """The shortest text that reads back as the very same SI number.

    A unit of the other system is taken where it needs far fewer digits: 20 lb, not 9.0718474 kg.
    """
    own = _exact_texts(value, kind, system)
    if own and _figures(own[0]) <= 7:
        return own[0]
    other = _exact_texts(value, kind, "us" if system == "metric" else "metric")
    plain = f"{_without_exponent(value)} {kind_named(kind).si_unit}"
    return min([*own, *other, plain], key=_figures)


def _exact_texts(value: float, kind: str, system: System) -> list[str]:
    texts = [_shortest(value, unit, kind) for unit in _units_of(kind, system)]
    return sorted((text for text in texts if text is not None), key=_figures)


def _figures(text: str) -> int:
    return len(text.partition(" ")[0])


def _units_of(kind: str, system: System) -> tuple[str, ...]:
    systems = {"metric": kind_named(kind).metric, "us": kind_named(kind).us}
    if system not in systems:
        raise UnknownName(f'system "{system}" is not known; there are: metric, us')
    return systems[system]


def _display_unit(value: float, kind: str, system: System) -> str:
    """The largest unit of the system in which the number is at least 1, else the smallest."""
    units = _units_of(kind, system)
    if kind == "temperature":
        return units[0]
    fitting = [unit for unit in units if abs(float(in_unit(value, unit, kind))) >= 1.0]
    return fitting[0] if fitting else units[-1]


def _shortest(value: float, unit: str, kind: str) -> str | None:
    amount = float(in_unit(value, unit, kind))
    for digits in range(1, 18):
        text = f"{_without_exponent(float(f'{amount:.{digits}g}'))} {unit}"
        if parse(text, kind) == value:
            return text
    return None


def _without_exponent(number: float) -> str:
    return repr(number).removesuffix(".0")
