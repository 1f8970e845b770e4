"""Which two exercises may be done in turn."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.solver.evaluation.evaluated_week import EvaluatedWeek, Line
from setwright.solver.evaluation.finding import Finding
from setwright.solver.evaluation.pairing.pairs import MISFITS, Misfit, unfit, walk_between
from setwright.solver.evaluation.resolved_brief import ResolvedBrief
from setwright.solver.linear.columns import DayGroup, pairs_of
from setwright.solver.linear.linear_model import LinearModel, Match
from setwright.solver.linear.rule import Rule


def misfits(resolved: ResolvedBrief, a: Line, b: Line) -> Iterator[Misfit]:
    """Why two lines may not be a pair."""
    if not resolved.pairs:
        yield Misfit("not-asked")
    if (a.sets, a.entry.rest) != (b.sets, b.entry.rest):
        yield Misfit("out-of-step")
    if b.place != a.place + 1:
        yield Misfit("apart")
    yield from unfit(resolved, a.exercise, b.exercise)


def check(evaluated: EvaluatedWeek) -> Iterator[Finding]:
    """A finding for each reason why two lines may not be a pair, and for each line without its partner."""
    for lines in evaluated.on:
        here = {line.exercise.id: line for line in lines}
        for line in lines:
            partner = line.entry.partner
            if partner is None:
                continue
            days, other = (line.day.index,), here.get(partner)
            if other is None or other.entry.partner != line.exercise.id:
                yield Finding("pair-fit", case="no-partner", days=days, exercise=line.exercise.id, others=(partner,))
            elif line.place < other.place:
                for why in misfits(evaluated.resolved, line, other):
                    named = (why.exercise or partner,)
                    yield Finding("pair-fit", case=why.reason, days=days, exercise=line.exercise.id, others=named)


# ---- on the model: real pairs fit by their columns; halves of pairs are matched by counts over kinds of halves


def post(model: LinearModel) -> None:
    """Match the halves of pairs: each has a partner that fits, and beside which it is as its column says."""
    for group in model.groups:
        place = {model.columns[j].assignments[0]: j for j in model.by_group[group.index] if _is_half(model, j)}
        pairs = pairs_of(model.instance, group.like) if place else ()
        fitting = [(place[a], place[b]) for a, b in pairs if a in place and b in place]
        _match(model, group, fitting)
        alone = set(place.values()) - {j for pair in fitting for j in pair}
        model.constrain("pair-fit", dict.fromkeys(sorted(alone), 1), high=0)


def _is_half(model: LinearModel, column: int) -> bool:
    assignments = model.columns[column].assignments
    return len(assignments) == 1 and assignments[0].prescription.paired


def _match(model: LinearModel, group: DayGroup, fitting: list[tuple[int, int]]) -> None:
    """Count the pairs between kinds of halves: the halves of one kind have the same halves to choose from."""
    partners: dict[int, set[int]] = {}
    for a, b in fitting:
        partners.setdefault(a, set()).add(b)
        partners.setdefault(b, set()).add(a)
    kinds: dict[frozenset[int], list[int]] = {}
    for j in sorted(partners):
        kinds.setdefault(frozenset(partners[j]), []).append(j)
    kind_of = {j: kind for kind, members in enumerate(kinds.values()) for j in members}
    listed = [tuple(members) for members in kinds.values()]
    matched = [dict.fromkeys(members, -1) for members in listed]
    between = {tuple(sorted((kind_of[a], kind_of[b]))): (a, b) for a, b in fitting}
    for (one, other), (a, b) in between.items():
        most = min(len(listed[one]), len(listed[other])) * len(group.days)
        pairs = model.variable(most, integer=model.daily)
        model.matches.append(Match(pairs, listed[one], listed[other]))
        matched[one][pairs] = matched[other][pairs] = 1
        if walk_between(model.resolved, *(model.exercise(model.columns[j].assignments[0].cls) for j in (a, b))):
            model.penalise("pair-walk", {pairs: 1}, model.resolved.cost("pair-walk"))
    for expression in matched:
        model.constrain("pair-fit", expression, low=0, high=0)


RULE = Rule(
    id="pair-fit",
    kind="hard",
    scope="planned weeks",
    sentence="Two exercises are paired only if they have the same sets and rests, do not load the spine, share no prime mover, are not both limited by grip, do not need the same station nor two stations of which there is one each, train different regions or opposing muscles, and tire little; at two places, with a walk between, only a push and a pull or opposing muscles; under the goal efficiency a press and a pull that tire much may be a pair, under growth only single-joint lifts. At a peak hour a pair stays at one place.",
    remedy="pair it with another exercise, or make both straight sets",
    post=post,
    check=check,
    says={
        "no-partner": "{day}: {exercise} has no partner {others}",
        "not-asked": "{day}: {exercise}: pairs were not asked for",
        "out-of-step": "{day}: {exercise}: the two differ in sets or rest",
        "apart": "{day}: {exercise}: the two do not stand one after the other",
        **{reason: "{day}: {exercise}: " + text for reason, text in MISFITS.items()},
    },
)
