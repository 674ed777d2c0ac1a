"""Types of the compiled part of kettlecast; use the package, not this module."""

import enum
from collections.abc import Sequence
from types import ModuleType
from typing import Any, ClassVar, Protocol, TypedDict, Unpack, overload

import numpy as np
from numpy.typing import NDArray

_Array = NDArray[np.float64]
_Numbers = Sequence[float] | NDArray[Any]

class Error(Exception):
    """Any error raised on purpose by kettlecast."""

class InvalidArgument(Error, ValueError):
    """An argument that no run can accept."""

class UnknownName(Error, KeyError):
    """A name that is not known; the message lists the nearest."""

class OutsideValidity(Error, ValueError):
    """A state at which a property has no meaning."""

class IntegrationFailure(Error, RuntimeError):
    """An integration that cannot go on."""

    reason: str
    """What went wrong."""
    time: float
    """Since the start of the run [s]."""
    component: str
    """State that failed, "node.quantity"."""
    phase: str
    """Name of the phase."""

class Shape(enum.Enum):
    """Shape of pieces; none for liquids."""

    none = 0
    slab = 1
    cylinder = 2
    sphere = 3

class Cover(enum.Enum):
    """What lies on the free surface."""

    open = 0
    lid = 1
    oil_film = 2

class Regulated(enum.Enum):
    """What the heat is regulated on; difference is floor reading less probe reading."""

    none = 0
    floor = 1
    probe = 2
    difference = 3

class EndKind(enum.Enum):
    """When a phase is over."""

    held = 0
    elapsed = 1
    above = 2
    below = 3
    mass_lost = 4

class MetalKind(enum.Enum):
    """Metal of floor and wall."""

    stainless_steel = 0
    carbon_steel = 1
    aluminium = 2

class AgitatorKind(enum.Enum):
    """Kind of the agitator."""

    none = 0
    anchor = 1
    scraped_anchor = 2
    paddle = 3
    helical_ribbon = 4
    turbine = 5

class ControllerKind(enum.Enum):
    """How the heat is switched."""

    on_off = 0
    proportional_integral = 1

class EndReason(enum.Enum):
    """How a phase ended."""

    held = 0
    elapsed = 1
    signal = 2
    mass_lost = 3
    timed_out = 4

class Loss(enum.Enum):
    """How a squared residual counts."""

    linear = 0
    soft_l1 = 1
    huber = 2

class _Record:
    """What all records have: values that compare, copy and pickle; not a class at run time."""

    __hash__: ClassVar[None]  # type: ignore[assignment]
    def __eq__(self, other: object, /) -> bool: ...
    def __getstate__(self) -> dict[str, Any]: ...
    def __setstate__(self, state: dict[str, Any], /) -> None: ...
    def to_dict(self) -> dict[str, Any]:
        """Members by name, SI units."""

class _CompositionMembers(TypedDict, total=False):
    water: float
    protein: float
    fat: float
    carbohydrate: float
    fibre: float
    ash: float

class Composition(_Record):
    """Mass fractions of a food [kg/kg]; they add up to 1."""

    def __init__(self, **members: Unpack[_CompositionMembers]) -> None: ...
    @property
    def water(self) -> float:
        """Water [kg/kg]."""
    @property
    def protein(self) -> float:
        """Protein [kg/kg]."""
    @property
    def fat(self) -> float:
        """Fat [kg/kg]."""
    @property
    def carbohydrate(self) -> float:
        """Digestible, fibre not included [kg/kg]."""
    @property
    def fibre(self) -> float:
        """Fibre [kg/kg]."""
    @property
    def ash(self) -> float:
        """Ash [kg/kg]."""
    def replace(self, **members: Unpack[_CompositionMembers]) -> Composition:
        """A copy with the given members changed; raises UnknownName or TypeError."""

class _FoodMembers(TypedDict, total=False):
    name: str
    composition: Composition
    freezing_point: float
    juice_fraction: float
    source: str

class Food(_Record):
    """Name, composition, initial freezing point [K]."""

    def __init__(self, **members: Unpack[_FoodMembers]) -> None: ...
    @property
    def name(self) -> str:
        """Of the food."""
    @property
    def composition(self) -> Composition:
        """Mass fractions [kg/kg]."""
    @property
    def freezing_point(self) -> float:
        """Initial freezing point [K]."""
    @property
    def juice_fraction(self) -> float:
        """Share of its water that pieces give up when cooked [kg/kg]."""
    @property
    def source(self) -> str:
        """Where the numbers come from."""
    def replace(self, **members: Unpack[_FoodMembers]) -> Food:
        """A copy with the given members changed; raises UnknownName or TypeError."""

class _AdditionMembers(TypedDict, total=False):
    name: str
    food: Food
    mass: float
    temperature: float
    shape: Shape
    piece_size: float
    delay: float
    pour_time: float

class Addition(_Record):
    """One ingredient poured into the kettle."""

    def __init__(self, **members: Unpack[_AdditionMembers]) -> None: ...
    @property
    def name(self) -> str:
        """What people call it; usually the name of the food."""
    @property
    def food(self) -> Food:
        """Composition and freezing point."""
    @property
    def mass(self) -> float:
        """Mass [kg]."""
    @property
    def temperature(self) -> float:
        """Temperature [K]."""
    @property
    def shape(self) -> Shape:
        """Of the pieces; none for liquids."""
    @property
    def piece_size(self) -> float:
        """Thickness of a slab or diameter [m]; 0 for liquids."""
    @property
    def delay(self) -> float:
        """From the start of the phase to the start of the pour [s]."""
    @property
    def pour_time(self) -> float:
        """Duration of the pour [s]."""
    def replace(self, **members: Unpack[_AdditionMembers]) -> Addition:
        """A copy with the given members changed; raises UnknownName or TypeError."""

class _AgitationMembers(TypedDict, total=False):
    speed: float
    on_time: float
    off_time: float

class Agitation(_Record):
    """Speed [1/s], constant or in on/off cycles [s]."""

    def __init__(self, **members: Unpack[_AgitationMembers]) -> None: ...
    @property
    def speed(self) -> float:
        """Turns per second while on [1/s]."""
    @property
    def on_time(self) -> float:
        """Duration on in each cycle [s]; 0 with off_time 0: always on."""
    @property
    def off_time(self) -> float:
        """Duration off in each cycle [s]."""
    def replace(self, **members: Unpack[_AgitationMembers]) -> Agitation:
        """A copy with the given members changed; raises UnknownName or TypeError."""

class _EndRuleMembers(TypedDict, total=False):
    kind: EndKind
    value: float
    signal: Regulated

class EndRule(_Record):
    """A rule that ends a phase."""

    def __init__(self, **members: Unpack[_EndRuleMembers]) -> None: ...
    @property
    def kind(self) -> EndKind:
        """What the rule watches."""
    @property
    def value(self) -> float:
        """Limit [s], [K] or [kg], see EndKind."""
    @property
    def signal(self) -> Regulated:
        """Reading watched by `above` and `below`."""
    def replace(self, **members: Unpack[_EndRuleMembers]) -> EndRule:
        """A copy with the given members changed; raises UnknownName or TypeError."""

class _PhaseMembers(TypedDict, total=False):
    name: str
    regulated: Regulated
    set_point: float
    ends: Sequence[EndRule]
    time_limit: float
    additions: Sequence[Addition]
    agitation: Agitation
    heat_limit: float
    floor_limit: float
    difference_limit: float
    jacket: bool
    jacket_limit: float
    cover: Cover
    prompt: str

class Phase(_Record):
    """One phase of a recipe."""

    def __init__(self, **members: Unpack[_PhaseMembers]) -> None: ...
    @property
    def name(self) -> str:
        """Of the phase."""
    @property
    def regulated(self) -> Regulated:
        """What the heat is regulated on."""
    @property
    def set_point(self) -> float:
        """Temperature or, for `difference`, a temperature difference [K]."""
    @property
    def ends(self) -> list[EndRule]:
        """Rules that end the phase; the first one met ends it."""
    @property
    def time_limit(self) -> float:
        """The phase ends as timed out after this long [s]."""
    @property
    def additions(self) -> list[Addition]:
        """What is poured in this phase."""
    @property
    def agitation(self) -> Agitation:
        """How the product is stirred."""
    @property
    def heat_limit(self) -> float:
        """Highest share of the floor power used [-]."""
    @property
    def floor_limit(self) -> float:
        """Ceiling for the floor reading [K]."""
    @property
    def difference_limit(self) -> float:
        """Ceiling for floor reading less probe reading [K]."""
    @property
    def jacket(self) -> bool:
        """Jacket in use."""
    @property
    def jacket_limit(self) -> float:
        """The jacket heats while it is colder than this [K]."""
    @property
    def cover(self) -> Cover:
        """What lies on the free surface."""
    @property
    def prompt(self) -> str:
        """What the operator is told."""
    def replace(self, **members: Unpack[_PhaseMembers]) -> Phase:
        """A copy with the given members changed; raises UnknownName or TypeError."""

class _RecipeMembers(TypedDict, total=False):
    name: str
    phases: Sequence[Phase]

class Recipe(_Record):
    """A list of phases."""

    def __init__(self, **members: Unpack[_RecipeMembers]) -> None: ...
    @property
    def name(self) -> str:
        """Of the recipe."""
    @property
    def phases(self) -> list[Phase]:
        """In the order they are run."""
    def with_more(
        self,
        name: str,
        mass: str | float,
        temperature: str | float | None = None,
        *,
        phase: str | int | None = None,
        piece: str | float | None = None,
        shape: str | Shape | None = None,
        delay: str | float | None = None,
        pour_time: str | float | None = None,
    ) -> Recipe:
        """A copy with more of an ingredient, see `kettlecast.with_more`."""
    def replace(self, **members: Unpack[_RecipeMembers]) -> Recipe:
        """A copy with the given members changed; raises UnknownName or TypeError."""

class _ControllerMembers(TypedDict, total=False):
    kind: ControllerKind
    dead_band: float
    minimum_on_time: float
    gain: float
    integral_time: float
    reached_within: float
    settle_after_pour: float

class Controller(_Record):
    """The controller and how it counts 'reached'."""

    def __init__(self, **members: Unpack[_ControllerMembers]) -> None: ...
    @property
    def kind(self) -> ControllerKind:
        """How the heat is switched."""
    @property
    def dead_band(self) -> float:
        """Heat comes on this far below the set point [K]."""
    @property
    def minimum_on_time(self) -> float:
        """Heat stays on at least this long [s]."""
    @property
    def gain(self) -> float:
        """Of the PI controller [1/K]."""
    @property
    def integral_time(self) -> float:
        """Of the PI controller [s]."""
    @property
    def reached_within(self) -> float:
        """A set point counts as reached this close to it [K]."""
    @property
    def settle_after_pour(self) -> float:
        """A set point counts as reached no sooner than this after the last pour [s]."""
    def replace(self, **members: Unpack[_ControllerMembers]) -> Controller:
        """A copy with the given members changed; raises UnknownName or TypeError."""

class _SurroundingsMembers(TypedDict, total=False):
    temperature: float
    pressure: float
    relative_humidity: float
    air_speed: float

class Surroundings(_Record):
    """The room around the kettle."""

    def __init__(self, **members: Unpack[_SurroundingsMembers]) -> None: ...
    @property
    def temperature(self) -> float:
        """Of air and walls of the room [K]."""
    @property
    def pressure(self) -> float:
        """Of the air [Pa]."""
    @property
    def relative_humidity(self) -> float:
        """Relative humidity [-]."""
    @property
    def air_speed(self) -> float:
        """Of the air over the free surface [m/s]."""
    def replace(self, **members: Unpack[_SurroundingsMembers]) -> Surroundings:
        """A copy with the given members changed; raises UnknownName or TypeError."""

class _KettleMembers(TypedDict, total=False):
    name: str
    diameter: float
    height: float
    working_volume: float
    floor_power: float
    floor_thickness: float
    floor_metal: MetalKind
    jacket_power: float
    jacket_height: float
    wall_thickness: float
    wall_metal: MetalKind
    agitator: AgitatorKind
    agitator_diameter: float
    blades: int
    controller: Controller
    surroundings: Surroundings

class Kettle(_Record):
    """A cylindrical kettle, as on its type plate."""

    def __init__(self, **members: Unpack[_KettleMembers]) -> None: ...
    @property
    def name(self) -> str:
        """Of the kettle."""
    @property
    def diameter(self) -> float:
        """Inner diameter [m]."""
    @property
    def height(self) -> float:
        """Inner height [m]."""
    @property
    def working_volume(self) -> float:
        """Usable volume [m3]; 0: up to the rim."""
    @property
    def floor_power(self) -> float:
        """Nominal power of the floor elements [W]."""
    @property
    def floor_thickness(self) -> float:
        """Floor thickness [m]."""
    @property
    def floor_metal(self) -> MetalKind:
        """Metal of the floor."""
    @property
    def jacket_power(self) -> float:
        """Nominal power of the jacket elements [W]."""
    @property
    def jacket_height(self) -> float:
        """Height of the jacketed part of the wall [m]."""
    @property
    def wall_thickness(self) -> float:
        """Wall thickness [m]."""
    @property
    def wall_metal(self) -> MetalKind:
        """Metal of the wall."""
    @property
    def agitator(self) -> AgitatorKind:
        """Kind of the agitator."""
    @property
    def agitator_diameter(self) -> float:
        """Agitator diameter [m]."""
    @property
    def blades(self) -> int:
        """Blades passing a spot of the floor per turn [-]."""
    @property
    def controller(self) -> Controller:
        """How the heat is switched."""
    @property
    def surroundings(self) -> Surroundings:
        """The room around the kettle."""
    def replace(self, **members: Unpack[_KettleMembers]) -> Kettle:
        """A copy with the given members changed; raises UnknownName or TypeError."""

class _OptionsMembers(TypedDict, total=False):
    tolerance: float
    max_step: float
    output_interval: float

class Options(_Record):
    """How to integrate and what to record."""

    def __init__(self, **members: Unpack[_OptionsMembers]) -> None: ...
    @property
    def tolerance(self) -> float:
        """Error per step relative to the scale of a component [-]."""
    @property
    def max_step(self) -> float:
        """Longest step of the integrator [s]."""
    @property
    def output_interval(self) -> float:
        """Between rows of the trace [s]."""
    def replace(self, **members: Unpack[_OptionsMembers]) -> Options:
        """A copy with the given members changed; raises UnknownName or TypeError."""

class _StartMembers(TypedDict, total=False):
    floor: float
    wall: float

class Start(_Record):
    """Temperatures at the start of a run [K]."""

    def __init__(self, **members: Unpack[_StartMembers]) -> None: ...
    @property
    def floor(self) -> float:
        """Of the floor and its elements [K]."""
    @property
    def wall(self) -> float:
        """Of wall, jacket and agitator [K]."""
    def replace(self, **members: Unpack[_StartMembers]) -> Start:
        """A copy with the given members changed; raises UnknownName or TypeError."""

class _BalanceMembers(TypedDict, total=False):
    heater_energy: float
    poured_energy: float
    lost_energy: float
    vapour_energy: float
    stored_energy: float
    heat_residual: float
    mass_residual: float

class Balance(_Record):
    """Heat and mass books of a run."""

    def __init__(self, **members: Unpack[_BalanceMembers]) -> None: ...
    @property
    def heater_energy(self) -> float:
        """Given by floor and jacket elements [J]."""
    @property
    def poured_energy(self) -> float:
        """Enthalpy of what was poured, liquid water at 0 degC is 0 [J]."""
    @property
    def lost_energy(self) -> float:
        """Heat lost to the room, vapour not included [J]."""
    @property
    def vapour_energy(self) -> float:
        """Enthalpy of the vapour that left [J]."""
    @property
    def stored_energy(self) -> float:
        """Gained by kettle and product [J]."""
    @property
    def heat_residual(self) -> float:
        """(in - out - stored) / heater energy [-]."""
    @property
    def mass_residual(self) -> float:
        """(poured - vapour - held) / poured [-]."""
    def replace(self, **members: Unpack[_BalanceMembers]) -> Balance:
        """A copy with the given members changed; raises UnknownName or TypeError."""

class _PhaseReportMembers(TypedDict, total=False):
    name: str
    start: float
    duration: float
    loaded: float
    time_to_reach: float | None
    ended: EndReason
    peak: float
    peak_reading: float
    overshoot: float | None
    overshoot_reading: float | None
    evaporated: float
    energy: float

class PhaseReport(_Record):
    """What happened in one phase; SI units."""

    def __init__(self, **members: Unpack[_PhaseReportMembers]) -> None: ...
    @property
    def name(self) -> str:
        """Of the phase."""
    @property
    def start(self) -> float:
        """Since the start of the run [s]."""
    @property
    def duration(self) -> float:
        """Duration [s]."""
    @property
    def loaded(self) -> float:
        """End of the last pour, since the start of the phase [s]."""
    @property
    def time_to_reach(self) -> float | None:
        """Since the start of the phase [s]; None: not reached."""
    @property
    def ended(self) -> EndReason:
        """How the phase ended."""
    @property
    def peak(self) -> float:
        """Highest true value of what is regulated [K]."""
    @property
    def peak_reading(self) -> float:
        """Highest reading of it [K]."""
    @property
    def overshoot(self) -> float | None:
        """Highest value above the set point after first reaching it [K]; None: not reached."""
    @property
    def overshoot_reading(self) -> float | None:
        """Highest reading above the set point after first reaching it [K]; None: not reached."""
    @property
    def evaporated(self) -> float:
        """Water that left [kg]."""
    @property
    def energy(self) -> float:
        """Used by floor and jacket elements, before their losses [J]."""
    def replace(self, **members: Unpack[_PhaseReportMembers]) -> PhaseReport:
        """A copy with the given members changed; raises UnknownName or TypeError."""

class _DriveSignalsMembers(TypedDict, total=False):
    time: _Numbers
    floor_heat: _Numbers
    jacket_heat: _Numbers
    agitator_speed: _Numbers

class DriveSignals(_Record):
    """Logged drive signals over time."""

    def __init__(self, **members: Unpack[_DriveSignalsMembers]) -> None: ...
    @property
    def time(self) -> list[float]:
        """Rising times [s]."""
    @property
    def floor_heat(self) -> list[float]:
        """Share of the nominal floor power [-]."""
    @property
    def jacket_heat(self) -> list[float]:
        """Share of the nominal jacket power [-]."""
    @property
    def agitator_speed(self) -> list[float]:
        """Agitator speed [1/s]."""
    def replace(self, **members: Unpack[_DriveSignalsMembers]) -> DriveSignals:
        """A copy with the given members changed; raises UnknownName or TypeError."""

class _TimedAdditionMembers(TypedDict, total=False):
    time: float
    addition: Addition

class TimedAddition(_Record):
    """An addition and when its pour began."""

    def __init__(self, **members: Unpack[_TimedAdditionMembers]) -> None: ...
    @property
    def time(self) -> float:
        """Start of the pour [s]."""
    @property
    def addition(self) -> Addition:
        """What was poured."""
    def replace(self, **members: Unpack[_TimedAdditionMembers]) -> TimedAddition:
        """A copy with the given members changed; raises UnknownName or TypeError."""

class _TimedSettingMembers(TypedDict, total=False):
    time: float
    cover: Cover
    jacket_limit: float

class TimedSetting(_Record):
    """Cover and jacket limit from a time on."""

    def __init__(self, **members: Unpack[_TimedSettingMembers]) -> None: ...
    @property
    def time(self) -> float:
        """From when on it holds [s]."""
    @property
    def cover(self) -> Cover:
        """What lies on the free surface."""
    @property
    def jacket_limit(self) -> float:
        """The jacket heats while it is colder than this [K]."""
    def replace(self, **members: Unpack[_TimedSettingMembers]) -> TimedSetting:
        """A copy with the given members changed; raises UnknownName or TypeError."""

class _RunPlanMembers(TypedDict, total=False):
    signals: DriveSignals
    pours: Sequence[TimedAddition]
    settings: Sequence[TimedSetting]
    surroundings: Surroundings
    start: Start
    output_times: _Numbers

class RunPlan(_Record):
    """What drives the model through a logged run."""

    def __init__(self, **members: Unpack[_RunPlanMembers]) -> None: ...
    @property
    def signals(self) -> DriveSignals:
        """What the heaters and the agitator did."""
    @property
    def pours(self) -> list[TimedAddition]:
        """What was poured when."""
    @property
    def settings(self) -> list[TimedSetting]:
        """Covers and jacket limits over time."""
    @property
    def surroundings(self) -> Surroundings:
        """The room around the kettle."""
    @property
    def start(self) -> Start:
        """Temperatures at the start [K]."""
    @property
    def output_times(self) -> list[float]:
        """When the sensors are read, rising [s]."""
    def replace(self, **members: Unpack[_RunPlanMembers]) -> RunPlan:
        """A copy with the given members changed; raises UnknownName or TypeError."""

class _ObservedMembers(TypedDict, total=False):
    plan: int
    floor_reading: _Numbers
    probe_reading: _Numbers
    weight: float

class Observed(_Record):
    """What a run showed at the output times of its plan."""

    def __init__(self, **members: Unpack[_ObservedMembers]) -> None: ...
    @property
    def plan(self) -> int:
        """Index into the plans."""
    @property
    def floor_reading(self) -> list[float]:
        """Of the floor sensor [K]; empty: not logged."""
    @property
    def probe_reading(self) -> list[float]:
        """Of the probe [K]."""
    @property
    def weight(self) -> float:
        """Each reading counts as so many independent ones [-]."""
    def replace(self, **members: Unpack[_ObservedMembers]) -> Observed:
        """A copy with the given members changed."""

class _FitSettingsMembers(TypedDict, total=False):
    names: Sequence[str]
    start: Coefficients
    floor_error: float
    probe_error: float
    loss: Loss
    max_evaluations: int
    tolerance: float

class FitSettings(_Record):
    """What to fit, from where, and how residuals count."""

    def __init__(self, **members: Unpack[_FitSettingsMembers]) -> None: ...
    @property
    def names(self) -> list[str]:
        """Coefficients to fit, in this order."""
    @property
    def start(self) -> Coefficients:
        """All coefficients; those not fitted stay as they are."""
    @property
    def floor_error(self) -> float:
        """Residual of the floor sensor that counts as one [K]."""
    @property
    def probe_error(self) -> float:
        """Residual of the probe that counts as one [K]."""
    @property
    def loss(self) -> Loss:
        """How a squared residual counts."""
    @property
    def max_evaluations(self) -> int:
        """Of the residuals outside of Jacobians [-]."""
    @property
    def tolerance(self) -> float:
        """Smallest share of cost or of the coefficients worth a step [-]."""
    def replace(self, **members: Unpack[_FitSettingsMembers]) -> FitSettings:
        """A copy with the given members changed."""

class CoefficientCard:
    """What is known about a coefficient before a kettle is fitted."""

    @property
    def name(self) -> str:
        """Name, "node.quantity"."""
    @property
    def unit(self) -> str:
        """Unit of all numbers of the card."""
    @property
    def value(self) -> float:
        """Default."""
    @property
    def lower(self) -> float:
        """Lower bound."""
    @property
    def upper(self) -> float:
        """Upper bound."""
    @property
    def spread(self) -> float:
        """Prior standard deviation; of the logarithm if `positive`."""
    @property
    def positive(self) -> bool:
        """Whether it is a scale or rate, fitted on a logarithmic scale."""
    @property
    def meaning(self) -> str:
        """What it stands for."""
    @property
    def source(self) -> str:
        """Where default and spread come from."""

class Coefficients:
    """One value per coefficient, in the unit of its card."""

    __hash__: ClassVar[None]  # type: ignore[assignment]
    @overload
    def __init__(self) -> None:
        """Defaults of all cards."""
    @overload
    def __init__(self, values: dict[str, float]) -> None:
        """Defaults, changed where a value is given by name."""
    def __getitem__(self, name: str) -> float:
        """Value of a coefficient; raises UnknownName."""
    def replace(self, values: dict[str, float]) -> Coefficients:
        """A copy with values changed by name; raises UnknownName or InvalidArgument."""
    def to_dict(self) -> dict[str, float]:
        """Values by name."""
    def __eq__(self, other: object, /) -> bool: ...
    def __getstate__(self) -> dict[str, float]: ...
    def __setstate__(self, state: dict[str, float], /) -> None: ...

class ForecastResult:
    """Result of a forecast; owns its arrays."""

    @property
    def phases(self) -> list[PhaseReport]:
        """What happened in each phase."""
    @property
    def balance(self) -> Balance:
        """Heat and mass books of the run."""
    @property
    def duration(self) -> float:
        """Of the whole run [s]."""
    @property
    def product_mass(self) -> float:
        """At the end [kg]."""
    @property
    def steps(self) -> int:
        """Of the integrator [-]."""
    @property
    def trace_names(self) -> list[str]:
        """Names of the columns of the trace, "node.quantity"; the first is "time"."""
    @property
    def trace(self) -> _Array:
        """Signals over time, shape (rows, columns), SI units; read-only."""

class Replay:
    """What the sensors of the model show at the output times of a plan."""

    @property
    def floor_reading(self) -> _Array:
        """Of the floor sensor [K]; read-only."""
    @property
    def probe_reading(self) -> _Array:
        """Of the probe [K]; read-only."""
    @property
    def evaporated(self) -> _Array:
        """Water that left since the start [kg]; read-only."""
    @property
    def balance(self) -> Balance:
        """Heat and mass books of the run."""

class MapFit:
    """Where a fit ended; scaled coefficients are distances from the defaults in prior spreads."""

    @property
    def coefficients(self) -> Coefficients:
        """Best found."""
    @property
    def scaled(self) -> _Array:
        """The fitted ones, scaled, shape (n,); read-only."""
    @property
    def residuals(self) -> _Array:
        """Weighted, of the data: floor then probe of each run, shape (m,); read-only."""
    @property
    def jacobian(self) -> _Array:
        """Of these by the scaled coefficients, shape (m, n); read-only."""
    @property
    def replays(self) -> list[Replay]:
        """Of each observed run, with the best coefficients."""
    @property
    def cost(self) -> float:
        """Half the sum of the losses of data and priors [-]."""
    @property
    def evaluations(self) -> int:
        """Of the residuals outside of Jacobians [-]."""
    @property
    def converged(self) -> bool:
        """Whether a tolerance was met."""
    @property
    def message(self) -> str:
        """Why the search ended."""

@overload
def check(food: Food) -> None:
    """Raises InvalidArgument if the fractions of a food do not add up to 1."""

@overload
def check(recipe: Recipe) -> None:
    """Raises InvalidArgument, naming phase and key, if the recipe cannot be run."""

@overload
def check(kettle: Kettle) -> None:
    """Raises InvalidArgument, naming the key, if the kettle cannot exist."""

def coefficient_cards() -> list[CoefficientCard]:
    """Cards of all coefficients."""

def loaded_after(phase: Phase) -> float:
    """End of the last pour, from the start of the phase [s]."""

def usable_volume(kettle: Kettle) -> float:
    """Usable volume [m3]."""

def simulate(
    kettle: Kettle,
    coefficients: Coefficients,
    *,
    recipe: Recipe,
    start: Start,
    options: Options = ...,
) -> ForecastResult:
    """Runs a recipe in closed loop. Raises InvalidArgument or IntegrationFailure."""

def simulate_many(
    kettle: Kettle,
    coefficients: Sequence[Coefficients],
    *,
    recipe: Recipe,
    start: Start,
    options: Options = ...,
    threads: int = 0,
) -> list[ForecastResult]:
    """Forecasts one recipe with many sets of coefficients; threads 0: one per core."""

def replay(
    kettle: Kettle,
    coefficients: Coefficients,
    *,
    plan: RunPlan,
    options: Options = ...,
) -> Replay:
    """Runs the model with logged heat, jacket, agitator, lid and pours."""

def replay_many(
    kettle: Kettle,
    plans: Sequence[RunPlan],
    *,
    tasks: Sequence[tuple[int, Coefficients]],
    options: Options = ...,
    threads: int = 0,
) -> list[Replay]:
    """Replays (plan index, Coefficients) pairs; threads 0: one per core. Ctrl-C stops it."""

def to_scaled(coefficients: Coefficients, names: Sequence[str]) -> list[float]:
    """Distances from the defaults in prior spreads, of the logarithm for scales."""

def from_scaled(
    base: Coefficients, names: Sequence[str], *, point: Sequence[float]
) -> Coefficients:
    """A copy with scaled values set, moved into the bounds."""

def scaled_slopes(coefficients: Coefficients, names: Sequence[str]) -> list[float]:
    """Change of each value per change of its scaled value."""

def map_fit(
    kettle: Kettle,
    plans: Sequence[RunPlan],
    *,
    observed: Sequence[Observed],
    settings: FitSettings,
    options: Options = ...,
) -> MapFit:
    """Fits coefficients to observed runs on several threads; Ctrl-C stops it."""

class _OfTemperature(Protocol):
    """A property at a temperature [K]: a number for a number, an array for an array."""

    @overload
    def __call__(self, temperature: float) -> float: ...
    @overload
    def __call__(self, temperature: _Numbers) -> _Array: ...

class _OfPressure(Protocol):
    """A property at a pressure [Pa]: a number for a number, an array for an array."""

    @overload
    def __call__(self, pressure: float) -> float: ...
    @overload
    def __call__(self, pressure: _Numbers) -> _Array: ...

class _OfAltitude(Protocol):
    """A property at an altitude [m]: a number for a number, an array for an array."""

    @overload
    def __call__(self, altitude: float) -> float: ...
    @overload
    def __call__(self, altitude: _Numbers) -> _Array: ...

class _OfFood(Protocol):
    """A property of a food at a temperature [K]."""

    def __call__(self, food: Food, temperature: float) -> float: ...

class _Water(ModuleType):
    """Saturated liquid water, 273 to 433 K."""

    saturation_pressure: _OfTemperature
    """[Pa]"""
    specific_heat: _OfTemperature
    """[J/(kg K)]"""
    specific_enthalpy: _OfTemperature
    """[J/kg], 0 at 273.15 K"""
    density: _OfTemperature
    """[kg/m3]"""
    conductivity: _OfTemperature
    """[W/(m K)]"""
    viscosity: _OfTemperature
    """[Pa s]"""
    expansivity: _OfTemperature
    """[1/K]"""
    latent_heat: _OfTemperature
    """[J/kg]"""
    surface_tension: _OfTemperature
    """[N/m]"""
    vapour_density: _OfTemperature
    """[kg/m3]"""
    saturation_temperature: _OfPressure
    """[K] at a pressure [Pa]"""

class _Oil(ModuleType):
    """A mean cooking oil, 278 to 473 K."""

    density: _OfTemperature
    """[kg/m3]"""
    specific_heat: _OfTemperature
    """[J/(kg K)]"""
    specific_enthalpy: _OfTemperature
    """[J/kg], 0 at 273.15 K"""
    conductivity: _OfTemperature
    """[W/(m K)]"""
    viscosity: _OfTemperature
    """[Pa s]"""
    expansivity: _OfTemperature
    """[1/K]"""

class _Foods(ModuleType):
    """Foods from their composition."""

    specific_heat: _OfFood
    """Unfrozen [J/(kg K)]."""
    density: _OfFood
    """Unfrozen [kg/m3]."""
    conductivity: _OfFood
    """Unfrozen [W/(m K)]."""
    specific_enthalpy: _OfFood
    """Freezing included [J/kg]; 0 unfrozen at 273.15 K."""
    ice_fraction: _OfFood
    """Ice per mass of food [kg/kg]."""

class _Properties(ModuleType):
    """Material properties in SI units."""

    water: _Water
    oil: _Oil
    foods: _Foods
    pressure_at_altitude: _OfAltitude
    """US Standard Atmosphere 1976 [Pa] at an altitude [m]."""

properties: _Properties
"""Material properties in SI units."""

class _Conduction(ModuleType):
    """Transient conduction in slab, cylinder and sphere."""

    @staticmethod
    def biot_number(film: float, length: float, conductivity: float) -> float:
        """h L / k [-] of a film [W/(m2 K)], half thickness or radius [m], conductivity [W/(m
        K)]."""

    @staticmethod
    def fourier_number(diffusivity: float, time: float, length: float) -> float:
        """a t / L^2 [-] of a diffusivity [m2/s], a time [s], half thickness or radius [m]."""

    @staticmethod
    def fourier_time(fourier: float, diffusivity: float, length: float) -> float:
        """Time [s] of a Fourier number [-], diffusivity [m2/s], half thickness or radius [m]."""

    @staticmethod
    def surface_per_volume(shape: Shape, size: float) -> float:
        """[1/m] of a thickness or diameter [m]."""

    @staticmethod
    def lumped_change(
        film: float, surface_per_volume: float, heat_capacity: float, time: float
    ) -> float:
        """Change left of an even body [-]: film [W/(m2 K)], [1/m], rho cp [J/(m3 K)], time [s]."""

    @staticmethod
    def eigenvalue(shape: Shape, biot: float, number: int = 1) -> float:
        """Root lambda_n [-], the first by default. Carslaw & Jaeger (1959), 3.11, 7.7, 9.4."""

    @staticmethod
    def amplitude(shape: Shape, biot: float, number: int = 1) -> float:
        """Amplitude A_n [-], the first by default. Carslaw & Jaeger (1959), 3.11, 7.7, 9.4."""

    @staticmethod
    def cooling_time_factor(shape: Shape, biot: float) -> float:
        """f a / L^2 [-] by Lacroix & Castaigne. ASHRAE Refrigeration, Cooling and Freezing
        Times."""

    @staticmethod
    def cooling_lag_factor(shape: Shape, biot: float) -> float:
        """j of the centre [-] by Lacroix & Castaigne. ASHRAE Refrigeration, Cooling and Freezing
        Times."""

    @staticmethod
    def remaining_change(shape: Shape, biot: float, fourier: float, position: float) -> float:
        """(Tf - T)/(Tf - T0) [-] at a position, 0 centre, 1 surface, by the series. Carslaw &
        Jaeger (1959)."""

    @staticmethod
    def one_term_change(shape: Shape, biot: float, fourier: float, position: float) -> float:
        """Change left [-] by the first term alone, for Fo > 0.2. Carslaw & Jaeger (1959)."""

    @staticmethod
    def fourier_to_reach(shape: Shape, biot: float, change: float, position: float) -> float:
        """Fourier number [-] at which that change is left at a position, by the series."""

    @staticmethod
    def one_term_fourier(shape: Shape, biot: float, change: float, position: float) -> float:
        """Fourier number [-] at which the first term alone leaves that change."""

    @staticmethod
    def mean_remaining_change(shape: Shape, biot: float, fourier: float) -> float:
        """Mean change left over the volume [-], by the series. Carslaw & Jaeger (1959)."""

    @staticmethod
    def mean_fourier_to_reach(shape: Shape, biot: float, change: float) -> float:
        """Fourier number [-] at which that mean change is left, by the series."""

    @staticmethod
    def diffusion_depth(depth: float, diffusivity: float, time: float) -> float:
        """x / (2 sqrt(a t)) [-] of a depth [m], diffusivity [m2/s], time [s]."""

    @staticmethod
    def semi_infinite_fixed_surface(depth: float) -> float:
        """Share of the change of the surface [-] at a diffusion depth [-]. Carslaw & Jaeger 2.5."""

    @staticmethod
    def semi_infinite_film(depth: float, film: float) -> float:
        """Share of the change of a fluid [-] at a diffusion depth [-] and h sqrt(a t)/k [-].
        Carslaw & Jaeger 2.7."""

    @staticmethod
    def semi_infinite_depth(share: float) -> float:
        """Diffusion depth [-] that a share of the change of a fixed surface has reached. Carslaw &
        Jaeger 2.5."""

    @staticmethod
    def semi_infinite_flux(
        difference: float, conductivity: float, diffusivity: float, time: float
    ) -> float:
        """Flux [W/m2] into a surface held a difference [K] above. Carslaw & Jaeger 2.5."""

    @staticmethod
    def semi_infinite_heat(
        difference: float, conductivity: float, diffusivity: float, time: float
    ) -> float:
        """Heat [J/m2] since a surface was held a difference [K] above. Carslaw & Jaeger 2.5."""

    @staticmethod
    def semi_infinite_flux_rise(
        flux: float, depth: float, conductivity: float, diffusivity: float, time: float
    ) -> float:
        """Rise [K] at a depth [m] under a constant flux [W/m2]. Carslaw & Jaeger 2.9."""

class _Freezing(ModuleType):
    """Times in which pieces freeze or thaw."""

    @staticmethod
    def film_through_package(film: float, thickness: float, conductivity: float) -> float:
        """Film coefficient [W/(m2 K)] seen through a package [m], [W/(m K)]; resistances in
        series."""

    @staticmethod
    def plank_time(
        shape: Shape, size: float, film: float, conductivity: float, heat: float, difference: float
    ) -> float:
        """Time [s]: size [m], film [W/(m2 K)], conductivity [W/(m K)], latent heat [J/m3],
        difference [K]. Plank (1913)."""

    @staticmethod
    def cleland_earle_factors(
        shape: Shape, plank: float, stefan: float, biot: float
    ) -> tuple[float, float]:
        """P and R [-] from Pk, Ste and Bi = h D / k [-]. Freezing to -10 degC. Cleland & Earle
        (1977, 1979), in ASHRAE Refrigeration."""

    @staticmethod
    def cleland_earle_time(
        shape: Shape,
        size: float,
        film: float,
        conductivity: float,
        heat: float,
        difference: float,
        plank: float,
        stefan: float,
    ) -> float:
        """Time [s]: size [m], film [W/(m2 K)], conductivity [W/(m K)], heat [J/m3], difference [K],
        Pk and Ste [-]. Freezing to -10 degC. Cleland & Earle (1977, 1979), in ASHRAE
        Refrigeration."""

    @staticmethod
    def thawing_factors(
        shape: Shape, plank: float, stefan: float, biot: float
    ) -> tuple[float, float]:
        """P and R [-] from Pk, Ste and Bi = h D / k [-]. Thawing to 0 degC. Cleland et al. (1987),
        from memory."""

    @staticmethod
    def thawing_time(
        shape: Shape,
        size: float,
        film: float,
        conductivity: float,
        heat: float,
        difference: float,
        plank: float,
        stefan: float,
    ) -> float:
        """Time [s]: size [m], film [W/(m2 K)], conductivity [W/(m K)], heat [J/m3], difference [K],
        Pk and Ste [-]. Thawing to 0 degC. Cleland et al. (1987), from memory."""

    @staticmethod
    def pham_time(
        shape: Shape,
        size: float,
        film: float,
        conductivity: float,
        unfrozen: float,
        frozen: float,
        latent: float,
        initial: float,
        final_centre: float,
        surroundings: float,
    ) -> float:
        """Time to freeze [s]: size [m], film [W/(m2 K)], conductivity frozen [W/(m K)], rho cp
        unfrozen and frozen [J/(m3 K)], latent heat [J/m3], temperatures [K]. Pham (1986), from
        memory."""

class _Pieces(ModuleType):
    """Spreads of piece sizes."""

    @staticmethod
    def lognormal_size_classes(mean_size: float, variation: float) -> list[tuple[float, float]]:
        """Sizes [m] and mass shares [-] for a lognormal spread by mass, variation 0 to 1 [-]."""

    @staticmethod
    def normal_size_classes(mean_size: float, variation: float) -> list[tuple[float, float]]:
        """Sizes [m] and mass shares [-] for a normal spread by mass, variation 0 to 0.3 [-]."""

class _Transfer(ModuleType):
    """Heat transfer correlations in SI units."""

    conduction: _Conduction
    freezing: _Freezing
    pieces: _Pieces

transfer: _Transfer
"""Heat transfer correlations in SI units."""
