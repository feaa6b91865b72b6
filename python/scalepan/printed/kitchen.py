"""The kitchen page: what the page of a dish says, its amounts to be read from afar."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING, Any

from scalepan import _core
from scalepan.command_line.page_words import Amounted, page_words, sentence
from scalepan.command_line.sections import POINT, Group, Section, Texts
from scalepan.command_line.tables import bound
from scalepan.display.markup import Markup, element, together, words
from scalepan.printed.blocks import (
    care,
    head,
    paragraph_of,
    reports,
    signature,
    small_print,
    sources_told,
    whole,
    wild,
)
from scalepan.printing import Part

if TYPE_CHECKING:
    from collections.abc import Iterable, Sequence

    from scalepan._core import LabelItem, Recipe
    from scalepan.command_line.page_words import BaseWords, DishWords, PageWords, StepWords
    from scalepan.command_line.sections import Row

_SHORT_AMOUNT = 32  # characters that stay on one line
_WORD = re.compile(r"\w+")


def kitchen_part(recipe: Recipe, sets: dict[str, Any], fills: str = "") -> Part:
    """The page of a recipe at the size wanted, by the sets of ``page_words``."""
    page = page_words(recipe, sets, fills)
    body = together(
        [
            head(page.title, [f"{sentence(text)}." for text in _facts(recipe, page)]),
            *(_base(base) for base in page.bases),
            *([element("h2", words(recipe.name))] if page.bases else []),
            _dish(page.dish),
            *([element("p", whole(page.times), of="note")] if page.times else []),
            _label(recipe, page.label),
            care(page.cautions, "Cautions"),
            reports(
                Section("To check", (Texts(page.to_check, POINT),)) if page.to_check else _NONE
            ),
            small_print("Facts used", sources_told(page.facts)),
            signature("Made"),
        ]
    )
    return Part(page.title, "kitchen page", body)


_NONE = Section()


def _facts(recipe: Recipe, page: PageWords) -> list[str]:
    """What is to know first, each on a line of its own."""
    tested, *others = page.size
    measures = [page.measures.removesuffix(".")] if page.measures else []
    return [tested, *_written_for(recipe), *others, *measures]


def _written_for(recipe: Recipe) -> list[str]:
    if recipe.factor == 1:
        return []
    serves, factor = (_core.quantity(number).told for number in (recipe.serves, recipe.factor))
    return [f"written for {serves}; this is {factor} times as much"]


def _base(base: BaseWords) -> Markup:
    facts = " ".join(f"{sentence(text)}." for text in base.facts)
    return element(
        "section",
        element("h2", words(base.title)),
        element("p", paragraph_of(facts)),
        _dish(base.dish),
    )


def _dish(dish: DishWords) -> Markup:
    rows = [_row(row) for row in dish.rows]
    first, *others = dish.header
    heads = [element("th", first, scope="col", colspan="2")]
    heads += [element("th", other, scope="col") for other in others]
    table = element(
        "table", element("thead", element("tr", *heads)), element("tbody", *rows), of="dish"
    )
    return together([table, _method(dish.steps)])


def _row(row: Row) -> Markup:
    first, *others = row
    if isinstance(row, Group) or not isinstance(first, Amounted):
        columns = str(len(row) + 1)
        return element(
            "tr", element("th", words(first), scope="rowgroup", colspan=columns, of="group")
        )
    amount = element("td", _terms(first.amount), of=_amount_kind(first.amount))
    food = first[len(first.amount) :].strip()
    cells = [element("td", paragraph_of(food), of=wild(food, "first"))]
    cells += [element("td", paragraph_of(other), of=_beside_kind(other)) for other in others]
    return element("tr", amount, *cells)


def _beside_kind(text: str) -> str:
    return "exact short" if len(text) <= _SHORT_AMOUNT else wild(text, "exact")


def _amount_kind(amount: str) -> str:
    return "amount short" if len(amount) <= _SHORT_AMOUNT else "amount"


def _method(steps: Sequence[StepWords]) -> Markup:
    if not steps:
        return Markup()
    heads = element(
        "tr",
        element("th", "amounts", scope="col"),
        element("th", "method", scope="col", colspan="2"),
    )
    rows = [_step(number, step) for number, step in enumerate(steps, 1)]
    return element("table", element("thead", heads), element("tbody", *rows), of="method")


def _step(number: int, step: StepWords) -> Markup:
    uses = [element("div", element("b", _terms(use.amount)), _rest(use)) for use in step.uses]
    behind = [" ", element("b", whole(f"{step.behind}."))] if step.behind else []
    return element(
        "tr",
        element("td", *uses, of=wild(" ".join(step.uses), "uses")),
        element("td", f"{number}.", of="number"),
        element("td", whole(step.text), *behind, of=wild(step.text)),
    )


def _terms(amount: str) -> Markup:
    """Broken between measures only: behind a plus sign."""
    return paragraph_of(" + ".join(bound(term) for term in amount.split(" + ")))


def _rest(use: Amounted) -> Markup:
    return paragraph_of(use[len(use.amount) :])


def _label(recipe: Recipe, label: Sequence[str]) -> Markup:
    first, *others, draft = label
    emphasised = _emphasised(first, _allergens(_core.label(recipe).items))
    told = [part for text in others for part in (Markup(" "), whole(text))]
    statements = element("p", element("b", "Label: "), *emphasised, *told)
    return element("section", statements, element("p", whole(draft), of="note"), of="label")


def _allergens(items: Iterable[LabelItem]) -> set[str]:
    """The words of all allergens in capitals, as the label writes them."""
    found: set[str] = set()
    for item in items:
        found |= {word.upper() for name in item.allergens for word in _WORD.findall(name)}
        found |= _allergens(item.parts)
    return found


def _emphasised(text: str, capitals: set[str]) -> list[Markup]:
    """The text with the allergens that it has in capitals set bold too."""
    pieces: list[Markup] = []
    done = 0
    for word in _WORD.finditer(text):
        if _is_one_of(word[0], capitals):
            pieces += [whole(text[done : word.start()]), element("b", whole(word[0]))]
            done = word.end()
    return [*pieces, whole(text[done:])]


def _is_one_of(word: str, capitals: set[str]) -> bool:
    """In the plural or not."""
    return word.isupper() and bool({word, f"{word}S", word.removesuffix("S")} & capitals)
