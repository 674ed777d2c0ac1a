"""Forecasts batches in an agitated, jacketed cooking kettle and learns a kettle from its logs."""

from __future__ import annotations

from ._core import (
    Addition,
    Agitation,
    AgitatorKind,
    Balance,
    CoefficientCard,
    Coefficients,
    Composition,
    Controller,
    ControllerKind,
    Cover,
    EndKind,
    EndReason,
    EndRule,
    Food,
    Kettle,
    MetalKind,
    Options,
    Phase,
    PhaseReport,
    Recipe,
    Regulated,
    Shape,
    Start,
    Surroundings,
    coefficient_cards,
    properties,
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
    "Controller",
    "ControllerKind",
    "Cover",
    "EndKind",
    "EndReason",
    "EndRule",
    "Error",
    "FileFormatError",
    "Finding",
    "Fit",
    "FitOptions",
    "Food",
    "Forecast",
    "IntegrationFailure",
    "InvalidArgument",
    "Kettle",
    "MetalKind",
    "Options",
    "OutsideValidity",
    "Param",
    "Phase",
    "PhaseReport",
    "Recipe",
    "Regulated",
    "Run",
    "Severity",
    "Shape",
    "Start",
    "Surroundings",
    "UnknownName",
    "coefficient_cards",
    "compare",
    "fit",
    "food",
    "food_names",
    "forecast",
    "kettle_schema",
    "properties",
    "read_fit",
    "read_kettle",
    "read_recipe",
    "read_run",
    "recipe_schema",
    "transfer",
    "with_more",
    "write_recipe",
]
