"""Edible oils (section D)."""

from __future__ import annotations

from collections.abc import Mapping

from case_file import ICE, Row, number

import kettlecast as kc

REASONS: Mapping[str, str] = {}


def value(row: Row) -> float | None:
    """Recalled values of cooking oils at one temperature; other rows are of other models."""
    celsius = number("", row["inputs"])
    oil, quantity = kc.properties.oil, row["quantity"]
    if celsius is None or "oil" not in row["title"] or "component" in row["title"]:
        return None
    scale = {"rho": (oil.density, 1.0), "mu": (oil.viscosity, 1e3), "cp": (oil.specific_heat, 1e-3)}
    if quantity not in scale:
        return None
    function, factor = scale[quantity]
    return float(function(celsius + ICE)) * factor
