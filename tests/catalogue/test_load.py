"""The loader finds what is wrong with a catalogue, all at once, and says what an overlay changed."""

import tomllib

import pytest

from setwright.catalogue.faults import CatalogueFault
from setwright.catalogue.load import DATA, load_catalogue, merge, read_toml
from setwright.catalogue.overlay import lay_over
from setwright.catalogue.parse import parse_catalogue

SLED = """
[[exercise]]
id = "sled-push"
name = "Sled push"
slot = "lunge"
rank = 2
needs = [{needs}]
direct = ["quads", "glutes"]
fatigue = "high"
limb = "both"
reps = {reps}
change_over = 60
axial = 0
load = "plates"
load_step = 5
setting = "Sled loaded, a clear lane ahead"
cue = "Lean in, long steady steps"
aliases = [{aliases}]
{more}
"""


def sled(needs="", reps="[10, 15]", aliases="", more=""):
    return SLED.format(needs=needs, reps=reps, aliases=aliases, more=more)


@pytest.fixture
def laid(tmp_path):
    """The catalogue under an overlay of that text."""

    def load(text):
        path = tmp_path / "own.toml"
        path.write_text(text, encoding="utf-8")
        return load_catalogue(path)

    return load


@pytest.fixture
def faults(laid):
    """The faults under an overlay of that text, as printed."""

    def found(text):
        with pytest.raises(CatalogueFault) as caught:
            laid(text)
        return [str(fault) for fault in caught.value.faults]

    return found


def shipped():
    tables = {}
    for path in sorted(DATA.rglob("*.toml")):
        merge(tables, read_toml(path), path.name)
    return tables


def test_the_shipped_catalogue_has_no_fault_and_no_change(catalogue):
    assert catalogue.changed == ()
    assert len(catalogue.digest) == 12


def test_entries_cannot_be_changed_by_a_reader(catalogue):
    with pytest.raises(TypeError):
        catalogue.exercises["pull-up"] = None


# ---- faults


def test_unknown_equipment_names_the_nearest(faults):
    assert faults(sled(needs='"barbel"')) == [
        "exercise sled-push: equipment 'barbel' is not known; did you mean 'barbell'?"
    ]


def test_a_muscle_that_nobody_trains(faults):
    found = faults('[[muscle]]\nid = "neck-flexors"\nname = "Neck flexors"\nsize = "minor"\n')
    assert found[0].startswith("muscle neck-flexors: nothing trains it directly; add an exercise")
    assert any(line.startswith("kit bands: nothing in it trains neck-flexors directly") for line in found)


def test_a_range_upside_down_says_how_to_write_it(faults):
    assert faults(sled(reps="[15, 10]")) == [
        "own.toml: exercise sled-push: reps is [15, 10]: upside down; write [10, 15]"
    ]


def test_a_range_that_is_not_in_the_list(faults):
    assert faults(sled(reps="[7, 9]")) == [
        "exercise sled-push: reps [7, 9] are not in the list; take a range of the list"
    ]


@pytest.mark.parametrize("alias", ["pull-up", "Leg press"])
def test_an_alias_that_hides_an_id_or_a_name(faults, alias):
    hidden = alias.lower().replace(" ", "-")
    assert faults(sled(aliases=f'"{alias}"')) == [
        f"exercise sled-push: the alias {alias!r} hides {hidden}; drop the alias"
    ]


def test_a_name_that_stands_for_another_exercise(faults):
    found = faults(sled().replace('name = "Sled push"', 'name = "Leg press"'))
    assert found == ["exercise sled-push: shares the name 'leg press' with leg-press; rename one"]


def test_a_kit_that_disclaims_a_muscle_it_trains(faults):
    cannot = '["side-delts", "spinal-erectors", "upper-traps", "forearms", "chest"]'
    assert faults(f'[[kit]]\nid = "bodyweight-bar-and-step"\ncannot = {cannot}\n') == [
        "kit bodyweight-bar-and-step: `cannot` lists chest, yet an exercise trains it; take it out of `cannot`"
    ]


def test_a_kit_that_does_not_say_what_it_cannot_train(faults):
    found = faults(
        '[[kit]]\nid = "bodyweight-bar-and-step"\ncannot = ["side-delts", "spinal-erectors", "upper-traps"]\n'
    )
    said = "nothing in it trains forearms directly; add an exercise, or list it in `cannot`"
    assert found == [f"kit bodyweight-bar-and-step: {said}"]


def test_a_kit_that_says_it_cannot_fill_what_it_fills(faults):
    found = faults('[[kit]]\nid = "bands"\n[kit.cannot_fill]\nrow = "nothing to pull"\nrows = "no such movement"\n')
    assert found == [
        "kit bands: movement 'rows' is not known; did you mean 'row'?",
        "kit bands: `cannot_fill` lists row, yet an exercise fills it; take it out of `cannot_fill`",
    ]


def test_a_reason_why_a_kit_cannot_fill_a_movement_is_a_text(faults):
    assert faults('[[kit]]\nid = "bands"\n[kit.cannot_fill]\ncarry = 3\n') == [
        "own.toml: kit bands: cannot_fill.carry is 3; expected a text"
    ]


def test_an_unknown_field_names_the_nearest(faults):
    assert faults(sled(more="fatige = 3")) == [
        "own.toml: exercise sled-push: 'fatige' is no field here; did you mean 'fatigue'?"
    ]


def test_a_missing_field_and_a_wrong_kind(faults):
    text = sled().replace('limb = "both"\n', "").replace("rank = 2", 'rank = "two"')
    found = faults(text)
    assert any("limb is missing; give one of both," in line for line in found)
    assert any("rank is 'two'; expected a whole number" in line for line in found)


def test_a_muscle_named_twice_by_one_exercise(faults):
    (line,) = faults(sled(more='indirect = ["quads"]'))
    assert line == "own.toml: exercise sled-push: names quads twice; let each muscle stand once"


def test_an_odd_contribution_needs_its_reason(faults):
    (line,) = faults(sled(more='other = [{ muscle = "calves", part = 0.25 }]'))
    assert 'why = "source or convention"' in line


def test_a_technique_on_a_multi_joint_lift_and_a_pin_that_is_safe_to_fail(faults):
    found = faults(sled(more='techniques = ["drop"]\ncan_pin = true\nsafe_to_fail = true'))
    assert [line.split(";")[0] for line in found] == [
        "exercise sled-push: allows a technique",
        "exercise sled-push: can pin the lifter and is safe to fail",
    ]


def test_the_same_id_twice_in_the_data():
    tables = shipped()
    tables["exercise"].append(dict(tables["exercise"][0]))
    with pytest.raises(CatalogueFault, match="the id stands twice; keep one"):
        parse_catalogue(tables, "", ())


def test_all_faults_of_form_come_at_once(faults):
    found = faults(sled(reps="[15, 10]", more="fatige = 3") + '[[kit]]\nid = "hotel-gym"\ncolour = "red"\n')
    assert len(found) == 3


def test_all_contradictions_come_at_once(faults):
    text = sled(needs='"barbel"', reps="[7, 9]", aliases='"pull-up"')
    text += '[[kit]]\nid = "bodyweight-bar-and-step"\ncannot = ["side-delts", "spinal-erectors", "upper-traps", "forearms", "chest"]\n'
    assert len(faults(text)) == 4


# ---- overlays


def test_an_overlay_adds_an_exercise_and_says_so(laid, catalogue):
    own = laid(sled(needs='"plate"'))
    assert own.changed == ("own.toml adds exercise sled-push",)
    assert own.exercises["sled-push"].needs == ("plate",)
    assert len(own.exercises) == len(catalogue.exercises) + 1
    assert own.digest != catalogue.digest
    assert "sled-push" not in catalogue.exercises


def test_an_overlay_changes_only_the_fields_it_names(laid, catalogue):
    own = laid('[[exercise]]\nid = "pull-up"\nrank = 2\ncue = "Chin over the bar"\n')
    assert own.changed == ("own.toml changes exercise pull-up: rank, cue",)
    assert own.exercises["pull-up"].rank == 2
    assert own.exercises["pull-up"].contributions == catalogue.exercises["pull-up"].contributions
    assert catalogue.exercises["pull-up"].rank == 1


def test_an_overlay_that_repeats_what_stands_changes_nothing(laid):
    assert laid('[[exercise]]\nid = "pull-up"\nrank = 1\n').changed == ()


def test_an_overlay_changes_a_rule_and_shows_both_numbers(laid):
    own = laid("[rule.line]\ncost = 0.2\n")
    assert own.changed == ("own.toml changes rule line: cost 0.1 -> 0.2",)
    assert own.rules["line"].cost == 0.2


def test_an_overlay_adds_equipment_a_kit_and_what_uses_it(laid):
    text = '[item.sled]\nname = "Sled"\nplace = "fixed"\n' + sled(needs='"sled"')
    text += '[[kit]]\nid = "turf"\nname = "turf"\nitems = ["*"]\n'
    own = laid(text)
    assert own.changed == (
        "own.toml adds item sled",
        "own.toml adds exercise sled-push",
        "own.toml adds kit turf",
    )
    assert "sled" in own.kits["turf"].items


def test_an_overlay_cannot_invent_a_rule(faults):
    assert faults("[rule.lin]\ncost = 0.2\n") == ["own.toml: rule.lin: is not known; did you mean 'line'?"]


def test_a_wrong_section_names_the_nearest_and_every_other_fault(faults):
    found = faults('[[exercises]]\nid = "x"\n[[kit]]\nname = "no id"\n[colour]\nred = 1\n')
    assert found == [
        "own.toml: exercises: is no part of a catalogue; did you mean 'exercise'?",
        'own.toml: kit: an entry has no id; give it id = "..."',
        "own.toml: colour: is no part of a catalogue; use one of "
        "exercise, kit, caution, age, muscle, group, item, slot, position, number, rule",
    ]


def test_laying_over_leaves_the_tables_it_was_given():
    tables = shipped()
    before = len(tables["exercise"])
    lay_over(tables, tomllib.loads(sled()), "own.toml")
    assert len(tables["exercise"]) == before


@pytest.mark.parametrize(("content", "said"), [(b"a = ", "is not TOML"), (b"\xff\xfe", "is not UTF-8 text")])
def test_a_file_that_cannot_be_read_as_toml(tmp_path, content, said):
    path = tmp_path / "own.toml"
    path.write_bytes(content)
    with pytest.raises(CatalogueFault, match=said):
        load_catalogue(path)


def test_a_file_that_is_not_there(tmp_path):
    with pytest.raises(CatalogueFault, match="cannot be read: No such file or directory; name a TOML file"):
        load_catalogue(tmp_path / "none.toml")
