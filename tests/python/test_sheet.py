"""The sheet's verbs, what they run and what they refuse, to the letter."""

from __future__ import annotations

import threading
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
    assert sheet.why("leeks.edible") == (
        "leeks.edible = 0.5 EP/AP   [overridden: own trim, 3 cases, the night cook]\n"
        "└─ its own = 0.44 EP/AP   [not used until the override is released]\n"
    )
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
    assert sheet.why("leeks.buy").startswith(
        "leeks.buy = no figure: leeks.need:25: division by zero\n"
    )
    assert sheet.value("pots").value == 2
    sheet.set("serves", 4)
    assert sheet.value("leeks.buy").to("g AP").value == Fraction(125000, 11)


def test_why_is_a_tree_down_to_what_is_given() -> None:
    assert kitchen().why("leeks.buy") == (
        "leeks.buy = ≈ 11.36 kg  (exactly 11 4/11 kg AP)\n"
        "  = leeks.need / leeks.edible\n"
        "├─ leeks.need = 5 kg EP\n"
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
            'wrong:1: no cell is called "leeks.bye" (nearest: leeks.buy, leeks.need)',
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
            "(give the same kind, or redeclare the cell)",
        ),
        (
            lambda s: s.define("leeks.need", "portions > 3"),
            "formula.type",
            'leeks.buy:12: "/" meets yes or no on its left and EP/AP on its right',
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
            "(give the same kind, or redeclare the cell)",
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
def test_what_is_refused_leaves_the_sheet_as_it_was(
    change: object, code: str, message: str
) -> None:
    sheet = kitchen()
    sheet.set("portions", 40)
    before, ran = sheet.text(), sheet.ran
    with pytest.raises(scalepan.SheetError) as caught:
        change(sheet)  # type: ignore[operator]
    assert (caught.value.code, str(caught.value)) == (code, message)
    assert (sheet.text(), sheet.ran) == (before, ran)
    assert "wrong" not in sheet
    sheet.set("portions", 4)
    assert sheet.value("leeks.buy").to("g AP").value == Fraction(12500, 11)


def test_a_chain_of_a_million_cells() -> None:
    sheet = scalepan.Sheet()
    with sheet.together() as change:
        change.set("c0", 1)
        for place in range(1, 1_000_001):
            change.define(f"c{place}", f"c{place - 1} + 1")
    sheet.set("c0", 2)
    assert len(sheet.ran) == 1_000_000
    assert sheet.value("c1000000").value == 1_000_002
    with pytest.raises(scalepan.SheetError) as caught:
        sheet.define("c0", "c1000000")
    assert str(caught.value) == (
        "a cell cannot depend on itself: c0 reads c1000000 reads c999999 reads c999998 reads "
        "c999997 reads c999996 reads ... (999990 cells) reads c5 reads c4 reads c3 reads c2 reads "
        "c1 reads c0"
    )


def test_ten_thousand_names_that_differ_in_the_last_letter() -> None:
    letters = "abcdefghijklmnopqrstuvwxyz0123456789_"
    names = ["leeks." + "x" * 150 + a + b + c for a in letters for b in letters for c in letters]
    names = names[:10_000]
    sheet = scalepan.Sheet()
    with sheet.together() as change:
        for value, name in enumerate(names):
            change.set(name, value)
    assert [sheet.value(name).value for name in names] == list(range(10_000))
    with pytest.raises(scalepan.SheetError) as caught:
        sheet.value("leeks." + "x" * 150)
    assert caught.value.code == "sheet.unknown"


def rows() -> scalepan.Sheet:
    """Amounts at the written size, of an observatory's night soup; the prices are invented."""
    sheet = scalepan.Sheet()
    sheet.set("factor", 10)
    sheet.add_rows(
        "lines",
        given={"amount": "g EP", "price": "GBP/(kg EP)"},
        formulas={"cost": "amount * factor * price"},
    )
    sheet.add_row("lines", "barley", {"amount": "220 g EP", "price": ("2 GBP/(kg EP)", "invented")})
    sheet.add_row("lines", "leeks", {"amount": "500 g EP", "price": "3 GBP/(kg EP)"})
    sheet.define("till", "sum(lines.cost)")
    return sheet


def test_a_row_that_fails_is_edited_elsewhere_and_is_mended() -> None:
    sheet = rows()
    sheet.define("lines.cost", "amount * factor * price / (amount / (1 g EP) - 500)")
    with pytest.raises(scalepan.NumberError) as caught:
        sheet.value("leeks.cost")
    assert str(caught.value) == "leeks.cost:37: division by zero"
    # One row without a value, the other below zero: 4.4 / (220 - 500).
    with pytest.raises(scalepan.SheetError) as caught_total:
        sheet.value("till")
    assert str(caught_total.value) == (
        "sum(lines.cost): there is no sum: 1 row has no value and 1 is below zero "
        "(mend the rows without a value)"
    )
    sheet.set("barley.amount", "720 g EP")
    assert sorted(sheet.ran) == ["barley.cost", "sum(lines.cost)", "till"]
    # 7.2 kg at 2 GBP, over 720 - 500.
    assert sheet.value("till") == scalepan.Interval(scalepan.quantity(Fraction(144, 2200), "GBP"))
    sheet.set("leeks.amount", "501 g EP")
    # 5.01 kg at 3 GBP, over 1.
    assert sheet.value("till").value == Fraction(144, 2200) + Fraction(1503, 100)


@pytest.mark.parametrize("with_rows", [True, False])
def test_a_cycle_through_rows_and_totals_is_refused(with_rows: bool) -> None:
    sheet = rows()
    if not with_rows:
        sheet.remove_row("lines", "barley")
        sheet.remove_row("lines", "leeks")
    before = sheet.text()
    with pytest.raises(scalepan.SheetError) as caught:
        sheet.define("factor", "till / (1 GBP)")
    assert caught.value.code == "sheet.cycle"
    through = "barley.cost reads " if with_rows else ""
    assert str(caught.value) == (
        "a cell cannot depend on itself: factor reads till reads sum(lines.cost) reads "
        f"{through}factor"
        if with_rows
        else "a cell cannot depend on itself: sum(lines.cost) reads factor reads till reads "
        "sum(lines.cost)"
    )
    assert sheet.text() == before


def test_a_share_of_the_total_may_stand_beside_what_is_summed() -> None:
    sheet = rows()
    sheet.define("lines.share", "cost / till")
    # 4.4 and 15 GBP.
    assert sheet.value("leeks.share").value == Fraction(150, 194)
    with pytest.raises(scalepan.SheetError) as caught:
        sheet.define("lines.cost", "share * amount * price * factor")
    assert str(caught.value) == "a column cannot depend on itself: lines.cost"


@pytest.mark.parametrize(
    ("change", "message"),
    [
        (
            lambda s: s.set("amount", 5),
            "amount is a column of lines already (a formula of the rows could mean either)",
        ),
        (
            lambda s: s.rename("lines", "spare"),
            "spare.pot is a cell already (take another name)",
        ),
        (
            lambda s: s.add_rows("spare", given={"weight": "g"}),
            "spare.pot is a cell already (take another name)",
        ),
        (
            lambda s: s.add_row("notes", "first"),
            "first is a row of notes already",
        ),
        (
            lambda s: s.rename("notes.other", "first"),
            "first is a row of notes already",
        ),
    ],
)
def test_names_that_could_mean_two_things_are_taken(change: object, message: str) -> None:
    sheet = rows()
    sheet.set("spare.pot", 1)
    sheet.add_rows("notes", given={})
    sheet.add_row("notes", "first")
    sheet.add_row("notes", "other")
    before = sheet.text()
    with pytest.raises(scalepan.SheetError) as caught:
        change(sheet)  # type: ignore[operator]
    assert (caught.value.code, str(caught.value)) == ("sheet.taken", message)
    assert sheet.text() == before


def test_what_a_formula_of_the_rows_reads_is_not_removed() -> None:
    sheet = rows()
    sheet.define("lines.beside", "amount / leeks.amount")
    sheet.remove_row("lines", "barley")
    with pytest.raises(scalepan.SheetError) as caught:
        sheet.remove_row("lines", "leeks")
    assert str(caught.value) == (
        "leeks.amount is read by the column lines.beside (remove or change what reads it first)"
    )
    sheet.remove("till")
    sheet.remove("lines")
    assert sheet.cells() == ["factor"]
    assert sheet.undo()
    assert sheet.value("leeks.beside").value == 1


def test_a_value_in_rows_keeps_the_unit_of_its_column() -> None:
    sheet = rows()
    sheet.set("leeks.amount", "0.6 kg EP")
    assert str(sheet.value("leeks.amount")) == "600 g EP"


def test_an_error_tells_the_names_of_now() -> None:
    sheet = kitchen()
    sheet.set("serves", 0)
    sheet.rename("leeks.amount", "leeks.n")
    sheet.rename("leeks.need", "leeks.wanted")
    with pytest.raises(scalepan.NumberError) as caught:
        sheet.value("leeks.buy")
    assert str(caught.value) == "leeks.wanted:20: division by zero"


def test_together_is_all_or_nothing() -> None:
    sheet = kitchen()
    before = sheet.text()

    def change_two(second: str) -> None:
        with sheet.together() as change:
            change.set("portions", 60)
            change.define(second, {"leeks.buy": "leeks.need / nothing"}[second])

    with pytest.raises(scalepan.SheetError):
        change_two("leeks.buy")
    assert sheet.text() == before
    with pytest.raises(KeyError):  # raised inside the block
        change_two("leeks.bought")
    assert sheet.text() == before
    with sheet.together() as change:
        change.set("portions", 60)
        change.set("serves", 3)
    assert sheet.value("leeks.need").value == 10000
    assert sheet.undo()
    assert sheet.text() == before


def test_readers_read_whole_states_while_one_writes() -> None:
    sheet = scalepan.Sheet()
    sheet.set("a", 0)
    sheet.define("b", "a + 1")
    sheet.define("twice", "a + b")
    stop = threading.Event()
    wrong: list[object] = []

    def read() -> None:
        while not stop.is_set():
            twice = sheet.value("twice")
            # Of whole numbers a, 2 a + 1 is odd; half of a change would show an even one.
            if not isinstance(twice, scalepan.Quantity) or twice.value % 2 != 1:
                wrong.append(twice)
            sheet.text()
            sheet.why("twice")

    readers = [threading.Thread(target=read) for _ in range(4)]
    for reader in readers:
        reader.start()
    for value in range(1, 400):
        sheet.set("a", value)
        sheet.undo()
        sheet.redo()
    stop.set()
    for reader in readers:
        reader.join()
    assert not wrong
    assert sheet.value("twice").value == 799
