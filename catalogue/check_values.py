"""Whether the numbers of evidence, rules and defaults can be reckoned with, and whether words are known."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from setwright.catalogue.defaults import SeasonDefaults
from setwright.catalogue.entries import Catalogue, Number
from setwright.catalogue.faults import Fault
from setwright.catalogue.near import did_you_mean

ABOVE_ZERO = (
    "rest-tau-high",
    "rest-tau-low",
    "session-scale",
    "index-reference",
    "rest-loss-high",
    "rest-loss-low",
    "rir-slope",
    "session-knee",
    "indirect-part",
    "drop-credit",
)
"""The evidence numbers that the curves, or the sensitivity of a comparison, divide by."""
BETWEEN_ZERO_AND_ONE = ("week-exponent",)
"""The evidence numbers that a concave curve needs strictly between 0 and 1."""


def check_numbers(catalogue: Catalogue) -> Iterator[Fault]:
    """Evidence outside its interval or unfit to be divided by, rules without a number, weights and costs below 0."""
    for number in catalogue.evidence.values():
        yield from _check_number(number)
    for rule in catalogue.rules.values():
        where = f"rule {rule.id}"
        for name, value in (("cost", rule.cost), ("limit", rule.limit)):
            if value is not None and value < 0:
                yield Fault(where, f"{name} {value:g}", "give 0 or more")
    for muscle in catalogue.muscles.values():
        if muscle.default_weight <= 0:
            yield Fault(f"muscle {muscle.id}", f"default_weight {muscle.default_weight:g}", "give a number above 0")


def _check_number(number: Number) -> Iterator[Fault]:
    where = f"evidence {number.id}"
    low = number.value if number.low is None else number.low
    high = number.value if number.high is None else number.high
    if not low <= number.value <= high:
        yield Fault(where, f"{number.value:g} lies outside [{low:g}, {high:g}]", "mend the interval")
    if number.id in ABOVE_ZERO and number.value <= 0:
        yield Fault(where, f"{number.value:g} is divided by", "give a number above 0")
    if number.id in BETWEEN_ZERO_AND_ONE:
        for value in dict.fromkeys((number.value, low, high)):
            if not 0 < value < 1:
                remedy = "give a number above 0 and below 1"
                yield Fault(where, f"{value:g} does not lie between 0 and 1", remedy)


def check_defaults(catalogue: Catalogue) -> Iterator[Fault]:
    """Defaults that name an unknown muscle, weigh nothing where they are divided by, or are upside down."""
    defaults, scale = catalogue.defaults, catalogue.defaults.cost_scale
    yield from unknown_words("defaults: bands-growth-minor", "muscle", defaults.minor_growth.muscles, catalogue.muscles)
    for emphasis, weight in defaults.weights.items():
        if weight <= 0 and emphasis != "none":
            yield Fault("defaults: weights", f"{emphasis} {weight:g} is divided by", "give a number above 0")
    if scale.reference <= 0:
        yield Fault("defaults: cost-scale", f"reference {scale.reference:g}", "give a number above 0")
    if not 0 < scale.least <= scale.most:
        said = f"least {scale.least:g} and most {scale.most:g}"
        yield Fault("defaults: cost-scale", said, "give least above 0 and most not below it")
    for table, share in (("fewest-minutes", defaults.keep_share), ("replan", defaults.replan_share)):
        if not 0 < share <= 1:
            yield Fault(f"defaults: {table}", f"keep-share {share:g}", "give a share above 0, at most 1")
    yield from _check_season(defaults.season)


def unknown_words(where: str, kind: str, words: Iterable[str], known: Iterable[str]) -> Iterator[Fault]:
    """A fault for each word that is not among the known ones, with the nearest of them."""
    listed = tuple(known)
    for word in words:
        if word not in listed:
            yield Fault(where, f"{kind} {word!r} is not known", did_you_mean(word, listed))


def _check_season(season: SeasonDefaults) -> Iterator[Fault]:
    """A fault for each number that no season can be laid out by."""
    where = "defaults: season"
    if season.block_weeks[0] < 2:
        yield Fault(where, f"block-weeks begins at {season.block_weeks[0]}", "give 2 weeks at least")
    if season.weeks < season.block_weeks[0]:
        yield Fault(where, f"weeks {season.weeks} holds no block", f"give {season.block_weeks[0]} at least")
    for name, value in (("specialised-most", season.specialised_most), ("running-most", season.running_most)):
        if value < 1:
            yield Fault(where, f"{name} {value}", "give 1 at least")
    if not 0 <= season.usual_kept <= 1:
        yield Fault(where, f"usual-kept {season.usual_kept:g}", "give a share from 0 to 1")
