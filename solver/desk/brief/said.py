"""A brief as the brief page shows it: fields, phrase, what was assumed and how it is taken over, what is amiss."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any

from setwright.catalogue.entries import Catalogue
from setwright.catalogue.faults import Fault, UsageFault
from setwright.solver.brief.file import parse_phrase
from setwright.solver.brief.parsed_brief import ParsedBrief, parse_brief, raw_of
from setwright.solver.brief.schema import Brief
from setwright.solver.desk.brief.form_read import brief_of_form
from setwright.solver.desk.brief.form_values import form_values
from setwright.solver.desk.forms import Fields
from setwright.solver.desk.searches.task import told_of
from setwright.solver.records.changed_brief import with_new_brief
from setwright.solver.rulebook import RULES
from setwright.solver.sheets.common.caution import CLEARANCE, caution_sentences, clearance_needed
from setwright.solver.sheets.plain.brief_phrase import brief_phrase

TAKEN: tuple[str, ...] = ("commercial gym", "balanced", "intermediate", "kg")
"""What is assumed of place, goal, experience and unit, in the words that say it in a phrase."""


@dataclass(frozen=True)
class Said:
    """One state of the brief page."""

    fields: dict[str, str]
    phrase: str
    shown: str
    """The phrase that the fields stand for: where `phrase` is another one it was typed and not read yet."""
    left_out: tuple[str, ...]
    assumed: tuple[tuple[str, str | None], ...]
    """(what was assumed, the phrase that says it too, or None where no phrase can)."""
    cautions: tuple[str, ...]
    faults: tuple[Fault, ...] = ()

    def document(self, code: str, version: int, brief: Brief) -> dict[str, Any]:
        """The state as JSON."""
        return {
            "schema": "setwright.client-brief/1",
            "code": code,
            "version": version,
            "brief": raw_of(brief),
            "phrase": self.phrase,
            "left_out": list(self.left_out),
            "assumed": [{"said": said, "phrase": phrase} for said, phrase in self.assumed],
            "cautions": list(self.cautions),
            "faults": [told_of(fault) for fault in self.faults],
        }


def said_of(parsed: ParsedBrief, catalogue: Catalogue, phrase: str | None = None) -> Said:
    """The page of a brief; `phrase` where it was typed and is what the brief was read from."""
    own = brief_phrase(parsed.brief, catalogue)
    text = own.text if phrase is None else phrase
    sentences = caution_sentences(parsed.brief, catalogue)
    due = (CLEARANCE,) if clearance_needed(parsed.brief, catalogue) else ()
    values = form_values(parsed.brief, catalogue)
    left_out = tuple(field for field in own.left_out if field != "client.code")
    return Said(values, text, text, left_out, tuple(_assumed(text, catalogue)), (*sentences, *due))


def from_phrase(phrase: str, before: Brief, catalogue: Catalogue) -> ParsedBrief:
    """The brief that a typed phrase makes of the one before: what belongs to the person, and what no phrase can hold,
    stays. Raises UsageFault."""
    new = parse_phrase(phrase, catalogue, tuple(RULES))
    raw, old = with_new_brief(before, new.brief), raw_of(before)
    held = [field for field in brief_phrase(before, catalogue).left_out if field in old and field != "days"]
    raw |= {field: old[field] for field in held}
    raw["client"] = {**raw["client"], "code": before.client.code}
    return ParsedBrief(parse_brief(raw, catalogue, "", tuple(RULES)).brief, new.assumed)


def from_form(fields: Fields, before: Brief, catalogue: Catalogue) -> ParsedBrief:
    """The brief of a form whose phrase may have been typed and not read yet; raises UsageFault."""
    parsed = brief_of_form(fields, before, catalogue)
    typed = fields.get("phrase", "").strip()
    if not typed or typed == fields.get("shown", "").strip():
        return parsed
    return from_phrase(typed, parsed.brief, catalogue)


def _assumed(phrase: str, catalogue: Catalogue) -> Iterator[tuple[str, str | None]]:
    """What is assumed where a phrase is read, each with the phrase that says it instead."""
    try:
        first = parse_phrase(phrase, catalogue)
    except UsageFault:
        return
    said = [assumption.text for assumption in first.assumed]
    over: dict[str, str] = {}
    days = brief_phrase(first.brief, catalogue, named=True).text
    for candidate in (days, *(f"{phrase}, {words}" for words in TAKEN)):
        try:
            read = parse_phrase(candidate, catalogue)
        except UsageFault:
            continue
        if read.brief == first.brief:
            gone = set(said) - {assumption.text for assumption in read.assumed}
            over |= {text: candidate for text in gone if len(gone) == 1}
    yield from ((text, over.get(text)) for text in said)
