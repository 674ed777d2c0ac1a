"""Transient conduction and freezing against SciPy: eigenvalues by Brent, the heat equation."""

from __future__ import annotations

import functools
import math
from dataclasses import dataclass
from pathlib import Path

import numpy as np
from case import Case, Outcome, Vector, at_most, relative

import kettlecast as kc

try:
    from scipy import integrate, optimize, special
except ImportError:
    integrate = None

TITLE = "Conduction and freezing against SciPy"
SHAPES = {kc.Shape.slab: 1, kc.Shape.cylinder: 2, kc.Shape.sphere: 3}
BIOTS = (1e-4, 0.01, 0.1, 1.0, 10.0, 100.0, 1e4)
ICE = 273.15
CELLS = 60

conduction, freezing = kc.transfer.conduction, kc.transfer.freezing

#: 77 % water, the food that the published equations were fitted to.
FOOD = kc.Food(
    name="block",
    composition=kc.Composition(
        water=0.77, protein=0.0, fat=0.0, carbohydrate=0.23, fibre=0.0, ash=0.0
    ),
    freezing_point=ICE - 0.6,
)


def outcome(folder: Path) -> Outcome:
    """Compares; nothing is written to `folder`."""
    if integrate is None:
        return Outcome(TITLE, skipped="skipped: SciPy is not there")
    notes = (
        "Eigenvalues by brentq between the poles or zeros of scipy.special.",
        f"Heat equation by the method of lines, {CELLS} cells, LSODA, enthalpy of the same food.",
    )
    return Outcome(TITLE, (*_eigenvalues(), *_warming(), *_changing_phase()), notes)


def _equation(shape: kc.Shape, biot: float, u: float) -> float:
    """Zero at an eigenvalue, in the form of the books."""
    if shape is kc.Shape.slab:
        return u * math.sin(u) - biot * math.cos(u)
    if shape is kc.Shape.sphere:
        return (1.0 - biot) * math.sin(u) - u * math.cos(u)
    return float(u * special.j1(u) - biot * special.j0(u))


def _roots(shape: kc.Shape, biot: float, count: int) -> Vector:
    if shape is kc.Shape.cylinder:
        low = np.concatenate(([1e-9], special.jn_zeros(1, count - 1)))
        high = special.jn_zeros(0, count)
    else:
        low = math.pi * np.arange(count) + 1e-6
        high = low + (0.5 if shape is kc.Shape.slab else 1.0) * math.pi - 1e-6
        low = np.where(low < 1.0, 1e-3, low)
    return np.array(
        [
            optimize.brentq(lambda u: _equation(shape, biot, u), a, b, xtol=1e-14, rtol=1e-14)
            for a, b in zip(low, high, strict=True)
        ]
    )


def _eigenvalues() -> list[Case]:
    cases = []
    for shape in SHAPES:
        worst = 0.0
        for biot in BIOTS:
            expected = _roots(shape, biot, 20)
            got = np.array([conduction.eigenvalue(shape, biot, n) for n in range(1, 21)])
            worst = max(worst, float(np.max(np.abs(got / expected - 1.0))))
        name = f"{shape.name}: largest relative error of 20 eigenvalues, Bi 1e-4 to 1e4"
        cases.append(at_most(name, "scipy.optimize.brentq", worst, 1e-9))
    return cases


@dataclass(frozen=True)
class Body:
    """A piece cut into cells of equal thickness, in a fluid; lengths [m], temperatures [degC]."""

    dimension: int
    size: float
    film: float
    fluid: float

    def rates(self, temperature: Vector, conductivity: Vector) -> Vector:
        """Heat into each cell per volume [W/m3]."""
        faces = np.linspace(0.0, 0.5 * self.size, CELLS + 1)
        area, width = faces ** (self.dimension - 1), faces[1]
        volume = np.diff(faces**self.dimension) / self.dimension
        flow = np.zeros(CELLS + 1)
        between = 0.5 * (conductivity[1:] + conductivity[:-1])
        flow[1:-1] = area[1:-1] * between * np.diff(temperature) / width
        inside = 0.5 * width / conductivity[-1]
        flow[-1] = area[-1] * (self.fluid - temperature[-1]) / (1.0 / self.film + inside)
        return np.asarray(np.diff(flow) / volume)


def _warming() -> list[Case]:
    """Centre and mean of a body of radius, conductivity and heat capacity 1."""
    cases = []
    for shape, dimension in SHAPES.items():
        for biot, fourier in ((0.3, 0.5), (5.0, 0.2), (50.0, 0.1)):
            body = Body(dimension, 2.0, biot, 0.0)
            solved = integrate.solve_ivp(
                lambda _, y, body=body: body.rates(y, np.ones(CELLS)),
                (0.0, fourier),
                np.ones(CELLS),
                method="LSODA",
                rtol=1e-8,
                atol=1e-10,
            )
            profile = solved.y[:, -1]
            centre = (9.0 * profile[0] - profile[1]) / 8.0
            volume = np.diff(np.linspace(0.0, 1.0, CELLS + 1) ** dimension)
            label = f"{shape.name}, Bi {biot:g}, Fo {fourier:g}: change left"
            source = "method of lines"
            got = conduction.remaining_change(shape, biot, fourier, 0.0)
            cases.append(relative(f"{label} at the centre", source, (float(centre), got), 2e-3))
            mean = conduction.mean_remaining_change(shape, biot, fourier)
            expected = float(profile @ volume)
            cases.append(relative(f"{label}, mean", source, (expected, mean), 2e-3))
    return cases


@dataclass(frozen=True)
class Material:
    """Enthalpy [J/m3] and conductivity [W/(m K)] of the food on a fine grid of temperatures."""

    temperature: Vector  #: [degC]
    enthalpy: Vector
    conductivity: Vector

    def at(self, what: Vector, celsius: float) -> float:
        return float(np.interp(celsius, self.temperature, what))

    def heat(self, warm: float, cold: float) -> float:
        return self.at(self.enthalpy, warm) - self.at(self.enthalpy, cold)


@functools.cache
def _material() -> Material:
    foods = kc.properties.foods
    below = -0.6 - np.geomspace(1e-6, 44.0, 3000)[::-1]
    celsius = np.concatenate((below, np.linspace(-0.6, 60.0, 400)))
    density = foods.density(FOOD, ICE + 20.0)
    unfrozen = foods.conductivity(FOOD, ICE + 20.0)
    ice = np.array([foods.ice_fraction(FOOD, ICE + t) for t in celsius])
    enthalpy = density * np.array([foods.specific_enthalpy(FOOD, ICE + t) for t in celsius])
    return Material(celsius, enthalpy, unfrozen + (2.22 - 0.571) * ice)


def _solved_time(body: Body, start: float, centre: float) -> float:
    """Time until the centre has reached a temperature [s]."""
    food = _material()

    def rates(_: float, enthalpy: Vector) -> Vector:
        celsius = np.interp(enthalpy, food.enthalpy, food.temperature)
        return body.rates(celsius, np.interp(celsius, food.temperature, food.conductivity))

    def reached(_: float, enthalpy: Vector) -> float:
        first, second = np.interp(enthalpy[:2], food.enthalpy, food.temperature)
        return float((9.0 * first - second) / 8.0 - centre)

    reached.terminal = True  # type: ignore[attr-defined]
    begin = np.full(CELLS, food.at(food.enthalpy, start))
    solved = integrate.solve_ivp(
        rates, (0.0, 1e6), begin, "LSODA", events=reached, rtol=1e-6, atol=1e3, lband=1, uband=1
    )
    return float(solved.t_events[0][0])


def _cleland_earle(shape: kc.Shape, body: Body, start: float) -> float:
    food, at = _material(), -0.6
    heat, conductivity = food.heat(at, -10.0), food.at(food.conductivity, -20.0)
    frozen = food.heat(-39.0, -40.0) / heat  # almost no water left to freeze there
    return freezing.cleland_earle_time(
        shape,
        body.size,
        body.film,
        conductivity,
        heat=heat,
        difference=at - body.fluid,
        plank=food.heat(start, at) / heat,
        stefan=frozen * (at - body.fluid),
    )


def _pham(shape: kc.Shape, body: Body, start: float) -> float:
    food = _material()
    frozen = food.heat(-39.0, -40.0)
    return freezing.pham_time(
        shape,
        body.size,
        body.film,
        food.at(food.conductivity, -20.0),
        unfrozen=food.heat(20.0, 10.0) / 10.0,
        frozen=frozen,
        latent=food.heat(-0.6, -10.0) - frozen * 9.4,
        initial=ICE + start,
        final_centre=ICE - 10.0,
        surroundings=ICE + body.fluid,
    )


def _thawing(shape: kc.Shape, body: Body, start: float) -> float:
    food, at = _material(), -0.6
    heat = food.heat(0.0, -10.0)
    return freezing.thawing_time(
        shape,
        body.size,
        body.film,
        food.at(food.conductivity, 0.0),
        heat=heat,
        difference=body.fluid - at,
        plank=food.heat(-39.0, -40.0) * (at - start) / heat,
        stefan=food.heat(20.0, 10.0) / 10.0 * (body.fluid - at) / heat,
    )


def _changing_phase() -> list[Case]:
    cases = []
    for shape, dimension in SHAPES.items():
        for size, film, start, fluid in (
            (0.05, 60.0, 5.0, -25.0),
            (0.10, 25.0, 10.0, -30.0),
            (0.08, 30.0, 20.0, -25.0),
        ):
            body = Body(dimension, size, film, fluid)
            expected = _solved_time(body, start, -10.0)
            label = f"{shape.name} {size} m, {film:g} W/(m2 K), {start:g} to {fluid:g} degC"
            for name, published in (("Cleland & Earle", _cleland_earle), ("Pham", _pham)):
                got = published(shape, body, start)
                cases.append(
                    relative(
                        f"Freezing, {name}: {label}", "heat equation", (expected, got), 0.1, "s"
                    )
                )
        for size, film, start, fluid in ((0.05, 60.0, -25.0, 10.0), (0.05, 100.0, -20.0, 20.0)):
            body = Body(dimension, size, film, fluid)
            expected = _solved_time(body, start, 0.0)
            label = f"{shape.name} {size} m, {film:g} W/(m2 K), {start:g} to {fluid:g} degC"
            got = _thawing(shape, body, start)
            cases.append(relative(f"Thawing: {label}", "heat equation", (expected, got), 0.1, "s"))
    return cases
