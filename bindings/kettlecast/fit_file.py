"""A fit as one JSON file: kettle, coefficients, spread and where they came from."""

from __future__ import annotations

import json
import os
import tempfile
from dataclasses import asdict
from enum import Enum
from pathlib import Path
from typing import Any

import numpy as np

from . import _core
from .errors import Error, FileFormatError
from .fit_problem import FitOptions
from .fit_result import Fit, Param, RunQuality

FORMAT = "kettlecast-fit-1"


def record_to_plain(record: Any) -> Any:
    """A compiled record as dicts, lists, numbers and enum names."""
    if isinstance(record, Enum):
        return record.name
    if hasattr(record, "to_dict"):
        return {key: record_to_plain(value) for key, value in record.to_dict().items()}
    if isinstance(record, list):
        return [record_to_plain(one) for one in record]
    return record


def record_from_plain(model: Any, plain: dict[str, Any]) -> Any:
    """The compiled record that `record_to_plain` made a dict of; `model` shows the types."""
    values = {}
    for key, value in plain.items():
        current = getattr(model, key)
        if isinstance(current, Enum):
            value = type(current)[value]
        elif hasattr(current, "to_dict"):
            value = record_from_plain(current, value)
        values[key] = value
    return model.replace(**values)


def write_text_safely(path: str | Path, text: str) -> None:
    """Write a file so that an interruption leaves the old file or the new one, never half."""
    target = Path(path)
    handle, temporary = tempfile.mkstemp(dir=target.parent, prefix=f".{target.name}.")
    try:
        with os.fdopen(handle, "w", encoding="utf-8") as file:
            file.write(text)
        os.replace(temporary, target)
    except BaseException:
        Path(temporary).unlink(missing_ok=True)
        raise


def write_fit(fit: Fit, path: str | Path) -> None:
    """Write a fit to a JSON file."""
    options = asdict(fit.options) | {"integration": record_to_plain(fit.options.integration)}
    plain = {
        "format": FORMAT,
        "kettle": record_to_plain(fit.kettle),
        "coefficients": fit.coefficients.to_dict(),
        "params": {name: asdict(one) for name, one in fit.params.items()},
        "fixed": dict(fit.fixed),
        "covar": fit.covar.tolist(),
        "scaled_covar": fit.scaled_covar.tolist(),
        "runs": [asdict(run) for run in fit.runs],
        "options": options,
        "chisqr": fit.chisqr,
        "redchi": fit.redchi,
        "ndata": fit.ndata,
        "neffective": fit.neffective,
        "nfev": fit.nfev,
        "success": fit.success,
        "message": fit.message,
    }
    write_text_safely(path, json.dumps(plain, indent=1) + "\n")


def _fit_from(plain: dict[str, Any]) -> Fit:
    options = dict(plain["options"])
    options["integration"] = record_from_plain(_core.Options(), options["integration"])
    scalars = ("chisqr", "redchi", "ndata", "neffective", "nfev", "success", "message")
    return Fit(
        kettle=record_from_plain(_core.Kettle(), plain["kettle"]),
        coefficients=_core.Coefficients(plain["coefficients"]),
        params={name: Param(**one) for name, one in plain["params"].items()},
        fixed=plain["fixed"],
        covar=np.array(plain["covar"]),
        scaled_covar=np.array(plain["scaled_covar"]),
        runs=tuple(RunQuality(**run) for run in plain["runs"]),
        options=FitOptions(**options),
        **{key: plain[key] for key in scalars},
    )


def read_fit(path: str | Path) -> Fit:
    """Read a fit that `Fit.save` wrote.

    Raises
    ------
    FileFormatError
        The file is not such a fit, or a part of it is missing or impossible.
    """
    try:
        plain = json.loads(Path(path).read_text(encoding="utf-8"))
    except ValueError as error:
        raise FileFormatError(f"{path}: not a JSON file: {error}", file=str(path)) from error
    found = plain.get("format") if isinstance(plain, dict) else None
    if found != FORMAT:
        message = f"{path}: format must be {FORMAT!r}, got {found!r}; is this a saved fit?"
        raise FileFormatError(message, file=str(path), key="format")
    try:
        fit = _fit_from(plain)
        _core.check(fit.kettle)
    except (KeyError, TypeError, AttributeError, Error) as error:
        message = f"{path}: a part of the fit is missing or impossible: {error}"
        raise FileFormatError(message, file=str(path)) from error
    return fit
