"""Bundled consistencies against the tables they come from, and refusals."""

import math
from pathlib import Path

import pytest

import kettlecast as kc
from kettlecast import _core
from kettlecast.consistencies import (
    NamedConsistency,
    bundled_consistencies,
    consistencies_from,
    consistency,
)
from kettlecast.errors import FileFormatError, InvalidArgument, UnknownName


def viscosity(name: str, celsius: float, shear_rate: float, thickened: float = 0.0) -> float:
    """Of a bundled liquid [Pa s] at the dry share of its row."""
    liquid = consistency(name)
    return kc.properties.consistency.apparent_viscosity(
        liquid, celsius + 273.15, shear_rate, thickened, liquid.reference_solids
    )


# All from memory: Harper & El Sahrigi, J. Food Sci. 30 (1965) 470; Steffe, Rheological Methods in
# Food Process Engineering (1996), appendix; Saravacos, J. Food Sci. 33 (1968) 122. The rows at
# other temperatures than those of the file tell whether the fall with temperature is right.
@pytest.mark.parametrize(
    ("name", "celsius", "consistency_index", "flow_index", "within"),
    [
        ("tomato sauce", 32.2, 2.10, 0.43, 0.001),
        ("tomato paste", 32.2, 18.7, 0.40, 0.001),
        ("tomato paste", 65.5, 11.7, 0.40, 0.01),
        ("ketchup", 95.0, 7.45, 0.27, 0.01),
        ("ketchup", 65.0, 11.3, 0.27, 0.10),
        ("apple sauce", 82.2, 9.0, 0.34, 0.01),
        ("cream 40 % fat", 80.0, 0.00395, 1.0, 0.01),
        ("cream 40 % fat", 60.0, 0.00510, 1.0, 0.02),
    ],
)
def test_a_row_agrees_with_its_table(
    name: str, celsius: float, consistency_index: float, flow_index: float, within: float
) -> None:
    for shear_rate in (10.0, 100.0):
        expected = consistency_index * shear_rate ** (flow_index - 1.0)
        assert viscosity(name, celsius, shear_rate) == pytest.approx(expected, rel=within)


# Gelatinisation of starch granules [degC]: Leach, in Starch: Chemistry and Technology (1965), from
# memory. Egg yolk: begins at 65 degC, ovalbumin 84.5 degC, as in the source line of the row.
@pytest.mark.parametrize(
    ("name", "begins", "ends"),
    [
        ("bechamel", 58.0, 64.0),
        ("cream soup", 58.0, 64.0),
        ("gravy", 62.0, 72.0),
        ("porridge", 53.0, 59.0),
        ("custard", 65.0, 84.5),
    ],
)
def test_nothing_thickens_before_the_starch_or_the_egg(
    name: str, begins: float, ends: float
) -> None:
    liquid = consistency(name)
    speed = kc.properties.consistency.thickening_speed
    assert speed(liquid, begins + 273.15 - 0.01, 0.0) == 0.0
    assert speed(liquid, begins + 273.15 + 1.0, 0.0) > 0.0
    assert liquid.thickens_until >= ends + 273.15


def test_every_row_can_be_used_and_names_its_source() -> None:
    rows = bundled_consistencies()
    assert len({row.source for row in rows.values()}) >= 8
    for row in rows.values():
        _core.check(row)
        assert "from memory" in row.source or "common practice, no source" in row.source


def test_a_stock_is_as_thin_as_water() -> None:
    water = kc.properties.water.viscosity(333.15)
    assert viscosity("stock", 60.0, 10.0) == pytest.approx(water, rel=1e-12)


def test_liquids_poured_together_mix_by_their_logarithms() -> None:
    mixed = kc.properties.consistency.mixed_viscosity
    assert mixed([0.001, 10.0], [3.0, 3.0]) == pytest.approx(0.1, rel=1e-12)
    assert mixed([0.001, 10.0], [1.0, 2.0]) == pytest.approx(10 ** (-1 / 3), rel=1e-12)
    with pytest.raises(InvalidArgument, match="equally many"):
        mixed([0.1], [1.0, 2.0])
    with pytest.raises(InvalidArgument, match="sum of the masses"):
        mixed([0.1], [0.0])
    with pytest.raises(InvalidArgument, match="viscosities"):
        mixed([0.0], [1.0])


def test_what_no_liquid_can_be_is_refused() -> None:
    with pytest.raises(InvalidArgument, match="temperature must be between"):
        viscosity("stock", 300.0, 1.0)
    with pytest.raises(InvalidArgument, match="thickened must be between"):
        viscosity("gravy", 60.0, 1.0, thickened=1.5)
    with pytest.raises(InvalidArgument, match="flow_index"):
        _core.check(kc.Consistency(consistency=1.0, flow_index=math.nan))


def test_names_do_not_depend_on_case_or_underscore() -> None:
    assert consistency("White_Sauce") == consistency("bechamel")
    with pytest.raises(UnknownName, match=r'"gravey" is not known \(did you mean "gravy"'):
        consistency("gravey")


def test_a_file_with_problems_lists_them() -> None:
    tables = {
        "thin": NamedConsistency(consistency=-1.0),
        "other": NamedConsistency(also=("Thin",)),
    }
    with pytest.raises(FileFormatError) as caught:
        consistencies_from(tables, Path("own.toml"))
    assert "consistencies.thin: Consistency: consistency" in str(caught.value)
    assert '"Thin" already names another row' in str(caught.value)
