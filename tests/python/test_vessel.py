"""Geometry of a kettle from Python: exact volumes, records and refusals."""

import math
import pickle

import pytest

import kettlecast as kc
from kettlecast import _core
from kettlecast.errors import InvalidArgument

FLAT = kc.VesselShape(diameter=0.8, wall_height=0.6)
BOWL = FLAT.replace(floor=kc.FloorShape.hemispherical)


def test_a_bowl_holds_half_a_ball_and_a_cylinder() -> None:
    expected = 2 / 3 * math.pi * 0.4**3 + math.pi * 0.4**2 * 0.6
    assert kc.vessel.capacity(BOWL) == pytest.approx(expected, rel=1e-12)
    assert kc.vessel.floor_total_area(BOWL) == pytest.approx(2 * math.pi * 0.4**2, rel=1e-12)


# Hoof of Archimedes: V = 2/3 R^2 H for a surface through the middle of the floor
def test_the_hoof_of_archimedes() -> None:
    tilted = FLAT.replace(tilt=0.5)
    rise = 0.4 * math.tan(0.5)
    volume = 2 / 3 * 0.4**2 * rise
    assert kc.vessel.volume_at_level(tilted, 0.0) == pytest.approx(volume, rel=1e-12)
    wet = kc.vessel.wetting(tilted, volume)
    assert wet.level == pytest.approx(0.0, abs=1e-10)
    assert wet.wall_area == pytest.approx(2 * 0.4 * rise, rel=1e-9)
    assert wet.floor_area == pytest.approx(math.pi * 0.4**2 / 2, rel=1e-9)


def test_half_the_product_wets_the_whole_floor_but_half_the_wall() -> None:
    much, little = kc.vessel.wetting(FLAT, 0.2), kc.vessel.wetting(FLAT, 0.1)
    assert little.floor_area == much.floor_area
    assert little.wall_area == pytest.approx(much.wall_area / 2, rel=1e-12)
    assert little.wall_area_per_volume == pytest.approx(4 / 0.8, rel=1e-12)


def test_a_tilted_kettle_needs_more_to_cover_the_agitator() -> None:
    upright = kc.vessel.volume_to_cover(FLAT, 0.1, 0.3)
    tilted = kc.vessel.volume_to_cover(FLAT.replace(tilt=0.1), 0.1, 0.3)
    assert upright == pytest.approx(math.pi * 0.16 * 0.1, rel=1e-12)
    assert tilted == pytest.approx(math.pi * 0.16 * (0.1 + 0.3 * math.tan(0.1)), rel=1e-12)


def test_records_pickle() -> None:
    assert pickle.loads(pickle.dumps(BOWL)) == BOWL
    wet = kc.vessel.wetting(BOWL, 0.1)
    assert pickle.loads(pickle.dumps(wet)) == wet


@pytest.mark.parametrize(
    ("changes", "told"),
    [
        ({"diameter": 0.0}, "diameter"),
        ({"tilt": 1.2}, "tilt"),
        ({"floor_depth": 0.1}, "dished floor only"),
        ({"wall_height": 0.0}, "holds no product"),
    ],
)
def test_vessels_that_cannot_exist_are_refused(changes: dict[str, float], told: str) -> None:
    with pytest.raises(InvalidArgument, match=told):
        _core.check(FLAT.replace(**changes))
    with pytest.raises(InvalidArgument, match=told):
        kc.vessel.wetting(FLAT.replace(**changes), 0.1)


def test_volumes_that_cannot_be_are_refused() -> None:
    with pytest.raises(InvalidArgument, match="volume must be between"):
        kc.vessel.wetting(FLAT, -1.0)
    with pytest.raises(InvalidArgument, match="volume must be between"):
        kc.vessel.wetting(FLAT, math.nan)
    with pytest.raises(InvalidArgument, match="radius must be between"):
        kc.vessel.volume_to_cover(FLAT, 0.1, 0.5)
