"""Files of a made-up kitchen, "commissary A": two kettles, recipes and five logged runs.

kettle.toml has a heated floor and an electric jacket; its logs are those of stew.toml,
water_boil.toml and water_steps.toml. steam_kettle.toml has a steam jacket with cooling water.
"""

from __future__ import annotations

from collections.abc import Mapping
from importlib import resources
from pathlib import Path
from types import MappingProxyType

from ..errors import UnknownName

#: Recipe files and the kettle each is cooked on.
RECIPES: Mapping[str, str] = MappingProxyType(
    {
        "stew.toml": "kettle.toml",
        "water_boil.toml": "kettle.toml",
        "water_steps.toml": "kettle.toml",
        "syrup.toml": "kettle.toml",
        "vegetables.toml": "kettle.toml",
        "custard.toml": "steam_kettle.toml",
        "reduce.toml": "steam_kettle.toml",
    }
)


def demo_path(name: str) -> Path:
    """Path of a demo file such as "kettle.toml" or "stew_70kg.csv".

    Raises
    ------
    UnknownName
        No such file; the message lists those there are.
    """
    folder = Path(str(resources.files(__package__)))
    names = sorted(path.name for path in folder.iterdir() if path.suffix in {".csv", ".toml"})
    if name not in names:
        raise UnknownName(f'demo file "{name}" is not known; there are: {", ".join(names)}')
    return folder / name
