"""Files of a made-up kitchen, "commissary A": a kettle, recipes and five logged runs."""

from __future__ import annotations

from importlib import resources
from pathlib import Path

from ..errors import UnknownName


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
