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
    (r"\b(?:supersets?) are (?:ok|okay|welcome|fine)\b", "with pairs"),
    (r"\bdrop sets (?:are )?(?:ok|okay|welcome|fine)\b", "with techniques"),
    (r"\bheavy weights and (?=low(?:er)? reps)", ""),
    (
        r"\b(?:build |grow |put on )?as much muscle as (?:possible|i can|he can|she can)\b|\b(?:i want to )?put on (?:some )?(?:size|muscle)\b|\b(?:is )?muscle growth\b|(?<=[,.;] )size(?=[,.;]|$)",
        "growth",
    ),
    (r"\bas efficient as possible\b|\bbest results in the least time\b", "efficient"),
    (r"\b(?:i'd like to )?(?:maintain|keep) what i have\b", "minimum dose"),
    (r"\bgym (?:is|gets) (?:too )?(?:busy|packed|crowded)(?: after work| at \d+ ?pm)?\b", "gym, busy"),
    (r"\bhigh reps\b", "higher reps"),
    (r"\blow reps\b", "lower reps"),
    (
        r"\b(?:by myself|on my own|solo(?: lifter)?|i train alone|training alone|trains? alone|training on my own|nobody to spot me|mostly by myself|no spotter)\b",
        "alone",
    ),
)
