"""Lengths of time and counts of days as people say them, in the words of the day clauses: 40 min, 3 days."""

from __future__ import annotations

from typing import Final

from setwright.solver.brief.defaults import WEEKDAYS
from setwright.solver.brief.phrase.wording.numbers import Rewrites

_SESSIONS: Final = (
    r"(?:sessions?|workouts?|trainings?|times|evenings?|mornings?|nights?|slots?|lunch(?:es| breaks?| hours?)|visits?|"
    r"lifting days|training days|days?|d|gym days)"
)
_WEEKLY: Final = r"(?:a|per|each|every|/|the) ?(?:week|wk)|weekly|in the week"
_EACH: Final = (
    r"(?:each(?: (?:one|1|day|time|session|of them))?|apiece|a go|all of them|per session|per workout|every time|"
    r"a session|a day|per day|/ ?day|/ ?session|long|in total each|of each|at a time|(?:on )?both days|door to door)"
)
_DAY: Final = "|".join(WEEKDAYS)
_PLACE: Final = (
    r"(?:commercial |hotel |home |machine )?gym|garage(?: gym)?|(?:at )?home with (?:dumbbells|bands)|bodyweight"
)
FRACTIONS: Final[Rewrites] = (
    (r"\b(?:three[- ]quarters|3[- ]quarters|3/4) (?:of )?(?:an? )?(?:hours?|hr|h)\b", "45 min"),
    (r"\b(?:a )?quarter of an hour\b", "15 min"),
    (r"\ban hour and a quarter\b", "75 min"),
    (r"\b(?:an|1|a full|a) (?:hour|hr|h) and a half\b|\b1(?:\.5| 1/2|\u00bd) ?(?:hours?|hrs?|h)\b", "90 min"),
    (r"\b2(?:\.5| 1/2) ?(?:hours?|hrs?|h)\b|\b2 hours and a half\b", "150 min"),
    (r"\b(?:(?:an?|1) )?half(?: an?|-)? ?(?:hours?|hr)\b", "30 min"),
)
"""Parts of an hour, read before numbers in words are, since `one and a half` is one number."""
HALVES: Final[Rewrites] = (
    (
        r"\bupper(?: body)? (?:twice|2 ?x|two times)(?: a week)?,?(?: and)? lower(?: body)? (?:twice|2 ?x|two times)(?: a week)?\b",
        "4 days, upper lower",
    ),
)
"""As many upper as lower days, read before what is said of a muscle twice a week."""
DURATIONS: Final[Rewrites] = (
    *FRACTIONS,
    (r"\b1 ?h(?:r|our)? ?(\d\d)\b(?! ?x)", r"60 and \1 min"),
    (r"\b(?:an? |1 )?(?:hour|hr)[- ]long\b", "60 min"),
    (r"\b(?:an|a full|1 full|a whole|1) (?:hour|hr)\b", "60 min"),
    (r"\b60 and 15 min", "75 min"),
    (r"\b60 and 30 min", "90 min"),
    (r"\b60 and 45 min", "105 min"),
    (r"\b60 and (\d\d) min", r"1 h \1 min"),
    (r"\b1 ?(?:hours?|hrs?|h)\b", "60 min"),
    (r"\b2 ?(?:hours|hrs|h)\b", "120 min"),
    *((rf"\b{hours} ?(?:hours|hrs|h)\b", f"{60 * hours} min") for hours in range(3, 9)),
    (r"(\d)[- ]?(?:minutes?|mins|mintues|minuts|m|')(?![a-z'])", r"\1 min"),
    (r"(\d)-min\b", r"\1 min"),
    (r"(\d)min", r"\1 min"),
    (r"\bmin ?/ ?(?:session|day|workout)\b", "min"),
    (rf"\bmin(?: {_EACH})+", "min"),
    (r"\b(?:with )?(\d+) min (?:is |are )?(?:kept |left |to )?spare\b", r", spare \1 mins,"),
    (r"\b(\d+) min (?:of )?warm[- ]?up\b", r", warm-up \1 mins,"),
    *(
        (rf"\b{n} min\b(?=[^0-9]*\bdouble that\b)(.*?)\bdouble that\b", rf"{n} min\g<1>{2 * n} min")
        for n in (20, 25, 30, 35, 40, 45, 60)
    ),
    (r"\bno more than (\d+ min)", r"\1"),
    (r"\b(?:a )?max(?:imum)?(?: of)? (\d+ min)|\b(\d+ min) (?:max(?:imum)?|at most|tops|or so)\b", r"\1\2"),
    (r"\b(?:up to|about|around|roughly|only|got|just|for|at|of|with|in|by|call it) (\d+ min)", r"\1"),
)
OF_DAYS: Final[Rewrites] = (
    (rf"\b(\d\d\d?) (?:on |every |at )*(?=(?:{_DAY})\b)", r"\1 min "),
    (rf"\b((?:{_DAY})(?:[ -](?:{_DAY}))*),? (?:at |in )?(?:the |a )?({_PLACE})[, ]+(\d+)(?: min)?\b", r"\1 \3 min \2"),
)
COUNTS: Final[Rewrites] = (
    (r"\b(push[ /,]+pull[ /,]+legs?) (?:twice|2 times|2 ?x)(?: through| over)\b", r"\1"),
    (rf"\b(\d) (\d\d\d? min) {_SESSIONS}\b(?: ?(?:{_WEEKLY}))*", r"\1 days x \2"),
    (r"(?:^|(?<=[,;.] ))days?, (\d)(?=[,.;]|$)", r"\1 days"),
    (r"\b(\d) full-body (?=workout|day|session)", r"\1 full body "),
    (r"\b(\d) (full body|upper|lower|push|pull|arms)(?: body)? (?:days?|sessions?|workouts?)\b", r"\1 days, \2 only"),
    (r"\b(?:ppl|push[ /]+pull[ /]+legs?) (?:twice|2 ?x|2 times) (?:a|per|each|every) week\b", "6 days, push pull legs"),
    (r"\bupper[ /]+lower (?:twice|2 ?x|2 times) (?:a|per|each|every) week\b", "4 days, upper lower"),
    (r"\b(\d) (?:dyas|dasy|das)\b", r"\1 days"),
    (r",? with (\d) rest days in between\b", r", \1 rest days between, any order"),
    (r"\b(?:once|1 x|1x|1 time) (?:a|per|each|every) week\b|\bonce weekly\b", "1 days"),
    (r"\btwice (?:a|per|each|every) week\b|\btwice weekly\b", "2 days"),
    (r"\bthrice (?:a|per|each|every) week\b|\bthrice weekly\b", "3 days"),
    (r"\b(\d) ?(?:x|times)? ?(?:/|per|a|each|every) ?(?:week|wk)\b", r"\1 days"),
    (r"\b(\d) ?(?:x|times) (?:weekly|wk|week)\b", r"\1 days"),
    (r"\b(\d) ?x(?=[,.;]|$)", r"\1 days"),
    (
        rf"\b(?:only |any |same |on |over |all )*(\d) (?:short |full |single |long |equal )*{_SESSIONS}(?: ?(?:{_WEEKLY}))*\b",
        r"\1 days",
    ),
    (r"\bdays? (\d)(?=[,.;]|$)", r"\1 days"),
    (r"\b(\d) days (?:a|per|each|every|/) ?(?:week|wk)\b|\b(\d) days weekly\b|\b(\d) days ?/ ?wk\b", r"\1\2\3 days"),
    (
        r"\bdaily\b|\bevery (?:single )?(?:day|(?:morning|evening|night)(?!.*\b(?:mon|tue|wed|thu|fri|sat|sun)\b))(?! except| but)\b|(?:^|(?<=[,;.] ))all week\b|\b7 days\b",
        "7 days",
    ),
    (r"\b(\d) days at (\d)", r"\1 days x \2"),
    (r"\btimes? (\d+) min\b", r"x \1 min"),
)
