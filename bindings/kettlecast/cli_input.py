"""What the command line is given: files, pairs of log and recipe, names with values."""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping
from pathlib import Path
from typing import Any

import typer

from . import _core, units
from .fit_file import read_fit
from .fit_result import Fit
from .kettle_file import read_kettle
from .recipe_file import read_recipe
from .run_log import Run, read_run

# LOG:RECIPE.toml, where either may begin with a drive letter and its colon
_PAIR = re.compile(r"(?P<log>.{2,}?):(?P<recipe>(?:[A-Za-z]:)?[^:]*\.toml)")

_PICTURES = (".png", ".svg", ".pdf")


def kettle_or_fit(path: Path) -> Fit | _core.Kettle:
    """A saved fit from a JSON file, a kettle from any other."""
    return read_fit(path) if path.suffix == ".json" else read_kettle(path)


def with_room(kettle: Fit | _core.Kettle, room: str | None) -> _core.Surroundings | None:
    """Surroundings of the kettle at another air temperature; None without one."""
    if room is None:
        return None
    body = kettle.kettle if isinstance(kettle, Fit) else kettle
    return body.surroundings.replace(temperature=units.temperature(room))


def pairs(texts: Iterable[str], option: str) -> dict[str, str]:
    """Texts such as "probe=degF" by their names."""
    found = {}
    for text in texts:
        name, equals, value = text.partition("=")
        if not (name.strip() and equals and value.strip()):
            raise typer.BadParameter(f'"{text}" must be NAME=VALUE', param_hint=option)
        found[name.strip()] = value.strip()
    return found


def numbers(texts: Iterable[str], option: str) -> dict[str, float]:
    """Texts such as "floor.efficiency=0.9" by their names."""
    found = {}
    for name, value in pairs(texts, option).items():
        try:
            found[name] = float(value)
        except ValueError:
            message = f'"{value}" of {name} is not a number'
            raise typer.BadParameter(message, param_hint=option) from None
    return found


def reading(
    column: Iterable[str] | None,
    unit: Iterable[str] | None,
    **others: object,
) -> dict[str, Any]:
    """Arguments of `read_run` from options of the command line.

    Parameters
    ----------
    column, unit :
        Texts such as "probe=T7_C" and "probe=degF".
    others :
        Arguments that need no change.
    """
    named = {
        "columns": pairs(column or (), "--column"),
        "units": pairs(unit or (), "--unit"),
    }
    return named | others


def read_runs(
    texts: Iterable[str],
    common: Path | None,
    how: Mapping[str, Any],
) -> list[Run]:
    """Runs of texts such as "monday.csv:stew.toml".

    Parameters
    ----------
    texts :
        Log and recipe of each run, or the log alone.
    common :
        Recipe of the runs that name none.
    how :
        Arguments of `read_run` that say how logs are read, see `reading`.
    """
    recipes: dict[Path, _core.Recipe] = {}
    runs = []
    for text in texts:
        found = _PAIR.fullmatch(text)
        log = found["log"] if found else text
        path = Path(found["recipe"]) if found else common
        if path is not None and path not in recipes:
            recipes[path] = read_recipe(path)
        recipe = None if path is None else recipes[path]
        runs.append(read_run(log, recipe=recipe, **how))
    return runs


def phase_named(text: str | None) -> str | int | None:
    """A phase by its number from 1 or by its name."""
    return int(text) if text is not None and text.isdecimal() else text


def addition_named(text: str) -> tuple[str, str]:
    """Name and mass of a text such as "carrot=20 lb"."""
    ((name, mass),) = pairs([text], "--more").items()
    return name, mass


def writable(path: Path | None) -> Path | None:
    """A file to be written: its folder must exist, so that long work is not lost at its end."""
    if path is not None and not path.absolute().parent.is_dir():
        raise typer.BadParameter(f"there is no folder {path.absolute().parent} for {path.name}")
    return path


def picture(path: Path | None) -> Path | None:
    """A picture to be written, by the ending of its name."""
    if path is not None and path.suffix.lower() not in _PICTURES:
        raise typer.BadParameter(f"{path.name} must end in {', '.join(_PICTURES)}")
    return writable(path)


def check_exclusive(**given: object) -> None:
    """Exactly one of the options must be given."""
    if sum(value is not None for value in given.values()) != 1:
        names = " or ".join(f"--{name.rstrip('_')}" for name in given)
        raise typer.BadParameter(f"give either {names}", param_hint=names)
