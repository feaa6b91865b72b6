"""Names that mean harm come out harmless in every display. All prices are invented."""

from __future__ import annotations

import html
import unicodedata

import pytest
from displayed import displayed
from page_reader import Page, bundle_of, page_of
from scalepan.command_line.sections import NOTE, POINT, Figure, Group, Section, Table, Texts
from scalepan.display.kinds import of_sections
from scalepan.display.page import html_of

NAMES = {
    "script": "<script>alert(1)</script>",
    "attribute": '" onmouseover="alert(1)" x=\'',
    "image": "</td></table><img src=x onerror=alert(1)>",
    "style": "</style><style>*{display:none}</style>",
    "entity": "&lt;script&gt; &amp; &#60;b&#62;",
    "comment": "<!-- <![CDATA[ ]]> -->",
    "right to left": "עדשים עם בצל",
    "overrides": "\u202e\u2066\u202bcba 12\u2069\u2069",
    "emoji": "🥕🍳",
    "long": "a" * 10_000,
    "long and wild": "<b>" * 3_000 + "\u202e",
    "formula": "=1+1",
    "terminal": "\x1b[31mred\x07\r\x9b2J",
    "half a pair": "a\ud800b",
}
KINDS = list(displayed())
ELEMENTS = {
    *("style", "div", "p", "small", "bdi", "table", "thead", "tbody", "tr", "th", "td"),
    *("ul", "li", "details", "summary", "b", "code"),
}
ATTRIBUTES = {"class", "title", "role", "scope", "colspan", "open"}
REACHING = [chr(code) for code in (*range(0x202A, 0x202F), *range(0x2066, 0x206A))]


@pytest.fixture(scope="module")
def shown() -> dict[str, dict[str, object]]:
    """Every kind with every name."""
    return {label: displayed(name) for label, name in NAMES.items()}


def expect_harmless(page: Page) -> None:
    """Only our own elements, and no character that would move its neighbours."""
    for element, attributes in page.elements:
        assert element in ELEMENTS
        assert attributes.keys() <= ATTRIBUTES
        assert attributes.get("class", "") in {
            *("", "scalepan", "scalepan-why", "title", "note", "figure", "group", "care"),
            *("n", "a", "f"),
        }
    assert [element for element, _ in page.elements].count("style") == 1
    titles = [attributes.get("title", "") for _, attributes in page.elements]
    for text in (*(text for text, _ in page.texts), *titles):
        assert not [char for char in REACHING if char in text]
        assert not [char for char in text if unicodedata.category(char) in ("Cc", "Cs")]
    for text, tags in page.texts:
        if any(unicodedata.bidirectional(char) in ("R", "AL") for char in text):
            assert "bdi" in tags


@pytest.mark.parametrize("kind", KINDS)
@pytest.mark.parametrize("label", NAMES)
def test_no_name_does_harm(shown: dict[str, dict[str, object]], label: str, kind: str) -> None:
    page = page_of(shown[label][kind])
    expect_harmless(page)
    assert len(page.source.encode()) < 200_000


@pytest.mark.parametrize("kind", KINDS)
@pytest.mark.parametrize("label", NAMES)
def test_the_plain_text_neither_moves_nor_floods_a_terminal(
    shown: dict[str, dict[str, object]], label: str, kind: str
) -> None:
    text = bundle_of(shown[label][kind])["text/plain"]
    unseen = {char for char in text if unicodedata.category(char) in ("Cc", "Cs", "Bidi")}
    assert unseen <= {"\n"}
    assert not [char for char in REACHING if char in text]
    assert len(text) < 30_000


@pytest.mark.parametrize("kind", ["recipe", "costing", "basket", "base", "error", "yield test"])
@pytest.mark.parametrize("label", ["script", "attribute", "image", "entity", "right to left"])
def test_a_name_is_read_as_it_is_written(
    shown: dict[str, dict[str, object]], label: str, kind: str
) -> None:
    assert NAMES[label] in page_of(shown[label][kind]).text


def test_what_would_be_obeyed_is_seen() -> None:
    """Unicode's pictures of control characters, and the numbers of what moves text."""
    page = Page(html_of(of_sections([Section("a\x1b\x07\x7f\u202eb\x9b\n")]).body))
    assert page.text == "a␛␇␡[U+202E]b[U+009B]␊"


def test_what_stands_behind_a_name_from_right_to_left_stays_there() -> None:
    """Its own element ends before the comma, so that 40 is not read as part of it."""
    page = Page(html_of(of_sections([Section("עדשים עם בצל, 40 portions")]).body))
    runs = [text for text, tags in page.texts if "p" in tags]
    assert runs == ["עדשים עם בצל", ", 40 portions"]
    assert page.texts[0][1][-2:] == ["bdi", "bdi"]
    assert page.texts[1][1][-2:] == ["p", "bdi"]


@pytest.mark.parametrize("label", NAMES)
def test_every_part_of_a_report_is_made_harmless(label: str) -> None:
    name = NAMES[label]
    table = Table(
        (name, name, name),
        [Group(name, 3), (name, name, Figure(name, name))],
        right=(1,),
        figures=(2,),
        whole=name,
        most=1,
    )
    parts = (table, Texts((name,)), Texts((name,), NOTE), Texts([name] * 9, POINT))
    display = of_sections([Section(name, parts), Section(name, parts, is_caution=True)])
    expect_harmless(Page(html_of(display.body)))
    assert "<script" not in display.body.lower()


def test_a_long_name_is_cut_with_a_count_and_its_whole_behind_it() -> None:
    display = of_sections([Section("", (Table(("x",), [("ab" * 150,), ("é" * 2000,)]),))])
    page = Page(html_of(display.body))
    first, second = (row[0] for row in page.tables[0][1:])
    assert first.text == "ab" * 100 + "… 100 more characters"
    assert ("bdi", {"title": "ab" * 150}) in page.elements
    assert second.text == "é" * 200 + "… 1800 more characters"
    assert ("bdi", {"title": "é" * 1000 + "… 1000 more characters"}) in page.elements
    assert display.text.replace("\n", "").replace(" ", "").startswith("x" + "-" * 78 + "ab" * 100)


def test_a_letter_keeps_its_accents_where_a_name_is_cut() -> None:
    accented = "e\u0301" * 150
    (row,) = Page(
        html_of(of_sections([Section("", (Table(("", ""), [("x" + accented, "")]),))]).body)
    ).tables[0]
    assert row[0].text == "x" + "e\u0301" * 99 + "… 102 more characters"


def test_what_points_at_a_figure_is_escaped_once() -> None:
    display = of_sections([Section("", (Table(("", ""), [("x", Figure("≈ 1", '"&amp;"'))]),))])
    assert 'title="exactly &quot;&amp;amp;&quot;"' in display.body
    (row,) = Page(html_of(display.body)).tables[0]
    assert row[1].exact == 'exactly "&amp;"'
    assert html.unescape(html.unescape('"&amp;"')) not in row[1].exact.removesuffix('"')
