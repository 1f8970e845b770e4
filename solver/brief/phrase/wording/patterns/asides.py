"""Clauses about everyday life that ask for nothing: they are passed over, and the brief says which they were."""

from __future__ import annotations

import re
from typing import Final


def _set_of(words: str) -> frozenset[str]:
    """The words of a line."""
    return frozenset(words.split())


_SMALL: Final = _set_of(
    "just a an and am are around as at be been being but by can come comes could do does for from get gets go goes "
    "going got has have he her here him his i in into is it its just let lot me my of on our out per said say "
    "says she so some still that the their them then there they this to too us we what when where which who while "
    "will with would you your also because since though although really quite very rather now today currently "
    "about during before after between up each every such well ok okay fine good great nice better happy glad "
    "lovely best busy tired late early thing things stuff something one"
)
"""Words that hold a sentence together, and those that praise or complain."""
_PLANNING: Final = _set_of(
    "able available looking usually often sometimes mostly mainly always free manage train trains training lift "
    "lifts lifting work-out workout workouts session sessions slot slots gym-goer plan program programme week "
    "weekly day days time times schedule split routine block phase visit visits exercise exercising want wants "
    "need needs hoping love help helps please thanks thank cheers hi hello hey coach regards morning mornings "
    "evening evenings night nights noon afternoon afternoons lunch lunchtime client trainee member notes note "
    "summary version make write give build put send x spread total"
)
"""Words of asking for a plan: beside the days and minutes, which are read elsewhere, they say nothing."""
_LIFE: Final = _set_of(
    "kid kids child children baby son daughter twins toddler wife husband partner girlfriend boyfriend mum mom "
    "dad mother father parent parents family grandmother grandfather friend friends dog dogs cat neighbour "
    "neighbours neighbor neighbors colleague colleagues boss job jobs work works worked working shift shifts "
    "night-shift nurse teacher student driver engineer programmer accountant lawyer farmer cook chef waiter "
    "manager salesman clerk carpenter plumber electrician police officer firefighter fireman retired pensioner "
    "employed self-employed freelance freelancer commute commuting travel travels travelling traveling road trip "
    "trips train plane city town village country exam exams class classes holiday holidays summer winter spring "
    "autumn weather rain all straight posture life lifestyle stress stressed stressful sleep sleeps sleeping "
    "asleep badly nap naps wake wakes bed coffee tea breakfast dinner sit sits sitting stand stands meeting "
    "meetings birthday wedding party photos photo mirror t-shirt shirt jeans dress beach look looks feel feels "
    "keen motivated motivation excited fun enjoy enjoys hobby joined joining moved moving started membership "
    "budget door-to-door walk walks walking car bus bike weekend-warrior below above upstairs downstairs here "
    "mate roommate flatmate bro nonsense excuses fancy crazy trainer straightforward simple honest "
    "whatever shifts coaching"
)
"""Words of family, work and home. None of kit, bodies, health, amounts or lifts stands here: with one of those a clause is
never an aside."""
_ASIDE: Final = _SMALL | _PLANNING | _LIFE
_SAYING_NO: Final = frozenset(
    ("no", "not", "never", "without", "only", "except", "nor", "neither", "none", "nothing", "cancelled")
)

_LIKING: Final = re.compile(
    r"\bcan spare\b|\bis all (?:i|we|he|she|they) (?:can|could|have|has|got|get)(?: (?:manage|do|spare|give|to give))?\b|\bcan only (?:do|manage|come|spare|train)\b|"
    r"\b(?:that|this|which) (?:gives|leaves) (?:me|us|him|her)\b|\b(?:would|'d) like(?: to)?\b|\blike to\b"
)
_WHO: Final = re.compile(
    r"(?:(?:a|an|the|my|our|new|old|young|busy|retired|male|female|keen|former|ex|off-season|lunch|break|total|gym|strength|personal|"
    r"masters|school|college|student|proud|working|night-shift|desk|office|football|handball|basketball|rugby|tennis|hockey|i am|she is|he is|am|is) )*"
    r"(?:client|man|woman|lady|guy|gentleman|male|female|mum|mom|mother|dad|father|parent|lifter|athlete|player|rower|runner|footballer|"
    r"swimmer|cyclist|climber|worker|nurse|teacher|coach|bro|person)(?: of \d)?(?: here)?|(?:(?:i am|he is|she is|am|is) )?(?:just )?old"
)
"""Who somebody is: a mother of 3, a desk worker, a rower."""
_NO_FUSS: Final = re.compile(
    r"upper chest (?:is|feels) (?:fine|ok|okay|good)|(?:a )?(?:small|slim|narrow) waist|(?:and |but )?(?:a |the |my )?(?:good|healthy|sound) (?:shoulders?|knees?|hips?|elbows?|wrists?|ankles?|neck|back)|"
    r"(?:and )?no (?:nonsense|excuses|frills|fuss)|(?:want |wants )?(?:to )?(?:stay|keep|get|be) (?:in shape|fit|healthy)"
)
_ACTIVE: Final = re.compile(
    r"(?:for )?(?:someone|somebody|a (?:person|client|woman|man)) who (?:cycles|runs|walks|swims|climbs|rides|travels|sits|works)(?: (?:a lot|much|often|daily))*"
)
"""What somebody does otherwise, without its weekdays."""
_HANGING: Final = re.compile(
    r"(?:.* )?(?:but|except|not|or|than|before|after|since|until|till|between|instead|from|to)|(?:.* )?with (?:her|him|them|it|you)"
)
"""Words that belong to something before them."""
_AT_WORK: Final = re.compile(
    r"\bon (?:my|his|her|their|our) feet(?: all (?:day|week))?\b|\ball (?:day|week) long\b|\b(?:sits?|stands?|sitting|standing) (?:all (?:day|week)|a lot)\b|\b(?:desk|office) (?:job|work(?:er)?)\b|\b(?:works?|sits?|sitting|working) (?:in|at) (?:an office|a desk|the office)(?: all (?:day|week))?\b|"
    r"\b(?:after|before|between) (?:school|uni|college|university|lectures)\b"
)
_SOMEBODY_ELSE: Final = re.compile(
    r"(?:(?:and|but|my|our|the|his|her|a) )*(?:kids?|son|daughter|wife|husband|partner|girlfriend|boyfriend|mum|mom|dad|mother|father|"
    r"friend|friends|mate|mates|brother|sister|colleagues?|roommate|boss|neighbours?)(?:'s)? (?:and i )?(?:does|do|trains?|lifts?|goes|can|"
    r"has|have|did|is|are|wants?|gets?|will|would|could|works? out)\b|"
    r"(?:(?:and|but|my|our|the|his|her|a) )*(?:wife|husband|partner|girlfriend|boyfriend|friends?|mates?|brother|sister|colleagues?)$"
)
"""A week of somebody else is no aside: it may be what the days were said of."""


def is_empty(clause: str) -> bool:
    """Whether only words are left that hold a sentence together or ask for a plan."""
    if _HANGING.fullmatch(clause):
        return False
    return all(word in _SMALL or word in _PLANNING for word in _words(_LIKING.sub(" ", clause)))


def is_who(clause: str) -> bool:
    """Whether a clause only says who somebody is: a new client, a desk worker."""
    return _WHO.fullmatch(clause) is not None


def is_aside(clause: str) -> bool:
    """Whether each word is one of everyday life, so that passing the clause over cannot change what is asked."""
    if _NO_FUSS.fullmatch(clause) or _ACTIVE.fullmatch(clause) or is_who(clause):
        return True
    words = _words(_AT_WORK.sub("job", clause))
    if _SOMEBODY_ELSE.match(clause) or _HANGING.fullmatch(clause):
        return False
    return bool(words) and not _SAYING_NO & set(words) and all(word in _ASIDE for word in words)


def _words(clause: str) -> list[str]:
    return re.findall(r"[^\s,;.()/&]+", clause)
