"""Conduction, freezing and size classes as Python sees them: arguments checked, results agreeing.

The numbers themselves are tested in tests/transfer and validation/section_g.py.
"""

import math
import sys
from pathlib import Path

import pytest

import kettlecast as kc

VALIDATION = Path(__file__).resolve().parents[2] / "validation"
conduction, freezing, pieces = kc.transfer.conduction, kc.transfer.freezing, kc.transfer.pieces
SOLIDS = (kc.Shape.slab, kc.Shape.cylinder, kc.Shape.sphere)


@pytest.mark.parametrize("shape", SOLIDS)
def test_time_to_reach_a_change_leads_back_to_it(shape: kc.Shape) -> None:
    fourier = conduction.fourier_to_reach(shape, 4.0, 0.3, 0.0)
    assert conduction.remaining_change(shape, 4.0, fourier, 0.0) == pytest.approx(0.3, rel=1e-10)
    length, diffusivity = 0.02, 1.4e-7
    time = conduction.fourier_time(fourier, diffusivity, length)
    assert conduction.fourier_number(diffusivity, time, length) == pytest.approx(fourier)


def test_even_bodies_follow_the_exponential() -> None:
    surface = conduction.surface_per_volume(kc.Shape.sphere, 0.01)
    assert surface == pytest.approx(600.0)
    assert conduction.lumped_change(10.0, surface, 4e6, 500.0) == pytest.approx(math.exp(-0.75))


@pytest.mark.parametrize(
    ("call", "told"),
    [
        (lambda: conduction.eigenvalue(kc.Shape.none, 1.0), "shape none"),
        (lambda: conduction.eigenvalue(kc.Shape.slab, -1.0), "biot"),
        (lambda: conduction.eigenvalue(kc.Shape.slab, 1.0, 0), "number"),
        (lambda: conduction.remaining_change(kc.Shape.slab, 1.0, 0.2, 1.5), "position"),
        (lambda: conduction.remaining_change(kc.Shape.slab, 1.0, math.nan, 0.5), "fourier"),
        (lambda: conduction.fourier_to_reach(kc.Shape.slab, 1.0, 1.0, 0.5), "change"),
        (lambda: conduction.diffusion_depth(0.1, 1e-7, 0.0), "time"),
        (lambda: conduction.fourier_time(0.2, 0.0, 0.01), "diffusivity"),
        (lambda: freezing.plank_time(kc.Shape.slab, 0.0, 9.0, 1.5, 2e8, 20.0), "size"),
        (lambda: freezing.plank_time(kc.Shape.slab, 0.05, 9.0, 1.5, 2e8, 0.0), "difference"),
        (lambda: freezing.cleland_earle_factors(kc.Shape.none, 0.1, 0.2, 2.0), "shape none"),
        (lambda: freezing.thawing_factors(kc.Shape.slab, -0.1, 0.2, 2.0), "plank"),
        (lambda: freezing.film_through_package(20.0, -0.001, 0.2), "thickness"),
        (lambda: pieces.lognormal_size_classes(0.01, 2.0), "variation"),
    ],
)
def test_an_argument_out_of_range_is_named(call: object, told: str) -> None:
    with pytest.raises(kc.InvalidArgument, match=told):
        call()  # type: ignore[operator]


def test_pham_needs_a_piece_warmer_than_where_it_ends() -> None:
    given = {"unfrozen": 3.6e6, "frozen": 1.9e6, "latent": 2.4e8, "initial": 288.15}
    freeze = lambda **more: freezing.pham_time(  # noqa: E731
        kc.Shape.slab, 0.05, 30.0, 1.5, **given, **more
    )
    assert freeze(final_centre=255.15, surroundings=243.15) > 0.0
    with pytest.raises(kc.InvalidArgument, match="final_centre"):
        freeze(final_centre=240.0, surroundings=243.15)


def test_times_by_factors_are_planks_form() -> None:
    p, r = freezing.cleland_earle_factors(kc.Shape.slab, 0.2, 0.25, 60.0 * 0.05 / 1.5)
    expected = 2e8 / 25.0 * (p * 0.05 / 60.0 + r * 0.05**2 / 1.5)
    time = freezing.cleland_earle_time(kc.Shape.slab, 0.05, 60.0, 1.5, 2e8, 25.0, 0.2, 0.25)
    assert time == pytest.approx(expected, rel=1e-12)


def test_size_classes_are_pairs_of_size_and_mass_share() -> None:
    for classes in (
        pieces.lognormal_size_classes(0.02, 0.3),
        pieces.normal_size_classes(0.02, 0.3),
    ):
        assert len(classes) == 3
        assert sum(share for _, share in classes) == pytest.approx(1.0)
        assert sum(size * share for size, share in classes) == pytest.approx(0.02)
    assert pieces.lognormal_size_classes(0.02, 0.0) == [(0.02, 1.0)]


def test_conduction_agrees_with_scipy(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    pytest.importorskip("scipy")
    monkeypatch.setattr(sys, "path", [str(VALIDATION), *sys.path])
    import cross_conduction  # type: ignore[import-not-found]

    outcome = cross_conduction.outcome(tmp_path)
    assert [case.row() for case in outcome.broken] == []
    assert len(outcome.cases) >= 40
    monkeypatch.setattr(cross_conduction, "integrate", None)
    assert "SciPy" in cross_conduction.outcome(tmp_path).skipped
