"""Ages, sore joints and conditions as people say them, in the words of the clauses."""

from __future__ import annotations

from typing import Final

from setwright.solver.brief.phrase.wording.numbers import Rewrites

HEALTH: Final[Rewrites] = (
    (r"\b(?:female|male|man|woman|gentleman|lady),? (?=(?:age )?\d\d\b)", ""),
    (
        r"\b(?:left |right |new )*(knee|hip|shoulder)s? (?:was |is )?replaced\b|\bnew (knee|hip|shoulder)\b",
        r"\1\2 replacement",
    ),
    (r"\bhad surgery on (?:my|the|his|her) (?:left |right )?([a-z]+)\b", r"recent surgery, bad \1"),
    (
        r"\b(?:haven't trained|no training) in \d+ (?:years|months)\b|\b(?:returning )?after (?:a )?long break\b|\breturning after long break\b",
        "long break",
    ),
    (r"\bgolfers elbow\b", "golfer's elbow"),
    (r"(?<=carpal tunnel) in both wrists\b", ""),
    (r"\bhurts?(?: a bit)? when [^,.;]*", "hurts"),
    (r"\bsh?oulders? (?=impingement)", "shoulder "),
    (
        r"\b(?:(?:i'm|i am|she's|he's|aged?) )?(\d\d)[- ]?(?:y/o|yo|y|yr old|yrs old|years? old|year-old|years? of age)\b",
        r"age \1",
    ),
    (r"\b(?:i'm |i am )?\d\d? (?:weeks|months) (?=pregnant|postpartum)", ""),
    (r"\bjust turned (\d\d)\b", r"age \1"),
    (r"\b(?:my client|she|he) is (\d\d)(?: and has)?\b", r"age \1,"),
    (r"\b(?:i'm|i am) (\d\d)\b(?! (?:kg|cm|min|weeks|months))", r"age \1"),
    (r"\b(\d\d)(?:f|m)\b|\b[mf]/(\d\d)\b", r"age \1\2"),
    (r"\b(?:i'm|i am|she's|he's) (?=pregnant|alone|a beginner|a novice|advanced|intermediate)", ""),
    (r"\b(?:careful with|protect|look after)(?: my| the| his| her)? ", "bad "),
    (
        r"\b(?:dodgy|tender|stiff|painful|troublesome|left|right|weak) (?=(?:knee|hip|shoulder|elbow|wrist|ankle|neck|lower back|back)s?\b)",
        "bad ",
    ),
    (r"\bbad bad\b", "bad"),
    (r"\bneither [a-z]+ nor [a-z]+ (?:problems|trouble|pain|issues)\b", ","),
    (r"\bno (?:injuries|health issues|health problems|aches|pain)\b|\botherwise healthy\b", ","),
    (
        r"\b(?:a )?(?:complete|total|absolute) beginner\b|\bfirst time(?: lifting)?\b|\bnever lifted\b|\bnever been to a (?:commercial )?gym\b",
        "beginner",
    ),
    (r"\b(advanced|intermediate|novice) lifter\b", r"\1"),
    (r"\btype [12] (?:diabetic|diabetes)\b", "diabetes"),
    (r"\b(?:on|takes) (?=blood thinners)", ""),
    (r"\bwarfarin\b", "blood thinners"),
    (
        r"\b(?:my |a |the )*((?:left |right )?(?:knee|hip|shoulder|elbow|wrist|ankle|neck|lower back|rotator cuff|achilles)s?) (?:hurts?|acting up|trouble|pain|sore|clicks|aches?|problems?)(?=[,.;]|$)",
        r"bad \1",
    ),
    (r"\bbad (?:left|right) ", "bad "),
    (r"\bbad rotator cuff\b", "rotator cuff"),
    (r"\bbad achilles\b", "bad ankle"),
)
