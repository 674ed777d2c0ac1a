"""The cheap part of validation/, and that its tables tell a broken limit."""

import importlib.util
import re
import sys
from pathlib import Path
from types import ModuleType

import pytest

VALIDATION = Path(__file__).resolve().parents[2] / "validation"
SHARED = Path(__file__).resolve().parents[3] / "shared"

needs_cases = pytest.mark.skipif(
    not (SHARED / "checks" / "cases").exists(), reason="../shared/checks/cases is not there"
)
needs_data = pytest.mark.skipif(
    not (SHARED / "data").exists(), reason="../shared/data is not there"
)


def module(name: str) -> ModuleType:
    """A module of validation/, which is not a package."""
    if str(VALIDATION) not in sys.path:
        sys.path.insert(0, str(VALIDATION))
    if name in sys.modules and Path(sys.modules[name].__file__ or "").parent == VALIDATION:
        return sys.modules[name]
    spec = importlib.util.spec_from_file_location(name, VALIDATION / f"{name}.py")
    assert spec is not None and spec.loader is not None
    made = importlib.util.module_from_spec(spec)
    sys.modules[name] = made
    spec.loader.exec_module(made)
    return made


def told(outcome: object) -> list[str]:
    return [
        f"{one.name}: expected {one.expected}, got {one.got}, limit {one.limit}"
        for one in outcome.broken
    ]  # type: ignore[attr-defined]


@needs_cases
def test_published_values_are_within_their_limits(tmp_path: Path) -> None:
    outcome = module("published").outcome(tmp_path)
    assert told(outcome) == []
    # Counted by hand in the case files: rows that vanish would make the check empty.
    assert len(outcome.cases) >= 200


def test_the_model_reduces_to_closed_forms(tmp_path: Path) -> None:
    outcome = module("closed_forms").outcome(tmp_path)
    assert told(outcome) == []
    # Heating with and without loss, cooling, mixing, boil-off, floor and liquid.
    assert len(outcome.cases) == 9


def test_jackets_reduce_to_closed_forms(tmp_path: Path) -> None:
    outcome = module("closed_forms_jackets").outcome(tmp_path)
    assert told(outcome) == []
    # Steam through a thin and a thick wall, cold water in a stirred jacket, stirring heat, syrup.
    assert sum(one.holds is True for one in outcome.cases) == 5


def test_water_boils_as_high_as_standard_air_and_steam_tables_say(tmp_path: Path) -> None:
    outcome = module("altitude").outcome(tmp_path)
    assert told(outcome) == []
    assert len(outcome.cases) == 5


def test_an_unfitted_kettle_lies_in_the_ranges_of_the_trade(tmp_path: Path) -> None:
    practice = module("practice")
    outcome = practice.outcome(tmp_path)
    # Known gaps are named with what is missing; one that has closed is to be struck out there.
    assert told(outcome) == []
    assert {one.name for one in outcome.cases if one.known} == set(practice.GAPS)
    # Counted by hand: 11 about the floor and defaults, 5 about steam and power, 8 about recipes.
    assert sum(one.holds is True for one in outcome.cases) == 24


@needs_cases
def test_each_range_of_the_trade_names_the_case_that_judges_it() -> None:
    section, practice = module("section_l"), module("practice")
    rows = [row for row in module("case_file").rows("L") if row["status"] == "PRACTICE"]
    assert rows
    named = [case for row in rows for case in re.findall('"(.+?)"', section.reason(row) or "")]
    assert len(named) >= 10
    cases = [one.name for one in practice.outcome(Path()).cases]
    assert [name for name in named if not any(one.startswith(name) for one in cases)] == []


def test_correlations_agree_with_general_libraries(tmp_path: Path) -> None:
    outcome = module("cross_heat_transfer").outcome(tmp_path)
    if outcome.skipped:
        pytest.skip(outcome.skipped)
    assert told(outcome) == []
    assert sum(one.holds is True for one in outcome.cases) == 20


def test_water_and_air_agree_with_other_libraries(tmp_path: Path) -> None:
    pytest.importorskip("iapws")
    outcome = module("cross_properties").outcome(tmp_path)
    assert told(outcome) == []
    # 7 fits, saturation, 5 of compressed water, 7 of the other releases; CoolProp adds more.
    assert len(outcome.cases) >= 20


def test_absent_libraries_are_said_and_not_an_error(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    cross = module("cross_properties")

    def not_there(name: str) -> str:
        raise cross.importlib.metadata.PackageNotFoundError(name)

    monkeypatch.setattr(cross.importlib.metadata, "version", not_there)
    outcome = cross.outcome(tmp_path)
    assert outcome.skipped == "skipped: neither iapws nor CoolProp is installed"
    assert outcome.notes == (
        "Left out: iapws is not installed.",
        "Left out: CoolProp is not installed.",
    )


def test_demo_kitchen_is_forecast_from_three_runs(tmp_path: Path) -> None:
    outcome = module("kitchen_a").outcome(tmp_path)
    assert told(outcome) == []
    # Two stews, pours as planned and as they happened, three heating phases each.
    assert sum("start to set point" in one.name for one in outcome.cases) == 12


@needs_data
def test_pot_is_predicted_at_another_volume(tmp_path: Path) -> None:
    assert told(module("pot").outcome(tmp_path)) == []


@needs_data
def test_bath_is_predicted_at_another_volume(tmp_path: Path) -> None:
    assert told(module("bath").outcome(tmp_path)) == []


@needs_data
def test_mug_needs_evaporation_to_follow_both_covers(tmp_path: Path) -> None:
    outcome = module("mug").outcome(tmp_path, pairs=("first pair",))
    assert told(outcome) == []
    assert sum("forced" in one.name for one in outcome.cases) == 2


def test_missing_data_are_said_and_not_an_error(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    pot = module("pot")
    monkeypatch.setattr(pot, "FOLDER", tmp_path / "pot_1-3L")
    outcome = pot.outcome(tmp_path)
    assert outcome.skipped.startswith("skipped: pot_1-3L is not there")
    assert outcome.cases == () and outcome.broken == ()


@pytest.mark.parametrize(
    ("kind", "inside", "outside"),
    [
        ("relative", (100.0, 101.9), (100.0, 102.1)),
        ("absolute", (100.0, 98.1), (100.0, 97.9)),
    ],
)
def test_a_limit_breaks_beyond_it(
    kind: str, inside: tuple[float, float], outside: tuple[float, float]
) -> None:
    case = module("case")
    limit = 0.02 if kind == "relative" else 2.0
    make = getattr(case, kind)
    assert make("x", "made", inside, limit).verdict == "within"
    assert make("x", "made", outside, limit).verdict == "BROKEN"
    assert make("x", "made", outside, None).verdict == "shown"


def test_an_error_that_is_not_a_number_breaks_its_limit() -> None:
    case = module("case")
    assert case.at_most("x", "made", float("nan"), 1.0).verdict == "BROKEN"
    assert case.relative("x", "made", (1.0, float("nan")), 1.0).verdict == "BROKEN"
    assert case.at_least("x", "made", float("nan"), 1.0).verdict == "BROKEN"


def test_run_exits_with_1_only_on_broken_limits(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    case, run = module("case"), module("run")

    class Made:
        def __init__(self, limit: float) -> None:
            self.limit = limit

        def outcome(self, folder: Path) -> object:
            made = case.at_most("<x> | y", "made", 0.5, self.limit, "K")
            return case.Outcome("Made", (made,))

    for limit, code in ((1.0, 0), (0.1, 1)):
        monkeypatch.setattr(run, "SUBJECTS", {"made": Made(limit)})
        assert run.main(["made", "--out", str(tmp_path)]) == code
    assert "BROKEN" in capsys.readouterr().out
    assert "\\|" in (tmp_path / "validation.md").read_text(encoding="utf-8")
    page = (tmp_path / "validation.html").read_text(encoding="utf-8")
    assert "&lt;x&gt;" in page
    assert page.index("Broken limits") < page.index("<h2 id='subject0'>")
