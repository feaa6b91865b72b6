"""Recipes, prices and stock written back as text, and read again. All prices are invented."""

from __future__ import annotations

import csv
import io
from decimal import Decimal
from fractions import Fraction
from pathlib import Path

import pytest
import scalepan
from hypothesis import example, given
from hypothesis import strategies as st
from scalepan import quantity
from scalepan.csv_document import Columns, csv_text, harmless, read_rows

COLUMNS = Columns("price", ("one", "two"), ())
FIELD = st.text(st.characters(exclude_categories=("Cs", "Cc"), include_characters="\t\r\n"))
# Beginnings that OWASP, "CSV Injection" names (from memory).
FORMULAS = ["=1+1", "+1", "-1", "@x", "\t=1", "\r=1", "\n=1", "  =1", "＝1", "＋1", "－1", "＠1"]


@given(st.lists(st.tuples(FIELD, FIELD), min_size=1))
@example([("", "\r"), ("", "x")])
def test_fields_of_any_text_are_read_as_they_were_written(rows: list[tuple[str, str]]) -> None:
    kept = [row for row in rows if "".join(row).strip()]
    text = csv_text(("one", "two"), rows)
    if not kept:
        with pytest.raises(scalepan.PriceError):
            read_rows(text, "", COLUMNS)
        return
    read = [(row["one"][0], row["two"][0]) for row in read_rows(text, "", COLUMNS)]
    assert read == kept


@given(st.lists(st.tuples(st.sampled_from(FORMULAS), FIELD).map("".join), min_size=1))
def test_no_field_begins_as_a_formula(fields: list[str]) -> None:
    # By the standard library's own reader, which takes no apostrophe off.
    rows = list(csv.reader(io.StringIO(csv_text(("one",), [[f] for f in fields]), newline="")))
    assert [row[0] for row in rows[1:]] == [f"'{field}" for field in fields]


@pytest.mark.parametrize("field", FORMULAS)
def test_an_apostrophe_of_ones_own_stays(field: str) -> None:
    own = f"'{field}"
    assert harmless(own) == f"''{field}"
    text = csv_text(("one", "two"), [(own, "x")])
    assert read_rows(text, "", COLUMNS)[0]["one"][0] == own


def test_the_apostrophe_moves_the_column_of_an_error() -> None:
    text = "item,sold_as,pack,price,keeps\n'=x,AP,'-1 kg,1,no\n"
    with pytest.raises(scalepan.PriceError) as caught:
        scalepan.parse_prices(text, file="p.csv")
    assert caught.value.place == "p.csv:2:9"


OFFERS = st.fixed_dictionaries(
    {
        "item": st.sampled_from(["leeks", "=cmd()", "+44 tea", "red, ripe", 'the "best"', "-x"]),
        "sold_as": st.sampled_from(["AP", "EP"]),
        "pack": st.sampled_from(["1 kg", "500 g", "1 pint", "6", "2 x 400 g"]),
        "price": st.decimals("0.01", "99.99", places=2).map(str),
        "keeps": st.sampled_from(["yes", "no", "3 days"]),
        "currency": st.sampled_from(["", "EUR", "GBP"]),
        "shop": st.sampled_from(["", "market", "@home", "\tby the door"]),
        "date": st.sampled_from(["", "2026-11-20", "2026-11-21"]),
        "limit": st.sampled_from(["", "4"]),
        "tax": st.sampled_from(["", "7 %", "7 % added"]),
    }
)


def figures(book: scalepan.PriceBook) -> list[object]:
    names = ("item", "sold_as", "content", "price", "keeps", "keeps_days", "shop", "date", "limit")
    return [
        tuple(getattr(offer, name) for name in (*names, "tax", "tax_included"))
        for offer in book.offers
    ]


@given(st.lists(OFFERS, min_size=1, max_size=4, unique_by=lambda r: (r["item"], r["pack"])))
def test_a_price_book_reads_as_it_was_written(rows: list[dict[str, str]]) -> None:
    book = scalepan.price_book(rows, measures="imperial")
    text = scalepan.prices_text(book)
    again = scalepan.parse_prices(text)
    assert figures(again) == figures(book)
    assert scalepan.prices_text(again) == text


def test_measures_and_currency_given_to_all_rows_are_written(tmp_path: Path) -> None:
    text = "item,sold_as,pack,price,keeps\nmilk,AP,1 pint,0.65,no\n"
    book = scalepan.parse_prices(text, measures="imperial", currency="GBP")
    scalepan.write_prices(book, tmp_path / "p.csv")
    assert (tmp_path / "p.csv").read_bytes() == (
        b"item,sold_as,pack,price,keeps,currency,measures\r\n"
        b"milk,AP,1 pint,0.65,no,GBP,imperial\r\n"
    )
    (offer,) = scalepan.read_prices(tmp_path / "p.csv").offers
    # 1 imperial pint is 568.26125 mL (Weights and Measures Act 1985, Schedule 1).
    assert offer.content.to("mL").value == Fraction("568.26125")
    assert offer.price == quantity("0.65 GBP")


def test_stock_reads_as_it_was_written(tmp_path: Path) -> None:
    rows = [
        {"item": "rice", "stage": "AP", "amount": "3 kg", "value": Decimal("4.50")},
        {"item": "milk", "stage": "AP", "amount": "1 pint", "use_by": "2026-11-30"},
    ]
    kept = scalepan.stock(rows, currency="EUR", measures="us")
    scalepan.write_stock(kept, tmp_path / "s.csv")
    again = scalepan.read_stock(tmp_path / "s.csv")
    told = [[(i.item, i.amount, i.value, i.use_by) for i in one.items] for one in (kept, again)]
    assert told[0] == told[1]
    assert told[0][1] == ("rice", quantity("3 kg AP"), quantity("4.50 EUR"), "")


TOML = """\
prices = [
  { item = "leeks", sold_as = "AP", pack = "1 kg", price = 2.10, currency = "EUR", keeps = false },
  { item = "eggs", sold_as = "AP", pack = "10", price = "2.90", keeps = "21 days" },
]
[[stock]]
item = "rice"
stage = "AP"
amount = "3 kg"
"""


def test_prices_and_stock_come_from_toml_too() -> None:
    leeks, eggs = scalepan.parse_prices(TOML, file="night.toml", currency="GBP").offers
    assert (leeks.price, leeks.keeps) == (quantity("2.10 EUR"), False)
    assert (eggs.price, eggs.keeps_days) == (quantity("2.90 GBP"), 21)
    assert leeks.row["at"] == "night.toml:2:13"
    (rice,) = scalepan.parse_stock(TOML, file="night.toml").items
    assert rice.amount == quantity("3 kg AP")


@pytest.mark.parametrize(
    ("text", "code", "told"),
    [
        ("prices = 1", "price.type", "p.toml:1:10: prices is not a list (prices = [{ ... }])"),
        ("prices = [1]", "price.type", "p.toml:1:11: a row is not a table"),
        ("stock = []", "price.no_rows", "p.toml: the file has no prices (prices = [{ ... }])"),
        ("offers = []", "price.unknown_key",
         'p.toml:1:10: unknown key "offers" (keys: prices, stock)'),
        ("prices = [{ item = 1.5, sold_as = [] }]", "price.column",
         "p.toml:1:11: the row has no pack (columns: item, sold_as, pack, price, keeps; also "
         "currency, shop, date, note, offer, least, limit, tax, deposit, measures)"),
        ("a,,", "price.syntax",
         "p.toml:1:2: not TOML: Expected '=' after a key in a key/value pair"),
        ('prices = [{ price = 0,50 }]', "price.syntax",
         "p.toml:1:26: not TOML: Expected '=' after a key in a key/value pair (a number has a "
         "decimal point: write 0.50, or a text)"),
    ],
)  # fmt: skip
def test_toml_that_is_no_price_book(text: str, code: str, told: str) -> None:
    with pytest.raises(scalepan.PriceError) as caught:
        scalepan.parse_prices(text, file="p.toml")
    assert (caught.value.code, str(caught.value)) == (code, told)


def test_an_unknown_column_of_toml_and_unknown_measures() -> None:
    with pytest.raises(scalepan.PriceError) as caught:
        scalepan.parse_prices('prices = [{ colour = "red" }]', file="p.toml")
    assert str(caught.value).startswith('p.toml:1:23: unknown column "colour" (columns: item')
    text = "item,sold_as,pack,price,keeps,measures\nx,AP,1 kg,1,no,lunar\n"
    with pytest.raises(scalepan.MeasureError) as other:
        scalepan.parse_prices(text, file="p.csv")
    assert str(other.value) == (
        'p.csv:2:16: no measures are called "lunar" (there are: metric, us, imperial, au)'
    )


# Recipes.

PRINTABLE = st.text(st.characters(exclude_categories=("C", "Zl", "Zp")))


def test_a_recipe_read_from_a_file_keeps_its_text(tmp_path: Path) -> None:
    text = (
        '# how we make it\nname = "Broth"   # short\nserves = 4\nlines = ["200 g pearl barley"]\n'
    )
    broth = scalepan.parse_recipe(text, file="broth.toml").scale(portions=40)
    assert scalepan.recipe_text(broth) == text
    scalepan.write_recipe(broth, tmp_path / "again.toml")
    assert (tmp_path / "again.toml").read_text(encoding="utf-8") == text


def test_a_recipe_out_of_python() -> None:
    broth = scalepan.recipe(
        'Barley "night" broth',
        Fraction(4),
        ["200 g pearl barley", {"line": "4 eggs", "rule": "one per portion"}],
        measures="metric",
        tested_at=[4, Fraction(9, 2)],
        method=[{"text": "Simmer.", "uses": ["pearl_barley"], "time": "40 min"}],
        bases={"white sauce": {"name": "White sauce", "serves": 4, "lines": ["1 L milk"]}},
    )
    assert [line.amount for line in broth.scale(portions=6).lines] == [
        quantity("300 g AP"),
        quantity("6 piece AP"),
    ]
    assert scalepan.recipe_text(broth) == (
        'name = "Barley \\"night\\" broth"\nserves = 4\nmeasures = "metric"\n'
        'tested_at = [4, "4.5"]\nmethod = [\n'
        '  { text = "Simmer.", uses = ["pearl_barley"], time = "40 min" },\n]\n'
        'lines = [\n  "200 g pearl barley",\n  { line = "4 eggs", rule = "one per portion" },\n]\n'
        '\n[bases."white sauce"]\nname = "White sauce"\nserves = 4\nlines = [\n  "1 L milk",\n]\n'
    )
    again = scalepan.parse_recipe(scalepan.recipe_text(broth))
    assert [line.amount for line in again.lines] == [line.amount for line in broth.lines]
    assert again.tested_at == [4, Fraction(9, 2)]


@given(name=PRINTABLE.filter(str.strip), note=st.text(st.characters(exclude_categories=("C", "Z"))))
def test_names_of_any_text_are_read_as_they_were_written(name: str, note: str) -> None:
    made = scalepan.recipe(name, 4, [{"line": "2 eggs", "note": note}])
    again = scalepan.parse_recipe(scalepan.recipe_text(made))
    assert (again.name, again.lines[0].note) == (made.name, made.lines[0].note)


@pytest.mark.parametrize(
    ("given", "code", "told"),
    [
        ({"lines": ["200 g barley", "500 tbps milk"]}, "unit.unknown",
         'lines 2:5: unknown unit "tbps"; understood so far: 500 (nearest: tbsp, tsp, lb)'),
        ({"lines": ["2 eggs"], "trays": 0}, "recipe.trays",
         "trays: trays is 0, but must be above zero"),
        ({"lines": ["2 eggs"], "serves": 4.0}, "recipe.type",
         "serves holds a float, which no recipe file holds (give texts, whole numbers, fractions "
         "or decimals)"),
        ({"lines": {"line": ["2 eggs"], "rule": [1.5]}}, "line.float",
         "row 1 of the line table: rule is the float 1.5, which is no exact figure (write it as "
         'text or a decimal, or give floats="as shortest decimal")'),
    ],
)  # fmt: skip
def test_what_is_wrong_with_a_recipe_out_of_python(
    given: dict[str, object], code: str, told: str
) -> None:
    with pytest.raises(scalepan.Error) as caught:
        scalepan.recipe(**{"name": "x", "serves": 4, **given})  # type: ignore[arg-type]
    assert (caught.value.code, str(caught.value)) == (code, told)


def test_a_base_inside_a_file_has_no_text_of_its_own() -> None:
    whole = scalepan.recipe(
        "Bake", 4, ["2/5 of the sauce"], bases={"sauce": {"name": "Sauce", "serves": 4,
                                                          "lines": ["1 kg milk"]}},
    )  # fmt: skip
    with pytest.raises(scalepan.RecipeError) as caught:
        scalepan.recipe_text(whole.bases[0].recipe)
    assert (caught.value.code, str(caught.value)) == (
        "recipe.no_text",
        "Sauce stands inside the file of another recipe (write the recipe that it is a base of)",
    )


def test_a_recipe_is_not_written_where_its_bases_are_not(tmp_path: Path) -> None:
    (tmp_path / "sauce.toml").write_text('name = "Sauce"\nserves = 4\nlines = ["1 kg milk"]\n')
    head = 'name = "Bake"\nserves = 4\nbases = { sauce = "sauce.toml" }\n'
    text = head + 'lines = ["2/5 of the sauce"]\n'
    (tmp_path / "bake.toml").write_text(text)
    bake = scalepan.read_recipe(tmp_path / "bake.toml")
    scalepan.write_recipe(bake, tmp_path / "beside.toml")
    away = tmp_path / "away"
    away.mkdir()
    with pytest.raises(scalepan.RecipeError) as caught:
        scalepan.write_recipe(bake, away / "bake.toml")
    assert (caught.value.code, str(caught.value)) == (
        "base.file",
        f"the base sauce is read from sauce.toml, which is not there from {away} "
        "(write the base's file first)",
    )
    assert not list(away.iterdir())


def test_a_control_character_of_toml_is_refused_as_one_of_csv_is() -> None:
    row = '{ item = "a\\u0007", sold_as = "AP", pack = "1 kg", price = 2, keeps = true }'
    with pytest.raises(scalepan.PriceError) as caught:
        scalepan.parse_prices(f"prices = [{row}]", file="p.toml")
    assert (caught.value.code, str(caught.value)) == (
        "price.control_character",
        "p.toml:1:21: the field holds a control character",
    )
    with pytest.raises(scalepan.PriceError) as half:
        scalepan.parse_prices("item,sold_as,pack,price,keeps\na\ud83c,AP,1 kg,2,yes\n", file="p")
    assert str(half.value) == "p:2:1: the field holds a control character"
