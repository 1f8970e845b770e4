"""Lifts that are wanted, shunned or put in place of others, as whole clauses say it."""

from __future__ import annotations

from typing import Final

from setwright.solver.brief.phrase.wording.patterns.matching import Rows

_END: Final = (
    r"(?: (?:in|in there|in it|in the plan|in my plan|every week|each week|of any (?:kind|sort)|at all|from the plan|"
    r"whatsoever|thanks|instead|in(?: the)? season))*"
)
_CANNOT: Final = r"(?:can not|do not|does not|will not|would not|should not|is not allowed to|am not allowed to)"
_PAIRS: Final[Rows] = (
    (r"(?:likes? |prefers? )?free weights (?:to|over|rather than|instead of) machines", "dislike machines"),
    (
        r"(?:do not|does not|will not|would rather not)(?: want to)? (?:use|do|go on|touch) (?:any )?machines|no machine work|nothing on machines|"
        r"without (?:any )?machines|not on machines",
        "no machines",
    ),
    (
        r"(?:am |is )?(?:not comfortable with|not (?:a )?(?:fan of|keen on)|scared of|afraid of|nervous about) (?:the )?free weights",
        "dislike barbell and dumbbells",
    ),
    (r"<i>(?: work| exercises)? (?:rather than|instead of|over) <i2>", "like {i}, dislike {i2}"),
    (r"(?:likes?|loves?|prefers?|enjoys?) (?:the )?machines", "like machines"),
    (r"must (?:have|include|contain) <v>", "must {v}"),
    (r"(?:swap|replace|exchange|change) <l> (?:for|with|by) <l2>", "avoid {l}, like {l2}"),
    (r"(?:<want> )?(?:prefers? |do |use |have )?<l> (?:instead of|in place of) <l2>", "like {l}, avoid {l2}"),
    (r"(?:<want> )?(?:prefers? |do |use |have )?<l> (?:rather than|over|to) <l2>", "like {l}, dislike {l2}"),
    (r"only <l> (?:and )?no other <l2>", "no {l2} but {l}, like {l}"),
    (r"no <l> (?:just|only) <l2>", "avoid {l}, like {l2}"),
)
_SHUNNED: Final[Rows] = (
    (
        rf"(?:no|avoid|skip|without|leave out|drop|exclude|no more|nothing|not doing|stay away from|keep away from|"
        rf"steer clear of|{_CANNOT}(?: (?:do|program|include|want|train|give me|put in))?) <l>{_END}",
        "avoid {l}",
    ),
    (
        r"(?:no|avoid|nothing)(?: (?:heavy|free))?(?: weights?)? (?:over|above) (?:my|the|his|her) (?:head|shoulders)",
        "avoid overhead press",
    ),
    (r"(?:leave|keep|take) <l> out(?: of (?:it|the plan|there))?", "avoid {l}"),
    (
        r"<l> (?:<be> )?(?:out|off|off limits|not happening|not allowed|banned|forbidden|a no|a no go|a no-go|not)",
        "avoid {l}",
    ),
    (r"<l> (?:scares?|frightens?|terrif(?:y|ies)|bores?) (?:me|him|her)", "dislike {l}"),
    (r"<l> (?:hurts?|bothers?|kills?|aggravates?|irritates?)(?: me| him| her)?", "avoid {l}"),
    (
        r"(?:hates?|dislikes?|do not (?:like|enjoy|love)|does not (?:like|enjoy|love)|can not stand|(?:am |is )?not (?:a )?"
        r"(?:big )?(?:fan of|keen on|fond of|into|big on)|no fan of|(?:am |is )?sick of|(?:am |is )?bored of|(?:am |is )?"
        r"tired of|(?:am |is )?scared of|(?:would )?rather not do|refuses? to do|detests?|loathes?) (?:doing )?<l>",
        "dislike {l}",
    ),
)
_WANTED: Final[Rows] = (
    (r"(?:do|does) not mind <l>", ""),
    (r"<l> (?:is|are)", "like {l}"),
    (
        r"(?:<want> )?(?:include|add|keep|use|do|put in|throw in|leave in|prefers?|likes?|loves?|enjoys?|adores?|(?:am |is )?"
        r"(?:a )?(?:big )?fan of|(?:am |is )?fond of|must (?:have|include|do)|get better at|(?:get|make) (?:me|him|her) (?:better|stronger|good) at|keep doing|want|wants)"
        rf"(?: doing)? <l>{_END}",
        "like {l}",
    ),
    (
        r"<l>,? (?:<be> )?(?:a must|must|musts|in|welcome|good|fine|ok|okay|great|fun|allowed|preferred|yes|a yes|needed|wanted|"
        r"(?:my |her |his )?favou?rites?|my favou?rite (?:lift|exercise)s?|every (?:session|week|time)|(?:has|have) to be "
        r"(?:in|in there|in it)|possible|no problem|instead|not a problem)",
        "like {l}",
    ),
    (r"(?:my |her |his )?favou?rite (?:lift|exercise)s? (?:is|are) <l>", "like {l}"),
    (r"(?:likes?|loves?|enjoys?|prefers?) <i>(?: work| exercises| lifts| stuff)?", "like {i}"),
)
EXCEPTED: Final[Rows] = ((r"(?:anything|everything|all) (?:but|except)(?: for)? <l>", "avoid {l}"),)
"""What an item of the same name is taken for first: everything but a leg press."""
NAMED: Final[Rows] = ((r"<l>", "like {l}"),)
"""A lift that is only named is liked."""
LIFTS: Final[Rows] = (*_PAIRS, *_SHUNNED, *_WANTED)
