"""What was read otherwise than it is written: one sentence for each reading, with the lines that it is about."""

from __future__ import annotations

from typing import Final

from setwright.solver.sheets.common.words import listed

MOST_NAMED: Final = 3
"""Lines named with one sentence; more are counted."""


class Notes:
    """Keeps sentences about lines, each once, in the order in which they came."""

    def __init__(self) -> None:
        self._places: dict[str, list[str]] = {}

    def add(self, sentence: str, at: str = "") -> None:
        """Keep a sentence about the line at a place, or about the whole file where none is given."""
        places = self._places.setdefault(sentence, [])
        if at:
            places.append(at)

    def sentences(self) -> list[str]:
        """Every sentence, led by its lines."""
        return [f"{_led(places)}{sentence}" for sentence, places in self._places.items()]


def _led(places: list[str]) -> str:
    """line 2 and line 5: , or 12 lines, from line 2 on: ."""
    if not places:
        return ""
    if len(places) > MOST_NAMED:
        return f"{len(places)} lines, the first {places[0]}: "
    return f"{listed(places)}: "
