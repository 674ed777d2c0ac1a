"""Sentences about limits of a forecast, and how warm a kettle is for the next batch."""

import itertools
import math

import pytest

import kettlecast as kc
from kettlecast.demo import demo_path

KETTLE = kc.read_kettle(demo_path("kettle.toml"))


def water(mass: float, *rules: kc.EndRule, **phase: object) -> kc.Recipe:
    poured = kc.Addition(name="water", food=kc.food("water"), mass=mass, temperature=288.15)
    heat = kc.Phase(
        name="heat",
        regulated=kc.Regulated.probe,
        set_point=330.0,
        ends=list(rules) or [kc.EndRule(kind=kc.EndKind.held, value=60.0)],
        additions=[poured],
        agitation=kc.Agitation(speed=0.5),
        **phase,  # type: ignore[arg-type]
    )
    return kc.Recipe(name="water", phases=[heat])


def test_an_agitator_is_bare_below_the_volume_of_its_cylinder() -> None:
    kettle = KETTLE.replace(agitator_height=0.1)
    litres = 1000.0 * math.pi / 4.0 * 0.8**2 * 0.1  # 50.3 L, the cylinder under the blades
    (told,) = kc.forecast(kettle, water(40.0)).notes
    assert told.startswith('In phase 1 "heat" the agitator turns in 40.')
    assert told.endswith(f"{litres:.1f} L cover it.")
    assert kc.forecast(kettle, water(60.0)).notes == ()
    assert kc.forecast(KETTLE, water(40.0)).notes == ()  # nobody said how high it is


def test_a_kettle_that_is_nearly_full_is_told() -> None:
    kettle = KETTLE.replace(working_volume=0.100)
    (told,) = kc.forecast(kettle, water(96.0)).notes
    assert told == 'In phase 1 "heat" the kettle is filled to 98 % of its usable 100 L.'
    assert kc.forecast(kettle, water(80.0)).notes == ()


def test_a_kettle_cools_towards_the_room_between_batches() -> None:
    batch = kc.forecast(KETTLE, water(40.0))
    room = KETTLE.surroundings.temperature
    starts = [kc.start_after(batch, idle) for idle in ("0 s", "10 min", "1 h", "24 h")]
    for earlier, later in itertools.pairwise(starts):
        assert room - 0.5 < later.floor < earlier.floor
        assert room - 0.5 < later.wall < earlier.wall
    assert starts[-1].floor == pytest.approx(room, abs=1.0)


def test_a_warm_kettle_reaches_its_set_point_sooner() -> None:
    cold = kc.forecast(KETTLE, water(40.0))
    warm = kc.forecast(KETTLE, water(40.0), start=kc.start_after(cold, "5 min"))
    assert warm.duration < cold.duration - 5.0


def test_no_time_runs_backwards() -> None:
    batch = kc.forecast(KETTLE, water(40.0))
    with pytest.raises(kc.InvalidArgument, match=r"idle must be 0 s or more, got -3 min"):
        kc.start_after(batch, "-3 min")
