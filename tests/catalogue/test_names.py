"""Exercises by the names people write: each reaches the lift it is used for in the trade, and no other.

The list is common usage, no source: short forms, plurals, hyphens, and the words for equipment that people shorten.
"""

import pytest

from setwright.solver.brief.phrase.lexicon import ALL_KINDS, key_of, lexicon_of

WRITTEN = {
    "RDL": "barbell-romanian-deadlift",
    "RDLs": "barbell-romanian-deadlift",
    "BB RDL": "barbell-romanian-deadlift",
    "DB RDL": "dumbbell-romanian-deadlift",
    "DB RDLs": "dumbbell-romanian-deadlift",
    "B-stance RDL": "dumbbell-staggered-stance-romanian-deadlift",
    "single leg RDL": "dumbbell-single-leg-romanian-deadlift",
    "SLDL": "barbell-stiff-leg-deadlift",
    "stiff leg deadlifts": "barbell-stiff-leg-deadlift",
    "OHP": "barbell-overhead-press",
    "over head press": "barbell-overhead-press",
    "overhead presses": "barbell-overhead-press",
    "military press": "barbell-overhead-press",
    "BB overhead press": "barbell-overhead-press",
    "DB shoulder press": "seated-dumbbell-shoulder-press",
    "DB OHP": "standing-dumbbell-overhead-press",
    "dumbbell shoulder presses": "seated-dumbbell-shoulder-press",
    "Arnold press": "rotating-dumbbell-press",
    "bench press": "barbell-bench-press",
    "bench presses": "barbell-bench-press",
    "BB bench": "barbell-bench-press",
    "BB bench press": "barbell-bench-press",
    "DB bench press": "dumbbell-bench-press",
    "dumbbell bench presses": "dumbbell-bench-press",
    "incline DB press": "incline-dumbbell-press",
    "incline BB press": "incline-barbell-bench-press",
    "decline bench": "decline-barbell-bench-press",
    "close grip bench press": "close-grip-barbell-bench-press",
    "CGBP": "close-grip-barbell-bench-press",
    "floor press": "dumbbell-floor-press",
    "BB floor press": "barbell-floor-press",
    "skull crusher": "lying-curl-bar-triceps-extension",
    "skull crushers": "lying-curl-bar-triceps-extension",
    "skull-crushers": "lying-curl-bar-triceps-extension",
    "skullcrushers": "lying-curl-bar-triceps-extension",
    "DB skull crusher": "lying-dumbbell-triceps-extension",
    "BB skull crusher": "lying-barbell-triceps-extension",
    "lat raise": "dumbbell-side-raise",
    "lat raises": "dumbbell-side-raise",
    "lateral raises": "dumbbell-side-raise",
    "DB lateral raise": "dumbbell-side-raise",
    "side raises": "dumbbell-side-raise",
    "cable lateral raises": "one-arm-cable-side-raise",
    "machine lateral raise": "machine-side-raise",
    "rear delt fly": "bent-over-dumbbell-rear-raise",
    "rear delt flyes": "bent-over-dumbbell-rear-raise",
    "reverse pec deck": "machine-reverse-fly",
    "face pulls": "cable-face-pull",
    "facepull": "cable-face-pull",
    "pec deck": "machine-fly",
    "chest flyes": "cable-fly",
    "chest fly": "cable-fly",
    "DB flyes": "dumbbell-fly",
    "dumbbell flies": "dumbbell-fly",
    "cable crossovers": "cable-fly",
    "push ups": "push-up",
    "pushups": "push-up",
    "press ups": "push-up",
    "knee push-ups": "knee-push-up",
    "pull ups": "pull-up",
    "pullups": "pull-up",
    "weighted pull-ups": "loaded-pull-up",
    "weighted pullup": "loaded-pull-up",
    "neutral grip pull ups": "neutral-grip-pull-up",
    "chin ups": "chin-up",
    "weighted chins": "loaded-chin-up",
    "dips": "parallel-bar-dip",
    "weighted dips": "loaded-dip",
    "lat pulldown": "wide-grip-pulldown",
    "lat pull-downs": "wide-grip-pulldown",
    "lat pull down": "wide-grip-pulldown",
    "bent over rows": "barbell-row-to-chest",
    "BB row": "barbell-row-to-chest",
    "barbell rows": "barbell-row-to-chest",
    "pendlay rows": "barbell-row-from-the-floor",
    "DB rows": "one-arm-dumbbell-row",
    "single-arm DB row": "one-arm-dumbbell-row",
    "seated row": "close-grip-seated-cable-row",
    "seated cable rows": "close-grip-seated-cable-row",
    "T-bar rows": "standing-t-bar-row",
    "chest supported T-bar row": "chest-supported-t-bar-row",
    "inverted rows": "inverted-row",
    "squats": "barbell-back-squat",
    "back squats": "barbell-back-squat",
    "BB squat": "barbell-back-squat",
    "front squats": "barbell-front-squat",
    "goblet squats": "goblet-squat",
    "DB goblet squat": "goblet-squat",
    "SSB squat": "safety-bar-squat",
    "hack squats": "hack-squat",
    "leg presses": "leg-press",
    "Bulgarians": "dumbbell-rear-foot-elevated-split-squat",
    "bulgarian split squats": "dumbbell-rear-foot-elevated-split-squat",
    "DB split squat": "dumbbell-split-squat",
    "walking lunges": "dumbbell-walking-lunge",
    "lunges": "dumbbell-forward-lunge",
    "side lunges": "dumbbell-lateral-lunge",
    "step ups": "dumbbell-step-up",
    "leg extensions": "leg-extension",
    "hamstring curls": "seated-leg-curl",
    "lying leg curls": "lying-leg-curl",
    "standing leg curl": "standing-leg-curl",
    "nordics": "nordic-curl",
    "nordic curls": "nordic-curl",
    "GHR": "glute-ham-raise",
    "hip thrusts": "barbell-hip-thrust",
    "BB hip thrust": "barbell-hip-thrust",
    "DB hip thrusts": "dumbbell-hip-thrust",
    "glute bridges": "floor-glute-bridge",
    "donkey kicks": "floor-glute-kickback",
    "cable kickbacks": "cable-glute-kickback",
    "hyperextensions": "back-extension",
    "reverse hyper": "bench-reverse-back-extension",
    "deadlifts": "barbell-deadlift",
    "BB deadlift": "barbell-deadlift",
    "sumo deadlifts": "sumo-deadlift",
    "block pulls": "block-deadlift",
    "hex bar deadlift": "trap-bar-deadlift",
    "good mornings": "barbell-good-morning",
    "KB swings": "kettlebell-swing",
    "kettlebell swings": "kettlebell-swing",
    "bicep curls": "dumbbell-curl",
    "biceps curl": "dumbbell-curl",
    "DB curls": "dumbbell-curl",
    "BB curls": "barbell-curl",
    "EZ bar curl": "curl-bar-curl",
    "hammer curls": "dumbbell-hammer-curl",
    "DB hammer curls": "dumbbell-hammer-curl",
    "preacher curls": "curl-bar-preacher-curl",
    "incline DB curls": "incline-dumbbell-curl",
    "spider curls": "prone-incline-dumbbell-curl",
    "concentration curls": "concentration-curl",
    "Zottman curls": "rotating-dumbbell-curl",
    "reverse curls": "barbell-reverse-curl",
    "tricep pushdowns": "rope-pushdown",
    "triceps push-down": "rope-pushdown",
    "rope pushdowns": "rope-pushdown",
    "tricep extension": "dumbbell-overhead-extension",
    "overhead tricep extensions": "dumbbell-overhead-extension",
    "tricep kickbacks": "dumbbell-kickback",
    "calf raises": "standing-calf-raise",
    "seated calf raises": "seated-calf-raise",
    "sit ups": "sit-up",
    "situps": "sit-up",
    "crunches": "crunch",
    "cable crunches": "cable-crunch",
    "hanging leg raises": "hanging-leg-raise",
    "leg raises": "lying-leg-raise",
    "Russian twists": "plate-seated-twist",
    "planks": "plank",
    "pallof press": "cable-anti-rotation-press",
    "ab wheel rollouts": "ab-wheel-rollout",
    "farmer's walks": "dumbbell-farmers-carry",
    "farmers carries": "dumbbell-farmers-carry",
    "suitcase carries": "dumbbell-suitcase-carry",
    "shrugs": "dumbbell-shrug",
    "DB shrugs": "dumbbell-shrug",
    "BB shrug": "barbell-shrug",
    "upright rows": "barbell-upright-row",
    "adductor machine": "adductor-machine",
    "hip abductions": "abductor-machine",
    "landmine presses": "half-kneeling-landmine-press",
}
UNLIKE = {
    "sit-up": "step-up",
    "leg raise": "calf",
    "lat raise": "pulldown",
    "reverse fly": "lunge",
    "press-up": "overhead",
    "hip abduction": "adduct",
    "hip adduction": "abduct",
    "pull-up": "push",
    "pullover": "pull-up",
    "leg curl": "wrist",
    "skull crusher": "crunch",
}
"""What a name must not be taken for: a part of the id of a lift that looks or sounds like it."""
NO_LIFT = (
    "rowing",
    "yoga",
    "jump rope",
    "cycling",
    "high knees",
    "DB",
    "BB",
    "raise",
    "curl up high",
)


@pytest.mark.parametrize(("written", "lift"), WRITTEN.items())
def test_a_name_as_people_write_it_reaches_its_lift(catalogue, written, lift):
    for form in (written, written.lower(), written.upper(), written.replace("-", " ")):
        assert lexicon_of(catalogue).resolve(form, ("exercise",)) == ("exercise", lift), form


def test_more_than_a_hundred_names_are_tried():
    assert len(WRITTEN) >= 100


@pytest.mark.parametrize(("written", "part"), UNLIKE.items())
def test_a_name_is_not_taken_for_a_lift_that_only_looks_like_it(catalogue, written, part):
    for form in (written, f"{written}s", written.replace("-", " "), written.replace("-", "")):
        found = lexicon_of(catalogue).resolve(form, ("exercise",))
        assert found is None or part not in found[1], (form, found)


@pytest.mark.parametrize("word", NO_LIFT)
def test_what_is_no_lift_here_is_taken_for_none(catalogue, word):
    assert lexicon_of(catalogue).resolve(word, ("exercise",)) is None


def test_no_two_exercises_share_a_way_to_be_written(catalogue):
    """Small letters, hyphens and spaces count alike, so that a second owner of a name would be passed over unseen."""
    owner = {}
    for exercise in catalogue.exercises.values():
        for word in {exercise.id, exercise.name, *exercise.aliases}:
            assert owner.setdefault(key_of(word), exercise.id) == exercise.id, word


@pytest.mark.parametrize("word", ["low back", "lower back", "Low-Back"])
def test_the_lower_back_is_a_muscle_by_each_of_its_names(catalogue, word):
    assert lexicon_of(catalogue).resolve(word, ALL_KINDS) == ("muscle", "spinal-erectors")
