"""Which run to log next: against difference quotients, known answers, and by logging it."""

import dataclasses
import json
import pickle
from pathlib import Path

import numpy as np
import pytest
from cli_runs import KETTLE as KETTLE_FILE
from cli_runs import plain, run
from test_fitting import FLOOR_NOISE, KETTLE, PROBE_NOISE, STILL, TRUTH, WHITE, made_run

import kettlecast as kc
from kettlecast import _core
from kettlecast.demo import demo_path
from kettlecast.errors import InvalidArgument, UnknownName
from kettlecast.expected_log import expected_log
from kettlecast.fit_problem import observe
from kettlecast.run_plan import run_plan
from kettlecast.scatter import NOTHING

WATER, STEPS, STEW = (
    kc.read_recipe(demo_path(f"{name}.toml")) for name in ("water_boil", "water_steps", "stew")
)
STATED = dataclasses.replace(WHITE, estimate_errors=False)
NAMES = [*TRUTH, "floor.loss", "evaporation.factor"]


@pytest.fixture(scope="module")
def known() -> kc.Fit:
    logged = kc.read_run(demo_path("water_boil_60kg.csv"), recipe=WATER)
    return kc.fit(KETTLE, made_run(logged, TRUTH, 3), vary=NAMES, options=STATED)


@pytest.fixture(scope="module")
def advice(known: kc.Fit) -> kc.NextRun:
    return kc.next_run(known, {"boil": WATER, "steps": STEPS}, STEPS)


def log_of(recipe: kc.Recipe, *, closed_loop: bool = False) -> kc.Run:
    """What a recipe would log with the true coefficients, without noise."""
    fine = kc.Options(output_interval=2.0)
    made = kc.forecast(KETTLE, recipe, coefficients=kc.Coefficients(TRUTH), options=fine)
    return expected_log(made, floor=True, closed_loop=closed_loop)


# --- what a log tells


def test_posterior_is_the_textbook_formula_with_difference_quotients(
    known: kc.Fit, advice: kc.NextRun
) -> None:
    """C - C X' (X C X' + S)^-1 X C, with slopes by central differences of replays."""
    fine = known.options.integration.replace(output_interval=2.0)
    log = expected_log(kc.forecast(known, STEPS, options=fine, draws=0), floor=True, closed_loop=0)
    one = observe(log, KETTLE.surroundings, WHITE.interval)
    names = list(advice.names)
    middle = np.array(_core.to_scaled(known.coefficients, names))

    def readings(point: np.ndarray) -> np.ndarray:
        there = _core.from_scaled(known.coefficients, names, point=list(point))
        precise = kc.Options(tolerance=1e-9)
        shown = _core.replay(KETTLE, there, plan=one.plan, options=precise)
        return np.concatenate([shown.floor_reading, shown.probe_reading])

    step = 1e-3
    moves = step * np.eye(len(names))
    slopes = np.array([readings(middle + m) - readings(middle - m) for m in moves]).T / (2 * step)
    errors = np.repeat([FLOOR_NOISE, PROBE_NOISE], one.time.size) * max(1.0, known.redchi) ** 0.5
    weights = np.sqrt(np.minimum(1.0, one.step / WHITE.correlation_time))
    slopes *= weights / errors[:, None]
    crossed = advice.before @ slopes.T
    textbook = advice.before - crossed @ np.linalg.solve(
        slopes @ crossed + np.eye(len(slopes)), crossed.T
    )
    found = advice.after("steps")
    np.testing.assert_allclose(np.diag(found), np.diag(textbook), rtol=0.01)
    scale = np.sqrt(np.outer(np.diag(textbook), np.diag(textbook)))
    assert np.max(np.abs(found - textbook) / scale) < 0.01


def test_coefficients_that_were_not_fitted_have_the_spread_of_their_priors(
    advice: kc.NextRun,
) -> None:
    assert list(advice.names[: len(NAMES)]) == [name for name in advice.names if name in NAMES]
    assert "jacket.efficiency" in advice.names  # the water run had no jacket, the steps have
    others = advice.before[len(NAMES) :, len(NAMES) :]
    np.testing.assert_array_equal(others, np.eye(len(others)))
    # 0.10 is the relative prior spread of its card.
    card = next(one for one in kc.coefficient_cards() if one.name == "jacket.efficiency")
    spread = advice.spreads.loc["jacket.efficiency"]
    assert spread["now"] == pytest.approx(card.spread * card.value)
    assert spread["boil"] == pytest.approx(spread["now"], rel=1e-9)
    assert spread["steps"] < 0.5 * spread["now"]


def test_a_run_without_jacket_is_not_chosen_for_a_target_by_the_jacket(known: kc.Fit) -> None:
    heated = _core.JacketUse.heat
    alone = STEPS.replace(phases=[one.replace(jacket=heated) for one in STEPS.phases])
    found = kc.next_run(known, {"boil": WATER, "with jacket": STEPS}, alone)
    assert found.best == "with jacket"
    assert found.table.loc["with jacket", "learned_most"].startswith("jacket.")


def test_more_of_the_same_tells_less_each_time(advice: kc.NextRun) -> None:
    by_bits = dataclasses.replace(advice, by="information")
    bits = [0.0, *(bit for _, bit in by_bits.sequence(4))]
    gains = np.diff(bits)
    assert np.all(gains > 0.0) and np.all(np.diff(gains) < 0.0)
    widths = [width for _, width in advice.sequence(3)]
    assert widths == sorted(widths, reverse=True)
    assert widths[0] == pytest.approx(advice.table["target_after"].iloc[0])


def test_spreads_never_grow(advice: kc.NextRun) -> None:
    for name in ("boil", "steps"):
        assert (advice.spreads[name] <= advice.spreads["now"] * (1 + 1e-9)).all()
    assert (advice.table["target_after"] <= advice.table["target_now"]).all()


def test_values_of_each_run_are_not_known_for_the_next(known: kc.Fit) -> None:
    logged = kc.read_run(demo_path("water_boil_60kg.csv"), recipe=WATER)
    made = made_run(logged, TRUTH, 3)
    loose = kc.fit(KETTLE, made, vary=NAMES, per_run=["probe.offset"], options=STATED)
    tight = dataclasses.replace(loose, per_run=())
    bits = [
        kc.next_run(one, {"boil": WATER}).table["information_bit"].iloc[0] for one in (loose, tight)
    ]
    assert bits[0] < bits[1]


# --- by doing it


@pytest.mark.parametrize("closed_loop", [False, True])
def test_the_spread_is_what_a_fit_with_the_new_log_finds(known: kc.Fit, closed_loop: bool) -> None:
    first = made_run(kc.read_run(demo_path("water_boil_60kg.csv"), recipe=WATER), TRUTH, 3)
    asked = kc.next_run(known, {"steps": STEPS}, closed_loop=closed_loop)
    like = log_of(STEPS, closed_loop=closed_loop)
    plan = run_plan(like, KETTLE.surroundings, like.time)
    shown = _core.replay(KETTLE, kc.Coefficients(TRUTH), plan=plan)
    noise = np.random.default_rng(8).normal(0.0, 1.0, (2, like.time.size))
    noise[:, :STILL] = 0.0
    second = dataclasses.replace(
        like,
        floor_reading=shown.floor_reading + FLOOR_NOISE * noise[0],
        probe_reading=shown.probe_reading + PROBE_NOISE * noise[1],
    )
    both = kc.fit(KETTLE, [first, second], vary=asked.names, options=STATED)
    # The slopes are those at the values known before, the standard errors those at the values known
    # after: a tenth, in scaled coefficients.
    where = [list(both.params).index(name) for name in asked.names]
    spread = np.sqrt(np.diag(both.scaled_covar))[where]
    ratio = np.sqrt(np.diag(asked.after("steps"))) / spread
    assert np.all((ratio > 0.9) & (ratio < 1.1)), dict(zip(asked.names, ratio, strict=True))


def test_target_now_is_the_interval_of_a_forecast(known: kc.Fit) -> None:
    now = kc.next_run(known, {"boil": WATER}, WATER).table["target_now"].iloc[0]
    members = kc.forecast(known, WATER, draws=400, scatter=NOTHING).ensemble.values("duration")
    low, high = np.quantile(members, [0.05, 0.95])
    # Standard error of a 5 % quantile of 400 is 6.5 % of the half-width, of 200 draws' standard
    # deviation 5 %: three of both together.
    assert now == pytest.approx(0.5 * (high - low), rel=0.25)


# --- what is said, and refused


def test_cost_and_sentence(advice: kc.NextRun, known: kc.Fit) -> None:
    forecast = kc.forecast(known, WATER, draws=0)
    row = advice.table.loc["boil"]
    assert row["minutes"] == pytest.approx(forecast.duration / 60.0, rel=1e-6)
    assert row["energy_kWh"] == pytest.approx(forecast.phases["energy_kWh"].sum(), rel=1e-6)
    said = advice.sentence()
    assert said.startswith(f'Log "{advice.best}" next (')
    assert "the duration of water in steps is known to +-" in said
    plain_text = json.loads(advice.to_json())
    assert plain_text["best"] == advice.best == plain_text["runs"][0]["run"]


def test_an_answer_pickles(advice: kc.NextRun) -> None:
    assert pickle.loads(pickle.dumps(advice)).to_json() == advice.to_json()


def test_a_saved_fit_gives_the_same_answer(
    known: kc.Fit, advice: kc.NextRun, tmp_path: Path
) -> None:
    known.save(tmp_path / "fit.json")
    again = kc.next_run(kc.read_fit(tmp_path / "fit.json"), {"boil": WATER, "steps": STEPS}, STEPS)
    assert again.to_json() == advice.to_json()


@pytest.mark.parametrize(
    ("target", "message"),
    [
        (kc.Target(WATER, "length"), '"length" is not known'),
        (kc.Target(WATER, "overshoot"), "is that of a phase; say which of: heat the water"),
        (kc.Target(WATER, phase=2), "has no phase 2; there are 1 to 1: heat the water"),
        (kc.Target(WATER, phase="heat"), "has no phase 'heat'"),
    ],
)
def test_targets_that_do_not_exist_are_refused(
    known: kc.Fit, target: kc.Target, message: str
) -> None:
    with pytest.raises((UnknownName, InvalidArgument), match=message):
        kc.next_run(known, {"boil": WATER}, target)


def test_a_set_point_that_is_never_reached_is_refused(known: kc.Fit) -> None:
    hot = WATER.phases[0].replace(set_point=393.15, time_limit=1800.0)
    never = kc.Target(WATER.replace(phases=[hot]), "overshoot", 1)
    with pytest.raises(InvalidArgument, match="happens in 0 of 200 forecasts only"):
        kc.next_run(known, {"boil": WATER}, never)


def test_refusals(known: kc.Fit) -> None:
    with pytest.raises(InvalidArgument, match="no candidates given; allowed: one recipe or more"):
        kc.next_run(known, {})
    with pytest.raises(InvalidArgument, match='by "cost" is not allowed; allowed: target, inf'):
        kc.next_run(known, {"boil": WATER}, by="cost")
    with pytest.raises(InvalidArgument, match="sorted by target, but no target given"):
        kc.next_run(known, {"boil": WATER}, by="target")
    with pytest.raises(InvalidArgument, match=r"level must be in 0\.\.1, got 1"):
        kc.next_run(known, {"boil": WATER}, level=1.0)
    full = kc.with_more(WATER, "water", "400 kg")
    with pytest.raises(InvalidArgument, match='"flood" cannot be run: '):
        kc.next_run(known, {"flood": full})


# --- candidates


@pytest.mark.parametrize("name", ["kettle", "steam_kettle"])
def test_candidates_run_on_the_kettle(name: str) -> None:
    kettle = kc.read_kettle(demo_path(f"{name}.toml"))
    runs = kc.candidate_runs(kettle)
    assert len(runs) >= 6
    for recipe in runs.values():
        for phase in kc.forecast(kettle, recipe).result.phases:
            assert phase.ended is not kc.EndReason.timed_out, (recipe.name, phase.name)
    jackets = [one for one in runs if "jacket" in one]
    assert len(jackets) == (0 if kc.heats_by_jacket(kettle) else 1)


def test_candidates_of_a_plain_pot_neither_stir_nor_use_a_jacket() -> None:
    pot = kc.Kettle(name="pot", diameter=0.24, height=0.2, floor_power=2000.0)
    runs = kc.candidate_runs(pot)
    phases = [phase for recipe in runs.values() for phase in recipe.phases]
    assert not any(phase.agitation.speed for phase in phases)
    assert not any(phase.jacket is not kc.JacketUse.off for phase in phases)
    for recipe in runs.values():
        poured = sum(one.mass for phase in recipe.phases for one in phase.additions)
        assert 0.0 < poured < 1000.0 * kc.usable_volume(pot)
        kc.forecast(pot, recipe)


# --- command line


def test_next_on_the_command_line(known: kc.Fit, tmp_path: Path) -> None:
    known.save(tmp_path / "fit.json")
    files = [demo_path("water_boil.toml"), demo_path("water_steps.toml")]
    best = tmp_path / "best.toml"
    target = ("--target", files[1], "--phase", "2", "--result", "time_to_reach")
    found = plain("next", tmp_path / "fit.json", *files, *target, "--write", best)
    assert [one["run"] for one in found["runs"]] == [found["best"], "water to 90 degC"]
    assert kc.read_recipe(best) == STEPS
    result = run("next", tmp_path / "fit.json", *files)
    assert result.exit_code == 0, result.stderr
    assert 'Log "water in steps" next (' in result.stdout
    assert "After that: " in result.stdout


def test_next_makes_its_own_candidates(known: kc.Fit, tmp_path: Path) -> None:
    known.save(tmp_path / "fit.json")
    found = plain("next", tmp_path / "fit.json")
    assert {one["run"] for one in found["runs"]} == set(kc.candidate_runs(KETTLE))


def test_next_wants_a_fit() -> None:
    result = run("next", KETTLE_FILE)
    assert result.exit_code == 1
    assert "not a JSON file" in result.stderr
