"""The correlations against the general libraries ht, fluids and SciPy, over grids.

Where both sides write down the same published equation they have to agree to rounding. That shows
that an equation was transcribed alike twice, not that it is right; sources stand in the headers.
"""

from __future__ import annotations

import importlib.util
import math
from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass
from pathlib import Path

import numpy as np
from case import Case, Outcome, at_most

import kettlecast as kc

TITLE = "Heat transfer against ht, fluids and SciPy"
NEEDED = ("ht", "fluids", "scipy")
ROUNDING = 1e-9
#: CODATA 2014 instead of 2018 in the other library changes sigma by 1.3e-6.
SIGMA = 2e-6

Point = tuple[float, ...]
Function = Callable[..., float]


@dataclass(frozen=True)
class Comparison:
    """Two functions of the same arguments, and how far apart they may lie."""

    name: str
    ours: Function
    theirs: Function
    points: Sequence[Point]
    limit: float | None = ROUNDING

    def case(self) -> Case:
        """The largest relative difference over all points."""
        worst = max(abs(self.ours(*one) / self.theirs(*one) - 1.0) for one in self.points)
        name = f"{self.name}, {len(self.points)} points"
        return at_most(name, "same equation in another library", worst, self.limit)


def _decades(first: float, last: float, joins: Iterable[float] = ()) -> list[float]:
    """Numbers evenly spaced in the logarithm, without those within 6 % of a join."""
    numbers = np.logspace(first, last, 25)
    return [float(x) for x in numbers if all(abs(math.log(x / join)) > 0.06 for join in joins)]


def _grid(*axes: Sequence[float]) -> list[Point]:
    return [
        tuple(float(x) for x in one)
        for one in np.stack(np.meshgrid(*axes), -1).reshape(-1, len(axes))
    ]


PRANDTL = (0.7, 1.75, 7.0, 100.0, 5e3)


def _at_prandtl(function: Function, **more: bool) -> Function:
    """Their function of (Pr, Gr) as one of (Ra, Pr)."""
    return lambda ra, pr: function(pr, ra / pr, **more)


def _alone(function: Function) -> Function:
    """Our function of Ra as one of (Ra, Pr)."""
    return lambda ra, pr: function(ra)


def _bodies() -> list[Comparison]:
    import ht

    ours, theirs = kc.transfer.convection, ht.conv_free_immersed
    points = _grid(_decades(2, 12), PRANDTL)
    morgan = _grid(_decades(-1, 12, [1e-2, 1e2, 1e4, 1e7]), PRANDTL)
    return [
        Comparison(
            "vertical wall, Churchill & Chu",
            ours.vertical_wall_nusselt,
            _at_prandtl(theirs.Nu_vertical_plate_Churchill),
            points,
            1e-5,  # ours hold Ra smoothly above zero: at 100 it counts 2.5e-5 of it more
        ),
        Comparison(
            "sphere, Churchill",
            ours.sphere_nusselt,
            _at_prandtl(theirs.Nu_sphere_Churchill),
            points,
        ),
        Comparison(
            "horizontal cylinder, Churchill & Chu",
            ours.horizontal_cylinder_nusselt,
            _at_prandtl(theirs.Nu_horizontal_cylinder_Churchill_Chu),
            points,
        ),
        Comparison(
            "horizontal cylinder, Kuehn & Goldstein",
            ours.horizontal_cylinder_kuehn_nusselt,
            _at_prandtl(theirs.Nu_horizontal_cylinder_Kuehn_Goldstein),
            points,
        ),
        Comparison(
            "horizontal cylinder, Morgan, outside the joins",
            _alone(ours.horizontal_cylinder_morgan_nusselt),
            _at_prandtl(theirs.Nu_horizontal_cylinder_Morgan),
            morgan,
        ),
    ]


def _plates() -> list[Comparison]:
    import ht

    ours, theirs = kc.transfer.convection, ht.conv_free_immersed
    points = _grid(_decades(4, 10, [1e7]), PRANDTL)
    forms: tuple[tuple[str, Function, Function, float | None], ...] = (
        (
            "McAdams, outside the join",
            _alone(ours.plate_up_mcadams_nusselt),
            theirs.Nu_horizontal_plate_McAdams,
            1e-8,
        ),
        ("VDI", ours.plate_up_vdi_nusselt, theirs.Nu_horizontal_plate_VDI, None),
        (
            "Raithby & Hollands",
            ours.plate_up_raithby_nusselt,
            theirs.Nu_horizontal_plate_Rohsenow,
            None,
        ),
    )
    down: tuple[Function, ...] = (
        _alone(ours.plate_facing_down_nusselt),
        ours.plate_down_vdi_nusselt,
        ours.plate_down_raithby_nusselt,
    )
    found = []
    for (name, up, other, limit), lower in zip(forms, down, strict=True):
        rises, lies = (_at_prandtl(other, buoyancy=hot) for hot in (True, False))
        found.append(Comparison(f"plate up, {name}", up, rises, points, limit))
        found.append(Comparison(f"plate down, {name}", lower, lies, points, 1e-8))
    return found


def _water_at(kelvin: float) -> tuple[float, ...]:
    """Density, of steam, cp, latent heat, surface tension, viscosity and conductivity."""
    water = kc.properties.water
    properties = (
        water.density,
        water.vapour_density,
        water.specific_heat,
        water.latent_heat,
        water.surface_tension,
        water.viscosity,
        water.conductivity,
    )
    return tuple(float(one(kelvin)) for one in properties)


def _boiling() -> list[Comparison]:
    import ht

    ours = kc.transfer.boiling

    def flux(kelvin: float, excess: float, surface: float, exponent: float) -> float:
        at = _water_at(kelvin)[:6]
        return ours.rohsenow_heat_flux(*at, _prandtl(kelvin), excess, surface, exponent)

    def excess_of(kelvin: float, heat: float, surface: float, exponent: float) -> float:
        at = _water_at(kelvin)[:6]
        return ours.rohsenow_excess(*at, _prandtl(kelvin), heat, surface, exponent)

    def film(kelvin: float, surface: float, exponent: float, **given: float) -> float:
        liquid, vapour, heat, latent, tension, viscosity, conductivity = _water_at(kelvin)
        more = {"sigma": tension, "Csf": surface, "n": exponent}
        return ht.Rohsenow(liquid, vapour, viscosity, conductivity, heat, latent, **more, **given)

    def critical(kelvin: float, constant: float) -> float:
        liquid, vapour, _, latent, tension = _water_at(kelvin)[:5]
        return ours.critical_heat_flux(liquid, vapour, latent, tension, constant)

    def zuber(kelvin: float, constant: float) -> float:
        liquid, vapour, _, latent, tension = _water_at(kelvin)[:5]
        return ht.boiling_nucleic.Zuber(tension, latent, liquid, vapour, constant)

    kelvins, surfaces, exponents = (340.0, 373.0, 420.0), (0.0058, 0.0132), (1.0, 1.26, 1.7)
    fluxes = _grid(kelvins, (1e3, 3e4, 9e5), surfaces, exponents)
    return [
        Comparison(
            "Rohsenow, flux of an excess",
            flux,
            lambda t, d, c, n: film(t, c, n, Te=d) * d,
            _grid(kelvins, (0.5, 5.0, 20.0), surfaces, exponents),
        ),
        Comparison(
            "Rohsenow, excess of a flux",
            excess_of,
            lambda t, q, c, n: q / film(t, c, n, q=q),
            fluxes,
        ),
        Comparison("critical flux", critical, zuber, _grid(kelvins, (math.pi / 24.0, 0.149, 0.18))),
    ]


def _film(kelvin: float) -> tuple[float, ...]:
    """Water in the order of the arguments of films of condensate."""
    liquid, vapour, _, latent, _, viscosity, conductivity = _water_at(kelvin)
    return liquid, vapour, conductivity, viscosity, latent


def _prandtl(kelvin: float) -> float:
    at = _water_at(kelvin)
    return at[2] * at[5] / at[6]


def _implicit_wall(kelvin: float, subcooling: float, height: float) -> float:
    """Coefficient at the root of Re = 4 h(Re) dT L / (mu h_fg), sought by SciPy."""
    from scipy.optimize import brentq

    liquid, vapour, conductivity, viscosity, latent = _film(kelvin)
    length = (viscosity**2 / (9.80665 * liquid * (liquid - vapour))) ** (1.0 / 3.0)
    prandtl, films = _prandtl(kelvin), kc.transfer.condensation

    def coefficient(logarithm: float) -> float:
        number = films.film_number_by_reynolds(math.exp(logarithm), prandtl)
        return number * conductivity / length

    def gap(logarithm: float) -> float:
        flow = 4.0 * coefficient(logarithm) * subcooling * height / (viscosity * latent)
        return math.log(flow) - logarithm

    return coefficient(float(brentq(gap, -5.0, 11.5)))


def _condensation() -> list[Comparison]:
    import ht

    ours = kc.transfer.condensation

    def laminar(kelvin: float, subcooling: float, length: float, degrees: float) -> float:
        angle = math.radians(degrees)
        return ours.laminar_film_coefficient(*_film(kelvin), subcooling, length, angle)

    def nusselt(kelvin: float, subcooling: float, length: float, degrees: float) -> float:
        liquid, vapour, conductivity, viscosity, latent = _film(kelvin)
        wall = kelvin - subcooling
        return ht.condensation.Nusselt_laminar(
            kelvin, wall, vapour, liquid, conductivity, viscosity, latent, length, degrees
        )

    def jacket(kelvin: float, subcooling: float, height: float) -> float:
        return ours.jacket_coefficient(*_film(kelvin), _prandtl(kelvin), subcooling, height)

    kelvins = (360.0, 373.0, 410.0)
    return [
        Comparison(
            "laminar film on a plate, tilted or not",
            laminar,
            nusselt,
            _grid(kelvins, (0.5, 5.0, 30.0), (0.1, 1.0), (20.0, 60.0, 90.0)),
        ),
        Comparison(
            "film of any regime, closed form against a root of SciPy",
            jacket,
            _implicit_wall,
            _grid(kelvins, (0.5, 5.0, 30.0), (0.05, 0.5, 3.0)),
            0.02,  # the printed closed forms are rounded
        ),
    ]


def _radiation() -> list[Comparison]:
    import ht
    from scipy.integrate import quad

    ours = kc.transfer.radiation

    def black(kelvin: float) -> float:
        """pi times the integral of Planck's radiance over the logarithm of the wavelength."""

        def radiance(logarithm: float) -> float:
            wavelength = math.exp(logarithm) * 2.9e-3 / kelvin
            return wavelength * ht.radiation.blackbody_spectral_radiance(kelvin, wavelength)

        return math.pi * float(quad(radiance, -3.0, 8.0, epsrel=1e-9, limit=200)[0])

    temperatures = (250.0, 300.0, 380.0, 900.0)
    apart = [one for one in _grid((0.05, 0.8, 1.0), temperatures, (270.0, 310.0))]
    return [
        Comparison("grey flux", ours.radiative_heat_flux, ht.radiation.q_rad, apart, SIGMA),
        Comparison(
            "coefficient times difference",
            lambda e, hot, cold: ours.radiation_coefficient(e, hot, cold) * (hot - cold),
            ht.radiation.q_rad,
            apart,
            SIGMA,
        ),
        Comparison(
            "black flux against Planck's law summed by SciPy",
            lambda kelvin: ours.radiative_heat_flux(1.0, kelvin, 0.0),
            black,
            [(one,) for one in temperatures],
            SIGMA,
        ),
    ]


def _groups_and_states() -> list[Comparison]:
    from fluids.atmosphere import ATMOSPHERE_1976
    from fluids.core import Prandtl, Rayleigh
    from scipy.optimize import brentq

    def ours(kelvin: float, difference: float, length: float) -> float:
        density, _, heat, _, _, viscosity, conductivity = _water_at(kelvin)
        beta = float(kc.properties.water.expansivity(kelvin))
        return kc.transfer.convection.rayleigh_number(
            density, heat, conductivity, viscosity, beta, difference, length
        )

    def theirs(kelvin: float, difference: float, length: float) -> float:
        density, _, heat, _, _, viscosity, conductivity = _water_at(kelvin)
        beta = float(kc.properties.water.expansivity(kelvin))
        prandtl = Prandtl(Cp=heat, k=conductivity, mu=viscosity)
        grashof = 9.80665 * beta * difference * length**3 * density**2 / viscosity**2
        return Rayleigh(prandtl, grashof)

    def dew_point(gauge: float, air: float) -> float:
        pressure = (1.0 - air) * (gauge + 101325.0)
        saturation = kc.properties.water.saturation_pressure
        return float(brentq(lambda t: float(saturation(t)) - pressure, 274.0, 470.0, xtol=1e-9))

    return [
        Comparison(
            "Rayleigh number", ours, theirs, _grid((300.0, 370.0), (0.1, 40.0), (0.01, 1.0))
        ),
        Comparison(
            "standard atmosphere",
            lambda altitude: float(kc.properties.pressure_at_altitude(altitude)),
            lambda altitude: float(ATMOSPHERE_1976(altitude).P),
            [(0.0,), (500.0,), (1609.0,), (3000.0,), (5000.0,)],
            1e-6,  # the exponent of the source is rounded
        ),
        Comparison(
            "steam with air against a root of SciPy",
            lambda gauge, air: kc.properties.steam.temperature_with_air(gauge, air),
            dew_point,
            _grid((0.0, 1e5, 8e5), (0.0, 0.1, 0.5)),
        ),
    ]


def outcome(folder: Path) -> Outcome:
    """Compares all; nothing is written to `folder`."""
    missing = [name for name in NEEDED if importlib.util.find_spec(name) is None]
    if missing:
        return Outcome(TITLE, skipped=f"skipped: not installed: {', '.join(missing)}")
    parts = (_bodies, _plates, _boiling, _condensation, _radiation, _groups_and_states)
    cases = tuple(one.case() for part in parts for one in part())
    notes = (
        "Plates facing up by VDI and by Raithby & Hollands are shown only: ht 1.2.0 has the outer "
        "exponent +20/11 for -20/11, and 0.01707 and another laminar constant for 0.0107 and "
        "0.671.",
        "Within 6 % of the joins of piecewise laws, where ours pass smoothly, nothing is compared.",
        "Neither library has Uchida's air in steam, the simple boiling of kettles or open pools.",
    )
    return Outcome(TITLE, cases, notes)
