"""One clause of a sentence in the words of the clauses, parted at its joining words where it says several things."""

from __future__ import annotations

import re
from dataclasses import dataclass, field
from typing import Final

from setwright.solver.brief.phrase.lexicon import Kind, Lexicon
from setwright.solver.brief.phrase.wording.days.joining import TAKEN
from setwright.solver.brief.phrase.wording.patterns.asides import is_aside, is_empty, is_who
from setwright.solver.brief.phrase.wording.patterns.health import health_said
from setwright.solver.brief.phrase.wording.patterns.lifts import EXCEPTED, LIFTS
from setwright.solver.brief.phrase.wording.patterns.lifts import NAMED as NAMED_LIFTS
from setwright.solver.brief.phrase.wording.patterns.limits import limit_said
from setwright.solver.brief.phrase.wording.patterns.matching import Rows, in_full, said
from setwright.solver.brief.phrase.wording.patterns.muscles import MUSCLES
from setwright.solver.brief.phrase.wording.patterns.muscles import NAMED as NAMED_MUSCLES
from setwright.solver.brief.phrase.wording.patterns.people import person_said
from setwright.solver.brief.phrase.wording.patterns.places import place_said

_JOINS: Final = re.compile(
    r",? \b(?:and|but|so|because|since|as|while|plus|with|which|though|although|where|at|in|just|no(?= (?:rest-pause|drop|techniques)))\b "
)
_DAYS_SAID: Final = re.compile(
    r"\b\d ?x ?\d\d\d?(?: min)?(?: weekly)?(?![^\s,;.]| min| ?kg| ?lb)|\b\d days x \d+ min\b"
)
_NAMED_DAYS: Final = re.compile(r"(?:(?:mon|tue|wed|thu|fri|sat|sun)[ -])+\d+ min")
"""Days with their minutes; what stands beside them is left to the day clauses."""
_TRAILING: Final = re.compile(r"(?: (?:and|so|plus|with|from|for|on|at|in))+$")
"""What is left hanging where the days have gone to the front."""
SHUNNING: Final = ("no ", "avoid ", "without ", "dislike ")
"""How a clause begins that asks for something not to be."""
_CLEAR: Final = re.compile(r"(?:no|avoid|without|like|dislike|hold|grow|normal|bad|at|with) (.+)")
_ONLY: Final = re.compile(r"\b(?:only|just)\b")
LIFT_KINDS: Final[tuple[Kind, ...]] = ("exercise", "movement")
ITEM_KINDS: Final[tuple[Kind, ...]] = ("item",)
_KNOWN: Final[tuple[Kind, ...]] = ("muscle", "group", "item", "kit", "exercise", "movement")
_NEW_CLAUSE: Final = ("with", "in", "at", "just", "where", "because", "since", "as")
"""After these a name may stand alone; after and it goes on with what stands before."""
THING: Final[Rows] = (("<k>", "{k}"),)
"""A place or an item that is only named."""
_ALL_BUT: Final = ("all", "anything", "everything", "nothing", "none", "not", "no", "only")
"""Words that a joining word belongs to: nothing but squats."""
_ONLY_ONE: Final = re.compile(
    r"(?:(?:with|there is|they have|have|has) )*(?:only|just) 1 (.+?)(?: (?:(?:at|in) (?:my|the|our|this) gym|there))?"
)
_GYM: Final = re.compile(r"\bgym\b|\bthey have\b")
"""Only one rack is all there is at home, and in a gym the one that people wait for."""
_WHO_TRAINS: Final = ("athlete", "client", "trainee", "lifter")
"""Who the days may be said of: nobody else."""
_LONGEST: Final = 160
"""A clause with more letters is not parted further."""


@dataclass
class ClauseReader:
    """Reads the clauses of one sentence one by one, and keeps what they leave open."""

    lexicon: Lexicon
    whole: str
    over: list[str] = field(default_factory=list)
    """The clauses that were passed over, and weights that no week uses."""
    bare_lifts: bool = False
    """Whether lifts stand alone in a clause."""
    of_person: bool = False
    """Whether the last clause spoke of who trains, or of health."""
    places: list[bool] = field(default_factory=list)
    """Of each clause that names a place, whether it is all there is."""
    both: bool = False
    """Whether a thing stands alone that is a lift as well as an item: beside lifts it may be either."""

    def said(self, clause: str, alone: bool = True) -> str | None:
        """What a clause says, or its parts at a joining word where all of them say something; None where it is not known."""
        plain = in_full(clause)
        bare, taken = _without_mark(plain)
        if _NAMED_DAYS.fullmatch(bare):
            return bare
        for words in dict.fromkeys((bare, _TRAILING.sub("", bare))):
            if words != bare and _DAYS_SAID.fullmatch(words):
                return None
            if (found := self._one(words, alone, taken)) is not None:
                return found
        if len(plain) > _LONGEST:
            return None
        for join in _JOINS.finditer(plain):
            before, after = plain[: join.start()], plain[join.start() :].strip(" ,")
            if before.split()[-1:] and before.split()[-1] in _ALL_BUT:
                continue
            kept = len(self.over)
            first = self._one(_without_mark(before)[0], taken=TAKEN in before)
            alone = join[0].strip(" ,") in (
                *_NEW_CLAUSE,
                *(("but",) if self.lexicon.resolve(_last_name(first), ITEM_KINDS) else ()),
            )
            second = None if first is None else self.said(after, alone)
            if second is not None:
                apart = first and first.startswith(SHUNNING) and said(second, THING, self.lexicon)
                return ", ".join(part for part in (first, f"with {second}" if apart else second) if part)
            del self.over[kept:]
        return None

    def _one(self, clause: str, alone: bool = True, taken: bool = False) -> str | None:
        """What a clause that is not parted says; an empty text where it is an aside."""
        if is_empty(clause):
            return ""
        if _DAYS_SAID.fullmatch(clause):
            return clause
        of_muscles = limit_said(clause, self.whole, self.lexicon) or said(clause, MUSCLES, self.lexicon)
        of_person = None if of_muscles else person_said(clause) or health_said(clause, self.lexicon)
        if of_person:
            self.of_person = True
            return of_person
        self.of_person = is_who(clause)
        single = _ONLY_ONE.fullmatch(clause)
        if single and _GYM.search(self.whole) and self.lexicon.resolve(single[1], ITEM_KINDS):
            return f"single {single[1]}"
        if (clear := _CLEAR.fullmatch(clause)) and self.lexicon.resolve(clear[1], _KNOWN):
            return clause
        found = (
            of_muscles
            or (said(clause, NAMED_MUSCLES, self.lexicon) if alone else None)
            or said(clause, LIFTS, self.lexicon)
        )
        if found is not None:
            self.over += [] if found else [clause]
            return found
        bare_name = said(re.sub(r"^(?:and|plus|but|so) ", "", clause), THING, self.lexicon) is not None
        if (alone or not bare_name) and (place := place_said(clause, self.lexicon)):
            self.places += [] if place[0].startswith("without") else [_ONLY.search(clause) is not None]
            self.both = self.both or self.lexicon.resolve(clause, LIFT_KINDS) is not None
            self.over += [f"{place[1]}: the week names no loads"] if place[1] else []
            return place[0]
        if alone and (lifts := said(clause, (*EXCEPTED, *NAMED_LIFTS), self.lexicon)):
            self.bare_lifts = True
            return lifts
        if (not taken or clause in _WHO_TRAINS) and is_aside(clause):
            self.over.append(clause)
            return ""
        return None


def _without_mark(clause: str) -> tuple[str, bool]:
    """The clause without the marks of what was taken out of it, and whether there were any."""
    return " ".join(clause.replace(TAKEN, " ").split()), TAKEN in clause


def _last_name(said_before: str | None) -> str:
    """What a clause such as `without barbell` speaks of."""
    return (said_before or "").split(" ", 1)[-1]
