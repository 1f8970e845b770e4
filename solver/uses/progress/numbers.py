"""The numbers of progression, read from the evidence file once."""

from __future__ import annotations

from dataclasses import dataclass

from setwright.catalogue.entries import Catalogue


@dataclass(frozen=True)
class ProgressNumbers:
    """The numbers that decide a next load: repetitions, sessions, days, and shares from 0 to 1."""

    catalogue: Catalogue
    two_for_two_reps: int
    two_for_two_sessions: int
    step_least: float
    step_most: float
    reps_beyond: int
    rir_far: int
    range_far: int
    easy_far: int
    easy_most: float
    under_sessions: int
    back: float
    gap_days: int
    gap_back: float

    @classmethod
    def of(cls, catalogue: Catalogue) -> ProgressNumbers:
        """The numbers of a catalogue."""

        def whole(name: str) -> int:
            return round(catalogue.number(name))

        def share(name: str) -> float:
            return catalogue.number(name) / 100

        return cls(
            catalogue=catalogue,
            two_for_two_reps=whole("two-for-two-reps"),
            two_for_two_sessions=whole("two-for-two-sessions"),
            step_least=share("acsm-2009-load-step-least"),
            step_most=share("acsm-2009-load-step-most"),
            reps_beyond=whole("progress-reps-beyond"),
            rir_far=whole("progress-rir-far"),
            range_far=whole("progress-range-far"),
            easy_far=whole("progress-easy-far"),
            easy_most=share("progress-easy-most"),
            under_sessions=whole("progress-under-sessions"),
            back=share("progress-back"),
            gap_days=whole("progress-gap-days"),
            gap_back=share("progress-gap-back"),
        )
