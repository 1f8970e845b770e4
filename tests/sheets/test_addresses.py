"""Lines named as a person writes them, on a fixed week."""

from __future__ import annotations

import pytest

from setwright.catalogue.faults import UsageFault
from setwright.solver.planning import Solved
from setwright.solver.sheets.screen.addresses import address, line_at


def widest(text: str) -> int:
    return max(map(len, text.splitlines()))


def test_an_address_is_a_day_and_a_mark_or_an_exercise(solved: Solved) -> None:
    evaluated = solved.audit.evaluated
    for line in evaluated.lines:
        where = address(evaluated, line)
        day = where.split(":")[0]
        for said in (where, where.lower(), f"{day}:{line.exercise.id}", f"{day}:{line.exercise.name}"):
            assert line_at(evaluated, said) == line
    assert line_at(evaluated, "Monday:A") == evaluated.on[0][0]
    assert line_at(evaluated, "2:A") == evaluated.on[1][0]


@pytest.mark.parametrize(
    ("said", "heard"),
    [
        ("mon", "expected a day and a line"),
        ("sun:A", "no day 'sun'"),
        ("mon:Z", "no line 'Z'"),
        ("mon:dumbel-curl", "did you mean 'mon:dumbbell-curl'?"),
    ],
)
def test_a_wrong_address_names_what_there_is(solved: Solved, said: str, heard: str) -> None:
    with pytest.raises(UsageFault, match="entry") as error:
        line_at(solved.audit.evaluated, said)
    assert heard in str(error.value)
