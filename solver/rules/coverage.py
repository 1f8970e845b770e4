"""The movements every week has."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.solver.evaluation.evaluated_week import EvaluatedWeek
from setwright.solver.evaluation.finding import Finding, Rule
from setwright.solver.evaluation.resolved_brief import ResolvedBrief

MOVEMENTS: tuple[tuple[str, tuple[str, ...], tuple[str, ...]], ...] = (
    ("knee lift", ("knee",), ("quads",)),
    ("hip lift", ("hinge", "thrust"), ("hamstrings", "glutes")),
    ("horizontal press", ("horizontal-press",), ("chest",)),
    ("row", ("row",), ("upper-back", "lats")),
    ("vertical pull", ("vertical-pull",), ("lats",)),
    ("vertical press", ("vertical-press",), ("front-delts",)),
)


def wanted(resolved: ResolvedBrief) -> Iterator[tuple[str, tuple[str, ...]]]:
    """The movements (name, ids) that this brief's week should have."""
    listed = [(name, ids) for name, ids, muscles in MOVEMENTS if any(resolved.sought(m) for m in muscles)]
    if "glutes" in resolved.priorities:
        listed.append(("hip thrust", ("thrust",)))
    for name, ids in listed:
        if resolved.can_somewhere(lambda e, ids=ids: e.multi_joint and e.movement in ids):  # type: ignore[misc]
            yield name, ids


def check(evaluated: EvaluatedWeek) -> Iterator[Finding]:
    for name, movements in wanted(evaluated.resolved):
        if not any(line.exercise.multi_joint and line.exercise.movement in movements for line in evaluated.lines):
            yield Finding("coverage", f"no {name} in the week", evaluated.resolved.penalty("coverage", 1))


RULE = Rule(
    id="coverage",
    kind="scored",
    sentence="A week has a knee lift, a hip lift, a horizontal press, a row, a vertical pull and a vertical press where kit and brief allow, and a hip thrust when glutes are a priority.",
    remedy="give the week one lift of that movement",
    check=check,
)
