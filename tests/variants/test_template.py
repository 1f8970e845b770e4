"""Templates: what they make, what is refused and how, and on what a key depends."""

from __future__ import annotations

import copy
from typing import Any

import pytest
from cheap_variants import STAMP, TEN, TWO_HUNDRED, matrix

from setwright.catalogue.faults import UsageFault
from setwright.solver.uses.variants.matrix import file_stem
from setwright.solver.uses.variants.template import template_of

SIZES: dict[str, Any] = {
    "name": "{days}x{minutes} {kit}",
    "vary": {"days": [2, 3, 4], "minutes": [60, 30, 45], "kits": {"rack": ["barbell", "rack"], "bands": "bands"}},
    "exclude": [{"days": 2, "minutes": 60}, {"days": [3, 4], "minutes": 30}, {"days": 4, "minutes": 45}],
}


def keys(raw: dict[str, Any], stamp: dict[str, Any] | None = None) -> dict[str, str]:
    return {variant.name: variant.key for variant in matrix(raw, stamp).variants}


def faults(raw: dict[str, Any]) -> str:
    with pytest.raises(UsageFault) as caught:
        matrix(raw)
    return "\n".join(str(fault) for fault in caught.value.faults)


def test_exclusions_leave_what_is_wanted_and_chains_go_by_minutes() -> None:
    """Worked by hand: 2 x 30, 2 x 45, 3 x 45, 3 x 60, 4 x 60 by two kits; the longer of a pair extends the shorter."""
    made = matrix(SIZES)
    sizes = ["2x30", "2x45", "3x45", "3x60", "4x60"]
    assert sorted(c.name for c in made.variants) == sorted(
        f"{size} {kit}" for size in sizes for kit in ("rack", "bands")
    )
    extended = {c.name: made.variants[c.extends].name for c in made.variants if c.extends is not None}
    pairs = {"2x45": "2x30", "3x60": "3x45"}
    assert extended == {f"{a} {kit}": f"{b} {kit}" for a, b in pairs.items() for kit in ("rack", "bands")}
    assert sorted(len(chain) for chain in made.chains) == [1, 1, 2, 2, 2, 2]


def test_two_hundred_variants_have_two_hundred_keys() -> None:
    assert len(set(keys(TWO_HUNDRED).values())) == 200


def test_efficiency_extends_nothing_nor_does_a_template_that_says_off() -> None:
    assert all(c.extends is None for c in matrix({**TEN, "brief": {"goal": "efficiency"}}).variants)
    assert all(c.extends is None for c in matrix({**TEN, "extend": {"share": "off"}}).variants)


def test_emphases_experience_and_goals_reach_the_brief() -> None:
    made = matrix(
        {
            "vary": {
                "days": ["tue fri"],
                "minutes": 40,
                "goals": ["growth"],
                "emphases": {"all even": {}, "delts": {"delts": "priority"}},
                "experience": ["novice", "advanced"],
            },
            "brief": {"muscles": {"calves": "hold"}, "client": {"trains_alone": True}},
            "also": [{"when": {"experience": "novice"}, "brief": {"avoid": ["deadlift"]}}],
        }
    )
    assert [c.name for c in made.variants] == [
        f"tue fri x 40, {e}, {x}" for e in ("all even", "delts") for x in ("novice", "advanced")
    ]
    assert '"muscles":{"calves":"hold","delts":"priority"}' in made.variants[2].brief
    assert '"avoid":["deadlift"]' in made.variants[2].brief and '"avoid"' not in made.variants[3].brief
    assert '"client":{"experience":"novice","trains_alone":true}' in made.variants[2].brief


@pytest.mark.parametrize("part", ["version", "catalogue", "evidence", "engines", "limits"])
def test_another_stamp_is_another_key_for_every_cell(part: str) -> None:
    before, after = keys(TEN), keys(TEN, {**STAMP, part: "other"})
    assert before.keys() == after.keys() and not set(before.values()) & set(after.values())


def test_a_change_reaches_the_variants_that_extend_it_and_no_others() -> None:
    changed = copy.deepcopy(TEN) | {"also": [{"when": {"kit": "bands", "minutes": 30}, "brief": {"avoid": ["plank"]}}]}
    before, after = keys(TEN), keys(changed)
    moved = {name for name in before if before[name] != after[name]}
    assert moved == {f"1 x {minutes}, bands" for minutes in (30, 35, 40)}


def test_every_fault_is_named_at_once_with_its_remedy() -> None:
    said = faults(
        {
            "nam": "x",
            "vary": {"dais": [2], "days": [9, "mon"], "minutes": ["a"], "kits": ["bands", "bands"]},
            "exclude": [{"kit": "bans"}, {"goal": "growth"}],
            "extend": {"share": 2},
            "brief": {"title": "T", "client": {"cautions": [{"tag": "shoulder"}]}},
        }
    )
    wanted = ("did you mean 'name'", "did you mean 'days'", "got 9", "got 'a'", "stands there twice", "extend.share")
    for words in (*wanted, "brief.title", "brief.client.cautions", "speaks of one person"):
        assert words in said


def test_a_brief_that_cannot_be_understood_names_the_variant() -> None:
    said = faults({"vary": {"days": [2], "minutes": [30, 500], "kits": ["bandz"]}})
    assert "2 x 500" in said and "bandz" in said


@pytest.mark.parametrize(
    ("raw", "said"),
    [
        ({}, "vary"),
        ({"vary": {"days": [2]}}, "without the other"),
        ({"vary": {"kits": ["bands"]}}, "brief.days"),
        ({**SIZES, "name": "{days}"}, "both called"),
        ({**SIZES, "name": "{dais}"}, "did you mean 'days'"),
        ({**SIZES, "name": "{days"}, "no pattern"),
        ({**SIZES, "exclude": [{"days": [2, 3, 4]}]}, "every variant is excluded"),
        ({**SIZES, "brief": {"equipment": "bands"}}, "vary.kits"),
        ({"vary": {"days": [1], "minutes": list(range(10, 241)), "kits": [f"k{i}" for i in range(999)]}}, "at most"),
    ],
)
def test_a_wrong_template_is_refused(raw: dict[str, Any], said: str) -> None:
    assert said in faults(raw)


ONE: dict[str, Any] = {"days": [1], "minutes": [12], "kits": ["bands"]}
CASES = {"Home": "bands", "home": "bodyweight"}
ACCENTS = {"caf\u00e9": "bands", "cafe\u0301": "bodyweight"}
PICTURES = {"\U0001f4aa": "bands", "\U0001f3cb": "bodyweight"}
NOVICE: dict[str, Any] = {**ONE, "experience": ["novice"]}


@pytest.mark.parametrize(
    ("raw", "said"),
    [
        ({"vary": {**ONE, "days": ["mon thu", "thu mon"]}}, "'thu mon' means the same as 'mon thu'"),
        ({"vary": {**ONE, "days": [2, "mon thu"]}}, "'mon thu' means the same as '2'"),
        ({"vary": {**ONE, "kits": {"a": ["bench", "rack"], "b": ["rack", "bench"]}}}, "'b' means the same as 'a'"),
        ({"vary": {**ONE, "kits": {"a\nb": "bands"}}}, "cannot stand in a name"),
        ({"vary": {**ONE, "kits": {"\u202eabc": "bands"}}}, "cannot stand in a name"),
        ({"vary": {**ONE, "kits": {" ": "bands"}}}, "cannot stand in a name"),
        ({"vary": {**ONE, "kits": {"x" * 101: "bands"}}}, "1 to 100 letters"),
        ({"vary": {**ONE, "kits": CASES}, "name": "{kit}"}, "their files both 'home'"),
        ({"vary": {**ONE, "kits": ACCENTS}, "name": "{kit}"}, "both 'caf\u00e9'"),
        ({"vary": {**ONE, "kits": PICTURES}, "name": "{kit}"}, "both 'variant'"),
        ({"vary": ONE, "name": "\u00e9" * 101}, "a file's name of 202 bytes"),
        ({"vary": ONE, "name": " "}, "name: is empty"),
        ({"vary": ONE, "exclude": [{"days": []}]}, "matches nothing"),
        ({"vary": {**ONE, "emphases": ["delts"]}, "brief": {"muscles": 3}}, "muscles: got 3"),
        ({"vary": NOVICE, "brief": {"client": [1]}}, "client: got [1], expected a table"),
        ({"vary": NOVICE, "also": [{"when": {"kit": "bands"}, "brief": {"client": 3}}]}, "got 3"),
    ],
)
def test_an_odd_template_is_refused(raw: dict[str, Any], said: str) -> None:
    assert said in faults(raw)


def test_what_does_not_fit_together_is_named_at_once_too() -> None:
    said = faults(
        {
            "name": "{dais}",
            "vary": {"days": [2], "minutes": [30, 40]},
            "exclude": [{"kit": "bands"}, {"minutes": 50}],
            "also": [{"when": {"days": 3}, "brief": {"days": 2}}],
            "brief": {"days": []},
        }
    )
    assert said.splitlines() == [
        "test: brief.days: is said here and by vary.days; say it once",
        "test: also[0].brief.days: is said here and by vary.days; say it once",
        "test: exclude[0].kit: does not vary in this template; what varies here: days, minutes",
        "test: exclude[1].minutes: '50' is not among vary.minutes; the values here: 30, 40",
        "test: also[0].when.days: '3' is not among vary.days; the values here: 2",
        "test: name: {dais} is nothing that varies here; did you mean 'days'?",
    ]


def test_a_fault_leads_to_its_value() -> None:
    said = faults({"vary": {**ONE, "goals": ["growth", "grwth"], "kits": {"mine": 3}}, "also": [{"when": {}}]})
    for words in (
        "vary.goals.grwth: got 'grwth'",
        "did you mean 'growth'?",
        "vary.kits.mine: got 3",
        "also[0].when: is",
    ):
        assert words in said
    assert "also[0].brief: is missing, expected a table" in said


@pytest.mark.parametrize("vary", [{**ONE, "days": []}, {**ONE, "days": [9]}, {**ONE, "minutes": ["a"]}])
def test_a_fault_in_an_axis_brings_no_others_with_it(vary: dict[str, Any]) -> None:
    assert len(faults({"vary": vary, "exclude": [{"kit": "bands", "days": 1}]}).splitlines()) <= 2
    assert len(faults({"vary": vary}).splitlines()) == 1


def test_names_with_slashes_and_letters_of_any_alphabet_are_files_of_one_folder() -> None:
    kits = {"../../etc/x": "bands", "\u0433\u0438\u0440\u044f": "bodyweight"}
    made = matrix({"name": "{days}/{minutes}/../{kit}", "vary": {**ONE, "kits": kits}})
    assert [file_stem(variant.name) for variant in made.variants] == ["1-12-etc-x", "1-12-\u0433\u0438\u0440\u044f"]


def test_the_order_of_a_template_changes_nothing() -> None:
    turned = {name: SIZES[name] for name in reversed(SIZES)}
    turned["vary"] = {name: SIZES["vary"][name] for name in reversed(SIZES["vary"])}
    assert template_of(turned, "t") == template_of(SIZES, "t")
