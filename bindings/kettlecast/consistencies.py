"""Bundled consistencies: how thick liquids are, and how they thicken."""

from __future__ import annotations

import functools
from collections.abc import Mapping
from importlib import resources
from pathlib import Path
from types import MappingProxyType
from typing import Annotated

from . import _core
from .errors import InvalidArgument, UnknownName
from .file_model import Table, nearest, plain_name, quantity, read_toml, refusal, validate

_Temperature = Annotated[float, quantity("temperature")]


class ConsistencyTable(Table):
    """Table `[consistencies.NAME]` of a file; plain numbers are in SI units."""

    also: tuple[str, ...] = ()
    consistency: float | None = None
    flow_index: float | None = None
    reference_temperature: _Temperature | None = None
    activation_energy: float | None = None
    reference_solids: Annotated[float, quantity("share")] | None = None
    solids_exponent: float | None = None
    thickens_from: _Temperature | None = None
    thickens_until: _Temperature | None = None
    thickening_factor: float | None = None
    thickening_rate: float | None = None
    source: str = ""


class _ConsistenciesFile(Table):
    consistencies: dict[str, ConsistencyTable]


def consistency_from(table: ConsistencyTable) -> _core.Consistency:
    """The consistency of one table, not checked."""
    keys = [key for key in ConsistencyTable.model_fields if key != "also"]
    return _core.Consistency(**table.given(*keys))


def consistencies_from(
    tables: Mapping[str, ConsistencyTable], path: str | Path
) -> dict[str, _core.Consistency]:
    """The consistencies of the tables of a file by plain name, other names included.

    Raises
    ------
    FileFormatError
        Numbers of no liquid, or one name for two rows.
    """
    found: dict[str, _core.Consistency] = {}
    problems: list[tuple[str, str]] = []
    for name, table in tables.items():
        made = consistency_from(table)
        try:
            _core.check(made)
        except InvalidArgument as error:
            problems.append((f"consistencies.{name}", str(error)))
        for word in (name, *table.also):
            if found.setdefault(plain_name(word), made) is not made:
                problems.append((f"consistencies.{name}", f'"{word}" already names another row'))
    if problems:
        raise refusal(path, problems)
    return found


@functools.cache
def bundled_consistencies() -> Mapping[str, _core.Consistency]:
    """The bundled consistencies by plain name, other names included."""
    path = Path(str(resources.files(__package__) / "consistencies.toml"))
    tables = validate(_ConsistenciesFile, read_toml(path), path)
    return MappingProxyType(consistencies_from(tables.consistencies, path))


def consistency(name: str) -> _core.Consistency:
    """A bundled consistency by name; case, underscores and hyphens do not matter.

    Raises
    ------
    UnknownName
        No such row; the message lists the names.

    Examples
    --------
    >>> consistency("Tomato_paste").consistency
    18.7
    """
    known = bundled_consistencies()
    wanted = plain_name(name)
    if wanted in known:
        return known[wanted]
    names = ", ".join(sorted(known))
    raise UnknownName(
        f'consistency "{name}" is not known{nearest(wanted, known)}; there are: {names}'
    )
