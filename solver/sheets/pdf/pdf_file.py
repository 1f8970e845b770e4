"""The card as PDF: a cover for the week and one page a session, set by typst, tagged for screen readers."""

from __future__ import annotations

import json
from typing import Any, Final

from setwright.solver.sheets.handout.values import Handout
from setwright.solver.sheets.pdf.card import card_values
from setwright.solver.sheets.pdf.glyph_coverage import DATA, fitted

STANDARD: Final = "ua-1"
"""PDF/UA-1, ISO 14289-1: tagged, titled, with its language and alternative texts; typst refuses to write less."""


def pdf_bytes(handout: Handout) -> bytes:
    """The card's PDF, A4 or Letter as the coach has it; the same handout gives the same bytes.

    Raises LetterFault that names each character the typeface cannot draw.
    """
    return _typeset(fitted(card_values(handout)))


def _typeset(values: dict[str, Any]) -> bytes:
    """The PDF of a card's values; they reach the template as data and are never read as markup."""
    import typst

    written: bytes = typst.compile(
        DATA / "card.typ",
        root=DATA,
        font_paths=[DATA],
        ignore_system_fonts=True,
        format="pdf",
        pdf_standards=STANDARD,
        sys_inputs={"handout": json.dumps(values)},
    )
    return written
