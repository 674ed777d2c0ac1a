"""Agitated vessels and their jackets (section E)."""

from __future__ import annotations

import math
import re
from collections.abc import Callable, Mapping

from case_file import Limit, Row, stated_limit

import kettlecast as kc

REASONS: Mapping[str, str] = {}

agitation, jacket = kc.transfer.agitation, kc.transfer.jacket

NUMBER = r"([-\u2212]?\d*\.?\d+(?:e[-+]?\d+)?)"
#: What a title calls a shape; the first that is found counts.
SHAPES = {
    "anchor": kc.Impeller.anchor,
    "ribbon": kc.Impeller.helical_ribbon,
    "paddle": kc.Impeller.paddle,
    "pitched": kc.Impeller.pitched_turbine,
    "disc": kc.Impeller.disc_turbine,
    "rushton": kc.Impeller.disc_turbine,
    "six-blade": kc.Impeller.disc_turbine,
    "flat": kc.Impeller.flat_turbine,
    "propeller": kc.Impeller.propeller,
    "he3": kc.Impeller.hydrofoil,
    "hydrofoil": kc.Impeller.hydrofoil,
}
EXPONENTS = {"b": 1, "m": 3}  #: places in the constants of a film; the constant itself is first


def given(row: Row, name: str) -> float | None:
    """Number that follows a name in the inputs, as in "rho=961" or "rho 961"."""
    found = re.search(rf"(?<![\w.]){name}\s*=?\s*{NUMBER}", row["inputs"])
    return None if found is None else float(found[1].replace("\u2212", "-"))


def all_given(row: Row, *names: str) -> list[float] | None:
    found = [given(row, name) for name in names]
    numbers = [one for one in found if one is not None]
    return numbers if len(numbers) == len(names) else None


def before(row: Row, unit: str) -> float | None:
    """Number that stands before a unit in the inputs."""
    found = re.search(rf"{NUMBER}\s*{unit}", row["inputs"])
    return None if found is None else float(found[1])


def shape(text: str) -> kc.Impeller | None:
    lower = text.lower()
    return next((kind for word, kind in SHAPES.items() if word in lower), None)


def reynolds_given(row: Row) -> float | None:
    mean = re.search(rf"geometric mean of {NUMBER}\s*[\u2013-]\s*{NUMBER}", row["inputs"])
    return math.sqrt(float(mean[1]) * float(mean[2])) if mean else given(row, "Re")


def tank_film(row: Row) -> float | None:
    """Constants and Nusselt numbers of an agitator at wall, heated floor or coil."""
    kind, reynolds = shape(row["title"]), reynolds_given(row)
    listed = "agitated-vessel constants" in row["title"]
    if (
        kind is None
        or reynolds is None
        or not ("wall" in row["title"] or "bottom" in row["title"] or listed)
    ):
        return None
    source = kc.FilmSource.geankoplis if listed else kc.FilmSource.penney
    at_floor = "bottom" in row["title"]
    constants = (
        agitation.floor_constants(kind)
        if at_floor
        else agitation.wall_constants(kind, reynolds, source)
    )
    quantity = row["quantity"]
    if quantity in ("K", "a"):
        return constants[0]
    if quantity in EXPONENTS:
        return constants[EXPONENTS[quantity]]
    numbers = all_given(row, "Pr")
    if quantity != "Nu" or numbers is None:
        return None
    ratio = given(row, r"visc(?:osity|\.) ratio") or 1.0
    if at_floor:
        return agitation.floor_nusselt(kind, reynolds, numbers[0], ratio)
    return agitation.wall_nusselt(kind, reynolds, numbers[0], ratio, source)


def wall_coefficient(row: Row) -> float | None:
    """Film coefficient of a vessel by the constants of Penney."""
    numbers = all_given(row, "T", "rho", "mu", "k", "cp")
    turns, kind = before(row, "rpm"), shape(row["title"])
    part = given(row, "D=T/")
    if "coefficient" not in row["title"] or None in (numbers, turns, kind, part):
        return None
    assert numbers and turns and kind and part
    width, density, viscosity, conductivity, heat = numbers
    viscosity *= 1e-3 if "mPa s" in row["inputs"] else 1.0
    reynolds = agitation.reynolds(density, turns / 60.0, width / part, viscosity)
    prandtl = agitation.prandtl(heat, viscosity, conductivity)
    film = agitation.wall_nusselt(kind, reynolds, prandtl)
    depth = agitation.depth_factor(given(row, "H/T") or 1.0)
    return agitation.film_coefficient(film * depth, conductivity, width)


def baffled_example(row: Row) -> float | None:
    """Jacketed baffled vessel, properties of the bulk and the viscosity at the wall given."""
    numbers = all_given(row, "Dt", "Da", "rho", "cp", "k", "mu")
    turns, at_wall = before(row, "rpm"), before(row, "Pa s at wall")
    if numbers is None or turns is None or at_wall is None:
        return None
    width, diameter, density, heat, conductivity, viscosity = numbers
    reynolds = agitation.reynolds(density, turns / 60.0, diameter, viscosity)
    prandtl = agitation.prandtl(heat, viscosity, conductivity)
    film = agitation.wall_nusselt(
        kc.Impeller.disc_turbine,
        reynolds,
        prandtl,
        viscosity / at_wall,
        kc.FilmSource.geankoplis_baffled,
    )
    found = {
        "Re": reynolds,
        "Pr": prandtl,
        "h": agitation.film_coefficient(film, conductivity, width),
    }
    return found.get(row["quantity"])


def chart_example(row: Row) -> float | None:
    """Vessel whose j is read from a chart; feet, pounds, hours and Btu throughout."""
    numbers = all_given(row, "L", "N", "rho", "mu", "k", "c", "Dj", "j")
    if numbers is None:
        return None
    length, turns, density, viscosity, conductivity, heat, width, factor = numbers
    if row["quantity"] == "Re":
        return agitation.reynolds(density, turns, length, viscosity)
    film = agitation.film_coefficient(
        agitation.chart_nusselt(factor, agitation.prandtl(heat, viscosity, conductivity)),
        conductivity,
        width,
    )
    if row["quantity"].startswith(("h inside", "h coil", "h outside")):
        return film
    others = all_given(row, "steam film", "dirt")
    if others is None:
        return None
    if row["quantity"].startswith("U clean"):
        return jacket.overall_coefficient(film, others[0])
    design = jacket.overall_coefficient(film, others[0], dirt=others[1])
    if row["quantity"].startswith("U design"):
        return design
    area = re.search(rf"{NUMBER} ft2", row["quantity"])
    heat_flow = re.search(r"Q=([\d,]+)", row["inputs"])
    batch = given(row, "batch")
    if area is None or heat_flow is None or batch is None:
        return None
    flow = float(heat_flow[1].replace(",", ""))
    return batch + jacket.driving_difference(flow, design, float(area[1]))


def plain_jacket(row: Row) -> float | None:
    """Jacket-side film by Lehrer, tangential or radial inlet."""
    numbers = all_given(row, "m", "tank OD", "jacket ID", "H", "inlet", "rho", "cp", "k", "mu")
    if "Lehrer" not in row["title"] or numbers is None or row["quantity"] != "h":
        return None
    flow, inside, outside, height, inlet, density, heat, conductivity, viscosity = numbers
    text = f"{row['title']} {row['inputs']}"
    buoyant = 0.0
    if "radial" in text:
        expansivity = given(row, "(?:beta|isobaric expansion|expansivity|expansion)") or 0.0
        warming = given(row, "dT") or 0.0
        buoyant = jacket.lehrer_buoyant_velocity(expansivity, height, abs(warming))
        buoyant *= -1.0 if ("top" in text) == (warming > 0.0) else 1.0
    gap = 0.5 * (outside - inside)
    length = jacket.lehrer_length(gap)
    velocity = jacket.lehrer_velocity(flow / density, gap, height, inlet, buoyant)
    number = jacket.lehrer_nusselt(
        jacket.reynolds(density, velocity, length, viscosity),
        agitation.prandtl(heat, viscosity, conductivity),
        viscosity / (given(row, "mu_w") or viscosity),
    )
    return agitation.film_coefficient(number, conductivity, length)


def swirling_jacket(row: Row) -> float | None:
    """Jacket-side film by Stein and Schmidt, tangential or radial inlet."""
    numbers = all_given(row, "m", "tank OD", "jacket ID", "H", "inlet", "rho", "cp", "k", "mu")
    if "Stein" not in row["title"] or numbers is None or row["quantity"] != "h":
        return None
    flow, inside, outside, height, inlet, density, heat, conductivity, viscosity = numbers
    text = f"{row['title']} {row['inputs']}"
    gap, volume_flow = 0.5 * (outside - inside), flow / density
    velocity = (
        jacket.radial_velocity(volume_flow, gap, inside, height, inlet)
        if "radial" in text
        else jacket.swirl_velocity(volume_flow, gap, inside, height, inlet, viscosity / density)
    )
    length = 2.0 * gap
    grashof = jacket.grashof(density, given(row, "rho_w") or density, length, viscosity)
    hindered = ("top" in text and grashof > 0.0) or ("bottom" in text and grashof < 0.0)
    number = jacket.stein_schmidt_nusselt(
        jacket.buoyant_reynolds(
            jacket.reynolds(density, velocity, length, viscosity),
            -abs(grashof) if hindered else abs(grashof),
            height / length,
        ),
        agitation.prandtl(heat, viscosity, conductivity),
        length / jacket.path_length(inside, height),
        viscosity / (given(row, "mu_w") or viscosity),
    )
    return agitation.film_coefficient(number, conductivity, length)


def scraped(row: Row) -> float | None:
    numbers = all_given(row, "k", "rho", "cp", "N")
    blades = before(row, "blades")
    if "scraped" not in row["title"] or numbers is None or blades is None:
        return None
    conductivity, density, heat, turns = numbers
    return agitation.scraped_coefficient(conductivity, density, heat, turns * blades)


def ribbon(row: Row) -> float | None:
    """Laminar power constant and mixing time of a helical ribbon."""
    if "ribbon" not in row["title"]:
        return None
    numbers, blades = all_given(row, "D", "T", "height", "pitch", "width"), before(row, "blades")
    if row["quantity"] == "Kp" and numbers is not None and blades is not None:
        return agitation.ribbon_laminar_constant(*numbers, blades)
    constant, turns = given(row, "Kp"), re.search(rf"N\s*=?\s*{NUMBER}(/60)?", row["inputs"])
    if "time" not in row["title"] or constant is None or turns is None:
        return None
    per_minute = turns[2] is not None or "rpm" in row["inputs"] or "min" in row["inputs"]
    return agitation.ribbon_mixing_time(constant, float(turns[1]) / (60.0 if per_minute else 1.0))


def power_law(row: Row) -> float | None:
    """Shear rate, apparent viscosity and Reynolds number by Metzner and Otto."""
    numbers = all_given(row, "ks", "K", "n", "N", "D", "rho")
    if numbers is None:
        return None
    constant, consistency, exponent, turns, diameter, density = numbers
    rate = agitation.shear_rate(constant, turns)
    viscosity = agitation.apparent_viscosity(consistency, exponent, rate)
    found = {
        "shear rate": rate,
        "apparent viscosity": viscosity,
        "Re": agitation.reynolds(density, turns, diameter, viscosity),
    }
    return found.get(row["quantity"])


def power(row: Row) -> float | None:
    """Power numbers by shape, and power of an agitator of known power number."""
    if "power numbers" in row["title"]:
        kind = shape(row["quantity"])
        return None if kind is None else agitation.power_number(kind, 1e6)
    numbers, turns = all_given(row, "Da", "rho", "mu", "Np"), before(row, "rpm")
    if numbers is None or turns is None:
        return None
    diameter, density, viscosity, number = numbers
    viscosity *= 1e-3 if "mPa s" in row["inputs"] else 1.0
    found = {
        "Re": agitation.reynolds(density, turns / 60.0, diameter, viscosity),
        "P": agitation.power(number, density, turns / 60.0, diameter),
    }
    return found.get(row["quantity"])


READERS: tuple[Callable[[Row], float | None], ...] = (
    chart_example,
    baffled_example,
    power_law,
    ribbon,
    power,
    plain_jacket,
    swirling_jacket,
    scraped,
    wall_coefficient,
    tank_film,
)


def value(row: Row) -> float | None:
    answers = (reader(row) for reader in READERS)
    return next((answer for answer in answers if answer is not None), None)


def limit(row: Row) -> Limit:
    """As stated; exponents are printed to four digits."""
    printed_to_four = row["quantity"] == "b" and "constants" in row["title"]
    return Limit(5e-5, of_expected=False) if printed_to_four else stated_limit(row)
