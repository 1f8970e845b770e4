"""The typeface draws the letters of three scripts, text is made fit for it, and what it cannot draw is named."""

from __future__ import annotations

import unicodedata

import pytest
from hypothesis import given
from hypothesis import strategies as st

from setwright.solver.cli.exit_codes import ExitCode, exit_code_of
from setwright.solver.sheets.pdf.glyph_coverage import DATA, LetterFault, drawn, fitted, plain

ISO_8859 = ("1", "2", "3", "4", "5", "7", "9", "10", "13", "14", "15", "16")
"""The parts of ISO/IEC 8859 for Latin (1-4, 9, 10, 13-16), Cyrillic (5) and Greek (7), as Python's codecs hold them."""
FONTS = sorted(DATA.glob("*.ttf"))


def letters_of(part: str) -> set[str]:
    text = bytes(range(0x20, 0x100)).decode(f"iso8859_{part}", errors="ignore")
    return {letter for letter in text if unicodedata.category(letter)[0] in "LN"}


@pytest.mark.parametrize("part", ISO_8859)
def test_every_letter_and_figure_of_the_standard_sets_is_drawn(part: str) -> None:
    assert {letter for letter in letters_of(part) if ord(letter) not in drawn()} == set()


@pytest.mark.parametrize("font", FONTS, ids=lambda path: path.stem)
def test_the_list_of_letters_is_the_fonts_own(font) -> None:
    from fontTools.ttLib import TTFont

    assert drawn() <= set(TTFont(font)["cmap"].getBestCmap())


def test_the_typeface_is_small_and_has_three_weights() -> None:
    assert len(FONTS) == 3
    assert sum(font.stat().st_size for font in FONTS) < 500_000


@pytest.mark.parametrize("font", FONTS, ids=lambda path: path.stem)
def test_the_typeface_bears_a_name_of_its_own_and_its_licence(font) -> None:
    """SIL Open Font License 1.1, condition 3: no modified version under the reserved name; 2: notice and licence."""
    from fontTools.ttLib import TTFont

    names = TTFont(font)["name"]
    said = {number: str(names.getDebugName(number)) for number in (1, 3, 4, 6, 16)}
    assert not [name for name in said.values() if "source" in name.lower()]
    assert said[1] == "Setwright Sans"
    assert "SIL Open Font License, Version 1.1" in str(names.getDebugName(13))
    licence = (DATA / "OFL.txt").read_text(encoding="utf-8")
    assert "Reserved Font Name" in licence and "SIL OPEN FONT LICENSE Version 1.1" in licence
    assert "Reserved Font Name" in str(names.getDebugName(0))


def test_a_letter_that_cannot_be_drawn_is_named_with_its_place() -> None:
    rows = [{"label": "A1", "name": "Press क", "details": [{"what": "cue", "label": "", "text": "up 🙂 up 🙂"}]}]
    with pytest.raises(LetterFault) as caught:
        fitted({"coach": {"lines": ["fine", "水"]}, "sessions": [{"title": "Monday", "rows": rows}]})
    assert [str(fault) for fault in caught.value.faults] == [
        f"{said}; write it in Latin, Greek or Cyrillic letters, or hand the week over as html"
        for said in (
            "coach: lines: 2: the card's typeface has no '水' (CJK UNIFIED IDEOGRAPH-6C34, U+6C34)",
            "Monday: A1: name: the card's typeface has no 'क' (DEVANAGARI LETTER KA, U+0915)",
            "Monday: A1: cue: the card's typeface has no '🙂' (SLIGHTLY SMILING FACE, U+1F642)",
        )
    ]
    assert exit_code_of(caught.value) is ExitCode.ERROR


def test_half_a_pair_of_surrogates_is_named_and_printable() -> None:
    with pytest.raises(LetterFault) as caught:
        fitted(["a\ud800b"])
    assert "U+D800" in str(caught.value)
    str(caught.value).encode("utf-8")


@pytest.mark.parametrize(
    ("said", "printed"),
    [
        ("Pull\u202eup\u202c", "Pullup"),
        ("\u200fPress\u200e", "Press"),
        ("row\r\nATTENDEE:x", "row ATTENDEE:x"),
        ("a\tb\u2028c\u00a0d", "a b c d"),
        ("nul\x00l\x1b[31m", "null[31m"),
        ("e\u0301pauler", "\u00e9pauler"),
        ("\u04dc\u0443\u0439", "\u0416\u0308\u0443\u0439"),
        ("#let x = 1", "#let x = 1"),
        ("<script>&amp;", "<script>&amp;"),
    ],
)
def test_marks_that_steer_are_taken_out_and_words_stay(said: str, printed: str) -> None:
    assert plain(said) == printed


@given(st.text())
def test_plain_text_is_one_line_and_stays_as_it_is(text: str) -> None:
    found = plain(text)
    assert plain(found) == found
    assert not {unicodedata.category(letter) for letter in found} & {"Cc", "Cf", "Zl", "Zp"}


@given(st.text(alphabet=st.sampled_from([chr(point) for point in sorted(drawn())])))
def test_what_the_typeface_draws_is_never_refused(text: str) -> None:
    assert fitted({"name": text}) == {"name": plain(text)}


@given(st.text(min_size=1).filter(lambda text: any(letter.isalnum() for letter in text)))
def test_no_letter_or_figure_vanishes(text: str) -> None:
    """Unicode's normal form may compose letters, so both sides are compared decomposed (UAX 15)."""
    kept = [letter for letter in unicodedata.normalize("NFD", text) if letter.isalnum()]
    assert [letter for letter in unicodedata.normalize("NFD", plain(text)) if letter.isalnum()] == kept
