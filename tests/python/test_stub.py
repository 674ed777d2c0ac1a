"""The types that editors see are those of the compiled module.

The other side of every comparison is what the compiled module says of itself: its members, the
members of records made without arguments, and the signatures that open its docstrings.
"""

import ast
import enum
import inspect
import re
from pathlib import Path
from types import ModuleType
from typing import Any

import pytest

import kettlecast
from kettlecast import _core

TEXT = (Path(kettlecast.__file__).parent / "_core.pyi").read_text(encoding="utf-8")
# What signatures of the compiled module are spelt like in the stub.
SPELLINGS = {
    "typing.SupportsInt | typing.SupportsIndex": "int",
    "typing.SupportsFloat | typing.SupportsIndex": "float",
    "collections.abc.Sequence": "Sequence",
    "numpy.typing.NDArray[numpy.float64]": "_Array",
    "kettlecast._core.": "",
}
SIGNATURE = re.compile(r"^(?:\d+\. )?(\w+\(.*\)(?: -> .*)?)$")

Definition = ast.ClassDef | ast.FunctionDef | ast.AnnAssign


def spelt(text: str) -> str:
    for compiled, stub in SPELLINGS.items():
        text = text.replace(compiled, stub)
    return text


def name_of(node: Definition) -> str:
    return ast.unparse(node.target) if isinstance(node, ast.AnnAssign) else node.name


def definitions(body: list[ast.stmt]) -> dict[str, list[Any]]:
    """Definitions by name, all overloads of a function in one list."""
    found: dict[str, list[Any]] = {}
    for node in body:
        if isinstance(node, Definition):
            found.setdefault(name_of(node), []).append(node)
    return found


def public(names: Any) -> set[str]:
    return {name for name in names if not name.startswith("_")}


def unequal(where: str, stub: Any, compiled: Any) -> list[str]:
    return [] if stub == compiled else [f"{where}: stub {stub}, compiled {compiled}"]


def shape_of(function: ast.FunctionDef, skipped: int = 0) -> tuple[object, ...]:
    """Arguments by position and by keyword with their types, number of defaults, and result."""
    given = function.args
    by_position = [*given.posonlyargs, *given.args][skipped:]
    arguments = [
        [(one.arg, ast.unparse(one.annotation) if one.annotation else "") for one in group]
        for group in (by_position, given.kwonlyargs)
    ]
    defaults = len(given.defaults), [default is not None for default in given.kw_defaults]
    returned = ast.unparse(function.returns) if function.returns else ""
    return (*arguments, *defaults, returned)


def compiled_functions(member: Any) -> list[ast.FunctionDef]:
    """Signatures that open the docstring of a compiled function, one per overload."""
    lines = [line for line in (member.__doc__ or "").splitlines() if SIGNATURE.match(line)]
    texts = [SIGNATURE.sub(r"\1", line) for line in lines]
    numbered = [text for line, text in zip(lines, texts, strict=True) if line[0].isdigit()]
    trees = [ast.parse(f"def {spelt(text)}: ...").body[0] for text in numbered or texts[:1]]
    return [tree for tree in trees if isinstance(tree, ast.FunctionDef)]


def function_differences(where: str, nodes: list[Any], member: Any, skipped: int = 0) -> list[str]:
    stub = sorted(map(repr, [shape_of(node, skipped) for node in nodes]))
    compiled = sorted(map(repr, [shape_of(one, skipped) for one in compiled_functions(member)]))
    return unequal(where, stub, compiled)


def property_types(cls: type) -> dict[str, str]:
    """Types of the compiled properties by name, in the order of the module."""
    found = {}
    for name, member in vars(cls).items():
        if isinstance(member, property):
            found[name] = spelt(str(member.fget.__doc__).strip().split(" -> ")[1])
    return found


def stub_properties(node: ast.ClassDef) -> dict[str, str]:
    return {
        one.name: ast.unparse(one.returns) if one.returns else ""
        for one in node.body
        if isinstance(one, ast.FunctionDef)
        and any(ast.unparse(mark) == "property" for mark in one.decorator_list)
    }


def as_argument(returned: str) -> str:
    """Type of a member in the constructor: where a list is returned, a sequence is taken."""
    return returned.replace("list[float]", "_Numbers").replace("list[", "Sequence[")


def record_differences(node: ast.ClassDef, members: ast.ClassDef | None, cls: Any) -> list[str]:
    """Constructor, `replace` and base of a record."""
    types = property_types(cls)
    told = {name: as_argument(types[name]) for name in cls().to_dict()}
    fields = definitions(members.body) if members else {}
    stub = {name: ast.unparse(one[0].annotation) for name, one in fields.items()}
    found = unequal(f"members of {node.name}", list(stub.items()), list(told.items()))
    methods = definitions(node.body)
    for method in ("__init__", "replace"):
        taken = [ast.unparse(one.args) for one in methods.get(method, [])]
        expected = [f"self, **members: Unpack[_{node.name}Members]"]
        found += unequal(f"{node.name}.{method}", taken, expected)
    return found + unequal(node.name, [ast.unparse(one) for one in node.bases], ["_Record"])


def class_differences(node: ast.ClassDef, inherited: set[str], cls: type) -> list[str]:
    """Properties with types and order, and the names of the methods."""
    found = unequal(
        f"properties of {node.name}",
        list(stub_properties(node).items()),
        list(property_types(cls).items()),
    )
    names = public(definitions(node.body)) | inherited
    return found + unequal(f"names of {node.name}", names, public(vars(cls)))


def enum_differences(node: ast.ClassDef, cls: type[enum.Enum]) -> list[str]:
    values = [ast.unparse(one) for one in node.body if isinstance(one, ast.Assign)]
    found = unequal(node.name, values, [f"{one.name} = {one.value}" for one in cls])
    return found + unequal(node.name, [ast.unparse(one) for one in node.bases], ["enum.Enum"])


def module_differences(
    node: ast.ClassDef, known: dict[str, list[Any]], module: ModuleType
) -> list[str]:
    """A submodule, in the stub a class that stands for its one instance."""
    entries = definitions(node.body)
    found = unequal(f"names of {module.__name__}", set(entries), public(vars(module)))
    for name in set(entries) & public(vars(module)):
        member = getattr(module, name)
        where = f"{module.__name__}.{name}"
        if isinstance(entries[name][0], ast.FunctionDef):
            marks = {ast.unparse(one) for node in entries[name] for one in node.decorator_list}
            found += unequal(where, marks - {"overload"}, {"staticmethod"})
            found += function_differences(where, entries[name], member)
            continue
        (kind,) = known[ast.unparse(entries[name][0].annotation)]
        if isinstance(member, ModuleType):
            found += module_differences(kind, known, member)
            continue
        (compiled,) = compiled_functions(member)
        taken = [one.arg for one in compiled.args.args]
        for call in definitions(kind.body)["__call__"]:
            stub = [one.arg for one in call.args.args[1:]]
            found += unequal(where, stub, taken)
    return found


def names_taken(functions: list[ast.FunctionDef]) -> list[list[str]]:
    """Names of the arguments after `self`, one list per overload."""
    return [[one.arg for one in function.args.args[1:]] for function in functions]


def method_differences(node: ast.ClassDef, cls: type) -> list[str]:
    """Arguments of the methods of a class that is no record."""
    methods = definitions(node.body)
    named = public(methods) | ({"__init__", "__getitem__"} & set(methods))
    found = []
    for name in named - set(stub_properties(node)):
        compiled = names_taken(compiled_functions(vars(cls)[name]))
        found += unequal(f"{node.name}.{name}", names_taken(methods[name]), compiled)
    return found


def differences(text: str) -> list[str]:
    """Everything in which a stub and the compiled module are not alike."""
    known = definitions(ast.parse(text).body)
    found = unequal("names", public(known), public(vars(_core)))
    inherited = public(definitions(known["_Record"][0].body))
    for name in sorted(public(known) & public(vars(_core))):
        node, member = known[name][0], getattr(_core, name)
        if isinstance(member, ModuleType):
            (kind,) = known[ast.unparse(node.annotation)]
            found += module_differences(kind, known, member)
        elif not isinstance(member, type):
            found += function_differences(name, known[name], member)
        elif issubclass(member, BaseException):
            bases = [ast.unparse(base) for base in node.bases]
            found += unequal(name, bases, [base.__name__ for base in member.__bases__])
        elif issubclass(member, enum.Enum):
            found += enum_differences(node, member)
        elif hasattr(member, "to_dict") and member is not _core.Coefficients:
            found += class_differences(node, inherited, member)
            members = known.get(f"_{name}Members", [None])[0]
            found += record_differences(node, members, member)
        else:
            found += class_differences(node, set(), member)
            found += method_differences(node, member)
    return found


def test_the_stub_is_the_compiled_module() -> None:
    assert differences(TEXT) == []


@pytest.mark.parametrize(
    ("old", "new", "told"),
    [
        # names of the module
        ("class Surroundings(_Record)", "class Room(_Record)", "names: "),
        ("def usable_volume(", "def volume(", "names: "),
        # members of records: constructor, properties, order, type
        ("    pour_time: float\n", "", "members of Addition"),
        ("    blades: int\n", "    blades: float\n", "members of Kettle"),
        ("    floor: float\n    wall: float\n", "    wall: float\n    floor: float\n", "Start"),
        ("    @property\n    def blades(self) -> int:", "    def blades(self) -> int:", "Kettle"),
        ("def peak(self) -> float:", "def peak(self) -> int:", "properties of PhaseReport"),
        ("Unpack[_FoodMembers]) -> None", "Unpack[_PhaseMembers]) -> None", "Food.__init__"),
        ("Unpack[_FoodMembers]) -> Food", "Unpack[_PhaseMembers]) -> Food", "Food.replace"),
        ("class Recipe(_Record)", "class Recipe", "Recipe: "),
        ("    def to_dict(self) -> dict[str, Any]:", "    def as_dict(self):", "names of Kettle"),
        # other classes
        ("def product_mass(self)", "def mass(self)", "names of ForecastResult"),
        ("def trace(self) -> _Array", "def trace(self) -> list[float]", "ForecastResult"),
        ("def __getitem__(self, name: str)", "def __getitem__(self, key: str)", "__getitem__"),
        ("def replace(self, values: dict", "def replace(self, changes: dict", "Coefficients"),
        # enums and errors
        ("    timed_out = 4\n", "", "EndReason"),
        ("    lid = 1\n", "    lid = 2\n", "Cover"),
        ("class UnknownName(Error, KeyError)", "class UnknownName(Error)", "UnknownName"),
        # functions: names, kinds, defaults, types, overloads
        ("    plan: RunPlan,", "    run: RunPlan,", "replay: "),
        ("    *,\n    plan: RunPlan,", "    plan: RunPlan,", "replay: "),
        (
            "    threads: int = 0,\n) -> list[Replay]",
            "    threads: int,\n) -> list[Replay]",
            "replay_m",
        ),
        ("(phase: Phase) -> float", "(phase: Phase) -> int", "loaded_after"),
        ("def check(food: Food)", "def check(food: Kettle)", "check: "),
        # properties of materials
        ("    latent_heat: _OfTemperature\n", "", "names of kettlecast._core.properties.water"),
        ("_temperature: _OfPressure", "_temperature: _OfTemperature", "saturation_temperature"),
        ("    ice_fraction: _OfFood", "    ice_fraction: _OfTemperature", "foods.ice_fraction"),
    ],
)
def test_a_stub_that_is_wrong_is_told(old: str, new: str, told: str) -> None:
    assert old in TEXT
    found = differences(TEXT.replace(old, new, 1))
    assert any(told in line for line in found), found


def test_with_more_is_the_function_attached_to_recipes() -> None:
    recipe = definitions(ast.parse(TEXT).body)["Recipe"][0]
    (stub,) = definitions(recipe.body)["with_more"]
    attached = inspect.signature(_core.Recipe.with_more)
    kinds = {
        inspect.Parameter.POSITIONAL_OR_KEYWORD: [one.arg for one in stub.args.args[1:]],
        inspect.Parameter.KEYWORD_ONLY: [one.arg for one in stub.args.kwonlyargs],
    }
    for kind, names in kinds.items():
        compiled = [one.name for one in attached.parameters.values() if one.kind is kind]
        assert names == [name for name in compiled if name != "recipe"]


def test_types_are_shipped() -> None:
    assert (Path(kettlecast.__file__).parent / "py.typed").is_file()
