"""A fit as one JSON file: kettle, coefficients, spread and where they came from."""

from __future__ import annotations

import json
import os
from dataclasses import asdict, replace
from enum import Enum
from pathlib import Path
from typing import Any

import numpy as np

from . import _core
from .error_model import ErrorModel
from .errors import Error, FileFormatError, InvalidArgument
from .fit_draws import USUAL_SEED
from .fit_problem import FitOptions, Vector
from .fit_result import Fit, Param, RunQuality

FORMAT = "kettlecast-fit-2"
_OLDER = ("kettlecast-fit-1",)  # without errors of the residuals and values of runs

# Draws kept in place of the logs, as many as two default forecasts draw.
_KEPT_DRAWS = 200


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
    temporary = target.with_name(f".{target.name}.{os.getpid()}")
    try:
        temporary.write_text(text, encoding="utf-8")
        os.replace(temporary, target)
    except BaseException:
        temporary.unlink(missing_ok=True)
        raise


def write_fit(fit: Fit, path: str | Path) -> None:
    """Write a fit to a JSON file."""
    options = asdict(fit.options) | {"integration": record_to_plain(fit.options.integration)}
    plain = {
        "format": FORMAT,
        "version": fit.version,
        "kettle": record_to_plain(fit.kettle),
        "coefficients": fit.coefficients.to_dict(),
        "params": {name: asdict(one) for name, one in fit.params.items()},
        "fixed": dict(fit.fixed),
        "covar": fit.covar.tolist(),
        "scaled_covar": fit.scaled_covar.tolist(),
        "per_run": list(fit.per_run),
        "of_runs": [one.to_dict() for one in fit.of_runs],
        "errors": asdict(fit.errors),
        "runs": [asdict(run) for run in fit.runs],
        "options": options,
        "chisqr": fit.chisqr,
        "redchi": fit.redchi,
        "ndata": fit.ndata,
        "neffective": fit.neffective,
        "nfev": fit.nfev,
        "success": fit.success,
        "message": fit.message,
        "kept_draws": _draws_of(fit),
    }
    write_text_safely(path, json.dumps(plain, indent=1) + "\n")


def _draws_of(fit: Fit) -> list[list[float]]:
    """Scaled draws for forecasts without the logs."""
    if fit.kept_draws is not None:
        return [list(one) for one in fit.kept_draws.tolist()]
    return [list(one) for one in fit.scaled_draws(_KEPT_DRAWS, USUAL_SEED).tolist()]


def _kept_draws(plain: dict[str, Any]) -> Vector:
    """Draws that a file keeps: any number, of as many finite values as there are coefficients."""
    drawn = np.array(plain["kept_draws"], dtype=float)
    count = len(plain["params"])
    if drawn.ndim != 2 or drawn.shape[1] != count or not np.all(np.isfinite(drawn)):
        raise InvalidArgument(f"kept_draws must hold rows of {count} finite numbers")
    return drawn


def _matrix(plain: dict[str, Any], key: str) -> Vector:
    """A covariance: square, finite, as large as there are coefficients, no negative variance."""
    count = len(plain["params"])
    try:
        matrix = np.array(plain[key], dtype=float)
    except (TypeError, ValueError):
        matrix = np.array(np.nan)
    if matrix.shape != (count, count) or not np.all(np.isfinite(matrix)):
        raise InvalidArgument(f"{key} must hold {count} rows of {count} finite numbers")
    if np.any(np.linalg.eigvalsh(matrix) < -1e-9 * np.abs(matrix).max(initial=0.0)):
        raise InvalidArgument(f"{key} must be a covariance, but has a negative variance")
    return matrix


def _values(plain: dict[str, Any], key: str) -> dict[str, float]:
    """Coefficients by name, each known and within its bounds."""
    for name, value in plain[key].items():
        if not isinstance(value, (int, float)):
            raise InvalidArgument(f"{key}: {name} must be a number, got {value!r}")
    _core.Coefficients(plain[key])
    return dict(plain[key])


def _params(plain: dict[str, Any]) -> dict[str, Param]:
    params = {name: Param(**one) for name, one in plain["params"].items()}
    for one in params.values():
        _values({"params": {one.name: one.value}}, "params")
    return params


def _run_quality(plain: dict[str, Any]) -> RunQuality:
    run = RunQuality(**plain)
    return replace(run, lateness=tuple(float(late) for late in run.lateness))


def _fit_from(plain: dict[str, Any]) -> Fit:
    options = dict(plain["options"])
    options["integration"] = record_from_plain(_core.Options(), options["integration"])
    scalars = ("chisqr", "redchi", "ndata", "neffective", "nfev", "success", "message", "version")
    return Fit(
        kettle=record_from_plain(_core.Kettle(), plain["kettle"]),
        coefficients=_core.Coefficients(_values(plain, "coefficients")),
        params=_params(plain),
        fixed=_values(plain, "fixed"),
        covar=_matrix(plain, "covar"),
        scaled_covar=_matrix(plain, "scaled_covar"),
        per_run=tuple(plain["per_run"]),
        of_runs=tuple(_core.Coefficients(one) for one in plain["of_runs"]),
        errors=ErrorModel(**plain["errors"]),
        runs=tuple(_run_quality(run) for run in plain["runs"]),
        options=FitOptions(**options),
        kept_draws=_kept_draws(plain),
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
    except OSError as error:
        raise FileFormatError(f"{path}: {error.strerror}", file=str(path)) from error
    except ValueError as error:
        raise FileFormatError(f"{path}: not a JSON file: {error}", file=str(path)) from error
    found = plain.get("format") if isinstance(plain, dict) else None
    if found in _OLDER:
        message = f"{path}: a fit of an older version ({found}); fit the runs again"
        raise FileFormatError(message, file=str(path), key="format")
    if found != FORMAT:
        message = f"{path}: format must be {FORMAT!r}, got {found!r}; is this a saved fit?"
        raise FileFormatError(message, file=str(path), key="format")
    try:
        fit = _fit_from(plain)
        _core.check(fit.kettle)
    except (KeyError, TypeError, ValueError, AttributeError, Error) as error:
        message = f"{path}: a part of the fit is missing or impossible: {error}"
        raise FileFormatError(message, file=str(path)) from error
    return fit
