"""Times of a clock: every way to write them, midnights, and changes to and from summer time."""

import datetime
import zoneinfo
from pathlib import Path

import numpy as np
import pytest
from log_files import told
from log_formats import text, workbook

from kettlecast.errors import FileFormatError, InvalidArgument, UnknownName
from kettlecast.run_log import Run, read_run

UTC = datetime.UTC
BERLIN = zoneinfo.ZoneInfo("Europe/Berlin")


def timed(folder: Path, times: list[str], column: str = "timestamp", **how: object) -> Run:
    """A log of these times; everything else rises steadily."""
    rows = [f"{time};{20 + 0.1 * i:.1f};100" for i, time in enumerate(times)]
    path = text(folder, [f"{column};probe_C;floor_heat_pct", *rows])
    return read_run(path, **how)  # type: ignore[arg-type]


@pytest.mark.parametrize(
    ("times", "how"),
    [
        (["2026-03-29 01:59:30", "2026-03-29 01:59:32", "2026-03-29 01:59:35.5"], {}),
        (["2026-03-29T01:59:30", "2026-03-29T01:59:32", "2026-03-29T01:59:35,500"], {}),
        (["2026-03-29T01:59:30Z", "2026-03-29T01:59:32Z", "2026-03-29T01:59:35.5Z"], {}),
        (["2026-03-29 01:59:30+02:00", "2026-03-29 01:59:32+0200", "2026-03-29 01:59:35.5+02"], {}),
        (["20260329T015930", "20260329T015932", "20260329T015935.5"], {}),
        (["20260329T015930Z", "20260329T015932Z", "20260329T015935,5Z"], {}),
        (["2026/03/29 1:59:30", "2026/03/29 1:59:32", "2026/03/29 1:59:35.5"], {}),
        (["29.03.2026 01:59:30", "29.03.2026 01:59:32", "29.03.2026 01:59:35,5"], {}),
        (["3/29/2026 1:59:30 AM", "3/29/2026 1:59:32 AM", "3/29/2026 1:59:35.5 AM"], {}),
        (
            ["3/4/2026 1:59:30 PM", "3/4/2026 1:59:32 PM", "3/4/2026 1:59:35.5 PM"],
            {"dates": "day first"},
        ),
        (
            ["03.04.26 01:59:30", "03.04.26 01:59:32", "03.04.26 01:59:35.5"],
            {"dates": "month first"},
        ),
        (["01:59:30", "01:59:32", "01:59:35.5"], {}),
        (["11:59:58 pm", "12:00:00 am", "12:00:03.5 am"], {}),
        (["23:59:58", "00:00:00", "00:00:03.5"], {}),
    ],
)
def test_clock_times_count_from_the_first_row(
    tmp_path: Path, times: list[str], how: dict[str, str]
) -> None:
    run = timed(tmp_path, times, **how)
    np.testing.assert_array_equal(run.time, [0.0, 2.0, 5.5])


@pytest.mark.parametrize(
    ("first", "how", "started"),
    [
        ("2026-03-29 10:00:00", {}, datetime.datetime(2026, 3, 29, 10)),
        ("29.03.2026 10:00:00", {}, datetime.datetime(2026, 3, 29, 10)),
        ("3/4/2026 12:00:00 AM", {"dates": "day first"}, datetime.datetime(2026, 4, 3)),
        ("3/4/2026 12:00:00 PM", {"dates": "month first"}, datetime.datetime(2026, 3, 4, 12)),
        ("3/4/26 08:00:00", {"dates": "month first"}, datetime.datetime(2026, 3, 4, 8)),
        ("2026-03-29 10:00:00Z", {}, datetime.datetime(2026, 3, 29, 10, tzinfo=UTC)),
        ("2026-03-29 10:00:00+02:00", {}, datetime.datetime(2026, 3, 29, 8, tzinfo=UTC)),
        (
            "2026-07-01 10:00:00",
            {"zone": "Europe/Berlin"},
            datetime.datetime(2026, 7, 1, 8, tzinfo=UTC),
        ),
        ("10:00:00", {}, None),
    ],
)
def test_when_the_log_started(
    tmp_path: Path, first: str, how: dict[str, str], started: datetime.datetime | None
) -> None:
    later = first.replace(":00:00", ":00:02")
    run = timed(tmp_path, [first, later], **how)
    assert run.started == started
    assert list(run.time) == [0.0, 2.0]


@pytest.mark.parametrize("column", ["Time [h:mm:ss]", "Time (mm:ss)", "time"])
def test_elapsed_time_with_colons(tmp_path: Path, column: str) -> None:
    hours = "mm" if "(" in column else "0:"
    times = ["00:00", "01:30", "59:59.5"] if hours == "mm" else ["0:00:00", "0:01:30", "0:59:59.5"]
    run = timed(tmp_path, times, column)
    assert list(run.time) == [0.0, 90.0, 3599.5]
    assert run.started is None


def test_elapsed_time_beyond_a_day_is_no_clock(tmp_path: Path) -> None:
    run = timed(tmp_path, ["23:59:58", "24:00:00", "24:00:02"], "time")
    assert list(run.time) == [86398.0, 86400.0, 86402.0]


def test_date_and_time_in_two_columns(tmp_path: Path) -> None:
    rows = ["Date;Time;probe_C;floor_heat_pct", "31.12.2026;23:59:59;20;100"]
    run = read_run(text(tmp_path, [*rows, "01.01.2027;00:00:01;20,5;100"]))
    assert list(run.time) == [0.0, 2.0]
    assert run.started == datetime.datetime(2026, 12, 31, 23, 59, 59)


def test_a_date_beside_elapsed_time_is_not_used(tmp_path: Path) -> None:
    rows = [
        "Date;Time;probe_C;floor_heat_pct",
        "01.03.2026;00:10;20;100",
        "01.03.2026;00:20;20;100",
    ]
    assert list(read_run(text(tmp_path, rows), units={"time": "mm:ss"}).time) == [10.0, 20.0]


def test_date_and_time_cells_of_a_workbook(tmp_path: Path) -> None:
    day = datetime.datetime(2026, 12, 31)
    rows = [["Date", "Time", "probe_C", "floor_heat_pct"]]
    rows += [[day, datetime.time(10, 0, 2 * i), 20 + i, 100] for i in range(5)]  # type: ignore[list-item]
    run = read_run(workbook(tmp_path, rows))  # type: ignore[arg-type]
    assert list(run.time) == [0.0, 2.0, 4.0, 6.0, 8.0]
    assert run.started == datetime.datetime(2026, 12, 31, 10)


def test_midnight_without_dates_is_noted(tmp_path: Path) -> None:
    run = timed(tmp_path, ["23:59:57", "23:59:59", "00:00:01", "00:00:03"])
    assert told(run, "time") == [
        'note: lines 3 to 4: time: "23:59:59", then "00:00:01": taken as past midnight; '
        "expected: dates with the times"
    ]
    assert list(run.time) == [0.0, 2.0, 4.0, 6.0]
    assert told(timed(tmp_path, ["22:00:00", "22:00:02", "22:00:04"]), "time") == []


@pytest.mark.parametrize(
    ("times", "line", "message"),
    [
        (
            ["2026-03-01 10:00:00", "01.03.2026 10:00:02"],
            3,
            'time "01.03.2026 10:00:02" is written in another way than "2026-03-01 10:00:00" on '
            "line 2; allowed: one way in a column",
        ),
        (["2026-03-01 10:00:00", "2026-03-01 10:00:02Z"], 3, "is written in another way than"),
        (["10:00:00", "10:01"], 3, 'time "10:01" is written in another way than "10:00:00"'),
        (
            ["3/4/2026 10:00:00", "3/4/2026 10:00:02"],
            2,
            'time "3/4/2026 10:00:00" may begin with the day or the month, no date of the file '
            'shows which; say dates="day first" or dates="month first", or write dates as 2026-',
        ),
        (["13.04.26 10:00:00", "13.04.26 10:00:02"], 2, "a year of two figures; say dates="),
        (
            ["13/4/2026 10:00:00", "4/13/2026 10:00:02"],
            3,
            'time "4/13/2026 10:00:02" begins with the month, but "13/4/2026 10:00:00" (line 2)',
        ),
        (["20260301T100000", "2026-03-01 10:00:02"], 3, "is written in another way than"),
        (["0026-03-01 10:00:00", "0026-03-01 10:00:02"], 2, "the year 26; allowed: 1900 to 2199"),
        (["2026-03-01 10:00:00+99:00"] * 2, 2, "allowed: a time of a clock such as 2026-03-29"),
        (["2026-02-30 10:00:00", "2026-02-30 10:00:02"], 2, "has a date that does not exist"),
    ],
)
def test_times_that_can_be_read_in_two_ways(
    tmp_path: Path, times: list[str], line: int, message: str
) -> None:
    with pytest.raises(FileFormatError) as caught:
        timed(tmp_path, times)
    assert f"run.csv: line {line}: " in str(caught.value)
    assert message in str(caught.value)
    assert caught.value.line == line


@pytest.mark.parametrize(("first", "second"), [("10:00:00", "10:00:02"), ("10:00", "10:01")])
def test_a_time_of_day_or_a_time_that_has_passed(tmp_path: Path, first: str, second: str) -> None:
    with pytest.raises(FileFormatError) as caught:
        timed(tmp_path, [first, second], "time")
    assert f'line 2: time "{first}" may be a time of day or a time that has passed' in str(
        caught.value
    )
    clock = timed(tmp_path, [first, second], "time", units={"time": "clock"})
    assert clock.time[0] == 0.0
    way = "h:mm:ss" if first.count(":") == 2 else "mm:ss"
    passed = timed(tmp_path, [first, second], "time", units={"time": way})
    assert passed.time[0] == (36000.0 if way == "h:mm:ss" else 600.0)


def test_numbers_under_a_bare_name_have_no_unit(tmp_path: Path) -> None:
    with pytest.raises(
        FileFormatError, match=r'say it with units=\{"time": "min"\}; allowed: s, min'
    ):
        timed(tmp_path, ["0", "1"], "time")
    run = timed(tmp_path, ["0", "1"], "time", units={"time": "min"})
    assert list(run.time) == [0.0, 60.0]


def test_a_time_that_cannot_be_read_leaves_its_row_out(tmp_path: Path) -> None:
    run = timed(
        tmp_path, ["2026-03-01 10:00:00", "--", "2026-03-01 25:00:02", "2026-03-01 10:00:06"]
    )
    assert list(run.time) == [0.0, 6.0]
    expected = "expected: a time, written as in the other lines"
    assert told(run, "time") == [
        f'warning: line 3: time: "--", row left out; {expected}',
        f'warning: line 4: time: "2026-03-01 25:00:02", row left out; {expected}',
    ]


# --- changes of the clock: 29 March 2026 at 02:00 to 03:00, 25 October 2026 at 03:00 to 02:00 in
# Berlin (directive 2000/84/EC: 01:00 UTC on the last Sunday of the month)


def local_times(
    start: datetime.datetime, zone: zoneinfo.ZoneInfo, count: int, step: int
) -> list[str]:
    """What a clock of the zone shows, every so many seconds from a time in UTC on."""
    moments = [start + datetime.timedelta(seconds=step * i) for i in range(count)]
    return [moment.astimezone(zone).strftime("%Y-%m-%d %H:%M:%S") for moment in moments]


CHANGES = {
    "Berlin, spring": (datetime.datetime(2026, 3, 29, 0, 50, tzinfo=UTC), "Europe/Berlin"),
    "Berlin, autumn": (datetime.datetime(2026, 10, 25, 0, 50, tzinfo=UTC), "Europe/Berlin"),
    "Chicago, spring": (datetime.datetime(2026, 3, 8, 7, 50, tzinfo=UTC), "America/Chicago"),
    "Chicago, autumn": (datetime.datetime(2026, 11, 1, 6, 50, tzinfo=UTC), "America/Chicago"),
}


@pytest.mark.parametrize("step", [2, 10, 60])
@pytest.mark.parametrize("change", CHANGES)
def test_a_change_of_the_clock_is_an_error_until_the_zone_is_said(
    tmp_path: Path, change: str, step: int
) -> None:
    start, name = CHANGES[change]
    times = local_times(start, zoneinfo.ZoneInfo(name), 6000 // step, step)
    assert len(set(times)) < len(times) or "spring" in change
    (found,) = told(timed(tmp_path, times), "time")
    way = "forward by" if "spring" in change else "back by"
    jump = 3600 + step if "spring" in change else 3600 - step
    assert found.startswith("error: lines ")
    assert f"the clock goes {way} {jump} s: was it changed to or from summer time?" in found
    assert 'say zone="Europe/Berlin" or another zone' in found
    right = timed(tmp_path, times, zone=name)
    np.testing.assert_array_equal(right.time, step * np.arange(len(times)))
    (note,) = told(right, "time")
    hours = "+1" if "spring" in change else "-1"
    assert note.startswith("note: ") and f"the clock of {name} changes by {hours} h" in note


@pytest.mark.parametrize("change", CHANGES)
def test_times_with_their_offset_need_no_zone(tmp_path: Path, change: str) -> None:
    start, name = CHANGES[change]
    moments = [start + datetime.timedelta(seconds=10 * i) for i in range(600)]
    times = [moment.astimezone(zoneinfo.ZoneInfo(name)).isoformat() for moment in moments]
    run = timed(tmp_path, times)
    np.testing.assert_array_equal(run.time, 10.0 * np.arange(600))
    assert told(run, "time") == []
    assert run.started == start


def test_a_night_without_a_change_has_no_finding(tmp_path: Path) -> None:
    start = datetime.datetime(2026, 10, 18, 0, 50, tzinfo=UTC)  # the Sunday before
    times = local_times(start, BERLIN, 600, 10)
    assert told(timed(tmp_path, times), "time") == []
    assert told(timed(tmp_path, times, zone="Europe/Berlin"), "time") == []


def test_an_hour_without_rows_in_the_day_is_a_gap(tmp_path: Path) -> None:
    # a Sunday, but in the afternoon, when no clock is changed
    start = datetime.datetime(2026, 3, 29, 10, 0, tzinfo=UTC)
    times = local_times(start, BERLIN, 60, 10)
    later = local_times(start + datetime.timedelta(seconds=600 + 3600), BERLIN, 60, 10)
    (found,) = told(timed(tmp_path, times + later), "time")
    assert found.startswith("warning: lines 61 to 62: time: gap of 3610 s")


def test_a_log_of_a_clock_that_is_not_changed_does_not_fit_the_zone(tmp_path: Path) -> None:
    with pytest.raises(FileFormatError) as caught:
        timed(tmp_path, ["2026-03-29 01:59:58", "2026-03-29 02:00:00"], zone="Europe/Berlin")
    assert 'line 3: time "2026-03-29 02:00:00" does not exist in Europe/Berlin' in str(caught.value)


def test_a_repeated_hour_that_shows_no_change_is_noted(tmp_path: Path) -> None:
    run = timed(tmp_path, ["2026-10-25 02:10:00", "2026-10-25 02:10:02"], zone="Europe/Berlin")
    (note,) = told(run, "time")
    assert '"2026-10-25 02:10:00" comes twice in Europe/Berlin; taken as the first' in note


@pytest.mark.parametrize(
    ("times", "column", "why"),
    [
        (["0", "2"], "time_s", "elapsed times"),
        (["10:00:00", "10:00:02"], "clock", "times without dates"),
        (["2026-03-01 10:00:00Z", "2026-03-01 10:00:02Z"], "clock", "times with their own offset"),
    ],
)
def test_a_zone_that_is_not_used_is_noted(
    tmp_path: Path, times: list[str], column: str, why: str
) -> None:
    (note,) = told(timed(tmp_path, times, column, zone="UTC"), "time")
    assert f'zone "UTC" was not used: the log has {why}' in note


def test_zones_and_orders_that_do_not_exist(tmp_path: Path) -> None:
    with pytest.raises(
        UnknownName, match=r'zone: "Europe/Berlim" is not known \(did you mean "Europe/'
    ):
        timed(tmp_path, ["0", "2"], "time_s", zone="Europe/Berlim")
    with pytest.raises(InvalidArgument, match='dates: "year first" is not allowed; allowed: "day'):
        timed(tmp_path, ["0", "2"], "time_s", dates="year first")


# --- events by the same clock


def with_events(folder: Path, column: str, *times: str) -> None:
    rows = [f"{times[0]},phase start,1", f"{times[1]},end,"]
    (folder / "run.events.csv").write_text("\n".join([f"{column},event,detail", *rows]) + "\n")


@pytest.mark.parametrize(
    ("log", "column", "events"),
    [
        (
            ["2026-03-01 10:00:00", "2026-03-01 10:05:00"],
            "clock",
            ["2026-03-01 10:00:30", "2026-03-01 10:04:00"],
        ),
        (["2026-03-01 10:00:00", "2026-03-01 10:05:00"], "time_s", ["30", "240"]),
        (["23:58:00", "00:03:00"], "clock", ["23:58:30", "00:02:00"]),
        (["23:58:00", "00:03:00"], "time_min", ["0.5", "4"]),
    ],
)
def test_events_by_the_clock_of_the_log(
    tmp_path: Path, log: list[str], column: str, events: list[str]
) -> None:
    with_events(tmp_path, column, *events)
    assert [one.time for one in timed(tmp_path, log).events] == [30.0, 240.0]


def test_events_after_midnight_only(tmp_path: Path) -> None:
    with_events(tmp_path, "clock", "00:01:00", "00:02:00")
    assert [one.time for one in timed(tmp_path, ["23:58:00", "00:03:00"]).events] == [180.0, 240.0]


def test_events_before_the_log_by_its_clock(tmp_path: Path) -> None:
    with_events(tmp_path, "clock", "09:59:50", "10:00:02")
    assert [one.time for one in timed(tmp_path, ["10:00:00", "10:00:02"]).events] == [-10.0, 2.0]


def test_events_of_another_clock_are_refused(tmp_path: Path) -> None:
    with_events(tmp_path, "clock", "10:00:00", "10:00:02")
    with pytest.raises(FileFormatError) as caught:
        timed(tmp_path, ["0", "2"], "time_s")
    assert "the events have times of day, the log has elapsed times; allowed: the same" in str(
        caught.value
    )
