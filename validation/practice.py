"""Kettles that were never fitted, against facts of the trade.

Generic kettles, default coefficients: what they do has to lie where cooks and engineers expect any
such kettle. The ranges are common practice and have no source; a case out of its range says that
physics is missing or a default is off, and is not to be tuned away here: it stays out, and `GAPS`
says what is missing as far as it is known.
"""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path

import practice_floor
import practice_jackets
import practice_recipes
from case import Outcome
from practice_kettle import DIAMETER, SPEEDS

TITLE = "Generic, unfitted kettles against common practice"

NOTES = (
    f"All coefficients at their defaults. Agitators at {SPEEDS[0]:g}, {SPEEDS[1]:g} and "
    f"{SPEEDS[2]:g} rpm: a range holds if the figures at all of them lie in it.",
    f"Heated floor: 120 L, {DIAMETER:g} m wide, anchor, 24 kW under the floor, 8 kW electric "
    "jacket.",
    f"Steam: 150 L, {DIAMETER:g} m wide, dished floor, 3 mm of stainless steel, no air in the "
    "steam, no scale; a plain anchor for water, scrapers for thick product.",
    "Overall U: heat into the product from 40 to 80 degC under a lid, less that of the agitator, "
    "over wetted jacketed area and saturated steam less product.",
    "Browning: the surface of wet pieces stays at the boiling point in the model, so that what it "
    "says for sauteed pieces is the least it can be; a crust is missing.",
    "Candy: the probe trails the syrup, and the air over a stirred pan takes so much vapour that "
    "syrup stays a few kelvin below its boiling point.",
)

_FILMS = "surfaces are clean and the steam holds no air; with scale, or 1 % of air, it is in range"
_SCRAPED = (
    f"at 50 rpm only: {_FILMS}; scrapers renew the same share of the ideal film however fast they "
    "turn"
)
_SURFACE = (
    "a stirred surface evaporates all that the floor gives before the probe shows 99 degC: it "
    "counts as moving against resting air, which it drags along"
)

#: Names of the cases known to be out of their range, and what is missing.
GAPS: Mapping[str, str] = {
    "Full kettle of water from 12 to 99 degC, open": f"at 50 rpm only: {_SURFACE}",
    "Overall U, steam to stirred water": _FILMS,
    "Overall U, steam to scraped tomato sauce": _SCRAPED,
    "Overall U, steam to scraped apple sauce": _SCRAPED,
    "Full kettle of water to the boil, 5 psig on half, ample steam": (
        "the overall U is too high, see there; and no boiler gives steam without a limit"
    ),
    "Full kettle of water to the boil, 15 psig on two thirds, ample steam": (
        "the overall U is too high, see there; and no boiler gives steam without a limit"
    ),
    "150 L cooled from 90 to 40 degC, 30 L/min of 10 to 15 degC in the jacket": (
        "faster than usual at 15 and 25 rpm: surfaces are clean; liquid in the jacket is one "
        "stirred body without a way from inlet to outlet"
    ),
    "Power drawn by scrapers in tomato paste": (
        "the work on the product only: friction of blades on the wall, of seals and gears is not "
        "in the model, and is most of what a motor draws"
    ),
    "Custard at half heat, floor at most 15 K over product: most that it was": (
        "at 15 rpm only, by half a kelvin: elements and floor pass on what they hold after "
        "the switch; a property of the switch rather than a gap"
    ),
}


def outcome(folder: Path) -> Outcome:
    """Runs the comparison; nothing is written to `folder`."""
    cases = [*practice_floor.cases(), *practice_jackets.cases(), *practice_recipes.cases()]
    gaps = tuple(f"Known to be out of its range: {name}: {why}." for name, why in GAPS.items())
    return Outcome(TITLE, tuple(cases), (*NOTES, *gaps), gaps=GAPS)
