"""Water, steam and air against two other libraries, over grids.

`iapws` holds the released IAPWS equations, CoolProp the equations of state of Wagner & Pruss
(IAPWS-95) and of Lemmon et al. for air: other formulations than ours. Each case is the largest
relative difference over its grid, and its limit the error that our cards state or, between
formulations, the uncertainty of the formulation.
"""

from __future__ import annotations

import importlib.metadata
import itertools
import math
from collections.abc import Callable, Iterable, Sequence
from pathlib import Path
from types import ModuleType

import numpy as np
from case import Case, Outcome, at_most

import kettlecast as kc

TITLE = "Water, steam and air against other libraries"

#: Grids [K]: range of the compact fits, and of dry air.
LIQUID = np.linspace(273.16, 433.15, 41)
AIR = np.linspace(250.0, 500.0, 51)
ATMOSPHERE = 101325.0

#: Stated for the fits of properties/water.hpp.
FIT = {"density": 8.2e-6, "specific_heat": 5.1e-5, "viscosity": 3.8e-5, "latent_heat": 1.1e-5}
FIT |= {"conductivity": 8.5e-5, "vapour_density": 1.0e-5, "surface_tension": 2.5e-5}
#: Ours is written out to the digits of the releases.
SAME = 1e-8
#: Between IAPWS-IF97 with our fits and IAPWS-95: the first is the uncertainty of region 4 of
#: IAPWS-IF97, which carries over to steam, the third that of its specific heats (from memory); the
#: transport equations are the same releases, so that little more than the fit is left.
FORMULATION = {"saturation_pressure": 2.5e-4, "density": 3e-5, "specific_heat": 2e-3}
FORMULATION |= {"viscosity": 1e-4, "conductivity": 2e-4, "latent_heat": 1e-4}
FORMULATION |= {"vapour_density": 2.5e-4}

Pairs = Iterable[tuple[float, float]]


def largest(pairs: Pairs) -> float:
    """Largest relative difference of the second from the first of each pair."""
    return max(abs(got / expected - 1.0) for expected, got in pairs)


def over(grid: Sequence[float], expected: Callable, got: Callable) -> float:
    """Largest relative difference over a grid of temperatures."""
    return largest((float(expected(t)), float(got(t))) for t in map(float, grid))


def outcome(folder: Path) -> Outcome:
    """Compares with the libraries that are there; nothing is written to `folder`."""
    cases: list[Case] = []
    notes = []
    for name, compare in (("iapws", _with_iapws), ("CoolProp", _with_coolprop)):
        try:
            version = importlib.metadata.version(name)
        except importlib.metadata.PackageNotFoundError:
            notes.append(f"Left out: {name} is not installed.")
            continue
        cases += compare(f"{name} {version}")
    skipped = "" if cases else "skipped: neither iapws nor CoolProp is installed"
    return Outcome(TITLE, tuple(cases), tuple(notes), skipped=skipped)


def _with_iapws(source: str) -> list[Case]:
    import iapws

    states = [iapws.IAPWS97(T=float(t), x=0) for t in LIQUID]
    steam = [iapws.IAPWS97(T=float(t), x=1) for t in LIQUID]
    water = kc.properties.water
    pairs: dict[str, list[tuple[float, float]]] = {name: [] for name in FIT}
    for one, vapour in zip(states, steam, strict=True):
        expected = {
            "density": one.rho,
            "specific_heat": 1e3 * one.cp,
            "viscosity": one.mu,
            "conductivity": one.k,
            "latent_heat": 1e3 * (vapour.h - one.h),
            "vapour_density": vapour.rho,
            "surface_tension": one.sigma,
        }
        for name, value in expected.items():
            pairs[name].append((value, float(getattr(water, name)(one.T))))
    cases = [
        at_most(f"saturated water, fit of {name}", source, largest(pairs[name]), limit)
        for name, limit in FIT.items()
    ]
    pressure = [(1e6 * one.P, float(water.saturation_pressure(one.T))) for one in states]
    cases.append(at_most("saturation pressure", source, largest(pressure), SAME))
    return cases + _compressed(iapws, source) + _releases(source)


def _compressed(iapws: ModuleType, source: str) -> list[Case]:
    """Region 1 and the transport releases at grid points of the liquid."""
    states = kc.properties.water_states
    volume, enthalpy, heat, viscosity, conductivity = [], [], [], [], []
    for t, p in itertools.product(np.linspace(280.0, 610.0, 12), np.geomspace(15e6, 100e6, 5)):
        kelvin, pascal = float(t), float(p)
        one = iapws.IAPWS97(T=kelvin, P=1e-6 * pascal)
        volume.append((one.v, states.compressed_volume(kelvin, pascal)))
        enthalpy.append((1e3 * one.h, states.compressed_enthalpy(kelvin, pascal)))
        heat.append((1e3 * one.cp, states.compressed_specific_heat(kelvin, pascal)))
        plain = iapws._iapws
        viscosity.append((plain._Viscosity(one.rho, kelvin), states.viscosity(one.rho, kelvin)))
        conductivity.append((plain._ThCond(one.rho, kelvin), states.conductivity(one.rho, kelvin)))
    grids = {
        "compressed water, volume": volume,
        "compressed water, enthalpy": enthalpy,
        "compressed water, specific heat": heat,
        "viscosity at density and temperature": viscosity,
        "conductivity at density and temperature": conductivity,
    }
    return [at_most(name, source, largest(pairs), SAME) for name, pairs in grids.items()]


def _releases(source: str) -> list[Case]:
    """Liquid at 0.1 MPa (SR6-08) and the auxiliary equations of saturation (SR1-86)."""
    from iapws import IAPWS95
    from iapws._iapws import _Liquid

    states = kc.properties.water_states
    cold, wide = np.linspace(254.0, 383.0, 44), np.linspace(273.16, 647.0, 76)
    grids = {
        "0.1 MPa, density": (cold, lambda t: _Liquid(t)["rho"], states.ambient_density),
        "0.1 MPa, specific heat": (
            cold,
            lambda t: 1e3 * _Liquid(t)["cp"],
            states.ambient_specific_heat,
        ),
        "0.1 MPa, viscosity": (cold, lambda t: _Liquid(t)["mu"], states.ambient_viscosity),
        "0.1 MPa, conductivity": (cold, lambda t: _Liquid(t)["k"], states.ambient_conductivity),
        "SR1-86, liquid density": (wide, IAPWS95._Liquid_Density, states.saturated_liquid_density),
        "SR1-86, steam density": (wide, IAPWS95._Vapor_Density, states.saturated_vapour_density),
        "SR1-86, steam enthalpy": (
            wide,
            lambda t: 1e3 * IAPWS95._Vapor_Enthalpy(t),
            states.saturated_vapour_enthalpy,
        ),
    }
    return [at_most(name, source, over(*grid), SAME) for name, grid in grids.items()]


def _with_coolprop(source: str) -> list[Case]:
    from CoolProp.CoolProp import PropsSI

    water = kc.properties.water
    codes = {
        "saturation_pressure": lambda t: PropsSI("P", "T", t, "Q", 0, "Water"),
        "density": lambda t: PropsSI("D", "T", t, "Q", 0, "Water"),
        "specific_heat": lambda t: PropsSI("C", "T", t, "Q", 0, "Water"),
        "viscosity": lambda t: PropsSI("V", "T", t, "Q", 0, "Water"),
        "conductivity": lambda t: PropsSI("L", "T", t, "Q", 0, "Water"),
        "latent_heat": lambda t: (
            PropsSI("H", "T", t, "Q", 1, "Water") - PropsSI("H", "T", t, "Q", 0, "Water")
        ),
        "vapour_density": lambda t: PropsSI("D", "T", t, "Q", 1, "Water"),
    }
    cases = [
        at_most(
            f"saturated water, {name} (IAPWS-95)",
            source,
            over(LIQUID, code, getattr(water, name)),
            FORMULATION[name],
        )
        for name, code in codes.items()
    ]
    return cases + _air(source) + [_moist_air(source)]


def _air(source: str) -> list[Case]:
    """Dry air; limits are those of the cards in properties/air.hpp, to their last digit."""
    from CoolProp.CoolProp import PropsSI

    air = kc.properties.air
    functions = {
        "D": ("density", 1e-3, lambda t: air.density(t, ATMOSPHERE)),
        "C": ("specific heat", 1.4e-4, air.specific_heat),
        "L": ("conductivity", 0.0135, air.conductivity),
        "V": ("viscosity", 0.0145, air.viscosity),
    }
    return [
        at_most(
            f"dry air, {name}",
            source,
            over(AIR, lambda t, code=code: PropsSI(code, "T", t, "P", ATMOSPHERE, "Air"), ours),
            limit,
        )
        for code, (name, limit, ours) in functions.items()
    ]


def _moist_air(source: str) -> Case:
    """Density of moist air from 5 to 95 degC and 10 to 100 % relative humidity."""
    from CoolProp.HumidAirProp import HAPropsSI

    pairs = []
    for t, humidity in itertools.product(np.linspace(278.15, 368.15, 19), np.linspace(0.1, 1, 10)):
        kelvin, given = float(t), ("P", ATMOSPHERE, "T", float(t), "R", float(humidity))
        volume, vapour = HAPropsSI("Vha", *given), HAPropsSI("psi_w", *given)
        if math.isfinite(volume):
            ours = kc.properties.air.moist_density(kelvin, ATMOSPHERE, vapour)
            pairs.append((1.0 / volume, ours))
    return at_most("moist air, density", source, largest(pairs), 0.012)
