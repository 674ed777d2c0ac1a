"""Boiling, condensation, natural convection, radiation and open water (part of section E)."""

from __future__ import annotations

import math
import re
from collections.abc import Callable, Mapping

from case_file import ICE, ONE_ATMOSPHERE, Row

import kettlecast as kc

REASONS: Mapping[str, str] = {
    "E-46": "VDI and Rohsenow-Hartnett-Cho facing up: the printed numbers come from a "
    "transcription with +20/11 for the exponent -20/11 of the VDI Heat Atlas (F2, equation 9) and "
    "with 0.01707 for the 0.0107 and another laminar constant than Raithby & Hollands; the "
    "equations of the sources give 162.0 and 170.4",
}

BTU = 5.678263341  #: W/(m2 K) per Btu/(h ft2 degF)
SCALE = {
    "kW": 1e-3,
    "kW/m2": 1e-3,
    "MW/m2": 1e-6,
    "kg/h": 3600.0,
    "kg/(h m2)": 3600.0,
    "Btu/(h ft2 °F)": 1.0 / BTU,
    "mm": 1e3,
}
#: Kern's Stefan-Boltzmann constant, 0.173e-8 Btu/(h ft2 degR4), over that of CODATA 2018, and his
#: absolute zero [degF]: his example follows from them, not from today's values (1.1 % less).
KERN_SIGMA = 0.173e-8 * BTU * 1.8**4 / 1.8 / 5.670374419e-8
KERN_ZERO = -460.0

_NUMBER = r"([-\u2212]?(?:\d+\.?\d*|\.\d+)(?:e[-+]?\d+)?)"


def given(text: str, *names: str) -> float | None:
    """Number that follows one of the names, an equals sign or not between them."""
    for name in names:
        found = re.search(rf"(?<![A-Za-z_]){name}\s*=?\s*{_NUMBER}", text)
        if found is not None:
            return float(found[1].replace("\u2212", "-"))
    return None


def _words(row: Row) -> str:
    return f"{row['title']}; {row['inputs']}; {row['quantity']}"


def _kelvin(text: str, *names: str) -> float | None:
    """Temperature after a name: kelvin unless the text speaks of degrees Celsius."""
    value = given(text, *names)
    return value if value is None or "°C" not in text else value + ICE


def _difference(text: str, hot: tuple[str, ...], cold: tuple[str, ...]) -> float | None:
    told = given(text, "dT", r"\u0394T")
    above, below = given(text, *hot), given(text, *cold)
    if told is not None or above is None or below is None:
        return told
    return abs(above - below)


def _pair(text: str) -> tuple[float | None, float | None]:
    """Density of liquid and vapour, as "rho_l 962, rho_v .6" or as "rho 585/7.0"."""
    both = re.search(rf"(?<![A-Za-z_])rho\s*=?\s*{_NUMBER}\s*/\s*{_NUMBER}", text)
    if both is not None:
        return float(both[1]), float(both[2])
    return given(text, "rho_l", "rho"), given(text, "rho_v")


def _or(value: float | None, other: Callable[[float], float], kelvin: float) -> float:
    return other(kelvin) if value is None else value


def _rohsenow(row: Row) -> float | None:
    """Nucleate boiling; what the row does not give is that of water at 1 atm."""
    text, quantity, water = _words(row), row["quantity"], kc.properties.water
    boil = float(water.saturation_temperature(ONE_ATMOSPHERE))
    liquid, vapour = _pair(text)
    density = _or(liquid, water.density, boil)
    kinematic = given(text, "nu")
    viscosity = given(text, "mu") if kinematic is None else kinematic * density
    viscosity = _or(viscosity, water.viscosity, boil)
    heat = _or(given(text, "cp"), water.specific_heat, boil)
    vapour = _or(vapour, water.vapour_density, boil)
    latent = _or(given(text, "hfg"), water.latent_heat, boil)
    tension = _or(given(text, "sigma"), water.surface_tension, boil)
    conductivity = _or(given(text, "k"), water.conductivity, boil)
    prandtl = given(text, "Pr") or heat * viscosity / conductivity
    boiling = kc.transfer.boiling
    if "critical" in quantity:
        constant = given(quantity, "K", "constant", "Zuber") or given(row["inputs"], "K")
        return boiling.critical_heat_flux(
            density, vapour, latent, tension, constant or math.pi / 24.0
        )
    surface = given(row["inputs"], "Csf") or 0.0132
    exponent = given(text, "exponent", "n", "s") or 1.0
    excess = _difference(text, ("Tw", "wall"), ("Tsat",)) or (given(text, "Tw") or 0.0) - 100.0
    liquid_at_boil = (density, vapour, heat, latent, tension, viscosity, prandtl)
    other = given(quantity, "Csf")
    book = re.search(r"([\d,]+) is the book value", row["note"])
    if other is not None and book is not None:  # the source goes on from its own flux
        printed = float(book[1].replace(",", ""))
        excess = boiling.rohsenow_excess(*liquid_at_boil, printed, surface, exponent)
    flux = boiling.rohsenow_heat_flux(*liquid_at_boil, excess, other or surface, exponent)
    pan = given(text, "pan", "D", "diameter")
    power = None if pan is None else flux * math.pi / 4.0 * pan**2
    if power is not None and "evaporation" in quantity:
        return boiling.boil_off_rate(power, latent)
    plain = {"q": flux, "h": flux / excess, "power": power}
    return plain.get("q" if quantity.startswith("q") else quantity)


def _simple_boiling(row: Row) -> float | None:
    text, quantity, boiling = _words(row), row["quantity"], kc.transfer.boiling
    excess = given(row["inputs"].split(";")[0], "dT")
    wall, water = given(text, "inside wall", "wall", "Tw"), given(text, "water at", "Tsat")
    if excess is None and wall is not None and water is not None:
        excess = wall - water
    scale = {"atm": ONE_ATMOSPHERE, "kPa": 1e3, "bar": 1e5, "MPa": 1e6}
    found = re.search(rf"{_NUMBER}\s*(atm|kPa|bar|MPa)\b", text)
    pressure = ONE_ATMOSPHERE if found is None else float(found[1]) * scale[found[2]]
    if excess is None:
        return None
    of_floor, of_wall = ("bottom", "floor", "horizontal"), ("side", "wall", "vertical")
    place = quantity if any(word in quantity for word in of_floor + of_wall) else row["title"]
    on_wall = any(word in place for word in of_wall)
    if quantity.startswith("q"):
        flux = boiling.kettle_wall_heat_flux if on_wall else boiling.kettle_floor_heat_flux
        return flux(excess, pressure)
    if quantity.startswith("h"):
        film = boiling.kettle_wall_coefficient if on_wall else boiling.kettle_floor_coefficient
        return film(excess, pressure)
    return None


def _condensation(row: Row) -> float | None:
    text, quantity, films = _words(row), row["quantity"], kc.transfer.condensation
    subcooling = _difference(text, ("Tsat",), ("Tw", "Ts"))
    steam = _kelvin(text, "Tsat")
    density, vapour = _pair(text)
    kinematic = given(text, "nu")
    viscosity = given(text, "mu")
    conductivity, latent = given(text, "k"), given(text, "hfg")
    if density is None or conductivity is None or latent is None or subcooling is None:
        return None
    if viscosity is None:
        viscosity = (kinematic or 0.0) * density
    if vapour is None and steam is not None:
        vapour = float(kc.properties.water.vapour_density(steam))
    cooling = re.search(r"\+\s*(3/8|0?\.\d+)\s*cp", text)
    if cooling is not None:
        share = 0.375 if cooling[1] == "3/8" else float(cooling[1])
        heat = given(text, "cp") or 0.0
        latent = films.modified_latent_heat(latent, heat, subcooling, share)
    film = (density, vapour or 0.0, conductivity, viscosity, latent, subcooling)
    length, diameter = given(text, "L"), given(text, "D", "OD")
    if diameter is not None and "horizontal" in text:
        constant = given(text, "coefficient") or 0.728
        coefficient = films.tube_film_coefficient(*film, diameter, constant)
        area = math.pi * diameter * (length or 1.0)
    elif length is not None:
        angle = math.radians(given(text, "angle") or 90.0)
        coefficient = films.laminar_film_coefficient(*film, length, angle)
        area = length * (given(text, "B", "width") or 1.0)
    else:
        return None
    return _of_film(quantity, film, coefficient, (area, length or 1.0))


def _of_film(
    quantity: str, film: tuple[float, ...], coefficient: float, size: tuple[float, float]
) -> float | None:
    """One quantity of a film; `size` is area [m2] and length [m]."""
    films, (viscosity, latent, subcooling) = kc.transfer.condensation, film[3:]
    heat_flow = coefficient * size[0] * subcooling
    if quantity == "Re":
        return films.film_reynolds_number(viscosity, latent, coefficient, subcooling, size[1])
    if "condensate" in quantity or "rate of condensation" in quantity:
        return films.condensate_rate(heat_flow, latent)
    if "thickness" in quantity:
        density, vapour, conductivity = film[:3]
        return films.film_thickness(
            density, vapour, conductivity, viscosity, latent, subcooling, size[1]
        )
    return {"h": coefficient, "Q": heat_flow}.get(quantity.split(" ")[0])


def _horizontal_plate(row: Row, rayleigh: float, prandtl: float) -> float | None:
    title, form = row["title"], row["quantity"]
    convection = kc.transfer.convection
    rises = ("cold" in title) != ("up" in title)
    if "McAdams" in form:
        up, down = convection.plate_up_mcadams_nusselt, convection.plate_facing_down_nusselt
        return up(rayleigh) if rises else down(rayleigh)
    if rises:  # see REASONS
        return None
    if "VDI" in form:
        return convection.plate_down_vdi_nusselt(rayleigh, prandtl)
    if "Rohsenow" in form or "Raithby" in form:
        return convection.plate_down_raithby_nusselt(rayleigh, prandtl)
    return None


def _natural_convection(row: Row) -> float | None:
    text, convection = _words(row), kc.transfer.convection
    prandtl, grashof, rayleigh = (given(text, name) for name in ("Pr", "Gr", "Ra"))
    if prandtl is None:
        return None
    if rayleigh is None:
        if grashof is None:
            return None
        rayleigh = grashof * prandtl
    if "horizontal plate" in text:
        return _horizontal_plate(row, rayleigh, prandtl)
    if "sphere" in text:
        return convection.sphere_nusselt(rayleigh, prandtl)
    if "cylinder" in text and "vertical" not in text:
        if "Morgan" in text:
            return convection.horizontal_cylinder_morgan_nusselt(rayleigh)
        if "Kuehn" in text:
            return convection.horizontal_cylinder_kuehn_nusselt(rayleigh, prandtl)
        return convection.horizontal_cylinder_nusselt(rayleigh, prandtl)
    if "laminar" in text:
        return convection.vertical_wall_laminar_nusselt(rayleigh, prandtl)
    return convection.vertical_wall_nusselt(rayleigh, prandtl)


def _turbulent_wall(row: Row) -> float | None:
    """A wall in a gas, ideal at the mean temperature; sizes as "2.0 x 2.5 m"."""
    text = row["inputs"]
    size = re.search(rf"{_NUMBER}\s*[\u00d7x]\s*{_NUMBER}\s*m", text)
    wall, gas = given(text, "wall"), given(text, "gas")
    conductivity, kinematic, prandtl = (given(text, name) for name in ("k", "nu", "Pr"))
    if size is None or wall is None or gas is None:
        return None
    if conductivity is None or kinematic is None or prandtl is None:
        return None
    height, difference = float(size[1]), wall - gas
    rayleigh = kc.transfer.convection.rayleigh_number(
        density=1.0,
        specific_heat=prandtl * conductivity / kinematic,
        conductivity=conductivity,
        viscosity=kinematic,
        expansivity=1.0 / (0.5 * (wall + gas) + ICE),
        difference=difference,
        length=height,
    )
    film = kc.transfer.convection.turbulent_wall_nusselt(rayleigh) * conductivity / height
    heat_flow = film * height * float(size[2]) * difference
    return {"h": film, "Q": heat_flow}.get(row["quantity"])


def _grey(row: Row) -> float | None:
    """Cases "(a) e=.., T1 K to T2 K", the letter being the quantity."""
    one = rf"\({re.escape(row['quantity'])}\) e\s*=?\s*{_NUMBER}, {_NUMBER} K to {_NUMBER} K"
    found = re.search(one, row["inputs"])
    if found is None:
        return None
    return kc.transfer.radiation.radiative_heat_flux(*(float(part) for part in found.groups()))


def _hot_plate(row: Row) -> float | None:
    """Kern's plate in a room, with his constants."""
    text, convection = row["inputs"], kc.transfer.convection
    hot, room, emissivity = given(text, "plate"), given(text, "surroundings"), given(text, "e")
    if hot is None or room is None:
        return None
    if "radiation" in row["quantity"] and emissivity is not None:
        surface, walls = ((one - KERN_ZERO) / 1.8 for one in (hot, room))
        return KERN_SIGMA * kc.transfer.radiation.radiation_coefficient(emissivity, surface, walls)
    rules = {
        0.3: convection.room_air_wall_coefficient,
        0.38: convection.room_air_up_coefficient,
        0.2: convection.room_air_down_coefficient,
    }
    rule = rules.get(given(text, "hc") or 0.0)
    return rule((hot - room) / 1.8) if rule and "convection" in row["quantity"] else None


def _pool(row: Row) -> float | None:
    text, quantity = _words(row), row["quantity"]
    pool = kc.transfer.evaporation.pool_evaporation
    if quantity == "still-air constant":  # at a difference of 1 Pa and a latent heat of 1 J/kg
        return pool(1.0, 0.0, 1.0)
    if quantity == "velocity constant":
        return pool(1.0, 1.0, 1.0) - pool(1.0, 0.0, 1.0)
    water, air = given(row["title"], "water"), given(text, "air")
    humidity, speed = given(text, "RH"), given(text, "V")
    if water is None or air is None or humidity is None:
        return None
    saturation = kc.properties.water.saturation_pressure
    difference = float(saturation(water + ICE)) - 0.01 * humidity * float(saturation(air + ICE))
    latent = float(kc.properties.water.latent_heat(water + ICE))
    activity = 0.74 if "undisturbed" in row["title"] + row["inputs"] else 1.0
    evaporated = pool(difference, speed or 0.0, latent, activity)
    if "latent" in quantity:
        return kc.transfer.evaporation.latent_heat_flux(evaporated, latent)
    return evaporated if quantity.startswith("W") else None


def _lewis(row: Row) -> float | None:
    text, evaporation = row["inputs"], kc.transfer.evaporation
    alpha, diffusivity = given(text, "alpha"), given(text, "D")
    if alpha is None or diffusivity is None:
        return None
    lewis = evaporation.lewis_number(alpha, diffusivity)
    film, density, heat = (given(text, name) for name in ("h", "rho", "cp"))
    if row["quantity"] == "Le":
        return lewis
    if row["quantity"] != "hm" or film is None or density is None or heat is None:
        return None
    return evaporation.lewis_mass_coefficient(film, density * heat, lewis)


#: Which words of a title lead to which answer; the first that fits counts.
ANSWERS: tuple[tuple[str, Callable[[Row], float | None]], ...] = (
    (r"simple boiling", _simple_boiling),
    (r"pool boiling|Rohsenow|same correlation|nucleate|critical (?:heat )?flux", _rohsenow),
    (r"condens|film Reynolds|steam on a|(?:horizontal|vertical) tube", _condensation),
    (r"natural convection|free convection from", _natural_convection),
    (r"vertical wall in", _turbulent_wall),
    (r"black-body|grey", _grey),
    (r"Kern Example 18", _hot_plate),
    (r"pool equation", _pool),
    (r"Lewis", _lewis),
)


def value(row: Row) -> float | None:
    for words, answer in ANSWERS:
        if re.search(words, row["title"]):
            found = answer(row)
            return None if found is None else found * SCALE.get(row["unit"], 1.0)
    return None
