"""What is at hand, as people say it, in the words of the clauses; and words that are often misspelt."""

from __future__ import annotations

from typing import Final

from setwright.solver.brief.phrase.wording.numbers import Rewrites

KIT: Final[Rewrites] = (
    (r",? ?(?:but )?(?:they|it|we|there) (?:don't|doesn't|isn't)(?: have)?(?: a| any)? ", ", without "),
    (r"\badjustable (?=dumbbells)", ""),
    (r"\bdumbbells up to\b", "dumbbells to"),
    (r"\b(?:everything|anything) (?:but|except)(?: for)?(?: the| a)? ", "without "),
    (r"\b(?:a |one |1 )?(?:pair of |set of |two |2 )+(?:light )?(\d+(?:\.\d+)?) ?kg (?=dumbbells|dbs)", r"\1 kg "),
    (r"(?<![\d.])(\d+(?:\.\d+)?) kg (?:dumbbells|dbs)\b", r"dumbbells to \1 kg"),
    (r"\bno (?:equipment|kit|gear)(?: at all)?\b|\bwithout any kit\b", "no equipment"),
    (r"\bhotel rooms?\b", "bodyweight"),
    (r"\b(?:free weights)(?: only)?\b", "barbell and dumbbells"),
    (
        r"\b(?:only|just) (dumbbells|bands|machines|bodyweight|a barbell|kettlebells?)\b|\b(dumbbells|bands|machines|bodyweight|kettlebells?|barbell) only\b",
        r"\1\2",
    ),
    (r"\b(?:some|my|our|the) (?=(?:dumbbells|bands|barbell|rack|bench|kettlebells?)\b)", ""),
    (r"\b(?:full |normal |our |school |club |office )?(?:commercial )?gym\b(?! machines)", "commercial gym"),
    (r"\bhome commercial gym\b", "home gym"),
    (r"\bhotel commercial gym\b", "hotel gym"),
    (r"\bmachine commercial gym\b", "machine gym"),
    (r"\bgarage commercial gym\b", "garage gym"),
)
SPELLING: Final[Rewrites] = (
    (r"\b(?:dumbells|dumbbels|dumbels|dbs)\b", "dumbbells"),
    (
        r"\bdumbbells((?: at home)?),? (?:the )?(?:heaviest|biggest)(?: (?:is|are|pair|ones?|of|at))* (\d+(?:\.\d+)? ?(?:kg|lbs?))",
        r"dumbbells to \2\1",
    ),
    (r"\bgym machines\b", "machines"),
    (r"\bkettelbells?\b", "kettlebell"),
    (r"\b(?:shoudlers|sholders?|shoulers)\b", "shoulders"),
    (r"\btricpes\b", "triceps"),
    (r"\bhamstrngs\b", "hamstrings"),
    (r"\bgluts\b", "glutes"),
    (r"\blungess\b", "lunges"),
    (r"\bdedlifts?\b", "deadlift"),
    (r"\bhypertensoin\b", "hypertension"),
)
