"""Arguments and options that several commands share."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated

import typer

from . import cli_input

CODES = (
    "Exit codes: 0 done. 1 something in the files or values given is wrong. 2 wrong use of the "
    "command. 3 done, but look twice: a phase ran into its time limit, a fit did not converge, or "
    "a log has errors. 130 stopped with Ctrl-C."
)

Json = Annotated[bool, typer.Option("--json", help="Print JSON and nothing else.")]
Plot = Annotated[
    Path | None,
    typer.Option(
        "--plot",
        metavar="FILE",
        callback=cli_input.picture,
        help="Also draw it: a .png, .svg or .pdf.",
    ),
]
Us = Annotated[bool, typer.Option("--us", help="Show degF and lb instead of degC and kg.")]
Room = Annotated[
    str | None,
    typer.Option(
        "--room", metavar="DEGREES", help='Air in the kitchen today, for example "27 degC".'
    ),
]
Draws = Annotated[
    int,
    typer.Option(
        "--draws", min=0, metavar="COUNT", help="Draws behind the interval of a fit; 0 for none."
    ),
]
KettleOrFit = Annotated[
    Path, typer.Argument(metavar="KETTLE-OR-FIT", help="A kettle (.toml) or a saved fit (.json).")
]
RecipeFile = Annotated[Path, typer.Argument(metavar="RECIPE", help="The recipe (.toml).")]
Columns = Annotated[
    list[str] | None,
    typer.Option(
        "--column", metavar="SIGNAL=NAME", help='Column of a signal, for example "probe=T7_C".'
    ),
]
Units = Annotated[
    list[str] | None,
    typer.Option(
        "--unit", metavar="SIGNAL=UNIT", help='Unit of a signal, for example "probe=degF".'
    ),
]
Text = str | None
Decimal = Annotated[
    Text,
    typer.Option("--decimal", metavar="MARK", help='Of the numbers in the log: "." or ",".'),
]
Sheet = Annotated[
    Text, typer.Option("--sheet", metavar="NAME", help="Sheet of a workbook; default: the first.")
]
Dates = Annotated[
    Text,
    typer.Option("--dates", metavar="ORDER", help='Of dates: "day first" or "month first".'),
]
Zone = Annotated[
    Text,
    typer.Option(
        "--zone", metavar="ZONE", help='Of a clock without offset, for example "Europe/Berlin".'
    ),
]
Heat = Annotated[
    str,
    typer.Option(
        "--heat",
        metavar="SOURCE",
        help="Of a log without heat: inferred from its readings as the controller switches it; "
        "closed_loop, switched by the controller of the kettle in the model; or none.",
    ),
]
With = Annotated[
    Path | None,
    typer.Option("--with", metavar="FILE", help="The other recipe (.toml), same phases."),
]
More = Annotated[
    Text, typer.Option("--more", metavar="NAME=MASS", help='More of something: "carrot=20 lb".')
]
At = Annotated[Text, typer.Option("--at", metavar="DEGREES", help='How cold it is: "36 degF".')]
InPhase = Annotated[
    Text, typer.Option("--phase", metavar="PHASE", help="Phase it goes in: number or name.")
]
Piece = Annotated[
    Text, typer.Option("--piece", metavar="LENGTH", help='Size of its pieces: "12 mm".')
]
PieceShape = Annotated[
    Text, typer.Option("--shape", metavar="SHAPE", help="Of its pieces: slab, cylinder, sphere.")
]
Delay = Annotated[
    Text, typer.Option("--delay", metavar="TIME", help='From the start of the phase: "75 s".')
]
PourTime = Annotated[
    Text, typer.Option("--pour-time", metavar="TIME", help='How long the pour takes: "30 s".')
]
