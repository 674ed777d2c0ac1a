"""The logs behind a fit, for questions that need them."""

from __future__ import annotations

from typing import TYPE_CHECKING

from .errors import InvalidArgument

if TYPE_CHECKING:
    from .fit_result import Fit
    from .fit_search import Search


def search_of(fit: Fit, question: str) -> Search:
    """Logs and search of a fit.

    Raises
    ------
    InvalidArgument
        The fit was read from a file, which holds no logs.
    """
    if fit.search is None:
        raise InvalidArgument(
            f"{question}: the fit of {fit.kettle.name!r} holds no logs, because it was read from a "
            "file; allowed: a fit that was just made"
        )
    return fit.search
