"""Reference-grade water and moist air from Python: values of the releases, and what is refused."""

import pytest

import kettlecast as kc

states, air = kc.properties.water_states, kc.properties.air


# Sources: IAPWS R7-97(2012) Table 5, R12-08 Table 4, R15-11 Table 4, R1-76(2014) Table 1,
# SR6-08(2011) Table 8, SR1-86(1992) Table 1
@pytest.mark.parametrize(
    ("name", "arguments", "expected", "tolerance"),
    [
        ("compressed_volume", (300.0, 3e6), 0.100215168e-2, 1e-8),
        ("compressed_density", (300.0, 3e6), 1.0 / 0.100215168e-2, 1e-8),
        ("compressed_enthalpy", (500.0, 3e6), 0.975542239e6, 1e-8),
        ("compressed_specific_heat", (300.0, 80e6), 0.401008987e4, 1e-8),
        ("viscosity", (998.0, 298.15), 889.735100e-6, 4e-8),
        ("conductivity", (998.0, 298.15), 607.712868e-3, 1e-8),
        ("surface_tension", (373.15,), 58.91e-3, 1e-4),
        ("ambient_density", (298.15,), 997.047013, 1e-9),
        ("ambient_specific_heat", (298.15,), 4181.44618, 1e-8),
        ("ambient_viscosity", (298.15,), 889.996774e-6, 1e-8),
        ("ambient_conductivity", (298.15,), 0.606502308, 1e-8),
        ("saturation_pressure", (373.1243,), 101325.0, 1e-6),
        ("saturation_pressure_slope", (373.1243,), 3616.0, 2e-4),
        ("saturated_liquid_density", (373.1243,), 958.365, 1e-6),
        ("saturated_vapour_density", (373.1243,), 0.597586, 1e-6),
        ("saturated_liquid_enthalpy", (373.1243,), 419.05e3, 2e-5),
        ("saturated_vapour_enthalpy", (373.1243,), 2675.7e3, 2e-5),
    ],
)
def test_values_are_those_of_the_releases(
    name: str, arguments: tuple[float, ...], expected: float, tolerance: float
) -> None:
    assert getattr(states, name)(*arguments) == pytest.approx(expected, rel=tolerance)


@pytest.mark.parametrize(
    ("call", "told"),
    [
        (lambda: states.compressed_density(373.15, 50e3), "compressed_density.*pressure"),
        (lambda: states.compressed_density(700.0, 50e6), "compressed_density.*temperature"),
        (lambda: states.viscosity(-1.0, 300.0), "viscosity.*density"),
        (lambda: states.ambient_density(400.0), "ambient_density.*383.15 K"),
        (lambda: states.saturation_pressure(float("nan")), "saturation_pressure"),
        (lambda: air.moist_density(300.0, 101325.0, 1.1), "moist_density.*vapour_fraction"),
        (lambda: air.density(300.0, 5e6), "air.density.*pressure"),
        (lambda: air.viscosity(100.0), "air.viscosity.*temperature"),
    ],
)
def test_states_outside_the_formulation_are_refused(call, told: str) -> None:
    with pytest.raises(kc.InvalidArgument, match=told):
        call()


# Source: US Standard Atmosphere 1976, sea level: 1.225 kg/m3, 1.7894e-5 Pa s, 0.025326 W/(m K)
def test_air_at_sea_level_is_the_standard_atmosphere() -> None:
    assert air.density(288.15, 101325.0) == pytest.approx(1.225, rel=1e-5)
    assert air.viscosity(288.15) == pytest.approx(1.7894e-5, rel=1e-4)
    assert air.conductivity(288.15) == pytest.approx(0.025326, rel=1e-4)
    assert air.moist_density(288.15, 101325.0, 0.0) == pytest.approx(1.225, rel=1e-5)


# Source: tables of the US Standard Atmosphere 1976 at 4000 m: 262.166 K, 0.819347 kg/m3
def test_atmosphere_at_4000_m() -> None:
    properties = kc.properties
    assert properties.temperature_at_altitude(4000.0) == pytest.approx(262.166, abs=1e-3)
    assert properties.density_at_altitude(4000.0) == pytest.approx(0.819347, rel=5e-5)
