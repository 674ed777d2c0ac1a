"""What kettle, recipe and food files share: fields read from text, and errors that name the key."""

from __future__ import annotations

import difflib
import re
import tomllib
from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any, TypeVar

import pydantic
from pydantic_core import ErrorDetails, core_schema

from . import units
from .errors import FileFormatError, InvalidArgument

_LINE = re.compile(r"at line (\d+)")


class Table(pydantic.BaseModel):
    """A table of a file; keys that are not listed are refused."""

    model_config = pydantic.ConfigDict(extra="forbid", frozen=True, arbitrary_types_allowed=True)

    def given(self, *keys: str, **renamed: str) -> dict[str, Any]:
        """Values of the keys present in the file, some under another name (`new="old"`)."""
        names = {key: key for key in keys} | renamed
        values = {new: getattr(self, old) for new, old in names.items()}
        return {new: value for new, value in values.items() if value is not None}


AnyTable = TypeVar("AnyTable", bound=Table)


@dataclass(frozen=True, eq=False)
class Reads:
    """Mark of a field: the function that reads its text, and its JSON Schema."""

    read: Callable[[Any], Any]
    schema: Mapping[str, Any] = field(default_factory=dict)

    def __get_pydantic_core_schema__(self, source: Any, handler: Any) -> core_schema.CoreSchema:
        return core_schema.no_info_plain_validator_function(self.read)

    def __get_pydantic_json_schema__(self, schema: Any, handler: Any) -> dict[str, Any]:
        return dict(self.schema)


@dataclass(frozen=True, eq=False)
class Worded:
    """Mark of a table that a word may stand for: what else its JSON Schema says of the word."""

    schema: Mapping[str, Any] = field(default_factory=dict)

    def __get_pydantic_json_schema__(self, schema: Any, handler: Any) -> dict[str, Any]:
        return {"anyOf": [handler(schema), {"type": "string", **self.schema}]}


def plain_number(example: float, unit: str = "") -> Reads:
    """A field such as `activation_energy = 12e3`, in SI units without unit."""
    told = f"a plain number in {unit}" if unit else "a plain number"

    def read(value: object) -> float:
        if isinstance(value, bool) or not isinstance(value, (int, float)):
            hint = f"write it without unit and quotes, for example {example:g}"
            raise InvalidArgument(f'"{value}" is not {told}; {hint}')
        return float(value)

    return Reads(read, {"type": "number", "description": told, "examples": [example]})


def quantity(kind: str) -> Reads:
    """A field such as `mass = "12 kg"`, read as SI."""
    entry = units.kind_named(kind)
    told = f"{kind.replace('_', ' ')} with unit: {entry.allowed}"
    schema = {"type": "string", "description": told, "examples": [entry.example]}
    return Reads(lambda text: units.parse(text, kind), schema)


def choice(enumeration: Any, *, leave_out: str = "") -> Reads:
    """A field that names a member of an enumeration of the compiled module."""
    members = dict(enumeration.__members__)
    members.pop(leave_out, None)

    def read(text: object) -> Any:
        if not isinstance(text, str) or text not in members:
            raise InvalidArgument(
                f'"{text}" is not allowed{nearest(str(text), members)}; allowed: '
                + ", ".join(f'"{name}"' for name in members)
            )
        return members[text]

    return Reads(read, {"type": "string", "enum": list(members)})


def plain_name(name: str) -> str:
    """A name as names are compared: lower case, with blanks for underscores and hyphens."""
    return " ".join(name.lower().replace("_", " ").replace("-", " ").split())


def nearest(name: str, known: Iterable[str]) -> str:
    """` (did you mean "..."?)` with the known name nearest to `name`, or nothing."""
    words = {word.lower(): word for word in known}
    found = difflib.get_close_matches(name.lower(), words, n=1)
    return f' (did you mean "{words[found[0]]}"?)' if found else ""


def read_toml(path: str | Path) -> dict[str, Any]:
    """The tables of a TOML file.

    Raises
    ------
    FileFormatError
        The file cannot be opened or is not TOML; with the line.
    """
    try:
        return tomllib.loads(Path(path).read_text(encoding="utf-8-sig"))
    except OSError as error:
        raise FileFormatError(f"{path}: {error.strerror}", file=str(path)) from error
    except UnicodeDecodeError as error:
        raise FileFormatError(f"{path}: not UTF-8 text: {error}", file=str(path)) from error
    except tomllib.TOMLDecodeError as error:
        found = _LINE.search(str(error))
        line = int(found[1]) if found else None
        raise FileFormatError(f"{path}: not TOML: {error}", file=str(path), line=line) from error


def validate(model: type[AnyTable], tables: Mapping[str, Any], path: str | Path) -> AnyTable:
    """The tables of a file as a checked model.

    Raises
    ------
    FileFormatError
        Lists every problem with its key, the value given and what is allowed.
    """
    try:
        return model.model_validate(tables)
    except pydantic.ValidationError as error:
        problems = error.errors(include_url=False)
        raise refusal(path, [(_key(it), _problem(model, it)) for it in problems]) from None


def refusal(path: str | Path, problems: list[tuple[str, str]]) -> FileFormatError:
    """The error that lists all problems of a file, each with its key."""
    told = [f"{key}: {text}" for key, text in problems]
    text = told[0] if len(told) == 1 else f"{len(told)} problems\n  " + "\n  ".join(told)
    return FileFormatError(f"{path}: {text}", file=str(path), key=problems[0][0])


def _key(problem: ErrorDetails) -> str:
    """Path of the key with lists counted from 1, for example `phase[2].add[1].mass`."""
    text = ""
    for part in problem["loc"]:
        text += f"[{part + 1}]" if isinstance(part, int) else f".{part}"
    return text.removeprefix(".") or "file"


def _problem(model: type[Table], problem: ErrorDetails) -> str:
    if problem["type"] == "value_error":
        return str(problem["ctx"]["error"])
    if problem["type"] == "missing":
        return "this key is missing"
    if problem["type"] == "extra_forbidden":
        keys = _allowed_keys(model, problem["loc"][:-1])
        hint = nearest(str(problem["loc"][-1]), keys)
        return f"unknown key{hint}; allowed: {', '.join(keys)}"
    if problem["type"] in {"model_type", "dict_type"}:
        return f"must be a table, got {problem['input']!r}"
    if problem["type"] == "tuple_type":
        return f"must be an array, got {problem['input']!r}"
    return f"{problem['msg']}, got {problem['input']!r}"


def _allowed_keys(model: type[Table], location: tuple[int | str, ...]) -> list[str]:
    """Keys of the table that a problem lies in, found by walking down the JSON Schema."""
    whole = model.model_json_schema()
    node: Any = whole
    for part in location:
        node = _resolved(whole, node)
        if isinstance(part, int):
            node = node["items"]
        else:
            node = node.get("properties", {}).get(part) or node["additionalProperties"]
    return list(_resolved(whole, node)["properties"])


def _resolved(whole: Any, node: Any) -> Any:
    """The schema behind a reference or an optional value."""
    for option in node.get("anyOf", ()):
        if option.get("type") != "null":
            return _resolved(whole, option)
    if "$ref" in node:
        return whole["$defs"][node["$ref"].rsplit("/", 1)[1]]
    return node
