"""Runs every validation whose data are there and writes one table as Markdown and HTML.

Exits with 1 if a limit is broken; data that are absent are said, not an error. Subjects that
compare with other libraries need those of `pip install ".[validation]"` and are skipped
without them.
"""

from __future__ import annotations

import argparse
import sys
import tempfile
import time
from collections.abc import Sequence
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parent))

import altitude
import bath
import bath_setpoint
import closed_forms
import closed_forms_jackets
import cross_conduction
import cross_heat_transfer
import cross_properties
import kitchen_a
import mug
import pot
import practice
import published
from case import Outcome, markdown, summary, web_page

SUBJECTS = {
    "published": published,
    "cross_properties": cross_properties,
    "cross_heat_transfer": cross_heat_transfer,
    "cross_conduction": cross_conduction,
    "closed_forms": closed_forms,
    "closed_forms_jackets": closed_forms_jackets,
    "altitude": altitude,
    "practice": practice,
    "kitchen_a": kitchen_a,
    "pot": pot,
    "bath": bath,
    "bath_setpoint": bath_setpoint,
    "mug": mug,
}


def arguments(given: Sequence[str] | None = None) -> argparse.Namespace:
    """Of the command line."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument(
        "subjects",
        nargs="*",
        metavar="subject",
        help=f"which to run: {', '.join(SUBJECTS)}; default all",
    )
    parser.add_argument(
        "--out",
        type=Path,
        default=Path(__file__).resolve().parent / "results",
        help="folder for validation.md, validation.html and residual plots",
    )
    chosen = parser.parse_args(given)
    if unknown := set(chosen.subjects) - set(SUBJECTS):
        parser.error(f"no subject {', '.join(sorted(unknown))}; there are {', '.join(SUBJECTS)}")
    return chosen


def run(names: Sequence[str]) -> dict[str, Outcome]:
    """Outcome of each subject."""
    outcomes = {}
    with tempfile.TemporaryDirectory() as folder:
        for name in names:
            begin = time.perf_counter()
            outcomes[name] = SUBJECTS[name].outcome(Path(folder))
            print(f"{name}: {time.perf_counter() - begin:.0f} s", file=sys.stderr)
    return outcomes


def plot(outcome: Outcome, file: Path) -> None:
    """Model less log of every run over time, as PNG."""
    import matplotlib

    matplotlib.use("Agg")
    from matplotlib import pyplot

    figure, axes = pyplot.subplots(figsize=(9, 5), layout="constrained")
    for curve in outcome.curves:
        axes.plot(curve.minutes, curve.difference, label=curve.name)
    axes.axhline(0.0, color="black", linewidth=0.8)
    axes.set(xlabel="time [min]", ylabel="model less log [K]", title=outcome.title)
    axes.legend(fontsize="small")
    figure.savefig(file, dpi=110)
    pyplot.close(figure)


def main(given: Sequence[str] | None = None) -> int:
    """Runs, prints and writes; 1 if a limit is broken."""
    chosen = arguments(given)
    outcomes = run(chosen.subjects or list(SUBJECTS))
    chosen.out.mkdir(parents=True, exist_ok=True)
    text = markdown(list(outcomes.values()))
    chosen.out.joinpath("validation.md").write_text(text, encoding="utf-8")
    page = web_page(list(outcomes.values()))
    chosen.out.joinpath("validation.html").write_text(page, encoding="utf-8")
    for name, outcome in outcomes.items():
        if outcome.curves:
            plot(outcome, chosen.out / f"{name}.png")
    print(text)
    print(summary(list(outcomes.values())))
    return 1 if any(outcome.broken for outcome in outcomes.values()) else 0


if __name__ == "__main__":
    sys.exit(main())
