"""What each clause of a sentence says, in the words of the clauses; asides are taken out and told."""

from __future__ import annotations

import re
from collections.abc import Iterator
from typing import Final

from setwright.solver.brief.phrase.lexicon import Kind, Lexicon
from setwright.solver.brief.phrase.wording.clause_reader import ITEM_KINDS, LIFT_KINDS, SHUNNING, THING, ClauseReader
from setwright.solver.brief.phrase.wording.days.joining import TAKEN
from setwright.solver.brief.phrase.wording.patterns.lifts import NAMED as NAMED_LIFTS
from setwright.solver.brief.phrase.wording.patterns.matching import in_full, said
from setwright.solver.brief.phrase.wording.patterns.muscles import NAMED as NAMED_MUSCLES

_IN_BRACKETS: Final = re.compile(r"\((?:bad )?(shoulder|elbow|wrist|hip|knee|ankle|neck|back)s?\)")
"""A joint in brackets is the reason of what stands before it."""
_A_ROOM: Final = re.compile(r"\b(?:gym|garage)$")
"""A whole place does not go on with things that are not there."""
_BARE_VERB: Final = re.compile(r"\b(?:is|are)(?: (?:because|for now|now|at the moment|still)\b.*)?$")
"""`squats are not happening, leg curls are`: a verb alone says the opposite of what stands before it, at the end only."""
_NUMBER: Final = re.compile(r"(?:(?:and|so|but) )*\d+")
"""An age only beside what is said of a person; anywhere else it may be minutes."""
_HOLD_THEM: Final = re.compile(r"(?:(?:and|but|so) )*(?:just )?(?:hold|maintain|keep) (?:it|them)")
_THEY_HURT: Final = re.compile(
    r"(?:because )?(?:they|it|that|those|these) (?:just )?(?:kills?|hurts?|bothers?|bores?|scares?) (?:me|him|her)"
)
_NOTHING_ELSE: Final = re.compile(r"(?:and )?nothing (?:else|more)|(?:and )?that(?:'s| is) (?:all|it)")
_OF_HEALTH: Final = re.compile(
    r"waiting for (?:the|an|her|his|my) (?:operation|op|surgery)|clearance (?:is )?(?:pending|to follow|asked for)|(?:wk|week) \d\d?|"
    r"cleared by (?:my|her|his|the|a) \w+|(?:(?:i|he|she) )?(?:(?:have|has|had|got|with|is|am|was) )*(?:(?:the|an|a) )?(?:all[- ]clear|ok|okay|go-ahead|clearance|cleared|green light) "
    r"(?:from|by|of|for (?:lifting|training|exercise) (?:from|by)) (?:(?:my|her|his|the|a|our) )?(?:doctor|doc|gp|physio|physiotherapist|surgeon|midwife|cardiologist|consultant)|tires? (?:quickly|easily)|"
    r"(?:(?:my|the|his|her) )?(?:doc|doctor|gp|physio|cardiologist|surgeon) (?:says|said) (?:that )?light (?:weights|lifting|training) (?:(?:is|are) )?(?:ok|okay|fine|allowed|good)|used to lift (?:heavy|a lot|regularly)|\d+ years(?: of (?:lifting|training))?"
)
"""What goes on with a person or a condition and changes nothing of it; clearance is asked for where it is needed."""
_FINE_NOW: Final = re.compile(
    r"(?:(?:but|and|my|the|his|her|it) )*(?:(?:knee|hip|shoulder|elbow|wrist|ankle|neck|back)s? )?(?:is|are|feels?) (?:fine|ok|okay|good|better)(?: (?:now|again|these days))*"
)
"""What is said after a condition, which stays a caution: it may come back."""
_OF_BODY: Final = re.compile(
    r"\b(?:health|healthy|tires?|cleared|clearance|caution|knees?|hips?|shoulders?|elbows?|wrists?|ankles?|neck|back)\b"
)
_MUSCLE_KINDS: Final[tuple[Kind, ...]] = ("muscle", "group")


def _wanted_by_a_verb(clause: str, said_plainly: str | None) -> bool:
    """Whether a lift is wanted by no more than a bare `is` or `are`."""
    return (said_plainly or "").startswith("like ") and _BARE_VERB.search(clause) is not None


def of_health(passed_over: str) -> bool:
    """Whether a clause that was passed over tells of somebody's health."""
    return (_OF_HEALTH.fullmatch(passed_over) or _OF_BODY.search(passed_over)) is not None


class Sayings:
    """A sentence in plainer words, clause by clause."""

    def __init__(self, lexicon: Lexicon, whole: str) -> None:
        self.whole = whole
        self.reader = ClauseReader(lexicon, whole)

    @property
    def over(self) -> tuple[str, ...]:
        """The clauses that were passed over, and weights that no week uses."""
        return tuple(self.reader.over)

    def plainer(self) -> str:
        """The whole sentence, a clause that says nothing known as it is written; empty where it may mean two things."""
        clauses: list[str] = []
        waiting = _clauses(self.whole)
        while waiting:
            marked = waiting.pop(0)
            clause = " ".join(marked.replace(TAKEN, " ").split())
            if not clause:
                continue
            if self._goes_on(clause, clauses):
                return ""
            if _NUMBER.fullmatch(clause) and not self.reader.of_person:
                clauses.append(clause)
                continue
            if clauses and self._repeats(clause, clauses[-1]):
                continue
            found = self.reader.said(marked)
            if _wanted_by_a_verb(clause, found) and (waiting or not clauses or not clauses[-1].startswith("avoid ")):
                found = None
            both = self.reader.said(f"{marked} {waiting[0]}") if found is None and waiting else None
            if both is not None and not _wanted_by_a_verb(f"{clause} {waiting[0]}", both):
                found = both
                waiting.pop(0)
            clauses.append(clause if found is None else found)
        unclear = (self.reader.bare_lifts and self.reader.both) or (
            len(self.reader.places) > 1 and any(self.reader.places)
        )
        return "" if unclear else ", ".join(self._apart([clause for clause in clauses if clause]))

    def _apart(self, clauses: list[str]) -> Iterator[str]:
        """The clauses; what is there, after what is liked, is told apart from it: like pull-ups, with bands."""
        before = ""
        for clause in clauses:
            liked = before.split(", ")[-1].startswith(("like ", "dislike "))
            yield f"with {clause}" if liked and said(clause, THING, self.reader.lexicon) else clause
            before = clause

    def _goes_on(self, clause: str, before: list[str]) -> bool:
        """Whether a bare name follows what is not wanted: `no squats, lunges` may mean that lunges are or are not."""
        last = before[-1].split(", ")[-1] if before else ""
        shunned = last.split(" ", 1)[1].split(" and ")[-1] if last.startswith(SHUNNING) else ""
        if _A_ROOM.search(clause):
            return False
        for rows, kinds in ((NAMED_LIFTS, LIFT_KINDS), (NAMED_MUSCLES, _MUSCLE_KINDS), (THING, ITEM_KINDS)):
            if (
                shunned
                and self.reader.lexicon.resolve(shunned, kinds)
                and said(in_full(clause), rows, self.reader.lexicon)
            ):
                return True
        return False

    def _repeats(self, clause: str, before: str) -> bool:
        """Whether a clause only says the one before it again: `so just hold them`, `nothing else`."""
        if before.startswith("hold "):
            return _HOLD_THEM.fullmatch(clause) is not None
        if _THEY_HURT.fullmatch(clause) and before.split(", ")[-1].startswith(SHUNNING):
            self.reader.over.append(clause)
            return True
        if _OF_HEALTH.fullmatch(clause) and self.reader.of_person:
            self.reader.over.append(clause)
            return True
        if _FINE_NOW.fullmatch(clause) and self.reader.of_person:
            self.reader.over.append(f"{clause}: a caution that was named stays")
            return True
        if _NOTHING_ELSE.fullmatch(clause) and not before.startswith(("grow ", "like ", "normal ", "pin ")):
            self.reader.over.append(clause)
            return True
        return False


def _clauses(text: str) -> list[str]:
    """The clauses of a sentence between its commas, semicolons and full stops; what stands in brackets is one too."""
    text = _IN_BRACKETS.sub(lambda found: f", bad {found[1]}, ", text)
    parts = re.split(r"[,;.]\s+|[,;.]$|\s*[()]\s*|\s/\s", text)
    return [bare for part in parts if part and (bare := part.strip(" ,;."))]
