"""The card's PDF says what the handout says, a page a session, tagged, byte for byte the same, and text stays text."""

from __future__ import annotations

import json
import os
import subprocess
import sys
from collections.abc import Callable
from dataclasses import replace
from datetime import date
from functools import cache

import pytest
from handed import PAIRS, THREE, document, handed, shipped
from hostile import NAMES, hostile
from paper import fonts, opened, pressed, tags, texts

from setwright.catalogue.faults import SetwrightError
from setwright.solver.sheets.formats import written
from setwright.solver.sheets.handout.coach import Coach
from setwright.solver.sheets.handout.handout import CardLine, Handout, handout_of
from setwright.solver.sheets.pdf.card import card_values, language
from setwright.solver.sheets.pdf.glyph_coverage import DATA, LetterFault, plain
from setwright.solver.sheets.pdf.pdf_file import pdf_bytes

SIX = "six-90"
"""Scenario 08: six days asked, eight lines a day, the last day left free."""
COACH = Coach(
    name="Example Street Strength",
    lines=("1 Example Street", "coach@example.org"),
    review_weeks=4,
    start=date(2026, 1, 5),
)
LETTER = COACH.model_copy(update={"paper": "letter"})
EACH = pytest.mark.parametrize("name", [THREE, PAIRS, SIX])
LONG = "Long " * 60
UNBROKEN = "W" * 300
MARKUP = ("#panic()", "*a* _b_ $x^2$ `c` @ref <label>", ']#read("card.typ")[', "// gone? /* gone? */", "- + 1. /", '"}')
"""What typst would take for more than text, beside the names that every format is tried with."""
UNDRAWN = ("full-width", "arabic")
HOSTILE = (*(name for key, name in NAMES.items() if key not in UNDRAWN), *MARKUP)


@cache
def printed(name: str, coach: str = "a4") -> bytes:
    return pdf_bytes(handed(name, LETTER if coach == "letter" else COACH))


def busy(name: str) -> list:
    return [session for session in handed(name).sessions if session.lines]


def with_lines(week: Handout, change: Callable[[CardLine], CardLine]) -> Handout:
    """A week of which every line is changed."""
    return replace(
        week, sessions=tuple(replace(s, lines=tuple(change(line) for line in s.lines)) for s in week.sessions)
    )


# ---- pages


@EACH
@pytest.mark.parametrize(("paper", "sides"), [("a4", (210, 297)), ("letter", (215.9, 279.4))])
def test_a_cover_and_a_page_a_session(name: str, paper: str, sides: tuple[float, float]) -> None:
    """Sides in millimetres: ISO 216 for A4; ANSI/ASME Y14.1 for Letter, 8.5 x 11 inches."""
    pages = opened(printed(name, paper)).pages
    assert len(pages) == 1 + len(busy(name))
    for page in pages:
        assert (float(page.mediabox.width), float(page.mediabox.height)) == pytest.approx(
            [side / 25.4 * 72 for side in sides], abs=0.5
        )


@EACH
def test_every_line_is_on_its_sessions_page(name: str) -> None:
    for session, text in zip(busy(name), texts(printed(name))[1:], strict=True):
        assert pressed(session.title) in text
        assert pressed(f"{session.minutes} min") in text
        assert pressed(session.warm_up) in text
        for line in session.lines:
            said = (
                line.label,
                line.name,
                line.setting,
                line.cue,
                f"{line.sets} x {line.reps}",
                line.rest,
                line.ramp_up,
            )
            for part in (*said, line.technique[1:], line.partner, *line.swaps):
                assert pressed(part) in text, part


@EACH
def test_there_is_a_box_for_each_set(name: str) -> None:
    """Each box holds one multiplication sign, and nothing else on the page does."""
    for session, text in zip(busy(name), texts(printed(name))[1:], strict=True):
        assert text.count("\u00d7") == sum(line.sets for line in session.lines)


@EACH
def test_every_page_has_its_head_and_foot(name: str) -> None:
    week = handed(name, COACH)
    for text in texts(printed(name))[1:]:
        for said in (
            week.client,
            week.goal[1:],
            "Example Street Strength",
            "1 Example Street",
            week.caution,
            "2026-02-02",
        ):
            assert pressed(said) in text, said
        assert pressed("0 1 2 3 4 5 6 7 8 9 10") in text
        assert "NOTES" in text


@EACH
def test_the_cover_says_what_the_week_is_worth_and_why(name: str) -> None:
    week, text = handed(name, COACH), texts(printed(name))[0]
    low, high = week.interval
    for said in (week.title, week.asked, f"{week.index:.0f}", f"{low}-{high}", *week.why, *week.left_out):
        assert pressed(said) in text, said
    for session in week.sessions:
        for said in (session.title, *(line.name for line in session.lines)):
            assert pressed(said) in text, said
    for muscle in week.muscles:
        assert pressed(muscle.name) in text


def test_a_day_without_exercises_has_no_page_but_stands_on_the_cover() -> None:
    free = [session.title for session in handed(SIX).sessions if not session.lines]
    assert free == ["Saturday"]
    found = texts(printed(SIX))
    assert "Saturday" in found[0] and pressed("No exercises on this day") in found[0]
    assert not any("Saturday" in text for text in found[1:])


def test_a_date_a_load_and_a_link_are_printed_where_there_are_any() -> None:
    week = with_lines(handed(THREE, COACH), lambda x: replace(x, load="62.5 kg", link="https://example.org/how"))
    data = pdf_bytes(week)
    text = texts(data)[1]
    assert "2026-01-05" in text and "62.5kg" in text and "https://example.org/how" in text
    links = [a.get_object() for a in opened(data).pages[1].get("/Annots", [])]
    assert {str(link["/A"]["/URI"]) for link in links} == {"https://example.org/how"}


def test_an_order_left_open_is_said_on_the_cover() -> None:
    said = pressed(COACH.words["any_order"])
    assert said in texts(pdf_bytes(replace(handed(), any_order=True)))[0]
    assert said not in texts(printed(THREE))[0]


def test_a_date_is_left_to_be_written_where_the_card_serves_many_days() -> None:
    def dates(coach: Coach) -> list[str]:
        return [page["date"] for page in card_values(handed(THREE, coach))["sessions"]]

    assert dates(COACH) == ["2026-01-05", "2026-01-07", "2026-01-09"]
    assert dates(COACH.model_copy(update={"holidays": (date(2026, 1, 7),)})) == ["2026-01-05", "", "2026-01-09"]
    assert dates(COACH.model_copy(update={"weeks": 4})) == dates(Coach()) == ["", "", ""]


def test_a_link_that_is_no_web_address_stays_text() -> None:
    data = pdf_bytes(with_lines(handed(), lambda x: replace(x, link="javascript:alert(1)")))
    assert "javascript:alert(1)" in texts(data)[1]
    assert not any(page.get("/Annots") for page in opened(data).pages)


def test_the_words_are_the_coachs() -> None:
    words = {**COACH.words, "notes": "Notizen", "rest": "Pause", "warm_up": "Aufwärmen"}
    text = texts(pdf_bytes(handed(THREE, COACH.model_copy(update={"words": words, "language": "de-CH"}))))[1]
    assert "NOTIZEN" in text and "PAUSE" in text and "AUFWÄRMEN" in text and "NOTES" not in text


def test_the_load_is_headed_with_the_clients_unit() -> None:
    said = document()
    assert "LOAD(KG)" in texts(printed(THREE))[1]
    said["brief"]["client"]["unit"] = "lb"
    assert "LOAD(LB)" in texts(pdf_bytes(handout_of(said, shipped())))[1]


# ---- tags


@EACH
def test_it_is_tagged_as_the_standard_asks(name: str) -> None:
    """ISO 14289-1 (PDF/UA-1), from memory: marked, a language, a title shown, the identifier, alternative texts."""
    reader = opened(printed(name))
    root = reader.trailer["/Root"]
    assert root["/MarkInfo"]["/Marked"] is True or bool(root["/MarkInfo"]["/Marked"])
    assert root["/Lang"] == "en"
    assert bool(root["/ViewerPreferences"]["/DisplayDocTitle"])
    assert reader.metadata is not None and handed(name).client in str(reader.metadata.title)
    assert b"<pdfuaid:part>1</pdfuaid:part>" in root["/Metadata"].get_data()
    kinds = [str(tag["/S"]) for tag in tags(printed(name))]
    assert kinds.count("/Table") == 1 + len(busy(name))
    assert kinds.count("/TH") == 3 + 5 * len(busy(name))
    assert kinds.count("/H1") == 1 + len(busy(name))
    assert kinds.index("/H1") < kinds.index("/H2")


def test_every_picture_says_in_words_what_it_shows() -> None:
    figures = [tag for tag in tags(printed(THREE)) if tag["/S"] == "/Figure"]
    assert len(figures) == 1
    for muscle in handed().muscles:
        assert f"{muscle.name}: {muscle.sets:g} sets" in str(figures[0]["/Alt"])


def test_headings_are_the_sessions() -> None:
    titles = [str(tag["/T"]) for tag in tags(printed(THREE)) if tag["/S"] == "/H1"]
    assert titles == [handed().title, *(session.title for session in handed().sessions)]
    assert [str(item.title) for item in opened(printed(THREE)).outline if not isinstance(item, list)] == titles


@pytest.mark.parametrize(
    ("tag", "said"),
    [("de-CH", ("de", "ch")), ("en", ("en", None)), ("sr-Latn", ("sr", None)), ("pt-BR", ("pt", "br"))],
)
def test_the_language_is_the_clients(tag: str, said: tuple[str, str | None]) -> None:
    assert tuple(language(tag).values()) == said
    root = opened(pdf_bytes(handed(THREE, COACH.model_copy(update={"language": tag})))).trailer["/Root"]
    assert str(root["/Lang"]).lower() == "-".join(part for part in said if part)


def test_no_font_but_its_own_is_used() -> None:
    assert fonts(printed(THREE)) == {"SetwrightSans-Regular", "SetwrightSans-Semibold", "SetwrightSans-Bold"}


# ---- safe to open


def test_the_same_bytes_in_any_process() -> None:
    """Fresh processes with other hash seeds: nothing is left over from one to the next."""
    code = (
        "import sys, hashlib; from handed import handed; from setwright.solver.sheets.pdf.pdf_file import pdf_bytes; "
    )
    code += "print(hashlib.sha256(pdf_bytes(handed())).hexdigest())"
    paths = os.pathsep.join([os.path.dirname(__file__), *(path for path in sys.path if path)])
    found = {
        subprocess.run(
            [sys.executable, "-c", code],
            env={**os.environ, "PYTHONPATH": paths, "PYTHONHASHSEED": seed},
            capture_output=True,
            check=True,
            text=True,
        ).stdout
        for seed in ("1", "2")
    }
    assert len(found) == 1


@pytest.mark.parametrize("name", HOSTILE, ids=lambda text: repr(text[:14]))
def test_a_strange_name_is_only_text(name: str) -> None:
    """In every place that words of others reach it neither runs, nor breaks the page, nor vanishes."""
    week = hostile(name)
    data = pdf_bytes(replace(week, sessions=week.sessions[:1]))
    found, shown = texts(data), pressed(plain(name))
    cover, session = found
    assert cover.count(shown) >= 10 and session.count(shown) >= 20
    assert not any(page.get("/Annots") for page in opened(data).pages)


@pytest.mark.parametrize("key", UNDRAWN)
def test_a_strange_name_that_cannot_be_drawn_is_refused(key: str) -> None:
    with pytest.raises(LetterFault, match="the card's typeface has no"):
        pdf_bytes(hostile(NAMES[key]))


@pytest.mark.parametrize(("name", "coach"), [(LONG, COACH), (UNBROKEN, LETTER)], ids=["words-a4", "unbroken-letter"])
def test_names_of_300_letters_everywhere_stay_on_their_page(name: str, coach: Coach) -> None:
    """Every name, swap, the goal, the kit, the client and the letterhead at once; nothing lies outside a page."""
    loud = coach.model_copy(update={"name": name, "lines": (name,) * 6})
    week = with_lines(handed(SIX, loud), lambda x: replace(x, name=name, swaps=(name, name), partner=""))
    week = replace(week, goal=name, client=name, title=name, why=(name,) * 3, left_out=(name,))
    week = replace(week, sessions=tuple(replace(s, place=name, title=name) for s in week.sessions))
    data = pdf_bytes(week)
    assert len(opened(data).pages) == 1 + len(busy(SIX))
    for text in texts(data)[1:]:
        assert text.count(pressed(name)) >= 8 * 2
        assert pressed(week.caution) in text
    assert not outside(data)


def outside(data: bytes) -> list[str]:
    """Texts whose beginning lies off the paper's margins of 10 mm."""
    found: list[str] = []
    for page in opened(data).pages:
        wide, tall = float(page.mediabox.width), float(page.mediabox.height)

        def visit(text, cm, tm, font, size, wide=wide, tall=tall) -> None:
            x, y = tm[4] * cm[0] + cm[4], tm[5] * cm[3] + cm[5]
            if text.strip() and not (28 <= x <= wide - 28 and 20 <= y <= tall - 28):
                found.append(f"{text.strip()[:20]} at {x:.0f}, {y:.0f}")

        page.extract_text(visitor_text=visit)
    return found


@EACH
def test_nothing_is_printed_in_the_margins(name: str) -> None:
    assert not outside(printed(name)) and not outside(printed(name, "letter"))


def test_nothing_in_it_can_run_or_call_home() -> None:
    data = printed(THREE)
    for word in (b"/JavaScript", b"/JS", b"/Launch", b"/OpenAction", b"/EmbeddedFile", b"/AcroForm", b"/GoToR", b"/AA"):
        assert word not in data, word


def test_the_template_reads_its_data_and_nothing_else() -> None:
    text = (DATA / "card.typ").read_text(encoding="utf-8")
    for word in ("eval(", "@preview", "#import", "#include", "read(", "plugin("):
        assert word not in text, word
    assert text.count("sys.inputs") == 1


def test_a_letter_it_cannot_draw_is_an_error_that_names_it_once_where_it_stands() -> None:
    week = with_lines(handed(), lambda x: replace(x, cue="\u6c34 and \u0915"))
    with pytest.raises(LetterFault) as caught:
        pdf_bytes(week)
    where = [fault.where for fault in caught.value.faults]
    assert where == [f"{s.title}: {x.label}: cue" for s in week.sessions for x in s.lines for _ in range(2)]
    assert "CJK UNIFIED IDEOGRAPH-6C34" in str(caught.value.faults[0])


def test_a_name_that_stands_on_the_cover_too_is_faulted_once() -> None:
    first, *rest = handed().sessions
    line, *lines = first.lines
    week = replace(handed(), sessions=(replace(first, lines=(replace(line, name="A\u0915"), *lines)), *rest))
    with pytest.raises(LetterFault) as caught:
        pdf_bytes(week)
    assert [fault.where for fault in caught.value.faults] == ["Monday: A: name"]


@pytest.mark.parametrize(
    "said", ["Жим штанги лёжа", "Πιέσεις πάγκου", "Élévation latérale", "Bankdrücken ß ẞ", "Đẩy tạ"]
)
def test_names_in_the_three_scripts_are_drawn(said: str) -> None:
    assert pressed(said) in texts(pdf_bytes(with_lines(handed(), lambda x: replace(x, name=said))))[1]


def test_health_notes_are_nowhere_in_it() -> None:
    """The week carries a caution of the wrist; the one exercise that is named after it is set aside."""
    said = document(PAIRS)
    assert said["brief"]["client"]["cautions"][0]["tag"] == "wrist"
    week = handed(PAIRS, COACH)
    assert week.left_out
    data = printed(PAIRS)
    alts = " ".join(str(tag.get("/Alt", "")) for tag in tags(data))
    meta = str(opened(data).metadata) + opened(data).trailer["/Root"]["/Metadata"].get_data().decode("utf-8")
    own = {word for s in week.sessions for x in s.lines for word in (x.setting, x.cue) if "wrist" in word.lower()}
    for text in ("".join(texts(data)), alts, meta, json.dumps(card_values(week)), data.decode("latin-1")):
        feasibility_only = pressed(text).lower()
        for word in own:
            feasibility_only = feasibility_only.replace(pressed(word).lower(), "")
        assert "wrist" not in feasibility_only and "clearedby" not in feasibility_only
    assert pressed("Left out by your coach") in texts(data)[0]


def test_without_typst_the_remedy_is_said(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setitem(sys.modules, "typst", None)
    with pytest.raises(SetwrightError, match=r"pip install 'setwright\[pdf\]'"):
        written("pdf", handed())
