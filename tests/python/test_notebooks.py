"""Notebooks: they run without an error, are kept without outputs, and the tour leaves nothing out.

A notebook runs in a process of its own with a kernel of its own, so that what third parties warn
about is no error here; a table of the tour stops by itself if a computed number is too far from
the published one beside it.
"""

import json
import os
import re
import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path
from types import ModuleType
from typing import Any

import pytest

import kettlecast as kc

FOLDER = Path(__file__).resolve().parents[2] / "notebooks"
NOTEBOOKS = sorted(FOLDER.glob("*.ipynb")) if FOLDER.is_dir() else []
TOUR = FOLDER / "model_tour.ipynb"
LONGEST = 90.0  # of one notebook [s]

pytestmark = pytest.mark.skipif(not FOLDER.is_dir(), reason="notebooks/ is not there")

RUN = """
import sys
import nbclient
import nbformat

notebook = nbformat.read(sys.argv[1], as_version=4)
nbformat.validate(notebook)
try:
    nbclient.NotebookClient(notebook, kernel_name="python3").execute()
except nbclient.exceptions.CellExecutionError as error:
    sys.exit(str(error))
"""


def cells(path: Path, kind: str) -> list[dict[str, Any]]:
    notebook = json.loads(path.read_text(encoding="utf-8"))
    return [cell for cell in notebook["cells"] if cell["cell_type"] == kind]


def public(module: ModuleType) -> list[str]:
    return [name for name in dir(module) if not name.startswith("_")]


def cards() -> Iterator[str]:
    """Names of all public functions as the tour writes them, `module.function`.

    The components of food are one card: eight sets of coefficients of the same three quadratics,
    so that the name of a component stands for its functions.
    """
    for group in (kc.properties, kc.transfer):
        name = group.__name__.rpartition(".")[2]
        for member in public(group):
            part = getattr(group, member)
            if isinstance(part, ModuleType):
                yield from (f"{member}.{function}" for function in public(part))
            else:
                yield f"{name}.{member}"
    for name in ("vessel", "control"):
        yield from (f"{name}.{function}" for function in public(getattr(kc, name)))


def without_line(text: str) -> list[str]:
    """Cards that stand nowhere in a text in backquotes, as in a table of the tour."""
    named = set(re.findall(r"`([\w.]+)`", text))
    return [card for card in cards() if card not in named]


@pytest.mark.parametrize("path", NOTEBOOKS, ids=lambda path: path.name)
def test_runs_without_an_error(path: Path, tmp_path: Path) -> None:
    own = {"IPYTHONDIR": tmp_path, "JUPYTER_CONFIG_DIR": tmp_path, "JUPYTER_RUNTIME_DIR": tmp_path}
    environment = os.environ | {name: str(folder) for name, folder in own.items()}
    done = subprocess.run(
        [sys.executable, "-c", RUN, str(path)],
        env=environment,
        capture_output=True,
        text=True,
        timeout=LONGEST,
        check=False,
    )
    assert done.returncode == 0, re.sub(r"\x1b\[[0-9;]*m", "", done.stderr)[-4000:]


@pytest.mark.parametrize("path", NOTEBOOKS, ids=lambda path: path.name)
def test_is_kept_without_outputs(path: Path) -> None:
    code = cells(path, "code")
    assert code
    assert [cell["id"] for cell in code if cell["outputs"]] == []
    assert [cell["id"] for cell in code if cell["execution_count"] is not None] == []
    # An editor leaves times and states of widgets there, which change with every run.
    assert [cell["id"] for cell in code if cell["metadata"]] == []


def test_the_tour_has_a_line_for_every_card() -> None:
    text = "\n".join("".join(cell["source"]) for cell in cells(TOUR, "markdown"))
    assert without_line(text) == [], "add a line to a table of notebooks/model_tour.ipynb"


def test_a_card_without_a_line_is_found() -> None:
    text = " ".join(f"`{card}`" for card in cards() if card != "salt.density")
    assert without_line(text.replace("`foods.density`", "foods.density")) == [
        "foods.density",
        "salt.density",
    ]
