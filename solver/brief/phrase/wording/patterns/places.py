"""What there is to train with, as whole clauses say it: we have a rack and a barbell in the shed."""

from __future__ import annotations

import re
from typing import Final

from setwright.solver.brief.phrase.lexicon import Lexicon
from setwright.solver.brief.phrase.wording.patterns.matching import Rows, said

_ROOM: Final = (
    r"(?:(?:at|in|inside|from|on|by|to|down) )?(?:(?:the|my|our|a|his|her|their|mum's|dad's|parents') )*(?:(?:small|little|tiny|"
    r"local|big|old|holiday|spare|own|work|school|college|uni|office|apartment|company|hotel|home|garage|calisthenics|"
    r"outdoor|chain|club|community) )*"
    r"(?:garage|basement|shed|cellar|living room|bedroom|flat|apartment|house|home|park|office|studio|suitcase|door|"
    r"doorway|gardens?|yard|backyard|room|loft|attic|kitchen|box|place|setup|set-up|gym|bag|door frame)"
)
_SOME: Final = (
    r"(?<![\w.-])(?:(?:a|an|the|my|our|some|one|1|2|two|single|pair of|pairs? of|set of|couple of|few|light|heavy|old|good|adjustable|"
    r"standard|small|pair|full set of|just|only|basic|proper)\s+)+(?=[a-z])"
)
_PLAINER: Final = (
    (
        re.compile(
            r"\bdumb-?bells? (?:(?:that |which )?(?:go|goes) )?(?:up to|to|max(?:imum)?|of up to) (\d+(?:\.\d+)?) ?(kg|lbs?|kilos?|pounds)?"
        ),
        r"dumbbells to \1 \2",
    ),
    (
        re.compile(r"\bdumb-?bells? (?:of )?\d+(?:\.\d+)?(?: ?(?:-|to|and) ?)(\d+(?:\.\d+)?) ?(kg|lbs?)"),
        r"dumbbells to \1 \2",
    ),
    (re.compile(r"\b(?:2 |two )?(?<![\d.])(\d+(?:\.\d+)?) ?(kg|lbs?) dumb-?bells?"), r"dumbbells to \1 \2"),
    (re.compile(_SOME), ""),
    (re.compile(r"^(?:at |from |in )?home (?:with|using) (?!dumbbells$)"), ""),
)
"""Numbers of things and their looks go out; how heavy the dumbbells are stays."""
_UNUSED: Final = re.compile(
    r"\(?\b(?:\d+(?: ?(?:x|and|,) ?\d+)? ?(?:kg|kilos?|lbs?)(?: of)? (?=(?:kettlebells?|plates?)\b)|(?<=kettlebell )\(?(?:\d+ ?x ?)?\d+(?: and \d+)? ?(?:kg|kilos?|lbs?)\)?|"
    r"(?<=kettlebells )\(?(?:\d+ ?x ?)?\d+(?: and \d+)? ?(?:kg|kilos?|lbs?)\)?)"
)
"""Weights that no week uses: of kettlebells and of plates."""
_NOT_A_PAIR: Final = re.compile(r"\b(?:1|a single|single) (?:\d+ ?kg )?dumb-?bell\b")
_WEIGHT: Final = re.compile(r"dumbbells (to \d+(?:\.\d+)? ?(?:kg|lbs?|kilos?|pounds)?)")
_THERE: Final[Rows] = (
    (rf"(?:(?:at|in|from) )?{_ROOM} (?:with|has|has got|have|having|only has)(?: only| just)? <k>", "{k}"),
    (r"<k>", "{k}"),
    (rf"(?:<have> |all (?:i|we|he|she) (?:have|has|own) is )?<k>(?: {_ROOM})?", "{k}"),
    (
        rf"(?:<have> |only |just |nothing but |at |in |using )?<k>(?: {_ROOM})?(?: only| to use| there| available| to work with)?",
        "{k}",
    ),
    (rf"(?:trains?|lifts?|works? out|training|am|is|are|<be>) (?:{_ROOM} )?(?:with|using|on) <k>(?: {_ROOM})?", "{k}"),
    (rf"<k> {_ROOM}", "{k}"),
)
_ABSENT: Final[Rows] = (
    (
        rf"(?:{_ROOM} )?(?:no|without|there is no|there are no|there is not|(?:do|does) not have|has not got|have not got|minus|lacks?|"
        rf"they do not have|gym has no|it has no|has no|have no|got no) <i>(?: (?:there|here|where i (?:go|train)|at (?:my|the) "
        rf"gym|available|{_ROOM}))?",
        "without {i}",
    ),
    (r"(?:anything|everything|all) (?:but|except)(?: for)? <i>", "without {i}"),
    (r"<i> (?:is|are) (?:always |usually )?(?:broken|taken|missing|not there|out of order)", "without {i}"),
)
_WHOLE: Final = (
    (
        re.compile(
            r"(?:(?:at|in|to|have|go to|otherwise|train at|member of|in a|it is|access to) )*(?:(?:a|the|my|our|an|big|small|"
            r"full|normal|regular|ordinary|local|chain|commercial|usual|well-equipped|fully equipped|proper|school|club|"
            r"university|uni|work|public|nice|good) )+gym(?: (?:membership|with everything|has everything|(?:near|close to|next to|by) (?:(?:my|the) )?(?:work|home|house|office|me|station)))?"
        ),
        "commercial gym",
    ),
    (
        re.compile(
            rf"(?:{_ROOM} )?(?:(?:i|we|he|she) )?(?:(?:have|has|there is|with|got|using|use|without) )*(?:(?:(?:no|zero|any) (?:equipment|kit|gear|weights))"
            r"(?: (?:at all|there|whatsoever))*|nothing (?:there|to train with))"
        ),
        "no equipment",
    ),
)


def place_said(clause: str, lexicon: Lexicon) -> tuple[str, str] | None:
    """What there is or is not, with the weights that no week uses; None where the clause says nothing of it."""
    if _NOT_A_PAIR.search(clause):
        return None
    bare = _UNUSED.sub(" ", clause)
    unused = ", ".join(weight.strip(" ()") for weight in _UNUSED.findall(clause))
    for whole, words in _WHOLE:
        if whole.fullmatch(" ".join(bare.split())):
            return words, unused
    if (absent := said(" ".join(bare.split()), _ABSENT, lexicon)) is not None:
        return absent.replace(" and ", " or "), unused
    for pattern, plain in _PLAINER:
        bare = pattern.sub(plain, bare)
    weight = _WEIGHT.search(bare)
    if weight:
        bare = bare.replace(weight[1], "", 1)
    found = said(" ".join(bare.split()), _THERE, lexicon)
    if not found:
        return None
    found = found.replace("home with dumbbells", "dumbbells") if " and " in found else found
    heavy = f"dumbbells {weight[1].strip()}" if weight else "dumbbells"
    return re.sub(r"\b(?:dumbbells?|dbs?)\b", heavy, found, count=1) if weight else found, unused
