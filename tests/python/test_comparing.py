"""Comparisons: differences are those of the two forecasts, and times read as people say them."""

import json
import math
import re

import numpy as np
import pytest

from kettlecast._core import Coefficients
from kettlecast.clock_text import clock_text, ends_text, range_text
from kettlecast.comparing import compare
from kettlecast.demo import demo_path
from kettlecast.errors import InvalidArgument
from kettlecast.fit_result import Fit
from kettlecast.fitting import fit
from kettlecast.forecasting import Forecast, forecast
from kettlecast.kettle_file import read_kettle
from kettlecast.recipe_file import read_recipe
from kettlecast.run_log import read_run

KETTLE = read_kettle(demo_path("kettle.toml"))
WATER = read_recipe(demo_path("water_boil.toml"))
STEPS = read_recipe(demo_path("water_steps.toml"))
MORE = WATER.with_more("water", "6 kg", temperature="14 degC")


@pytest.fixture(scope="module")
def fitted() -> Fit:
    run = read_run(demo_path("water_boil_60kg.csv"), recipe=WATER)
    return fit(KETTLE, run, vary=["floor.efficiency", "probe.lag"])


@pytest.fixture(scope="module")
def pair(fitted: Fit) -> tuple[Forecast, Forecast]:
    return forecast(fitted, WATER, draws=30), forecast(fitted, MORE, draws=30)


def test_rows_are_differences_of_the_forecasts(pair: tuple[Forecast, Forecast]) -> None:
    known, changed = pair
    row = compare(known, changed).table.loc[1]
    for column, source in (
        ("evaporated_more_kg", "evaporated_kg"),
        ("energy_more_kWh", "energy_kWh"),
    ):
        assert row[column] == pytest.approx(
            changed.phases.loc[1, source] - known.phases.loc[1, source]
        )
    assert row["longer_min"] == pytest.approx((changed.duration - known.duration) / 60.0)
    assert row["peak_hotter_K"] == pytest.approx(
        changed.result.phases[0].peak - known.result.phases[0].peak
    )


def test_total_is_the_sum_of_the_phases() -> None:
    warm = STEPS.with_more("water", "5 kg", phase=1)
    comparison = compare(forecast(KETTLE, STEPS), forecast(KETTLE, warm))
    phases, total = comparison.table.iloc[:-1], comparison.table.loc["total"]
    for column in ("known_min", "changed_min", "longer_min", "evaporated_more_kg"):
        assert total[column] == pytest.approx(phases[column].sum())
    assert total["longer_min"] * 60.0 == pytest.approx(comparison.longer)
    assert math.isnan(total["peak_hotter_K"])


def test_a_batch_against_itself_differs_in_nothing(pair: tuple[Forecast, Forecast]) -> None:
    comparison = compare(pair[0], pair[0])
    numbers = comparison.table.iloc[:-1].filter(regex="longer|hotter|more")
    assert (numbers.to_numpy() == 0.0).all()
    assert comparison.longer_interval() == (0.0, 0.0)


def test_swapped_forecasts_change_the_sign(pair: tuple[Forecast, Forecast]) -> None:
    forth, back = compare(*pair), compare(*reversed(pair))
    assert forth.longer == -back.longer
    low, high = forth.longer_interval() or (math.nan, math.nan)
    assert back.longer_interval() == pytest.approx((-high, -low))


def test_interval_pairs_the_draws(pair: tuple[Forecast, Forecast]) -> None:
    low, high = compare(*pair).longer_interval() or (math.nan, math.nan)
    each = pair[1].ensemble.values("duration") - pair[0].ensemble.values("duration")
    ends = np.quantile(each, [0.05, 0.95], method="weibull")
    assert (low, high) == pytest.approx(tuple(ends))
    # What is unknown about the kettle acts on both, so the difference is known better than each.
    apart = np.ptp(pair[0].ensemble.values("duration"))
    assert high - low < apart


def test_batches_of_two_days_differ_by_more(pair: tuple[Forecast, Forecast], fitted: Fit) -> None:
    one_day = compare(*pair)
    two_days = compare(pair[0], forecast(fitted, MORE, draws=30, day=1))
    assert (one_day.same_day(), two_days.same_day()) == (True, False)
    (low, high), (lower, higher) = (
        one.longer_interval() or (0.0, 0.0) for one in (one_day, two_days)
    )
    assert higher - lower > 1.5 * (high - low)


def test_every_difference_has_an_interval_and_the_run_too(pair: tuple[Forecast, Forecast]) -> None:
    comparison = compare(*pair)
    table = comparison.table
    for stem, unit in (("longer", "min"), ("overshoot_more", "K"), ("evaporated_more", "kg")):
        for row in (1, "total"):
            low, high = (table.loc[row, f"{stem}_{end}_{unit}"] for end in ("low", "high"))
            assert low < high
    assert table.loc["total", "longer_low_min"] * 60.0 == comparison.longer_interval()[0]
    assert not [name for name in compare(forecast(KETTLE, WATER), pair[1]).table if "low" in name]


def test_numbers_of_draws_that_differ_give_no_interval(
    pair: tuple[Forecast, Forecast], fitted: Fit
) -> None:
    assert compare(pair[0], forecast(fitted, MORE, draws=20)).longer_interval() is None


def test_a_tenth_more_water_takes_a_tenth_longer_less_the_share_of_the_metal() -> None:
    # (m c + C) dT/dt = P - Q(T) separates: the time to a temperature is in proportion to m c + C.
    # C is at most that of all metal: floor 59 kg and wall 27 kg of steel (480 and 500 J/(kg K)),
    # elements 0.3 J/(K W) and jacket 10 kJ/(m2 K), as the handbook coefficients say.
    metal = 59.2 * 480.0 + 26.8 * 500.0 + 0.3 * 18e3 + 10e3 * 0.679
    # Q must not depend on the filling: the wall neither loses heat nor takes it to the jacket.
    tight = Coefficients({"wall.loss": 0.0, "jacket.conductance": 5.0})
    before, after = (
        forecast(KETTLE, recipe, coefficients=tight).result for recipe in (WATER, MORE)
    )
    known, changed = (one.phases[0].time_to_reach for one in (before, after))
    assert 6.0 / (60.0 + metal / 4187.0) < (changed - known) / known < 6.0 / 60.0


def test_without_a_fit_there_is_no_interval() -> None:
    comparison = compare(forecast(KETTLE, WATER), forecast(KETTLE, MORE))
    assert comparison.longer_interval() is None
    assert "interval" not in comparison.sentence()
    assert json.loads(comparison.to_json())["longer_interval_min"] is None


def test_sentence_says_the_numbers(pair: tuple[Forecast, Forecast]) -> None:
    comparison = compare(*pair)
    found = re.fullmatch(
        r"water to 90 degC takes (\S+) min longer \(90% interval (\S+) to (\S+)\): "
        r"(\S+) min instead of (\S+) min\.",
        comparison.sentence(),
    )
    assert found is not None
    ends = comparison.longer_interval() or ()
    wanted = [comparison.longer, *ends, pair[1].duration, pair[0].duration]
    assert list(found.groups()) == [clock_text(value) for value in wanted]


def test_sentence_of_a_quicker_batch_says_less(pair: tuple[Forecast, Forecast]) -> None:
    sentence = compare(*reversed(pair)).sentence()
    assert " min less (90% interval " in sentence
    assert "-" not in sentence


def test_json_holds_the_table(pair: tuple[Forecast, Forecast]) -> None:
    plain = json.loads(compare(*pair).to_json())
    assert [row["number"] for row in plain["phases"]] == [1, "total"]
    assert plain["longer_min"] == pytest.approx(plain["phases"][1]["longer_min"])
    assert plain["phases"][1]["peak_hotter_K"] is None


def test_different_numbers_of_phases_are_refused() -> None:
    with pytest.raises(
        InvalidArgument, match="'water to 90 degC' has 1 phases, 'water in steps' has 3"
    ):
        compare(forecast(KETTLE, WATER), forecast(KETTLE, STEPS))


@pytest.mark.parametrize(
    ("seconds", "text"),
    [
        (0, "0:00"),
        (59.4, "0:59"),
        (59.6, "1:00"),
        (898.2, "14:58"),
        (4001, "66:41"),
        (-12, "-0:12"),
        (-0.2, "0:00"),
        (math.nan, "-"),
        (math.inf, "-"),
    ],
)
def test_clock_text(seconds: float, text: str) -> None:
    assert clock_text(seconds) == text


@pytest.mark.parametrize(
    ("ends", "text"),
    [
        ((60.0, 75.0), "1:00 to 1:15"),
        ((60.0, math.inf), "1:00 or more"),
        ((-math.inf, 75.0), "1:15 or less"),
        ((-math.inf, math.inf), "open at both ends"),
    ],
)
def test_ends_that_are_not_known_are_open(ends: tuple[float, float], text: str) -> None:
    assert ends_text(*ends) == text


def test_range_text_shows_ends_that_differ() -> None:
    assert range_text(60.0, 50.0, 75.0) == "1:00 (0:50 to 1:15)"
    assert range_text(60.0, 60.1, 59.9) == "1:00"
    assert range_text(60.0, math.nan, math.nan) == "1:00"
