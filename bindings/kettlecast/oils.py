"""Smoke points and viscosities of oils and fats as sources print them.

Smoke points are those of fresh oil. They fall with use, by tens of kelvin in a fryer, and tables
differ by as much for one name; keep well below.
"""

from __future__ import annotations

import difflib
import functools
from collections.abc import Mapping
from dataclasses import dataclass
from importlib import resources
from pathlib import Path
from types import MappingProxyType
from typing import Annotated

from ._core import properties
from .errors import OutsideValidity, UnknownName
from .file_model import Table, plain_name, quantity, read_toml, validate

_Temperature = Annotated[float, quantity("temperature")]


class _OilTable(Table):
    also: tuple[str, ...] = ()
    smoke_point: tuple[_Temperature, _Temperature] | None = None
    viscosity: float | None = None
    viscosity_at: _Temperature | None = None
    source: str


class _OilsFile(Table):
    oils: dict[str, _OilTable]


@dataclass(frozen=True)
class Oil:
    """An oil or fat with what its source prints; None where it prints nothing."""

    name: str
    smoke_point: tuple[float, float] | None  #: lowest, highest, fresh [K]
    viscosity: float | None  #: dynamic, at `viscosity_at` [Pa s]
    viscosity_at: float | None  #: [K]
    source: str


@functools.cache
def _oils() -> Mapping[str, Oil]:
    path = Path(str(resources.files(__package__) / "oils.toml"))
    found = {}
    for name, table in validate(_OilsFile, read_toml(path), path).oils.items():
        point, printed, at = table.smoke_point, table.viscosity, table.viscosity_at
        made = Oil(name, point, printed, at, table.source)
        for word in (name, *table.also):
            found[_key(word)] = made
    return MappingProxyType(found)


def _key(name: str) -> str:
    words = plain_name(name.replace(",", " ")).split()
    return " ".join(sorted(word for word in words if word != "oil"))


def oil_names() -> list[str]:
    """Names of the oils and fats, in alphabetical order, without other names."""
    return sorted({oil.name for oil in _oils().values()})


def oil(name: str) -> Oil:
    """An oil or fat by name; case, order of the words and "oil" do not matter.

    Raises
    ------
    UnknownName
        No such oil; the message lists the nearest names.

    Examples
    --------
    >>> oil("refined peanut oil").name
    'peanut, refined'
    """
    known = _oils()
    if _key(name) in known:
        return known[_key(name)]
    close = difflib.get_close_matches(_key(name), known, n=3, cutoff=0.5)
    names = list(dict.fromkeys(known[word].name for word in close)) or oil_names()
    told = "nearest" if close else "there are"
    raise UnknownName(f'oil "{name}" is not known; {told}: {"; ".join(names)}')


def viscosity(name: str, temperature: float) -> float:
    """Dynamic viscosity of an oil [Pa s]: its printed value, falling as that of the mean oil.

    Parameters
    ----------
    name :
        Of the oil.
    temperature :
        278 to 473 [K].

    Raises
    ------
    UnknownName
        No such oil.
    OutsideValidity
        No viscosity of this oil is printed; `properties.oil.viscosity` is the mean oil.
    """
    found = oil(name)
    if found.viscosity is None or found.viscosity_at is None:
        raise OutsideValidity(
            f'oil "{found.name}" has no printed viscosity; properties.oil.viscosity is a mean oil'
        )
    return properties.oil.viscosity_like(found.viscosity, found.viscosity_at, temperature)
