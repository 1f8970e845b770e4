"""The charts' words in the client's language."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Final

CHART_WORDS: Final = {
    "Muscle": "muscle",
    "Sets": "sets",
    "Band": "band",
    "sets": "sets",
    "band": "band",
    "below": "below",
    "above": "above",
    "from": "from",
    "counted along": "counted_along",
    "Bold: priority": "bold_priority",
    "sets a week": "sets_a_week",
    "warm-up": "warm_up",
    "ramp-up": "ramp_up",
    "lifting": "lifting",
    "resting": "resting",
    "change-over": "change_over",
    "minutes": "minutes",
    "min": "min",
    "week index": "week_index",
    "minutes a week": "minutes_a_week",
    "bend at": "bend_at",
    "Weekly sets of each muscle against its band": "bands_title",
    "Where the minutes of each session go": "time_title",
    "What a week's minutes buy": "what_minutes_buy",
    "Side by side": "compared",
}
"""The charts' English words -> the coach's labels."""
LOWER: Final = ("sets", "band", "warm-up", "ramp-up", "lifting", "resting", "change-over", "minutes", "week index")
"""Words that stand inside a chart, where headings would shout."""


def chart_words(words: Mapping[str, str]) -> dict[str, str]:
    """The charts' English words in the client's language."""
    return {said: words[key].lower() if said in LOWER else words[key] for said, key in CHART_WORDS.items()}
