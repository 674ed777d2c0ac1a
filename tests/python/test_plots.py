"""Plots: they can be drawn, named lines differ without colour, and no text lies on another."""

import itertools
import subprocess
import sys
from pathlib import Path

import pytest
from matplotlib.axes import Axes
from matplotlib.backends.backend_agg import FigureCanvasAgg
from matplotlib.figure import Figure
from matplotlib.text import Text

from kettlecast import _core
from kettlecast.comparing import compare
from kettlecast.demo import RECIPES, demo_path
from kettlecast.errors import InvalidArgument
from kettlecast.fit_file import read_fit
from kettlecast.fit_result import Fit
from kettlecast.fitting import fit
from kettlecast.forecasting import Forecast, forecast
from kettlecast.kettle_file import read_kettle
from kettlecast.plot_marks import spread_heights
from kettlecast.plots import plot_forecast
from kettlecast.recipe_file import read_recipe
from kettlecast.run_log import read_run

KETTLE = read_kettle(demo_path("kettle.toml"))
WATER = read_recipe(demo_path("water_boil.toml"))
STEW = read_recipe(demo_path("stew.toml"))


@pytest.fixture(scope="module")
def fitted() -> Fit:
    run = read_run(demo_path("water_boil_60kg.csv"), recipe=WATER)
    return fit(KETTLE, run, vary=["floor.efficiency", "probe.lag"])


@pytest.fixture(scope="module")
def stew(fitted: Fit) -> Forecast:
    return forecast(fitted, STEW, draws=5)


def texts(figure: Figure) -> list[Text]:
    """Texts of a drawn figure with a word in them, so without the numbers at the ticks."""
    figure.canvas = FigureCanvasAgg(figure)
    figure.canvas.draw()
    found = figure.findobj(Text)
    return [one for one in found if one.get_visible() and any(map(str.isalpha, one.get_text()))]


def overlaps(figure: Figure) -> list[tuple[str, str]]:
    boxes = [(one.get_text(), one.get_window_extent()) for one in texts(figure)]
    return [
        (first, second)
        for (first, here), (second, there) in itertools.combinations(boxes, 2)
        if here.padded(-1.0).overlaps(there)
    ]


def outside(figure: Figure) -> list[str]:
    paper = figure.bbox
    return [
        one.get_text()
        for one in texts(figure)
        if not (paper.x0 <= (box := one.get_window_extent()).x0 and box.x1 <= paper.x1 + 1.0)
        or not (paper.y0 <= box.y0 and box.y1 <= paper.y1 + 1.0)
    ]


def words(figure: Figure) -> str:
    """All texts of a figure with single blanks."""
    return " ".join(" ".join(one.get_text() for one in texts(figure)).split())


def looks(axes: Axes) -> list[tuple[object, ...]]:
    """What tells the named lines of axes apart on a black and white print."""
    named = [line for line in axes.get_lines() if not str(line.get_label()).startswith("_")]
    return [(line._dash_pattern, line.get_linewidth(), line.get_alpha()) for line in named]


FIGURES = (
    "forecast",
    "forecast in degF",
    "plain forecast",
    "candy",
    "steam and cooling",
    "frozen pieces",
    "fit",
    "comparison",
)


def demo_forecast(recipe: str) -> Forecast:
    kettle = read_kettle(demo_path(RECIPES[recipe]))
    return forecast(kettle, read_recipe(demo_path(recipe)))


@pytest.fixture(scope="module")
def figures(fitted: Fit, stew: Forecast) -> dict[str, Figure]:
    plain = forecast(KETTLE, WATER)
    longer = STEW.with_more("carrot", "20 lb", "36 degF", phase=3, piece="12 mm", shape="sphere")
    return {
        "forecast": stew.plot(),
        "forecast in degF": plot_forecast(stew, "us"),
        "plain forecast": plain.plot(),
        "candy": demo_forecast("syrup.toml").plot(),
        "steam and cooling": demo_forecast("custard.toml").plot(),
        "frozen pieces": plot_forecast(demo_forecast("vegetables.toml"), "us"),
        "fit": fitted.plot(),
        "comparison": compare(stew, forecast(fitted, longer, draws=5)).plot(),
    }


@pytest.mark.parametrize("name", FIGURES)
def test_no_text_lies_on_another_or_off_the_paper(name: str, figures: dict[str, Figure]) -> None:
    assert overlaps(figures[name]) == []
    assert outside(figures[name]) == []


@pytest.mark.parametrize("name", FIGURES)
def test_named_lines_differ_without_colour(name: str, figures: dict[str, Figure]) -> None:
    for axes in figures[name].axes:
        found = looks(axes)
        assert len(set(map(str, found))) == len(found)


@pytest.mark.parametrize("name", FIGURES)
def test_axes_carry_unit(name: str, figures: dict[str, Figure]) -> None:
    assert "[min]" in figures[name].axes[-1].get_xlabel()
    assert "\N{DEGREE SIGN}" in figures[name].axes[0].get_ylabel()


def test_forecast_names_phases_set_points_and_pieces(figures: dict[str, Figure]) -> None:
    said = words(figures["forecast"])
    for phase in STEW.phases:
        assert phase.name in said
    for piece in (
        "onion core",
        "lentil core",
        "spinach frozen core",
        "probe reading",
        "jacket heat",
    ):
        assert piece in said
    assert "probe 92 \N{DEGREE SIGN}C" in said
    assert "90% interval" in said
    assert "interval" not in words(figures["plain forecast"])


def test_degrees_fahrenheit_are_those_of_the_recipe(figures: dict[str, Figure]) -> None:
    # 92 degC is 197.6 degF: 92 * 1.8 + 32.
    assert "probe 198 \N{DEGREE SIGN}F" in words(figures["forecast in degF"])


def test_candy_shows_where_it_boils_and_what_ends_it(figures: dict[str, Figure]) -> None:
    said = words(figures["candy"])
    assert "boiling point" in said
    assert "until probe 115 \N{DEGREE SIGN}C" in said
    assert "boiling point" not in words(figures["plain forecast"])


def test_boiling_point_line_is_where_the_syrup_boils(figures: dict[str, Figure]) -> None:
    lines = {line.get_label(): line for line in figures["candy"].axes[0].get_lines()}
    # At the end of the boil the syrup boils, so the two lines meet.
    product, boiling = (lines[name].get_ydata()[-1] for name in ("product", "boiling point"))
    assert product == pytest.approx(boiling, abs=1.0)


def test_steam_kettle_shows_steam_jacket_and_cold_flow(figures: dict[str, Figure]) -> None:
    said = words(figures["steam and cooling"])
    for word in ("jacket", "steam", "cold flow", "cooling, until probe 40 \N{DEGREE SIGN}C"):
        assert word in said
    assert "floor heat" not in said
    assert "jacket" not in [line.get_label() for line in figures["plain forecast"].axes[0].lines]


def test_frozen_pieces_show_the_ends_of_their_sizes(figures: dict[str, Figure]) -> None:
    said = words(figures["frozen pieces"])
    assert "vegetables frozen, small core" in said
    assert "vegetables frozen, large core" in said
    # 75 degC is 167 degF
    assert "until core 167 \N{DEGREE SIGN}F" in said
    assert "reversing" in said


def test_a_turning_agitator_is_drawn_upwards_either_way(figures: dict[str, Figure]) -> None:
    lanes = figures["frozen pieces"].axes[1]
    lowest = min(path.vertices[:, 1].min() for one in lanes.collections for path in one.get_paths())
    assert lowest >= 0.0


def test_narrow_phase_shows_its_number_and_is_named_below() -> None:
    ends = [_core.EndRule(kind=_core.EndKind.elapsed, value=20.0)]
    short = WATER.phases[0].replace(name="a long name for a short rest", ends=ends, additions=[])
    figure = forecast(KETTLE, WATER.replace(phases=[*WATER.phases, short])).plot()
    assert "2" in [one.get_text() for one in figure.axes[0].texts]
    assert "Phases: 2 a long name for a short rest" in words(figure)
    assert overlaps(figure) == []


def test_fit_shows_each_run_with_its_rms(figures: dict[str, Figure], fitted: Fit) -> None:
    said = words(figures["fit"])
    assert "water_boil_60kg" in said
    assert f"probe (solid) {fitted.runs[0].probe_rms:.2f} K" in said


def test_comparison_shows_its_sentence(figures: dict[str, Figure]) -> None:
    assert "lentil stew takes" in words(figures["comparison"])


def test_fit_from_a_file_has_nothing_to_plot(fitted: Fit, tmp_path: Path) -> None:
    fitted.save(tmp_path / "fit.json")
    with pytest.raises(InvalidArgument, match="read from a file; plot it right after fitting"):
        read_fit(tmp_path / "fit.json").plot()


@pytest.mark.parametrize(
    "heights", [[], [5.0], [90.0, 90.1, 90.2, 99.0], [1.0, 50.0, 2.0], [99.9] * 4]
)
def test_labels_keep_their_distance_and_order(heights: list[float]) -> None:
    placed = spread_heights(heights, 5.0, 97.5)
    for (a, at), (b, bt) in itertools.combinations(zip(heights, placed, strict=True), 2):
        assert abs(at - bt) >= 5.0 - 1e-9
        assert a == b or (a < b) == (at < bt)
    assert all(at <= 97.5 + 1e-9 for at in placed)


def test_importing_the_package_does_not_load_matplotlib() -> None:
    code = "import sys, kettlecast; sys.exit('matplotlib' in sys.modules)"
    assert subprocess.run([sys.executable, "-c", code], check=False).returncode == 0
