"""The command line: fit a kettle, forecast a recipe, compare two batches, check a log."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Annotated

import typer

from . import cli_input, cli_next, units
from . import cli_options as options
from .cli_foods import food_plain, say_food, say_foods
from .cli_frame import Commands, print_version
from .cli_output import (
    CAUTION,
    attention,
    complain_of,
    fit_doubts,
    fit_plain,
    forecast_doubts,
    run_plain,
    say,
    say_comparison,
    say_forecast,
    say_json,
    say_run,
    working,
)
from .comparing import compare as compare_forecasts
from .findings import Severity
from .fit_file import write_text_safely
from .fit_problem import FitOptions
from .fitting import fit as fit_kettle
from .foods import food, food_names
from .forecasting import forecast as run_forecast
from .kettle_file import kettle_schema, read_kettle
from .recipe_changes import with_more
from .recipe_file import read_recipe, recipe_schema
from .run_log import read_run

app = typer.Typer(
    cls=Commands,
    add_completion=False,
    rich_markup_mode=None,
    no_args_is_help=True,
    pretty_exceptions_enable=False,
    epilog=options.CODES,
    help="Forecast batches in an agitated, jacketed cooking kettle, and learn the kettle from "
    f"its logs. {CAUTION}",
)


def _system(us: bool) -> units.System:
    return "us" if us else "metric"


@app.callback()
def _common(
    version: Annotated[
        bool,
        typer.Option("--version", callback=print_version, is_eager=True, help="Print the version."),
    ] = False,
) -> None:
    pass


@app.command(epilog=options.CODES)
def demo(as_json: options.Json = False, us: options.Us = False, plot: options.Plot = None) -> None:
    """Show it all on a made-up kitchen; takes some ten seconds.

    Fits a kettle to three logged runs, forecasts a lentil stew, answers how much longer it takes
    with twenty more pounds of cold carrot, and sets the logs of that kitchen beside it.
    """
    from .demo_run import demo_plain, run_demo, say_demo

    with working("fitting the demo kettle to three runs, then forecasting"):
        result = run_demo()
    if plot is not None:
        result.comparison.known.plot().savefig(plot)
    if as_json:
        say_json(demo_plain(result))
    else:
        say_demo(result, _system(us))
    comparison = result.comparison
    attention(fit_doubts(result.fit) + forecast_doubts(comparison.known, comparison.changed))


@app.command(epilog=options.CODES)
def fit(
    kettle: Annotated[Path, typer.Argument(metavar="KETTLE", help="The kettle (.toml).")],
    run: Annotated[
        list[str],
        typer.Option(
            "--run",
            metavar="LOG[:RECIPE]",
            help="A log (.csv, .xlsx, .parquet) and the recipe it was cooked by, for example "
            '"monday.csv:stew.toml". Repeatable.',
        ),
    ],
    recipe: Annotated[
        Path | None,
        typer.Option("--recipe", metavar="FILE", help="Recipe of the logs given without one."),
    ] = None,
    out: Annotated[
        Path | None,
        typer.Option("--out", metavar="FILE", callback=cli_input.writable, help="Save the fit."),
    ] = None,
    plot: options.Plot = None,
    vary: Annotated[
        list[str] | None,
        typer.Option(
            "--vary", metavar="NAME", help="Fit this coefficient; default: all the logs tell about."
        ),
    ] = None,
    per_run: Annotated[
        list[str] | None,
        typer.Option(
            "--per-run",
            metavar="NAME",
            help='Fit this one with a value for every run: "probe.offset", "pour.delay".',
        ),
    ] = None,
    starts: Annotated[
        int,
        typer.Option(
            "--starts", min=1, metavar="COUNT", help="Searches from as many places; more are surer."
        ),
    ] = 1,
    fix: Annotated[
        list[str] | None,
        typer.Option("--fix", metavar="NAME=VALUE", help='A known one: "floor.efficiency=0.9".'),
    ] = None,
    hold_out: Annotated[
        bool,
        typer.Option(
            "--hold-out", help="Also fit without each run in turn and judge the run left out."
        ),
    ] = False,
    column: options.Columns = None,
    unit: options.Units = None,
    decimal: options.Decimal = None,
    sheet: options.Sheet = None,
    dates: options.Dates = None,
    zone: options.Zone = None,
    heat: options.Heat = "logged",
    as_json: options.Json = False,
) -> None:
    """Learn a kettle from its logs.

    Beside each log its events file is read (monday.events.csv beside monday.csv). Log a plain
    water run to the boil first, then one with a product: together they tell most.
    """
    fixed = cli_input.numbers(fix or (), "--fix")
    how = cli_input.reading(
        column, unit, decimal=decimal, sheet=sheet, dates=dates, zone=zone, heat=heat
    )
    body = read_kettle(kettle)
    runs = cli_input.read_runs(run, recipe, how | {"kettle": body})
    for one in runs:
        complain_of(one)
    with working(f"fitting {body.name} to {len(runs)} runs"):
        found = fit_kettle(
            body,
            runs,
            vary=vary or None,
            per_run=per_run or (),
            fixed=fixed,
            options=FitOptions(starts=starts),
        )
    if out is not None:
        found.save(out)
    if plot is not None:
        found.plot().savefig(plot)
    held_out = None
    if hold_out:
        with working(f"fitting without each of the {len(runs)} runs in turn"):
            held_out = found.leave_one_out()
    if as_json:
        say_json(fit_plain(found, held_out))
    else:
        say(found.fit_report(held_out))
    attention(fit_doubts(found))


@app.command(epilog=options.CODES)
def forecast(
    kettle: options.KettleOrFit,
    recipe: options.RecipeFile,
    room: options.Room = None,
    us: options.Us = False,
    plot: options.Plot = None,
    trace: Annotated[
        Path | None,
        typer.Option(
            "--trace",
            metavar="FILE",
            callback=cli_input.writable,
            help="Write every signal over time (.csv).",
        ),
    ] = None,
    slopes: Annotated[
        Path | None,
        typer.Option(
            "--slopes",
            metavar="FILE",
            callback=cli_input.writable,
            help="Write slopes of all results by coefficients, pours and set points (.csv).",
        ),
    ] = None,
    draws: options.Draws = 100,
    as_json: options.Json = False,
) -> None:
    """Forecast when set points are reached and phases end.

    With a saved fit each time comes with its interval; with a plain kettle handbook values are
    used, and there is none. JSON is always in degC, kg and minutes.
    """
    known = cli_input.kettle_or_fit(kettle)
    planned = read_recipe(recipe)
    with working(f"forecasting {planned.name}"):
        result = run_forecast(
            known,
            planned,
            room=cli_input.with_room(known, room),
            draws=draws,
            sensitivities=slopes is not None,
        )
    if slopes is not None and result.sensitivities is not None:
        write_text_safely(slopes, result.sensitivities.table().to_csv())
    if plot is not None:
        from .plots import plot_forecast

        plot_forecast(result, _system(us)).savefig(plot)
    if trace is not None:
        write_text_safely(trace, result.trace.to_csv(index=False))
    if as_json:
        say_json(json.loads(result.to_json()) | {"caution": CAUTION})
    else:
        say_forecast(result, _system(us))
        say(CAUTION)
    attention(forecast_doubts(result))


@app.command(epilog=options.CODES)
def compare(
    kettle: options.KettleOrFit,
    recipe: options.RecipeFile,
    with_: options.With = None,
    more: options.More = None,
    at: options.At = None,
    phase: options.InPhase = None,
    piece: options.Piece = None,
    shape: options.PieceShape = None,
    delay: options.Delay = None,
    pour_time: options.PourTime = None,
    room: options.Room = None,
    plot: options.Plot = None,
    another_day: Annotated[
        bool,
        typer.Option(
            "--another-day", help="The changed batch is cooked on another day, by other hands."
        ),
    ] = False,
    draws: options.Draws = 100,
    as_json: options.Json = False,
) -> None:
    """Say how much longer, hotter and drier a changed batch gets.

    Give the other recipe with --with, or name what is added with --more.
    """
    cli_input.check_exclusive(with_=with_, more=more)
    known = cli_input.kettle_or_fit(kettle)
    planned = read_recipe(recipe)
    if with_ is not None:
        changed = read_recipe(with_)
    else:
        name, mass = cli_input.addition_named(str(more))
        where = cli_input.phase_named(phase)
        how = {"piece": piece, "shape": shape, "delay": delay, "pour_time": pour_time}
        changed = with_more(planned, name, mass, at, phase=where, **how)
    surroundings = cli_input.with_room(known, room)
    with working(f"forecasting {planned.name}, then {changed.name}"):
        both = [
            run_forecast(known, one, room=surroundings, draws=draws, day=day)
            for one, day in ((planned, 0), (changed, int(another_day)))
        ]
    result = compare_forecasts(*both)
    if plot is not None:
        result.plot().savefig(plot)
    if as_json:
        say_json(json.loads(result.to_json()) | {"caution": CAUTION})
    else:
        say_comparison(result)
        say(CAUTION)
    attention(forecast_doubts(*both))


@app.command(epilog=options.CODES)
def check(
    log: Annotated[Path, typer.Argument(metavar="LOG", help="The log (.csv, .xlsx, .parquet).")],
    recipe: Annotated[
        Path | None,
        typer.Option("--recipe", metavar="FILE", help="What was cooked (.toml); finds more."),
    ] = None,
    events: Annotated[
        Path | None,
        typer.Option("--events", metavar="FILE", help="Events file; default: beside the log."),
    ] = None,
    column: options.Columns = None,
    unit: options.Units = None,
    decimal: options.Decimal = None,
    sheet: options.Sheet = None,
    dates: options.Dates = None,
    zone: options.Zone = None,
    heat: options.Heat = "logged",
    kettle: Annotated[
        Path | None,
        typer.Option("--kettle", metavar="FILE", help="The kettle (.toml), for inferred heat."),
    ] = None,
    as_json: options.Json = False,
) -> None:
    """Say what looks wrong in a log; nothing is changed or repaired."""
    how = cli_input.reading(
        column, unit, decimal=decimal, sheet=sheet, dates=dates, zone=zone, heat=heat
    )
    run = read_run(
        log,
        recipe=None if recipe is None else read_recipe(recipe),
        events=events,
        kettle=None if kettle is None else read_kettle(kettle),
        **how,
    )
    if as_json:
        say_json(run_plain(run))
    else:
        say_run(run)
    errors = sum(finding.severity is Severity.error for finding in run.findings)
    attention([f"{errors} of the findings are errors; a fit refuses this log"] if errors else [])


app.command("next", epilog=options.CODES)(cli_next.command)


@app.command(epilog=options.CODES)
def foods(
    name: Annotated[
        str | None, typer.Argument(metavar="NAME", help="Tell all about this food.")
    ] = None,
    as_json: options.Json = False,
    us: options.Us = False,
) -> None:
    """List the foods that recipes can name, and their make-up; or tell all about one."""
    if name is not None:
        one = food(name)
        say_json(food_plain(one)) if as_json else say_food(one, _system(us))
        return
    known = [food(each) for each in food_names()]
    say_json([food_plain(each) for each in known]) if as_json else say_foods(known)


@app.command(epilog=options.CODES)
def schema(
    kind: Annotated[str, typer.Argument(metavar="kettle|recipe", help="Which file.")],
    as_json: options.Json = False,
) -> None:
    """Print the JSON Schema of a kettle or recipe file.

    Editors use it to check such a file while it is written.
    """
    kinds = {"kettle": kettle_schema, "recipe": recipe_schema}
    if kind not in kinds:
        raise typer.BadParameter(f'"{kind}" must be kettle or recipe', param_hint="kind")
    say_json(kinds[kind]())


def main() -> None:
    """Entry point of the command `kettlecast`."""
    app(prog_name="kettlecast")
