"""What a sentence asks of every set, its rest, reserve and seconds, or of a session's exercises, taken out of it."""

from __future__ import annotations

import re
from functools import cache
from typing import Final

_START: Final = r"(?:^|(?<=[,.;(]) ?|(?<= )(?:and|but|with|plus|so) |(?<=, )(?:and |but |so )?)"
_END: Final = r"(?= ?(?:[,.;)]|$)| and (?!rest)| but | please| so )"
_WHO: Final = (
    r"(?:(?:i|we|he|she|they|(?:my |the |our )?client)(?:'d| would|'m| am| is)? (?:want|wants|like|likes|love|prefers?|need|needs|used to)?"
    r"(?: to)? ?)?(?:(?:please|always|just|can you|keep|take|takes|have|having|use|using|do|doing|leave|leaves|with|want|wants|like|likes|"
    r"prefers?|my|the|all|only) )*"
)
_REST: Final = r"(?:rests?(?: periods?| times?| intervals?| breaks?)?|resting|breaks|pauses)"
_UNIT: Final = r"(?P<unit>s|secs?|seconds?|\"|min|mins|minutes?|m)"
_NUMBER: Final = r"(?P<n>\d+(?:\.\d+)?)"
_TIME: Final = rf"(?:{_NUMBER} ?{_UNIT}|(?P<one>a|1 full|one) minute|(?P<half>half a minute|30 sec))"
_BETWEEN: Final = (
    r"(?: (?:in )?between(?: (?:the |my |all )?(?:sets|exercises))?| after (?:each|every|a) set| (?:per|a|each) set)?"
)
_MOST: Final = r"(?:at most|at the most|no longer than|not longer than|no more than|not more than|(?:a )?max(?:imum)?(?: of)?|up to|under|below|less than)"
_LEAST: Final = r"(?:at least|at the least|no less than|not less than|(?:a )?min(?:imum)?(?: of)?|over|more than)"
_OF: Final = r"(?: (?:is|are|be|of|for|should be|to be|times?))*"
_RESTS: Final = (
    (rf"{_REST}{_OF} {_MOST} {_TIME}{_BETWEEN}", "most"),
    (rf"{_REST}{_OF} {_TIME} (?:max(?:imum)?|at most|tops|or less){_BETWEEN}", "most"),
    (rf"{_REST}{_OF} {_TIME}{_BETWEEN} (?:max(?:imum)?|at most|tops|or less)", "most"),
    (rf"(?:rest )?{_MOST} {_TIME}(?: of)? {_REST}{_BETWEEN}", "most"),
    (rf"no {_REST} (?:longer than|over|above) {_TIME}{_BETWEEN}", "most"),
    (rf"{_TIME}(?: of)? {_REST}{_BETWEEN},? (?:max(?:imum)?|at most|tops|or less)", "most"),
    (rf"{_TIME}(?: of)? {_REST}{_BETWEEN},? (?:min(?:imum)?|at least|or more)", "least"),
    (rf"{_REST}{_OF} {_LEAST} {_TIME}{_BETWEEN}", "least"),
    (rf"{_REST}{_OF} {_TIME}{_BETWEEN} (?:min(?:imum)?|at least|or more)", "least"),
    (rf"{_LEAST} {_TIME}(?: of)? {_REST}{_BETWEEN}", "least"),
    (rf"{_REST}{_OF}(?: between)? (?P<low>\d+) ?(?:-|to|and) ?{_NUMBER} ?{_UNIT}{_BETWEEN}", "range"),
    (rf"(?P<low>\d+) ?(?:-|to) ?{_NUMBER} ?{_UNIT}(?: of)? {_REST}{_BETWEEN}", "range"),
    (rf"{_REST}{_OF} {_TIME}{_BETWEEN}", "exact"),
    (rf"{_TIME}(?: of)? {_REST}{_BETWEEN}", "exact"),
    (rf"(?:short|shorter|brief|quick) {_REST}{_BETWEEN}|{_REST}(?: (?:is|are|to be))? (?:short|brief)", "short"),
    (rf"(?:long|longer|full|generous) {_REST}{_BETWEEN}|{_REST}(?: (?:is|are|to be))? (?:long|generous)", "long"),
)
_SCOPE: Final = (
    r"(?: (?:(?:on|in|of|at the end of|for) )?(?:everything|(?:every|each|all|any)(?: of)?(?: the| my)? (?:sets?|lifts?|exercises?)|always|throughout|"
    r"at all times|every time))?"
)
_KEPT: Final = r"(?P<n>[1-9])"
_RESERVE: Final = (
    rf"(?:stop(?:s|ping)? )?(?:at least |min(?:imum)? )?{_KEPT}(?:(?: ?- ?| to | or ){'{}'})?(?: more)? ?(?:reps?|repetitions?)? "
    r"(?:in (?:the tank|reserve|hand)|left(?: in the tank)?|(?:shy|short) of failure|(?:before|from|away from) failure)"
).format(r"(?P<n2>\d+)")
_EFFORT: Final = (
    rf"{_RESERVE}{_SCOPE}",
    rf"(?:at least |min(?:imum)? )?{_KEPT}(?: ?(?:-|to) ?(?P<n3>\d+))? rir(?: at least| or more| minimum)?{_SCOPE}",
    rf"rir (?:of |is |at least |min(?:imum)? )?{_KEPT}(?: ?(?:-|to) ?(?P<n4>\d+))?(?: at least| or more| minimum)?{_SCOPE}",
)
_RPE: Final = (
    rf"(?:(?:up to|at most|max(?:imum)?|no more than) )?rpe (?:of |at most |up to |max |under )?(?:(?P<low>\d) ?(?:-|to) ?)?{_KEPT}"
    rf"(?: at most| max(?:imum)?| tops)?{_SCOPE}"
)
_NOT_TO_FAILURE: Final = (
    r"nothing (?:all the way )?to failure|(?:never|not|don't|do not|no need to|without)(?: (?:go|going|train|training|lift|lifting|push|pushing|take|taking|get))?"
    r"(?: (?:anything|sets?|it|everything))?(?: all the way| right)? to failure|no (?:training |sets |lifting |work |going |lifts )?(?:to )?failure(?: training)?|"
    r"avoid(?:s|ing)? (?:going to |training to )?failure|stop(?:ping)? (?:short of|before|shy of) failure|(?:short|shy) of failure|something in the tank"
)
_NEAR_FAILURE: Final = r"(?:everything |all sets |every set |each set )?(?:to )?(?:train |training |work |go |push )?(?:hard,? )?(?:is |are )?(?:close|near|fairly close) to failure(?: (?:on|in) (?:everything|every set|all sets))?"
_TO_FAILURE: Final = (
    r"(?:(?:push|go|going|train|training|do|work|bring) )?(?:(?:the )?(?:last|final) set(?: (?:of|on|in) (?:everything|(?:each|every|all)(?: the)? (?:lifts?|exercises?)))?|"
    r"everything|all (?:my |the )?sets|every set|each set|all exercises)? ?(?:(?:is|are|goes|go|all the way|right|up|done) )*to failure(?: (?:on|in|at) (?:everything|every set|all sets|the last set(?: of (?:each|every|all) (?:lifts?|exercises?))?))?"
)
"""What no week plans, as every set keeps a repetition or more in reserve."""
_LOWER: Final = (
    r"heavy (?:singles|doubles|triples|fives|sets of (?:3|4|5|three|five))(?: (?:and|or) (?:doubles|triples|fives|sets of (?:3|4|5)))?|"
    r"sets of (?:[3-6]|[3-5] ?(?:-|to) ?[5-8])(?: reps?)?(?: only)?"
)
_HIGHER: Final = r"(?:sets of )(?:1[2-9]|2\d)(?: ?(?:-|to) ?(?:1[5-9]|2\d|30))?(?: reps?)?(?: only)?"
_SLOW: Final = (
    r"(?:slow|controlled|strict)(?:(?: and|,) (?:slow|controlled|strict))? (?:reps?|repetitions|form|technique)"
)
_TEMPO: Final = rf"{_NUMBER} ?(?:s|secs?|seconds?) (?:a|per|each|for (?:a|each|every)) rep(?:etition)?|(?:each|every|a) rep(?:etition)? (?:takes|lasts|should take|of) {_NUMBER.replace('<n>', '<n5>')} ?(?:s|secs?|seconds?)"
_EXERCISES: Final = (
    rf"(?:at most|no more than|not more than|max(?:imum)?(?: of)?|up to) {_NUMBER} (?:exercises|lifts) (?:a|per|each|every|in a) (?:day|session|workout|time|visit)|"
    rf"{_NUMBER.replace('<n>', '<n6>')} (?:exercises|lifts) (?:max(?:imum)?|at most|tops) (?:a|per|each|every) (?:day|session|workout)|"
    rf"(?:at most|no more than|max(?:imum)?) {_NUMBER.replace('<n>', '<n7>')} (?:exercises|lifts)"
)
_WHOLE: Final = 10
"""An effort of 10 on the scale by repetitions in reserve leaves none (Zourdos et al. 2016, J Strength Cond Res 30; from memory)."""


def without_sets_asked(text: str) -> tuple[str, list[str], list[str]]:
    """The text without what it asks of every set, that in the words of the clauses, and what was passed over."""
    clauses: list[str] = []
    for pattern, kind in _RESTS:
        text, rests = _taken(text, pattern)
        clauses += [_rest_words(kind, found) for found in rests]
    kept: list[int] = []
    for pattern in _EFFORT:
        text, left = _taken(text, pattern)
        kept += [int(found["n"]) for found in left]
    text, efforts = _taken(text, _RPE)
    kept += [_WHOLE - int(found["n"]) for found in efforts]
    text, short = _taken(text, _NOT_TO_FAILURE)
    kept += [1] if short and not kept else []
    text, near = _taken(text, _NEAR_FAILURE)
    text, failed = _taken(text, _TO_FAILURE)
    for pattern, reps in ((_LOWER, "lower reps"), (_HIGHER, "higher reps")):
        text, said = _taken(text, pattern)
        clauses += [reps] if said else []
    text, tempos = _taken(text, _TEMPO)
    clauses += [f"{found['n'] or found['n5']} seconds a rep" for found in tempos]
    text, counts = _taken(text, _EXERCISES)
    clauses += [f"at most {found['n'] or found['n6'] or found['n7']} exercises a day" for found in counts]
    clauses += [f"at least {reps} rir" for reps in dict.fromkeys(kept)]
    text, slow = _taken(text, _SLOW)
    over = [f"{found[0].strip(' ,')}: no time is said, write for example 5 seconds a rep" for found in slow]
    over += [f"{found[0].strip(' ,')}: sets end with few repetitions in reserve" for found in near]
    over += [
        f"{found[0].strip(' ,')}: not planned, each line of the week says how many repetitions its sets leave"
        for found in failed
    ]
    return text, clauses, over


def _taken(text: str, pattern: str) -> tuple[str, list[re.Match[str]]]:
    """The text without each whole clause that fits, and what was found."""
    compiled = _compiled(pattern)
    return compiled.sub(", ", text), list(compiled.finditer(text))


@cache
def _compiled(pattern: str) -> re.Pattern[str]:
    """A pattern of a whole clause, with who says it before it."""
    return re.compile(rf"{_START}{_WHO}(?:{pattern}){_END}")


def _rest_words(kind: str, found: re.Match[str]) -> str:
    """A rest in the words of the clauses, in seconds."""
    if kind in ("short", "long"):
        return f"{kind} rests"
    if kind == "range":
        times = 60 if found["unit"].startswith("m") else 1
        return f"rest {round(int(found['low']) * times)}-{round(float(found['n']) * times)} s"
    seconds = _seconds(found)
    return {"most": "rest at most", "least": "rest at least", "exact": "rest"}[kind] + f" {seconds} s"


def _seconds(found: re.Match[str]) -> int:
    """The seconds of a rest as it is said."""
    if found["one"]:
        return 60
    if found["half"]:
        return 30
    return round(float(found["n"]) * (60 if found["unit"].startswith("m") else 1))
