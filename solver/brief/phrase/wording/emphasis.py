"""Which muscles are to grow, to be held or left out, as people say it, in the words of the clauses."""

from __future__ import annotations

from typing import Final

from setwright.solver.brief.phrase.wording.numbers import Rewrites

_WANT: Final = r"(?:i |we |he |she |client |and )?(?:want|wants|would like|'d like|'d love|need|needs|wanna|love)(?: to)?(?: (?:get|have|grow|build|bring up))?"
EMPHASIS: Final[Rewrites] = (
    (r"\bnever skip\b", "grow"),
    (r"\b(?:hit|train) (?=[a-z ]+ (?:\d days|on \d days))", ""),
    (r"\b(?:everything|whole body|all muscles) (?:evenly|equally)\b|\bthe whole body\b", ","),
    (r"\bwhat (?:i|he|she) cares? about is\b", "grow"),
    (r"\b([a-z]+(?: and [a-z]+)?) can go(?=[,.;]|$)", r"no \1"),
    (r"\bglute\b(?![ -](?:bridge|ham|kick|drive))", "glutes"),
    (r"\bab(?= work)", "abs"),
    (r"\bno (?:direct )?lower back work\b", "no spinal erectors"),
    (r"\bno (?:direct )?([a-z]+) work\b", r"no \1"),
    (r"(?<=[a-z]) too(?=[,.;]|$)", ""),
    (
        r"\b(?:leave out|skip|drop(?![ -]?sets?)|zero|no direct|i couldn't care less about|don't care about|nothing for(?: the)?|forget|none)(?: direct)?(?: the)? ([a-z]+(?: and [a-z]+)?)(?: work)?(?: completely)?(?=[,.;]|$)",
        r"no \1",
    ),
    (
        r"\b([a-z']+(?: (?!and\b)[a-z']+)?(?: and [a-z']+)?) (?:lag(?:s|ging)?(?: behind)?|needs? work|emphasis|first|up|focus(?:sed|ed)?|priority|bigger|wider|stronger)(?=[,.;]|$| \d)",
        r"grow \1",
    ),
    (
        r"\b(?:maintain|keep|hold) (?:everything|all)\b(?! else)|\b(?:all|everything) else (?:just kept|at maintenance|on hold)\b|\bleave the rest as it is\b",
        "hold the rest",
    ),
    (r"\bi want my ([a-z ]+?) to grow\b", r"grow \1"),
    (r",? (?:but )?(?<!rather )not (?!a fan|just|happening|in |on )(?=[a-z])", ", no "),
    (rf"\b{_WANT} (?:a |my |his |her )?(?:bigger|wider|thicker|broader|stronger|big|strong|larger|grow)\b", ", grow"),
    (r"\b(?:bigger|wider|thicker|broader|larger|boulder|thick|wide|capped)\b(?= [a-z])", "grow"),
    (
        r"\b(?:bring(?:ing)? up|build(?:ing)?(?: up)?(?: a)?(?: strong(?:er)?)?|prioriti[sz]e|priority (?:is|are|on)|focus(?:sed|ed)?(?: on)?(?: the)?|grow(?: only)?(?: the| my)?)\b",
        "grow",
    ),
    (r"\b([a-z ]+?) (?:are|is) (?:the |my )?(?:focus|priority|lagging|weak|what's missing|a priority)\b", r"grow \1"),
    (
        r"\b(?:keep|leave|hold|maintain)(?: the| my)? ([a-z]+(?: and [a-z]+)?) (?:ticking over|as (?:it is|they are)|the same|at maintenance|where (?:it is|they are)|on hold)\b",
        r"hold \1",
    ),
    (
        r"\b([a-z]+(?: and [a-z]+)?) (?:on|at|in) (?:maintenance|hold)\b|\b([a-z]+(?: and [a-z]+)?) (?:stays? where (?:it is|they are)|just kept|take a back seat|hold)(?=[,.;]|$)",
        r"hold \1\2",
    ),
    (r"\b(?:less|a bit less|fewer|smaller focus on) (?=[a-z])", "hold "),
    (r"\bhams\b", "hamstrings"),
    (r"\b(?:bis|bi's)\b", "biceps"),
    (r"\b(?:tris|tri's)\b", "triceps"),
    (r"\b(?:bum|butt|booty|backside)\b", "glutes"),
    (r"(?<!inner )\bthighs\b", "legs"),
    (r"\bposterior chain\b", "glutes and hamstrings and spinal erectors"),
    (r"\b(?:six|6)-pack\b", "abs"),
)
