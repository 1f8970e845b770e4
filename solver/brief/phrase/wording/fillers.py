"""Words that say nothing of the week: greetings, reasons, where a day's hour falls; each goes out whole."""

from __future__ import annotations

from typing import Final

from setwright.solver.brief.phrase.wording.numbers import Rewrites

FILLERS: Final[Rewrites] = (
    (r"\b(?:hi|hello|hey)(?: there)?(?: so)?[,.]?\s", ""),
    (r"\b(?:coach'?s?|client'?s?) notes?,?", ""),
    (r"\bshort version,?", ""),
    (r"\b(no (?:nonsense|excuses|frills|fuss))\b", r", \1,"),
    (r"\beach 1\b", "each"),
    (r"(?:^|(?<=[,.;] ))(?:and |but |so )?(?:client |she |he |i )?(?:wants?|needs?|gets?) (?=\d ?(?:x|days))", ""),
    (r",? (?:whatever|with whatever|using whatever) (?:they|it) (?:have|has|got|have got)\b", ""),
    (r"(?:^|(?<=[,.;] ))(?:i |he |she |we )?can only (?:do|manage|train|come) (?=\d)", ""),
    (r"(?:^|(?<=[,.;] ))(?:i am |i'm )?(?:coaching|training|planning for) (?=(?:an? )?\d\d[- ]?(?:year|yo\b|y/o))", ""),
    (r"(?:,? for )(someone|somebody) who (?=cycles|runs|walks|swims|climbs|rides|travels|sits|works)", r", \1 who "),
    (
        r"\b(?:(?:the|my|our) )?(?:kids?|baby|twins|toddler|son|daughter) (?:naps?|sleeps?|(?:is|are) (?:at|in) (?:school|nursery|class|bed)) "
        r"(?=[^.]*\b(?:that|which) (?:gives|leaves) (?:me|us)\b)",
        "",
    ),
    (r"\b(gym)(?: that)? has everything\b", r"\1"),
    (r"\b(?:please|pls|thanks|thank you|cheers)\b", ","),
    (
        r"\b(?:can you |could you )?(?:plan|write|make|build|give)(?: me| us| him| her)?(?: something| a (?:week|plan|programme|program))?(?: for)?(?= \d)",
        "",
    ),
    (
        r"\b(?:i|we|he|she|client|they)(?:'ve| have|'s| has|'ve got| have got| has got| can do| can train| can lift| can| train| trains| lift| lifts| got)(?: got| only| just| do| train| lift| come)*(?= (?:\d+ (?:min|days|x)|\d ?x ?\d|mon|tue|wed|thu|fri|sat|sun))",
        ",",
    ),
    (
        r"\b(?<!time )(?<!new to )(?<!back to )(?<!start )(?<!back into )(?<!light )(?<!lighter )(?<!heavy )(?<!heavier )(?<!free )(?:lifting|lift|lifts|train|training|strength|weights|gym days)(?: on)?,?(?= (?:mon|tue|wed|thu|fri|sat|sun|\d+ min|\d days)\b)",
        ",",
    ),
    (r"(?:^|(?<=[,.;] ))(?:time|days|sessions|minutes),(?= (?:mon|tue|wed|thu|fri|sat|sun|\d))", ","),
    (r"\bback to (?:training|lifting)(?=,? \d)", ","),
    (r"\bby the way,?|\bon shifts?\b", ","),
    (r",? so (?:please )?(?:put|do|train|hit) (?:them|it|those) first\b", ""),
    (r"\bi travel (?:a lot )?(?:for work )?so(?: only)?\b|\bi work nights so mornings only\b", ","),
    (r"\b(?:recently )?joined (?:a|the|my) (?:new )?gym(?: (?:last|this) (?:week|month))?\b", "gym"),
    (r"\b(?:staying|living) (?:in|at) a hotel\b|\btheir (?:little|small|tiny) gym\b", "hotel gym"),
    (
        r"\b(?:trains?|lifts?|work(?:s|ing)? out) (?:together )?with (?:his|her|my|a|their) (?:wife|husband|partner|friend|girlfriend|boyfriend|son|"
        r"daughter|mate)\b",
        ",",
    ),
    (r"\bno gym,? (?=(?:and )?no (?:kit|equipment)\b)", ""),
    (
        r"(?<=[a-z]) \(?(?:cycling|running|football|rowing|climbing|my sport) (?:takes care of|covers) (?:that|those|them|it)\)?",
        "",
    ),
    (r"\bat the end(?: of (?:every|each|the) session)?\b", ""),
    (
        r"(?<=[a-z])(?:,)? (?:in|since) (?:19|20)\d\d\b|\b\d+ (?:years|months|weeks) ago\b|\bsince last \w+\b|\blast year\b|(?<=postpartum), \d months",
        "",
    ),
    (
        r"\b(?:well controlled|all the time|desk job|right side|both sides)\b",
        ",",
    ),
    (r"(?<=min) (?:a|per|each|in the) week\b(?! in total)", " weekly"),
    (r"\b(?:before|after) (?:work|school run|school|uni|the school run|breakfast|dinner)\b", ""),
    (r"\b(?:at |in |during |over )?(?:the |my |a )?lunch(?:time| breaks?| hour)?\b", ""),
    (r"\bin the (?:mornings?|evenings?|afternoons?)\b|\b6 am\b", ""),
    (r"\bi don't mind which\b|\bdoesn't matter which\b|\bwhichever\b", ""),
    (
        r"\bnothing (?:during the week|mon-fri|fancy|extreme)\b|\ba bit of everything\b|\bno other sport\b|\bkeep it simple\b",
        ",",
    ),
    (r"\bthat's (?:it|all(?: i've got)?)\b|\ba single long session\b|\ba bonus\b", ","),
    (r"\bincl(?:uding|\.)? (?:the )?warm[- ]?up\b", ","),
    (
        r"\bthis (?:week|month|block)\b|\bon the road\b|\btravelling\b|\bwhatsoever\b|\bof any (?:kind|sort)\b|\bfor (?:me|him|her)\b",
        "",
    ),
    (r"\bhotel rooms?, (?=(?:only |just )?(?:bands|dumbbells|kettlebells?)\b)", ""),
    (r"\bliving room\b|\bin the flat\b|\bflat\b", ","),
    (r"\b(?:a|the) (?=(?:pair|set) of\b)", ""),
    (r"\b(?:pair|set) of (?=dumb|db|kettle)", ""),
    (
        r"\bi own\b|\bmy kit\b|\bi've got\b(?= (?:dumb|a b|band|kettle))|\bi have\b(?= (?:a|an|dumb|band|kettle|one|\d) )",
        ",",
    ),
)
LEFT_OVER: Final[Rewrites] = (
    (
        r"(?:^|(?<=[,.;] ))(?:and |but |so )*(?:i'm free(?: on)?|free on|i can manage|i only have|looking (?:to|for)|working out|i work out|i travel a lot so|i play|coach)(?: in| at)?(?: an?| the| my)?(?=[ ,.;]|$)",
        "",
    ),
    (r"(?:^|(?<=[,.;] ))(?:and |but |so )*(?:can|just|for|i|and i|so)(?=[,.;]|$)", ""),
    (r"(?:^|(?<=[,.;] ))to (?=grow|build|bring)", ""),
    (r"(?:^|(?<=[,.;] ))(?:he|she|i|we|client) (?:also )?(?:plays?|has|goes|does|do)(?=[,.;]|$)", ""),
    (r"\b(?<!the )(?<!my )(?:main |my )?(?:goal|aim)(?: is| to)?,? ", ""),
    (r"\b(?:regular|normal|ordinary) (?=(?:commercial )?gym)", ""),
    (r"\bjust (?=want|keep|maintain|bodyweight|dumbbells|bands)", ""),
    (r"(?<=[,;.] )(?:sessions|slots|weekly|spread|/ ?day|x|/|days|in total)(?=[,.;]|$)", ""),
    (r"^(\d\d\d?) x (\d)$", r"\2 x \1 min"),
    (r"\bclient comes(?: in)?\b|\bpt slot\b", ","),
)
"""What is left of a sentence when its days and minutes have gone to the front."""
