"""A finding's text for people: muscles and days by their names."""

from __future__ import annotations

import re

from setwright.catalogue.entries import Catalogue
from setwright.solver.brief.defaults import WEEKDAY_NAMES, WEEKDAYS
from setwright.solver.sheets.common.words import muscle_name

DAYS = {short: name.capitalize() for short, name in zip(WEEKDAYS, WEEKDAY_NAMES, strict=True)}
DAY = re.compile(rf"\b({'|'.join(DAYS)})\b")


def spoken(text: str, catalogue: Catalogue) -> str:
    """`side-delts has 1 set` as `side delts: 1 set`, `tue gives up 28 s` as `Tuesday gives up 28 s`."""
    names = {muscle: muscle_name(catalogue, muscle) for muscle in catalogue.muscles}
    muscles = "|".join(sorted(names, key=len, reverse=True))
    text = re.sub(rf"^({muscles}) has ", lambda found: f"{names[found[1]]}: ", text)
    text = re.sub(rf"(?<![\w-])({muscles})(?![\w-])", lambda found: names[found[1]], text)
    return DAY.sub(lambda found: DAYS[found[1]], text)
