"""Transient conduction, cooling and freezing of pieces (section G)."""

from __future__ import annotations

import math
from collections.abc import Mapping

from case_file import FOLDER, Row, rows
from conduction_text import (
    after_text,
    biot_of,
    diffusivity_of,
    film_of,
    given,
    length_of,
    shape_of,
    temperatures,
    time_of,
)

import kettlecast as kc

_CHART = "a reading of a printed chart carried on; the row of the exact function is answered"
REASONS: Mapping[str, str] = {
    row["id"]: _CHART
    for row in (rows("G") if FOLDER.exists() else ())
    if "chart" in row["quantity"]
}

conduction, freezing = kc.transfer.conduction, kc.transfer.freezing

#: Per SI unit, for the units that rows are in.
SCALE = {
    "min": 1.0 / 60.0,
    "h": 1.0 / 3600.0,
    "cm": 100.0,
    "mm": 1e3,
    "kW/m2": 1e-3,
    "kJ/m2": 1e-3,
    "Btu/(h ft2)": 0.3048**2 * 3600.0 / 1055.05585262,
    "Btu/ft2": 0.3048**2 / 1055.05585262,
}

#: The sphere of the textbook that rows call "the same sphere, as above".
SAME_SPHERE = "7 cm, rho 1000, L 250 kJ/kg, Tf -1.25, air -40 °C, k 1.2"

STRONG = 1e4  #: Biot number that stands for a fixed surface temperature


def value(row: Row) -> float | None:
    """What the library says to a row, in its unit; the kind of row is told by its title."""
    title = row["title"]
    if "chart" in row["quantity"]:
        return None
    if "f and j" in title or "f, j" in title:
        return _factor(row)
    if "one-term coefficients" in title:
        return _mode(row)
    if "Cleland" in title:
        return _cleland_earle(row)
    if "Plank" in title:
        return _plank(row)
    if "semi-infinite" in title or "thick" in title:
        found = _thick(row)
    elif "lumped" in title:
        found = _lumped(row)
    else:
        found = _body(row)
    return None if found is None else found * SCALE.get(row["unit"], 1.0)


def _mode(row: Row) -> float | None:
    shape, biot = shape_of(row["title"]), given("Bi", row["title"])
    if shape is None or biot is None:
        return None
    modes = {"lambda1": conduction.eigenvalue, "A1": conduction.amplitude}
    return modes[row["quantity"]](shape, biot) if row["quantity"] in modes else None


def _factor(row: Row) -> float | None:
    limit = "limits" in row["title"]
    words = row["title"].rsplit(":")[-1] if limit else row["quantity"]
    shape = shape_of(words)
    biot = STRONG if limit else given("Bi", row["title"])
    if shape is None or biot is None:
        return None
    of = conduction.cooling_lag_factor if "j" in words else conduction.cooling_time_factor
    return of(shape, biot)


def _cleland_earle(row: Row) -> float | None:
    shape = shape_of(row["title"])
    groups = [given(name, row["inputs"]) for name in ("Pk", "Ste", "Bi")]
    if shape is None or None in groups or row["quantity"] not in ("P", "R"):
        return None
    plank, stefan, biot = (float(one or 0.0) for one in groups)
    of = freezing.thawing_factors if "thaw" in row["title"] else freezing.cleland_earle_factors
    return of(shape, plank, stefan, biot)["PR".index(row["quantity"])]


def _plank(row: Row) -> float | None:
    inputs = row["inputs"]
    if "as above" in inputs:
        inputs = f"{SAME_SPHERE}, {inputs}"
    shape = shape_of(row["title"])
    names = ("rho", "L", "Tf", "h", "k")
    contents, _, wrapped = inputs.partition("mm package")
    found = {name: given(name, contents) for name in names}
    surroundings, size = given("(?:Ta|air)", inputs), length_of(inputs)
    if shape is None or None in found.values() or surroundings is None or size is None:
        return None
    known = {name: float(one or 0.0) for name, one in found.items()}
    film = known["h"]
    package = after_text(r"([\d.]+)\s*mm package", inputs)
    if package is not None:
        of_package = given("k", wrapped) or math.nan
        film = freezing.film_through_package(film, 1e-3 * package, of_package)
    time = freezing.plank_time(
        shape,
        size,
        film,
        known["k"],
        heat=1e3 * known["rho"] * known["L"],
        difference=known["Tf"] - surroundings,
    )
    return time * SCALE.get(row["unit"], 1.0)


def _thick(row: Row) -> float | None:
    inputs, quantity = row["inputs"], row["quantity"]
    degrees, diffusivity = temperatures(inputs), diffusivity_of(inputs)
    time, conductivity = time_of(inputs), given("k", inputs)
    if diffusivity is None or time is None or degrees.start is None:
        return None
    if "ft2/h" in inputs and conductivity is not None:  # k then in Btu/(h ft degF)
        conductivity *= 1055.05585262 * 1.8 / (3600.0 * 0.3048)
    change = None if degrees.fluid is None else degrees.fluid - degrees.start
    kelvin = 1.0 if degrees.celsius else 1.0 / 1.8
    if change is not None and conductivity is not None and "flux" in quantity:
        return conduction.semi_infinite_flux(change * kelvin, conductivity, diffusivity, time)
    if change is not None and conductivity is not None and "heat" in quantity:
        return conduction.semi_infinite_heat(change * kelvin, conductivity, diffusivity, time)
    if "depth" in quantity and change and degrees.end is not None:
        reached = conduction.semi_infinite_depth((degrees.end - degrees.start) / change)
        return reached / conduction.diffusion_depth(1.0, diffusivity, time)
    depth = length_of(inputs)
    if depth is None:
        return None
    scaled = conduction.diffusion_depth(depth, diffusivity, time)
    if quantity == "X":
        return scaled
    flux = after_text(r"([\d.]+)\s*kW/m2", inputs)
    if flux is not None and conductivity is not None:
        rise = conduction.semi_infinite_flux_rise(
            1e3 * flux, depth, conductivity, diffusivity, time
        )
        return degrees.start + rise / kelvin
    if change is None:
        return None
    film = given("h", inputs)
    if film is None or conductivity is None:
        return degrees.start + change * conduction.semi_infinite_fixed_surface(scaled)
    strength = conduction.biot_number(film, math.sqrt(diffusivity * time), conductivity)
    return degrees.start + change * conduction.semi_infinite_film(scaled, strength)


def _lumped(row: Row) -> float | None:
    inputs, shape = row["inputs"], shape_of(row["title"])
    degrees, size, time = temperatures(inputs), length_of(inputs), time_of(inputs)
    film, density, heat = film_of(inputs), given("rho", inputs), given("cp", inputs)
    if None in (shape, size, film, density, heat, degrees.start, degrees.fluid):
        return None
    surface = conduction.surface_per_volume(shape, size)
    if row["quantity"] == "Bi":
        return conduction.biot_number(film, 1.0 / surface, given("k", inputs))
    if degrees.end is not None:  # ends with a temperature: how long
        change = (degrees.fluid - degrees.end) / (degrees.fluid - degrees.start)
        in_second = conduction.lumped_change(film, surface, density * heat, 1.0)
        return math.log(change) / math.log(in_second)
    if time is None:
        return None
    change = conduction.lumped_change(film, surface, density * heat, time)
    return degrees.fluid + (degrees.start - degrees.fluid) * change


def _body(row: Row) -> float | None:
    """Slab, cylinder or sphere that cools or warms until a place has reached a temperature."""
    inputs, quantity = row["inputs"], row["quantity"]
    shape, biot, degrees = shape_of(row["title"]), biot_of(inputs), temperatures(inputs)
    if shape is None or biot is None:
        return None
    if quantity in ("Bi", "lambda1", "A1"):
        modes = {"lambda1": conduction.eigenvalue, "A1": conduction.amplitude}
        return modes[quantity](shape, biot) if quantity in modes else biot
    length, diffusivity = length_of(inputs, to_centre=True), diffusivity_of(inputs)
    if None in (degrees.start, degrees.end, degrees.fluid, length, diffusivity):
        return None
    change = (degrees.fluid - degrees.end) / (degrees.fluid - degrees.start)
    position = 1.0 if "surface" in inputs else 0.0
    exact = conduction.fourier_to_reach(shape, biot, change, position)
    if quantity == "tau":
        return conduction.one_term_fourier(shape, biot, change, position)
    if "one term" in quantity:
        exact = conduction.one_term_fourier(shape, biot, change, position)
    if quantity.endswith("then"):
        place = 1.0 if "surface" in quantity else 0.0
        left = conduction.remaining_change(shape, biot, exact, place)
        return degrees.fluid + (degrees.start - degrees.fluid) * left
    if row["unit"] not in ("s", "min", "h"):
        return None
    return conduction.fourier_time(exact, diffusivity, length)
