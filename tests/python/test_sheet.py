"""The sheet's verbs, what they run and what they refuse, to the letter."""

from __future__ import annotations

from fractions import Fraction

import pytest
import scalepan


def kitchen() -> scalepan.Sheet:
    sheet = scalepan.Sheet()
    sheet.set("portions", 40)
    sheet.set("serves", 4)
    sheet.set("leeks.amount", "500 g EP")
    sheet.set("leeks.edible", "44/100 EP/AP")
    sheet.define("leeks.need", "leeks.amount * portions / serves")
    sheet.define("leeks.buy", "leeks.need / leeks.edible")
    sheet.define("large", "portions > 30")
    sheet.define("pots", "if large then 2 else 1")
    return sheet


def test_a_formula_follows_what_it_reads() -> None:
    sheet = kitchen()
    # 500 g at 0.44 (USDA SR28 11246, refuse 56 %) for ten times the written size.
    assert sheet.value("leeks.buy").to("g AP").value == Fraction(125000, 11)
    assert sheet.value("large") is True
    sheet.set("portions", 8)
    assert sheet.value("leeks.buy").to("g AP").value == Fraction(25000, 11)
    assert sheet.value("pots").value == 1


def test_only_what_depends_on_a_change_runs_and_each_once() -> None:
    sheet = kitchen()
    sheet.set("leeks.edible", "1/2 EP/AP")
    assert sheet.ran == ["leeks.buy"]
    sheet.set("portions", 48)
    assert sorted(sheet.ran) == ["large", "leeks.buy", "leeks.need"]
    assert sheet.ran.index("leeks.need") < sheet.ran.index("leeks.buy")
    # 48 is as large as 40 was: pots did not run.
    sheet.set("portions", 48)
    assert sheet.ran == []


def test_an_override_stands_in_until_it_is_released() -> None:
    sheet = kitchen()
    sheet.override("leeks.edible", "0.50 EP/AP", why="own trim, 3 cases", who="the night cook")
    assert sheet.ran == ["leeks.buy"]
    assert sheet.value("leeks.buy").to("kg AP").value == 10
    assert "  overridden: own trim, 3 cases, the night cook\n" in sheet.why("leeks.edible")
    sheet.release("leeks.edible")
    assert sheet.value("leeks.buy").to("g AP").value == Fraction(125000, 11)


def test_a_bare_number_is_of_the_unit_the_cell_is_shown_in() -> None:
    sheet = kitchen()
    sheet.set("leeks.amount", 600)
    assert sheet.value("leeks.amount").value == 600
    assert sheet.value("leeks.amount").unit == "g EP"


def test_a_failed_cell_holds_its_error_until_it_is_mended() -> None:
    sheet = kitchen()
    sheet.set("serves", 0)
    with pytest.raises(scalepan.NumberError) as caught:
        sheet.value("leeks.buy")
    assert str(caught.value) == "leeks.need:25: division by zero"
    assert "failed: leeks.need:25: division by zero" in sheet.why("leeks.buy")
    assert sheet.value("pots").value == 2
    sheet.set("serves", 4)
    assert sheet.value("leeks.buy").to("g AP").value == Fraction(125000, 11)


def test_why_is_a_tree_down_to_what_is_given() -> None:
    assert kitchen().why("leeks.buy") == (
        "leeks.buy = 11363 7/11 g AP\n"
        "  = leeks.need / leeks.edible\n"
        "├─ leeks.need = 5000 g EP\n"
        "│    = leeks.amount * portions / serves\n"
        "│  ├─ leeks.amount = 500 g EP\n"
        "│  ├─ portions = 40\n"
        "│  └─ serves = 4\n"
        "└─ leeks.edible = 0.44 EP/AP\n"
    )


@pytest.mark.parametrize(
    ("change", "code", "message"),
    [
        (
            lambda s: s.define("wrong", "leeks.need * leeks.edible + leeks.buy"),
            "formula.dimension",
            'wrong:27: "+" meets g EP^2/AP on its left and weight AP on its right',
        ),
        (
            lambda s: s.define("wrong", "leeks.bye"),
            "formula.name",
            'wrong:1: no cell is called "leeks.bye" (nearest: leeks.buy)',
        ),
        (
            lambda s: s.set("leeks.buy", "3 kg AP"),
            "sheet.formula",
            "leeks.buy has the formula leeks.need / leeks.edible "
            "(override it to put a measured value in its place)",
        ),
        (
            lambda s: s.set("leeks.amount", "500 g AP"),
            "sheet.dimension",
            "leeks.amount is weight EP, but the value is weight AP "
            "(remove the cell first, or give it another name)",
        ),
        (
            lambda s: s.define("leeks.need", "portions"),
            "sheet.dimension",
            "leeks.need is weight EP, but the formula is plain number "
            "(remove the cell first, or give it another name)",
        ),
        (
            lambda s: s.define("leeks.amount", "leeks.buy * leeks.edible"),
            "sheet.cycle",
            "a cell cannot depend on itself: leeks.amount reads leeks.buy reads leeks.need reads "
            "leeks.amount",
        ),
        (
            lambda s: s.define("portions", "portions + 1"),
            "sheet.cycle",
            "a cell cannot depend on itself: portions reads portions",
        ),
        (
            lambda s: s.override("leeks.edible", "0.5 EP/AP", why=" "),
            "sheet.reason",
            "the override of leeks.edible gives no reason (say what was measured, and how)",
        ),
        (
            lambda s: s.override("leeks.edible", "0.5 kg", why="weighed"),
            "sheet.dimension",
            "leeks.edible is EP/AP, but the override is weight "
            "(remove the cell first, or give it another name)",
        ),
        (
            lambda s: s.release("portions"),
            "sheet.released",
            "portions has no override to release",
        ),
        (
            lambda s: s.remove("portions"),
            "sheet.read",
            "portions is read by leeks.need and 1 more (remove or change what reads it first)",
        ),
        (
            lambda s: s.value("portion"),
            "sheet.unknown",
            'no cell is called "portion" (nearest: portions)',
        ),
        (
            lambda s: s.set("Leeks", 1),
            "sheet.name",
            '"Leeks" cannot be the name of a cell '
            '(small letters, digits and "_", parted by points: leeks.need)',
        ),
        (
            lambda s: s.set("cup", 1),
            "sheet.name",
            '"cup" cannot be the name of a cell: it is a unit (take a longer name)',
        ),
        (
            lambda s: s.set("then", 1),
            "sheet.name",
            '"then" cannot be the name of a cell: it is a word of formulas (take a longer name)',
        ),
    ],
)
def test_what_is_refused_leaves_the_sheet_as_it_was(change: object, code: str, message: str) -> None:
    sheet = kitchen()
    before = {name: sheet.why(name) for name in ("leeks.buy", "pots", "portions")}
    with pytest.raises(scalepan.SheetError) as caught:
        change(sheet)  # type: ignore[operator]
    assert (caught.value.code, str(caught.value)) == (code, message)
    assert before == {name: sheet.why(name) for name in before}
    assert "wrong" not in sheet
    sheet.set("portions", 4)
    assert sheet.value("leeks.buy").to("g AP").value == Fraction(12500, 11)


def test_a_chain_of_a_hundred_thousand_cells() -> None:
    sheet = scalepan.Sheet()
    sheet.set("c0", 1)
    for place in range(1, 100_001):
        sheet.define(f"c{place}", f"c{place - 1} + 1")
    sheet.set("c0", 2)
    assert len(sheet.ran) == 100_000
    assert sheet.value("c100000").value == 100_002
    with pytest.raises(scalepan.SheetError) as caught:
        sheet.define("c0", "c100000")
    assert caught.value.code == "sheet.cycle"
