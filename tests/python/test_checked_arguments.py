"""Every correlation tells which of its arguments makes no sense.

What is checked here is the promise itself: a number that is not finite never gets through.
"""

import inspect
import math
import re
from collections.abc import Callable, Iterator
from types import ModuleType
from typing import Any

import numpy as np
import pytest

import kettlecast as kc
from kettlecast import _core

FLOAT = r"(\w+): (?:typing\.SupportsFloat \| typing\.SupportsIndex|numpy\.typing\.ArrayLike)"


def numeric(
    module: ModuleType, path: str = ""
) -> Iterator[tuple[str, Callable[..., Any], list[str]]]:
    """Functions whose arguments are all numbers, with the names of these."""
    for name, member in vars(module).items():
        if isinstance(member, ModuleType):
            yield from numeric(member, name)
        elif inspect.isroutine(member):
            taken = (member.__doc__ or "").split(" -> ")[0]
            floats = re.findall(FLOAT, taken)
            if floats and len(floats) == len(re.findall(r"\w+: ", taken)):
                yield f"{path}.{name}", member, floats


FUNCTIONS = [*numeric(_core.transfer, "transfer"), *numeric(_core.properties, "properties")]


def test_most_functions_take_numbers_only() -> None:
    assert len(FUNCTIONS) > 150


@pytest.mark.parametrize(("where", "function", "names"), FUNCTIONS, ids=[f[0] for f in FUNCTIONS])
def test_what_is_no_number_is_told_by_function_and_argument(
    where: str, function: Callable[..., Any], names: list[str]
) -> None:
    told = rf"{where}: {names[0]} must be between .*, got nan"
    with pytest.raises(kc.InvalidArgument, match=told):
        function(**dict.fromkeys(names, math.nan))


def test_one_value_of_an_array_is_enough() -> None:
    with pytest.raises(kc.InvalidArgument, match=r"water\.density: temperature .* K, got -3 K"):
        kc.properties.water.density(np.array([293.15, -3.0]))


def test_a_food_that_cannot_exist_has_no_properties() -> None:
    wrong = kc.Food(name="too much", composition=kc.Composition(water=0.9, fat=0.9))
    with pytest.raises(kc.InvalidArgument):
        kc.properties.foods.density(wrong, 293.15)
