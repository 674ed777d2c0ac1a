"""How a phase of a forecast ended, and what a phase aims at, in words."""

from __future__ import annotations

from typing import TYPE_CHECKING

from . import _core
from .clock_text import clock_text
from .units import System, as_text

if TYPE_CHECKING:
    from .forecasting import Forecast

_REASON_OF = {
    _core.EndKind.held: _core.EndReason.held,
    _core.EndKind.elapsed: _core.EndReason.elapsed,
    _core.EndKind.above: _core.EndReason.signal,
    _core.EndKind.below: _core.EndReason.signal,
    _core.EndKind.mass_lost: _core.EndReason.mass_lost,
    _core.EndKind.share_lost: _core.EndReason.mass_lost,
}
_SENSORS = {
    _core.Regulated.floor: "floor_sensor.reading",
    _core.Regulated.probe: "probe.reading",
    _core.Regulated.core: "core_probe.reading",
}


def level_text(
    signal: _core.Regulated, value: float, system: System = "metric", *, digits: int = 4
) -> str:
    """A reading as people say it, for example "probe 115 degC" or "difference 45 degF"."""
    if signal is _core.Regulated.difference:
        return f"difference {as_text(value, 'temperature_difference', system, digits=digits)}"
    return f"{signal.name} {as_text(value, 'temperature', system, digits=digits)}"


def rule_text(rule: _core.EndRule, system: System = "metric", *, digits: int = 4) -> str:
    """When an end rule is met, for example "held 1:00 min" or "12 % lost"."""
    if rule.kind is _core.EndKind.held:
        return f"held {clock_text(rule.value)} min"
    if rule.kind is _core.EndKind.elapsed:
        return f"after {clock_text(rule.value)} min"
    if rule.kind in (_core.EndKind.above, _core.EndKind.below):
        return level_text(rule.signal, rule.value, system, digits=digits)
    kind = "mass" if rule.kind is _core.EndKind.mass_lost else "share"
    return f"{as_text(rule.value, kind, system, digits=digits)} lost"


def ending_text(forecast: Forecast, index: int, system: System = "metric") -> str:
    """How the phase of an index from 0 ended, for example "probe 115 degC" or "TIMED OUT"."""
    reason = forecast.result.phases[index].ended
    rules = [rule for rule in forecast.recipe.phases[index].ends if _REASON_OF[rule.kind] is reason]
    if not rules:
        return "TIMED OUT"
    return rule_text(min(rules, key=lambda rule: _missed_by(forecast, index, rule)), system)


def _missed_by(forecast: Forecast, index: int, rule: _core.EndRule) -> float:
    """How far the readings at the end of a phase are from what a rule waits for [K]."""
    if rule.kind not in (_core.EndKind.above, _core.EndKind.below):
        return 0.0
    names = list(forecast.result.trace_names)
    last = forecast.result.trace[forecast.result.trace[:, names.index("phase")] == index][-1]

    def reading(signal: _core.Regulated) -> float:
        return float(last[names.index(_SENSORS[signal])])

    if rule.signal is _core.Regulated.difference:
        shown = reading(_core.Regulated.floor) - reading(_core.Regulated.probe)
    else:
        shown = reading(rule.signal)
    return abs(shown - rule.value)
