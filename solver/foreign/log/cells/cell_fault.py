"""What is wrong with one cell, raised by those who read it and given a place by those who know it."""

from __future__ import annotations


class CellFault(Exception):
    """What was got and expected, and the remedy."""

    def __init__(self, said: str, remedy: str = "") -> None:
        super().__init__(said)
        self.said, self.remedy = said, remedy
