"""House rules: sizes of files and functions, no stubs, a closed top level."""

import ast
import re
import subprocess
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parents[2]
TOP_LEVEL = {
    "CMakeLists.txt",
    "CMakePresets.json",
    "DEVELOPERS.md",
    "LICENSE",
    "README.md",
    "bindings",
    "libsim",
    "notebooks",
    "pyproject.toml",
    "tests",
    "validation",
}
MADE = {"build", "dist"}  # made by builds, ignored by git
LONGEST_SOURCE, LONGEST_HEADER, LONGEST_FUNCTION = 400, 300, 60
# Put together here so that this file does not hold the words it looks for.
STUB = re.compile("|".join(["TO" + "DO", "FIX" + "ME", "X" * 3 + r"\b", "Not" + "Implemented"]))
HOSTS = ["py" + "pi", "python" + "hosted", "ana" + "conda", "npm" + "js", "crates" + r"\.io"]
REGISTRY = re.compile("|".join(HOSTS))
BROAD = re.compile(r"raises\(\s*(Base)?Exception\b")


def project_files(*suffixes: str) -> list[Path]:
    """Files of the project with one of the suffixes, without what builds made."""
    found = []
    for top in sorted(TOP_LEVEL | {".ci", ".pre-commit-config.yaml", ".clang-format"}):
        path = ROOT / top
        inside = sorted(path.rglob("*")) if path.is_dir() else [path]
        found += [p for p in inside if p.is_file() and "__pycache__" not in p.parts]
    return [p for p in found if not suffixes or p.suffix in suffixes]


def too_long(path: Path, text: str) -> bool:
    """Whether a source or header has more lines than allowed."""
    limit = LONGEST_HEADER if path.suffix == ".hpp" else LONGEST_SOURCE
    return len(text.splitlines()) > limit


def python_functions(text: str) -> list[tuple[str, int]]:
    """Name and number of lines, docstring left out, of every function of a Python source."""
    sizes = []
    for node in ast.walk(ast.parse(text)):
        if isinstance(node, ast.FunctionDef | ast.AsyncFunctionDef):
            first = node.body[0]
            documented = ast.get_docstring(node, clean=False) is not None
            start = (first.end_lineno or 0) if documented else node.lineno - 1
            sizes.append((node.name, (node.end_lineno or 0) - start))
    return sizes


def cpp_functions(text: str) -> list[tuple[str, int]]:
    """First line and number of lines of every function-like block of a C++ source.

    A block is a line that ends in ``) {`` or the like at an indentation of at most two, up to the
    closing brace at the same indentation.
    """
    lines = text.splitlines()
    sizes = []
    for start, line in enumerate(lines):
        indent = len(line) - len(line.lstrip())
        if indent > 2 or not re.search(r"\)[^;{}]*\{$|^TEST_CASE\(.*\{$", line):
            continue
        closing = " " * indent + "}"
        for end in range(start + 1, len(lines)):
            if lines[end].startswith(closing):
                sizes.append((line.strip(), end - start + 1))
                break
    return sizes


def long_functions(path: Path, text: str) -> list[str]:
    """Functions of a source with more lines than allowed."""
    sizes = python_functions(text) if path.suffix == ".py" else cpp_functions(text)
    return [f"{path.name}: {name}: {size}" for name, size in sizes if size > LONGEST_FUNCTION]


SOURCES = project_files(".cpp", ".hpp", ".py")
relative = [str(p.relative_to(ROOT)) for p in SOURCES]


def test_sources_are_found():
    assert len(SOURCES) > 100


@pytest.mark.parametrize("path", SOURCES, ids=relative)
def test_file_is_short_and_finished(path):
    text = path.read_text()
    assert not too_long(path, text)
    assert long_functions(path, text) == []
    assert STUB.findall(text) == []
    assert BROAD.findall(text) == []


def test_no_file_names_a_registry():
    texts = project_files(".cpp", ".hpp", ".py", ".md", ".toml", ".txt", ".json", ".yaml", ".ipynb")
    texts += [ROOT / ".ci/run"]
    named = [
        str(p.relative_to(ROOT)) for p in texts if p.exists() and REGISTRY.search(p.read_text())
    ]
    assert named == []


def test_continuous_integration_runs_the_command_of_the_readme():
    command = (ROOT / ".ci/run").read_text().splitlines()[-1]
    assert command.startswith("apt-get ")
    assert command in (ROOT / "README.md").read_text()


def test_top_level_is_closed():
    listed = subprocess.run(
        ["git", "ls-files", "--cached", "--others", "--exclude-standard"],
        cwd=ROOT,
        capture_output=True,
        text=True,
    )
    if listed.returncode == 0:
        names = {Path(line).parts[0] for line in listed.stdout.splitlines()}
    else:
        names = {p.name for p in ROOT.iterdir()} - MADE
    assert {n for n in names if not n.startswith(".")} <= TOP_LEVEL


def test_long_things_are_caught():
    body = "\n".join("  x();" for _ in range(LONGEST_FUNCTION))
    assert long_functions(Path("a.cpp"), f"void f() {{\n{body}\n}}\n")
    assert long_functions(Path("a.cpp"), f'TEST_CASE("x") {{\n{body}\n}}\n')
    assert not long_functions(Path("a.cpp"), "void f() {\n  x();\n}\n")
    assert long_functions(
        Path("a.py"), "def f():\n" + body.replace("  x();", "    x()") + "\n    y()"
    )
    assert too_long(Path("a.hpp"), "\n" * (LONGEST_HEADER + 1))
    assert not too_long(Path("a.cpp"), "\n" * (LONGEST_HEADER + 1))
    assert too_long(Path("a.py"), "\n" * (LONGEST_SOURCE + 1))


def test_stubs_and_broad_catches_are_caught():
    assert STUB.search("raise " + "Not" + "ImplementedError")
    assert STUB.search("# " + "TO" + "DO later")
    assert BROAD.search("pytest.raises" + "(Exception)")
    assert not BROAD.search("pytest.raises(OutsideValidity)")
    assert REGISTRY.search("https://py" + "pi.org/simple")
