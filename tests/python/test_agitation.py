"""Agitators, jackets and glycol as seen from Python: what is refused, and how parts fit."""

import pytest

import kettlecast as kc

agitation, jacket, glycol = kc.transfer.agitation, kc.transfer.jacket, kc.properties.glycol


def test_constants_that_no_source_prints_are_refused_with_what_there_is() -> None:
    with pytest.raises(kc.InvalidArgument, match=r"anchor.*hydrofoil"):
        agitation.floor_nusselt(kc.Impeller.anchor, 1e4, 7.0)


def test_numbers_without_meaning_are_refused() -> None:
    with pytest.raises(kc.InvalidArgument, match="viscosity"):
        agitation.reynolds(1000.0, 1.0, 0.5, 0.0)
    with pytest.raises(kc.InvalidArgument, match="efficiency"):
        agitation.scraped_coefficient(0.6, 1000.0, 4180.0, 1.0, efficiency=1.5)
    with pytest.raises(kc.InvalidArgument, match="vessel_diameter"):
        agitation.ribbon_laminar_constant(1.0, 1.0, 1.0, 1.0, 0.1, 2.0)
    with pytest.raises(kc.InvalidArgument, match="on_share"):
        agitation.mean_over_cycle(100.0, 0.0, 1.2)
    with pytest.raises(kc.InvalidArgument, match="inside"):
        jacket.overall_coefficient(float("nan"), 1000.0)


def test_frozen_glycol_is_refused() -> None:
    assert glycol.density(0.5, 258.15) > 1000.0
    with pytest.raises(kc.OutsideValidity, match="freezing point"):
        glycol.density(0.2, 258.15)
    with pytest.raises(kc.InvalidArgument, match="share"):
        glycol.viscosity(0.7, 300.0)


def test_stirring_heat_is_the_power_of_its_power_number() -> None:
    density, viscosity, speed, diameter = 1050.0, 2.0, 0.5, 0.6
    reynolds = agitation.reynolds(density, speed, diameter, viscosity)
    for impeller in kc.Impeller:
        number = agitation.power_number(impeller, reynolds)
        heat = agitation.stirring_heat(impeller, density, viscosity, speed, diameter)
        assert heat == pytest.approx(agitation.power(number, density, speed, diameter), rel=1e-12)


def test_axial_agitators_heat_the_floor_better_than_the_wall() -> None:
    """The order of the lists of Penney & Atiemo-Obeng (2004), section 14.4."""
    for impeller, at_floor in {
        kc.Impeller.disc_turbine: False,
        kc.Impeller.flat_turbine: False,
        kc.Impeller.pitched_turbine: True,
        kc.Impeller.hydrofoil: True,
    }.items():
        floor = agitation.floor_nusselt(impeller, 1e5, 7.0)
        assert (floor > agitation.wall_nusselt(impeller, 1e5, 7.0)) == at_floor
