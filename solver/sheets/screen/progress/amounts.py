"""Loads, sets and dates as the pages on progress say them."""

from __future__ import annotations

from datetime import date

from setwright.catalogue.entries import Exercise
from setwright.solver.sheets.common.loads.built_words import plates_said
from setwright.solver.sheets.common.words import one_set
from setwright.solver.uses.loads.buildable import Built

MONTHS = ("Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec")


def day_month(on: date) -> str:
    """A date without its year: 2 Mar."""
    return f"{on.day} {MONTHS[on.month - 1]}"


def sets_words(reps: tuple[int, ...], exercise: Exercise) -> str:
    """3 x 8 where all sets are alike, else 12, 11, 10; seconds of a hold."""
    if len(set(reps)) == 1:
        return f"{len(reps)} x {one_aim(reps[0], exercise)}"
    return ", ".join(one_aim(one, exercise) for one in reps)


def one_aim(reps: int, exercise: Exercise) -> str:
    """8, or 40 s of a hold."""
    return one_set((reps, reps), exercise)


def load_words(load: float | None, unit: str, exercise: Exercise) -> str:
    """60 kg, or 60 kg of help on a machine that helps the body up; nothing without a load."""
    if load is None:
        return ""
    return f"{load:g} {unit}" + (" of help" if exercise.body_weight == "helped" else "")


def built_words(built: Built, unit: str, exercise: Exercise) -> str:
    """62.5 kg (20 + 1.25 a side)."""
    return load_words(built.load, unit, exercise) + plates_said(built)


def per_cent(share: float) -> str:
    """A share without its sign, as whole per cent: 6 %."""
    return f"{abs(100 * share):.0f} %"
