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
from .file_model import (
    Table,
    nearest,
    plain_name,
    plain_number,
    quantity,
    read_toml,
    refusal,
    validate,
)

_Temperature = Annotated[float, quantity("temperature")]


class ConsistencyTable(Table):
    """How thick a liquid is, in a file; plain numbers are in SI units."""

    consistency: Annotated[float, plain_number(0.7, "Pa s^n")] | None = None
    flow_index: Annotated[float, plain_number(0.5)] | None = None
    reference_temperature: _Temperature | None = None
    activation_energy: Annotated[float, plain_number(12e3, "J/mol")] | None = None
    reference_solids: Annotated[float, quantity("share")] | None = None
    solids_exponent: Annotated[float, plain_number(7.4)] | None = None
    thickens_from: _Temperature | None = None
    thickens_until: _Temperature | None = None
    thickening_factor: Annotated[float, plain_number(30.0)] | None = None
    thickening_rate: Annotated[float, plain_number(0.01, "1/s")] | None = None
    source: str = ""

    def made(self) -> _core.Consistency:
        """The record with these values, not yet checked."""
        return _core.Consistency(**self.given(*ConsistencyTable.model_fields))


class NamedConsistency(ConsistencyTable):
    """Table `[consistencies.NAME]` of a file."""

    also: tuple[str, ...] = ()


class _ConsistenciesFile(Table):
    consistencies: dict[str, NamedConsistency]


def consistencies_from(
    tables: Mapping[str, NamedConsistency], path: str | Path
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
        made = table.made()
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


def consistency_name(wanted: _core.Consistency) -> str | None:
    """Name of the bundled consistency that equals a record; None if there is none."""
    return next((name for name, one in bundled_consistencies().items() if one == wanted), None)


def known_consistency(value: object) -> object:
    """What a file gives for a consistency, with the table of a bundled one for its name.

    Raises
    ------
    InvalidArgument
        A name that is not known, or neither a name nor a table.
    """
    if isinstance(value, str):
        try:
            found = consistency(value)
        except UnknownName as error:
            raise InvalidArgument(str(error)) from None
        return ConsistencyTable.model_construct(**found.to_dict())
    if not isinstance(value, (Mapping, ConsistencyTable)):
        raise InvalidArgument(f'must be a name such as "custard", or a table; got {value!r}')
    return value
