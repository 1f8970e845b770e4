"""Every change of a brief is said in plain words, with the names of exercises, muscles, kit and days."""

from __future__ import annotations

from typing import get_args

import pytest
from weeks import terms_of

from setwright.solver.rulebook import sentence_of
from setwright.solver.sheets.screen.relaxation_words import relaxation_words
from setwright.solver.uses.relax.brief_changes import (
    AddDay,
    AddItems,
    AllowExercise,
    AllowPairs,
    AllowShorterRests,
    BriefChange,
    ChangeGoal,
    ChangePartner,
    DropMovement,
    DropMuscleDay,
    DropPartner,
    DropPins,
    DropRule,
    FewerDirectDays,
    LeaveDayOpen,
    LeaveSetsOpen,
    LengthenSessions,
    LowerSets,
    MoveDays,
    PriceRule,
    RaiseSets,
)
from setwright.solver.uses.relax.relaxation import Relaxation

BRIEF = terms_of()
SAID: dict[str, BriefChange] = {
    "drop the pin on barbell curl on Monday": DropPins(("barbell-curl",), "mon"),
    "drop the pins on barbell curl and leg press": DropPins(("barbell-curl", "leg-press")),
    "keep barbell curl without pairing it with leg press": DropPartner("barbell-curl", "leg-press"),
    "do not fix the sets of barbell curl at 3": LeaveSetsOpen(("barbell-curl",), 3),
    "do not fix the sets of the pinned exercises": LeaveSetsOpen(("barbell-curl", "leg-press")),
    "let barbell curl stand on any day instead of Friday": LeaveDayOpen("barbell-curl", "fri"),
    "pair barbell curl with leg press instead of plank": ChangePartner("barbell-curl", "leg-press", "plank"),
    "add bands and a pull-up bar to the kit": AddItems(("band", "pull-up-bar")),
    "allow barbell curl again": AllowExercise("barbell-curl"),
    "do without a vertical pull": DropMovement("vertical-pull"),
    "do without back on Monday": DropMuscleDay("back", "mon"),
    "do without chest in every session that names it": DropMuscleDay("chest", ""),
    "let the rule disliked cost instead of forbid": PriceRule("disliked"),
    f"turn off the rule slot-once ({sentence_of('slot-once', BRIEF)})": DropRule("slot-once"),
    "allow rests shorter than 180 s": AllowShorterRests(180),
    "at least 17.5 sets of chest instead of 21": LowerSets(("chest",), 3.5, 21.0),
    "ask no number of sets of chest instead of at least 4": LowerSets(("chest",), 4.0, 4.0),
    "ask 2 sets less of each of the 2 muscles with a lower end, at least 8 instead of 10": LowerSets(
        ("chest", "quads"), 2.0, 10.0
    ),
    "ask 1 set less of each of the 2 muscles with a lower end": LowerSets(("chest", "quads"), 1.0, None),
    "at most 6 sets of quads instead of 4": RaiseSets("quads", 6.0, 4.0),
    "direct work for chest on 1 day instead of 2": FewerDirectDays(("chest",), 1, 2),
    "direct work for each of 2 muscles on no set number of days instead of 2": FewerDirectDays(
        ("chest", "quads"), 0, 2
    ),
    "give the session 1 minute more": LengthenSessions(1, 1),
    "give each session 5 minutes more": LengthenSessions(5, 3),
    "do exercises in pairs": AllowPairs(),
    "take the goal balanced, with shorter rests, instead of growth": ChangeGoal("balanced", "growth"),
    "add a third day on Wednesday of 40 minutes": AddDay(3, "wed", 40),
    "add a second day of 30 minutes": AddDay(2, None, 30),
    "train on Monday and Thursday instead of Saturday and Sunday": MoveDays(("mon", "thu"), ("sat", "sun")),
}


def test_every_kind_of_change_is_here() -> None:
    assert {type(change) for change in SAID.values()} == set(get_args(BriefChange))


@pytest.mark.parametrize("words", SAID)
def test_a_change_is_said_plainly(words: str) -> None:
    assert relaxation_words(Relaxation("rule", (SAID[words],), BRIEF.brief), BRIEF) == words


def test_changes_together_are_joined() -> None:
    both = (DropPins(("barbell-curl",)), LengthenSessions(4, 1))
    said = relaxation_words(Relaxation("pin", both, BRIEF.brief, 4), BRIEF)
    assert said == "drop the pin on barbell curl, and give the session 4 minutes more"
