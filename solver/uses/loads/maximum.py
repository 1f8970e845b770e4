"""The load of one repetition that a set speaks of, and the load for so many repetitions: two formulas, side by side."""

from __future__ import annotations

from dataclasses import dataclass

from setwright.catalogue.entries import Catalogue


@dataclass(frozen=True)
class Formulas:
    """The numbers of both formulas, from the evidence file."""

    epley_reps: float
    """Epley 1985: each repetition adds this many-th part of the load: w (1 + r / 30)."""
    brzycki_pole: float
    """Brzycki 1993: w x 36 / (37 - r), which has no value from this many repetitions on."""

    @classmethod
    def of(cls, catalogue: Catalogue) -> Formulas:
        """The formulas' numbers of a catalogue."""
        return cls(catalogue.evidence["epley-reps"].value, catalogue.evidence["brzycki-pole"].value)

    def epley(self, reps: float) -> float:
        """The maximum as a multiple of a load that is lifted `reps` times at most; a single is its own maximum."""
        return 1.0 if reps <= 1 else 1.0 + reps / self.epley_reps

    def brzycki(self, reps: float) -> float | None:
        """The same by the other formula; None from its pole on."""
        if reps <= 1:
            return 1.0
        left = self.brzycki_pole - reps
        return (self.brzycki_pole - 1.0) / left if left > 0 else None


@dataclass(frozen=True)
class Estimate:
    """A weight in the unit it was given in, by both formulas; Brzycki's is None from its pole on."""

    epley: float
    brzycki: float | None

    @property
    def lower(self) -> float:
        """The lesser of the two."""
        return self.epley if self.brzycki is None else min(self.epley, self.brzycki)


def maximum_of(load: float, reps: int, rir: int, formulas: Formulas) -> Estimate:
    """The estimated maximum from a set of `reps` at `load` with `rir` repetitions left in reserve."""
    able = reps + rir
    other = formulas.brzycki(able)
    return Estimate(load * formulas.epley(able), None if other is None else load * other)


def load_for(maximum: Estimate, reps: int, rir: int, formulas: Formulas) -> Estimate:
    """The load for `reps` repetitions with `rir` left, by each formula from its own estimate of the maximum."""
    able = reps + rir
    other = formulas.brzycki(able)
    known = None if other is None or maximum.brzycki is None else maximum.brzycki / other
    return Estimate(maximum.epley / formulas.epley(able), known)
