"""Where a brief is read from, and what is said of a source that is no brief."""

from __future__ import annotations

from pathlib import Path
from typing import Any

TOML = b'goal = "growth"\ndays = [{ weekday = "mon", minutes = 40 }]\n'


def test_a_file_standard_input_and_a_phrase_say_the_same(asker: Any, tmp_path: Path) -> None:
    """Three ways to the same brief."""
    path = tmp_path / "brief.toml"
    path.write_bytes(TOML)
    from_file = asker.of(str(path)).brief
    assert asker.of("-", TOML).brief == from_file
    assert asker.of("-", b"mon 40 min, for growth\n").brief == from_file
    assert asker.of("mon 40 min, for growth").brief == from_file


def test_a_file_need_not_end_in_toml(asker: Any, tmp_path: Path) -> None:
    """A path that exists is a file, whatever it is called."""
    path = tmp_path / "brief"
    path.write_bytes(b"\xef\xbb\xbf" + TOML)
    assert asker.of(str(path)).brief.goal == "growth"


def _faults_of(asker: Any, tmp_path: Path, data: bytes) -> str:
    path = tmp_path / "brief.toml"
    path.write_bytes(data)
    (fault,) = asker.faults(str(path))
    return str(fault).removeprefix(f"{path}: ")


def test_a_file_that_is_no_brief_is_told_why(asker: Any, tmp_path: Path) -> None:
    """Empty, binary, in another encoding, too large, not TOML."""
    for data, said in (
        (b"", "is empty; write at least days = [{ minutes = 40 }]"),
        (b" \n\n", "is empty; write at least days = [{ minutes = 40 }]"),
        (b"\x89PNG\r\n\0\0", "is not UTF-8 text; name a TOML file"),
        (TOML.decode().encode("utf-16"), "is not UTF-8 text; save it as UTF-8"),
        (b'title = "a"\nname = "caf\xe9"\n', "is not UTF-8 text (line 2); save it as UTF-8"),
        (b"#" * 1_000_001, "is larger than 1 MB, expected a brief of a page; name the brief file"),
        (b"goal = growth\n", "is not TOML: Invalid value (at line 1, column 8); mend that line"),
        (b"a = 1\na = 2\n", "is not TOML: Cannot overwrite a value (at line 2, column 6); mend that line"),
        (b"a = " + b"[" * 5000, "is not TOML: nested too deeply; use fewer brackets inside brackets"),
        (b"goal = " + b"9" * 5000, "is not TOML: a number has more than 4300 digits; write a shorter one"),
    ):
        assert _faults_of(asker, tmp_path, data) == said


def test_the_faults_of_a_file_name_it(asker: Any, tmp_path: Path) -> None:
    """Each fault begins with the path as it was given."""
    path = tmp_path / "brief.toml"
    path.write_bytes(b"days = [{ minutes = 5 }]\n")
    assert asker.faults(str(path)) == [f"{path}: days[0].minutes: got 5, expected 10 to 240"]


def test_a_missing_file_and_a_folder_are_told(asker: Any, tmp_path: Path) -> None:
    """With the nearest file there is."""
    (tmp_path / "briefs.toml").write_bytes(TOML)
    missing = tmp_path / "brief.toml"
    assert asker.faults(str(missing)) == [f"{missing}: is not there; did you mean '{tmp_path / 'briefs.toml'}'?"]
    assert asker.faults(str(tmp_path)) == [
        f"{tmp_path}: is a folder, expected a TOML file; name a file in it: {tmp_path}/brief.toml"
    ]
    assert asker.faults("nowhere/brief.toml") == [
        "nowhere/brief.toml: is not there; check the name, or write the brief as one line"
    ]
    assert asker.faults("brief.json")[0].startswith("brief.json: is not there")


def test_an_empty_source_is_told(asker: Any) -> None:
    """Nothing at all, blanks, and an empty standard input."""
    assert asker.faults("") == ["brief: is empty; write for example '3 days x 40 min, grow delts'"]
    assert asker.faults("  \n") == ["brief: is empty; write for example '3 days x 40 min, grow delts'"]
    assert asker.faults("-", b"") == ["standard input: is empty; write at least days = [{ minutes = 40 }]"]


def test_a_phrase_that_is_no_line_of_words_is_told(asker: Any) -> None:
    """Too long, or with signs that are not text."""
    assert asker.faults("grow delts " * 300) == [
        "phrase: is 3300 letters long, at most 2000 are read; write a brief file"
    ]
    assert asker.faults("3x40 \0") == ["phrase: is not text; write words, or name a TOML file"]


def test_standard_input_is_toml_or_a_phrase(asker: Any) -> None:
    """Faults of either say which it was taken for."""
    assert asker.faults("-", b"3x40, grow dlets")[0].startswith("phrase: 'dlets'")
    assert asker.faults("-", b"goal = 3\n")[0].startswith("standard input: ")
    assert asker.of("-", b"# a remark\n\n3x40\n").brief.days[0].weekday == "mon"
