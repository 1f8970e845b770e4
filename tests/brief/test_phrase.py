"""Phrases and what they say: the right ones with their raw brief, the wrong ones with their exact faults."""

from __future__ import annotations

from typing import Any

import pytest

from setwright.catalogue.faults import UsageFault
from setwright.solver.brief.phrase.lexicon import key_of, lexicon_of
from setwright.solver.brief.phrase.parse import draft_phrase

SAYS: tuple[tuple[str, list[dict[str, Any]], dict[str, Any]], ...] = (
    ("3 days x 40 min, grow delts", [{"minutes": 40}] * 3, {"muscles": {"delts": {"emphasis": "priority"}}}),
    ("3x40", [{"minutes": 40}] * 3, {}),
    ("3 x 40", [{"minutes": 40}] * 3, {}),
    (
        "3\N{MULTIPLICATION SIGN}40 min; grow  CHEST",
        [{"minutes": 40}] * 3,
        {"muscles": {"chest": {"emphasis": "priority"}}},
    ),
    ("3 days by 40 min", [{"minutes": 40}] * 3, {}),
    ("three days of 40 minutes", [{"minutes": 40}] * 3, {}),
    ("3 sessions of 1 hour", [{"minutes": 60}] * 3, {}),
    ("2 days x 1 h 15", [{"minutes": 75}] * 2, {}),
    (
        "2 days x 1 h 15 min, grow arms",
        [{"minutes": 75}] * 2,
        {"muscles": {"arms": {"emphasis": "priority"}}},
    ),
    ("4 days x 90 min for growth", [{"minutes": 90}] * 4, {"goal": "growth"}),
    ("once a week 45 min", [{"minutes": 45}], {}),
    ("twice a week 30 min", [{"minutes": 30}] * 2, {}),
    ("3 times a week for 40 min", [{"minutes": 40}] * 3, {}),
    ("3 x a week 40 min", [{"minutes": 40}] * 3, {}),
    ("40 min x 3 days", [{"minutes": 40}] * 3, {}),
    ("40 min, 3 days", [{"minutes": 40}] * 3, {}),
    ("half an hour twice a week", [{"minutes": 30}] * 2, {}),
    ("every day 20 min", [{"minutes": 20}] * 7, {}),
    ("daily 20 min, minimum dose", [{"minutes": 20}] * 7, {"dose": "minimum"}),
    (
        "mon wed 40 min, sat 60 min",
        [
            {"weekday": "mon", "minutes": 40},
            {"weekday": "wed", "minutes": 40},
            {"weekday": "sat", "minutes": 60},
        ],
        {},
    ),
    (
        "Monday, Wednesday and Friday 45 min",
        [
            {"weekday": "mon", "minutes": 45},
            {"weekday": "wed", "minutes": 45},
            {"weekday": "fri", "minutes": 45},
        ],
        {},
    ),
    (
        "mon-fri 30 min",
        [
            {"weekday": "mon", "minutes": 30},
            {"weekday": "tue", "minutes": 30},
            {"weekday": "wed", "minutes": 30},
            {"weekday": "thu", "minutes": 30},
            {"weekday": "fri", "minutes": 30},
        ],
        {},
    ),
    (
        "mon to wed 30 min each",
        [
            {"weekday": "mon", "minutes": 30},
            {"weekday": "tue", "minutes": 30},
            {"weekday": "wed", "minutes": 30},
        ],
        {},
    ),
    (
        "mon upper 60 min, thu lower 60 min",
        [
            {"weekday": "mon", "minutes": 60, "focus": "upper"},
            {"weekday": "thu", "minutes": 60, "focus": "lower"},
        ],
        {},
    ),
    (
        "mon 60 min upper body, thu 60 min lower body",
        [
            {"weekday": "mon", "minutes": 60, "focus": "upper"},
            {"weekday": "thu", "minutes": 60, "focus": "lower"},
        ],
        {},
    ),
    (
        "mon 40 min at home with dumbbells, sat 60 min commercial gym",
        [
            {"weekday": "mon", "minutes": 40, "equipment": "home-dumbbells"},
            {"weekday": "sat", "minutes": 60, "equipment": "commercial-gym"},
        ],
        {},
    ),
    (
        "mon wed 40 min, sat 60 min, at home with dumbbells",
        [
            {"weekday": "mon", "minutes": 40},
            {"weekday": "wed", "minutes": 40},
            {"weekday": "sat", "minutes": 60},
        ],
        {"equipment": "home-dumbbells"},
    ),
    ("3 days x 40 min at home with dumbbells", [{"minutes": 40}] * 3, {"equipment": "home-dumbbells"}),
    ("2 days x 25 min in a hotel", [{"minutes": 25}] * 2, {"equipment": "hotel-gym"}),
    ("3x30 with bands", [{"minutes": 30}] * 3, {"equipment": "bands"}),
    ("3x30 bodyweight", [{"minutes": 30}] * 3, {"equipment": "bodyweight"}),
    (
        "3 days x 40 min at home with barbell, rack and bench",
        [{"minutes": 40}] * 3,
        {"equipment": ["barbell", "rack", "bench"]},
    ),
    ("3x40 barbell garage", [{"minutes": 40}] * 3, {"equipment": "barbell-garage"}),
    (
        "3x40 dumbbells to 24 kg by 2 and a bench",
        [{"minutes": 40}] * 3,
        {
            "equipment": ["dumbbell", "bench"],
            "owned": {"dumbbell_max": 24.0, "dumbbell_step": 2.0},
            "client": {"unit": "kg"},
        },
    ),
    (
        "3x40 at home with dumbbells to 50 lb by 5",
        [{"minutes": 40}] * 3,
        {
            "equipment": "home-dumbbells",
            "owned": {"dumbbell_max": 50.0, "dumbbell_step": 5.0},
            "client": {"unit": "lb"},
        },
    ),
    (
        "2 days x 30 min, efficient, grow chest and back, hold legs",
        [{"minutes": 30}] * 2,
        {
            "goal": "efficiency",
            "muscles": {
                "chest": {"emphasis": "priority"},
                "back": {"emphasis": "priority"},
                "legs": {"emphasis": "hold"},
            },
        },
    ),
    (
        "3x40, priority side delts",
        [{"minutes": 40}] * 3,
        {"muscles": {"side-delts": {"emphasis": "priority"}}},
    ),
    ("3x40, no calves", [{"minutes": 40}] * 3, {"muscles": {"calves": {"emphasis": "none"}}}),
    (
        "3x40, no barbell back squat, no rack",
        [{"minutes": 40}] * 3,
        {"avoid": ["barbell-back-squat"], "without": ["rack"]},
    ),
    ("3x40, no leg press", [{"minutes": 40}] * 3, {"without": ["leg-press"]}),
    ("3x40, chest at most 8 sets", [{"minutes": 40}] * 3, {"muscles": {"chest": {"at_most": 8.0}}}),
    (
        "3x40, chest at least 6 sets and at most 10 sets, back 8-12 sets",
        [{"minutes": 40}] * 3,
        {
            "muscles": {
                "chest": {"at_least": 6.0, "at_most": 10.0},
                "back": {"at_least": 8.0, "at_most": 12.0},
            }
        },
    ),
    (
        "3x40, quads 6 to 10 sets on 2 days",
        [{"minutes": 40}] * 3,
        {"muscles": {"quads": {"at_least": 6.0, "at_most": 10.0, "days_at_least": 2}}},
    ),
    ("3x40, chest on 2 days", [{"minutes": 40}] * 3, {"muscles": {"chest": {"days_at_least": 2}}}),
    (
        "3x40 grow delts, chest at most 8 sets",
        [{"minutes": 40}] * 3,
        {"muscles": {"delts": {"emphasis": "priority"}, "chest": {"at_most": 8.0}}},
    ),
    (
        "3x40 grow delts and chest at most 12 sets",
        [{"minutes": 40}] * 3,
        {"muscles": {"delts": {"emphasis": "priority"}, "chest": {"emphasis": "priority", "at_most": 12.0}}},
    ),
    (
        "3x40 novice, alone, busy, with pairs",
        [{"minutes": 40}] * 3,
        {"client": {"experience": "novice", "trains_alone": True}, "owned": {"busy": True}, "pairs": True},
    ),
    (
        "3x40 beginner at peak hour no pairs",
        [{"minutes": 40}] * 3,
        {"client": {"experience": "novice"}, "owned": {"busy": True}, "pairs": False},
    ),
    ("3x40 no drop sets, lower reps", [{"minutes": 40}] * 3, {"techniques": False, "reps": "lower"}),
    ("3x40 must hinge and row", [{"minutes": 40}] * 3, {"must": ["hinge", "row"]}),
    (
        "mon wed fri 40 min, pin bench press on wed 3 sets",
        [
            {"weekday": "mon", "minutes": 40},
            {"weekday": "wed", "minutes": 40},
            {"weekday": "fri", "minutes": 40},
        ],
        {"pins": [{"exercise": "barbell-bench-press", "day": "wed", "sets": 3}]},
    ),
    (
        "mon wed fri 40 min, pin bench press on wed 3 sets with barbell row, pin plank",
        [
            {"weekday": "mon", "minutes": 40},
            {"weekday": "wed", "minutes": 40},
            {"weekday": "fri", "minutes": 40},
        ],
        {
            "pins": [
                {
                    "exercise": "barbell-bench-press",
                    "day": "wed",
                    "sets": 3,
                    "pair_with": "barbell-row-to-chest",
                },
                {"exercise": "plank"},
            ]
        },
    ),
    ("3x40 caution shoulder", [{"minutes": 40}] * 3, {"client": {"cautions": [{"tag": "shoulder"}]}}),
    ("3x40 bad knee", [{"minutes": 40}] * 3, {"client": {"cautions": [{"tag": "knee"}]}}),
    ("3x40 pregnant", [{"minutes": 40}] * 3, {"client": {"cautions": [{"tag": "pregnancy"}]}}),
    ("3x40 lower back pain", [{"minutes": 40}] * 3, {"client": {"cautions": [{"tag": "lower-back"}]}}),
    (
        "3x40 with safeties, lb",
        [{"minutes": 40}] * 3,
        {"owned": {"safeties": True}, "client": {"unit": "lb"}},
    ),
    (
        "3 days x 40 min any order, 2 rest days between",
        [{"minutes": 40}] * 3,
        {"any_order": True, "rest_days_between": 2},
    ),
    (
        "mon thu 60 min, sport football on tue lower",
        [{"weekday": "mon", "minutes": 60}, {"weekday": "thu", "minutes": 60}],
        {"other": [{"weekday": "tue", "name": "football", "regions": ["lower"]}]},
    ),
    (
        "mon thu 60 min, sport football tue",
        [{"weekday": "mon", "minutes": 60}, {"weekday": "thu", "minutes": 60}],
        {"other": [{"weekday": "tue", "name": "football"}]},
    ),
    (
        "3x40, keep 95 %, warm up 5 min, spare 2 min",
        [{"minutes": 40}] * 3,
        {"keep_share": 0.95, "clock": {"warm_up": 300, "spare": 120}},
    ),
    ("3x40 rule third-day off", [{"minutes": 40}] * 3, {"rules": {"third-day": "off"}}),
    ("3 days a week, 40 min", [{"minutes": 40}] * 3, {}),
    ("three 40 min sessions", [{"minutes": 40}] * 3, {}),
    (
        "3x40 single bench, without bands",
        [{"minutes": 40}] * 3,
        {"owned": {"single": ["bench"]}, "without": ["band"]},
    ),
    (
        "3x40 - grow delts - hold legs",
        [{"minutes": 40}] * 3,
        {"muscles": {"delts": {"emphasis": "priority"}, "legs": {"emphasis": "hold"}}},
    ),
    ("2 days x 40 min, 1 day x 60 min", [{"minutes": 40}, {"minutes": 40}, {"minutes": 60}], {}),
    (
        "3x40 at home with dumbbells and a bench, grow glutes",
        [{"minutes": 40}] * 3,
        {"equipment": ["home-dumbbells", "bench"], "muscles": {"glutes": {"emphasis": "priority"}}},
    ),
    ("3x40 at home, bodyweight and bands", [{"minutes": 40}] * 3, {"equipment": "bodyweight-and-bands"}),
    ("3x40 machines only", [{"minutes": 40}] * 3, {"equipment": "machine-gym"}),
    ("3x40 no equipment", [{"minutes": 40}] * 3, {"equipment": "bodyweight"}),
    ("3x40 at home, nothing", [{"minutes": 40}] * 3, {"equipment": "bodyweight"}),
    ("3x40 bodyweight with straps", [{"minutes": 40}] * 3, {"equipment": "bodyweight-bar-and-step"}),
    (
        "3x40 bands, avoid barbell Romanian deadlift, like DB rows",
        [{"minutes": 40}] * 3,
        {"equipment": "bands", "avoid": ["barbell-romanian-deadlift"], "like": ["one-arm-dumbbell-row"]},
    ),
    ("3 x 40 min full body", [{"minutes": 40, "focus": "full-body"}] * 3, {}),
    (
        "on mon and thu 60 min for growth",
        [{"weekday": "mon", "minutes": 60}, {"weekday": "thu", "minutes": 60}],
        {"goal": "growth"},
    ),
    (
        "3x40 hold back, grow biceps on 2 days",
        [{"minutes": 40}] * 3,
        {"muscles": {"back": {"emphasis": "hold"}, "biceps": {"emphasis": "priority", "days_at_least": 2}}},
    ),
    ("3x40 no bench", [{"minutes": 40}] * 3, {"without": ["bench"]}),
    (
        "3x40. Grow delts. Hold legs.",
        [{"minutes": 40}] * 3,
        {"muscles": {"delts": {"emphasis": "priority"}, "legs": {"emphasis": "hold"}}},
    ),
    ("3x40 hotel, bodyweight", [{"minutes": 40}] * 3, {"equipment": ["hotel-gym", "bodyweight"]}),
    (
        "3x40 grow delts bench",
        [{"minutes": 40}] * 3,
        {"muscles": {"delts": {"emphasis": "priority"}}, "equipment": ["bench"]},
    ),
    ("3x40 and and", [{"minutes": 40}] * 3, {}),
)

FAULTS: tuple[tuple[str, tuple[str, ...]], ...] = (
    ("3 days x 40 min, grow dlets", ("'dlets' is not a muscle or group; did you mean 'delts'?",)),
    ("3 days x 40 min, grow", ("'grow' names nothing, expected a muscle or group after it",)),
    (
        "3 days x 40 min, grow bench press",
        ("'bench press' is an exercise, but 'grow' takes a muscle or group",),
    ),
    ("3 days x 40 min, grow delts and bcieps", ("'bcieps' is not understood; did you mean 'biceps'?",)),
    ("3 dys x 40 min", ("'3 dys' is not understood; did you mean '3 days'?",)),
    ("3 days", ("'3 days' does not say for how many minutes; write for example 3 days x 40 min",)),
    ("3 days x 5 min", ("'5 min' is 5 minutes, expected whole minutes from 10 to 240",)),
    ("3 days x 400 min", ("'400 min' is 400 minutes, expected whole minutes from 10 to 240",)),
    ("8 days x 40 min", ("got 8 days, expected a whole number from 1 to 7",)),
    ("0 days x 40 min", ("got 0 days, expected a whole number from 1 to 7",)),
    ("2.5 days x 40 min", ("got 2.5 days, expected a whole number from 1 to 7",)),
    ("3 x 40.5 min", ("'40.5 min' is 40.5 minutes, expected whole minutes from 10 to 240",)),
    ("grow delts", ("the days are not said; begin with, for example, 3 days x 40 min",)),
    ("mon wed", ("'mon wed' does not say for how many minutes; write for example mon wed 40 min",)),
    ("mon 40 min, mon 60 min", ("days: mon is named 2 times; name each weekday once",)),
    (
        "3 days x 40 min, sat 60 min",
        ("days are both counted and named; count them all or name every weekday",),
    ),
    (
        "mon 40 min, sat 60 min at home with dumbbells",
        (
            "'at home with dumbbells' stands with some days, and others have no place; name "
            "a place after every day, or set it apart with a comma for the whole week",
        ),
    ),
    ("3x40 for growth, efficient", ("the goal is said twice: growth and efficiency; keep one of the two",)),
    ("3x40 grow chest, no chest", ("'chest' is both priority and none; keep one of the two",)),
    ("3x40 grow delts, hold shoulders", ("'delts' is both priority and hold; keep one of the two",)),
    ("3x40 novice advanced", ("the experience is said twice: novice and advanced; keep one of the two",)),
    (
        "3x40 with pairs, no pairs",
        ("whether sets are paired is said twice: yes and no; keep one of the two",),
    ),
    ("3x40 pleese", ("'pleese' is not understood; say it in other words or in a brief file",)),
    ("3x40, quietly grow delts", ("'quietly' is not understood; say it in other words or in a brief file",)),
    ("3x40 delts", ("'delts' stands alone; write grow delts, hold delts, no delts or delts at most 8 sets",)),
    ("3x40 squat", ("'squat' stands alone; write pin squat, avoid squat, like squat or dislike squat",)),
    ("3x40 knee", ("'knee' stands alone; write caution knee for the joint or must knee for the movement",)),
    ("3x40 hinge", ("'hinge' stands alone; write must hinge",)),
    (
        "3x40 at home",
        (
            "'home' does not say what is there; write at home with dumbbells, home gym, "
            "barbell garage, bands or bodyweight",
        ),
    ),
    ("3x40 at home with dumbblels", ("'dumbblels' is not understood; did you mean 'dumbbells'?",)),
    ("3x40 with barbel", ("'barbel' is not understood; did you mean 'barbell'?",)),
    (
        "3x40 no dlets",
        ("'dlets' is not a muscle, an item of equipment or an exercise; did you mean 'delts'?",),
    ),
    ("3x40 avoid chest", ("'chest' is a muscle, but 'avoid' takes an exercise or a movement",)),
    ("3x40 avoid bench pres", ("'bench pres' is not an exercise or a movement; did you mean 'bench press'?",)),
    ("3x40 like chest", ("'chest' is a muscle, but 'like' takes an item of equipment or an exercise",)),
    (
        "3x40 must squat",
        ("must[0]: 'squat' is not a movement, only one form of one; write 'knee', or pin an exercise",),
    ),
    (
        "3x40 must hing",
        ("must[0]: 'hing' is not in the catalogue, expected a movement; did you mean 'hinge'?",),
    ),
    (
        "3x40 pin bench pres on wed",
        ("'bench pres' is not an exercise; did you mean 'bench press'?",),
    ),
    ("3x40 pin bench press on sun", ("pins[0].day: sun is not a training day; choose one of mon, wed, fri",)),
    ("3x40 caution nee", ("'nee' is not a caution; did you mean 'knee'?",)),
    ("3x40 bad kneee", ("'kneee' is not a caution; did you mean 'knee'?",)),
    ("3x40 chest at most sets", ("'at most' names no number of sets; write for example at most 8 sets",)),
    (
        "3x40 chest at least 10 sets, chest at most 5 sets",
        ("muscles.chest: at least 10 sets is more than at most 5; swap the two or drop one",),
    ),
    (
        "3x40 chest at most 8 sets, chest at most 6 sets",
        ("'chest' is both at most 8 and 6; keep one of the two",),
    ),
    (
        "3x40 chest 10-6 sets",
        ("muscles.chest: at least 10 sets is more than at most 6; swap the two or drop one",),
    ),
    (
        "3x40 chest on 4 days",
        ("muscles.chest.days_at_least: got 4, but the week has 3 days; ask for fewer days or plan more",),
    ),
    ("3x40 keep 20 %", ("keep_share: got 0.2, expected 0.5 to 1",)),
    ("3x40 keep", ("'keep' takes a share; write for example keep 90 %",)),
    ("3x40 warm up", ("'warm up' takes minutes; write for example warm up 5 min",)),
    ("3x40 rule thrid-day off", ("rules.thrid-day: 'thrid-day' is not a rule; did you mean 'third-day'?",)),
    (
        "3x40 rule",
        ("'rule' takes a rule's id and off, hard or a cost; write for example rule third-day off",),
    ),
    (
        "3x40 no chest, chest at least 4 sets",
        ("muscles.chest: is at none, yet sets or days are asked for; drop one of the two",),
    ),
    (
        "mon 40 min, sport football",
        ("'sport football' does not say on which day; write sport football on tue lower",),
    ),
    ("3x40 mn", ("'mn' is not understood; did you mean 'min'?",)),
    ("3x40 10", ("'10' is not understood; write for example 3 days x 40 min",)),
    ("3x40 in a hotle", ("'hotle' is not understood; did you mean 'hotel'?",)),
    ("3x40 lower resp", ("'resp' is not understood; say it in other words or in a brief file",)),
    (
        "3x40 minimum dose, grow chest",
        ("muscles.chest: is at priority, but the minimum dose holds every muscle; drop one of the two",),
    ),
    (
        "5 days x 40 min in any order",
        (
            "rest_days_between: 5 days with 1 rest days between each take 9 days of 7; ask "
            "for fewer days or fewer rest days between (0 is allowed)",
        ),
    ),
    (
        "3x40, 2 rest days between",
        ("rest_days_between: is said, but the days have weekdays; add any_order = true",),
    ),
    (
        "mon tue 40 min, any order",
        ("any_order: is true, but weekdays are named; drop the weekdays or any_order",),
    ),
    (
        "3x40 pin bench press, avoid bench press",
        ("pins[0]: 'barbell-bench-press' is pinned and avoided; drop one of the two",),
    ),
    (
        "3x40 like bench press, dislike bench press",
        ("dislike: 'barbell-bench-press' stands under like too; keep it in one of the two",),
    ),
    ("40 min", ("'40 min' does not say on how many days; write for example 3 days x 40 min",)),
    ("3x40 at 6", ("'at 6' is not understood; say it in other words or in a brief file",)),
    (
        "3x40 [grow delts]",
        (
            "'[' is not understood; say it in other words or in a brief file",
            "']' is not understood; say it in other words or in a brief file",
        ),
    ),
    (
        "3x40 legs: tomorrow",
        (
            "'legs' stands alone; write grow legs, hold legs, no legs or legs at most 8 sets",
            "': tomorrow' is not understood; say it in other words or in a brief file",
        ),
    ),
    (
        "3x40 for strength",
        ("'for strength' is not what these weeks are for; they are for muscle growth",),
    ),
    ("3x40 for looks", ("'looks' is not understood; the goals are growth, efficiency and balanced",)),
    ("mon upper 60 min, thu lwoer 60 min", ("'lwoer' is not the theme of a day; did you mean 'lower'?",)),
    ("monn 40 min", ("'monn' is not understood; did you mean 'mon'?",)),
    ("thrice a week 30 min, no yoga", ("'yoga' is not a muscle, an item of equipment or an exercise",)),
    (
        "no chest, no back, 3x40 no delts, no arms, no legs, no core",
        ("muscles: every muscle is at none: nothing is left to train; train one at least",),
    ),
    ("3x40 -", ("'-' is not understood; say it in other words or in a brief file",)),
    ("3x40 dumbbells to 900 kg", ("owned.dumbbell_max: got 900, expected 1 to 200",)),
    ("3x40 chest at most 99 sets", ("muscles.chest.at_most: got 99, expected 0 to 40",)),
    ("3x40 kg lb", ("the unit is said twice: kg and lb; keep one of the two",)),
    (
        "x 40 min",
        (
            "'x' is not understood; say it in other words or in a brief file",
            "'40 min' does not say on how many days; write for example 3 days x 40 min",
        ),
    ),
    ("grow delts grow", ("'grow' names nothing, expected a muscle or group after it",)),
    ("3 days x 40 min grow delts hold", ("'hold' names nothing, expected a muscle or group after it",)),
    ("3x40 grow delts quietly", ("'quietly' is not understood; say it in other words or in a brief file",)),
    (
        "mon 40 min, tue upper lwer 40 min",
        (
            "'tue upper' does not say for how many minutes; write for example mon wed 40 min",
            "'lwer' is not understood; say it in other words or in a brief file",
            "'40 min' does not say on how many days; write for example 3 days x 40 min",
        ),
    ),
    (
        "3x40 avoid bench pres, like squat",
        ("'bench pres' is not an exercise or a movement; did you mean 'bench press'?",),
    ),
    ("3x40 barbell gargage", ("'gargage' is not understood; did you mean 'garage'?",)),
    ("3x40 with grow delts", ("'with' is not understood; say it in other words or in a brief file",)),
    ("3x40 grow the", ("'grow' names nothing, expected a muscle or group after it",)),
    ("3x40 @home", ("'@home' is not understood; did you mean 'home gym'?",)),
    ("3x40 chest 6-10", ("'6-10' does not say of what; write 6-10 sets",)),
    ("3x40 with", ("'with' is not understood; say it in other words or in a brief file",)),
    ("3x40 on", ("'on' is not understood; say it in other words or in a brief file",)),
    ("hello", ("'hello' is not understood; say it in other words or in a brief file",)),
    ("make me a plan", ("'make me a plan' is not understood; say it in other words or in a brief file",)),
    ("3x40 no no", ("'no' is not a muscle, an item of equipment or an exercise",)),
    ("3x40 without", ("'without' names nothing, expected an item of equipment or an exercise after it",)),
    ("3x40 pin", ("'pin' names nothing, expected an exercise after it",)),
    ("3x40 like", ("'like' names nothing, expected an item of equipment or an exercise after it",)),
    (
        "3x40 pin bench press 3 sets 4 sets",
        ("'4 sets' is not understood; write for example 3 days x 40 min",),
    ),
    (
        "3x40 pin bench press with squat, no pairs",
        ("pins[0].pair_with: asks for a pair, but pairs is false; drop one of the two",),
    ),
    (
        "3x40 grow side delts at least",
        ("'at least' names no number of sets; write for example at least 8 sets",),
    ),
    ("3x40, max effort", ("'max effort' is not understood; say it in other words or in a brief file",)),
    ("3x40 for", ("'for' is not understood; say it in other words or in a brief file",)),
    ("3 x", ("'3 x' does not say for how many minutes; write for example 3 days x 40 min",)),
    ("3x40 sport", ("'sport' does not say on which day; write sport football on tue lower",)),
    ("3x40 spare", ("'spare' takes minutes; write for example spare 5 min",)),
    ("3x40 single", ("'single' names nothing, expected an item of equipment after it",)),
    ("3x40 must", ("'must' names nothing, expected a movement after it",)),
    ("3x40 caution", ("'caution' names nothing, expected a caution after it",)),
    ("3x40 bad", ("'bad' names nothing, expected a caution after it",)),
    ("3x40 keep 200 %", ("keep_share: got 2, expected 0.5 to 1",)),
    (
        "mon to 40 min",
        ("'to' is not the theme of a day; choose one of full-body, upper, lower, push, pull, arms",),
    ),
    (
        "mon-xyz 40 min",
        ("'xyz' is not the theme of a day; choose one of full-body, upper, lower, push, pull, arms",),
    ),
    ("3x40 grow chest on 2", ("'on 2' is not understood; say it in other words or in a brief file",)),
    ("3x40 must glutes", ("must[0]: 'glutes' is a muscle, expected a movement",)),
    (
        "3x40 with glutes",
        ("'glutes' stands alone; write grow glutes, hold glutes, no glutes or glutes at most 8 sets",),
    ),
    ("3x40 for adjustable bench", ("'adjustable bench' stands alone; write with adjustable bench",)),
    ("3x40 on home gym", ("'home gym' stands alone; write at home gym",)),
    (
        "3x40 efficiency growth balanced",
        (
            "the goal is said twice: efficiency and growth; keep one of the two",
            "the goal is said twice: efficiency and balanced; keep one of the two",
        ),
    ),
)


@pytest.mark.parametrize(("phrase", "days", "rest"), SAYS, ids=[row[0] for row in SAYS])
def test_a_phrase_says_exactly_this(asker: Any, phrase: str, days: Any, rest: Any) -> None:
    """The raw brief of a right phrase, with nothing added."""
    raw, faults = draft_phrase(phrase, asker.catalogue)
    assert faults == ()
    assert raw.pop("days") == days
    assert raw == rest
    asker.of(phrase)


@pytest.mark.parametrize(("phrase", "said"), FAULTS, ids=[row[0] for row in FAULTS])
def test_a_wrong_phrase_is_told_what_is_wrong(asker: Any, phrase: str, said: tuple[str, ...]) -> None:
    """Every fault of the phrase, word for word."""
    assert asker.faults(phrase) == [f"phrase: {fault}" for fault in said]


def test_no_known_word_is_called_unknown_or_offered_for_itself(asker: Any) -> None:
    """Every spelling of the catalogue, after words that it does not go with."""
    lexicon = lexicon_of(asker.catalogue)
    known = {spelling for spellings in lexicon.spellings.values() for spelling in spellings}
    keys = {key_of(spelling) for spelling in known}
    faults: set[tuple[str, str]] = set()
    for spelling in sorted(known):
        phrase = ", ".join(f"{lead} {spelling}" for lead in ("for", "with", "on", "must", "grow"))
        try:
            asker.of(f"3x40, {phrase}")
        except UsageFault as error:
            faults |= {(fault.said, fault.remedy) for fault in error.faults}
    for said, remedy in faults:
        if "'" not in said:
            continue
        word = said.split("'")[1]
        offered = remedy.partition("did you mean ")[2].strip("?'")
        assert not offered or key_of(offered) != key_of(word), (said, remedy)
        if "is not understood" in said or "is not in the catalogue" in said:
            assert key_of(word) not in keys, (said, remedy)


def test_the_tables_are_long_enough() -> None:
    """At least seventy phrases, at least forty-five of them wrong."""
    assert len(SAYS) + len(FAULTS) >= 70
    assert len(FAULTS) >= 45


@pytest.mark.parametrize("phrase", [row[0] for row in SAYS])
def test_case_and_spaces_change_nothing(asker: Any, phrase: str) -> None:
    """Capitals and doubled spaces are read alike."""
    loud = "  " + phrase.upper().replace(" ", "  ") + "  "
    assert draft_phrase(loud, asker.catalogue) == draft_phrase(phrase, asker.catalogue)


@pytest.mark.parametrize("phrase", [row[0] for row in SAYS])
def test_no_word_is_ever_passed_over(asker: Any, phrase: str) -> None:
    """A word that is not known is a fault wherever it stands apart."""
    for spoilt in (f"zzyzx, {phrase}", f"{phrase}, zzyzx"):
        assert any("zzyzx" in fault for fault in asker.faults(spoilt))
