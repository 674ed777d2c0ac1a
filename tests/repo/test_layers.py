"""The table of layers: which folder of the C++ library may include which."""

import re
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parents[2]
LIBRARY = ROOT / "libsim"
FIELDS = {"base", "numerics", "properties", "transfer", "recipe"}
ALLOWED = {
    "base": set(),
    "numerics": {"base"},
    "properties": {"base", "numerics"},
    "transfer": {"base", "numerics", "properties"},
    "recipe": {"base", "properties"},
    "control": {"base"},
    "network": FIELDS,
    "kettle": FIELDS | {"network"},
    "simulate": FIELDS | {"network", "kettle", "control"},
    "ensemble": FIELDS | {"network", "kettle", "control", "simulate"},
    "fit": FIELDS | {"network", "kettle", "control", "simulate", "ensemble"},
}
ODEINT_HOME = "libsim/src/numerics/integrator.cpp"
INCLUDE = re.compile(r'^\s*#\s*include\s*[<"]([^>"]+)[>"]', re.MULTILINE)
OUTPUT = re.compile(r"\b(printf|puts|putchar|fprintf|fopen|cout|cerr|clog|abort|exit)\b\s*[(<]")


def without_comments(text: str) -> str:
    """Source text with comments and string literals blanked."""
    return re.sub(r'//[^\n]*|/\*.*?\*/|"(?:\\.|[^"\\\n])*"', '""', text, flags=re.DOTALL)


def layer_of(path: str) -> str:
    """Layer of a library file given by its path from the project root."""
    parts = Path(path).parts
    return parts[3] if parts[1] == "include" else parts[2]


def violations(path: str, text: str) -> list[str]:
    """What a library file includes or calls against the table of layers."""
    layer = layer_of(path)
    if layer not in ALLOWED:
        return [f"{path}: {layer} is not in the table of layers"]
    found = []
    for name in INCLUDE.findall(text):
        parts = Path(name).parts
        if parts[0] == "kettlecast" and parts[1] != layer and parts[1] not in ALLOWED[layer]:
            found.append(f"{path}: {layer} must not include {name}")
        if "odeint" in name and path != ODEINT_HOME:
            found.append(f"{path}: only {ODEINT_HOME} includes odeint")
        if name in {"iostream", "fstream", "cstdio", "stdio.h", "print"}:
            found.append(f"{path}: the library does no input or output ({name})")
        if ".." in parts or "bindings" in parts or parts[0] in {"pybind11", "Python.h"}:
            found.append(f"{path}: the library stands alone ({name})")
    found += [f"{path}: calls {call}" for call in OUTPUT.findall(without_comments(text))]
    return found


def library_files() -> list[Path]:
    return sorted(p for p in LIBRARY.rglob("*") if p.suffix in {".hpp", ".cpp"})


def test_library_is_found():
    assert len(library_files()) > 40
    folders = {layer_of(str(p.relative_to(ROOT))) for p in library_files()}
    assert folders == set(ALLOWED)


@pytest.mark.parametrize("path", library_files(), ids=lambda p: str(p.relative_to(LIBRARY)))
def test_file_keeps_to_its_layer(path):
    assert violations(str(path.relative_to(ROOT)), path.read_text()) == []


def test_table_has_no_circle():
    done: set[str] = set()
    while len(done) < len(ALLOWED):
        ready = {name for name, below in ALLOWED.items() if below <= done} - done
        assert ready, f"circle among {set(ALLOWED) - done}"
        done |= ready


def test_bindings_reach_the_library_only_through_its_headers():
    for path in (ROOT / "bindings/src").glob("*.[hc]pp"):
        for name in INCLUDE.findall(path.read_text()):
            local = (path.parent / name).exists()
            own = name.startswith("kettlecast/")
            assert local or own or not name.endswith(".hpp"), f"{path.name} includes {name}"
            assert "/src/" not in name, f"{path.name} includes {name}"


@pytest.mark.parametrize(
    ("path", "line"),
    [
        ("libsim/src/transfer/x.cpp", '#include "kettlecast/kettle/kettle.hpp"'),
        ("libsim/include/kettlecast/base/x.hpp", '#include "kettlecast/numerics/smooth.hpp"'),
        ("libsim/include/kettlecast/numerics/x.hpp", '#include "kettlecast/properties/oil.hpp"'),
        ("libsim/src/recipe/x.cpp", '#include "kettlecast/transfer/fluid.hpp"'),
        ("libsim/src/control/x.cpp", '#include "kettlecast/recipe/recipe.hpp"'),
        ("libsim/src/kettle/x.cpp", '#  include "kettlecast/simulate/trace.hpp"'),
        ("libsim/src/simulate/x.cpp", '#include "kettlecast/ensemble/many.hpp"'),
        ("libsim/src/simulate/x.cpp", "#include <boost/numeric/odeint.hpp>"),
        ("libsim/include/kettlecast/numerics/x.hpp", "#include <boost/numeric/odeint.hpp>"),
        ("libsim/src/base/x.cpp", "#include <iostream>"),
        ("libsim/src/base/x.cpp", "#include <fstream>"),
        ("libsim/src/base/x.cpp", 'void f() { std::printf("x"); }'),
        ("libsim/src/base/x.cpp", "void f() { std::cout << 1; }"),
        ("libsim/src/base/x.cpp", "void f() { std::abort(); }"),
        ("libsim/src/base/x.cpp", "#include <pybind11/pybind11.h>"),
        ("libsim/src/gossip/x.cpp", ""),
    ],
)
def test_planted_violation_is_caught(path, line):
    assert len(violations(path, f"// a file\n{line}\n")) == 1


@pytest.mark.parametrize(
    ("path", "line"),
    [
        ("libsim/src/kettle/x.cpp", '#include "kettlecast/network/piece_shells.hpp"'),
        ("libsim/src/numerics/integrator.cpp", "#include <boost/numeric/odeint.hpp>"),
        ("libsim/src/base/x.cpp", "// std::abort() is never called\n"),
        ("libsim/src/base/x.cpp", 'const char* text = "printf(";'),
    ],
)
def test_allowed_line_passes(path, line):
    assert violations(path, line) == []
