"""Batch heating and cooling times, energy balances (section F).

Each row is read for what it states, and answered by the closed form that takes just that.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping

from amounts import amount, amounts, in_unit_of, named, named_amount, plain, span
from case_file import Row

import kettlecast as kc
from kettlecast import units

REASONS: Mapping[str, str] = {}

#: Specific heat of water where a row states none [J/(kg K)]; the rows around it use it too.
WATER = 4186.0

_MEDIUM = (
    r"(?:(?:wall|surface|jacket|water|steam|bath|medium|coolant|brine|air|in)(?: in)?(?: at)?"
    r"|[Tt](?:1|2|w|_?inf)\s*=)\s*(-?[\d.]+\s*deg[CF])"
)


def _medium(row: Row) -> float | None:
    """Temperature of the entering medium, of wall or bath [K]."""
    found = re.search(_MEDIUM, plain(row["inputs"])) or re.search(_MEDIUM, plain(row["title"]))
    return None if found is None else units.temperature(found[1])


def _temperature(row: Row, kelvin: float) -> float:
    return in_unit_of(row, kelvin, "temperature")


def _time_or_temperature(
    row: Row, capacity: float, conductance: float, medium: float, power: float = 0.0
) -> float | None:
    """Time over the span of the row, or temperature after a time in its inputs or quantity."""
    batch, change, quantity = kc.transfer.batch, span(row["inputs"]), row["quantity"]
    if "time" in quantity and change is not None:
        time = batch.time_to_temperature(capacity, conductance, medium, *change, power=power)
        return in_unit_of(row, time, "time")
    after = amount(quantity, "time") or amount(row["inputs"], "time")
    if quantity.startswith("T") and after is not None:
        found = re.search(r"(-?[\d.]+ deg[CF]) start", plain(row["inputs"]))
        start = units.temperature(found[1]) if found else change[0] if change else None
        if start is not None:
            return _temperature(
                row, batch.temperature_after(capacity, conductance, medium, start, after, power)
            )
    return None


def _kern(row: Row) -> float | None:
    """Coil, jacket or external exchanger; the medium isothermal or flowing."""
    text, medium = row["inputs"], _medium(row)
    mass = amount(text, "mass")
    heats = amounts(text, "specific_heat")
    specific_heat = named("c", text) or (heats[0] if heats else None)
    coefficient = amount(text, "heat_transfer_coefficient")
    area = amount(text, "area")
    conductance = named("UA", text) or (coefficient * area if coefficient and area else None)
    if not (mass and specific_heat and conductance) or medium is None:
        return None
    batch, flows = kc.transfer.batch, _capacity_flows(text, specific_heat)
    if not flows:
        return _time_or_temperature(row, mass * specific_heat, conductance, medium)
    if row["quantity"] in ("K1", "K2"):
        return batch.difference_ratio(conductance, flows[0])
    if len(flows) == 1:
        effective = batch.flowing_medium_conductance(conductance, flows[0])
    elif shells := re.search(r"\b([1-9])-\d+ exchanger", row["title"] + text):
        effective = batch.shell_and_tube_conductance(conductance, *flows[:2], int(shells[1]))
    else:
        effective = batch.counterflow_conductance(conductance, *flows[:2])
    return _time_or_temperature(row, mass * specific_heat, effective, medium)


def _capacity_flows(text: str, of_batch: float) -> list[float]:
    """Mass flows times the specific heats that follow them [W/K]; a specific heat without unit is
    in that of the first one stated, and a flow without one is the batch's."""
    unit = re.search(r"[\d.]+ (\S+/\((?:kg|lb) \w+\))", plain(text))
    pattern = r"([\d.]+ (?:kg|lb)/[hs])(?:, ([\d.]+)(?: ?(\S+/\((?:kg|lb) \w+\)))?)?"
    flows = []
    for flow, heat, own in re.findall(pattern, plain(text)):
        stated = own or (unit[1] if unit else "J/(kg K)")
        specific_heat = units.parse(f"{heat} {stated}", "specific_heat") if heat else of_batch
        flows.append(units.parse(flow, "mass_flow") * specific_heat)
    return flows


def _sizing(row: Row) -> float | None:
    """Heat, steam and area of a coil for a given time."""
    text, change, medium = row["inputs"], span(row["inputs"]), _medium(row)
    mass, specific_heat = amount(text, "mass"), amount(text, "specific_heat")
    time = amount(text, "time")
    coefficient = amount(text, "heat_transfer_coefficient")
    if not (mass and specific_heat and time and coefficient) or change is None or medium is None:
        return None
    batch, quantity = kc.transfer.batch, row["quantity"]
    heat = batch.sensible_heat(mass, specific_heat, *change)
    if quantity == "heat":
        return in_unit_of(row, heat / time, "power")
    latent = amount(text, "specific_energy")
    if quantity == "steam" and latent:
        return in_unit_of(row, batch.mass_of_vapour(heat / time, latent), "mass_flow")
    if quantity == "area":
        return batch.required_area(mass * specific_heat, coefficient, medium, *change, time)
    return None


def _lumped(row: Row) -> float | None:
    """A stirred content or a small body behind a film, by its surface per volume."""
    text, medium = row["inputs"], _medium(row)
    film, density = named("h", text), named("rho", text)
    specific_heat = amount(text, "specific_heat") or named("cp", text)
    depth, radius = named("V/A", text), named("r", text)
    if not (film and density and specific_heat and (depth or radius)):
        return None
    batch = kc.transfer.batch
    per_volume = 1.0 / depth if depth else batch.hemisphere_surface_per_volume(radius or 0.0)
    rate = batch.lumped_rate(film, per_volume, density, specific_heat)
    if row["quantity"] == "b":
        return rate
    return None if medium is None else _time_or_temperature(row, 1.0, rate, medium)


def _boiled(row: Row) -> float | None:
    """Heat to the boil, a share boiled off, and the steam for it."""
    text, change = row["inputs"], span(row["inputs"])
    mass, specific_heat = amount(text, "mass"), amount(text, "specific_heat")
    latents, share = amounts(text, "specific_energy"), amount(text, "share")
    if not (mass and specific_heat and share and latents) or change is None:
        return None
    batch = kc.transfer.batch
    sensible = batch.sensible_heat(mass, specific_heat, *change)
    latent = batch.boil_off_heat(mass, share, latents[0])
    heats = {"sensible": sensible, "latent": latent, "total": sensible + latent}
    if row["quantity"] in heats:
        return in_unit_of(row, heats[row["quantity"]], "energy")
    if row["quantity"] == "steam" and len(latents) > 1:
        return in_unit_of(row, batch.mass_of_vapour(sensible + latent, latents[1]), "mass")
    return None


def _passes(row: Row) -> float | None:
    """An unstirred batch pumped through an exchanger."""
    text, medium, share = row["inputs"], _medium(row), named("S", row["inputs"])
    start = named_amount("batch", text, "temperature")
    if share is None or medium is None or start is None:
        return None
    batch, count = kc.transfer.batch, re.fullmatch(r"t(\d+)", row["quantity"])
    if count is not None:
        return _temperature(
            row, batch.temperature_after_passes(share, medium, start, float(count[1]))
        )
    target = named_amount("(?:target|to)", text, "temperature")
    if target is None or "circulation" not in row["quantity"]:
        return None
    return batch.passes_to_temperature(share, medium, start, target)


def _powered(row: Row) -> float | None:
    """Constant power into water and metal, with or without a loss to the room."""
    text, power, change = row["inputs"], amount(row["inputs"], "power"), span(row["inputs"])
    stated = re.findall(r"([\d.]+ (?:kg|lb)) [\w ]*\(([\d.]+)\)", plain(text))
    capacity = sum(units.mass(mass) * float(heat) for mass, heat in stated)
    mass = amount(text, "mass")
    if power is None or mass is None or change is None or named("C1", text):
        return None
    capacity = capacity or mass * (amount(text, "specific_heat") or WATER)
    batch, quantity = kc.transfer.batch, row["quantity"]
    found = re.search(r"loss ([\d.]+) W/K to (-?[\d.]+ deg[CF])", plain(text))
    loss, room = (float(found[1]), units.temperature(found[2])) if found else (0.0, change[0])
    if quantity == "energy":
        return in_unit_of(row, batch.sensible_heat(1.0, capacity, *change), "energy")
    if quantity == "steady temperature":
        return _temperature(row, batch.steady_temperature(loss, room, power))
    if quantity.startswith("no-loss"):
        loss = 0.0
    return _time_or_temperature(row, capacity, loss, room, power)


def _two_node(row: Row) -> float | None:
    """Floor and liquid; the heater goes off when the liquid reaches a temperature."""
    text = plain(row["inputs"])
    found = re.search(
        r"C1=([\d.]+) kJ/K at P=([\d.]+) kW, G=([\d.]+) W/K to liquid C2=([\d.]+) kJ/K, "
        r"(?:loss ([\d.]+) W/K to|no loss,?(?: room)?) ?(-?[\d.]+) degC, start (-?[\d.]+) degC.*"
        r"reaches ([\d.]+) degC",
        text,
    )
    if found is None:
        return None
    c1, kilowatts, between, c2, loss, room, start, target = (
        float(n or 0.0) for n in found.groups()
    )
    batch = kc.transfer.batch
    kettle = {
        "floor_capacity": 1e3 * c1,
        "liquid_capacity": 1e3 * c2,
        "conductance": between,
        "floor_loss": 0.0,
        "liquid_loss": loss,
        "surroundings": units.temperature(f"{room} degC"),
    }
    begin, limit = (units.temperature(f"{number} degC") for number in (start, target))
    off = batch.two_node_time_to(limit, 1e3 * kilowatts, begin, begin, **kettle)
    floor, liquid = batch.two_node_after(off, 1e3 * kilowatts, begin, begin, **kettle)
    when, peak = batch.two_node_peak(0.0, floor, liquid, **kettle)
    fast, slow = batch.two_node_eigenvalues(**kettle)
    bound = batch.two_node_overshoot_bound(1e3 * c1, 1e3 * c2, floor, liquid)
    answers: dict[str, Callable[[], float]] = {
        "switch-off time": lambda: off,
        "floor at switch-off": lambda: _temperature(row, floor),
        "peak liquid": lambda: _temperature(row, peak),
        "overshoot": lambda: peak - limit,
        "peak after switch-off": lambda: when,
        "no-loss overshoot": lambda: bound,
        "eigenvalue fast": lambda: fast,
        "eigenvalue slow": lambda: slow,
    }
    fitting = [answer for name, answer in answers.items() if row["quantity"].startswith(name)]
    return fitting[0]() if fitting else None


def _cold_addition(row: Row) -> float | None:
    """A cold addition to a hot batch: temperature after mixing, and time to get back."""
    text = plain(row["inputs"])
    parts = re.findall(r"([\d.]+ (?:kg|lb)) at (-?[\d.]+ deg[CF]) \(([\d.]+)([^,]*)\)", text)
    if len(parts) != 2:
        return None
    unit = parts[0][3].strip()
    capacities = [
        units.mass(mass) * units.parse(f"{heat} {unit}", "specific_heat")
        for mass, _, heat, _ in parts
    ]
    hot, cold = (units.temperature(part[1]) for part in parts)
    batch, power = kc.transfer.batch, amount(text, "power")
    mixed = batch.mixing_temperature(capacities[0], hot, capacities[1], cold)
    if row["quantity"].startswith("mixed"):
        return _temperature(row, mixed)
    if not row["quantity"].startswith("time back") or power is None:
        return None
    time = batch.time_to_temperature(sum(capacities), 0.0, mixed, mixed, hot, power=power)
    return in_unit_of(row, time, "time")


def _boil_off(row: Row) -> float | None:
    """Water boiled off by a net power."""
    power, latent = amount(row["inputs"], "power"), amount(row["inputs"], "specific_energy")
    if row["quantity"] != "rate" or power is None:
        return None
    latent = latent or float(kc.properties.water.latent_heat(373.124))
    return in_unit_of(row, kc.transfer.batch.mass_of_vapour(power, latent), "mass_flow")


def value(row: Row) -> float | None:
    """The answer of the first closed form that finds all it needs."""
    readers = (
        _two_node,
        _cold_addition,
        _boil_off,
        _passes,
        _boiled,
        _sizing,
        _lumped,
        _powered,
        _kern,
    )
    for reader in readers:
        got = reader(row)
        if got is not None:
            return got
    return None
