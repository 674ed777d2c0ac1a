"""Times as people in a kitchen read them."""

from __future__ import annotations

import math


def clock_text(seconds: float) -> str:
    """Minutes and seconds such as "14:58"; "-" for a time that was never reached.

    Examples
    --------
    >>> clock_text(898.2)
    '14:58'
    >>> clock_text(-12)
    '-0:12'
    """
    if not math.isfinite(seconds):
        return "-"
    whole = round(abs(seconds))
    sign = "-" if seconds < 0.0 and whole else ""
    return f"{sign}{whole // 60}:{whole % 60:02d}"


def ends_text(low: float, high: float) -> str:
    """Both ends of an interval such as "14:53 to 15:15"; an end that is not known is left open.

    Examples
    --------
    >>> ends_text(893.0, math.inf)
    '14:53 or more'
    """
    if math.isfinite(low) and math.isfinite(high):
        return f"{clock_text(low)} to {clock_text(high)}"
    if math.isfinite(low):
        return f"{clock_text(low)} or more"
    return f"{clock_text(high)} or less" if math.isfinite(high) else "open at both ends"


def range_text(value: float, low: float, high: float) -> str:
    """A time with its interval such as "14:58 (14:53 to 15:15)"; the time alone if they agree."""
    middle, ends = clock_text(value), (clock_text(low), clock_text(high))
    if math.isnan(low) or math.isnan(high) or ends == (middle, middle):
        return middle
    return f"{middle} ({ends_text(low, high)})"
