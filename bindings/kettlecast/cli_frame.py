"""The frame around all commands: errors become messages and exit codes, and the version."""

from __future__ import annotations

from importlib import metadata
from typing import Any

import typer
from typer.core import TyperGroup

from .cli_output import EXIT_STOPPED, EXIT_WRONG_INPUT, complain, told
from .errors import Error


class Commands(TyperGroup):
    """Turns our errors into a message and an exit code."""

    def invoke(self, ctx: Any) -> Any:
        """Run a command; wrong input ends it with exit code 1."""
        try:
            return super().invoke(ctx)
        except (Error, OSError) as error:
            complain(f"kettlecast: {told(error)}")
            raise typer.Exit(EXIT_WRONG_INPUT) from None
        except KeyboardInterrupt:
            complain("kettlecast: stopped")
            raise typer.Exit(EXIT_STOPPED) from None


def print_version(wanted: bool) -> None:
    """Prints the version and ends, if wanted."""
    if not wanted:
        return
    try:
        typer.echo(f"kettlecast {metadata.version('kettlecast')}")
    except metadata.PackageNotFoundError:
        typer.echo("kettlecast, run from its sources")
    raise typer.Exit()
