"""Goals, pairs, repetitions and training alone as people say them, in the words of the clauses."""

from __future__ import annotations

from typing import Final

from setwright.solver.brief.phrase.wording.numbers import Rewrites

STYLE: Final[Rewrites] = (
    (
        r"\b(?:most bang for the buck|get the most out of|time[- ]efficient|time is tight|keep it efficient|quick and efficient)\b",
        "efficient",
    ),
    (r"\b(?:maximum|max|most) growth\b|\bbuild muscle\b|\bhypertrophy\b", "growth"),
    (
        r"\b(?:supersets?|supersetts|pairs) (?:ok|okay|welcome|fine|yes)\b|\bpair exercises(?: to save time)?\b|\bsuperset push with pull\b",
        "with pairs",
    ),
    (r"\b(?:minimum effective dose|bare minimum(?: to keep my muscle)?|just keep what i have)\b", "minimum dose"),
    (r"\b(?:i )?(?:hate|dislike|no|without)s? supersets?(?: in a crowded (?:gym|commercial gym))?\b", "no pairs"),
    (r"\bno rest-pause\b", "no techniques"),
    (r"\bheavy, (?=low(?:er)? reps)", ""),
    (r"\b(?:as big as possible(?: as fast as possible)?|size is the goal)\b", "growth"),
    (r"\bhigh reps\b", "higher reps"),
    (r"\blow reps\b", "lower reps"),
    (
        r"\b(?:by myself|on my own|solo(?: lifter)?|i train alone|training alone|trains? alone|training on my own|nobody to spot me|mostly by myself|no spotter)\b",
        "alone",
    ),
)
