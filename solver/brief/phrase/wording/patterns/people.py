"""Who trains, how long already, and how it is to be: ages, experience, goals and pairs as whole clauses say them."""

from __future__ import annotations

import re
from functools import cache
from typing import Final

_PERSON: Final = (
    r"(?:(?:my |our )(?=(?:new )?client)|)(?:(?:a|an|the|new|old|young|older|busy|office|desk|retired|female|male|school|uni|college|full-time|keen|"
    r"hobby|former|ex|recreational|competitive|total|complete|absolute)\s+)*"
    r"(?:client|man|woman|lady|guy|mum|mom|dad|mother|father|person|nurse|teacher|student|worker|lifter|athlete|male|female|"
    r"gentleman|grandmother|grandfather|grandma|grandad|driver|engineer|programmer|footballer|runner|player|gym bro|bro|f|m|"
    r"cook|chef|farmer|carpenter|accountant|lawyer|doctor|electrician|plumber|parent|boy|girl|"
    r"(?:[a-z]+ )?player|lifter)"
)
_ROWS: Final = (
    (
        rf"(?:{_PERSON},? )?(?:am |is |aged? |age |turned |just turned )*(\d\d)(?: years? old| years? of age| y/?o| yrs?(?: old)?| y)?(?: {_PERSON})?",
        r"age \1",
    ),
    (rf"(?:am |is )?(?:a |an )?(\d\d)[- ](?:years?|yr)[- ]old(?: {_PERSON})?(?: of \d)?", r"age \1"),
    (rf"(?:am |is )?(?:a |an )?(?:age )(\d\d) {_PERSON}(?: of \d)?", r"age \1"),
    (r"(?:am |is )?(\d\d) and (?:fit as a fiddle|fit|healthy|still fit|in good shape)", r"age \1"),
    (
        r"(?:am |is )?(?:(?:brand |completely |totally |quite |fairly )?)new to (?:lifting|the gym|weights|training|this|"
        r"weight training|strength training)|(?:have )?never (?:lifted|touched)(?: (?:a weight|weights|before|anything))*|"
        r"(?:have )?never (?:been to|set foot in) a gym(?: before)?|(?:complete|total|absolute) (?:beginner|novice)|"
        r"(?:am |is )?(?:a |an )?(?:complete |total |absolute )*(?:beginner|novice)(?: lifter)?|(?:want|wants) to start(?: lifting)?|"
        r"just (?:started|starting)(?: out| lifting)?|starting out",
        "beginner",
    ),
    (r"(?:am |is )?(?:a |an )?(advanced|intermediate)(?: lifter| trainee)?", r"\1"),
    (
        r"(?:have )?(?:been )?(?:lifting|training|trained|lifted)(?: seriously| regularly)?(?: for)? (?:about |over |more than |around )?(?:1\d|2\d|3\d) years|"
        r"(?:am |is )?(?:an? )?(?:very )?experienced(?: lifter| trainee)",
        "advanced",
    ),
    (
        r"(?:have )?(?:been )?(?:lifting|training)(?: seriously| regularly)? for (?:about |around )?[2-4] years",
        "intermediate",
    ),
    (
        r"(?:(?:train|trains|lift|lifts|training|work out|am|is) )?(?:(?:mostly |all )?(?:by (?:myself|himself|herself)|on my own|"
        r"alone|solo)|without a (?:spotter|partner)|(?:have |has )?no (?:spotter|training partner)|there is no spotter|nobody (?:to )?spots?"
        r"(?: me)?)(?: (?:at home|here))?",
        "alone",
    ),
    (
        r"(?:am |is )?(?:short|pressed|tight) (?:on|of|for) time|time is (?:short|tight|limited|scarce)|(?:have |has )?(?:not (?:much|a lot of)|"
        r"little|limited) time|(?:get |want )?(?:the )?most (?:from (?:it|them|my time|every minute)|out(?: of)?(?: it| my time| the time| them)?|bang for (?:the|my) buck)|(?:as )?"
        r"time[- ]efficient(?: as possible)?|(?:<want>)?(?:keep it |make it )?(?:as )?(?:quick and )?efficient(?: as possible)?",
        "efficient",
    ),
    (
        r"(?:(?:want|wants|would like|goal is|aim is|my goal is|the goal is|trying|looking) )?(?:to )?(?:get |be |become |grow |build |put on |gain |add )?(?:as "
        r"(?:muscular|big|much muscle|much size|much mass)(?: as (?:possible|i can|he can|she can))|(?:some |more |a lot of |maximum |max )?(?:muscle(?: mass)?|size|mass)|"
        r"bigger|hypertrophy|muscle growth|(?:maximum|max|most) (?:muscle|size|growth))|(?:muscle )?growth(?: (?:is the goal|focus|please))?|"
        r"hypertrophy(?: focus)?|(?:to )?grow as much as possible|get bigger",
        "growth",
    ),
    (
        r"(?:just )?(?:want |wants )?(?:enough )?(?:to )?(?:keep|maintain|hold on to) (?:what (?:i|he|she) (?:have|has)|(?:my|the|his|her) muscles?(?: i have)?)",
        "minimum dose",
    ),
    (
        r"(?:just )?(?:want |wants )?(?:a )?balanced(?: (?:training|week|plan|programme|program))?|otherwise balanced",
        "balanced",
    ),
    (
        r"(?:pair(?:ing)?(?: up)?|supersett?(?:ing)?)(?: (?:the|my|some|most))*(?: (?:exercises|lifts|sets|things|stuff|everything))?"
        r"(?: up)?(?: (?:to save time|if it saves time|where possible|is fine|is ok|is good|welcome))*|(?:like|likes|love|loves|enjoy|want|use|do) (?:doing )?supersets|supersets? "
        r"(?:(?:are |is )?(?:ok|okay|fine|welcome|good|great|yes|allowed|everything|all)|please|wanted)|with supersets",
        "with pairs",
    ),
    (
        r"(?:no|without|hate|hates|dislike|dislikes|do not (?:do|like|want)|does not (?:do|like|want)|not|skip|can not do|avoid) "
        r"(?:supersets|pairs|paired sets|supersetting|pairing)(?: please)?|1 exercise at a time",
        "no pairs",
    ),
    (
        r"(?:no|nothing (?:that|which)|not|avoid) (?:hogs?|hogging|blocks?|blocking|(?:takes?|taking)(?: up)?|uses?|using|needs?|"
        r"occupying) 2 (?:stations|machines|things|pieces of kit)(?: at once)?",
        "no pairs",
    ),
    (r"drop sets (?:are )?(?:not|out|no|off)", "no techniques"),
    (r"light(?:er)? weights?(?: (?:and|but|for) (?:high|higher|more) reps)?", "higher reps"),
    (r"heav(?:y|ier) weights?(?: (?:and|but|for) (?:low|lower|fewer) reps)?", "lower reps"),
    (r"(?:go(?:ing)? for )(?:maximum|max|most) (?:growth|muscle|size)", "growth"),
    (
        r"(?:low|lower|few|fewer) rep(?:s|etitions)(?: work)?|heavy (?:weights )?(?:and |with )?low(?:er)? reps",
        "lower reps",
    ),
    (r"(?:high|higher|more|many) rep(?:s|etitions)(?: work)?", "higher reps"),
    (
        r"(?:the )?gym (?:is|gets) (?:always |too |very |so )*(?:busy|rammed|heaving|packed|crowded|full)(?: (?:then|after work|at that time))?",
        "gym, busy",
    ),
)
_WHO: Final = (
    r"(?:(?:and|but|so|also|because|since|as|then) )*(?:(?:i|we|he|she|you|they|(?:my |the |new |our )*client) )?"
)


@cache
def _compiled(pattern: str) -> re.Pattern[str]:
    return re.compile(f"{_WHO}(?:{pattern.replace('<want>', 'want to |want ')})")


def person_said(clause: str) -> str | None:
    """The age, experience, goal or way of training of a clause; None where it says none of them."""
    for pattern, words in _ROWS:
        if found := _compiled(pattern).fullmatch(clause):
            return found.expand(words)
    return None
