"""What operators did, as events files tell it."""

from pathlib import Path

import pytest
from log_files import events, log, rows, told

from kettlecast import _core
from kettlecast.demo import demo_path
from kettlecast.errors import FileFormatError
from kettlecast.recipe_changes import with_more
from kettlecast.recipe_file import read_recipe
from kettlecast.run_log import read_run


def test_a_lid_by_hand(tmp_path: Path) -> None:
    events(tmp_path, "0,phase start,1", "10,lid on,", "30,lid,off", "98,end,")
    run = read_run(log(tmp_path, rows()))
    cover = _core.Cover
    assert run.covers == ((0.0, cover.open), (10.0, cover.lid), (30.0, cover.open))


def test_a_pour_belongs_to_the_addition_of_its_own_phase(tmp_path: Path) -> None:
    stew = read_recipe(demo_path("stew.toml"))
    twice = with_more(stew, "onion", "1 kg", "5 C", phase=3, piece="3 mm", shape="slab")
    added = ("20,phase start,2", "30,phase start,3", "40,add,onion 1 kg at 5 C")
    events(tmp_path, "0,phase start,1", *added)
    ((_, onion),) = read_run(log(tmp_path, rows()), recipe=twice).pours
    assert onion.piece_size == pytest.approx(0.003, rel=1e-12)


def test_a_set_point_reached_before_the_first_phase_counts_for_none(tmp_path: Path) -> None:
    events(tmp_path, "0,set point reached,", "2,phase start,1", "98,end,")
    assert read_run(log(tmp_path, rows())).reached == (None,)


@pytest.mark.parametrize(
    ("line", "message"),
    [
        (
            "4,phase strt,2",
            'event "phase strt" is not known (did you mean "phase start"?); allowed',
        ),
        (
            "4,add,onion 8 at 5 C",
            'add "onion 8 at 5 C": write food, mass and temperature as "onion',
        ),
        ("4,add,onion 8 kgs at 5 C", 'add: "8 kgs" is not a mass: unit "kgs" unknown'),
        ("4,add,onion 8 kg at 5", 'add: "5" is not a temperature: the unit is missing'),
        ("4,add,onin 8 kg at 5 C", 'add: food "onin" is not known; nearest: onion'),
        ("4,phase start,3", 'phase start "3": the next phase is 2'),
        ("x,end,", '"x s" is not a time: it must start with a number'),
        ("-1,end,", "time -1 lies before the line above"),
    ],
)
def test_events_that_cannot_be_understood(tmp_path: Path, line: str, message: str) -> None:
    path = events(tmp_path, "0,phase start,1", line)
    with pytest.raises(FileFormatError) as caught:
        read_run(log(tmp_path, rows()))
    assert f"{path}: line 3: " in str(caught.value)
    assert message in str(caught.value)
    assert caught.value.line == 3


def test_events_against_log_and_recipe(tmp_path: Path) -> None:
    events(tmp_path, "0,phase start,1", "1,note,tasted, 5 stars", "900,end,")
    run = read_run(log(tmp_path, rows()), recipe=read_recipe(demo_path("water_steps.toml")))
    assert told(run, "events") == [
        "warning: line 4: events: end at 900 s lies outside of the log; "
        "expected: a time from 0 to 98 s, by the clock of the log",
        'warning: lines 2 to 4: events: 1 phases, recipe "water in steps" has 3; '
        "expected: the recipe that was cooked",
    ]


def test_an_events_file_that_is_named_must_be_there(tmp_path: Path) -> None:
    with pytest.raises(FileFormatError, match=r"absent\.csv: No such file or directory"):
        read_run(log(tmp_path, rows()), events=tmp_path / "absent.csv")
