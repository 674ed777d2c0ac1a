"""Types of the compiled part of kettlecast; use the package, not this module."""

import enum
from collections.abc import Sequence
from types import ModuleType
from typing import Any, ClassVar, Protocol, TypedDict, Unpack, overload

import numpy as np
from numpy.typing import NDArray

_Array = NDArray[np.float64]
_Numbers = Sequence[float] | NDArray[Any]

__version__: str

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
    """What the heat is regulated on."""

    none = 0
    floor = 1
    probe = 2
    difference = 3
    core = 4

class EndKind(enum.Enum):
    """When a phase is over."""

    held = 0
    elapsed = 1
    above = 2
    below = 3
    mass_lost = 4
    share_lost = 5

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

class FloorShape(enum.Enum):
    """Floor under the straight wall."""

    flat = 0
    dished = 1
    hemispherical = 2

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

class JacketUse(enum.Enum):
    """What the jacket does in a phase."""

    off = 0
    heat = 1
    cool = 2

class JacketKind(enum.Enum):
    """What heats the jacket."""

    electric = 0
    steam = 1
    liquid = 2

class LeverKind(enum.Enum):
    """Kinds of inputs of a run."""

    coefficient = 0
    addition_delay = 1
    addition_temperature = 2
    addition_mass = 3
    start = 4
    set_point = 5

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
    sugar: float
    salt: float
    consistency: Consistency
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
    def sugar(self) -> float:
        """Dissolved sugar, part of the carbohydrate [kg/kg]."""
    @property
    def salt(self) -> float:
        """Dissolved sodium chloride, part of the ash [kg/kg]."""
    @property
    def consistency(self) -> Consistency:
        """Of a thick liquid."""
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
    size_spread: float
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
    def size_spread(self) -> float:
        """Standard deviation of the sizes over their mean [-]."""
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
    reversing: bool

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
    @property
    def reversing(self) -> bool:
        """The other way round in every second cycle."""
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
    jacket: JacketUse
    jacket_share: float
    jacket_limit: float
    jacket_cool_limit: float
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
        """Highest share of the controlled power used [-]."""
    @property
    def floor_limit(self) -> float:
        """Ceiling for the floor reading [K]."""
    @property
    def difference_limit(self) -> float:
        """Ceiling for floor reading less probe reading [K]."""
    @property
    def jacket(self) -> JacketUse:
        """Jacket in use."""
    @property
    def jacket_share(self) -> float:
        """Share of the jacket power in use, its level [-]."""
    @property
    def jacket_limit(self) -> float:
        """The jacket heats while it is colder than this [K]."""
    @property
    def jacket_cool_limit(self) -> float:
        """The jacket cools while it is warmer than this [K]."""
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

class _JacketMembers(TypedDict, total=False):
    kind: JacketKind
    power: float
    height: float
    under_floor: bool
    gap: float
    steam_pressure: float
    air_share: float
    heating: JacketFlow
    cooling: JacketFlow

class Jacket(_Record):
    """The jacket of a kettle and what feeds it."""

    def __init__(self, **members: Unpack[_JacketMembers]) -> None: ...
    @property
    def kind(self) -> JacketKind:
        """Kind."""
    @property
    def power(self) -> float:
        """Of its elements, or the most that the steam supply gives [W]."""
    @property
    def height(self) -> float:
        """Of the jacketed part of the straight wall [m]."""
    @property
    def under_floor(self) -> bool:
        """The jacket also lies under the floor."""
    @property
    def gap(self) -> float:
        """Between wall and outer shell, where liquid flows [m]."""
    @property
    def steam_pressure(self) -> float:
        """Above that of the room [Pa]."""
    @property
    def air_share(self) -> float:
        """Air left in the steam, by volume [-]."""
    @property
    def heating(self) -> JacketFlow:
        """Hot liquid, for kind `liquid`."""
    @property
    def cooling(self) -> JacketFlow:
        """Cold liquid, for a jacket of any kind that can cool."""
    def replace(self, **members: Unpack[_JacketMembers]) -> Jacket:
        """A copy with the given members changed; raises UnknownName or TypeError."""

class _WettingMembers(TypedDict, total=False):
    level: float
    floor_area: float
    wall_area: float
    surface_area: float
    wall_area_per_volume: float

class Wetting(_Record):
    """What a volume of product wets."""

    def __init__(self, **members: Unpack[_WettingMembers]) -> None: ...
    @property
    def level(self) -> float:
        """Of the surface on the axis, from the floor's centre; below 0: the centre is dry [m]."""
    @property
    def floor_area(self) -> float:
        """Wetted [m2]."""
    @property
    def wall_area(self) -> float:
        """Wetted, of the straight wall [m2]."""
    @property
    def surface_area(self) -> float:
        """Free surface [m2]."""
    @property
    def wall_area_per_volume(self) -> float:
        """Change of the wetted wall per change of volume [1/m]."""
    def replace(self, **members: Unpack[_WettingMembers]) -> Wetting:
        """A copy with the given members changed; raises UnknownName or TypeError."""

class _ConsistencyMembers(TypedDict, total=False):
    consistency: float
    flow_index: float
    reference_temperature: float
    activation_energy: float
    reference_solids: float
    solids_exponent: float
    thickens_from: float
    thickens_until: float
    thickening_factor: float
    thickening_rate: float
    source: str

class Consistency(_Record):
    """How thick a liquid is, and how it thickens; the default is like water."""

    def __init__(self, **members: Unpack[_ConsistencyMembers]) -> None: ...
    @property
    def consistency(self) -> float:
        """K of the power law; 0: like water [Pa s^n]."""
    @property
    def flow_index(self) -> float:
        """n of the power law [-]."""
    @property
    def reference_temperature(self) -> float:
        """At which K holds [K]."""
    @property
    def activation_energy(self) -> float:
        """Of its fall with temperature [J/mol]."""
    @property
    def reference_solids(self) -> float:
        """Dry share at which K holds [kg/kg]."""
    @property
    def solids_exponent(self) -> float:
        """Rise of ln K per dry share [-]."""
    @property
    def thickens_from(self) -> float:
        """Below it nothing thickens [K]."""
    @property
    def thickens_until(self) -> float:
        """From it on it thickens at full rate [K]."""
    @property
    def thickening_factor(self) -> float:
        """K is so many times higher when fully thickened [-]."""
    @property
    def thickening_rate(self) -> float:
        """Share of the rest that thickens per time, at full rate [1/s]."""
    @property
    def source(self) -> str:
        """Where the numbers come from."""
    def replace(self, **members: Unpack[_ConsistencyMembers]) -> Consistency:
        """A copy with the given members changed; raises UnknownName or TypeError."""

class _KettleMembers(TypedDict, total=False):
    name: str
    diameter: float
    height: float
    floor_shape: FloorShape
    floor_depth: float
    tilt: float
    working_volume: float
    floor_power: float
    floor_thickness: float
    floor_metal: MetalKind
    jacket: Jacket
    wall_thickness: float
    wall_metal: MetalKind
    agitator: AgitatorKind
    agitator_diameter: float
    agitator_height: float
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
        """Of the straight wall, inside [m]."""
    @property
    def floor_shape(self) -> FloorShape:
        """Floor shape."""
    @property
    def floor_depth(self) -> float:
        """Of a dished floor [m]; 0: 0.1935 of the diameter."""
    @property
    def tilt(self) -> float:
        """Of the axis from the vertical [rad]."""
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
    def jacket(self) -> Jacket:
        """Jacket."""
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
    def agitator_height(self) -> float:
        """Of what product must cover, above the floor [m]."""
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
    as_read: bool

class Start(_Record):
    """Temperatures at the start of a run [K]."""

    def __init__(self, **members: Unpack[_StartMembers]) -> None: ...
    @property
    def floor(self) -> float:
        """Of the floor and its elements [K]."""
    @property
    def wall(self) -> float:
        """Of wall, jacket and agitator [K]."""
    @property
    def as_read(self) -> bool:
        """Both are readings, with the offsets of floor sensor and probe in them."""
    def replace(self, **members: Unpack[_StartMembers]) -> Start:
        """A copy with the given members changed; raises UnknownName or TypeError."""

class _BalanceMembers(TypedDict, total=False):
    heater_energy: float
    stirring_energy: float
    poured_energy: float
    cooling_energy: float
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
    def stirring_energy(self) -> float:
        """Work of the agitator [J]."""
    @property
    def poured_energy(self) -> float:
        """Enthalpy of what was poured, liquid water at 0 degC is 0 [J]."""
    @property
    def cooling_energy(self) -> float:
        """Taken away by a cooling jacket [J]."""
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
    cooling: float
    cool_limit: float

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
    @property
    def cooling(self) -> float:
        """Share of the cold flow of the jacket [-]."""
    @property
    def cool_limit(self) -> float:
        """The jacket cools while it is warmer than this [K]."""
    def replace(self, **members: Unpack[_TimedSettingMembers]) -> TimedSetting:
        """A copy with the given members changed; raises UnknownName or TypeError."""

class _RunPlanMembers(TypedDict, total=False):
    signals: DriveSignals
    pours: Sequence[TimedAddition]
    settings: Sequence[TimedSetting]
    surroundings: Surroundings
    start: Start
    output_times: _Numbers
    closed_loop: Sequence[Phase]

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
    @property
    def closed_loop(self) -> list[Phase]:
        """In closed loop: the phases, from the time 0 on; signals, pours and settings are then
        not used."""
    def replace(self, **members: Unpack[_RunPlanMembers]) -> RunPlan:
        """A copy with the given members changed; raises UnknownName or TypeError."""

class _ObservedMembers(TypedDict, total=False):
    plan: int
    floor_reading: _Numbers
    probe_reading: _Numbers
    floor_weight: float
    probe_weight: float

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
    def floor_weight(self) -> float:
        """Each reading counts as so many independent ones [-]."""
    @property
    def probe_weight(self) -> float:
        """Probe weight."""
    def replace(self, **members: Unpack[_ObservedMembers]) -> Observed:
        """A copy with the given members changed; raises UnknownName or TypeError."""

class _FitSettingsMembers(TypedDict, total=False):
    names: Sequence[str]
    per_run: Sequence[str]
    start: Coefficients
    floor_error: float
    probe_error: float
    loss: Loss
    max_evaluations: int
    tolerance: float
    damping: float
    starts: int
    seed: int

class FitSettings(_Record):
    """What to fit and how residuals count."""

    def __init__(self, **members: Unpack[_FitSettingsMembers]) -> None: ...
    @property
    def names(self) -> list[str]:
        """Coefficients to fit, in this order."""
    @property
    def per_run(self) -> list[str]:
        """Of those with a value of its own in every run."""
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
    @property
    def damping(self) -> float:
        """Of the first step, per squared prior spread; less near the best [-]."""
    @property
    def starts(self) -> int:
        """Searches: the first from `start`, the others from within the priors [-]."""
    @property
    def seed(self) -> int:
        """Of the starts within the priors."""
    def replace(self, **members: Unpack[_FitSettingsMembers]) -> FitSettings:
        """A copy with the given members changed; raises UnknownName or TypeError."""

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
    @property
    def of_run(self) -> bool:
        """Of one batch, not of the kettle: hands, room and scales of a day."""

class _JacketFlowMembers(TypedDict, total=False):
    flow: float
    inlet_temperature: float
    glycol: float

class JacketFlow(_Record):
    """A liquid that flows through the jacket."""

    def __init__(self, **members: Unpack[_JacketFlowMembers]) -> None: ...
    @property
    def flow(self) -> float:
        """[kg/s]; 0: there is none."""
    @property
    def inlet_temperature(self) -> float:
        """[K]."""
    @property
    def glycol(self) -> float:
        """Mass share of propylene glycol [-]."""
    def replace(self, **members: Unpack[_JacketFlowMembers]) -> JacketFlow:
        """A copy with the given members changed; raises UnknownName or TypeError."""

class _VesselShapeMembers(TypedDict, total=False):
    floor: FloorShape
    diameter: float
    wall_height: float
    floor_depth: float
    tilt: float

class VesselShape(_Record):
    """A cylinder over a floor, upright or tilted."""

    def __init__(self, **members: Unpack[_VesselShapeMembers]) -> None: ...
    @property
    def floor(self) -> FloorShape:
        """Floor."""
    @property
    def diameter(self) -> float:
        """Inner diameter of the straight wall [m]."""
    @property
    def wall_height(self) -> float:
        """Of the straight wall, from the rim of the floor to the lip [m]."""
    @property
    def floor_depth(self) -> float:
        """Of a dished floor on the axis; 0: 0.1935 of the diameter [m]."""
    @property
    def tilt(self) -> float:
        """Of the axis from the vertical [rad]."""
    def replace(self, **members: Unpack[_VesselShapeMembers]) -> VesselShape:
        """A copy with the given members changed; raises UnknownName or TypeError."""

class _LeverMembers(TypedDict, total=False):
    kind: LeverKind
    index: int

class Lever(_Record):
    """One input that results are differentiated by."""

    def __init__(self, **members: Unpack[_LeverMembers]) -> None: ...
    @property
    def kind(self) -> LeverKind:
        """Kind."""
    @property
    def index(self) -> int:
        """Index."""
    def replace(self, **members: Unpack[_LeverMembers]) -> Lever:
        """A copy with the given members changed; raises UnknownName or TypeError."""

class _PhaseSlopesMembers(TypedDict, total=False):
    start: _Numbers
    duration: _Numbers
    time_to_reach: _Numbers
    peak: _Numbers
    peak_reading: _Numbers
    overshoot: _Numbers
    overshoot_reading: _Numbers
    evaporated: _Numbers
    energy: _Numbers

class PhaseSlopes(_Record):
    """Slopes of what a phase reports, by lever."""

    def __init__(self, **members: Unpack[_PhaseSlopesMembers]) -> None: ...
    @property
    def start(self) -> list[float]:
        """Start."""
    @property
    def duration(self) -> list[float]:
        """Duration."""
    @property
    def time_to_reach(self) -> list[float]:
        """Time to reach."""
    @property
    def peak(self) -> list[float]:
        """Peak."""
    @property
    def peak_reading(self) -> list[float]:
        """Peak reading."""
    @property
    def overshoot(self) -> list[float]:
        """Overshoot."""
    @property
    def overshoot_reading(self) -> list[float]:
        """Overshoot reading."""
    @property
    def evaporated(self) -> list[float]:
        """Evaporated."""
    @property
    def energy(self) -> list[float]:
        """Energy."""
    def replace(self, **members: Unpack[_PhaseSlopesMembers]) -> PhaseSlopes:
        """A copy with the given members changed; raises UnknownName or TypeError."""

class _ProfileSideMembers(TypedDict, total=False):
    found: bool
    unbounded: bool
    value: float
    reason: str

class ProfileSide(_Record):
    """One end of a profile interval, scaled."""

    def __init__(self, **members: Unpack[_ProfileSideMembers]) -> None: ...
    @property
    def found(self) -> bool:
        """Found."""
    @property
    def unbounded(self) -> bool:
        """Unbounded."""
    @property
    def value(self) -> float:
        """Value."""
    @property
    def reason(self) -> str:
        """In words, unless found."""
    def replace(self, **members: Unpack[_ProfileSideMembers]) -> ProfileSide:
        """A copy with the given members changed; raises UnknownName or TypeError."""

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

class _ForecastTaskMembers(TypedDict, total=False):
    kettle: Kettle
    coefficients: Coefficients
    recipe: Recipe
    start: Start

class ForecastTask(_Record):
    """One forecast of an ensemble."""

    def __init__(self, **members: Unpack[_ForecastTaskMembers]) -> None: ...
    @property
    def kettle(self) -> Kettle:
        """With controller and surroundings."""
    @property
    def coefficients(self) -> Coefficients:
        """Of this kettle."""
    @property
    def recipe(self) -> Recipe:
        """Phases, run one after the other."""
    @property
    def start(self) -> Start:
        """Temperatures at the start."""
    def replace(self, **members: Unpack[_ForecastTaskMembers]) -> ForecastTask:
        """A copy with the given members changed; raises UnknownName or TypeError."""

class _EnsembleMemberMembers(TypedDict, total=False):
    phases: Sequence[PhaseReport]
    failure: str

class EnsembleMember(_Record):
    """What became of one of an ensemble."""

    def __init__(self, **members: Unpack[_EnsembleMemberMembers]) -> None: ...
    @property
    def phases(self) -> list[PhaseReport]:
        """None if it could not be run."""
    @property
    def failure(self) -> str:
        """Why it could not be run; empty if it was."""
    def replace(self, **members: Unpack[_EnsembleMemberMembers]) -> EnsembleMember:
        """A copy with the given members changed; raises UnknownName or TypeError."""

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

class ProfileOfFit:
    """A profile interval of a scaled coefficient and its points, from low to high."""

    @property
    def lower(self) -> ProfileSide:
        """Lower end."""
    @property
    def upper(self) -> ProfileSide:
        """Upper end."""
    @property
    def values(self) -> _Array:
        """Scaled coefficient, shape (n,); read-only."""
    @property
    def rises(self) -> _Array:
        """Rise of the cost above its minimum, shape (n,); read-only."""

class ReplaySlopes:
    """A replay with slopes of its readings, shape (output times, levers)."""

    @property
    def replay(self) -> Replay:
        """The readings."""
    @property
    def floor_reading(self) -> _Array:
        """Slopes of the floor sensor [K per unit of the lever]; read-only."""
    @property
    def probe_reading(self) -> _Array:
        """Slopes of the probe [K per unit of the lever]; read-only."""
    @property
    def evaporated(self) -> _Array:
        """Slopes of the water that left [kg per unit of the lever]; read-only."""

class ForecastSlopes:
    """A forecast without its trace, with slopes."""

    @property
    def phases(self) -> list[PhaseReport]:
        """What happened in each phase."""
    @property
    def slopes(self) -> list[PhaseSlopes]:
        """Slopes of it."""
    @property
    def duration(self) -> _Array:
        """Slopes of the time of the whole run, shape (levers,) [s per unit]; read-only."""
    @property
    def product_mass(self) -> _Array:
        """Slopes of the product at the end, shape (levers,) [kg per unit]; read-only."""

class MapFit:
    """Where a fit ended; scaled coefficients are distances from the defaults in prior spreads."""

    @property
    def of_runs(self) -> list[Coefficients]:
        """Best found, for each observed run."""
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
    @property
    def starts_at_best(self) -> int:
        """Searches that ended in the best minimum."""
    @property
    def minimum_costs(self) -> _Array:
        """Cost of each distinct minimum found, rising; read-only."""

class _InformationMembers(TypedDict, total=False):
    akaike: float
    akaike_corrected: float
    bayes: float

class Information(_Record):
    """Criteria by which models of the same data are compared."""

    def __init__(self, **members: Unpack[_InformationMembers]) -> None: ...
    @property
    def akaike(self) -> float:
        """AIC."""
    @property
    def akaike_corrected(self) -> float:
        """AICc; infinite with too few data for so many parameters."""
    @property
    def bayes(self) -> float:
        """BIC."""
    def replace(self, **members: Unpack[_InformationMembers]) -> Information:
        """A copy with the given members changed; raises UnknownName or TypeError."""

@overload
def check(food: Food) -> None:
    """Raises InvalidArgument if the fractions of a food do not add up to 1."""

@overload
def check(recipe: Recipe) -> None:
    """Raises InvalidArgument, naming phase and key, if the recipe cannot be run."""

@overload
def check(kettle: Kettle) -> None:
    """Raises InvalidArgument, naming the key, if the kettle cannot exist."""

@overload
def check(shape: VesselShape) -> None:
    """Raises InvalidArgument, naming the key, if the vessel cannot exist."""

@overload
def check(consistency: Consistency) -> None:
    """Raises InvalidArgument, naming the key, if no liquid is like this."""

def coefficient_cards() -> list[CoefficientCard]:
    """Cards of all coefficients."""

def loaded_after(phase: Phase) -> float:
    """End of the last pour, from the start of the phase [s]."""

def covering_volume(kettle: Kettle) -> float:
    """Volume of product that covers the agitator [m3]; 0 if its height is not given."""

def heats_by_jacket(kettle: Kettle) -> bool:
    """Whether the controller acts on the jacket, because there are no floor elements."""

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
    tasks: Sequence[ForecastTask], *, options: Options = ..., threads: int = 0
) -> list[EnsembleMember]:
    """Forecasts many tasks; threads 0: one per core. Ctrl-C stops it."""

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

def replay_slopes(
    kettle: Kettle,
    coefficients: Coefficients,
    *,
    plan: RunPlan,
    levers: Sequence[Lever],
    options: Options = ...,
) -> ReplaySlopes:
    """As replay, with the slopes of the readings by each lever, by dual numbers."""

def simulate_slopes(
    kettle: Kettle,
    coefficients: Coefficients,
    *,
    recipe: Recipe,
    start: Start,
    levers: Sequence[Lever],
    options: Options = ...,
) -> ForecastSlopes:
    """As simulate, with the slopes of what phases report by each lever, by dual numbers."""

def information_of(
    cost: float, *, count: float, parameters: int, estimated: bool = False
) -> Information:
    """AIC, AICc and BIC of a least-squares fit."""

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

def map_profile(
    kettle: Kettle,
    plans: Sequence[RunPlan],
    *,
    observed: Sequence[Observed],
    settings: FitSettings,
    scaled: Sequence[float],
    parameter: int,
    rise: float,
    options: Options = ...,
) -> ProfileOfFit:
    """Profile interval of one fitted coefficient; a side that is not found is told."""

def map_residuals(
    kettle: Kettle,
    plans: Sequence[RunPlan],
    *,
    observed: Sequence[Observed],
    settings: FitSettings,
    points: Sequence[Sequence[float]],
    options: Options = ...,
) -> list[list[float]]:
    """Weighted residuals of the data at several scaled points; empty where a run cannot be made."""

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

    @staticmethod
    def arrhenius_viscosity(
        reference: float, reference_temperature: float, energy: float, temperature: float
    ) -> float:
        """Viscosity from that at another temperature [Pa s] (Arrhenius; Diamante & Lan 2014)."""

    @staticmethod
    def viscosity_like(reference: float, reference_temperature: float, temperature: float) -> float:
        """Viscosity of an oil known at one temperature [Pa s], falling as that of the mean oil."""

class _Sugar(ModuleType):
    """Sucrose syrup, sugar as mass fraction [kg/kg]."""

    @staticmethod
    def water_activity(sugar: float) -> float:
        """Activity of the water near boiling [-] (Norrish 1966; Starzak & Peacock 1997)."""

    @staticmethod
    def boiling_temperature(sugar: float, pressure: float) -> float:
        """Temperature at which syrup boils [K] (activity of its water, IAPWS-IF97)."""

    @staticmethod
    def boiling_elevation(sugar: float, pressure: float) -> float:
        """How much hotter than water syrup boils [K] (activity of its water, IAPWS-IF97)."""

    @staticmethod
    def boiling_concentration(temperature: float, pressure: float) -> float:
        """Sugar in syrup that boils at a temperature [kg/kg]; inverse of boiling_temperature."""

    @staticmethod
    def saturation(temperature: float) -> float:
        """Sugar in a saturated solution [kg/kg] (Herzfeld 1892, 0-100 degC)."""

    @staticmethod
    def density(sugar: float, temperature: float) -> float:
        """Density [kg/m3] (ICUMSA 1990, 0-85 %, 0-100 degC)."""

    @staticmethod
    def relative_density(sugar: float, temperature: float) -> float:
        """Density over that of water at the same temperature [-] (ICUMSA 1990)."""

    @staticmethod
    def saturated_density(temperature: float) -> float:
        """Density of a saturated solution at its own temperature [kg/m3] (ICUMSA 1990)."""

    @staticmethod
    def baume(sugar: float) -> float:
        """Degrees Baume at 20 degC (modulus 145)."""

    @staticmethod
    def sugar_of_baume(degrees: float) -> float:
        """Sugar of syrup with a Baume degree at 20 degC [kg/kg]; inverse of baume."""

    @staticmethod
    def viscosity(sugar: float, temperature: float) -> float:
        """Dynamic viscosity [Pa s] (Genotelle 1978, 0-75 %, 0-100 degC)."""

    @staticmethod
    def specific_heat(sugar: float, temperature: float) -> float:
        """Specific heat [J/(kg K)] (Bubnik et al. 1995, 0-90 %, 0-100 degC)."""

    @staticmethod
    def solid_specific_heat(temperature: float) -> float:
        """Specific heat of solid sucrose [J/(kg K)] (Mohos 2010, 0-100 degC)."""

    @staticmethod
    def conductivity(sugar: float, temperature: float) -> float:
        """Conductivity [W/(m K)] (Riedel 1949, 0-80 %, 0-80 degC)."""

class _Salt(ModuleType):
    """Brine of NaCl, salt as mass fraction [kg/kg]."""

    @staticmethod
    def water_activity(salt: float, temperature: float) -> float:
        """Activity of the water, undissolved salt included [-] (Moller 1988)."""

    @staticmethod
    def boiling_temperature(salt: float, pressure: float) -> float:
        """Temperature at which brine boils [K] (Moller 1988, IAPWS-IF97)."""

    @staticmethod
    def boiling_elevation(salt: float, pressure: float) -> float:
        """How much hotter than water brine boils [K] (Moller 1988, IAPWS-IF97)."""

    @staticmethod
    def saturated_boiling_temperature(pressure: float) -> float:
        """Temperature at which brine boils over undissolved salt [K] (Moller 1988)."""

    @staticmethod
    def sea_salt_elevation(salinity: float, pressure: float) -> float:
        """How much hotter than water a sea-salt solution boils [K] (Sharqawy et al. 2010)."""

    @staticmethod
    def saturation(temperature: float) -> float:
        """Salt in a saturated brine [kg/kg] (Potter, Babcock & Brown 1977)."""

    @staticmethod
    def density(salt: float, temperature: float) -> float:
        """Density [kg/m3] (Laliberte 2009, 0-26.6 %, 0-140 degC)."""

    @staticmethod
    def viscosity(salt: float, temperature: float) -> float:
        """Dynamic viscosity [Pa s] (Laliberte 2009, 0-26.4 %, 5-154 degC)."""

    @staticmethod
    def specific_heat(salt: float, temperature: float) -> float:
        """Specific heat [J/(kg K)] (Laliberte 2009, 0-26.1 %, 1.5-120 degC)."""

class _Solutes(ModuleType):
    """Sugar and salt in one liquid, by mass [kg]."""

    @staticmethod
    def water_activity(water: float, sugar: float, salt: float) -> float:
        """Activity of the water [-], product of those of sugar and of salt (Ross 1975)."""

    @staticmethod
    def boiling_temperature(water: float, sugar: float, salt: float, pressure: float) -> float:
        """Temperature at which the liquid boils [K] (Ross 1975, IAPWS-IF97)."""

class _Foods(ModuleType):
    """Foods from their composition."""

    specific_heat: _OfFood
    """Unfrozen [J/(kg K)]."""
    density: _OfFood
    """Unfrozen [kg/m3]."""
    conductivity: _OfFood
    """Unfrozen, components in parallel, the most there can be [W/(m K)]."""
    series_conductivity: _OfFood
    """Unfrozen, components in series, the least there can be [W/(m K)]."""
    specific_enthalpy: _OfFood
    """Freezing included [J/kg]; 0 unfrozen at 273.15 K."""
    apparent_specific_heat: _OfFood
    """Slope of the specific enthalpy, freezing included [J/(kg K)]."""
    ice_fraction: _OfFood
    """Ice per mass of food by Miles et al. [kg/kg]."""
    tchigeov_ice_fraction: _OfFood
    """Ice per mass of food by Tchigeov (1979) [kg/kg]."""
    chen_specific_heat: _OfFood
    """Freezing included, by Chen (1985) [J/(kg K)]."""
    chen_specific_enthalpy: _OfFood
    """By Chen (1985), 0 at 233.15 K [J/kg]."""
    schwartzberg_specific_heat: _OfFood
    """Freezing included, by Schwartzberg (1976) [J/(kg K)]."""
    schwartzberg_specific_enthalpy: _OfFood
    """By Schwartzberg (1976), 0 at 233.15 K [J/kg]."""
    @staticmethod
    def latent_heat(food: Food) -> float:
        """Of all its water, as tables state it [J/kg]."""
    @staticmethod
    def heldman_singh_specific_heat(food: Food) -> float:
        """Unfrozen, at any temperature, by Heldman & Singh (1981) [J/(kg K)]."""
    @staticmethod
    def frozen_density(food: Food, temperature: float, ice_fraction: float) -> float:
        """Partly frozen [kg/m3]."""
    @staticmethod
    def frozen_conductivity(food: Food, temperature: float, ice_fraction: float) -> float:
        """Partly frozen, components in parallel [W/(m K)]."""
    @staticmethod
    def frozen_series_conductivity(food: Food, temperature: float, ice_fraction: float) -> float:
        """Partly frozen, components in series [W/(m K)]."""

class _Component(ModuleType):
    """One component; Choi & Okos (1986), -40 to 150 degC."""

    density: _OfTemperature
    """[kg/m3]"""
    specific_heat: _OfTemperature
    """[J/(kg K)]"""
    conductivity: _OfTemperature
    """[W/(m K)]"""

class _Components(ModuleType):
    """Components of food, each alone."""

    water: _Component
    supercooled_water: _Component
    ice: _Component
    protein: _Component
    fat: _Component
    carbohydrate: _Component
    fibre: _Component
    ash: _Component

class _Air(ModuleType):
    """Dry and moist air near atmospheric pressure."""

    @staticmethod
    def density(temperature: float, pressure: float) -> float:
        """Dry, ideal gas [kg/m3]."""
    @staticmethod
    def specific_heat(temperature: float) -> float:
        """Dry [J/(kg K)]; fit to Lemmon et al. (2000)."""
    @staticmethod
    def conductivity(temperature: float) -> float:
        """Dry [W/(m K)]; US Standard Atmosphere 1976."""
    @staticmethod
    def viscosity(temperature: float) -> float:
        """Dry [Pa s]; US Standard Atmosphere 1976."""
    @staticmethod
    def vapour_diffusivity(temperature: float, pressure: float) -> float:
        """Of water vapour in air [m2/s]; Marrero & Mason (1972)."""
    @staticmethod
    def moist_density(temperature: float, pressure: float, vapour_fraction: float) -> float:
        """With a mole fraction of water vapour, ideal gas [kg/m3]."""

class _WaterStates(ModuleType):
    """Water by the released IAPWS equations: reference-grade, slow."""

    @staticmethod
    def compressed_volume(temperature: float, pressure: float) -> float:
        """Of liquid water [m3/kg]; IAPWS R7-97 region 1."""
    @staticmethod
    def compressed_density(temperature: float, pressure: float) -> float:
        """Of liquid water [kg/m3]; IAPWS R7-97 region 1."""
    @staticmethod
    def compressed_enthalpy(temperature: float, pressure: float) -> float:
        """Of liquid water [J/kg]; IAPWS R7-97 region 1."""
    @staticmethod
    def compressed_specific_heat(temperature: float, pressure: float) -> float:
        """Of liquid water [J/(kg K)]; IAPWS R7-97 region 1."""
    @staticmethod
    def viscosity(density: float, temperature: float) -> float:
        """Of water and steam, no critical enhancement [Pa s]; IAPWS R12-08."""
    @staticmethod
    def conductivity(density: float, temperature: float) -> float:
        """Of water and steam, no critical enhancement [W/(m K)]; IAPWS R15-11."""
    @staticmethod
    def surface_tension(temperature: float) -> float:
        """Against steam [N/m]; IAPWS R1-76."""
    @staticmethod
    def ambient_density(temperature: float) -> float:
        """Of liquid water at 0.1 MPa [kg/m3]; IAPWS SR6-08."""
    @staticmethod
    def ambient_specific_heat(temperature: float) -> float:
        """Of liquid water at 0.1 MPa [J/(kg K)]; IAPWS SR6-08."""
    @staticmethod
    def ambient_viscosity(temperature: float) -> float:
        """Of liquid water at 0.1 MPa [Pa s]; IAPWS SR6-08."""
    @staticmethod
    def ambient_conductivity(temperature: float) -> float:
        """Of liquid water at 0.1 MPa [W/(m K)]; IAPWS SR6-08."""
    @staticmethod
    def saturation_pressure(temperature: float) -> float:
        """[Pa]; IAPWS SR1-86."""
    @staticmethod
    def saturation_pressure_slope(temperature: float) -> float:
        """dp/dT [Pa/K]; IAPWS SR1-86."""
    @staticmethod
    def saturated_liquid_density(temperature: float) -> float:
        """[kg/m3]; IAPWS SR1-86."""
    @staticmethod
    def saturated_vapour_density(temperature: float) -> float:
        """[kg/m3]; IAPWS SR1-86."""
    @staticmethod
    def saturated_liquid_enthalpy(temperature: float) -> float:
        """Zero at the triple point [J/kg]; IAPWS SR1-86."""
    @staticmethod
    def saturated_vapour_enthalpy(temperature: float) -> float:
        """On the scale of the liquid [J/kg]; IAPWS SR1-86."""

class _ConsistencyModule(ModuleType):
    """Viscosity of thick liquids."""

    @staticmethod
    def apparent_viscosity(
        consistency: Consistency,
        temperature: float,
        shear_rate: float,
        thickened: float,
        dry_share: float,
    ) -> float:
        """Viscosity [Pa s] at a temperature [K] and shear rate [1/s]; Ostwald, Arrhenius."""
    @staticmethod
    def thickening_speed(consistency: Consistency, temperature: float, thickened: float) -> float:
        """Growth of the thickened share [1/s] at a temperature [K]; first order."""
    @staticmethod
    def mixed_viscosity(viscosities: Sequence[float], masses: Sequence[float]) -> float:
        """Of liquids poured together [Pa s], mean of the logarithms by mass [kg]; Arrhenius."""

class _Vessel(ModuleType):
    """Volume, level and wetted areas of a kettle."""

    @staticmethod
    def wetting(shape: VesselShape, volume: float) -> Wetting:
        """Level [m] and wetted areas [m2] of a volume [m3]; Harris & Stocker, Gauss-Bonnet."""
    @staticmethod
    def capacity(shape: VesselShape) -> float:
        """Volume until the low side of the lip spills [m3]; same source as wetting."""
    @staticmethod
    def floor_total_area(shape: VesselShape) -> float:
        """Area of the whole floor [m2]; Archimedes."""
    @staticmethod
    def volume_at_level(shape: VesselShape, level: float) -> float:
        """Volume [m3] whose surface meets the axis at a level [m]; same source as wetting."""
    @staticmethod
    def volume_to_cover(shape: VesselShape, height: float, radius: float) -> float:
        """Volume [m3] that covers a disc of a radius [m] on the axis at a height [m]."""

class _Lethality(ModuleType):
    """Thermal death over time, for planning."""

    @staticmethod
    def lethal_rate(temperature: float, reference: float, z: float) -> float:
        """Lethal rate 10^((T - Tref)/z) [-]; Bigelow (1920)."""
    @staticmethod
    def pasteurisation_rate(temperature: float) -> float:
        """Pasteurisation units per minute, 1.393^(T/degC - 60) [1/min]."""
    @staticmethod
    def pasteurisation_z() -> float:
        """z that the pasteurisation unit stands for [K], 6.947."""
    @staticmethod
    def decimal_reduction_time(
        temperature: float, decimal_reduction: float, reference: float, z: float
    ) -> float:
        """D at a temperature from D at the reference [s]; Stumbo (1973)."""
    @staticmethod
    def z_value(
        temperature_1: float,
        decimal_reduction_1: float,
        temperature_2: float,
        decimal_reduction_2: float,
    ) -> float:
        """z from D at two temperatures [K]; Stumbo (1973)."""
    @staticmethod
    def fit_death_times(
        temperatures: Sequence[float], decimal_reductions: Sequence[float], reference: float
    ) -> tuple[float, float]:
        """D at the reference [s] and z [K] by least squares of log10 D."""
    @staticmethod
    def log_reductions(time: float, decimal_reduction: float) -> float:
        """Decimal reductions t / D [-]."""
    @staticmethod
    def hold_time(reductions: float, decimal_reduction: float) -> float:
        """Time for a number of decimal reductions, n D [s]."""
    @staticmethod
    def process_time(
        times: Sequence[float], temperatures: Sequence[float], reference: float, z: float
    ) -> float:
        """Time at the reference that kills as much [s]; exact on the lines between points."""

class _Browning(ModuleType):
    """An indicator of browning, not a colour."""

    @staticmethod
    def rate(temperature: float, reference: float, activation_energy: float) -> float:
        """Rate of browning over that at the reference [-]; Arrhenius, an indicator."""
    @staticmethod
    def browning_time(
        times: Sequence[float],
        temperatures: Sequence[float],
        reference: float,
        activation_energy: float,
    ) -> float:
        """Time at the reference that browns as much [s]; Arrhenius, an indicator."""
    @staticmethod
    def activation_energy_from_z(temperature: float, z: float) -> float:
        """Activation energy ln(10) R T^2 / z [J/mol]."""
    @staticmethod
    def activation_energies() -> tuple[float, float]:
        """Of a dry crust, Zanoni et al. (1995), and the highest published one [J/mol]."""

class _AgitationFilms(ModuleType):
    """Films and power of agitators."""

    @staticmethod
    def reynolds(density: float, speed: float, diameter: float, viscosity: float) -> float:
        """Reynolds number of an agitator, rho N d^2 / mu [-], N in turns per second."""

    @staticmethod
    def prandtl(specific_heat: float, viscosity: float, conductivity: float) -> float:
        """Prandtl number, cp mu / k [-]."""

    @staticmethod
    def film_coefficient(nusselt: float, conductivity: float, length: float) -> float:
        """Film coefficient Nu k / L [W/(m2 K)]."""

    @staticmethod
    def scraped_coefficient(
        conductivity: float,
        density: float,
        specific_heat: float,
        passes: float,
        efficiency: float = ...,
    ) -> float:
        """Film at a scraped wall [W/(m2 K)] by penetration theory; passes of blades per second."""

    @staticmethod
    def wall_nusselt(
        impeller: Impeller,
        reynolds: float,
        prandtl: float,
        viscosity_ratio: float = ...,
        source: FilmSource = ...,
    ) -> float:
        """Nusselt number h D / k at the vessel wall [-]; constants of the source."""

    @staticmethod
    def floor_nusselt(
        impeller: Impeller, reynolds: float, prandtl: float, viscosity_ratio: float = ...
    ) -> float:
        """Nusselt number h D / k at a heated floor [-]; Penney & Atiemo-Obeng (2004), 14.4."""

    @staticmethod
    def coil_nusselt(
        impeller: Impeller,
        reynolds: float,
        prandtl: float,
        viscosity_ratio: float = ...,
        source: FilmSource = ...,
    ) -> float:
        """Nusselt number at a helical coil [-], with the tube diameter (Penney) or the vessel
        diameter (Kern).
        """

    @staticmethod
    def chart_nusselt(factor: float, prandtl: float, viscosity_ratio: float = ...) -> float:
        """Nusselt number of a factor j read from a chart [-]; Kern (1950), figure 20.2."""

    @staticmethod
    def wall_constants(
        impeller: Impeller, reynolds: float, source: FilmSource = ...
    ) -> tuple[float, float, float, float]:
        """C and the exponents of Re, Pr and viscosity ratio [-] that hold at a Reynolds number."""

    @staticmethod
    def floor_constants(impeller: Impeller) -> tuple[float, float, float, float]:
        """C and the exponents of Re, Pr and the viscosity ratio [-] at a heated floor."""

    @staticmethod
    def coil_constants(
        impeller: Impeller, source: FilmSource = ...
    ) -> tuple[float, float, float, float]:
        """C and the exponents of Re, Pr and the viscosity ratio [-] at a helical coil."""

    @staticmethod
    def depth_factor(depth_ratio: float) -> float:
        """Factor of a film for the depth over the vessel diameter [-]; Penney (2004)."""

    @staticmethod
    def blade_height_factor(height_ratio: float) -> float:
        """Factor of a film for the blade height over the standard [-]; Penney (2004)."""

    @staticmethod
    def pitch_factor(pitch_ratio: float) -> float:
        """Factor of a film for the pitch over the propeller diameter [-]; Penney (2004)."""

    @staticmethod
    def coil_factor(agitator_ratio: float, tube_ratio: float) -> float:
        """Factor of a coil for agitator and tube diameter over that of the vessel [-]; Penney
        (2004).
        """

    @staticmethod
    def power_constants(impeller: Impeller) -> tuple[float, float]:
        """Laminar Np Re and turbulent Np of an agitator [-]; sources in transfer/stirring.hpp."""

    @staticmethod
    def power_number(impeller: Impeller, reynolds: float) -> float:
        """Power number [-], laminar K_p / Re passing smoothly into the turbulent constant."""

    @staticmethod
    def power(power_number: float, density: float, speed: float, diameter: float) -> float:
        """Power Np rho N^3 d^5, which becomes heat in the product [W]."""

    @staticmethod
    def stirring_heat(
        impeller: Impeller, density: float, viscosity: float, speed: float, diameter: float
    ) -> float:
        """Heat that an agitator puts into the product [W]; 0 at rest."""

    @staticmethod
    def mean_over_cycle(on: float, off: float, on_share: float) -> float:
        """Mean of a film coefficient or of the stirring heat over on/off cycles [unit of on]."""

    @staticmethod
    def shear_constant(impeller: Impeller) -> float:
        """Shear rate over turns per second [-]; sources in transfer/stirring.hpp."""

    @staticmethod
    def shear_rate(shear_constant: float, speed: float) -> float:
        """Mean shear rate around an agitator [1/s]; Metzner & Otto (1957)."""

    @staticmethod
    def apparent_viscosity(consistency: float, exponent: float, shear_rate: float) -> float:
        """Apparent viscosity of a power-law liquid [Pa s], K gamma^(n - 1)."""

    @staticmethod
    def ribbon_laminar_constant(
        diameter: float,
        vessel_diameter: float,
        height: float,
        pitch: float,
        width: float,
        blades: float,
    ) -> float:
        """Np Re of a helical ribbon in laminar flow [-]; Rieger, Novak & Havelkova (1988)."""

    @staticmethod
    def ribbon_mixing_time(laminar_constant: float, speed: float) -> float:
        """Mixing time of a helical ribbon in laminar flow [s]; Grenville and others (2001)."""

class _Jacket(ModuleType):
    """Liquid in a jacket and the wall between it and the product."""

    @staticmethod
    def lehrer_velocity(
        volume_flow: float,
        gap: float,
        height: float,
        inlet_diameter: float,
        buoyant_velocity: float = ...,
    ) -> float:
        """Velocity in a plain jacket [m/s]; Lehrer (1970), VDI Heat Atlas. Tangential inlet: no
        buoyant velocity.
        """

    @staticmethod
    def lehrer_buoyant_velocity(expansivity: float, height: float, warming: float) -> float:
        """Velocity that buoyancy adds for a radial inlet at the bottom [m/s], to be subtracted for
        one at the top; Lehrer (1970).
        """

    @staticmethod
    def lehrer_length(gap: float) -> float:
        """Length for Reynolds and Nusselt number of lehrer_nusselt [m]; Lehrer (1970)."""

    @staticmethod
    def lehrer_nusselt(reynolds: float, prandtl: float, viscosity_ratio: float = ...) -> float:
        """Nusselt number of a plain jacket [-]; Lehrer (1970), VDI Heat Atlas."""

    @staticmethod
    def swirl_velocity(
        volume_flow: float,
        gap: float,
        vessel_diameter: float,
        height: float,
        inlet_diameter: float,
        kinematic_viscosity: float,
    ) -> float:
        """Velocity in a jacket with a tangential inlet [m/s]; Stein & Schmidt (1993)."""

    @staticmethod
    def radial_velocity(
        volume_flow: float, gap: float, vessel_diameter: float, height: float, inlet_diameter: float
    ) -> float:
        """Velocity in a jacket with a radial inlet [m/s]; Stein & Schmidt (1993)."""

    @staticmethod
    def path_length(vessel_diameter: float, height: float) -> float:
        """Length of the path through a jacket [m]; Stein & Schmidt (1993)."""

    @staticmethod
    def grashof(density: float, density_at_wall: float, length: float, viscosity: float) -> float:
        """Grashof number g rho (rho - rho_w) L^3 / mu^2 [-]."""

    @staticmethod
    def buoyant_reynolds(reynolds: float, grashof: float, height_ratio: float) -> float:
        """Reynolds number with buoyancy [-], grashof negative where it hinders; Stein & Schmidt."""

    @staticmethod
    def stein_schmidt_nusselt(
        reynolds: float, prandtl: float, length_ratio: float, viscosity_ratio: float = ...
    ) -> float:
        """Nusselt number of a plain jacket with twice the gap [-]; Stein & Schmidt (1993)."""

    @staticmethod
    def reynolds(density: float, velocity: float, length: float, viscosity: float) -> float:
        """Reynolds number rho v L / mu [-]."""

    @staticmethod
    def gap_nusselt(
        reynolds: float, prandtl: float, diameter_ratio: float, length_ratio: float
    ) -> float:
        """Nusselt number at the inner wall of an annular gap [-], laminar to turbulent; Gnielinski
        (2009).
        """

    @staticmethod
    def overall_coefficient(
        inside: float,
        outside: float,
        wall_thickness: float = ...,
        wall_conductivity: float = ...,
        dirt: float = ...,
    ) -> float:
        """Overall coefficient of a jacketed wall [W/(m2 K)], films, dirt [m2 K/W] and wall in
        series.
        """

    @staticmethod
    def driving_difference(heat_flow: float, coefficient: float, area: float) -> float:
        """Difference between jacket and product that drives a heat flow [K], Q / (U A)."""

class _Glycol(ModuleType):
    """Propylene glycol and water by mass share 0 to 0.6, 253 to 373 K; Melinder (2010)."""

    @staticmethod
    def density(share: float, temperature: float) -> float:
        """[kg/m3]"""

    @staticmethod
    def specific_heat(share: float, temperature: float) -> float:
        """[J/(kg K)]"""

    @staticmethod
    def conductivity(share: float, temperature: float) -> float:
        """[W/(m K)]"""

    @staticmethod
    def viscosity(share: float, temperature: float) -> float:
        """[Pa s]"""

    @staticmethod
    def expansivity(share: float, temperature: float) -> float:
        """[1/K]"""

    @staticmethod
    def freezing_temperature(share: float) -> float:
        """Temperature at which the first ice forms [K]."""

class _Steam(ModuleType):
    """Saturated steam of a jacket, up to 180 degC."""

    @staticmethod
    def temperature(gauge_pressure: float, ambient_pressure: float = ...) -> float:
        """[K] at which steam condenses at a gauge pressure [Pa]. IAPWS-IF97."""

    @staticmethod
    def latent_heat(gauge_pressure: float, ambient_pressure: float = ...) -> float:
        """[J/kg] at a gauge pressure [Pa]. Within 1.3e-5 of IAPWS-IF97."""

    @staticmethod
    def density(gauge_pressure: float, ambient_pressure: float = ...) -> float:
        """Of the steam [kg/m3] at a gauge pressure [Pa]. Within 1.0e-4 of IAPWS-IF97."""

    @staticmethod
    def temperature_with_air(
        gauge_pressure: float, air_fraction: float, ambient_pressure: float = ...
    ) -> float:
        """Dew point [K] of steam with a mole fraction of air [-], by Dalton's law."""

    @staticmethod
    def air_mass_fraction(air_fraction: float) -> float:
        """Mass fraction [-] of air from its mole fraction in steam [-]."""

class _Properties(ModuleType):
    """Material properties in SI units."""

    water: _Water
    water_states: _WaterStates
    air: _Air
    oil: _Oil
    sugar: _Sugar
    salt: _Salt
    solutes: _Solutes
    components: _Components
    foods: _Foods
    consistency: _ConsistencyModule
    lethality: _Lethality
    browning: _Browning
    glycol: _Glycol
    steam: _Steam
    pressure_at_altitude: _OfAltitude
    """US Standard Atmosphere 1976 [Pa] at an altitude [m]."""
    temperature_at_altitude: _OfAltitude
    """US Standard Atmosphere 1976 [K] at an altitude [m]."""
    density_at_altitude: _OfAltitude
    """US Standard Atmosphere 1976 [kg/m3] at an altitude [m]."""

properties: _Properties
"""Material properties in SI units."""

vessel: _Vessel
"""Volume, level and wetted areas of a kettle."""

class _Batch(ModuleType):
    """Times, sizes and heats of whole batches."""

    @staticmethod
    def time_to_temperature(
        heat_capacity: float,
        conductance: float,
        medium: float,
        start: float,
        target: float,
        power: float = 0.0,
    ) -> float:
        """Time [s] from start to target [K], medium [K] behind a conductance [W/K], power [W]."""
    @staticmethod
    def temperature_after(
        heat_capacity: float,
        conductance: float,
        medium: float,
        start: float,
        time: float,
        power: float = 0.0,
    ) -> float:
        """Temperature [K] a time [s] after start [K]."""
    @staticmethod
    def steady_temperature(conductance: float, medium: float, power: float) -> float:
        """Temperature [K] at which the loss equals the power [W]."""
    @staticmethod
    def required_power(
        heat_capacity: float,
        conductance: float,
        medium: float,
        start: float,
        target: float,
        time: float,
    ) -> float:
        """Constant power [W] from start to target [K] in a time [s], losses included."""
    @staticmethod
    def required_conductance(
        heat_capacity: float, medium: float, start: float, target: float, time: float
    ) -> float:
        """Conductance U A to an isothermal medium [W/K] for a time [s]."""
    @staticmethod
    def required_area(
        heat_capacity: float,
        overall_coefficient: float,
        medium: float,
        start: float,
        target: float,
        time: float,
    ) -> float:
        """Area of coil or jacket [m2] for a time [s] with isothermal medium."""
    @staticmethod
    def lumped_rate(
        film_coefficient: float, surface_per_volume: float, density: float, specific_heat: float
    ) -> float:
        """Rate h (A/V) / (rho cp) of a lumped body [1/s]."""
    @staticmethod
    def hemisphere_surface_per_volume(radius: float) -> float:
        """Jacketed surface per volume of a hemispherical kettle [1/m]."""
    @staticmethod
    def difference_ratio(conductance: float, capacity_flow: float) -> float:
        """Ratio K = exp(U A / (W C)) of the temperature differences along coil or jacket [-]."""
    @staticmethod
    def flowing_medium_conductance(conductance: float, capacity_flow: float) -> float:
        """Effective conductance W C (1 - 1/K) of a medium that changes its temperature [W/K]."""
    @staticmethod
    def flowing_medium_area_conductance(effective: float, capacity_flow: float) -> float:
        """U A that has an effective conductance with a flowing medium [W/K]."""
    @staticmethod
    def counterflow_conductance(
        conductance: float, medium_capacity_flow: float, batch_capacity_flow: float
    ) -> float:
        """Effective conductance of an external counterflow exchanger [W/K]."""
    @staticmethod
    def shell_and_tube_conductance(
        conductance: float,
        medium_capacity_flow: float,
        batch_capacity_flow: float,
        shells: int = 1,
    ) -> float:
        """Effective conductance of external 1-2, 2-4 ... exchangers [W/K]."""
    @staticmethod
    def temperature_after_passes(
        effectiveness: float, medium: float, start: float, passes: float
    ) -> float:
        """Temperature [K] of an unstirred batch after passes [-] through an exchanger."""
    @staticmethod
    def passes_to_temperature(
        effectiveness: float, medium: float, start: float, target: float
    ) -> float:
        """Passes [-] of an unstirred batch through an exchanger to a temperature [K]."""
    @staticmethod
    def sensible_heat(mass: float, specific_heat: float, start: float, target: float) -> float:
        """Heat m cp (T - T_0) [J]."""
    @staticmethod
    def boil_off_heat(mass: float, share: float, latent_heat: float) -> float:
        """Heat to boil off a share [-] of a mass [J]."""
    @staticmethod
    def mass_of_vapour(heat: float, latent_heat: float) -> float:
        """Water boiled off by a heat, or steam that gives it [kg]; of a heat flow [kg/s]."""
    @staticmethod
    def mixing_temperature(
        capacity: float, temperature: float, added_capacity: float, added_temperature: float
    ) -> float:
        """Temperature after mixing [K]."""
    @staticmethod
    def two_node_eigenvalues(
        *,
        floor_capacity: float,
        liquid_capacity: float,
        conductance: float,
        floor_loss: float,
        liquid_loss: float,
        surroundings: float,
    ) -> tuple[float, float]:
        """Fast and slow eigenvalue of floor and liquid [1/s]."""
    @staticmethod
    def two_node_after(
        time: float,
        power: float,
        floor: float,
        liquid: float,
        *,
        floor_capacity: float,
        liquid_capacity: float,
        conductance: float,
        floor_loss: float,
        liquid_loss: float,
        surroundings: float,
    ) -> tuple[float, float]:
        """Temperatures of floor and liquid [K] after a time [s] at constant power [W]."""
    @staticmethod
    def two_node_time_to(
        target: float,
        power: float,
        floor: float,
        liquid: float,
        *,
        floor_capacity: float,
        liquid_capacity: float,
        conductance: float,
        floor_loss: float,
        liquid_loss: float,
        surroundings: float,
    ) -> float:
        """Time [s] at which the liquid reaches a temperature [K] at constant power [W]."""
    @staticmethod
    def two_node_peak(
        power: float,
        floor: float,
        liquid: float,
        *,
        floor_capacity: float,
        liquid_capacity: float,
        conductance: float,
        floor_loss: float,
        liquid_loss: float,
        surroundings: float,
    ) -> tuple[float, float]:
        """When [s] the liquid is hottest and how hot [K]; infinite time: it rises for ever."""
    @staticmethod
    def two_node_overshoot_bound(
        floor_capacity: float, liquid_capacity: float, floor: float, liquid: float
    ) -> float:
        """Overshoot of the liquid if nothing is lost after switch-off [K]."""

class Impeller(enum.Enum):
    """Shape of an agitator."""

    anchor = 0
    paddle = 1
    helical_ribbon = 2
    disc_turbine = 3
    flat_turbine = 4
    pitched_turbine = 5
    hydrofoil = 6
    propeller = 7

class FilmSource(enum.Enum):
    """Book that prints constants of stirred films."""

    penney = 0
    geankoplis = 1
    geankoplis_baffled = 2
    kern = 3

class _Boiling(ModuleType):
    """Pool boiling."""

    @staticmethod
    def rohsenow_heat_flux(
        density: float,
        vapour_density: float,
        specific_heat: float,
        latent_heat: float,
        surface_tension: float,
        viscosity: float,
        prandtl: float,
        excess: float,
        surface_constant: float = ...,
        prandtl_exponent: float = ...,
    ) -> float:
        """Of nucleate boiling [W/m2] at an excess temperature [K]. Rohsenow (1952)."""

    @staticmethod
    def rohsenow_excess(
        density: float,
        vapour_density: float,
        specific_heat: float,
        latent_heat: float,
        surface_tension: float,
        viscosity: float,
        prandtl: float,
        heat_flux: float,
        surface_constant: float = ...,
        prandtl_exponent: float = ...,
    ) -> float:
        """Excess temperature [K] of nucleate boiling at a flux. Rohsenow (1952)."""

    @staticmethod
    def critical_heat_flux(
        density: float,
        vapour_density: float,
        latent_heat: float,
        surface_tension: float,
        constant: float = ...,
    ) -> float:
        """[W/m2]; constant pi/24 by Zuber (1958), 0.149 by Lienhard & Dhir, 0.18 in other books."""

    @staticmethod
    def kettle_floor_coefficient(excess: float, pressure: float = ...) -> float:
        """Water boiling on a floor [W/(m2 K)]. Geankoplis 4.8 (from memory)."""

    @staticmethod
    def kettle_wall_coefficient(excess: float, pressure: float = ...) -> float:
        """Water boiling on a wall [W/(m2 K)]. Geankoplis 4.8 (from memory)."""

    @staticmethod
    def kettle_floor_heat_flux(excess: float, pressure: float = ...) -> float:
        """Into water boiling on a floor [W/m2]; up to 240 kW/m2."""

    @staticmethod
    def kettle_wall_heat_flux(excess: float, pressure: float = ...) -> float:
        """Into water boiling on a wall [W/m2]; up to 63 kW/m2."""

    @staticmethod
    def surface_constants(name: str) -> tuple[float, float]:
        """C_sf and Prandtl exponent [-] of a liquid on a surface for Rohsenow."""

    @staticmethod
    def surface_names() -> list[str]:
        """Liquids on surfaces that have constants."""

    @staticmethod
    def boil_off_rate(heat_flow: float, latent_heat: float, feed_heat: float = ...) -> float:
        """Water that boils off [kg/s] at a heat flow [W]; feed_heat brings a feed to the boil."""

class _Condensation(ModuleType):
    """Films of condensate."""

    @staticmethod
    def modified_latent_heat(
        latent_heat: float, specific_heat: float, subcooling: float, share: float = ...
    ) -> float:
        """h_fg + share cp dT [J/kg]; share 3/8 by Bromley (1952), 0.68 by Rohsenow (1956)."""

    @staticmethod
    def laminar_film_coefficient(
        density: float,
        vapour_density: float,
        conductivity: float,
        viscosity: float,
        latent_heat: float,
        subcooling: float,
        length: float,
        inclination: float = ...,
    ) -> float:
        """Mean of a laminar film on a plate [W/(m2 K)]. Nusselt (1916)."""

    @staticmethod
    def film_thickness(
        density: float,
        vapour_density: float,
        conductivity: float,
        viscosity: float,
        latent_heat: float,
        subcooling: float,
        distance: float,
    ) -> float:
        """Of a laminar film on a wall [m] at a distance from its upper edge. Nusselt (1916)."""

    @staticmethod
    def tube_film_coefficient(
        density: float,
        vapour_density: float,
        conductivity: float,
        viscosity: float,
        latent_heat: float,
        subcooling: float,
        diameter: float,
        coefficient: float = ...,
    ) -> float:
        """Mean around a horizontal tube [W/(m2 K)]; 0.728 by Nusselt, 0.725 to 0.782 by source."""

    @staticmethod
    def film_reynolds_number(
        viscosity: float, latent_heat: float, coefficient: float, subcooling: float, length: float
    ) -> float:
        """4 h dT L / (mu h_fg) [-] at the lower edge."""

    @staticmethod
    def film_number_by_reynolds(reynolds: float, prandtl: float) -> float:
        """h (nu^2/g)^(1/3) / k [-], laminar to turbulent. Incropera & DeWitt 10.38-10.40."""

    @staticmethod
    def film_number(parameter: float, prandtl: float) -> float:
        """The same by k L dT / (mu h_fg (nu^2/g)^(1/3)) [-]. Incropera & DeWitt 10.42-10.44."""

    @staticmethod
    def jacket_coefficient(
        density: float,
        vapour_density: float,
        conductivity: float,
        viscosity: float,
        latent_heat: float,
        prandtl: float,
        subcooling: float,
        height: float,
        air_mass_fraction: float = ...,
    ) -> float:
        """Steam side of a jacket or wall [W/(m2 K)], any film, resting air by Uchida (1965)."""

    @staticmethod
    def coefficient_with_air(film_coefficient: float, air_mass_fraction: float) -> float:
        """Film with resting air in the steam in series [W/(m2 K)]. Uchida (1965); caution."""

    @staticmethod
    def condensate_rate(heat_flow: float, latent_heat: float) -> float:
        """[kg/s] at a heat flow [W]."""

class _Convection(ModuleType):
    """Natural convection."""

    @staticmethod
    def vertical_wall_nusselt(rayleigh: float, prandtl: float) -> float:
        """[-], all flows. Churchill & Chu (1975), equation 9."""

    @staticmethod
    def vertical_wall_laminar_nusselt(rayleigh: float, prandtl: float) -> float:
        """[-], Ra < 1e9. Churchill & Chu (1975), equation 8."""

    @staticmethod
    def turbulent_wall_nusselt(rayleigh: float) -> float:
        """0.13 Ra^(1/3) [-]. McAdams (1954)."""

    @staticmethod
    def sphere_nusselt(rayleigh: float, prandtl: float) -> float:
        """[-]. Churchill, Heat Exchanger Design Handbook."""

    @staticmethod
    def horizontal_cylinder_nusselt(rayleigh: float, prandtl: float) -> float:
        """[-]. Churchill & Chu (1975)."""

    @staticmethod
    def horizontal_cylinder_kuehn_nusselt(rayleigh: float, prandtl: float) -> float:
        """[-]. Kuehn & Goldstein (1976)."""

    @staticmethod
    def horizontal_cylinder_morgan_nusselt(rayleigh: float) -> float:
        """[-]. Morgan (1975), steps rounded."""

    @staticmethod
    def plate_facing_up_nusselt(rayleigh: float) -> float:
        """[-], hot plate; McAdams (1954), joined over two decades, as kettles use it."""

    @staticmethod
    def plate_facing_down_nusselt(rayleigh: float) -> float:
        """[-], hot plate. McAdams (1954)."""

    @staticmethod
    def plate_up_mcadams_nusselt(rayleigh: float) -> float:
        """[-], hot plate facing up or cold one down. McAdams (1954)."""

    @staticmethod
    def plate_up_vdi_nusselt(rayleigh: float, prandtl: float) -> float:
        """[-], hot plate facing up or cold one down. VDI Heat Atlas (2010), F2."""

    @staticmethod
    def plate_up_raithby_nusselt(rayleigh: float, prandtl: float) -> float:
        """[-], hot plate facing up or cold one down. Raithby & Hollands (1998)."""

    @staticmethod
    def plate_down_vdi_nusselt(rayleigh: float, prandtl: float) -> float:
        """[-], hot plate facing down or cold one up. VDI Heat Atlas (2010), F2."""

    @staticmethod
    def plate_down_raithby_nusselt(rayleigh: float, prandtl: float) -> float:
        """[-], hot plate facing down or cold one up. Raithby & Hollands (1998)."""

    @staticmethod
    def rayleigh_number(
        density: float,
        specific_heat: float,
        conductivity: float,
        viscosity: float,
        expansivity: float,
        difference: float,
        length: float,
    ) -> float:
        """g beta dT L^3 rho^2 cp / (mu k) [-]."""

    @staticmethod
    def room_air_wall_coefficient(difference: float) -> float:
        """Vertical surface in room air [W/(m2 K)]. Kern (1950), example 18.4."""

    @staticmethod
    def room_air_up_coefficient(difference: float) -> float:
        """Hot surface facing up in room air [W/(m2 K)]. Kern (1950), from memory."""

    @staticmethod
    def room_air_down_coefficient(difference: float) -> float:
        """Hot surface facing down in room air [W/(m2 K)]. Kern (1950), from memory."""

class _Radiation(ModuleType):
    """Radiation of grey surfaces."""

    @staticmethod
    def radiative_heat_flux(emissivity: float, surface: float, surroundings: float) -> float:
        """e sigma (T^4 - T_s^4) [W/m2]. Stefan-Boltzmann."""

    @staticmethod
    def radiation_coefficient(emissivity: float, surface: float, surroundings: float) -> float:
        """The same per kelvin of difference [W/(m2 K)]. Incropera & DeWitt 1.9."""

    @staticmethod
    def exchange_emissivity(inner: float, outer: float, area_ratio: float) -> float:
        """Of a body inside another [-], area_ratio inner/outer. Incropera & DeWitt, table 13.3."""

    @staticmethod
    def shielded_emissivity(first: float, second: float, shield: float) -> float:
        """Of two plates with one sheet between them [-]. Incropera & DeWitt 13.27."""

class _Evaporation(ModuleType):
    """Evaporation from open surfaces."""

    @staticmethod
    def lewis_number(thermal_diffusivity: float, vapour_diffusivity: float) -> float:
        """alpha / D [-]."""

    @staticmethod
    def lewis_mass_coefficient(
        film_coefficient: float, heat_capacity: float, lewis: float
    ) -> float:
        """h / (rho cp Le^(2/3)) [m/s]. Chilton & Colburn (1934)."""

    @staticmethod
    def open_surface_evaporation(
        mass_coefficient: float,
        temperature: float,
        pressure: float,
        surface_vapour_pressure: float,
        ambient_vapour_pressure: float,
    ) -> float:
        """With Stefan flow [kg/(m2 s)]. Bird, Stewart & Lightfoot 18.2."""

    @staticmethod
    def pool_evaporation(
        pressure_difference: float, air_speed: float, latent_heat: float, activity: float = ...
    ) -> float:
        """Pool equation [kg/(m2 s)]. Carrier (1918), ASHRAE; activity 0.74 if undisturbed."""

    @staticmethod
    def draught_factor(air_speed: float) -> float:
        """Evaporation under a hood or fan over that in still air [-]. Pool equation."""

    @staticmethod
    def latent_heat_flux(evaporation: float, latent_heat: float) -> float:
        """Heat that evaporation takes [W/m2]."""

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

    batch: _Batch
    agitation: _AgitationFilms
    jacket: _Jacket
    boiling: _Boiling
    condensation: _Condensation
    convection: _Convection
    radiation: _Radiation
    evaporation: _Evaporation
    conduction: _Conduction
    freezing: _Freezing
    pieces: _Pieces

transfer: _Transfer
"""Heat transfer correlations in SI units."""

class _Exposure(ModuleType):
    """Time that signals spend above a level."""

    @staticmethod
    def time_above(
        time: Sequence[float], value: Sequence[float], level: float
    ) -> tuple[float, float, float | None]:
        """Whole and longest time at or above a level and when it began first [s]."""
    @staticmethod
    def time_below(
        time: Sequence[float], value: Sequence[float], level: float
    ) -> tuple[float, float, float | None]:
        """Whole and longest time below a level and when it began first [s]."""

exposure: _Exposure
"""Time that signals spend above a level."""

class _ThermostatLoopMembers(TypedDict, total=False):
    off_level: float
    on_level: float
    time_constant: float
    dead_time: float
    low: float
    high: float

class ThermostatLoop(_Record):
    """A thermostat on a first-order plant with dead time."""

    def __init__(self, **members: Unpack[_ThermostatLoopMembers]) -> None: ...
    @property
    def off_level(self) -> float:
        """Where the plant settles with the heat off."""
    @property
    def on_level(self) -> float:
        """Where the plant settles with the heat on."""
    @property
    def time_constant(self) -> float:
        """Of the plant [s]."""
    @property
    def dead_time(self) -> float:
        """From the switch to the first effect [s]."""
    @property
    def low(self) -> float:
        """The heat comes on when the signal falls to this."""
    @property
    def high(self) -> float:
        """The heat goes off when the signal rises to this."""
    def replace(self, **members: Unpack[_ThermostatLoopMembers]) -> ThermostatLoop:
        """A copy with the given members changed; raises UnknownName or TypeError."""

class _ThermostatCycleMembers(TypedDict, total=False):
    highest: float
    lowest: float
    on_time: float
    off_time: float
    period: float
    duty: float

class ThermostatCycle(_Record):
    """The steady cycle of a thermostat."""

    def __init__(self, **members: Unpack[_ThermostatCycleMembers]) -> None: ...
    @property
    def highest(self) -> float:
        """Of the signal, in the unit of the levels."""
    @property
    def lowest(self) -> float:
        """Of the signal, in the unit of the levels."""
    @property
    def on_time(self) -> float:
        """Of the switch [s]."""
    @property
    def off_time(self) -> float:
        """Of the switch [s]."""
    @property
    def period(self) -> float:
        """On and off time together [s]."""
    @property
    def duty(self) -> float:
        """On time over period [-]."""
    def replace(self, **members: Unpack[_ThermostatCycleMembers]) -> ThermostatCycle:
        """A copy with the given members changed; raises UnknownName or TypeError."""

class _PiLoopMembers(TypedDict, total=False):
    plant_gain: float
    time_constant: float
    gain: float
    integral_time: float
    set_point_weight: float

class PiLoop(_Record):
    """A PI controller on a first-order plant."""

    def __init__(self, **members: Unpack[_PiLoopMembers]) -> None: ...
    @property
    def plant_gain(self) -> float:
        """Signal per output."""
    @property
    def time_constant(self) -> float:
        """Of the plant [s]."""
    @property
    def gain(self) -> float:
        """Of the controller, output per signal."""
    @property
    def integral_time(self) -> float:
        """Of the controller [s]."""
    @property
    def set_point_weight(self) -> float:
        """0 acts on the signal only, 1 on the whole error [-]."""
    def replace(self, **members: Unpack[_PiLoopMembers]) -> PiLoop:
        """A copy with the given members changed; raises UnknownName or TypeError."""

class _PiResponseMembers(TypedDict, total=False):
    natural_frequency: float
    damping: float
    overshoot: float
    peak_time: float | None

class PiResponse(_Record):
    """How a PI loop answers a step of the set point."""

    def __init__(self, **members: Unpack[_PiResponseMembers]) -> None: ...
    @property
    def natural_frequency(self) -> float:
        """[rad/s]."""
    @property
    def damping(self) -> float:
        """Below 1 the answer swings [-]."""
    @property
    def overshoot(self) -> float:
        """Share of the step [-]."""
    @property
    def peak_time(self) -> float | None:
        """Of the overshoot, since the step [s]; None without one."""
    def replace(self, **members: Unpack[_PiResponseMembers]) -> PiResponse:
        """A copy with the given members changed; raises UnknownName or TypeError."""

class _UltimateCycleMembers(TypedDict, total=False):
    frequency: float
    gain: float
    period: float

class UltimateCycle(_Record):
    """Where proportional control alone swings for ever."""

    def __init__(self, **members: Unpack[_UltimateCycleMembers]) -> None: ...
    @property
    def frequency(self) -> float:
        """[rad/s]."""
    @property
    def gain(self) -> float:
        """Output per signal."""
    @property
    def period(self) -> float:
        """[s]."""
    def replace(self, **members: Unpack[_UltimateCycleMembers]) -> UltimateCycle:
        """A copy with the given members changed; raises UnknownName or TypeError."""

class _Control(ModuleType):
    """Control loops in closed form."""

    @staticmethod
    def thermostat_cycle(loop: ThermostatLoop) -> ThermostatCycle:
        """The steady cycle of a thermostat with dead time; exact exponentials."""
    @staticmethod
    def pi_response(loop: PiLoop) -> PiResponse:
        """Frequency, damping and overshoot of a PI loop; second-order step response."""
    @staticmethod
    def load_error_integral(loop: PiLoop, load: float) -> float:
        """Integral of the error after a step of the load, -d Ti/Kc [signal s]."""
    @staticmethod
    def ultimate_cycle(plant_gain: float, time_constant: float, dead_time: float) -> UltimateCycle:
        """Ultimate gain and period of a first-order plant with dead time."""

control: _Control
"""Control loops in closed form."""
