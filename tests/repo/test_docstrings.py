"""Every public name says what it is, in which unit and where it comes from."""

import ast
import re
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parents[2]
HEADERS = ROOT / "libsim/include/kettlecast"
CORRELATIONS = sorted([*HEADERS.glob("properties/*.hpp"), *HEADERS.glob("transfer/*.hpp")])
# Descriptions of foods and groups of numbers; they compute nothing.
WITHOUT_EQUATIONS = {"food.hpp", "fluid.hpp"}


def undocumented(text: str) -> list[str]:
    """Functions of a header that no `///` comment precedes."""
    lines = text.splitlines()
    found = []
    for number, line in enumerate(lines):
        match = re.match(
            r"(?:inline |constexpr |static )*[\w:<>,&*]+(?: [\w:<>,&*]+)* \*?&?(\w+)\(", line
        )
        if not match or line.startswith(("return", "//", "#", "}")):
            continue
        above = number - 1
        while above >= 0 and lines[above].startswith("template <"):
            above -= 1
        if above < 0 or not lines[above].lstrip().startswith("//"):
            found.append(match.group(1))
    return found


def without_source_or_range(text: str) -> list[str]:
    """Which of the two lines a header of correlations lacks."""
    return [key for key in ("Source:", "Range:") if not re.search(rf"^\s*///.*\b{key}", text, re.M)]


def without_docstring(text: str) -> list[str]:
    """Public functions, classes and methods of a Python module that have no docstring."""
    found = []
    tree = ast.parse(text)
    if ast.get_docstring(tree) is None and tree.body:
        found.append("module")
    bodies = [tree.body]
    while bodies:
        for node in bodies.pop():
            if not isinstance(node, ast.FunctionDef | ast.AsyncFunctionDef | ast.ClassDef):
                continue
            if node.name.startswith("_"):
                continue
            if ast.get_docstring(node) is None:
                found.append(node.name)
            if isinstance(node, ast.ClassDef):
                bodies.append(node.body)
    return found


def ids(paths):
    return [str(p.relative_to(ROOT)) for p in paths]


@pytest.mark.parametrize("path", CORRELATIONS, ids=ids(CORRELATIONS))
def test_correlation_has_source_and_range(path):
    if path.name not in WITHOUT_EQUATIONS:
        assert without_source_or_range(path.read_text()) == []


ALL_HEADERS = sorted(HEADERS.rglob("*.hpp"))


@pytest.mark.parametrize("path", ALL_HEADERS, ids=ids(ALL_HEADERS))
def test_public_function_of_header_is_documented(path):
    assert undocumented(path.read_text()) == []


MODULES = sorted((ROOT / "bindings/kettlecast").rglob("*.py"))


@pytest.mark.parametrize("path", MODULES, ids=ids(MODULES))
def test_public_python_name_has_a_docstring(path):
    assert without_docstring(path.read_text()) == []


def test_gaps_are_caught():
    assert undocumented("double f(double x);\n") == ["f"]
    assert undocumented("template <class T>\nT g(const T& x) {\n") == ["g"]
    assert undocumented("/// Value [K].\ntemplate <class T>\nT g(const T& x) {\n") == []
    assert undocumented("std::vector<double> h(int n);\n") == ["h"]
    assert without_source_or_range("/// Source: a book\n") == ["Range:"]
    assert without_source_or_range("// Source: not in the docstring\n") == ["Source:", "Range:"]
    assert without_docstring('"""M."""\ndef f(): pass\ndef _g(): pass\n') == ["f"]
    assert without_docstring('"""M."""\nclass A:\n    """A."""\n    def f(self): pass\n') == ["f"]
