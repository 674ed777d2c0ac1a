"""Published food-safety tables: what they say, in which edition, and what is never read into them.

Expected values are those printed in the sources named beside them.
"""

import csv
import math
from pathlib import Path

import pytest

from kettlecast import safety_tables, units
from kettlecast.errors import InvalidArgument, OutsideValidity, UnknownName
from kettlecast.safety_tables import HoldTable, hold_table, hold_table_names, required_hold

TABLES = Path(__file__).resolve().parents[3] / "shared/checks/cases/tables"
needs_tables = pytest.mark.skipif(not TABLES.exists(), reason="the published tables are not there")

ALL = [(name, None) for name in hold_table_names()]
ALL += [("comminuted", "2013"), ("poultry and stuffed", "2013"), ("whole roast", "older")]


def lines(name: str) -> list[dict[str, str]]:
    text = (TABLES / name).read_text(encoding="utf-8").splitlines()
    return list(csv.DictReader(line for line in text if not line.startswith("#")))


@needs_tables
@pytest.mark.parametrize(("logs", "column"), [("6.5", "t_6.5log_s"), ("7", "t_7log_s")])
def test_the_whole_fsis_table_is_as_printed(logs: str, column: str) -> None:
    # USDA FSIS Appendix A (1999), beef, 130 to 160 degF
    rows = lines("fsis_appendix_a_beef.csv")
    table = hold_table(f"fsis beef {logs} log")
    assert len(rows) == len(table.rows) == 31
    for printed, row in zip(rows, table.rows, strict=True):
        assert row.temperature == units.temperature(f"{printed['F']} degF")
        assert row.celsius == f"{float(printed['C']):.1f} degC"
        assert row.time == float(printed[column])


# USDA FSIS Appendix A (1999), read by eye: 6.5-log and 7-log minutes or seconds
@pytest.mark.parametrize(
    ("temperature", "six_and_a_half", "seven"),
    [
        ("130 degF", 112 * 60, 121 * 60),
        ("136 degF", 28 * 60, 32 * 60),
        ("139 degF", 15 * 60, 15 * 60),
        ("146 degF", 169, 182),
        ("157 degF", 14, 15),
        ("160 degF", 0, 0),
    ],
)
def test_fsis_beef(temperature: str, six_and_a_half: float, seven: float) -> None:
    assert required_hold("fsis beef 6.5 log", temperature).time == six_and_a_half
    assert required_hold("fsis beef 7 log", temperature).time == seven


# FDA Food Code 3-401.11 as in Minnesota Rules 4626.0340; 17 s from secondary sources
@pytest.mark.parametrize(
    ("table", "temperature", "edition", "seconds"),
    [
        ("intact", "145 degF", None, 15),
        ("comminuted", "145 degF", None, 180),
        ("comminuted", "150 degF", None, 60),
        ("comminuted", "155 degF", None, 17),
        ("comminuted", "155 degF", "2017", 17),
        ("comminuted", "155 degF", "2013", 15),
        ("comminuted", "158 degF", None, 1),  # printed "<1 s"
        ("poultry and stuffed", "165 degF", "2013", 15),
        ("reheating", "165 degF", None, 15),
        ("whole roast", "134 degF", "older", 47 * 60),  # NAVMED P-5010-1, table 1-4
    ],
)
def test_food_code(table: str, temperature: str, edition: str | None, seconds: float) -> None:
    assert required_hold(table, temperature, edition).time == seconds


def test_the_roast_chart_is_the_column_of_fsis() -> None:
    # Food Code 3-401.11(B)(2) equals the 6.5-log column where it has a row
    for row in hold_table("whole roast").rows:
        assert row.time == required_hold("fsis beef 6.5 log", row.temperature).time


@pytest.mark.parametrize(("name", "edition"), ALL)
def test_between_rows_no_time_is_shorter_than_that_of_the_row_below(
    name: str, edition: str | None
) -> None:
    table = hold_table(name, edition)
    assert [row.temperature for row in table.rows] == sorted(r.temperature for r in table.rows)
    assert [row.time for row in table.rows] == sorted((r.time for r in table.rows), reverse=True)
    for lower, upper in zip(table.rows, table.rows[1:], strict=False):
        for share in (1e-3, 0.5, 0.999):
            between = lower.temperature + share * (upper.temperature - lower.temperature)
            assert required_hold(table, between).row == lower
    assert required_hold(table, table.rows[-1].temperature + 30.0).row == table.rows[-1]
    with pytest.raises(OutsideValidity, match="below its lowest row"):
        required_hold(table, table.rows[0].temperature - 0.01)


@pytest.mark.parametrize(("name", "edition"), ALL)
def test_printed_degc_is_the_degf_rounded(name: str, edition: str | None) -> None:
    for row in hold_table(name, edition).rows:
        # Rows of FSIS are rounded from degF by hand: 137 degF is printed 58.4, 139 as 59.5.
        assert units.temperature(row.celsius) == pytest.approx(row.temperature, abs=0.6)


@pytest.mark.parametrize(("name", "edition"), ALL)
def test_every_number_comes_with_edition_source_and_caution(name: str, edition: str | None) -> None:
    table = hold_table(name, edition)
    assert isinstance(table, HoldTable) and table.editions and len(table.source) > 10
    hold = required_hold(table, table.rows[-1].temperature)
    for word in ("local code", "no statement", "complies"):
        assert word in hold.caution
    assert hold.table is table


def test_the_same_temperature_in_another_unit_meets_the_row() -> None:
    assert required_hold("comminuted", (155.0 - 32.0) / 1.8 + 273.15).row.printed == "17 s"


def test_names_and_editions_that_are_not_known() -> None:
    with pytest.raises(UnknownName, match="did you mean"):
        hold_table("whole rost")
    with pytest.raises(UnknownName, match="2013"):
        required_hold("comminuted", "155 degF", "1492")
    with pytest.raises(UnknownName, match="hot holding"):
        safety_tables.limit("lukewarm holding")
    with pytest.raises(UnknownName, match="2022"):
        safety_tables.cooling("1492")


def test_limits() -> None:
    # FDA Food Code 3-501.16; 140 degF in U.S. Army TM 10-412 (2003)
    hot = safety_tables.limit("hot holding")
    assert (hot.temperature, hot.celsius) == (units.temperature("135 degF"), "57 degC")
    assert safety_tables.limit("hot holding", "older").temperature == units.temperature("140 degF")
    assert safety_tables.limit("cold holding").kind == "at most"
    assert safety_tables.limit_names()[0] == "hot holding"


def test_cooling_in_two_stages() -> None:
    # FDA Food Code 3-501.14(A): 135 to 70 degF in 2 h, to 41 degF in 6 h in all
    rule = safety_tables.cooling()
    assert rule.start == units.temperature("135 degF")
    assert [stage.time for stage in rule.stages] == [2 * 3600, 6 * 3600]
    told = [units.exact_text(stage.temperature, "temperature", "us") for stage in rule.stages]
    assert told == ["70 degF", "41 degF"]
    assert safety_tables.hold_table("reheating").within == 2 * 3600


def test_which_stage_of_cooling_binds() -> None:
    # t / ln((T0 - Ta)/(T - Ta)): 97/32 in 2 h and 97/3 in 6 h in air of 38 degF
    limits = safety_tables.cooling_limits("38 degF")
    assert limits.time_constants == pytest.approx(
        [1.803467043 * 3600, 1.726072973 * 3600], rel=1e-9
    )
    assert limits.binding == 1
    assert safety_tables.cooling_limits("34 degF").binding == 0
    tau, air, hot = limits.time_constants[1], 38.0, 135.0
    assert air + (hot - air) * math.exp(-6 * 3600 / tau) == pytest.approx(41.0, abs=1e-9)


@pytest.mark.parametrize(("ambient", "start"), [("41 degF", None), ("38 degF", "70 degF")])
def test_cooling_that_cannot_be_judged(ambient: str, start: str | None) -> None:
    with pytest.raises(OutsideValidity, match="ambient must be below"):
        safety_tables.cooling_limits(ambient, start)


def test_d_and_z_that_a_table_implies() -> None:
    # Least squares of log10(time) on degF, 130 to 157: z 10.01 degF, D at 140 degF 1.77 min
    decimal, z = safety_tables.death_times("fsis beef 6.5 log", "140 degF")
    assert 1.8 * z == pytest.approx(10.0112897, rel=1e-8)
    assert decimal / 60 == pytest.approx(1.769620969, rel=1e-8)
    with pytest.raises(InvalidArgument, match="states no decimal reductions"):
        safety_tables.death_times("comminuted", "140 degF")
