"""The command `next`: which run to log next."""

from __future__ import annotations

import json
from collections.abc import Sequence
from pathlib import Path
from typing import Annotated

import typer

from . import _core, cli_input
from . import cli_options as options
from .candidate_runs import candidate_runs
from .cli_output import attention, forecast_doubts, say, say_json, table, working
from .fit_file import read_fit
from .forecast_target import RESULTS, Target
from .next_run import NextRun, next_run
from .recipe_file import read_recipe
from .recipe_writer import write_recipe

_FitFile = Annotated[Path, typer.Argument(metavar="FIT", help="A saved fit (.json).")]
_Recipes = Annotated[
    list[Path] | None,
    typer.Argument(
        metavar="[RECIPE]...",
        help="Runs to choose from (.toml). Default: plain runs with water that fit the kettle.",
    ),
]
_TargetFile = Annotated[
    Path | None,
    typer.Option(
        "--target", metavar="FILE", help="The recipe (.toml) whose forecast is to be surer."
    ),
]
_Result = Annotated[
    str,
    typer.Option("--result", metavar="NAME", help=f"What of it: {', '.join(RESULTS)}."),
]
_OfPhase = Annotated[
    str | None,
    typer.Option("--phase", metavar="PHASE", help="Of this phase of it: number or name."),
]
_NoHeat = Annotated[
    bool,
    typer.Option("--closed-loop", help="The log will not show when the heat was on."),
]
_Write = Annotated[
    Path | None,
    typer.Option("--write", metavar="FILE", callback=cli_input.writable, help="Write the best."),
]


def command(
    fit: _FitFile,
    recipe: _Recipes = None,
    target: _TargetFile = None,
    result: _Result = "duration",
    phase: _OfPhase = None,
    room: options.Room = None,
    closed_loop: _NoHeat = False,
    write: _Write = None,
    as_json: options.Json = False,
) -> None:
    """Say which run to log next, so that the kettle becomes better known.

    Each run is forecast with the fit; the table says what its log would tell, and what it costs.
    With --target, also how much surer that forecast would be; else the run that tells most about
    all coefficients together comes first.
    """
    known = read_fit(fit)
    runs = _candidates(known.kettle, recipe or [])
    goal = None
    if target is not None:
        goal = Target(read_recipe(target), result, cli_input.phase_named(phase))
    with working(f"weighing {len(runs)} runs"):
        found = next_run(
            known, runs, goal, room=cli_input.with_room(known, room), closed_loop=closed_loop
        )
    if write is not None:
        write_recipe(runs[found.best], write)
    say_json(json.loads(found.to_json())) if as_json else _say(found)
    attention(forecast_doubts(*found.forecasts.values()))


def _candidates(kettle: _core.Kettle, paths: Sequence[Path]) -> dict[str, _core.Recipe]:
    """Recipes by their names; those of one name by that of their file too."""
    found: dict[str, _core.Recipe] = {}
    for path in paths:
        one = read_recipe(path)
        found[one.name if one.name not in found else f"{one.name} ({path.name})"] = one
    return found or candidate_runs(kettle)


def _say(found: NextRun) -> None:
    rows = []
    for name, row in found.table.iterrows():
        most = f"{row['learned_most']} {row['learned_share']:.0%}"
        cells = [str(name), most, f"{row['minutes']:.0f}", f"{row['energy_kWh']:.1f}"]
        cells.append(f"{row['information_bit']:.1f}")
        if found.target is not None:
            cells.append(f"+-{found.target.amount(row['target_after'])}")
        rows.append(cells)
    head = ["run", "most about\n(spread less)", "takes\n[min]", "energy\n[kWh]", "tells\n[bit]"]
    if found.target is not None:
        now = found.target.amount(found.half_width(found.before))
        head.append(f"target after it\n(now +-{now})")
        say(f"Target: {found.target.words()}; intervals of {found.level:.0%}")
    table(head, rows, left=2)
    say(found.sentence())
    first, second = (name for name, _ in found.sequence(2))
    say(f'After that: "{second}".' if second != first else "After that: the same once more.")
