"""The words of a block that every sheet shares: its kinds of weeks, what a week's targets are, the rule they follow."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType
from typing import Final

from setwright.catalogue.defaults import BlockDefaults
from setwright.catalogue.entries import Catalogue, Exercise
from setwright.solver.sheets.common.loads.load_words import FIND_IT, load_on_a_line
from setwright.solver.sheets.common.loads.said_loads import SaidLoads, said_load
from setwright.solver.sheets.common.words import counted, held_seconds
from setwright.solver.uses.blocks.block import Block, BlockWeek
from setwright.solver.uses.blocks.targets import Target

PROGRESSION: Final = (
    "Repetitions rise first, inside the range of the lift; once the plan is at the top of the range, the next load "
    "that can be built comes with the repetitions back at the bottom, and where that step is over {step:g} % "
    "repetitions go on first. What the log shows goes before the plan: a week that was not reached is done again."
)
MARKS: Final[Mapping[str, str]] = MappingProxyType({"find": "?", "next": "+", "lighter": "-", "top": "^"})
"""Step -> the mark of a lift whose load is not known."""
MARKS_MEAN: Final[Mapping[str, str]] = MappingProxyType(
    {
        "?": "find the load, starting light",
        "+": "the next load up",
        "-": "a lighter load",
        "^": "the top of the range: a harder form comes next",
    }
)


def progression_words(catalogue: Catalogue) -> str:
    """The rule by which targets are planned, in two sentences."""
    return PROGRESSION.format(step=catalogue.number("acsm-2009-load-step-most"))


def convention_words(block: Block) -> list[str]:
    """What of a block is a convention or a habit, one sentence each; of the kinds of weeks that it has."""
    catalogue = block.base.evaluated.resolved.catalogue
    numbers, kinds = catalogue.defaults.block, {week.kind for week in block.weeks}
    found = [_of_build(numbers)]
    if kinds & {"lighter", "return"}:
        found.append(_of_lighter(numbers, catalogue))
    if "return" in kinds:
        found.append(f"That a return after {numbers.return_after} or more weeks off begins so is a convention too.")
    if "minimum" in kinds:
        found.append(_of_minimum(catalogue))
    if kinds & {"travel", "short"}:
        found.append("Weeks away or of other sessions are planned anew for what is there, near the week before.")
    return found


def _of_build(numbers: BlockDefaults) -> str:
    return (
        f"Conventions, no source: the first build week has at least {100 * numbers.first_share:g} % of a muscle's "
        f"sets, no muscle gains more than {numbers.rise_most:g} weekly sets from one build week to the next, and "
        "repetitions in reserve fall to the week's own."
    )


def _of_lighter(numbers: BlockDefaults, catalogue: Catalogue) -> str:
    every, days = catalogue.evidence["rogerson-2024-every"], catalogue.evidence["rogerson-2024-lighter-week"]
    return (
        f"A lighter week, about {100 * numbers.lighter_sets:g} % of the sets, {100 * (1 - numbers.lighter_load):.0f} % "
        f"less load and {numbers.lighter_rir} more in reserve, is a convention. In a survey people took one every "
        f"{every.value:g} weeks for {days.value:g} days (Rogerson et al. 2024): habit, not a proven effect."
    )


def _of_minimum(catalogue: Catalogue) -> str:
    third, older = catalogue.number("bickel-2011-third"), catalogue.number("bickel-2011-older-from")
    weeks = catalogue.number("spiering-2021-weeks")
    return (
        f"A week at the minimum dose keeps the load. In trials {100 * third:.0f} % of the dose kept muscle size for "
        f"{weeks:g} weeks in adults of 20-35 years; from about {older:g} it did not, and 2 sessions of 2-3 sets are "
        "the least that held it (Bickel et al. 2011, Spiering et al. 2021)."
    )


def target_words(target: Target, exercise: Exercise, unit: str, lifts_said: bool) -> str:
    """A line's target as a card says it: 60 kg x 9, find it, 9 reps, or next load, 8 reps."""
    reps = reps_words(target, exercise)
    if target.load is not None:
        return f"{load_on_a_line(target.load, unit, exercise)} x {reps}"
    if target.step == "find" and lifts_said:
        return FIND_IT
    counted_reps = reps if exercise.timed else f"{reps} reps"
    said = {"next": "next load", "lighter": "lighter", "top": "top"}.get(target.step)
    return f"{said}, {counted_reps}" if said else counted_reps


def reps_words(target: Target, exercise: Exercise) -> str:
    """9, or 40 s of a hold."""
    return f"{_held(target)} s" if exercise.timed else f"{target.reps}"


def _held(target: Target) -> int:
    return held_seconds((target.reps, target.reps))[0]


def cell_words(sets: int, target: Target, exercise: Exercise) -> str:
    """3x9, 3x9@60, or 3x8? with a mark where no load is known."""
    reps = f"{_held(target)}s" if exercise.timed else f"{target.reps}"
    load = MARKS.get(target.step, "") if target.load is None else f"@{target.load:g}"
    return f"{sets}x{reps}{load}"


def block_loads(week: BlockWeek) -> SaidLoads:
    """What the cards of a week say of each line's load."""
    assert week.evaluated is not None
    brief = week.evaluated.resolved.brief
    unit, lifts_said = brief.client.unit, brief.lifts is not None
    return {
        (line.day.index, line.place): said_load(
            target_words(target, line.exercise, unit, lifts_said), line, target.load, week.evaluated
        )
        for day, targets in zip(week.evaluated.on, week.targets, strict=True)
        for line, target in zip(day, targets, strict=True)
    }


def off_words(weeks: int) -> str:
    """after 4 weeks off."""
    return f"after {counted(weeks, 'week')} off"
