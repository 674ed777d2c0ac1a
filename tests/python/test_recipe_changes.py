"""More of an ingredient, or a new one, in a recipe."""

from pathlib import Path

import pytest

from kettlecast import _core
from kettlecast.demo import demo_path
from kettlecast.errors import InvalidArgument, UnknownName
from kettlecast.foods import food
from kettlecast.recipe_changes import with_more
from kettlecast.recipe_file import read_recipe

POUND = 0.45359237  # [kg], exact


@pytest.fixture(scope="module")
def stew() -> _core.Recipe:
    return read_recipe(demo_path("stew.toml"))


def pour(addition: _core.Addition) -> tuple[str, float, float, float]:
    return addition.name, addition.mass, addition.delay, addition.pour_time


def test_more_of_the_same_joins_its_addition(stew: _core.Recipe) -> None:
    more = with_more(stew, "Water", "21 kg")
    assert pour(more.phases[2].additions[0]) == ("water", 63.0, 10.0, pytest.approx(90.0))
    assert more.phases[2].additions[1:] == stew.phases[2].additions[1:]
    assert stew.phases[2].additions[0].mass == 42.0


def test_colder_product_is_poured_right_after(stew: _core.Recipe) -> None:
    more = with_more(stew, "water", 21.0, "36 degF")
    first, second, lentil = more.phases[2].additions
    assert pour(first) == ("water", 42.0, 10.0, 60.0)
    assert pour(second) == ("water", 21.0, pytest.approx(70.0), pytest.approx(30.0))
    assert second.temperature == pytest.approx(273.15 + 4 / 1.8, abs=1e-9)
    assert lentil.name == "lentil"


def test_more_of_a_further_addition_joins_that_one(stew: _core.Recipe) -> None:
    cold = with_more(stew, "water", "21 kg", "2 degC")
    more = with_more(cold, "water", "7 kg", "2 degC")
    assert [entry.mass for entry in more.phases[2].additions] == [42.0, 28.0, 11.0]
    warm = with_more(cold, "water", "8 kg", "16 degC")
    assert [entry.mass for entry in warm.phases[2].additions] == [50.0, 21.0, 11.0]


def test_a_new_ingredient_goes_where_it_is_told(stew: _core.Recipe) -> None:
    options = {"piece": "12 mm", "shape": "sphere", "delay": "75 s", "pour_time": "30 s"}
    more = with_more(stew, "carrot", "20 lb", "2 degC", phase="load and heat", **options)
    carrot = more.phases[2].additions[-1]
    assert pour(carrot) == ("carrot", pytest.approx(20 * POUND, rel=1e-9), 75.0, 30.0)
    assert (carrot.shape, carrot.piece_size) == (_core.Shape.sphere, pytest.approx(0.012))
    assert carrot.food == food("carrot")


def test_a_new_ingredient_comes_after_the_last_pour(stew: _core.Recipe) -> None:
    more = with_more(stew, "milk", 5.0, 278.15, phase=3)
    assert pour(more.phases[2].additions[-1]) == ("milk", 5.0, pytest.approx(110.0), 0.0)


def test_more_of_a_food_only_the_recipe_knows(tmp_path: Path) -> None:
    path = tmp_path / "recipe.toml"
    path.write_text(
        '[recipe]\nname = "test"\n[[phase]]\nname = "one"\nduration = "1 h"\n'
        '[[phase.add]]\nmass = "1 kg"\ntemperature = "5 degC"\nfood = "stock"\n'
        '[[phase]]\nname = "two"\nduration = "1 h"\n'
        '[foods."house stock"]\nalso = ["stock"]\nwater = "97 %"\nfat = "3 %"\n',
        encoding="utf-8",
    )
    more = with_more(read_recipe(path), "stock", "2 kg", "5 degC", phase="two")
    assert more.phases[1].additions[0].food.name == "house stock"


@pytest.mark.parametrize(
    ("call", "error", "message"),
    [
        (("carrot", "1 kg"), InvalidArgument, '"carrot" is in no phase of recipe "lentil stew"; '),
        (("carrot", "1 kg", "5 C", 9), InvalidArgument, "has phases 1 to 5, got phase 9; there a"),
        (("carrot", "1 kg", "5 C", "simer"), UnknownName, 'did you mean "simmer"?'),
        (("carrot", "1 kg", None, 3), InvalidArgument, "its temperature is needed, for example"),
        (("carot", "1 kg", "5 C", 3), UnknownName, 'food "carot" is not known; nearest: carrot'),
        (("onion", "-2 kg"), InvalidArgument, 'mass of "onion" must be above 0 kg, got -2 kg'),
        (("onion", "2 kgs"), InvalidArgument, '"2 kgs" is not a mass: unit "kgs" unknown'),
    ],
)
def test_more_refused(
    stew: _core.Recipe, call: tuple[object, ...], error: type[Exception], message: str
) -> None:
    name, mass, temperature, phase = (*call, None, None)[:4]
    with pytest.raises(error) as caught:
        with_more(stew, name, mass, temperature, phase=phase)  # type: ignore[arg-type]
    assert message in str(caught.value)


def test_an_ingredient_of_two_phases_needs_the_phase(stew: _core.Recipe) -> None:
    twice = with_more(stew, "onion", "1 kg", "5 degC", phase="simmer", piece="8 mm", shape="slab")
    with pytest.raises(InvalidArgument, match='"onion" is in several phases of recipe'):
        with_more(twice, "onion", "1 kg")
    assert with_more(twice, "onion", "1 kg", phase=2).phases[1].additions[0].mass == 9.0


def test_an_unknown_shape_lists_the_known(stew: _core.Recipe) -> None:
    with pytest.raises(UnknownName, match=r'shape "slap" is not known \(did you mean "slab"\?'):
        with_more(stew, "onion", "1 kg", shape="slap")
