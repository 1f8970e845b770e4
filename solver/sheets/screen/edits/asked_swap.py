"""One swap that was asked for: found or refused with every reason, and what it changed in words."""

from __future__ import annotations

from collections.abc import Iterable

from setwright.catalogue.entries import Exercise
from setwright.catalogue.faults import Fault, SetwrightError, UsageFault
from setwright.solver.auditing import Audit
from setwright.solver.evaluation.evaluated_week import Line
from setwright.solver.evaluation.finding import Finding
from setwright.solver.evaluation.resolved_brief import ResolvedBrief
from setwright.solver.evaluation.resolved_day import ResolvedDay
from setwright.solver.rulebook import RULES, sentence_of
from setwright.solver.sheets.common.findings import finding_words
from setwright.solver.sheets.common.words import page_width, wrapped
from setwright.solver.sheets.screen.addresses import address
from setwright.solver.sheets.screen.day_table import day_lines
from setwright.solver.sheets.screen.edits.differences import difference_lines
from setwright.solver.uses.edits.card_swaps import swaps_on_cards
from setwright.solver.uses.edits.effects import Effect
from setwright.solver.uses.edits.pinning import with_pin
from setwright.solver.uses.edits.swaps import Swap, swap_to


def swap_asked(audited: Audit, line: Line, exercise: Exercise, settle: bool) -> Swap:
    """The swap of a line to an exercise, done in the best way.

    Raises UsageFault where it cannot be made, and SetwrightError with every rule that it would break, unless sets are
    to be solved anew afterwards (`settle`).
    """
    swap = possible_swap(audited, line, exercise)
    if swap.effect.broken and not settle:
        faults = breaking_faults(swap.effect, swap.effect.broken, address(audited.evaluated, line))
        raise SetwrightError([*faults, Fault("", "--settle solves the sets of the week's lines anew around the swap")])
    return swap


def possible_swap(audited: Audit, line: Line, exercise: Exercise) -> Swap:
    """The swap of a line to an exercise, done in the way that breaks least.

    Raises UsageFault where the exercise stands on that day already, is excluded there or cannot be done with the
    line's partner.
    """
    evaluated = audited.evaluated
    where = address(evaluated, line)
    if exercise.id in {other.exercise.id for other in evaluated.on[line.day.index]}:
        raise UsageFault(Fault(where, f"{exercise.name} stands on that day already", "name another exercise"))
    refuse_closed(with_pin(evaluated.resolved, exercise, line.day.weekday), exercise, line.day, where)
    swap = swap_to(audited, line, exercise)
    if swap is None:
        partner = evaluated.resolved.catalogue.exercises[line.entry.partner or line.exercise.id].name
        said = f"{exercise.name} cannot be done in turn with {partner} in the same rounds"
        raise UsageFault(Fault(where, said, "swap its partner first, or name another exercise"))
    return swap


def refuse_closed(resolved: ResolvedBrief, exercise: Exercise, day: ResolvedDay, where: str) -> None:
    """Raise UsageFault with each rule that excludes an exercise on a day."""
    excluding = resolved.excluded_by(exercise, day)
    if excluding:
        said = f"{exercise.name} is not open that day: "
        raise UsageFault([Fault(where, said + sentence_of(rule, resolved), RULES[rule].remedy) for rule in excluding])


def breaking_faults(done: Effect, broken: Iterable[Finding], where: str) -> list[Fault]:
    """Findings of a change as faults, each with its rule and its remedy."""
    resolved = done.after.evaluated.resolved
    return [Fault(where, f"breaks {f.rule}: {finding_words(f, resolved)}", RULES[f.rule].remedy) for f in broken]


def swapped_text(before: Audit, after: Audit, day: int, width: int) -> str:
    """The swapped day as it is now, and what the swap changed; `day` is its place in the week, from 0."""
    width = page_width(width)
    parts = [
        day_lines(after.evaluated, day, swaps_on_cards(after, (day,)), width),
        ["What changes:", *difference_lines(Effect(before, after), width)],
        wrapped("`-o new.json` writes the new week.", width),
    ]
    return "\n\n".join("\n".join(part) for part in parts) + "\n"
