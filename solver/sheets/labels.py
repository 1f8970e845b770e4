"""The labels that every handed-over sheet shares, in English; `coach.toml` may give them in the client's language."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType
from typing import Final

LABELS: Final[Mapping[str, str]] = MappingProxyType(
    {
        # headings of a card
        "client": "Client",
        "week": "Week",
        "session": "Session",
        "minutes": "Minutes",
        "min": "min",
        "kit": "Kit",
        "goal": "Goal",
        "asked": "Asked for",
        "order": "Order",
        "exercise": "Exercise",
        "sets_reps": "Sets x reps",
        "sets": "Sets",
        "reps": "Reps",
        "rir": "RIR",
        "rir_meaning": "RIR: repetitions left in reserve at the end of a set",
        "rest": "Rest",
        "load": "Load",
        "technique": "Technique",
        "setting": "Setting",
        "cue": "Cue",
        "swap": "Swap",
        "or": "or",
        "pair": "Done in turn with",
        "why": "Why",
        "link": "Link",
        "set": "Set",
        "set_boxes": "Load x reps of each set",
        # foot of a card
        "warm_up": "Warm-up",
        "ramp_up": "Ramp-up",
        "how_hard": "How hard, 0-10",
        "notes": "Notes",
        "date": "Date",
        "caution": "Caution",
        "review": "Review",
        "left_out": "Left out by your coach",
        "made_by": "Made by",
        # the week
        "days": "Days",
        "week_index": "Week index",
        "index": "Index",
        "interval": "Interval",
        "index_meaning": "Index 100: the stimulus of ten good weekly sets. It compares weeks and promises no growth.",
        "why_week": "Why this week",
        "weekly_sets": "Weekly sets",
        "muscle": "Muscle",
        "muscles": "Muscles",
        "emphasis": "Emphasis",
        "band": "Band",
        "band_from": "Band from",
        "band_to": "Band to",
        "time": "Time",
        "nothing": "No exercises on this day",
        # emphases
        "priority": "priority",
        "normal": "normal",
        "hold": "hold",
        "none": "none",
        "counted": "counted",
        # where a session's seconds go
        "lifting": "Lifting",
        "resting": "Resting",
        "change_over": "Change-over",
        # weekdays
        "mon": "Monday",
        "tue": "Tuesday",
        "wed": "Wednesday",
        "thu": "Thursday",
        "fri": "Friday",
        "sat": "Saturday",
        "sun": "Sunday",
    }
)
"""Label -> its English words; the labels of `seconds_by_kind` are its keys."""
