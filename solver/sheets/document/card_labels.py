"""The letters of a card's lines: A, B, and C1 with C2 for a pair."""

from __future__ import annotations

from dataclasses import dataclass

from setwright.solver.evaluation.evaluated_week import EvaluatedWeek, Line


@dataclass(frozen=True)
class LineLabel:
    """A line's letter, its place under that letter (2 for the second of a pair), and whether it is one of a pair."""

    letter: str
    place: int
    paired: bool

    def __str__(self) -> str:
        """As a card says it: A alone, A1 and A2 in a pair."""
        return f"{self.letter}{self.place}" if self.paired else self.letter


def line_labels(evaluated: EvaluatedWeek, day: int) -> tuple[LineLabel, ...]:
    """Each line's label, in the order of the day; the second of a pair that follows the first shares its letter."""
    lines = evaluated.on[day]
    seconds = [_follows_its_partner(evaluated, line) for line in lines]
    found, letter = [], -1
    for place, second in enumerate(seconds):
        letter += not second
        first = place + 1 < len(seconds) and seconds[place + 1]
        found.append(LineLabel(letter_of(letter), 2 if second else 1, second or first))
    return tuple(found)


def is_second(evaluated: EvaluatedWeek, line: Line) -> bool:
    """Whether a line comes after the one it is paired with."""
    before = evaluated.on[line.day.index][: line.place]
    return line.entry.partner is not None and any(x.exercise.id == line.entry.partner for x in before)


def letter_of(place: int) -> str:
    """A, B ... Z, AA, AB ... of the places from 0."""
    return (letter_of(place // 26 - 1) if place >= 26 else "") + chr(ord("A") + place % 26)


def _follows_its_partner(evaluated: EvaluatedWeek, line: Line) -> bool:
    lines = evaluated.on[line.day.index]
    return is_second(evaluated, line) and lines[line.place - 1].exercise.id == line.entry.partner
