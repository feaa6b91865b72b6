"""Frames, out to Arrow libraries and in from them. All prices are invented."""

from __future__ import annotations

import datetime
import subprocess
import sys
from decimal import Decimal
from fractions import Fraction
from typing import Any

import displayed
import pytest
import scalepan
from scalepan import quantity
from scalepan.arrow_reader import rows_of_stream
from scalepan.frames import Frame
from scalepan.prices import price_columns

na = pytest.importorskip("nanoarrow")
pa = pytest.importorskip("pyarrow")
pl = pytest.importorskip("polars")
pd = pytest.importorskip("pandas")
np = pytest.importorskip("numpy")

COSTING = scalepan.cost(displayed.recipe(), displayed.price_book())
BASKET = scalepan.basket([displayed.recipe().scale(portions=7)], displayed.price_book())
STOCK = scalepan.parse_stock("item,stage,amount,value,currency\nrice,AP,3 kg,9/2,EUR\n")
SHOWN = [
    *(COSTING, COSTING.shopping, COSTING.curve(range(1, 5)), BASKET, BASKET.shopping, STOCK),
    *(displayed.price_book(), scalepan.bundled_catalog(), displayed.yield_test()),
    *(displayed.sheet(), displayed.recipe()),
]
IDS = [type(one).__name__ for one in SHOWN]


class Stream:
    """A table that is read by the Arrow interface alone."""

    def __init__(self, table: Any) -> None:
        self._table = table

    def __arrow_c_stream__(self, requested_schema: object = None) -> object:
        return self._table.__arrow_c_stream__(requested_schema)


@pytest.mark.parametrize("shown", SHOWN, ids=IDS)
def test_every_library_reads_the_same(shown: object) -> None:
    frame = scalepan.frame(shown)
    assert len(frame) > 0
    assert pa.table(frame).to_pydict() == frame.to_dict()
    assert pl.DataFrame(frame).to_dict(as_series=False) == frame.to_dict()
    read = pd.DataFrame.from_arrow(frame) if hasattr(pd.DataFrame, "from_arrow") else None
    if read is not None:
        assert list(read.columns) == list(frame.to_dict())
        assert len(read) == len(frame)


@pytest.mark.parametrize("shown", SHOWN, ids=IDS)
def test_numbers_are_exact_text_or_the_nearest_doubles(shown: object) -> None:
    exact, rounded = scalepan.frame(shown), scalepan.frame(shown, numbers="float64")
    schema = pa.table(rounded).schema
    for column in exact.columns:
        told, near = exact.to_dict()[column.name], pa.table(rounded)[column.name].to_pylist()
        if column.kind == "number":
            assert schema.field(column.name).type == pa.float64()
            assert [None if t is None else float(Fraction(t)) for t in told] == near
        else:
            assert near == told


def test_costs_by_line_come_to_the_four_costs() -> None:
    frame = scalepan.frame(COSTING).to_dict()
    for name in ("till", "used", "thrown", "borne"):
        parts = [Fraction(cell) for cell in frame[name] if cell is not None]
        assert sum(parts) == getattr(COSTING, name).value


def test_units_stand_in_the_metadata_or_in_a_column_of_their_own() -> None:
    shopping = pa.table(scalepan.frame(COSTING.shopping))
    assert shopping.schema.field("price").metadata == {b"unit": b"EUR"}
    assert shopping.schema.field("need").metadata == {b"unit_column": b"need_unit"}
    needs = zip(shopping["need"].to_pylist(), shopping["need_unit"].to_pylist(), strict=True)
    assert [quantity(Fraction(n), unit) for n, unit in needs] == [r.need for r in COSTING.shopping]
    curve = pa.schema(scalepan.frame(COSTING.curve([1, 2])))
    assert [curve.field(i).metadata for i in range(2)] == [{b"unit": b"portion"}, {b"unit": b"EUR"}]


def test_a_sheet_shows_values_errors_and_formulas() -> None:
    rows = {row["cell"]: row for row in scalepan.frame(displayed.sheet()).to_pylist()}
    # 8 kg / 0.72 = 100/9 kg.
    assert (rows["fennel.buy"]["value"], rows["fennel.buy"]["value_unit"]) == ("100000/9", "g AP")
    assert rows["fennel.buy"]["formula"] == "fennel.need / fennel.edible"
    assert rows["share_of_spare"]["value"] is None
    assert "share_of_spare" in rows["share_of_spare"]["error"]


def test_csv_of_a_frame_is_harmless() -> None:
    shown = scalepan.price_book(
        [{"item": "=1+1", "sold_as": "AP", "pack": "1 kg", "price": "2.10", "keeps": True}]
    )
    text = scalepan.frame(shown).csv()
    assert text.splitlines()[1].startswith("'=1+1,AP,1 kg,21/10,yes")
    assert scalepan.parse_prices(text).offers[0].item == "=1+1"


FRAME = scalepan.frame(displayed.price_book())
VIEWS = pa.table(FRAME).cast(pa.schema([(n, pa.string_view()) for n in FRAME.to_dict()]))
LARGE = pa.table(FRAME).cast(pa.schema([(n, pa.large_string()) for n in FRAME.to_dict()]))
WITH_KINDS = pa.table(FRAME).set_column(
    6, "shop", pa.table(FRAME)["shop"].combine_chunks().dictionary_encode()
)
SOURCES: dict[str, Any] = {
    "own frame": FRAME,
    "dict of columns": FRAME.to_dict(),
    "rows": FRAME.to_pylist(),
    "pyarrow": pa.table(FRAME),
    "polars": pl.DataFrame(FRAME),
    "pandas": pd.DataFrame(FRAME.to_dict()),
    "stream of an own frame": Stream(FRAME),
    "stream of pyarrow": Stream(pa.table(FRAME)),
    "stream of polars": Stream(pl.DataFrame(FRAME)),
    "stream of pandas": Stream(pd.DataFrame(FRAME.to_dict())),
    "stream of views": Stream(VIEWS),
    "stream of large texts": Stream(LARGE),
    "stream of a dictionary": Stream(WITH_KINDS),
    "stream of categories": Stream(
        pl.DataFrame(FRAME).with_columns(pl.col("shop").cast(pl.Categorical))
    ),
    "stream of batches": pa.RecordBatchReader.from_batches(
        LARGE.schema, [LARGE.slice(0, 3).to_batches()[0], LARGE.slice(3).to_batches()[0]]
    ),
    "slices of views": Stream(pa.concat_tables([VIEWS.slice(0, 5), VIEWS.slice(5)])),
}


def offers(book: scalepan.PriceBook) -> list[object]:
    names = ("item", "sold_as", "content", "price", "keeps", "keeps_days", "shop", "terms")
    return [tuple(getattr(offer, name) for name in names) for offer in book.offers]


@pytest.mark.parametrize("name", SOURCES)
def test_price_books_come_from_any_frame(name: str) -> None:
    assert offers(scalepan.price_book(SOURCES[name])) == offers(displayed.price_book())


def test_whole_numbers_decimals_flags_and_dates() -> None:
    table = pa.table({
        "item": pa.array(["leeks", "a name that is longer than twelve"], pa.string_view()),
        "sold_as": ["AP", "AP"],
        "pack": pa.array([6, 10], pa.int16()),
        "price": pa.array([Decimal("2.10"), None], pa.decimal128(9, 2)).fill_null(Decimal("3.00")),
        "keeps": [True, False],
        "date": pa.array([datetime.date(2026, 11, 20), None], pa.date32()),
        "shop": pa.nulls(2),
    })  # fmt: skip
    for given in (table, Stream(table), pl.DataFrame(table), Stream(pl.DataFrame(table))):
        leeks, other = scalepan.price_book(given, currency="EUR").offers
        assert (leeks.price, leeks.content) == (quantity("2.10 EUR"), quantity("6 piece AP"))
        assert (leeks.keeps, leeks.date, leeks.shop) == (True, "2026-11-20", "")
        assert (other.item, other.price) == ("a name that is longer than twelve", quantity("3 EUR"))


ROW = {"item": ["leeks"], "sold_as": ["AP"], "pack": ["1 kg"], "keeps": ["no"]}


@pytest.mark.parametrize("given", [lambda t: t, pa.table, lambda t: Stream(pa.table(t))])
def test_a_float_is_refused_or_taken_by_a_named_step(given: Any) -> None:
    prices = given({**ROW, "price": [1.1 + 2.2]})
    with pytest.raises(scalepan.PriceError) as caught:
        scalepan.price_book(prices)
    assert (caught.value.code, str(caught.value)) == (
        "price.float",
        "row 1 of the price table: price is the float 3.3000000000000003, which is no exact figure "
        '(write it as text ("3.3"), an int, a Fraction or a Decimal, or give floats="as shortest '
        'decimal")',
    )
    (offer,) = scalepan.price_book(prices, floats="as shortest decimal").offers
    assert offer.price.value == Fraction(33000000000000003, 10**16)


@pytest.mark.parametrize("given", [lambda t: t, pa.table, lambda t: Stream(pa.table(t))])
def test_a_float_of_few_digits_is_taken_as_everywhere(given: Any) -> None:
    (offer,) = scalepan.price_book(given({**ROW, "price": [2.1]})).offers
    assert offer.price.value == Fraction(21, 10) == quantity(2.1, "EUR").value
    with pytest.raises(scalepan.PriceError) as caught:
        scalepan.price_book(given({**ROW, "price": ["2"], "date": [1.5]}))
    assert str(caught.value) == (
        "row 1 of the price table: date is the float 1.5, which is no exact figure (write it as "
        'text or a decimal, or give floats="as shortest decimal")'
    )


@pytest.mark.parametrize(
    "rows", [[], {"item": [], "sold_as": [], "pack": [], "price": [], "keeps": []}]
)
def test_a_table_without_rows_is_refused_as_a_file_is(rows: Any) -> None:
    columns = (
        "columns: item, sold_as, pack, price, keeps; also currency, shop, date, note, offer, "
        "least, limit, tax, deposit, measures"
    )
    with pytest.raises(scalepan.PriceError) as caught:
        scalepan.price_book(rows)
    assert (caught.value.code, str(caught.value)) == (
        "price.no_rows",
        f"the table has no rows ({columns})",
    )


@pytest.mark.parametrize(
    ("given", "options", "code", "told"),
    [
        ({**ROW, "price": ["1", "2"]}, {}, "price.table",
         "the columns are not of one length: item 1, sold_as 1, pack 1, keeps 1, price 2"),
        ({**ROW, "price": ["1"]}, {"floats": "rounded"}, "frame.floats",
         'floats is "rounded" (leave it out, or give "as shortest decimal")'),
        (Stream(pa.table({**ROW, "price": [[1]]})), {}, "price.cell",
         "the column price is of the Arrow type list<item: int64> (columns of texts, whole "
         "numbers, decimals, true and false are read)"),
        ({**ROW, "price": ["1"], "pack": ["1 kgg"]}, {}, "unit.unknown",
         'row 1 of the price table: unknown unit "kgg" (nearest: kg)'),
        ({**ROW, "price": [b"1"]}, {}, "price.cell",
         "row 1 of the price table: price is of the type bytes, but a text belongs there"),
    ],
)  # fmt: skip
def test_what_is_wrong_with_a_frame(
    given: object, options: dict[str, Any], code: str, told: str
) -> None:
    with pytest.raises(scalepan.Error) as caught:
        scalepan.price_book(given, **options)
    assert (caught.value.code, str(caught.value)) == (code, told)


def test_a_stream_of_no_table_has_no_columns() -> None:
    with pytest.raises(scalepan.PriceError) as caught:
        scalepan.price_book(Stream(pa.chunked_array([[1, 2]])))
    assert (caught.value.code, str(caught.value)) == (
        "price.table",
        "the stream has no columns (give a table)",
    )


def test_stock_facts_trials_and_lines_come_from_frames_too() -> None:
    (rice,) = scalepan.stock(Stream(pa.table(scalepan.frame(STOCK)))).items
    assert (rice.amount, rice.value) == (quantity("3 kg AP"), quantity("4.50 EUR"))
    fact = {"fact": ["own.leek"], "food": ["leek"], "kind": ["edible"], "value": ["0.5 EP/AP"]}
    own = scalepan.catalog_with(Stream(pl.DataFrame(fact)))
    assert own.facts("leek")[0].value == quantity("0.5 EP/AP")
    test = displayed.yield_test()
    again = scalepan.yield_test(Stream(pa.table(scalepan.frame(test))), source=test.source)
    assert scalepan.to_json(again) == scalepan.to_json(test)
    lines = pl.DataFrame({"line": ["200 g leeks, trimmed", "3 eggs"], "optional": [None, True]})
    for given in (lines, Stream(lines)):
        made = scalepan.recipe("Night bake", 4, given)
        assert [(line.amount, line.optional) for line in made.lines] == [
            (quantity("200 g EP"), False),
            (quantity("3 piece AP"), True),
        ]


def test_what_has_no_rows_and_unknown_numbers_are_refused() -> None:
    with pytest.raises(scalepan.FileError) as caught:
        scalepan.frame(3)
    assert (caught.value.code, str(caught.value)) == (
        "frame.kind",
        "a int has no rows for a frame (give a costing, its shopping, a basket, a curve, a price "
        "book, stock, a catalogue, a yield test, a sheet or a recipe)",
    )
    with pytest.raises(scalepan.FileError) as other:
        scalepan.frame(STOCK, numbers="float32")  # type: ignore[arg-type]
    assert (other.value.code, str(other.value)) == (
        "frame.numbers",
        'numbers are "float32" (write "exact" or "float64")',
    )


def test_a_number_beyond_all_doubles_is_refused() -> None:
    sheet = scalepan.Sheet()
    sheet.set("much", 10**300)
    sheet.define("more", "much * much")
    frame = scalepan.frame(sheet, numbers="float64")
    with pytest.raises(scalepan.NumberError) as caught:
        pa.table(frame)
    assert caught.value.code == "number.float"
    assert caught.value.hint == 'take numbers="exact"'


WITHOUT = """
import sys
sys.modules["nanoarrow"] = None
import scalepan
book = scalepan.price_book({"item": ["x"], "sold_as": ["AP"], "pack": ["1 kg"], "price": ["1"],
                            "keeps": [True]})
frame = scalepan.frame(book)
print(len(frame.csv()), scalepan.price_book(frame).offers[0].item)
try:
    frame.__arrow_c_stream__()
except scalepan.FileError as error:
    print(error.code, error)
"""


def test_without_nanoarrow_all_but_arrow_works() -> None:
    done = subprocess.run(
        [sys.executable, "-c", WITHOUT], capture_output=True, text=True, check=True
    )
    assert done.stdout.splitlines()[1] == (
        "frame.library Arrow streams are read and written by nanoarrow, which is not installed "
        "(pip install 'scalepan[frames]')"
    )


def test_a_frame_tells_what_it_is() -> None:
    assert repr(Frame(scalepan.frame(STOCK).columns[:2])) == "<Frame of 1 rows: item, stage>"


@pytest.mark.parametrize("bits", [128, 256])
@pytest.mark.parametrize("first", [0, 1, 9, 30])
def test_decimals_of_a_stretch_are_its_own(bits: int, first: int) -> None:
    """What stands where: quarters, by arithmetic of the standard library."""
    kind = (pa.decimal128 if bits == 128 else pa.decimal256)(12, 2)
    quarters = [None if n % 7 == 3 else Decimal(n) / 4 for n in range(-20, 20)]
    whole = pa.table({"item": pa.array(quarters, kind)})
    kept = pa.DictionaryArray.from_arrays(
        pa.array(range(10), pa.int8()), pa.array(quarters, kind)[first : first + 10]
    )
    for table, wanted in (
        (whole.slice(first), quarters[first:]),
        (pa.table({"item": kept}), quarters[first : first + 10]),
    ):
        rows = rows_of_stream(Stream(table), price_columns())
        assert [row["item"] for row in rows] == wanted


@pytest.mark.parametrize("named", ["decimal64(9, 2)", "half_float"])
def test_columns_that_the_library_misreads_are_refused(named: str) -> None:
    half = pa.array(np.array([2.25], np.float16))
    prices = half if named == "half_float" else pa.array([Decimal("2.25")], pa.decimal64(9, 2))
    table = pa.table({**ROW, "price": prices})
    with pytest.raises(scalepan.PriceError) as caught:
        scalepan.price_book(Stream(table))
    assert (caught.value.code, str(caught.value)) == (
        "price.cell",
        f"the column price is of the Arrow type {named} (columns of texts, whole numbers, "
        "decimals, true and false are read)",
    )


TWICE = pa.table(
    [[cell] for cell in ("leeks", "AP", "1 kg", "no", "1", "2")], [*ROW, "price", "price"]
)


@pytest.mark.parametrize("given", [TWICE, Stream(TWICE), TWICE.to_pandas()])
def test_two_columns_of_one_name_are_refused(given: object) -> None:
    with pytest.raises(scalepan.PriceError) as caught:
        scalepan.price_book(given)
    assert (caught.value.code, str(caught.value)) == (
        "price.column",
        "the column price is there twice (columns: item, sold_as, pack, price, keeps; also "
        "currency, shop, date, note, offer, least, limit, tax, deposit, measures)",
    )


SINGLE = {**ROW, "price": np.array([2.1], np.float32)}


@pytest.mark.parametrize(
    "given", [SINGLE, pd.DataFrame(SINGLE), pl.DataFrame(SINGLE), Stream(pa.table(SINGLE))]
)
@pytest.mark.parametrize("floats", [None, "as shortest decimal"])
def test_a_float_of_32_bits_is_no_other_decimal(given: object, floats: str | None) -> None:
    """2.1 is 8808038.4 / 2**22; of 24 binary digits the nearest is 8808038 / 2**22."""
    widened = float(Fraction(8808038, 2**22))
    with pytest.raises(scalepan.PriceError) as caught:
        scalepan.price_book(given, floats=floats)
    assert (caught.value.code, str(caught.value)) == (
        "price.float",
        f"row 1 of the price table: price is {widened!r}, which was rounded to 32 bits (give text, "
        "decimals, or floats of 64 bits)",
    )


@pytest.mark.parametrize("price", ["2.5", "0.375", "2.1", "16777216", "1e-9", "123456.7"])
def test_the_shortest_decimal_of_a_float_of_64_bits(price: str) -> None:
    prices = {**ROW, "price": np.array([float(price)])}
    (offer,) = scalepan.price_book(prices, floats="as shortest decimal").offers
    assert offer.price.value == Fraction(price)


def test_numpy_columns_are_columns() -> None:
    columns = {**ROW, "price": np.array([3]), "keeps": np.array([True])}
    (offer,) = scalepan.price_book(columns).offers
    assert (offer.price.value, offer.keeps) == (3, True)


@pytest.mark.parametrize(
    ("cells", "code", "told"),
    [
        ({"price": [10**5000]}, "number.too_many_digits",
         "a number of 5001 digits is too long (at most 1000 digits are read)"),
        ({"price": [Fraction(1, 10**5000)]}, "number.too_many_digits",
         "a number of 5001 digits is too long (at most 1000 digits are read)"),
        ({"price": ["1"], "item": ["le\ud800eks"]}, "price.control_character",
         "item holds the character U+D800, which no text may have"),
        ({"price": ["1"], "shop": ["a\0b"]}, "price.control_character",
         "shop holds the character U+0000, which no text may have"),
    ],
)  # fmt: skip
def test_what_is_wrong_with_a_cell(cells: dict[str, Any], code: str, told: str) -> None:
    with pytest.raises(scalepan.Error) as caught:
        scalepan.price_book({**ROW, **cells})
    assert (caught.value.code, str(caught.value)) == (code, f"row 1 of the price table: {told}")


def test_one_column_alone_is_no_table() -> None:
    for series in (pd.Series(["2 eggs"]), pl.Series(["2 eggs"])):
        with pytest.raises(scalepan.RecipeError) as caught:
            scalepan.recipe("Pot", 2, series)
        assert (caught.value.code, str(caught.value)) == (
            "line.table",
            "the stream has no columns (give a table)",
        )
