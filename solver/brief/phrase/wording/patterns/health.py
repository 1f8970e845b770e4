"""Sore joints and conditions as whole clauses say them; always taken as a caution, never as a diagnosis."""

from __future__ import annotations

import re
from typing import Final

from setwright.solver.brief.phrase.lexicon import Lexicon
from setwright.solver.brief.phrase.wording.patterns.names import names_of

_JOINTS: Final = {
    "shoulder": "shoulder",
    "rotator cuff": "shoulder",
    "elbow": "elbow",
    "wrist": "wrist",
    "hip": "hip",
    "knee": "knee",
    "ankle": "ankle",
    "achilles": "ankle",
    "neck": "neck",
    "lower back": "lower back",
    "low back": "lower back",
    "back": "back",
}
_IDS: Final = ("shoulder", "elbow", "wrist", "hip", "knee", "ankle", "neck", "lower-back")
"""Cautions that are of the present: who had a bad back may have none now."""
_JOINT: Final = rf"(?:{'|'.join(sorted(_JOINTS, key=len, reverse=True))})"
_SIDE: Final = r"(?:(?:my|the|his|her|a|an|both|left|right|old|1|one|some|2|two|of|was|is|am|are)\s+)*"
_NAMED: Final = rf"{_SIDE}(?P<joints>{_JOINT}s?(?:(?: and | or |, ){_SIDE}{_JOINT}s?)*)"
_A_BIT: Final = (
    r"(?:(?:a|bit|a bit|little|still|often|sometimes|very|quite|slightly|somewhat|always|kind of|all|occasionally)\s+)*"
)
_SORE: Final = (
    r"(?:hurts?|hurting|sore|painful|ach(?:y|ing|es?)|pains?|stiff|dodgy|iffy|tender|creaky|click(?:s|y|ing)?|bad|"
    r"troubles?(?: me)?|problems?|problematic|issues?|injur(?:y|ies|ed)|acts? up|acting up|plays? up|playing up|"
    r"flar(?:es?|ing) up|unstable|irritated|inflamed|swollen|grumpy|cranky|tweaked|strained|sprained|dislocated|weak|"
    r"arthritis|arthritic|bothers? (?:me|him|her)|niggles?|trouble|tendonitis|tendinitis|sensitive)"
)
_WHEN: Final = (
    r"(?: (?:sometimes|now and then|at times|a lot|lately|these days|at the moment|since \w+|all the time|again|"
    r"(?:when|if) (?:i|he|she) [a-z ]+|(?:after|from|on|with|in|at) (?!now|the past)[a-z-]+(?: [a-z]+){0,2}))*"
)
_OF_JOINTS: Final = tuple(
    re.compile(rf"(?:and |but |i |he |she |have |has |got |with |so |because |also |as |since )*{pattern}")
    for pattern in (
        rf"{_NAMED} (?:is |are |feels? |gets? |has been |have been |be |have |has )?{_A_BIT}{_SORE}(?: and {_A_BIT}{_SORE})*{_WHEN}",
        rf"{_SIDE}{_A_BIT}{_SORE} (?:in |with |of |on )?{_NAMED}{_WHEN}",
        rf"(?:because of|due to|given|thanks to|on account of) {_NAMED}",
        rf"(?:careful with|careful of|protect|look after|take care of|watch|mind|go easy on) {_NAMED}",
    )
)
_REPLACED: Final = tuple(
    re.compile(
        rf"(?:(?:and|i|he|she|have|has|had|got|with|a|(?:my |our |the )?(?:new )?client|am|is|recovering from|after) )*{pattern}"
    )
    for pattern in (
        rf"{_SIDE}(?P<joint>hip|knee|shoulder)s? (?:was |were |is |are |got |has been |have been )?replaced(?: [a-z0-9 ]+ ago| in \d+| last [a-z]+)?",
        rf"{_SIDE}(?P<joint>hip|knee|shoulder)s? replacements?(?: [a-z0-9 ]+ ago| in \d+)?",
    )
)
_SURGERY: Final = re.compile(
    rf"(?:(?:and|i|he|she|have|has|had|am|is|was|just|recently|recovering from|after|a|an|recent) )*(?P<joint>{_JOINT}) (?:surgery|operation|op)"
    r"(?: last \w+| in \d{4}| \d+ (?:weeks|months|years) ago| recently)*"
)
_BY_A_LIFT: Final = re.compile(
    rf"(?:(?:and|but|so|because) )*(?P<lifts>.+?) (?:hurts?|bothers?|aggravates?|irritates?|kills?|is hard on|are hard on|is bad for|are bad for) {_NAMED}"
)
_LIKES_NOT: Final = re.compile(
    rf"(?:(?:and|but|so|because) )*{_NAMED} (?:(?:do|does) not (?:like|love|enjoy)|hates?|can not (?:take|stand|handle)|"
    r"(?:clicks?|hurts?|aches?|pinches|complains?) (?:on|in|with|during|about)) (?P<lifts>.+?)"
    r"(?:,? so (?:please )?(?:leave|keep) (?:those|them|it) out)?"
)
"""A joint that does not take a lift: my knees do not like deep squats."""
_CONDITION: Final = re.compile(
    r"(?:(?:doctor|doc|gp|physio|surgeon|says|said|(?:my|our|the|new) client|client|woman|man|lady|guy|old|and|but|i|he|she|have|has|had|got|with|a|an|am|is|are|takes?|taking|on|suffers? from|diagnosed with|recovering "
    r"from|mild|slight|some|the|my|living with|history of|currently|\d+ (?:weeks|months|wks)|was|because|of|being|just|new mum|new mom|trains|struggles) )*"
    r"(?P<condition>[a-z0-9' -]+?)"
    r"(?:,? (?:now and then|at times|sometimes|flares? up(?: now and then| sometimes)?|well controlled|under control|"
    r"in (?:(?:my|the|his|her|both|big|left|right) )*(?:lower back|low back|back|neck|knees?|hips?|toes?|feet|foot|hands?|fingers)|(?:is )?mild|client|lifter|trainee|"
    r"in \d{4}|last (?:year|month|week|spring|autumn|summer|winter)|"
    r"\d+ (?:years|months|weeks) ago|fitted|diagnosed|at the moment))*"
)
_OTHERWISE: Final = {
    "stent": "coronary stent",
    "get dizzy": "dizziness",
    "get dizzy on the stairs": "dizziness",
    "chest hurts": "chest pain",
    "dizzy": "dizziness",
    "herniated disk": "herniated disc",
    "slipped disk": "slipped disc",
    "blood pressure is high": "high blood pressure",
    "had a baby": "gave birth",
    "her baby": "gave birth",
    "off training": "long break",
    "ms": "multiple sclerosis",
    "eds": "ehlers-danlos",
    "type 1 diabetic": "type 1 diabetes",
    "type 2 diabetic": "type 2 diabetes",
    "bones are thinning": "thin bones",
    "had a child": "gave birth",
    "post c-section": "c-section",
    "post caesarean": "c-section",
    "gout in big toe": "gout",
}
_INACTIVE: Final = re.compile(
    r"(?:i |he |she |we |just |am |is |are )*(?:(?:have|has) not (?:trained|lifted|exercised|worked out|been to the gym) (?:for|in) "
    r"(?:\d+|a few|many|several|a couple of|some) (?:years?|months)|(?:have|has) not (?:trained|lifted|exercised) (?:for|in) a long time|"
    r"(?:getting |coming )?back (?:into|to|in) (?:lifting|training|the gym|it)?\s*after (?:a |an |\d+ |some )?(?:long )?"
    r"(?:years?|months|break|layoff|year)(?: off)?|returning (?:to (?:lifting|training|the gym) )?after (?:a |an |\d+ )?(?:long )?"
    r"(?:years?|months|break|layoff)(?: off)?|\d+ (?:years|months) off)"
)
_BABY: Final = re.compile(
    r"(?:(?:(?:and|but) )?(?:i|she|(?:my |our |the )?(?:new )?client)(?: (?:have|has|only|just|recently))* )?had (?:a|my|her) (?:(?:first|second|third|new) )?baby"
    r"(?: (?:[a-z0-9 ]+ ago|in [a-z0-9]+|last [a-z]+|recently))?"
)
_PREGNANT: Final = re.compile(
    r"(?:i |she |and |am |is |currently )*(?:\d\d? (?:weeks|wks|months) )?pregnant(?:,? (?:in )?(?:wk|week) \d\d?)?"
)


def health_said(clause: str, lexicon: Lexicon) -> str | None:
    """The cautions of a clause; None where it speaks of no joint or condition that is known, or denies one."""
    for pattern in _OF_JOINTS:
        if found := pattern.fullmatch(clause):
            joints = re.findall(_JOINT, found["joints"])
            return ", ".join(f"bad {_JOINTS[joint]}" for joint in dict.fromkeys(joints))
    for pattern in _REPLACED:
        if found := pattern.fullmatch(clause):
            return f"{found['joint']} replacement"
    if found := _SURGERY.fullmatch(clause):
        if re.search(r"\byears ago|\bin \d{4}", clause):
            return f"bad {_JOINTS[found['joint']]}"
        return f"recent surgery, bad {_JOINTS[found['joint']]}"
    if _INACTIVE.fullmatch(clause):
        return "long break"
    if _BABY.fullmatch(clause):
        return "gave birth"
    if _PREGNANT.fullmatch(clause):
        return "pregnant"
    by = _BY_A_LIFT.fullmatch(clause) or _LIKES_NOT.fullmatch(clause)
    if by and (lifts := names_of("l", by["lifts"], lexicon)):
        joints = re.findall(_JOINT, by["joints"])
        return ", ".join(
            [f"avoid {' and '.join(lifts)}", *(f"bad {_JOINTS[joint]}" for joint in dict.fromkeys(joints))]
        )
    found = _CONDITION.fullmatch(clause)
    if not found:
        return None
    condition = _OTHERWISE.get(found["condition"], found["condition"])
    known = lexicon.resolve(condition, ("caution",))
    once = re.search(r"\bhad\b", clause) is not None and known is not None and known[1] in _IDS
    alone = once or condition.removesuffix("s") in _JOINTS or lexicon.resolve(condition, ("muscle", "group"))
    return condition if known and not alone else None
