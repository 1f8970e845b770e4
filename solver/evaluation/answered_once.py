"""Questions about a brief alone, which the audits of its many weeks ask again and again."""

from __future__ import annotations

from collections.abc import Callable
from functools import wraps
from typing import Concatenate, ParamSpec, TypeVar

from setwright.solver.evaluation.resolved_brief import ResolvedBrief

Asked = ParamSpec("Asked")
Answer = TypeVar("Answer")


def answered_once(
    question: Callable[Concatenate[ResolvedBrief, Asked], Answer],
) -> Callable[Concatenate[ResolvedBrief, Asked], Answer]:
    """The question, answered once for each brief and the other arguments, which must be hashable.

    The answer is kept with the brief; it must follow from the brief alone and is not to be changed by who gets it.
    """

    @wraps(question)
    def answer(resolved: ResolvedBrief, /, *asked: Asked.args, **named: Asked.kwargs) -> Answer:
        key = (question, *asked, *named.items())
        if key not in resolved.answers:
            resolved.answers[key] = question(resolved, *asked, **named)
        return resolved.answers[key]  # type: ignore[return-value]

    return answer
