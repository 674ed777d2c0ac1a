"""Recipe files read, written and changed."""

from pathlib import Path

import pytest

from kettlecast import _core
from kettlecast.demo import demo_path
from kettlecast.errors import FileFormatError, InvalidArgument
from kettlecast.foods import food
from kettlecast.recipe_changes import with_more
from kettlecast.recipe_file import read_recipe, recipe_schema
from kettlecast.recipe_writer import write_recipe

POUND = 0.45359237  # [kg], exact
HEAD = '[recipe]\nname = "test"\n[[phase]]\nname = "only"\n'


def written(folder: Path, text: str) -> Path:
    path = folder / "recipe.toml"
    path.write_text(text, encoding="utf-8")
    return path


def only_phase(folder: Path, text: str) -> _core.Phase:
    return read_recipe(written(folder, HEAD + text)).phases[0]


def refusal(folder: Path, text: str) -> str:
    with pytest.raises(FileFormatError) as caught:
        read_recipe(written(folder, text))
    return str(caught.value).removeprefix(f"{folder / 'recipe.toml'}: ")


@pytest.fixture(scope="module")
def stew() -> _core.Recipe:
    return read_recipe(demo_path("stew.toml"))


def rule(kind: str, value: float, signal: str = "probe") -> _core.EndRule:
    members = _core.EndKind.__members__, _core.Regulated.__members__
    return _core.EndRule(kind=members[0][kind], value=value, signal=members[1][signal])


def test_the_demo_stew_has_the_phases_its_people_know(stew: _core.Recipe) -> None:
    oil, onions, load, simmer, spinach = stew.phases
    assert (oil.regulated, oil.ends) == (_core.Regulated.floor, [rule("held", 60.0)])
    assert oil.set_point == pytest.approx(413.15, abs=1e-9)
    assert (onions.ends, onions.additions[0].shape) == ([rule("elapsed", 540)], _core.Shape.slab)
    assert [entry.name for entry in load.additions] == ["water", "lentil"]
    assert (load.jacket, load.jacket_limit) == (
        _core.JacketUse.heat,
        pytest.approx(371.15, abs=1e-9),
    )
    assert (simmer.cover, simmer.heat_limit) == (_core.Cover.lid, pytest.approx(0.6))
    assert (simmer.agitation.on_time, simmer.agitation.off_time) == (40.0, 60.0)
    assert simmer.agitation.speed == pytest.approx(20 / 60, rel=1e-12)
    assert spinach.additions[0].temperature == pytest.approx(255.15, abs=1e-9)
    assert sum(entry.mass for phase in stew.phases for entry in phase.additions) == 69.5


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ('hold = "1:00"', rule("held", 60.0)),
        ('duration = "25 min"', rule("elapsed", 1500.0)),
        ('until = { probe_above = "185 degF" }', rule("above", 358.15)),
        ('until = { floor_below = "60 degC" }', rule("below", 333.15, "floor")),
        ('until = { difference_below = "18 degF" }', rule("below", 10.0, "difference")),
        ('lose = "2 kg"', rule("mass_lost", 2.0)),
    ],
)
def test_each_end_rule(tmp_path: Path, text: str, expected: _core.EndRule) -> None:
    keys = 'regulate = "probe"\nset_point = "85 degC"\n'
    (found,) = only_phase(tmp_path, keys + text).ends
    assert (found.kind, found.signal) == (expected.kind, expected.signal)
    assert found.value == pytest.approx(expected.value, abs=1e-9)


def test_what_is_a_difference_is_read_as_one(tmp_path: Path) -> None:
    phase = only_phase(
        tmp_path,
        'regulate = "difference"\nset_point = "18 degF"\nduration = "1 h"\n'
        'difference_limit = "36 degF"\nfloor_limit = "320 degF"\n',
    )
    assert phase.set_point == pytest.approx(10.0, rel=1e-12)
    assert phase.difference_limit == pytest.approx(20.0, rel=1e-12)
    assert phase.floor_limit == pytest.approx(433.15, abs=1e-9)


@pytest.mark.parametrize(
    ("text", "jacket", "limit"),
    [
        ("", "off", 373.15),
        ('jacket = "off"', "off", 373.15),
        ('jacket = "on"', "heat", 373.15),
        ('jacket = { below = "98 degC" }', "heat", 371.15),
        ('jacket = "cool"', "cool", 373.15),
    ],
)
def test_the_jacket(tmp_path: Path, text: str, jacket: str, limit: float) -> None:
    phase = only_phase(tmp_path, f'duration = "60 s"\n{text}\n')
    assert phase.jacket.name == jacket
    assert phase.jacket_limit == pytest.approx(limit, abs=1e-9)


def test_level_of_a_jacket_and_limit_of_cooling(tmp_path: Path) -> None:
    warm = only_phase(tmp_path, 'duration = "60 s"\njacket = { level = "50 %" }\n')
    assert (warm.jacket, warm.jacket_share) == (_core.JacketUse.heat, pytest.approx(0.5))
    cold = only_phase(tmp_path, 'duration = "60 s"\njacket = { use = "cool", above = "36 degF" }\n')
    assert cold.jacket == _core.JacketUse.cool
    assert cold.jacket_cool_limit == pytest.approx(273.15 + 20.0 / 9.0, abs=1e-9)


@pytest.mark.parametrize(
    ("text", "told"),
    [
        ('{ above = "3 degC" }', "a jacket that heats takes below and level, not above"),
        (
            '{ use = "cool", below = "90 degC" }',
            "a jacket that cools takes above only, not below or level",
        ),
    ],
)
def test_a_jacket_limit_of_the_other_use_is_refused(tmp_path: Path, text: str, told: str) -> None:
    assert told in refusal(tmp_path, HEAD + f'duration = "60 s"\njacket = {text}\n')


@pytest.mark.parametrize(
    ("text", "kind", "value"),
    [("2.5 kg", "mass_lost", 2.5), ("12 %", "share_lost", 0.12)],
)
def test_a_loss_is_a_mass_or_a_share(tmp_path: Path, text: str, kind: str, value: float) -> None:
    (rule,) = only_phase(tmp_path, f'lose = "{text}"\n').ends
    assert (rule.kind.name, rule.value) == (kind, pytest.approx(value))


def test_a_core_probe_reversing_blades_and_spread_sizes(tmp_path: Path) -> None:
    phase = only_phase(
        tmp_path,
        'until = { core_above = "165 degF" }\n'
        'stir = { speed = "20 rpm", on = "30 s", off = "3 s", reversing = true }\n'
        '[[phase.add]]\nfood = "carrot"\nmass = "5 kg"\ntemperature = "4 degC"\n'
        'piece = "15 mm"\nshape = "sphere"\nspread = "20 %"\n',
    )
    (rule,) = phase.ends
    assert (rule.kind, rule.signal) == (_core.EndKind.above, _core.Regulated.core)
    assert rule.value == pytest.approx(347.0389, abs=1e-4)  # 165 degF
    assert phase.agitation.reversing
    assert phase.additions[0].size_spread == pytest.approx(0.2)


def test_all_problems_are_listed_with_their_keys(tmp_path: Path) -> None:
    told = refusal(
        tmp_path,
        HEAD + 'regulate = "flor"\nset_point = "140"\nhold = 60\nstir = 25\njacket = "low"\n'
        '[[phase.add]]\nfood = "water"\nmass = "42 kgs"\ntemprature = "16 degC"\n'
        "temperature = '16 degC'\n",
    )
    lines = [line.strip() for line in told.splitlines()]
    assert lines == [
        "7 problems",
        'phase[1].regulate: "flor" is not allowed (did you mean "floor"?); '
        'allowed: "floor", "probe", "difference", "core"',
        'phase[1].set_point: "140" is not a temperature: the unit is missing, '
        'for example "165 degF"',
        'phase[1].hold: "60" is not a time: the unit is missing, for example "25 min"',
        'phase[1].stir.speed: "25" is not a rotation speed: the unit is missing, '
        'for example "25 rpm"',
        'phase[1].jacket: "low" is not allowed; write "off", "on", "cool", '
        '{ below = ... } or { use = "cool", above = ... }',
        'phase[1].add[1].mass: "42 kgs" is not a mass: unit "kgs" unknown; '
        "allowed: kg, g, lb, oz, t",
        'phase[1].add[1].temprature: unknown key (did you mean "temperature"?); '
        "allowed: food, name, mass, temperature, piece, shape, spread, delay, "
        "pour_time",
    ]


@pytest.mark.parametrize(
    ("text", "message"),
    [
        ('regulate = "probe"\nduration = "1 h"', "phase[1]: regulate and set_point go together"),
        ('until = { probe_over = "1 K" }', 'probe_over: unknown key (did you mean "probe_above"?)'),
        ('cover = "foil"', 'phase[1].cover: "foil" is not allowed; allowed: "open", "lid", "oil_f'),
        ("add = 3", "phase[1].add: must be an array, got 3"),
        ('prompt = "no end"', 'phase "only": the phase never ends'),
    ],
)
def test_refusals(tmp_path: Path, text: str, message: str) -> None:
    assert message in refusal(tmp_path, HEAD + text + "\n")


ADD = '[[phase.add]]\nmass = "1 kg"\ntemperature = "5 degC"\n'


def test_a_piece_without_a_shape_is_refused(tmp_path: Path) -> None:
    told = refusal(tmp_path, HEAD + 'duration = "1 h"\n' + ADD + 'food = "onion"\npiece = "8 mm"\n')
    assert told == "phase[1].add[1]: piece and shape go together; liquids have neither"


def test_every_unknown_food_is_listed(tmp_path: Path) -> None:
    adds = ADD + 'food = "watr"\n' + ADD + 'food = "onin"\n'
    told = refusal(tmp_path, HEAD + 'duration = "1 h"\n' + adds)
    assert "2 problems" in told
    assert 'phase[1].add[1].food: food "watr" is not known; nearest: water' in told
    assert 'phase[1].add[2].food: food "onin" is not known; nearest: onion' in told


OWN = '[foods."house stock"]\nalso = ["stock"]\nwater = "96 %"\nfat = "3 %"\nash = "1 %"\n'


def test_a_recipe_may_describe_its_own_foods(tmp_path: Path) -> None:
    text = HEAD + 'duration = "1 h"\n' + ADD + 'food = "stock"\n' + OWN
    (addition,) = read_recipe(written(tmp_path, text)).phases[0].additions
    assert (addition.name, addition.food.name) == ("stock", "house stock")
    assert addition.food.composition.fat == pytest.approx(0.03, rel=1e-12)


def test_an_own_food_that_does_not_add_up_is_refused(tmp_path: Path) -> None:
    told = refusal(tmp_path, HEAD + 'duration = "1 h"\n' + OWN.replace("96 %", "50 %"))
    assert told.startswith("foods.house stock: ")
    assert "between 0.98 and 1.02" in told


@pytest.mark.parametrize("system", ["metric", "us"])
@pytest.mark.parametrize("name", ["stew.toml", "water_boil.toml", "water_steps.toml"])
def test_a_written_recipe_reads_back_equal(tmp_path: Path, name: str, system: str) -> None:
    recipe = read_recipe(demo_path(name))
    write_recipe(recipe, tmp_path / name, system)  # type: ignore[arg-type]
    assert read_recipe(tmp_path / name) == recipe


def test_everything_a_phase_can_hold_is_written(tmp_path: Path) -> None:
    own = food("milk").replace(name='farm "milk"', juice_fraction=0.0, source="a\tb \\ c")
    ends = [rule("held", 1 / 3), rule("elapsed", 7.0), rule("above", 350.0, "floor")]
    ends += [rule("below", 4.0, "difference"), rule("mass_lost", 0.7)]
    phase = _core.Phase(
        name="line\nbreak",
        regulated=_core.Regulated.difference,
        set_point=33.3,
        ends=ends,
        time_limit=777.0,
        additions=[_core.Addition(name="m", food=own, mass=20 * POUND, delay=0.1, pour_time=2.2)],
        agitation=_core.Agitation(speed=0.123, on_time=11.0, off_time=13.0, reversing=True),
        heat_limit=0.7,
        floor_limit=444.4,
        difference_limit=55.5,
        jacket=_core.JacketUse.heat,
        jacket_limit=366.6,
        jacket_share=0.4,
        cover=_core.Cover.oil_film,
        prompt="stir\N{HORIZONTAL ELLIPSIS}",
    )
    thick = _core.Consistency(
        consistency=0.31,
        flow_index=0.55,
        reference_temperature=321.4,
        activation_energy=12e3,
        reference_solids=0.21,
        solids_exponent=4.5,
        thickens_from=331.7,
        thickens_until=352.1,
        thickening_factor=30.0,
        thickening_rate=1 / 70,
        source='by "hand"',
    )
    dice = own.replace(name="dice", sugar=0.01, salt=0.002, consistency=thick)
    spread = _core.Addition(
        name="d", food=dice, mass=2.0, shape=_core.Shape.slab, piece_size=0.01, size_spread=0.125
    )
    cooled = _core.Phase(
        name="cool",
        ends=[rule("below", 280.0, "core"), rule("share_lost", 0.12)],
        jacket=_core.JacketUse.cool,
        jacket_cool_limit=276.5,
        additions=[spread],
    )
    recipe = _core.Recipe(name="all", phases=[phase, cooled])
    for system in ("metric", "us"):
        write_recipe(recipe, tmp_path / "all.toml", system)  # type: ignore[arg-type]
        assert read_recipe(tmp_path / "all.toml") == recipe


def test_a_us_file_is_written_in_us_units(tmp_path: Path, stew: _core.Recipe) -> None:
    more = with_more(stew, "carrot", "20 lb", "36 degF", phase=3, piece="0.5 in", shape="sphere")
    write_recipe(more, tmp_path / "us.toml", "us")
    text = (tmp_path / "us.toml").read_text(encoding="utf-8")
    for line in ('mass = "20 lb"', 'temperature = "36 degF"', 'piece = "0.5 in"'):
        assert line in text


def test_two_end_rules_of_one_kind_cannot_be_written(tmp_path: Path) -> None:
    phase = _core.Phase(name="p", ends=[rule("elapsed", 5.0), rule("elapsed", 9.0)])
    with pytest.raises(InvalidArgument, match='Phase "p": two end rules "duration" cannot be wr'):
        write_recipe(_core.Recipe(name="r", phases=[phase]), tmp_path / "r.toml")


def test_two_foods_of_one_name_cannot_be_written(tmp_path: Path, stew: _core.Recipe) -> None:
    other = food("carrot").replace(name="water")
    first = stew.phases[2]
    wrong = first.additions[1].replace(food=other)
    changed = stew.replace(phases=[first.replace(additions=[first.additions[0], wrong])])
    with pytest.raises(InvalidArgument, match='two different foods are called "water"'):
        write_recipe(changed, tmp_path / "r.toml")


def test_the_schema_offers_the_words_of_a_recipe() -> None:
    phase = recipe_schema()["$defs"]["_Phase"]["properties"]
    assert {"regulate", "set_point", "hold", "until", "add", "jacket", "cover"} <= set(phase)
