"""The briefs that commands are given, and what is said of a client's cautions."""

from __future__ import annotations

import io
import sys
from typing import TYPE_CHECKING

from setwright.solver.cli.books import brief_of_client, is_code
from setwright.solver.cli.console.messages import say

if TYPE_CHECKING:
    from setwright.catalogue.entries import Catalogue
    from setwright.solver.brief.parsed_brief import ParsedBrief


def brief_from(source: str, catalogue: Catalogue) -> ParsedBrief:
    """The brief of a phrase, a TOML file, standard input (-) or a client of the book (@CODE).

    Its rules are checked against those there are; raises UsageFault with every fault.
    """
    if is_code(source):
        return brief_of_client(source, catalogue)
    from setwright.solver.brief.file import read_brief
    from setwright.solver.rulebook import RULES

    return read_brief(source, catalogue, sys.stdin or io.StringIO(), tuple(RULES))


def say_cautions(parsed: ParsedBrief, catalogue: Catalogue, as_document: bool) -> None:
    """Say what the brief's cautions and age ask for and what is taken of them; a week carries none of it unasked."""
    from setwright.solver.sheets.common.caution import CLEARANCE, caution_sentences, clearance_needed

    for sentence in caution_sentences(parsed.brief, catalogue):
        say(sentence)
    for assumption in parsed.assumed:
        if assumption.kind == "health":
            say(assumption.text)
    if as_document and clearance_needed(parsed.brief, catalogue):
        say(CLEARANCE)
