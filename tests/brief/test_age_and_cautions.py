"""Ages and cautions in a phrase and in a file: what they say, and what is told of those that cannot be."""

from __future__ import annotations

from typing import Any

import pytest

from setwright.catalogue.load import load_catalogue
from setwright.solver.brief.schema_json import brief_schema


@pytest.mark.parametrize(
    ("phrase", "age"),
    [
        ("64 years", 64),
        ("64 years old", 64),
        ("age 64", 64),
        ("aged 64", 64),
        ("64 yrs", 64),
        ("64yo", 64),
        ("a 15-year-old", 15),
        ("for a 64-year-old woman", 64),
        ("over 60", 61),
        ("over 60 years", 61),
        ("older than 60", 61),
        ("60+", 60),
        ("under 18", 17),
        ("under the age of 18", 17),
        ("younger than 16", 15),
        ("64 years, age 64", 64),
    ],
)
def test_an_age(asker: Any, phrase: str, age: int) -> None:
    for source in (f"3x40, {phrase}", f"{phrase}, 3 days x 40 min", f"3x40, {phrase}, grow chest"):
        brief = asker.of(source).brief
        assert brief.client.age == age, source
        assert len(brief.days) == 3 and brief.days[0].minutes == 40


@pytest.mark.parametrize(
    "phrase",
    [
        "mon thu 60 min",
        "3x40, chest 8 sets",
        "3x40 dumbbells to 24 kg",
        "pin bench press 3 sets, 2x40",
    ],
)
def test_other_numbers_are_no_age(asker: Any, phrase: str) -> None:
    assert asker.of(phrase).brief.client.age is None


def test_an_age_in_a_file(asker: Any) -> None:
    assert asker.of("-", b"days = [{ minutes = 40 }]\n[client]\nage = 64\n").brief.client.age == 64
    assert asker.of("-", b"days = [{ minutes = 40 }]\n").brief.client.age is None


CHILD = "this tool is not for children under 13, who train with somebody who teaches them"


@pytest.mark.parametrize(
    ("said", "fault"),
    [
        ("9", f"got 9, expected 13 to 100; {CHILD}"),
        ("140", "got 140, expected 13 to 100; check the number"),
        ("-1", f"got -1, expected 13 to 100; {CHILD}"),
        ("64.5", "got 64.5, expected a whole number from 13 to 100"),
        ('"64"', "got '64', expected a whole number from 13 to 100"),
        ("true", "got true, expected a whole number from 13 to 100"),
    ],
)
def test_an_age_that_cannot_be(asker: Any, said: str, fault: str) -> None:
    text = f"days = [{{ minutes = 40 }}]\n[client]\nage = {said}\n".encode()
    assert asker.faults("-", text) == [f"standard input: client.age: {fault}"]


def test_every_fault_at_once(asker: Any) -> None:
    text = b"""days = [{ minutes = 4 }]
    [client]
    age = 140
    cautions = [{ tag = "hypertensoin" }, { tag = "hiccups" }, { tag = "biceps" }]
    """
    faults = asker.faults("-", text)
    assert len(faults) == 5
    for part in (
        "days[0].minutes: got 4",
        "client.age: got 140",
        "cautions[0].tag: 'hypertensoin' is not in the catalogue, expected a caution; did you mean 'hypertension'?",
        "cautions[1].tag: 'hiccups' is not in the catalogue, expected a caution; the cautions are shoulder, elbow",
        "cautions[2].tag: 'biceps' is a muscle, expected a caution",
    ):
        assert any(part in fault for fault in faults), (part, faults)


@pytest.mark.parametrize(
    ("phrase", "said"),
    [
        ("3x40, 9 years old", f"client.age: got 9, expected 13 to 100; {CHILD}"),
        ("3x40, age 140", "client.age: got 140, expected 13 to 100; check the number"),
        ("3x40, age", "'age' names no age; write for example age 64"),
        ("3x40, 64 years, age 30", "the age is said twice: 64 and 30; keep one of the two"),
        (
            "3x40, 5 years of training",
            "'5 years of training' is no age; "
            "write novice, intermediate or advanced for it, or for example 64 years old",
        ),
        ("3x40, caution hypertensio", "'hypertensio' is not a caution; did you mean 'hypertension'?"),
        ("3x40, hernai", "'hernai' is not understood; did you mean 'hernia'?"),
    ],
)
def test_a_wrong_age_or_caution_in_a_phrase(asker: Any, phrase: str, said: str) -> None:
    assert asker.faults(phrase) == [f"phrase: {said}"]


def test_an_unknown_caution_is_never_passed_over(asker: Any) -> None:
    (fault,) = asker.faults("3x40, caution hiccups")
    assert fault.startswith("phrase: 'hiccups' is not a caution; the cautions are shoulder, ")
    assert fault.endswith("for any other ask a professional, and avoid the lifts that are not allowed")


@pytest.mark.parametrize(
    "says",
    [
        "asthma, 3x40",
        "I have scoliosis. 3 x 40 min",
        "My client has Crohn's disease, 3 x 40",
        "gout in the big toe, 3x40",
        "hypermobile client, 3x40",
    ],
)
def test_a_condition_without_a_caution_of_its_own_asks_for_whoever_treats_it(asker: Any, says: str) -> None:
    parsed = asker.of(says)
    assert [caution.tag for caution in parsed.brief.client.cautions] == ["other-condition"]
    assert asker.catalogue.cautions["other-condition"].needs_clearance


def test_a_condition_of_somebody_else_or_denied_is_none(asker: Any) -> None:
    for says in ("3x40, my mother has asthma", "3x40, no asthma any more"):
        asker.faults(says)


def test_an_age_outside_its_table_is_told_where_it_stands(asker: Any) -> None:
    (fault,) = asker.faults("-", b"days = [{ minutes = 40 }]\nage = 64\n")
    assert fault == "standard input: age: is not a field of a brief; write it as client.age"


def health(parsed: Any) -> list[str]:
    return [said.text for said in parsed.assumed if said.kind == "health"]


def test_a_caution_that_is_said_twice_is_taken_once_and_told(asker: Any) -> None:
    parsed = asker.of("3x40, high blood pressure, hypertension, bad knee")
    assert [c.tag for c in parsed.brief.client.cautions] == ["high-blood-pressure", "knee"]
    assert "caution high-blood-pressure: said 2 times, taken once" in health(parsed)
    assert not any("knee: said" in text for text in health(parsed))


def test_of_two_the_one_that_somebody_named_said_is_kept(asker: Any) -> None:
    text = b"""days = [{ minutes = 40 }]
    [client]
    cautions = [{ tag = "low back" }, { tag = "sciatica", said_by = "Dr Q", on = 2026-01-02 }]
    """
    parsed = asker.of("-", text)
    assert [(c.tag, c.said_by) for c in parsed.brief.client.cautions] == [("lower-back", "Dr Q")]
    assert health(parsed) == ["caution lower-back: said 2 times, taken once"]


def test_what_a_caution_leaves_out_though_it_is_asked_for_is_told(asker: Any) -> None:
    told = health(asker.of("3x40, with pairs, with drop sets, high blood pressure"))
    assert "drop sets and rest-pause: asked for, left out for the client's cautions or age" in told
    assert "pairs: asked for, left out because a caution asks for rest after every set" in told
    assert len(health(asker.of("3x40, high blood pressure"))) == 1


@pytest.mark.parametrize(
    ("age", "said"), [(64, "aged 60 or over"), (15, "under 18"), (35, "changes nothing in the week")]
)
def test_an_age_is_a_health_note(asker: Any, age: int, said: str) -> None:
    assert health(asker.of(f"3x40, age {age}")) == [f"age {age}: {said}"]


def test_every_alias_is_read_after_the_word_caution(asker: Any) -> None:
    for caution in load_catalogue().cautions.values():
        for word in (caution.id, caution.name, *caution.aliases):
            if " or " in f" {word} ":
                continue
            assert [c.tag for c in asker.of(f"3x40, caution {word}").brief.client.cautions] == [caution.id], word


@pytest.mark.parametrize(
    ("words", "tag"),
    [
        ("pregnant", "pregnancy"),
        ("postpartum", "after-birth"),
        ("post-surgery", "recent-surgery"),
        ("bad low back", "lower-back"),
        ("low back pain", "lower-back"),
        ("glaucoma", "eye-disease"),
        ("hip replacement", "hip-replacement"),
        ("on blood thinners", "blood-thinners"),
        ("with high blood pressure", "high-blood-pressure"),
        ("has a hernia", "hernia"),
        ("osteopenia", "osteoporosis"),
        ("seizures", "epilepsy"),
        ("flu", "fever"),
        ("inguinal hernia", "hernia"),
        ("dislocated shoulder", "shoulder"),
    ],
)
def test_words_as_people_write_them(asker: Any, words: str, tag: str) -> None:
    assert [c.tag for c in asker.of(f"3x40, {words}").brief.client.cautions] == [tag]


def test_the_schema_of_briefs_has_the_age() -> None:
    age = brief_schema()["$defs"]["Client"]["properties"]["age"]
    assert age["anyOf"][0] == {"maximum": 100, "minimum": 13, "type": "integer"}
