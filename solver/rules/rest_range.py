"""Rests from the goal's short list."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.solver.evaluation.prescriptions import pair_rests, rests_of, single_pair_rests
from setwright.solver.evaluation.finding import Finding, Rule
from setwright.solver.evaluation.evaluated_week import View


def check(view: View) -> Iterator[Finding]:
    for line in view.lines:
        if line.entry.partner is None:
            known = rests_of(view.terms, line.exercise)
        else:
            known = pair_rests(view.terms)
            both = (line.exercise, view.terms.catalogue.exercises[line.entry.partner])
            if not any(e.multi_joint for e in both):
                known += single_pair_rests(view.terms)
        if line.entry.rest not in known:
            yield Finding("rest-range", f"{line.where} rests {line.entry.rest} s, not one of {list(known)}")


RULE = Rule(
    id="rest-range",
    kind="hard",
    sentence="Rests are those of the goal and the kind of lift, from the round list.",
    remedy="take a rest of the list",
    check=check,
)
