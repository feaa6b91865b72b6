"""Workbooks: numbers as numbers, exact figures beside rounded ones, every text as a text."""

from __future__ import annotations

import io
import subprocess
import sys
import zipfile
from fractions import Fraction
from pathlib import Path
from xml.etree import ElementTree

import displayed
import pytest
import scalepan
from scalepan import workbook

pytest.importorskip("xlsxwriter")

MAIN = "{http://schemas.openxmlformats.org/spreadsheetml/2006/main}"
NAMES = ["=1+1", "+1", "-1", "@x", "=cmd|' /C calc'!A0", "https://example.org", "_x0041_"]
Cell = str | float


def sheets(path: Path) -> dict[str, list[list[Cell]]]:
    """Each worksheet's rows: texts as str, numbers as float; empty cells are left out."""
    with zipfile.ZipFile(path) as book:
        assert book.testzip() is None
        texts = [
            # ECMA-376 (from memory): what looks like an escape is itself escaped.
            "".join(part.text or "" for part in one.iter(f"{MAIN}t")).replace("_x005F_", "_")
            for one in ElementTree.fromstring(book.read("xl/sharedStrings.xml"))
        ]
        workbook_xml = ElementTree.fromstring(book.read("xl/workbook.xml"))
        names = [one.attrib["name"] for one in workbook_xml.iter(f"{MAIN}sheet")]
        return {
            name: _rows(ElementTree.fromstring(book.read(f"xl/worksheets/sheet{n}.xml")), texts)
            for n, name in enumerate(names, 1)
        }


def _rows(sheet: ElementTree.Element, texts: list[str]) -> list[list[Cell]]:
    assert not list(sheet.iter(f"{MAIN}f")), "a formula"
    assert not list(sheet.iter(f"{MAIN}hyperlink")), "a link"
    return [[_cell(cell, texts) for cell in row] for row in sheet.iter(f"{MAIN}row")]


def _cell(cell: ElementTree.Element, texts: list[str]) -> Cell:
    value = cell.findtext(f"{MAIN}v", "")
    return texts[int(value)] if cell.attrib.get("t") == "s" else float(value)


def written(shown: object, path: Path) -> dict[str, list[list[Cell]]]:
    scalepan.write_xlsx(shown, path)
    return sheets(path)


def test_a_name_of_another_form_is_refused(tmp_path: Path) -> None:
    path = tmp_path / "a.xls"
    with pytest.raises(scalepan.FileError) as caught:
        scalepan.write_xlsx(scalepan.recipe("x", 4, ["2 eggs"]), path)
    assert (caught.value.code, str(caught.value)) == (
        "file.form",
        f"{path}: a workbook is written in the form xlsx, which this name does not say (name it "
        f'"{tmp_path / "a.xlsx"}")',
    )
    assert not path.exists()


def test_shopping_has_prices_as_numbers_and_exact_amounts_beside(
    forty: scalepan.Costing, tmp_path: Path
) -> None:
    (rows,) = written(forty.shopping, tmp_path / "buy.xlsx").values()
    assert rows[0] == ["To buy"]
    assert rows[1] == [
        "item", "need", "need, exactly", "packs", "GBP", "left over", "left over, exactly"
    ]  # fmt: skip
    # 5 kg / 0.44 = 125/11 kg = 11 4/11 kg; 11 x 2.10 + 1.20 = 24.30; left 11.5 - 125/11 = 3/22 kg.
    assert rows[2] == [
        "leeks", "≈ 11.36 kg AP", "11 4/11 kg AP", "11 x 1 kg + 1 x 500 g", 24.3,
        "≈ 136.4 g thrown", "136 4/11 g AP",
    ]  # fmt: skip
    assert [row[3] for row in rows[3:6] if isinstance(row[3], float)] == [4.75, 9.2, 6.0]
    assert rows[-1] == ["till 44.25 GBP"]


def test_rounded_money_has_the_exact_figure_beside(forty: scalepan.Costing, tmp_path: Path) -> None:
    rows = written(forty, tmp_path / "cost.xlsx")["Costs"]
    head = next(row for row in rows if row[0] == "cost")
    assert head == ["cost", "GBP", "GBP, exactly", "a portion", "a portion, exactly", "meaning"]
    till = next(row for row in rows if row[0] == "till")
    # 44.25 / 40 = 1.10625, told as 1.11.
    assert till == ["till", 44.25, 1.11, "1.10625 GBP", "whole packs paid for today"]
    used = next(row for row in rows if row[0] == "used")
    leeks = Fraction("24.30") * (Fraction(5000) / Fraction(44, 100)) / 11500
    exact = leeks + Fraction("4.75") * 2200 / 2500 + Fraction("9.20") + 6
    assert Fraction(str(used[1])) == Fraction(round(exact * 100), 100)
    assert scalepan.quantity(str(used[2])).value == exact
    assert [workbook._ROUNDED] in rows


def test_a_curve_a_price_book_and_a_basket(forty: scalepan.Costing, tmp_path: Path) -> None:
    curve = written(forty.curve([4, 40]), tmp_path / "c.xlsx")["Costs by portions, in GBP"]
    # At four: leeks 1 kg + 500 g = 3.30, barley 0.95, eggs 1.50, one tin 0.60.
    assert [row[:2] for row in curve[2:4]] == [[4.0, 6.35], [40.0, 44.25]]
    book = written(displayed.price_book(), tmp_path / "p.xlsx")["8 offers"]
    assert book[2][:4] == ["fennel", "1 kg", "AP", "3.20 EUR"]
    dishes = [displayed.recipe().scale(portions=7)]
    basket = written(scalepan.basket(dishes, displayed.price_book()), tmp_path / "b.xlsx")
    assert list(basket) == ["1 dish, in EUR", "To buy", "Costs", "To check", "Cautions"]


def test_a_figure_longer_than_a_double_holds_is_a_text(tmp_path: Path) -> None:
    """Of fifteen digits each decimal has a double of its own; of sixteen not all have."""
    pot = scalepan.recipe("Pot", 2, ["1 kg leeks", "2 eggs"])
    row = "{},AP,{},{},yes\n"
    for leeks, cell in (("9999999999997.01", 9999999999999.02), ("99999999999997.01", None)):
        rows = row.format("leeks", "1 kg", leeks) + row.format("eggs", "6", "2.01")
        book = scalepan.parse_prices(f"item,sold_as,pack,price,keeps\n{rows}", currency="EUR")
        costs = written(scalepan.cost(pot, book), tmp_path / "c.xlsx")["Costs"]
        till = next(line[1] for line in costs if line[0] == "till")
        assert till == (cell or "99999999999999.02")


@pytest.mark.parametrize("name", NAMES)
def test_texts_are_never_formulas_or_links(name: str, tmp_path: Path) -> None:
    book = displayed.price_book(name)
    (rows,) = written(book, tmp_path / "p.xlsx").values()
    assert any(name in row for row in rows)
    costing = scalepan.cost(displayed.recipe(name), book)
    assert name in str(written(costing, tmp_path / "c.xlsx"))


def test_names_of_worksheets_are_short_and_of_signs_that_are_allowed() -> None:
    taken: list[str] = []
    for title in ("a/b:c*?[d]\\", "x" * 40, "X" * 40, "history", "'", ""):
        taken.append(workbook._sheet_name(title, taken))
    assert taken == ["a b c   d", "x" * 31, "X" * 25 + " 2", "history 2", "Notes", "Notes 2"]


def test_what_does_not_fit_is_refused(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    with pytest.raises(scalepan.FileError) as caught:
        scalepan.write_xlsx(3, tmp_path / "x.xlsx")
    assert (caught.value.code, str(caught.value)) == (
        "file.xlsx",
        "a int has no report for a workbook (give a costing, its shopping, a curve, a basket, a "
        "price book or a recipe)",
    )
    long = displayed.recipe("leeks" + " and more" * 5000)
    with pytest.raises(scalepan.FileError) as other:
        scalepan.write_xlsx(long, tmp_path / "x.xlsx")
    assert other.value.message.startswith("a text has more than 32767 characters: leeks and more")
    monkeypatch.setattr(workbook, "MOST_ROWS", 3)
    with pytest.raises(scalepan.FileError) as many:
        scalepan.write_xlsx(displayed.price_book(), tmp_path / "x.xlsx")
    assert (many.value.code, str(many.value)) == (
        "file.xlsx",
        "the report has more than 3 rows (write it as CSV: scalepan.frame(...).csv())",
    )
    assert not list(tmp_path.iterdir())


def test_all_rows_are_there_not_the_first_only(forty: scalepan.Costing, tmp_path: Path) -> None:
    curve = written(forty.curve(range(1, 501)), tmp_path / "c.xlsx")
    assert len(curve["Costs by portions, in GBP"]) > 500


WITHOUT = """
import sys
sys.modules["xlsxwriter"] = None
import scalepan
try:
    scalepan.write_xlsx(scalepan.recipe("x", 4, ["2 eggs"]), "x.xlsx")
except scalepan.FileError as error:
    print(error.code, error)
"""


def test_without_the_library_one_clear_error() -> None:
    done = subprocess.run(
        [sys.executable, "-c", WITHOUT], capture_output=True, text=True, check=True
    )
    assert done.stdout == (
        "file.library xlsx files are written by XlsxWriter, which is not installed "
        "(pip install 'scalepan[xlsx]')\n"
    )


def test_the_file_is_a_zip_of_well_formed_xml() -> None:
    with zipfile.ZipFile(io.BytesIO(workbook.workbook_bytes(displayed.recipe()))) as book:
        for name in book.namelist():
            ElementTree.fromstring(book.read(name))
