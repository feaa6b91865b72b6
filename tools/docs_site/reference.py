"""The reference: every public name with its signature and docstring, grouped by job."""

from __future__ import annotations

import re
from dataclasses import dataclass

from docs_site.api import Entry, Member, entry, items, public_names, sections

# A name with a module before a colon is no part of ``scalepan.__all__``: what is given back by
# something that is.
GROUPS: dict[str, tuple[str, str]] = {
    "amounts": (
        "Amounts",
        """quantity Quantity NumberColumn ExactColumn""",
    ),
    "foods": (
        "Foods, facts and conversions",
        """convert Conversion UsedFact OtherFact bundled_catalog catalog_with read_facts
        read_usda_sr Catalog Fact""",
    ),
    "yields": (
        "Yield tests",
        """read_yield_test parse_yield_test yield_test YieldTest YieldTrial TrialPart YieldShare
        PartShare StageCost TrialRatio""",
    ),
    "recipes": (
        "Recipes",
        """read_recipe parse_recipe Recipe Line MethodStep MadeBase BaseUse read_line read_lines
        WrittenLine fill_trays hand_over label Label LabelItem""",
    ),
    "prices": (
        "Price books, stock and packs",
        """read_prices parse_prices PriceBook Offer read_stock parse_stock _core:Stock
        _core:StockItem cover Cover cover_function CoverFunction CoverStep Purchase break_even
        BreakEven""",
    ),
    "costings": (
        "Costings",
        """cost Costing ShoppingRow _core:Leftover by_shop ShopCosting Why read_costing
        parse_costing costing_files:Refreshed Driver WithinSpend LeastSpend PackPrice Swap
        MakeOrBuy""",
    ),
    "curves": (
        "Curves",
        """Curve Breakpoint EvenCounts CountRun CheapestCount DominatedCounts""",
    ),
    "dishes": (
        "Several dishes",
        """read_dishes parse_dishes Dish basket Basket BasketDish BasketRow DishNeed""",
    ),
    "selling": (
        "Selling prices and cash",
        """selling_price sold_at Selling PriceFound cash_total CashTotal""",
    ),
    "measuring": (
        "Measuring out, pans and loads",
        """measure_out measure_out_lines measure_out_recipe MeasuredOut MeasuredLine measure_sets
        measure_set read_measure_sets MeasureSet pan pans pan_ratio pan_ratio_error read_pans Pan
        PrintedVolume loads Loads""",
    ),
    "sheets": (
        "Sheets",
        """Sheet Changes Formula Interval Text _core:Thing read_sheet parse_sheet
        sheet_studies:Sweep _core:SweptCell ValueRange sheet_comparison:Comparison
        sheet_difference SheetDifference""",
    ),
    "showing": (
        "Pages, plots and panels",
        """kitchen_page shopping_page costing_page printed_pages PrintedPages panel
        plots:plot_curve plots:plot_shares plots:plot_leftovers plots:plot_trials
        plots:plot_variants plots:plot_sweep""",
    ),
    "errors": (
        "Error classes",
        """Error NumberError MeasureError FoodError RecipeError PriceError CostError SheetError
        FileError PlotError""",
    ),
}
MORE = "more"
PUBLIC_MODULES = {"plots"}
ERRORS = set(GROUPS["errors"][1].split())
NO_ENTRIES = {"__version__"}
CODE = re.compile(r"``([a-z]+\.[a-z_]+)``")


@dataclass(frozen=True)
class Group:
    """A page of the reference."""

    page: str
    title: str
    names: list[str]


def groups() -> list[Group]:
    """Those above, and one of names that are in none of them yet."""
    found = [Group(page, title, names.split()) for page, (title, names) in GROUPS.items()]
    known = {name for group in found for name in group.names} | NO_ENTRIES
    more = [name for name in public_names() if name not in known]
    return [*found, Group(MORE, "More", more)] if more else found


def page_of(group: Group, codes: set[str]) -> str:
    """Its page."""
    parts = [f"# {group.title}\n"]
    for name in group.names:
        module = full_name(name).rpartition(".")[0] or "None"
        parts.append(f"```{{py:currentmodule}} {module}\n```\n")
        parts.append(_entry_text(_named(name), codes))
    return "\n".join(parts)


def full_name(name: str) -> str:
    """As Python has it; of what is only given back, and has no public place, the bare name."""
    module, _, plain = name.rpartition(":")
    if not module:
        return f"scalepan.{plain}"
    return f"scalepan.{module}.{plain}" if module in PUBLIC_MODULES else plain


def index_page(of: list[Group]) -> str:
    """Which name is on which page."""
    rows = "\n".join(
        f"| [{group.title}]({group.page}.md) | "
        + ", ".join(f"{{py:obj}}`~{full_name(name)}`" for name in group.names)
        + " |"
        for group in of
    )
    return f"""# Reference

All that `import scalepan` gives, by job. Of amounts: `Number` is an int, a `Fraction`, a `Decimal`,
a text, or a float, which is taken as the decimal that it prints. A `Quantity` is asked for its
`value` in the unit it is shown in, as a `Fraction`. Names in brackets behind "raises" lead to the
pages of the [errors](../errors/index.md).

| page | names |
|---|---|
{rows}

```{{toctree}}
:hidden:

{chr(10).join(group.page for group in of)}
```
"""


def _named(name: str) -> Entry:
    module, _, plain = name.rpartition(":")
    return entry(plain, module)


def _entry_text(one: Entry, codes: set[str]) -> str:
    signature = "" if one.kind == "exception" else one.signature
    members = "\n".join(_member_text(member, codes) for member in one.members)
    return (
        f"## {one.name}\n\n::::::{{py:{one.kind}}} {one.name}{_tidy(signature)}\n\n"
        f"{markdown(one.doc, codes)}\n\n{members}\n::::::\n"
    )


def _member_text(one: Member, codes: set[str]) -> str:
    shown = f"{one.name}{_tidy(one.signature)}" if one.kind == "method" else one.name
    kind = f":type: {one.signature}\n" if one.kind != "method" and one.signature else ""
    return f"::::{{py:{one.kind}}} {shown}\n{kind}\n{markdown(one.doc, codes)}\n::::\n"


def _tidy(signature: str) -> str:
    return signature.replace("\n", " ")


def markdown(doc: str, codes: set[str]) -> str:
    """A docstring for a page; the fields of a class stand with the fields."""
    text, named = sections(doc)
    parts = [_paragraph(part) for part in text.split("\n\n")]
    parts += [_list(title, section) for title, section in named.items() if title != "Attributes"]
    return _linked("\n\n".join(parts), codes)


def _paragraph(text: str) -> str:
    """As it is; with lines further in it is an example."""
    if any(line.startswith(("    ", ">>> ")) for line in text.splitlines()):
        return f"```python\n{text}\n```"
    return text


def _list(title: str, section: str) -> str:
    """Names of errors lead to their classes, others are code."""
    lines = []
    for names, what in items(section).items():
        shown = [name if name in ERRORS else f"`{name}`" for name in names.split(", ")]
        lines.append(f"- {', '.join(shown)}: {what}")
    return "\n".join([f"**{title}**\n", *lines])


def _linked(text: str, codes: set[str]) -> str:
    def code(found: re.Match[str]) -> str:
        return f"[`{found[1]}`](../errors/{found[1]}.md)" if found[1] in codes else found[0]

    def kind(found: re.Match[str]) -> str:
        return f"{{py:class}}`~scalepan.{found[0]}`" if found[0] in ERRORS else found[0]

    return re.sub(r"(?<![`\w.])[A-Z]\w*Error\b", kind, re.sub(CODE, code, text))
