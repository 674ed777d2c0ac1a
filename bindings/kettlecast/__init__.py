"""Forecasts batches in an agitated, jacketed cooking kettle and learns a kettle from its logs."""

from __future__ import annotations

from . import candy, oils
from . import safety_tables
from ._core import (
    Addition,
    Agitation,
    AgitatorKind,
    Balance,
    CoefficientCard,
    Coefficients,
    Composition,
    Consistency,
    Controller,
    ControllerKind,
    Cover,
    EndKind,
    EndReason,
    EndRule,
    FloorShape,
    Food,
    Jacket,
    JacketFlow,
    JacketKind,
    JacketUse,
    FilmSource,
    Food,
    Impeller,
    Kettle,
    MetalKind,
    Options,
    Phase,
    PhaseReport,
    PiLoop,
    PiResponse,
    Recipe,
    Regulated,
    Shape,
    Start,
    Surroundings,
    VesselShape,
    Wetting,
    coefficient_cards,
    covering_volume,
    heats_by_jacket,
    ThermostatCycle,
    ThermostatLoop,
    UltimateCycle,
    coefficient_cards,
    control,
    properties,
    usable_volume,
    vessel,
    transfer,
)
from .comparing import Comparison, compare
from .errors import (
    Error,
    FileFormatError,
    IntegrationFailure,
    InvalidArgument,
    OutsideValidity,
    UnknownName,
)
from .exposure import browning, lethality, time_above, time_below
from .findings import Finding, Severity
from .fit_file import read_fit
from .fit_problem import FitOptions
from .fit_result import Fit, Param
from .fitting import fit
from .foods import food, food_names
from .forecasting import Forecast, forecast
from .kettle_file import kettle_schema, read_kettle
from .recipe_changes import with_more
from .recipe_file import read_recipe, recipe_schema
from .recipe_writer import write_recipe
from .run_log import Run, read_run

# `recipe.with_more("carrot", "20 lb")` reads better than a function of a recipe.
Recipe.with_more = with_more  # type: ignore[method-assign, assignment]

for _public in (Recipe, Kettle, Coefficients, Food, Phase, Addition):
    _public.__module__ = "kettlecast"
del _public

__all__ = [
    "Addition",
    "Agitation",
    "AgitatorKind",
    "Balance",
    "CoefficientCard",
    "Coefficients",
    "Comparison",
    "Composition",
    "Consistency",
    "Controller",
    "ControllerKind",
    "Cover",
    "EndKind",
    "EndReason",
    "EndRule",
    "Error",
    "FileFormatError",
    "FilmSource",
    "Finding",
    "Fit",
    "FitOptions",
    "FloorShape",
    "Food",
    "Forecast",
    "Impeller",
    "IntegrationFailure",
    "InvalidArgument",
    "Jacket",
    "JacketFlow",
    "JacketKind",
    "JacketUse",
    "Kettle",
    "MetalKind",
    "Options",
    "OutsideValidity",
    "Param",
    "Phase",
    "PhaseReport",
    "PiLoop",
    "PiResponse",
    "Recipe",
    "Regulated",
    "Run",
    "Severity",
    "Shape",
    "Start",
    "Surroundings",
    "ThermostatCycle",
    "ThermostatLoop",
    "UltimateCycle",
    "UnknownName",
    "VesselShape",
    "Wetting",
    "candy",
    "coefficient_cards",
    "compare",
    "covering_volume",
    "browning",
    "coefficient_cards",
    "compare",
    "control",
    "fit",
    "food",
    "food_names",
    "forecast",
    "heats_by_jacket",
    "kettle_schema",
    "oils",
    "lethality",
    "properties",
    "read_fit",
    "read_kettle",
    "read_recipe",
    "read_run",
    "recipe_schema",
    "usable_volume",
    "vessel",
    "transfer",
    "safety_tables",
    "time_above",
    "time_below",
    "transfer",
    "with_more",
    "write_recipe",
]
