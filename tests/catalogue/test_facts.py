"""Facts of anatomy and of the floor that the shipped exercises may not contradict."""

from types import SimpleNamespace

import pytest

from setwright.solver.evaluation.prescriptions import pairable

PINS = (
    "barbell-back-squat",
    "barbell-bench-press",
    "barbell-box-squat",
    "barbell-calf-raise",
    "barbell-front-squat",
    "barbell-good-morning",
    "barbell-overhead-extension",
    "barbell-pullover",
    "barbell-rear-foot-elevated-split-squat",
    "barbell-reverse-lunge",
    "barbell-split-squat",
    "barbell-step-up",
    "close-grip-barbell-bench-press",
    "curl-bar-overhead-extension",
    "decline-barbell-bench-press",
    "incline-barbell-bench-press",
    "incline-curl-bar-triceps-extension",
    "lying-barbell-triceps-extension",
    "lying-curl-bar-triceps-extension",
    "overhead-squat",
    "safety-bar-squat",
    "seated-barbell-overhead-press",
    "smith-front-squat",
    "smith-machine-bench-press",
    "smith-machine-close-grip-press",
    "smith-machine-incline-press",
    "smith-machine-shoulder-press",
    "smith-rear-foot-elevated-split-squat",
    "smith-split-squat",
    "smith-squat",
)
SUPPORTED = ("cable", "pulldown", "seated-row", "row-machine", "assisted-pull-up", "press-machine", "incline-machine")
TIRING_MACHINES = ("leg-press", "hack-squat", "pendulum-squat", "belt-squat", "smith", "t-bar")
NO_HEAVY_LOAD = ("bands", "bodyweight", "bodyweight-bar-and-step", "bodyweight-and-bands")
SECONDS_TO_CHANGE = {
    "barbell": (45, 75),
    "dumbbell": (30, 45),
    "kettlebell": (30, 45),
    "stack": (30, 60),
    "plates": (30, 60),
    "band": (30, 45),
    "bodyweight": (15, 60),
}


def parts(exercise):
    return dict(exercise.contributions)


def in_slots(catalogue, *slots):
    found = [e for e in catalogue.exercises.values() if e.slot.id in slots]
    assert found
    return found


def within(catalogue, kit):
    return [e for e in catalogue.exercises.values() if catalogue.kits[kit].items.issuperset(e.needs)]


def test_the_catalogue_is_large_enough(catalogue):
    assert len(catalogue.exercises) >= 300
    assert len(catalogue.muscles) == 19
    assert len(catalogue.kits) >= 9


# ---- what each lift trains


def test_squats_lunges_and_leg_presses_give_the_hamstrings_nothing(catalogue):
    for exercise in in_slots(catalogue, "squat", "leg-press", "lunge"):
        assert "hamstrings" not in exercise.muscles, exercise.id


def test_squats_and_lunges_train_quads_and_glutes_and_half_the_adductors(catalogue):
    for exercise in in_slots(catalogue, "squat", "lunge"):
        held = {m: p for m, p in parts(exercise).items() if m != "spinal-erectors"}
        assert held == {"quads": 100, "glutes": 100, "adductors": 50}, exercise.id


def test_a_leg_press_trains_the_glutes_by_half(catalogue):
    for exercise in in_slots(catalogue, "leg-press"):
        assert parts(exercise) == {"quads": 100, "glutes": 50, "adductors": 50}, exercise.id


def test_hip_thrusts_and_bridges_train_the_glutes_alone(catalogue):
    for exercise in in_slots(catalogue, "thrust"):
        assert parts(exercise) == {"glutes": 100}, exercise.id


def test_flat_presses_give_triceps_half_and_side_and_rear_delts_nothing(catalogue):
    for exercise in in_slots(catalogue, "flat-press", "incline-press", "dip"):
        assert parts(exercise) == {"chest": 100, "triceps": 50, "front-delts": 50}, exercise.id


def test_close_presses_turn_chest_and_triceps_round(catalogue):
    for exercise in in_slots(catalogue, "close-press"):
        assert parts(exercise) == {"triceps": 100, "chest": 50, "front-delts": 50}, exercise.id


def test_overhead_presses_train_the_front_delts_and_leave_the_chest(catalogue):
    for exercise in in_slots(catalogue, "overhead-press"):
        assert parts(exercise) == {"front-delts": 100, "side-delts": 50, "triceps": 50}, exercise.id


def test_rows_differ_by_where_they_end(catalogue):
    shared = {"biceps": 50, "rear-delts": 50}
    for slot, own in (
        ("row-to-chest", {"upper-back": 100, "lats": 50}),
        ("row-to-hip", {"lats": 100, "upper-back": 50}),
    ):
        for exercise in in_slots(catalogue, slot):
            held = {m: p for m, p in parts(exercise).items() if m != "spinal-erectors"}
            assert held == {**own, **shared}, exercise.id


def test_a_row_that_the_lower_back_holds_up_gives_it_half_a_set(catalogue):
    """Those bent over without a bench, a pad or a free hand on something; common practice, no source."""
    for exercise in in_slots(catalogue, "row-to-chest", "row-to-hip"):
        bent_over = exercise.axial > 0
        assert (parts(exercise).get("spinal-erectors") == 50) == bent_over, exercise.id
        assert not bent_over or "lower-back" in exercise.joints, exercise.id


def test_vertical_pulls_train_the_lats(catalogue):
    for exercise in in_slots(catalogue, "vertical-pull"):
        assert parts(exercise) == {"lats": 100, "upper-back": 50, "biceps": 50}, exercise.id


def test_deadlifts_from_the_floor_count_for_neither_upper_back_nor_full_quads(catalogue):
    for exercise in in_slots(catalogue, "deadlift"):
        assert "upper-back" not in exercise.muscles, exercise.id
        assert parts(exercise).get("quads", 0) <= 50, exercise.id
        assert exercise.once_a_week and exercise.axial == 3, exercise.id
    assert "quads" not in catalogue.exercises["barbell-deadlift"].muscles


def test_only_deadlifts_from_the_floor_are_held_to_once_a_week(catalogue):
    assert {e.slot.id for e in catalogue.exercises.values() if e.once_a_week} == {"deadlift"}


def test_a_straight_bar_is_lifted_from_the_floor_in_one_way_a_week(catalogue):
    """A second form beside the first would make the once a week of each of them two heavy days."""
    bars = [e for e in in_slots(catalogue, "deadlift") if "barbell" in e.needs]
    assert [e.id for e in bars if e.rank <= 2] == ["barbell-deadlift"]


def test_holds_and_reaches_on_the_floor_count_half(catalogue):
    """They load the trunk by the body's own weight; common practice, no source."""
    for name in ("dead-bug", "plank", "bird-dog", "hollow-hold"):
        assert catalogue.exercises[name].direct == frozenset(), name


def test_kickbacks_are_single_joint_and_no_hip_lift_of_their_own(catalogue):
    for exercise in in_slots(catalogue, "kickback"):
        assert parts(exercise) == {"glutes": 100} and not exercise.multi_joint, exercise.id
    assert not any("kick" in e.id and e.multi_joint for e in catalogue.exercises.values())


def test_a_bent_knee_calf_raise_is_less_than_half_of_a_straight_one(catalogue):
    assert all(parts(e) == {"calves": 40} for e in in_slots(catalogue, "calf-bent"))
    assert all(parts(e) == {"calves": 100} for e in in_slots(catalogue, "calf-straight"))


def test_hammer_and_reverse_curls_train_forearms_directly(catalogue):
    for exercise in in_slots(catalogue, "curl-neutral"):
        biceps = 50 if "reverse" in exercise.id else 100
        assert parts(exercise) == {"biceps": biceps, "forearms": 100}, exercise.id


def test_a_week_of_one_curl_has_the_palms_up(catalogue):
    """Common practice, no source: neutral and overhand curls come after a curl with the palms up."""
    best = {slot: min(e.rank for e in in_slots(catalogue, slot)) for slot in ("curl", "curl-neutral")}
    assert best["curl"] < best["curl-neutral"]
    assert all(e.rank > 2 for e in in_slots(catalogue, "curl-neutral") if "reverse" in e.id)


def test_a_contribution_is_whole_or_half_or_says_why(catalogue):
    for exercise in catalogue.exercises.values():
        odd = [m for m, part in exercise.contributions if part not in (50, 100)]
        told = [note for note in exercise.notes if "convention" in note or "et al." in note]
        assert len(told) >= len(odd), exercise.id


@pytest.mark.parametrize(
    ("free", "machine"),
    [
        ("barbell-bench-press", "machine-chest-press"),
        ("barbell-bench-press", "smith-machine-bench-press"),
        ("incline-barbell-bench-press", "machine-incline-press"),
        ("incline-barbell-bench-press", "smith-machine-incline-press"),
        ("close-grip-barbell-bench-press", "smith-machine-close-grip-press"),
        ("seated-dumbbell-shoulder-press", "machine-shoulder-press"),
        ("seated-dumbbell-shoulder-press", "smith-machine-shoulder-press"),
        ("parallel-bar-dip", "machine-dip"),
        ("parallel-bar-dip", "assisted-dip"),
        ("pull-up", "assisted-pull-up"),
        ("barbell-row-to-chest", "machine-chest-supported-row"),
        ("barbell-row-to-chest", "smith-machine-row"),
        ("barbell-row-to-hip", "machine-row-to-the-hip"),
        ("barbell-back-squat", "smith-squat"),
        ("dumbbell-split-squat", "smith-split-squat"),
        ("barbell-romanian-deadlift", "smith-romanian-deadlift"),
        ("barbell-hip-thrust", "machine-hip-thrust"),
        ("barbell-hip-thrust", "smith-hip-thrust"),
        ("dumbbell-fly", "machine-fly"),
        ("dumbbell-side-raise", "machine-side-raise"),
        ("bent-over-dumbbell-rear-raise", "machine-reverse-fly"),
        ("dumbbell-preacher-curl", "machine-curl"),
        ("barbell-shrug", "smith-machine-shrug"),
        ("barbell-calf-raise", "standing-calf-raise"),
        ("dumbbell-crunch", "machine-crunch"),
    ],
)
def test_a_machine_contributes_exactly_what_its_free_weight_twin_does(catalogue, free, machine):
    """But for the lower back, which holds up the trunk in a free row and not on a pad."""
    held = [
        [(m, p) for m, p in catalogue.exercises[name].contributions if m != "spinal-erectors" or "row" not in name]
        for name in (free, machine)
    ]
    assert held[0] == held[1]


# ---- what is safe


def test_the_lifts_that_can_pin_are_exactly_these(catalogue):
    assert tuple(sorted(e.id for e in catalogue.exercises.values() if e.can_pin)) == PINS


def test_a_bar_over_the_body_with_no_way_to_put_it_down_can_pin(catalogue):
    """Squats, bench presses and seated presses with a straight or guided bar; a floor or standing press ends free."""
    bars = ("barbell", "ez-bar", "safety-bar", "smith")
    for exercise in in_slots(
        catalogue, "squat", "lunge", "flat-press", "incline-press", "close-press", "extension-lying"
    ):
        under_a_bar = any(bar in exercise.needs for bar in bars) and exercise.load != "bodyweight"
        on_the_floor = "floor" in exercise.id or "landmine" in exercise.needs
        assert exercise.can_pin == (under_a_bar and not on_the_floor), exercise.id
    for exercise in in_slots(catalogue, "overhead-press", "extension-overhead"):
        seated = "bench" in exercise.needs and any(bar in exercise.needs for bar in bars)
        assert exercise.can_pin == seated, exercise.id


def test_what_holds_no_more_than_the_hands_say_needs_its_anchor(catalogue):
    """A band pulled from overhead, from behind or from the side is tied to something."""
    for exercise in catalogue.exercises.values():
        said = exercise.setting.lower()
        if exercise.load == "band" and ("anchor" in said):
            assert "anchor" in exercise.needs, exercise.id
    assert "ankle-anchor" in catalogue.exercises["nordic-curl"].needs
    for name in ("cable-fly", "low-to-high-cable-fly", "high-to-low-cable-fly", "cable-reverse-fly"):
        assert "cable-pair" in catalogue.exercises[name].needs, name
    assert "cable-pair" not in catalogue.exercises["one-arm-cable-fly"].needs


@pytest.mark.parametrize(
    ("joint", "names"),
    [
        ("shoulder", ("machine-fly", "cable-fly", "low-to-high-cable-fly", "one-arm-cable-fly", "dumbbell-fly")),
        ("knee", ("leg-press", "single-leg-leg-press")),
        ("lower-back", ("cable-pull-through", "band-pull-through", "band-romanian-deadlift", "band-good-morning")),
        ("lower-back", ("barbell-shrug", "dumbbell-shrug", "smith-machine-shrug", "cable-shrug", "band-shrug")),
    ],
)
def test_a_joint_that_is_loaded_is_named(catalogue, joint, names):
    for name in names:
        assert joint in catalogue.exercises[name].joints, name


def test_a_lift_done_under_a_guided_bar_is_no_lift_to_fail_on(catalogue):
    """Standing shrugs and calf raises apart, where the bar cannot come down on the lifter."""
    for exercise in catalogue.exercises.values():
        if "smith" in exercise.needs and exercise.multi_joint and exercise.slot.id != "thrust":
            assert not exercise.safe_to_fail, exercise.id


def test_what_a_beginner_cannot_do_yet_is_marked(catalogue):
    for name in ("pull-up", "chin-up", "parallel-bar-dip", "hanging-knee-raise", "ab-wheel-rollout"):
        assert catalogue.exercises[name].ability, name
    for name in ("barbell-front-squat", "nordic-curl", "pistol-squat", "glute-ham-raise"):
        assert catalogue.exercises[name].ability, name
    for name in ("push-up", "close-push-up", "pike-push-up", "band-push-up"):
        assert catalogue.exercises[name].ability, name
    for name in ("knee-raise-station", "assisted-pull-up", "assisted-dip", "hands-raised-push-up"):
        assert not catalogue.exercises[name].ability, name


def test_hinges_and_deadlifts_are_never_paired(catalogue):
    """Also those of the low class, which would else pass as light work."""
    for exercise in in_slots(catalogue, "hinge", "deadlift"):
        assert not pairable(SimpleNamespace(), exercise), exercise.id


def test_a_technique_ends_only_single_joint_lifts_of_both_limbs_that_are_safe_to_fail(catalogue):
    for exercise in catalogue.exercises.values():
        if exercise.techniques:
            assert not exercise.multi_joint and exercise.limb == "both" and exercise.safe_to_fail, exercise.id
            assert len(exercise.techniques) == 1, exercise.id


def test_load_is_dropped_only_where_it_strips_quickly(catalogue):
    for exercise in catalogue.exercises.values():
        if "drop" in exercise.techniques:
            quick = exercise.load in ("stack", "dumbbell") or exercise.id == "plate-crunch"
            assert quick, exercise.id
    assert catalogue.exercises["leg-press-calf-raise"].techniques == ()


@pytest.mark.parametrize("joint", ["shoulder", "elbow", "wrist", "lower-back", "hip", "knee", "ankle", "neck"])
def test_a_caution_about_one_joint_leaves_something_of_every_region(catalogue, joint):
    """A client with one sore joint still has a press, a pull and a leg lift, in a gym and at home."""
    for kit in ("commercial-gym", "machine-gym", "home-dumbbells"):
        open_still = [e for e in within(catalogue, kit) if joint not in e.joints and e.rank < 5 and not e.ability]
        for region in ("push", "pull", "lower"):
            assert any(e.multi_joint and e.region == region for e in open_still), (kit, joint, region)


# ---- fatigue, rank, time


def test_loaded_free_multi_joint_lifts_tire_and_supported_ones_do_not(catalogue):
    """High where a free or plate-loaded weight moves a large part of the body; what a stack or pad holds up is low."""
    slots = ("flat-press", "incline-press", "close-press", "overhead-press", "squat", "lunge")
    for exercise in in_slots(catalogue, *slots):
        goblet = exercise.slot.id == "squat" and exercise.load in ("dumbbell", "kettlebell")
        free = exercise.load in ("barbell", "dumbbell", "kettlebell")
        tiring = free or any(item in TIRING_MACHINES for item in exercise.needs)
        assert (exercise.fatigue == "high") == (tiring and not goblet), exercise.id
    for exercise in catalogue.exercises.values():
        if exercise.multi_joint and any(item in SUPPORTED for item in exercise.needs):
            assert exercise.fatigue == "low", exercise.id
        if exercise.load == "band":
            assert exercise.fatigue == "low", exercise.id
        if exercise.axial >= 2:
            assert exercise.fatigue == "high", exercise.id


def test_leg_presses_bar_rows_pull_ups_and_dips_rest_like_main_lifts(catalogue):
    names = ("leg-press", "single-leg-leg-press", "standing-t-bar-row", "smith-machine-row", "barbell-row-to-chest")
    for name in (*names, "barbell-row-to-hip", "pull-up", "chin-up", "parallel-bar-dip"):
        assert catalogue.exercises[name].main_lift, name


def test_high_fatigue_single_joint_lifts_are_only_those_taken_when_named(catalogue):
    tiring = [e for e in catalogue.exercises.values() if e.fatigue == "high" and not e.multi_joint]
    assert all(e.rank == 5 for e in tiring), [e.id for e in tiring]


def test_second_choices_and_stand_ins_stay_behind(catalogue):
    for exercise in catalogue.exercises.values():
        if "smith" in exercise.needs:
            assert exercise.rank == 2, exercise.id
        if exercise.load == "band":
            assert exercise.rank >= 3, exercise.id
        if "push-up" in exercise.id:
            assert exercise.rank >= 3, exercise.id
        if exercise.id.startswith("loaded-"):
            assert exercise.rank >= 2 and exercise.load == "plates", exercise.id
    assert catalogue.exercises["barbell-calf-raise"].rank == 4
    assert catalogue.exercises["close-grip-barbell-bench-press"].rank == 2


def test_a_body_weight_leg_lift_stays_behind_its_loaded_form(catalogue):
    """One-limb forms of rank 2 and 3 come first where dumbbells are light; these must not be among them."""
    exercises = catalogue.exercises
    for name in ("bodyweight-step-up", "bodyweight-rear-foot-elevated-split-squat", "squat-to-step"):
        assert exercises[name].rank == 4, name
    assert exercises["goblet-squat"].rank == exercises["goblet-box-squat"].rank == 3


def test_what_is_taken_only_when_named(catalogue):
    for name in ("sissy-squat", "nordic-curl", "copenhagen-plank", "prone-y-raise", "bench-dip", "dumbbell-kickback"):
        assert catalogue.exercises[name].rank == 5, name
    for name in ("pistol-squat", "superman", "bodyweight-single-leg-romanian-deadlift", "barbell-upright-row"):
        assert catalogue.exercises[name].rank == 5, name


def test_the_time_to_change_fits_the_kit(catalogue):
    for exercise in catalogue.exercises.values():
        least, most = SECONDS_TO_CHANGE[exercise.load]
        assert least <= exercise.change_over <= most, exercise.id
        if exercise.load == "barbell" and "barbell" in exercise.needs:
            assert exercise.change_over == 75, exercise.id


def test_load_steps_exist_exactly_where_a_load_does(catalogue):
    for exercise in catalogue.exercises.values():
        assert (exercise.load_step == 0) == (exercise.load in ("bodyweight", "band")), exercise.id
        assert exercise.light_below is None or exercise.load == "dumbbell", exercise.id


def test_legs_change_in_turn_only_where_one_set_holds_both(catalogue):
    assert all(e.limb == "both" for e in catalogue.exercises.values() if e.alternating)


def test_lines_are_short_enough_for_a_card(catalogue):
    for exercise in catalogue.exercises.values():
        assert 0 < len(exercise.setting) <= 60, exercise.id
        assert 0 < len(exercise.cue) <= 70, exercise.id


# ---- kits


def test_every_kit_trains_every_muscle_it_does_not_disclaim(catalogue):
    for kit in catalogue.kits.values():
        trained = {m for e in within(catalogue, kit.id) if e.rank < 5 for m in e.direct}
        assert trained | set(kit.cannot) == set(catalogue.muscles), kit.id
        assert not trained & set(kit.cannot), kit.id


def test_every_kit_with_a_load_has_main_lifts_for_press_and_legs(catalogue):
    for kit in catalogue.kits.values():
        if kit.id not in NO_HEAVY_LOAD:
            main = [e for e in within(catalogue, kit.id) if e.main_lift and e.rank <= 2 and not e.ability]
            assert {"push", "pull", "lower"} <= {e.region for e in main}, kit.id


def test_every_kit_fills_every_movement_or_says_why_it_cannot(catalogue):
    movements = {e.movement for e in catalogue.exercises.values() if e.rank < 5}
    assert {slot.movement for slot in catalogue.slots.values()} - movements == {"explosive"}
    for kit in catalogue.kits.values():
        filled = {e.movement for e in within(catalogue, kit.id) if e.rank < 5}
        missing = movements - filled - set(kit.cannot_fill)
        assert not missing, (kit.id, sorted(missing))
        assert not filled & set(kit.cannot_fill), kit.id


def test_a_kit_that_is_no_kit_at_all_holds_nothing(catalogue):
    assert catalogue.kits["bodyweight"].items == frozenset()
    assert catalogue.kits["bodyweight-bar-and-step"].items == {"low-bar", "step"}
    assert all(not e.needs for e in within(catalogue, "bodyweight"))


def test_lifts_of_other_sports_stand_only_by_name_and_earn_a_quarter_of_a_set(catalogue):
    """Thrown, caught or dropped far from failure, with no lowering: no source gives their growth (convention)."""
    fast = in_slots(catalogue, "explosive")
    assert {"power-clean", "clean-and-jerk", "power-snatch", "burpee", "sprint", "thruster"} <= {e.id for e in fast}
    for exercise in fast:
        assert exercise.rank == 5, exercise.id
        assert set(parts(exercise).values()) == {25}, exercise.id
        assert not exercise.direct, exercise.id
