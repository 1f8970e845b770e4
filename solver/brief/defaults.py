"""The numbers and words a brief falls back on, and the limits its fields keep to."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType
from typing import Final

WEEKDAYS: Final = ("mon", "tue", "wed", "thu", "fri", "sat", "sun")

WEEKDAY_NAMES: Final = (
    "monday",
    "tuesday",
    "wednesday",
    "thursday",
    "friday",
    "saturday",
    "sunday",
)

SPREAD: Final[Mapping[int, tuple[str, ...]]] = MappingProxyType(
    {
        1: ("mon",),
        2: ("mon", "thu"),
        3: ("mon", "wed", "fri"),
        4: ("mon", "tue", "thu", "fri"),
        5: ("mon", "tue", "wed", "fri", "sat"),
        6: ("mon", "tue", "wed", "thu", "fri", "sat"),
        7: WEEKDAYS,
    }
)
"""The weekdays a count of days alone stands for (common practice, no source)."""

GOAL: Final = "balanced"
KIT: Final = "commercial-gym"
REST_DAYS_BETWEEN: Final = 1

LIMITS: Final[Mapping[str, tuple[float, float]]] = MappingProxyType(
    {
        "days": (1, 7),
        "minutes": (10, 240),
        "rest_days_between": (0, 5),
        "at_least": (0, 40),
        "at_most": (0, 40),
        "days_at_least": (1, 7),
        "keep_share": (0.5, 1),
        "age": (13, 100),
        "sets": (1, 10),
        "rir_more": (0, 4),
        "rir_at_least": (0, 5),
        "rest_at_least": (15, 300),
        "rest_at_most": (30, 300),
        "dumbbell_max": (1, 200),
        "dumbbell_step": (0.25, 20),
        "bar": (2, 60),
        "plates": (0.1, 100),
        "load": (0.25, 1500),
        "maximum": (0.25, 1500),
        "reps": (1, 60),
        "rir": (0, 10),
        "regions": (1, 3),
        "warm_up": (120, 1200),
        "spare": (0, 3600),
        "seconds_per_rep": (1, 12),
        "ramp_lower": (0, 900),
        "ramp_push": (0, 900),
        "ramp_pull": (0, 900),
        "ramp_light": (0, 900),
        "pair_change": (0, 120),
    }
)
"""The lowest and highest value of each field that has them (convention): counts, minutes, seconds, sets or weights."""

MOST_SETS: Final = 20
"""Sets of a lift in a session that a coach may ask for and a workbook has boxes for (convention)."""

MOST_WEEKS_SHOWN: Final = 400
"""Weeks of a run of variants that are given a page each, and that a desk searches: more than anybody leafs through
(convention)."""

MOST_PAIRS: Final = 20
"""Pairs of plates whose sums are all compared (convention)."""

OUT_OF_LIMITS: Final[Mapping[str, tuple[str, str]]] = MappingProxyType(
    {"age": ("this tool is not for children under 13, who train with somebody who teaches them", "check the number")}
)
"""The remedies for a field below and above its limits, where there is more to say than the limits."""

FILE_BYTES: Final = 1_000_000
"""The largest brief read, in bytes: a brief is a page, so anything larger is the wrong file."""

PHRASE_LETTERS: Final = 2_000
"""The longest phrase read."""
