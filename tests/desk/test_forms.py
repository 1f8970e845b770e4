"""Whole numbers as forms say them: one reader for every page."""

from __future__ import annotations

import pytest

from setwright.catalogue.faults import UsageFault
from setwright.solver.desk.field_values import whole_said


@pytest.mark.parametrize(("text", "number"), [("7", 7), (" 0012 ", 12), ("52", 52), ("", 3)])
def test_a_number_within_the_limits_is_taken(text: str, number: int) -> None:
    assert whole_said(text, "weeks", (1, 52), 3) == number


@pytest.mark.parametrize("text", ["0", "53", "0031234", "²", "٣", "1.5", "-1", "many", "9" * 5000])
def test_any_other_text_is_refused_with_the_limits(text: str) -> None:
    with pytest.raises(UsageFault) as refused:
        whole_said(text, "weeks", (1, 52), 3)
    (fault,) = refused.value.faults
    assert fault.where == "weeks" and "a whole number from 1 to 52" in fault.said and len(fault.said) < 100
