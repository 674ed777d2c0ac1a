"""Logs and events files made for tests, good ones and ones that are wrong on purpose."""

from collections.abc import Callable
from pathlib import Path

from kettlecast.demo import demo_path
from kettlecast.run_log import Run

HEADER = "time_s,floor_C,probe_C,floor_heat_pct,jacket_heat_pct,agitator_rpm"
RECIPES = {
    "stew_70kg": "stew.toml",
    "stew_70kg_again": "stew.toml",
    "water_boil_60kg": "water_boil.toml",
    "water_steps_60kg": "water_steps.toml",
}


def rows(count: int = 50) -> list[str]:
    """A made log: one row each 2 s, everything in range and moving."""
    return [f"{2 * i},{30 + i / 2},{20 + i / 10},100,0,20" for i in range(count)]


def log(folder: Path, lines: list[str], header: str = HEADER) -> Path:
    path = folder / "run.csv"
    path.write_text("\n".join([header, *lines]) + "\n", encoding="utf-8")
    return path


def events(folder: Path, *lines: str) -> Path:
    path = folder / "run.events.csv"
    path.write_text("\n".join(["time_s,event,detail", *lines]) + "\n", encoding="utf-8")
    return path


def told(run: Run, signal: str) -> list[str]:
    return [str(item) for item in run.findings if item.signal == signal]


def altered(folder: Path, name: str, change: Callable[[list[str]], list[str]]) -> Path:
    """A demo log with its events, each row changed; line 1 is the header."""
    lines = demo_path(f"{name}.csv").read_text(encoding="utf-8").splitlines()
    beside = demo_path(f"{name}.events.csv").read_text(encoding="utf-8")
    (folder / f"{name}.events.csv").write_text(beside, encoding="utf-8")
    made = [",".join(change(line.split(","))) for line in lines[1:]]
    path = folder / f"{name}.csv"
    path.write_text("\n".join([lines[0], *made]) + "\n", encoding="utf-8")
    return path


def in_fahrenheit(folder: Path, name: str) -> Path:
    """A demo log with probe and floor in degF under headings that say degC."""

    def change(row: list[str]) -> list[str]:
        row[1], row[2] = (f"{float(cell) * 1.8 + 32.0:.2f}" for cell in row[1:3])
        return row

    return altered(folder, name, change)
