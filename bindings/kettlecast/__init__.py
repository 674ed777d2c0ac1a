"""Forecasts batches in an agitated, jacketed cooking kettle and learns a kettle from its logs."""

from __future__ import annotations

from . import candy, oils, safety_tables
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
    FilmSource,
    FloorShape,
    Food,
    Impeller,
    Jacket,
    JacketFlow,
    JacketKind,
    JacketUse,
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
    ThermostatCycle,
    ThermostatLoop,
    UltimateCycle,
    VesselShape,
    Wetting,
    coefficient_cards,
    control,
    covering_volume,
    heats_by_jacket,
    properties,
    transfer,
    usable_volume,
    vessel,
)
from .candidate_runs import candidate_runs
from .comparing import Comparison, compare
from .doubts import Doubt, Explanation
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
from .fit_profile import ProfileInterval
from .fit_result import Fit, Param
from .fitting import fit
from .foods import food, food_names
from .forecast_target import Target
from .forecasting import Forecast, forecast
from .intervals import Ensemble, Interval
from .kettle_file import kettle_schema, read_kettle
from .known_combinations import Combination, Inseparable
from .leave_one_out import HeldOut, LeaveOneOut
from .next_run import NextRun, next_run
from .recipe_changes import with_more
from .recipe_file import read_recipe, recipe_schema
from .recipe_writer import write_recipe
from .run_log import Run, read_run
from .scatter import Scatter
from .warm_start import start_after

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
    "Combination",
    "Comparison",
    "Composition",
    "Consistency",
    "Controller",
    "ControllerKind",
    "Cover",
    "Doubt",
    "EndKind",
    "EndReason",
    "EndRule",
    "Ensemble",
    "Error",
    "Explanation",
    "FileFormatError",
    "FilmSource",
    "Finding",
    "Fit",
    "FitOptions",
    "FloorShape",
    "Food",
    "Forecast",
    "HeldOut",
    "Impeller",
    "Inseparable",
    "IntegrationFailure",
    "Interval",
    "InvalidArgument",
    "Jacket",
    "JacketFlow",
    "JacketKind",
    "JacketUse",
    "Kettle",
    "LeaveOneOut",
    "MetalKind",
    "NextRun",
    "Options",
    "OutsideValidity",
    "Param",
    "Phase",
    "PhaseReport",
    "PiLoop",
    "PiResponse",
    "ProfileInterval",
    "Recipe",
    "Regulated",
    "Run",
    "Scatter",
    "Severity",
    "Shape",
    "Start",
    "Surroundings",
    "Target",
    "ThermostatCycle",
    "ThermostatLoop",
    "UltimateCycle",
    "UnknownName",
    "VesselShape",
    "Wetting",
    "browning",
    "candidate_runs",
    "candy",
    "coefficient_cards",
    "compare",
    "control",
    "covering_volume",
    "fit",
    "food",
    "food_names",
    "forecast",
    "heats_by_jacket",
    "kettle_schema",
    "lethality",
    "next_run",
    "oils",
    "properties",
    "read_fit",
    "read_kettle",
    "read_recipe",
    "read_run",
    "recipe_schema",
    "safety_tables",
    "start_after",
    "time_above",
    "time_below",
    "transfer",
    "usable_volume",
    "vessel",
    "with_more",
    "write_recipe",
]
