"""What people are told when a file or a value is wrong, and that the command line says it too."""

import pickle
import re
from pathlib import Path

import pytest
from log_files import in_fahrenheit
from typer.testing import CliRunner

from kettlecast import errors
from kettlecast.cli import app
from kettlecast.demo import demo_path

KETTLE = demo_path("kettle.toml")
STEW = demo_path("stew.toml")
LOG = demo_path("water_boil_60kg.csv")


def run(*arguments: object) -> tuple[int, str]:
    """Exit code and what was said on standard error; standard output must stay empty."""
    result = CliRunner().invoke(app, [str(one) for one in arguments])
    assert result.stdout == ""
    assert "Traceback" not in result.stderr
    return result.exit_code, result.stderr


def altered(source: Path, folder: Path, old: str, new: str) -> Path:
    text = source.read_text(encoding="utf-8")
    assert old in text
    path = folder / source.name
    path.write_text(text.replace(old, new, 1), encoding="utf-8")
    return path


@pytest.mark.parametrize(
    ("old", "new", "told"),
    [
        # unit of another kind, unit unknown, no unit, decimal comma
        ('mass = "8 kg"', 'mass = "8 min"', ["phase[2].add[1].mass", '"8 min"', "allowed: ", "lb"]),
        ('mass = "8 kg"', 'mass = "8 stone"', ["phase[2].add[1].mass", '"8 stone"', "allowed: "]),
        ('mass = "8 kg"', 'mass = "8"', ["phase[2].add[1].mass", "the unit is missing"]),
        ('mass = "8 kg"', 'mass = "8,5 kg"', ["phase[2].add[1].mass", "comma"]),
        # missing and misspelt keys
        ('mass = "8 kg"\n', "", ["phase[2].add[1].mass", "this key is missing"]),
        ('hold = "60 s"', 'holt = "60 s"', ["phase[1].holt", 'did you mean "hold"?', "allowed: "]),
        # unknown names
        ('food = "onion"', 'food = "onoin"', ["phase[2].add[1].food", '"onoin"', "nearest: onion"]),
        ('shape = "slab"', 'shape = "cube"', ["phase[2].add[1].shape", '"cube"', '"slab"']),
        ('regulate = "floor"', 'regulate = "oven"', ["phase[1].regulate", '"oven"', '"probe"']),
        # impossible values
        ('mass = "8 kg"', 'mass = "-8 kg"', ["onion", "mass", "-8"]),
        (
            'set_point = "140 degC"',
            'set_point = "-300 degC"',
            ["phase[1].set_point", "absolute zero"],
        ),
        ('stir = "20 rpm"', "stir = 20", ["phase[1].stir", "unit is missing"]),
        ("[recipe]", "[recipe", ["not TOML", "line 3"]),
    ],
)
def test_wrong_recipe_is_told_with_file_key_value_and_what_is_allowed(
    old: str, new: str, told: list[str], tmp_path: Path
) -> None:
    path = altered(STEW, tmp_path, old, new)
    code, said = run("forecast", KETTLE, path)
    assert code == 1
    for part in [str(path), *told]:
        assert part in said


@pytest.mark.parametrize(
    ("old", "new", "told"),
    [
        ('power = "18 kW"', 'power = "18 bar"', ["floor.power", '"18 bar"', "allowed: ", "kW"]),
        ('diameter = "0.80 m"\n', "", ["kettle.diameter", "this key is missing"]),
        ('diameter = "0.80 m"', 'diameter = "80 m"', ["diameter", "between", "80"]),
        ('metal = "carbon_steel"', 'metal = "tin"', ["floor.metal", '"tin"', '"carbon_steel"']),
        ("[floor]", "[flor]", ["flor", 'did you mean "floor"?']),
        ('humidity = "55 %"', 'humidity = "155 %"', ["humidity", "155|1.55"]),
    ],
)
def test_wrong_kettle_is_told_with_file_key_value_and_what_is_allowed(
    old: str, new: str, told: list[str], tmp_path: Path
) -> None:
    path = altered(KETTLE, tmp_path, old, new)
    code, said = run("forecast", path, STEW)
    assert code == 1
    assert str(path) in said
    for part in told:
        assert any(one in said for one in part.split("|")), part


def test_all_problems_of_a_file_are_told_at_once(tmp_path: Path) -> None:
    path = altered(STEW, tmp_path, 'mass = "8 kg"', 'mass = "8 min"')
    path = altered(path, tmp_path, 'mass = "11 kg"', 'mass = "11"')
    _, said = run("forecast", KETTLE, path)
    assert "2 problems" in said
    assert "phase[2].add[1].mass" in said
    assert "phase[3].add[2].mass" in said


def test_overfull_kettle_is_told(tmp_path: Path) -> None:
    code, said = run("forecast", KETTLE, altered(STEW, tmp_path, "42 kg", "420 kg"))
    assert code == 1
    assert re.search(r"load and heat|commissary A", said)


def test_unknown_food_to_add_is_told() -> None:
    code, said = run(
        "compare", KETTLE, STEW, "--more", "carot=20 lb", "--phase", 3, "--at", "2 degC"
    )
    assert code == 1
    assert 'food "carot" is not known; nearest: carrot' in said


def test_cold_addition_without_temperature_is_told() -> None:
    code, said = run("compare", KETTLE, STEW, "--more", "carrot=20 lb", "--phase", 3)
    assert code == 1
    assert "its temperature is needed" in said


def test_empty_log_is_told(tmp_path: Path) -> None:
    path = tmp_path / "empty.csv"
    path.write_text("")
    for command in (("check", path), ("fit", KETTLE, "--run", path)):
        code, said = run(*command)
        assert code == 1
        assert f"{path}: empty" in said


def test_log_without_probe_is_told(tmp_path: Path) -> None:
    code, said = run("check", altered(LOG, tmp_path, "probe_C", "oven_C"))
    assert code == 1
    assert "probe" in said


def test_log_in_fahrenheit_declared_as_celsius_is_refused_for_a_fit(tmp_path: Path) -> None:
    path = in_fahrenheit(tmp_path, LOG.stem)
    pair = f"{path}:{demo_path('water_boil.toml')}"
    code, said = run("fit", KETTLE, "--run", pair)
    assert code == 1
    assert "cannot be used" in said
    assert 'units={"probe": "degF"}' in said


@pytest.mark.parametrize("name", ["absent.toml", "absent.json"])
def test_absent_file_is_told(name: str, tmp_path: Path) -> None:
    code, said = run("forecast", tmp_path / name, STEW)
    assert code == 1
    assert said.strip() == f"kettlecast: {tmp_path / name}: No such file or directory"


def test_folder_given_as_file_is_told(tmp_path: Path) -> None:
    code, said = run("forecast", tmp_path, STEW)
    assert code == 1
    assert str(tmp_path) in said


@pytest.mark.parametrize("name", errors.__all__)
def test_every_error_is_ours_and_says_its_message(name: str) -> None:
    kind = getattr(errors, name)
    assert issubclass(kind, errors.Error)
    assert str(kind("where, what, allowed")) == "where, what, allowed"


def test_file_error_keeps_file_key_and_line_through_pickling() -> None:
    error = errors.FileFormatError("told", file="a.toml", key="kettle.name", line=3)
    back = pickle.loads(pickle.dumps(error))
    assert (str(back), back.file, back.key, back.line) == ("told", "a.toml", "kettle.name", 3)
