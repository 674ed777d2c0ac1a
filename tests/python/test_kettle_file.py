"""Kettle files: what is read, and what is said about files that cannot be read."""

import json
import pickle
from pathlib import Path

import pytest

from kettlecast import _core
from kettlecast.demo import demo_path
from kettlecast.errors import FileFormatError, InvalidArgument, UnknownName
from kettlecast.kettle_file import kettle_schema, read_kettle, standard_pressure

SMALLEST = """
[kettle]
name = "small"
diameter = "20 in"
height = "1 ft"
[floor]
power = "6 kW"
"""


def written(folder: Path, text: str) -> Path:
    path = folder / "kettle.toml"
    path.write_text(text, encoding="utf-8")
    return path


def refusal(folder: Path, text: str) -> FileFormatError:
    with pytest.raises(FileFormatError) as caught:
        read_kettle(written(folder, text))
    return caught.value


def test_the_demo_kettle_is_as_its_people_know_it() -> None:
    kettle = read_kettle(demo_path("kettle.toml"))
    assert (kettle.diameter, kettle.height) == (0.80, 0.45)
    assert (kettle.floor_power, kettle.jacket.power) == (18000.0, 6000.0)
    assert kettle.floor_thickness == pytest.approx(0.015, rel=1e-12)
    assert kettle.jacket.height == pytest.approx(0.6 * kettle.height, rel=1e-12)
    assert kettle.agitator is _core.AgitatorKind.scraped_anchor
    assert kettle.surroundings.temperature == pytest.approx(296.15, abs=1e-9)
    assert kettle.surroundings.pressure == pytest.approx(100200.0, rel=1e-12)
    assert kettle.surroundings.relative_humidity == pytest.approx(0.55, rel=1e-12)


def test_absent_keys_take_the_defaults_of_the_kettle(tmp_path: Path) -> None:
    kettle = read_kettle(written(tmp_path, SMALLEST))
    assert kettle.diameter == pytest.approx(0.508, rel=1e-12)
    assert kettle.controller == _core.Controller()
    assert kettle.surroundings == _core.Surroundings()
    assert kettle.agitator is _core.AgitatorKind.none
    assert kettle.jacket == _core.Jacket()


def test_a_dead_band_in_fahrenheit_is_a_difference(tmp_path: Path) -> None:
    kettle = read_kettle(written(tmp_path, SMALLEST + '[control]\ndead_band = "18 degF"\n'))
    assert kettle.controller.dead_band == pytest.approx(10.0, rel=1e-12)


# Source: US Standard Atmosphere 1976, table of pressure against geometric altitude, five digits
@pytest.mark.parametrize(
    ("altitude", "pressure"),
    [(-2000, 127780.0), (0, 101325.0), (4000, 61660.0), (6000, 47218.0), (10000, 26500.0)],
)
def test_the_standard_atmosphere(altitude: float, pressure: float) -> None:
    assert standard_pressure(altitude) == pytest.approx(pressure, rel=5e-5)


def test_altitude_sets_the_pressure_of_the_room(tmp_path: Path) -> None:
    kettle = read_kettle(written(tmp_path, SMALLEST + '[room]\naltitude = "4 km"\n'))
    assert kettle.surroundings.pressure == pytest.approx(61660.0, rel=5e-5)


def test_altitude_has_a_range() -> None:
    with pytest.raises(InvalidArgument, match="must be between -2000 and 11000 m, got 12000 m"):
        standard_pressure(12000.0)


def test_every_problem_of_a_file_is_listed_at_once(tmp_path: Path) -> None:
    text = SMALLEST.replace("diameter", "diamter").replace('"6 kW"', "6")
    error = refusal(
        tmp_path,
        text + 'metal = "carbon"\n[agitator]\nkind = "anchor"\nblades = "2"\n'
        '[room]\naltitude = "1 km"\npressure = "1 bar"\n[walls]\n',
    )
    lines = str(error).splitlines()
    assert lines[0] == f"{tmp_path / 'kettle.toml'}: 7 problems"
    assert [line.strip() for line in lines[1:]] == [
        "kettle.diameter: this key is missing",
        'kettle.diamter: unknown key (did you mean "diameter"?); '
        "allowed: name, diameter, height, floor, floor_depth, tilt, working_volume",
        'floor.power: "6" is not a power: the unit is missing, for example "18 kW"',
        'floor.metal: "carbon" is not allowed (did you mean "carbon_steel"?); '
        'allowed: "stainless_steel", "carbon_steel", "aluminium"',
        "agitator.blades: Input should be a valid integer, got '2'",
        "room: give pressure or altitude, not both",
        'walls: unknown key (did you mean "wall"?); '
        "allowed: kettle, floor, jacket, wall, agitator, control, room",
    ]
    assert error.key == "kettle.diameter"
    assert error.file == str(tmp_path / "kettle.toml")


def test_one_problem_stands_on_one_line(tmp_path: Path) -> None:
    error = refusal(tmp_path, SMALLEST.replace("6 kW", "6 kg"))
    allowed = "W, kW, BTU/h, MBH, kJ/h, kcal/h, boiler hp, hp, TR"
    told = f'floor.power: "6 kg" is not a power: unit "kg" unknown; allowed: {allowed}'
    assert str(error) == f"{tmp_path / 'kettle.toml'}: {told}"


def test_gauge_pressure_of_a_room_is_refused(tmp_path: Path) -> None:
    error = refusal(tmp_path, SMALLEST + '[room]\npressure = "5 psig"\n')
    assert 'room.pressure: "5 psig" is not a pressure here: a gauge pressure' in str(error)


def test_a_table_that_is_no_table_is_refused(tmp_path: Path) -> None:
    error = refusal(tmp_path, "floor = 3\n" + SMALLEST.split("[floor]")[0])
    assert "floor: must be a table, got 3" in str(error)


def test_a_kettle_that_cannot_exist_names_the_file(tmp_path: Path) -> None:
    error = refusal(tmp_path, SMALLEST.replace("6 kW", "-6 kW"))
    assert str(error).startswith(f"{tmp_path / 'kettle.toml'}: ")
    assert "floor_power" in str(error)
    assert isinstance(error.__cause__, InvalidArgument)


def test_a_syntax_error_gives_the_line(tmp_path: Path) -> None:
    error = refusal(tmp_path, "[kettle]\nname = = 1\n")
    assert error.line == 2
    assert "kettle.toml: not TOML: Invalid value (at line 2, column 8)" in str(error)


def test_a_file_that_is_not_there(tmp_path: Path) -> None:
    with pytest.raises(FileFormatError, match=r"absent\.toml: No such file or directory"):
        read_kettle(tmp_path / "absent.toml")


def test_the_error_pickles_with_its_attributes(tmp_path: Path) -> None:
    error = refusal(tmp_path, SMALLEST.replace("6 kW", "6 kg"))
    copy = pickle.loads(pickle.dumps(error))
    assert (str(copy), copy.file, copy.key) == (str(error), error.file, "floor.power")


def test_the_schema_knows_every_table_and_its_choices() -> None:
    schema = json.loads(json.dumps(kettle_schema()))
    assert set(schema["properties"]) == {
        "kettle", "floor", "jacket", "wall", "agitator", "control", "room"
    }  # fmt: skip
    assert schema["additionalProperties"] is False
    kind = schema["$defs"]["_Agitator"]["properties"]["kind"]
    assert kind["enum"] == list(_core.AgitatorKind.__members__)
    assert schema["$defs"]["_Floor"]["properties"]["power"]["type"] == "string"


def test_an_unknown_demo_file_lists_those_there_are() -> None:
    with pytest.raises(UnknownName, match=r'demo file "soup\.toml" is not known; .*stew\.toml'):
        demo_path("soup.toml")


def test_a_steam_kettle_with_cooling(tmp_path: Path) -> None:
    text = """
[kettle]
name = "steam"
diameter = "0.7 m"
height = "0.3 m"
floor = "hemispherical"
tilt = "10 deg"
[floor]
[agitator]
kind = "anchor"
diameter = "0.66 m"
height = "0.3 m"
[jacket]
kind = "steam"
power = "60 kW"
height = "0.1 m"
under_floor = true
pressure = "15 psig"
air = "1 %"
cooling = { flow = "20 kg/min", inlet = "12 degC", glycol = "30 %" }
"""
    kettle = read_kettle(written(tmp_path, text))
    jacket = kettle.jacket
    assert kettle.floor_shape is _core.FloorShape.hemispherical
    assert kettle.tilt == pytest.approx(0.174533, abs=1e-6)
    assert kettle.agitator_height == pytest.approx(0.3)
    assert (jacket.kind, jacket.under_floor) == (_core.JacketKind.steam, True)
    assert jacket.steam_pressure == pytest.approx(15 * 6894.757, rel=1e-6)  # NIST SP 811, App. B
    assert jacket.air_share == pytest.approx(0.01)
    assert jacket.cooling.flow == pytest.approx(1.0 / 3.0)
    assert jacket.cooling.inlet_temperature == pytest.approx(285.15)
    assert jacket.cooling.glycol == pytest.approx(0.3)
    assert _core.heats_by_jacket(kettle)


def test_a_steam_pressure_is_a_gauge_pressure(tmp_path: Path) -> None:
    table = '[jacket]\nkind = "steam"\npower = "20 kW"\nheight = "0.1 m"\npressure = "2 bar"\n'
    told = 'jacket.pressure: "2 bar" is not a gauge pressure: unit "bar" unknown; allowed: psig'
    assert told in str(refusal(tmp_path, SMALLEST + table))
