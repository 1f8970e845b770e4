"""Lifts that are wanted or not, as people say it, in the words of the clauses."""

from __future__ import annotations

from typing import Final

from setwright.solver.brief.phrase.wording.numbers import Rewrites

LIFTS: Final[Rewrites] = (
    (r"\brather not(?: do)? ", "dislike "),
    (r"\b(?:the (?:one|1) thing )?i refuse to do,? ", "avoid "),
    (r"\b(?:leave|keep) ([a-z' -]+?) in(?=[,.;]|$)", r"like \1"),
    (r"\b(?:leave|take) ([a-z' -]+?) out(?=[,.;]|$)", r"avoid \1"),
    (r"\bswap ([a-z' -]+?) for ([a-z' -]+?)(?=[,.;]|$)", r"avoid \1, like \2"),
    (r"\bprefers? ([a-z' -]+?) over ([a-z' -]+?)(?=[,.;]|$)", r"like \1, dislike \2"),
    (
        r"(?:^|(?<=[,.;] ))([a-z' -]+?),? (?:yes|in|a must|has to be in there|every session|fine|ok|okay|is fine|are fine|is ok)(?=[,.;]|$)",
        r"like \1",
    ),
    (r"(?:^|(?<=[,.;] ))([a-z' -]+?),? (?:no|never|out)(?=[,.;]|$)", r"avoid \1"),
    (r"(?:^|(?<=[,.;] ))([a-z' -]+?) instead of ([a-z' -]+?)(?=[,.;]|$)", r"like \1, avoid \2"),
    (r"\bdo (?=[a-z])", "like "),
    (r"\bno jumping\b", "avoid jump squat and box jump"),
    (r"\bno (?:running|kipping)\b", ","),
    (r"\b(?:no|without|nothing) overhead(?: work| pressing)?\b(?! press| extension)", "avoid overhead press"),
    (
        r"\b(?:i |we |he |she )?(?:enjoy|enjoys|love|loves|am a big fan of|big fan of|like|likes|prefer|prefers) ",
        "like ",
    ),
    (
        r"\b(?:i |he |she )?(?:don't like|doesn't like|not a fan of|sick of|hate|hates|rather not do|refuse to do|scared of) ",
        "dislike ",
    ),
    (r"\b([a-z -]+?) (?:are|is) (?:out|not happening)(?=[,.;]|$)", r"avoid \1"),
    (r"\b([a-z -]+?) (?:are|is) (?:fun|my favourites?)(?=[,.;]|$)", r"like \1"),
)
