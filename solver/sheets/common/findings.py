"""Findings and wishes in words, with the names of muscles, exercises and days: the one place where they are said."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from typing import TYPE_CHECKING

from setwright.solver.evaluation.finding import Amount, ClashMember, Finding, Wish
from setwright.solver.evaluation.pairing.pairs import MISFITS, Misfit
from setwright.solver.evaluation.resolved_brief import ResolvedBrief
from setwright.solver.rulebook import RULES, sentence_of
from setwright.solver.sheets.common.words import counted, day_name, listed, muscle_name, some_sets, weekday_name

if TYPE_CHECKING:
    from setwright.solver.planning import OutOfTime


def finding_words(finding: Finding, resolved: ResolvedBrief) -> str:
    """What a finding says, without its rule, its cost or a full stop: Monday: Pull-up has 2 sets."""
    text = RULES[finding.rule].text_of(finding.case)
    return text.format_map(_fields(finding, resolved)).rstrip(".")


def misfit_words(misfit: Misfit, resolved: ResolvedBrief) -> str:
    """Why two exercises may not be a pair."""
    return MISFITS[misfit.reason].format(others=_exercise(misfit.exercise, resolved))


def wish_words(wish: Wish, resolved: ResolvedBrief) -> str:
    """What a brief asks for, as a coach would say it: at least 5 sets of chest."""
    if wish.rule == "pinned":
        return _pin_words(wish, resolved)
    if wish.rule == "exact-band":
        return f"at least {some_sets(wish.amount)} of {muscle_name(resolved.catalogue, wish.subject)}"
    if wish.rule == "days-at-least":
        return f"direct work for {muscle_name(resolved.catalogue, wish.subject)} on {counted(wish.amount, 'day')}"
    if wish.rule == "muscle-on-day":
        on = f" on {weekday_name(wish.day)}" if wish.day else " in a session"
        return f"{some_sets(wish.amount)} of direct work for {_named(wish.subject, resolved)}{on}"
    return f"the movement {_spaced(wish.subject)}"


def member_words(member: ClashMember, resolved: ResolvedBrief) -> str:
    """A member of a clash: the wish, or the rule with its sentence."""
    if member.wish is not None:
        return wish_words(member.wish, resolved)
    return f"rule {member.rule} ({sentence_of(member.rule, resolved)})"


def no_week_words(end: OutOfTime) -> str:
    """Why there is no week, and what the nearest that was found lacks, where one was sought."""
    said = f"no week was found ({end.ended_by})"
    if end.least_shortfall is None:
        return said
    lacking = listed(finding_words(finding, end.resolved) for finding in end.least_shortfall.broken)
    return f"{said}; the nearest week found misses only this: {lacking}"


def _pin_words(wish: Wish, resolved: ResolvedBrief) -> str:
    parts = [f"{_exercise(wish.subject, resolved)} pinned"]
    if wish.day:
        parts.append(f"on {weekday_name(wish.day)}")
    if wish.amount:
        parts.append(f"for {some_sets(wish.amount)}")
    if wish.partner:
        parts.append(f"in a pair with {_exercise(wish.partner, resolved)}")
    return " ".join(parts)


class _Fields(dict[str, object]):
    """A finding's fields by name; one that a text asks for and the finding lacks is a defect that names itself."""

    def __missing__(self, key: str) -> object:
        raise KeyError(f"a finding's text asks for {{{key}}}, which no finding has")


def _fields(finding: Finding, resolved: ResolvedBrief) -> Mapping[str, object]:
    days = [resolved.days[day] for day in finding.days]
    single = finding.amount if isinstance(finding.amount, int | float) else None
    return _Fields(
        day=day_name(days[0]) if days else "",
        days=listed(day_name(day) for day in days),
        minutes=days[0].minutes if days else "",
        exercise=_exercise(finding.exercise, resolved),
        others=listed(_named(other, resolved) for other in finding.others),
        subject=_named(finding.subject, resolved),
        sets="" if single is None else some_sets(single),
        amount=_number(finding.amount),
        limit=_number(finding.limit),
        amount_span=_several(finding.amount, "-"),
        limit_span=_several(finding.limit, " to " if finding.rule == "set-range" else "-"),
        limit_list=_several(finding.limit, ", "),
        sentence=sentence_of(finding.rule, resolved),
    )


def _number(amount: Amount | None) -> str:
    return f"{amount:g}" if isinstance(amount, int | float) else ""


def _several(amount: Amount | None, between: str) -> str:
    numbers: Iterable[float] = amount if isinstance(amount, tuple) else ()
    return between.join(dict.fromkeys(f"{number:g}" for number in numbers))


def _named(name: str, resolved: ResolvedBrief) -> str:
    """A muscle's, exercise's or item's name from its id; any other id with spaces for its dashes."""
    if name in resolved.catalogue.muscles:
        return muscle_name(resolved.catalogue, name)
    if name in resolved.catalogue.groups:
        return resolved.catalogue.groups[name].name.lower()
    if name in resolved.catalogue.items and name not in resolved.catalogue.exercises:
        return resolved.catalogue.items[name].name.lower()
    return _exercise(name, resolved)


def _exercise(name: str, resolved: ResolvedBrief) -> str:
    known = resolved.catalogue.exercises.get(name)
    return known.name if known else _spaced(name)


def _spaced(name: str) -> str:
    return name.replace("-", " ")
