"""What a forecast does to the food over time: lethality, time above a level, browning.

All sums run along the trace of the forecast, with straight lines between its points. They are for
planning: a forecast is not a record, and the tables of `safety_tables` say what is published.
"""

from __future__ import annotations

from dataclasses import dataclass

from . import _core, units
from .errors import InvalidArgument, UnknownName
from .file_model import nearest
from .forecast_tables import signal_names
from .forecasting import Forecast
from .safety_tables import CAUTION

#: Goes with every browning time.
INDICATOR = (
    "An indicator to compare batches with, not a measurement of colour: it knows neither sugar, "
    "acid nor water of the food, and a wet surface hardly browns."
)


@dataclass(frozen=True)
class Lethality:
    """How much a signal kills, as time at the reference temperature.

    Attributes
    ----------
    signal :
        Of the trace.
    process_time :
        Time at the reference that kills as much, the F-value [s].
    reference, z :
        That it holds for [K].
    log_reductions :
        Decimal reductions [-]; None without a decimal reduction time.
    caution :
        Goes with the numbers.
    """

    signal: str
    process_time: float
    reference: float
    z: float
    log_reductions: float | None
    caution: str = CAUTION


@dataclass(frozen=True)
class Stay:
    """How long a signal was on one side of a level.

    Attributes
    ----------
    signal, level :
        Of the trace; [K] for temperatures, else in SI units.
    total :
        All stays together [s].
    longest :
        Longest stay without a break, the hold [s].
    first :
        Begin of the first stay, since the start of the run [s]; None if there is none.
    """

    signal: str
    level: float
    total: float
    longest: float
    first: float | None


@dataclass(frozen=True)
class Browning:
    """Browning or scorch indicator of a surface, as time at a reference temperature.

    Attributes
    ----------
    signal :
        Of the trace.
    time :
        Time at the reference temperature that browns as much [s].
    at_highest_energy :
        The same with the highest published activation energy [s]; between the two lies what is
        not known about the food.
    reference :
        [K]
    activation_energy :
        [J/mol]
    caution :
        Goes with the numbers.
    """

    signal: str
    time: float
    at_highest_energy: float
    reference: float
    activation_energy: float
    caution: str = INDICATOR


def _series(forecast: Forecast, signal: str) -> tuple[list[float], list[float]]:
    names = signal_names(forecast.result.trace_names)
    if signal not in names[1:]:
        raise UnknownName(
            f'signal "{signal}" is not in the trace{nearest(signal, names)}; '
            f"there are: {', '.join(names[1:])}"
        )
    trace = forecast.result.trace
    return trace[:, 0].tolist(), trace[:, names.index(signal)].tolist()


def _temperatures(forecast: Forecast, signal: str) -> tuple[list[float], list[float]]:
    if not _is_temperature(signal):
        raise InvalidArgument(f'signal "{signal}" is not a temperature or a reading of one')
    return _series(forecast, signal)


def _is_temperature(signal: str) -> bool:
    return signal.endswith(("temperature", ".reading"))


def lethality(
    forecast: Forecast,
    *,
    signal: str,
    z: str | float,
    reference: str | float,
    decimal_reduction_time: str | float | None = None,
) -> Lethality:
    """Process time (F-value) of a signal, exact on the lines between the points of the trace.

        F = integral of 10^((T - Tref) / z) dt

    Parameters
    ----------
    forecast :
        Of one batch; its interval is not carried over.
    signal :
        Of the coldest part, such as "beef.core_temperature". Pieces that are not poured yet have
        the temperature they will be poured with.
    z :
        Such as "10 degF", or [K].
    reference :
        Such as "140 degF", or [K].
    decimal_reduction_time :
        D at the reference, such as "1.8 min", or [s]; gives `log_reductions`.

    Raises
    ------
    UnknownName
        No such signal; the message lists those there are.
    InvalidArgument
        The signal is not a temperature, or a number makes no sense.
    """
    times, values = _temperatures(forecast, signal)
    rise = units.number(z, "temperature_difference")
    hot = units.number(reference, "temperature")
    thermal = _core.properties.lethality
    found = thermal.process_time(times, values, hot, rise)
    reductions = None
    if decimal_reduction_time is not None:
        reductions = thermal.log_reductions(found, units.number(decimal_reduction_time, "time"))
    return Lethality(signal, found, hot, rise, reductions)


def _level(signal: str, level: str | float) -> float:
    return units.number(level, "temperature") if _is_temperature(signal) else float(level)


def time_above(forecast: Forecast, *, signal: str, level: str | float) -> Stay:
    """How long a signal is at or above a level, where the lines of the trace cross it.

    Parameters
    ----------
    forecast :
        Of one batch.
    signal :
        Such as "product.temperature".
    level :
        Such as "165 degF" or [K]; in SI units for signals that are not temperatures.

    Raises
    ------
    UnknownName
        No such signal; the message lists those there are.
    """
    height = _level(signal, level)
    return Stay(signal, height, *_core.exposure.time_above(*_series(forecast, signal), height))


def time_below(forecast: Forecast, *, signal: str, level: str | float) -> Stay:
    """How long a signal is below a level; arguments and errors as `time_above`.

    `time_above` and `time_below` of one level share the whole run between them.
    """
    height = _level(signal, level)
    return Stay(signal, height, *_core.exposure.time_below(*_series(forecast, signal), height))


def browning(
    forecast: Forecast,
    *,
    signal: str | None = None,
    activation_energy: float | None = None,
    z: str | float | None = None,
    reference: str | float = "150 degC",
) -> tuple[Browning, ...]:
    """Browning or scorch indicator: time at the reference that would brown a surface as much.

        t = integral of exp(-(E / R) (1/T - 1/Tref)) dt

    Published E run from 64 kJ/mol (dry crumb on a hot plate, 140 to 250 degC: Zanoni, Peri & Bruno,
    LWT 28, 1995, 604) over 114 (ascorbic acid and cysteine, 125 to 155 degC) to 184 (lysine and
    glucose in dry cellulose, 40 to 60 degC); at 150 degC that is z of 53 to 19 K.

    Parameters
    ----------
    forecast :
        Of one batch.
    signal :
        One surface; default: the floor and the surface of all pieces.
    activation_energy :
        E [J/mol]; default: that of the dry crust.
    z :
        In place of E: rise that makes browning ten times as fast at the reference, or [K].
    reference :
        Temperature at which time is counted, or [K].

    Raises
    ------
    UnknownName
        No such signal; the message lists those there are.
    InvalidArgument
        Both E and z are given, or a number makes no sense.
    """
    if activation_energy is not None and z is not None:
        raise InvalidArgument("browning: give an activation energy or z, not both")
    kinetics, hot = _core.properties.browning, units.number(reference, "temperature")
    least, most = kinetics.activation_energies()
    energy = least if activation_energy is None else activation_energy
    if z is not None:
        rise = units.number(z, "temperature_difference")
        energy = kinetics.activation_energy_from_z(hot, rise)
    found = []
    for name in _surfaces(forecast) if signal is None else (signal,):
        times, values = _temperatures(forecast, name)
        own, other = (kinetics.browning_time(times, values, hot, one) for one in (energy, most))
        found.append(Browning(name, own, other, hot, energy))
    return tuple(found)


def _surfaces(forecast: Forecast) -> list[str]:
    names = signal_names(forecast.result.trace_names)
    return ["floor.temperature", *(name for name in names if name.endswith(".surface_temperature"))]
