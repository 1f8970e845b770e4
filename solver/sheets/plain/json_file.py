"""The week's document as a file: what `setwright audit` and `setwright sheet` read again."""

from __future__ import annotations

from setwright.solver.sheets.common.json_values import dumped
from setwright.solver.sheets.handout.values import Handout


def json_bytes(handout: Handout) -> bytes:
    """The document of a handout in UTF-8, the same bytes for the same week."""
    return dumped(dict(handout.document)).encode()
