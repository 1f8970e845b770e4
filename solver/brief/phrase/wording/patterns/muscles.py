"""Which muscles are to grow, to be held, left out or trained as usual, as whole clauses say it."""

from __future__ import annotations

from typing import Final

from setwright.solver.brief.phrase.wording.patterns.matching import Rows

_BIG: Final = (
    r"(?:bigger|wider|thicker|broader|stronger|larger|rounder|fuller|more|visible|big|wide|thick|strong|round)"
)
_TO_GROW: Final = (
    r"(?:grow|build(?: up)?|bring(?:ing)? up|develop|focus(?:s?ing|ed)?(?: more)? on|prioriti[sz]e|emphasi[sz]e|work on|"
    r"target|push up|add size to|put size on|concentrate on|speciali[sz]e in|improve|strengthen|put on)"
)
_FIRST: Final = (
    r"(?:first|up|above (?:all|everything)(?: else)?|over everything(?: else)?|over all else|more than (?:anything|"
    r"everything)(?: else)?|most(?: of all)?|as (?:a |the |my )?(?:top )?priority|volume|even more|at the top of the list)"
)
_MORE: Final = (
    r"(?:more|extra|additional|a little extra|a little more|a bit more|a bit extra|a lot|lots|plenty|most|priority|"
    r"emphasis|focus|(?:special |more |extra )?attention|growth|size)(?: (?:sets|work|volume|focus|attention))?"
)
_WEAK: Final = (
    r"(?:(?:my |the |his |her |a |our )?(?:main |biggest |number 1 |top |first |real |big |current )*"
    r"(?:priority|priorities|focus|weak(?:est)? (?:points?|spots?|links?|areas?)|weakness|goals?|emphasis|target|"
    r"problem areas?)|lagging(?: behind)?|(?:have |has )?(?:fallen |been left )?behind|what is missing|embarrassing|(?:too |very |so )?(?:small|tiny|skinny|weak)"
    r"|underdeveloped|most important)"
)
_AS_IT_IS: Final = (
    r"(?:ticking over|as (?:it is|they are|is)|the same|the way (?:it is|they are)|(?:at|in|on) (?:maintenance|hold)|"
    r"where (?:it is|they are)|steady|unchanged|going|in shape)"
)
GROWN: Final[Rows] = (
    (r"<want> <g> to grow (?:and|but) (?:my |the )?<g2> not(?: to)?", "grow {g}, normal {g2}"),
    (rf"(?:<want> )?(?:to )?(?:get|see|have) <g> (?:growing|to grow|going|{_BIG})", "grow {g}"),
    (rf"(?:<want> )?<my>(?:{_BIG}|{_BIG} and {_BIG}) <g>", "grow {g}"),
    (rf"<want> <g>(?: to (?:grow|catch up|(?:be|get|look|become) {_BIG}))?", "grow {g}"),
    (
        rf"(?:(?:<want>|to|can you|let us|goal is to|the goal is to|aim is to) )?{_TO_GROW} <g>(?: {_FIRST})?",
        "grow {g}",
    ),
    (rf"<g> (?:<be> )?{_WEAK}", "grow {g}"),
    (
        r"<g> (?:lags?(?: a bit| a little)? behind|lags?|matters? most(?: to me)?|(?:comes?|goes|<be>) (?:first|most important)|"
        r"(?:still )?(?:needs?|could use|could do with|deserves?|must|should|(?:has|have) to)"
        rf"(?: (?:to|some|a bit of|a little))*(?: (?:catch up|grow|growth|{_MORE}|love|first|priority|work)))",
        "grow {g}",
    ),
    (rf"<g> {_FIRST}", "grow {g}"),
    (rf"(?:put|get|train|do|place|bring|give|make|want|wants) <g> (?:{_FIRST}|bigger|{_MORE}|{_WEAK})", "grow {g}"),
    (rf"(?:<want> |give |with )?<my>{_MORE} (?:for|on|of|to) <g>", "grow {g}"),
    (r"(?:what|all|the (?:only )?thing)(?: that)? (?:i|he|she|we) (?:cares?|wants?)(?: about)? is <g>", "grow {g}"),
    (r"<g> (?:is|are) (?:all|what) (?:i|he|she|we) (?:cares?|wants?)(?: about)?", "grow {g}"),
    (rf"{_WEAK}(?: is| are)? (?:{_BIG} )?<g>", "grow {g}"),
    (rf"(?:{_BIG} )?<g> (?:would be|'d be) (?:nice|great|good|lovely)", "grow {g}"),
    (r"<g> (?:over|rather than|more than|before) <g2>", "grow {g}, normal {g2}"),
    (rf"(?:<want> )?(?:{_BIG} )?<g> (?:rather )?than (?:{_BIG} )?<g2>", "grow {g}, normal {g2}"),
)
HELD: Final[Rows] = (
    (r"<keep> <m> (?:to|at) (?:a |the )?(?:bare )?minimum", "hold {m}"),
    (r"<m> (?:a bit |a little )?less", "hold {m}"),
    (rf"(?:just )?(?:<want> )?<keep> <m>(?: {_AS_IT_IS})", "hold {m}"),
    (
        r"(?:just )?(?:<want> )?(?:to )?(?:keep|keeping|hold|holding|maintain|maintaining|preserve) <m>(?: strong)?",
        "hold {m}",
    ),
    (
        r"<m> (?:<be> )?(?:just |only )?(?:(?:on|at|in|to|for) )?(?:maintenance|hold|maintained|kept)(?: only)?",
        "hold {m}",
    ),
    (rf"<m> (?:can |should |to )?(?:stays?|remains?)(?: put| {_AS_IT_IS})", "hold {m}"),
    (r"(?:just |only )?(?:maintenance|maintain)(?: work)?(?: only)? (?:for|of|on) <m>", "hold {m}"),
    (
        r"(?:a bit |a little )?(?:less|fewer|smaller)(?: (?:sets|volume|work|focus|emphasis))*(?: (?:for|of|on))? <m>",
        "hold {m}",
    ),
    (r"do(?:es)? not need (?:much|a lot of|many sets (?:for|of)) <m>", "hold {m}"),
    (r"<m> (?:just |only )?enough to (?:keep|maintain|hold) (?:it|them)", "hold {m}"),
    (r"<m> gets? enough(?: work| already)*", "hold {m}"),
    (r"<m> (?:<be> )?(?:big|strong|good) enough (?:just )?(?:hold|maintain|keep) (?:it|them)", "hold {m}"),
)
LEFT_OUT: Final[Rows] = (
    (
        r"(?:no|skip|leave out|drop|forget|without|do not (?:train|do|want)|nothing for|exclude|not training|"
        r"no (?:training|sets|exercises) for|zero|ignore) <m>(?: (?:work|training|exercises|stuff|at all|completely))*",
        "no {m}",
    ),
    (r"<m> (?:not at all|can go|<be> out|none|zero|left out|not needed|get nothing|gets nothing|no)", "no {m}"),
    (r"(?:leave|keep|take) <m> out(?: of it)?", "no {m}"),
    (r"(?:do|does|could) not care (?:less )?about <m>", "no {m}"),
)
USUAL: Final[Rows] = (
    (r"<m>,? (?:equally|evenly|alike)", "normal {m}"),
    (r"not (?:just|only) <m> (?:but )?(?:the )?(?:whole|full|entire) body", "normal {m}"),
    (r"(?:strong points?|strengths?)(?: is| are)? <m>", "normal {m}"),
    (r"<m> (?:whatever|either way|(?:do|does) not matter)", "normal {m}"),
    (r"<m> (?:is|are) (?:strong|my strong points?)", "normal {m}"),
    (r"<m> (?:<be> )?(?:normal|as usual|at normal|as normal|fine|ok|okay|alright)", "normal {m}"),
    (
        r"(?:the rest|everything else|all else|the others)(?: (?:is|stays|can be|should be))? (?:normal|as usual|at normal|balanced)",
        "normal the rest",
    ),
    (
        r"(?:<keep> (?:the rest|everything(?: else)?|all(?: else| others)?)|(?:the rest|everything(?: else)?|all else)"
        rf"(?: is| stays)?(?: just)?)(?: (?:{_AS_IT_IS}|kept|held|hold|maintenance|maintained))",
        "hold the rest",
    ),
    (r"(?:keep|hold|maintain) (?:the rest|everything else|all else|all others)", "hold the rest"),
)
ALONE: Final[Rows] = (
    (r"(?:only|just|nothing but) (?!(?:upper|lower) body)<m>", "grow {m}, no the rest"),
    (r"(?!(?:upper|lower) body)<m> (?:only|and nothing else)", "grow {m}, no the rest"),
)
"""Nothing else is to be trained at all."""
NAMED: Final[Rows] = ((r"<m>", "grow {m}"),)
"""A muscle that is only named is one to grow."""
MUSCLES: Final[Rows] = (*ALONE, *USUAL, *HELD, *LEFT_OUT, *GROWN)
