"""What the tests of the command line share: files of the demo kitchen and ways to run."""

import json
import subprocess
import sys
from typing import Any

from typer.testing import CliRunner

from kettlecast.cli import app
from kettlecast.demo import demo_path

KETTLE = demo_path("kettle.toml")
WATER = demo_path("water_boil.toml")
STEW = demo_path("stew.toml")
LOG = demo_path("water_boil_60kg.csv")
PAIR = f"{LOG}:{WATER}"
QUICK = ("--vary", "floor.efficiency", "--vary", "probe.lag")
COMMANDS = ("demo", "fit", "forecast", "compare", "check", "next", "foods", "schema")


def run(*arguments: object) -> Any:
    return CliRunner().invoke(app, [str(one) for one in arguments])


def plain(*arguments: object, code: int = 0) -> Any:
    """What a command prints with --json, which must be JSON and nothing else."""
    result = run(*arguments, "--json")
    assert result.exit_code == code, result.stderr
    return json.loads(result.stdout)


def started(*arguments: object) -> subprocess.Popen[str]:
    code = "from kettlecast.cli import main; main()"
    return subprocess.Popen(
        [sys.executable, "-c", code, *map(str, arguments)],
        stdout=subprocess.PIPE,
        stderr=subprocess.PIPE,
        text=True,
    )
