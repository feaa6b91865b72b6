"""Names that mean harm come out harmless on every printed page. All prices are invented."""

from __future__ import annotations

import base64
import hashlib
import re
import unicodedata

import pytest
import scalepan
from displayed import displayed, in_one_line, price_book, recipe, with_base
from page_reader import Page, document_of

NAMES = {
    "script": "<script>alert(1)</script>",
    "attribute": '" onmouseover="alert(1)" x=\'',
    "image": "</td></table><img src=x onerror=alert(1)>",
    "style": "</style><style>*{display:none}</style>",
    "style string": '"}@import url(//example.org);a{content:"\\',
    "entity": "&lt;script&gt; &amp; &#60;b&#62;",
    "comment": "<!-- <![CDATA[ ]]> -->",
    "right to left": "עדשים עם בצל",
    "overrides": "\u202e\u2066\u202bcba 12\u2069\u2069",
    "emoji": "🥕🍳",
    "long": "a" * 10_000,
    "long and wild": "<b>" * 3_000 + "\u202e",
    "formula": "=1+1",
}
ELEMENTS = {
    *("html", "head", "meta", "title", "style", "body", "main", "section", "h1", "h2", "p", "b"),
    *("small", "bdi", "table", "thead", "tbody", "tr", "th", "td", "ul", "li", "div", "span"),
    "input",
}
ATTRIBUTES = {
    *("lang", "charset", "content", "http-equiv", "name", "class", "title", "role", "scope"),
    *("colspan", "type", "aria-label"),
}
REACHING = [chr(code) for code in (*range(0x202A, 0x202F), *range(0x2066, 0x206A))]


def pages_of(name: str) -> dict[str, scalepan.PrintedPages]:
    """Every kind of page, with the name wherever a name may stand."""
    dish, prices = recipe(name), price_book(name)
    costing = scalepan.cost(dish, prices)
    costing.override("fennel.edible", "0.68", why=in_one_line(name), who=in_one_line(name))
    dishes = [scalepan.Dish(dish), scalepan.Dish(with_base(name), "Gratin")]
    made = {
        "kitchen": scalepan.kitchen_page(dish),
        "by measures": scalepan.kitchen_page(dish, "us spoons and cups", "scales 1 oz"),
        "with a base": scalepan.kitchen_page(with_base(name)),
        "with a method": scalepan.kitchen_page(with_method(name)),
        "shopping": scalepan.shopping_page(costing),
        "together": scalepan.shopping_page(scalepan.basket(dishes, prices)),
        "costing": scalepan.costing_page(costing),
    }
    return {**made, "all": scalepan.printed_pages(list(made.values()), "Letter")}


def with_method(name: str) -> scalepan.Recipe:
    """The name as the whole of a step."""
    text = in_one_line(name).replace("\\", "\\\\").replace('"', '\\"')
    step = f'{{ text = "{text}", uses = ["butter"], time = "5 min" }}'
    return scalepan.parse_recipe(
        f'name = "x"\nserves = 4\nlines = ["100 g butter"]\nmethod = [{step}]\n'
    )


@pytest.fixture(scope="module")
def made() -> dict[str, dict[str, scalepan.PrintedPages]]:
    return {label: pages_of(name) for label, name in NAMES.items()}


KINDS = ("kitchen", "by measures", "with a base", "with a method", "shopping", "together",
         "costing", "all")  # fmt: skip


@pytest.mark.parametrize("kind", KINDS)
@pytest.mark.parametrize("label", NAMES)
def test_no_name_does_harm(
    made: dict[str, dict[str, scalepan.PrintedPages]], label: str, kind: str
) -> None:
    page = document_of(made[label][kind])
    for tag, attributes in page.elements:
        assert tag in ELEMENTS
        assert attributes.keys() <= ATTRIBUTES
    assert [tag for tag, _ in page.elements].count("style") == 1
    beside = [value for _, attributes in page.elements for value in attributes.values()]
    for text in (*(text for text, _ in page.texts), *beside):
        assert not [char for char in REACHING if char in text]
        assert not {char for char in text if unicodedata.category(char) in ("Cc", "Cs")} - {"\n"}
    for text, tags in page.texts:
        if any(unicodedata.bidirectional(char) in ("R", "AL") for char in text):
            assert "bdi" in tags or "title" in tags
    assert len(page.source) < 1_000_000


@pytest.mark.parametrize("label", NAMES)
def test_no_name_reaches_the_style(
    made: dict[str, dict[str, scalepan.PrintedPages]], label: str
) -> None:
    """Whatever a name is, only the numbers of its characters differ."""
    for kind in ("kitchen", "costing"):
        style = document_of(made[label][kind]).style
        plain = document_of(made["emoji"][kind]).style
        code = r"(?:\\[0-9a-f]{6})+"
        assert re.sub(code, "", style) == re.sub(code, "", plain)
        assert re.search(code, style)
        assert not {char for char in style if not char.isascii()}


@pytest.mark.parametrize("kind", KINDS)
def test_the_policy_allows_the_one_style_and_nothing_else(
    made: dict[str, dict[str, scalepan.PrintedPages]], kind: str
) -> None:
    page = document_of(made["script"][kind])
    (policy,) = [each for tag, each in page.elements if "http-equiv" in each]
    digest = base64.b64encode(hashlib.sha256(page.style.encode()).digest()).decode()
    assert policy == {
        "http-equiv": "Content-Security-Policy",
        "content": f"default-src 'none'; style-src 'sha256-{digest}'; base-uri 'none'; "
        "form-action 'none'",
    }
    for fetching in ("url(", "@import", "src=", "href=", "<script", "javascript:"):
        assert fetching not in page.source.replace("<script>alert", "")
    assert "//" not in page.style


@pytest.mark.parametrize("kind", ["kitchen", "shopping", "costing", "together"])
@pytest.mark.parametrize("label", ["script", "attribute", "image", "entity", "right to left"])
def test_a_name_is_read_as_it_is_written(
    made: dict[str, dict[str, scalepan.PrintedPages]], label: str, kind: str
) -> None:
    assert NAMES[label] in document_of(made[label][kind]).text


def test_a_name_from_right_to_left_keeps_its_direction_to_itself() -> None:
    """What stands beside it is outside of its element, and so in its place."""
    page = document_of(scalepan.shopping_page(scalepan.cost(recipe(), price_book("עדשים"))))
    inside = {text for text, tags in page.texts if tags[-1:] == ["bdi"] and "עד" in text}
    assert inside == {"עדשים"}
    assert any(text.startswith(": ") and text.endswith(" EUR") for text, _ in page.texts)


def test_what_a_cook_goes_by_is_never_cut_and_names_are_with_a_count() -> None:
    step = "stir " * 2000
    page = document_of(scalepan.kitchen_page(with_method(step.strip())))
    assert step.strip() in page.text
    dish = recipe("b" * 3000)
    assert "b" * 200 + "… 2813 more characters" in document_of(scalepan.kitchen_page(dish)).text


def test_a_page_in_a_notebook_stands_in_a_frame_of_its_own() -> None:
    pages = scalepan.kitchen_page(recipe(NAMES["attribute"]))
    bundle = pages._repr_mimebundle_()
    shown = Page(bundle["text/html"])
    ((_, frame),) = [each for each in shown.elements if each[0] == "iframe"]
    assert frame["srcdoc"] == pages.html
    assert frame["sandbox"] == ""
    assert bundle["text/plain"] == f"{NAMES['attribute']}, 40 portions: kitchen page, A4"
    assert "printed pages" not in displayed()
