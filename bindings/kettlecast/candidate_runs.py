"""Plain runs with water that tell about a kettle, to choose the next one from."""

from __future__ import annotations

from typing import Any

from . import _core
from .foods import food

_ICE = 273.15
# Shares of the usable volume, temperatures and speeds of a careful first test: common practice, no
# source. A full kettle would splash, and below a third the agitator may not be covered.
_FULL, _HALF = 0.6, 0.35
_COLD, _WARM, _HOT = 15.0 + _ICE, 60.0 + _ICE, 85.0 + _ICE
_ICED = 5.0 + _ICE
_SLOW, _FAST = 10.0 / 60.0, 30.0 / 60.0  # [1/s]
_OUT_OF_REACH = 5.0  # above the boiling point, so that the heat stays on [K]
_JACKET = 98.0 + _ICE
_LONG = 4.0 * 3600.0  # [s]


def _water(mass: float, temperature: float = _COLD, delay: float = 0.0) -> _core.Addition:
    return _core.Addition(
        name="water", food=food("water"), mass=mass, temperature=temperature, delay=delay
    )


def _phase(name: str, **members: Any) -> _core.Phase:
    return _core.Phase(name=name, time_limit=_LONG, **members)


def _heated(name: str, set_point: float, hold: float, **members: Any) -> _core.Phase:
    """Heated on the probe, and held for some time [s]."""
    rule = _core.EndRule(kind=_core.EndKind.held, value=hold)
    regulated = _core.Regulated.probe
    return _phase(name, regulated=regulated, set_point=set_point, ends=[rule], **members)


def _lasting(name: str, time: float, **members: Any) -> _core.Phase:
    rule = _core.EndRule(kind=_core.EndKind.elapsed, value=time)
    return _phase(name, ends=[rule], **members)


def _masses(kettle: _core.Kettle) -> tuple[float, float]:
    """Of water in a well filled and in a half filled kettle, in whole kilograms from 2 kg [kg]."""
    volume = _core.usable_volume(kettle)
    litres = [
        1000.0 * max(share * volume, _core.covering_volume(kettle)) for share in (_FULL, _HALF)
    ]
    full, half = (float(round(one)) if one >= 2.0 else one for one in litres)
    return full, half


def candidate_runs(kettle: _core.Kettle) -> dict[str, _core.Recipe]:
    """Some plain runs with water that fit into a kettle, by name.

    Water heated while it is stirred, about half as much, at two speeds (with an agitator), then
    unstirred, cold water poured into hot, a simmer with the lid off, and the jacket alone if it can
    heat beside a floor heater.

    Parameters
    ----------
    kettle :
        Gives volume, agitator, jacket and the pressure of the room.
    """
    full, half = _masses(kettle)
    stirs = kettle.agitator is not _core.AgitatorKind.none
    slow, fast = (_core.Agitation(speed=speed if stirs else 0.0) for speed in (_SLOW, _FAST))
    still = _core.Agitation()
    boils = float(_core.properties.water.saturation_temperature(kettle.surroundings.pressure))
    above = {"regulated": _core.Regulated.probe, "set_point": boils + _OUT_OF_REACH}
    load = [_water(full)]
    steps = {
        f"{full:g} kg water heated": [_heated("heat", _HOT, 300.0, agitation=fast, additions=load)],
        f"{half:g} kg water heated": [
            _heated("heat", _HOT, 300.0, agitation=fast, additions=[_water(half)])
        ],
        f"{full:g} kg water, then at rest": [
            _heated("heat", _WARM, 120.0, agitation=fast, additions=load),
            _heated("unstirred", _HOT, 600.0, agitation=still),
            _lasting("heat off", 900.0, agitation=still),
        ],
        f"cold water into {half:g} kg hot": [
            _heated("heat", _HOT, 120.0, agitation=fast, additions=[_water(half)]),
            _heated("recover", _HOT, 120.0, agitation=fast, additions=[_water(full - half, _ICED)]),
        ],
        f"{half:g} kg water simmered, lid off": [
            _heated("heat", _HOT, 60.0, agitation=fast, additions=[_water(half)]),
            _lasting("simmer", 1800.0, agitation=fast, heat_limit=0.5, **above),
        ],
    }
    if stirs:
        steps[f"{full:g} kg water at two speeds"] = [
            _heated("slow", _WARM, 300.0, agitation=slow, additions=load),
            _heated("fast", _HOT, 300.0, agitation=fast),
        ]
    if _heats_beside_floor(kettle):
        steps[f"{half:g} kg water by the jacket alone"] = [
            _lasting(
                "jacket",
                2400.0,
                agitation=fast,
                additions=[_water(half)],
                jacket=_core.JacketUse.heat,
                jacket_limit=_JACKET,
            )
        ]
    recipes = {name: _core.Recipe(name=name, phases=phases) for name, phases in steps.items()}
    for recipe in recipes.values():
        _core.check(recipe)
    return recipes


def _heats_beside_floor(kettle: _core.Kettle) -> bool:
    jacket = kettle.jacket
    gives = jacket.power > 0.0 or jacket.kind is not _core.JacketKind.electric
    return gives and jacket.height > 0.0 and not _core.heats_by_jacket(kettle)
