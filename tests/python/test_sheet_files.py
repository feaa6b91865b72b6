"""Saved sheets: the same to the digit and to the byte, or one clear error with its place."""

from __future__ import annotations

import os
import time
from collections.abc import Callable
from fractions import Fraction
from pathlib import Path

import pytest
import scalepan
from hypothesis import given, settings
from hypothesis import strategies as st
from scalepan import sheet_reader

NIGHT_SOUP = """\
scalepan_sheet = 1

[cells]
kind = { text = "soup", source = "the \\"night\\" menu" }
large = true
"leeks.buy" = { formula = "leeks.need / leeks.edible" }
"leeks.edible" = { value = "0.44 EP/AP", source = "USDA SR28 11246" }
"leeks.need" = "5 kg EP"
portions = 40
spread = { low = "3 kg", high = "5 kg" }
third = "1/3"
till = { formula = "sum(lines.cost)" }

[rows.lines.given]
amount = "g EP"
price = "GBP/(kg EP)"

[rows.lines.formulas]
cost = "amount * price"

[rows.lines.cells]
leeks = { amount = "500 g EP", price = { value = "3 GBP/(kg EP)", source = "invented" } }
chives = { amount = { formula = "leeks.amount / 20" }, price = "40 GBP/(kg EP)" }

[overrides]
"leeks.edible" = { value = "0.5 EP/AP", why = "own trim", who = "the cook", when = "2026-11-20" }

[variants]
"a full dome" = [
  { set = "portions", value = 60 },
  { override = "leeks.buy", value = "9 kg AP", why = "weighed" },
  { add_row = "lines", row = "rye", given = { amount = "220 g EP", price = 2 }, before = "chives" },
]
"""


def test_a_file_is_read_and_written_as_it_was() -> None:
    sheet = scalepan.parse_sheet(NIGHT_SOUP)
    assert sheet.text() == NIGHT_SOUP
    assert sheet.value("third").value == Fraction(1, 3)
    assert sheet.value("kind") == "soup"
    assert sheet.value("large") is True
    # 5 kg at the overriding 0.5.
    assert sheet.value("leeks.buy").to("kg AP").value == 10
    # 500 g at 3 GBP/kg and 25 g at 40 GBP/kg.
    assert sheet.value("till").to("GBP").value == Fraction(5, 2)
    assert sheet.rows("lines") == ["leeks", "chives"]
    assert sheet.variants["a full dome"].listed()[0] == (
        "set",
        {"name": "portions", "value": scalepan.quantity(60), "source": ""},
    )


def test_cells_may_be_written_in_any_order() -> None:
    lines = NIGHT_SOUP.split("\n")
    start, end = lines.index("[cells]") + 1, lines.index("[rows.lines.given]")
    turned = [*lines[:start], *reversed(lines[start:end]), *lines[end:]]
    assert scalepan.parse_sheet("\n".join(turned)).text() == NIGHT_SOUP


def refusal(text: str) -> str:
    with pytest.raises(scalepan.Error) as caught:
        scalepan.parse_sheet(text, file="soup.toml")
    return f"{caught.value.code} {caught.value}"


CELLS = "scalepan_sheet = 1\n[cells]\n"


@pytest.mark.parametrize(
    ("text", "told"),
    [
        (
            "",
            "sheet.version soup.toml: the file says no version (it begins with scalepan_sheet = 1)",
        ),
        (
            "scalepan_sheet = true",
            "sheet.version soup.toml:1:18: the version is no number "
            "(it begins with scalepan_sheet = 1)",
        ),
        (
            "scalepan_sheet = 0",
            "sheet.version soup.toml:1:18: the file has version 0, but this Scalepan reads 1 only "
            "(it begins with scalepan_sheet = 1)",
        ),
        (
            "scalepan_sheet = 2",
            "sheet.version soup.toml:1:18: the file has version 2, but this Scalepan reads up to 1 "
            "(install a newer Scalepan)",
        ),
        (
            "scalepan_sheet = 1\ncell = 1",
            'sheet.unknown_key soup.toml:2:8: unknown key "cell" (nearest: cells; '
            "keys: scalepan_sheet, cells, rows, overrides, variants)",
        ),
        (
            CELLS + "portions = 40\nportions = 41",
            "sheet.syntax soup.toml: not TOML: Cannot overwrite a value",
        ),
        (CELLS + "a =", "sheet.syntax soup.toml: not TOML: Invalid value"),
        (
            CELLS + 'need = "5 kgg"',
            'unit.unknown soup.toml:3:9: unknown unit "kgg" (nearest: kg)',
        ),
        (
            CELLS + 'need = "5 kg EP"\nbuy = { formula = "need + drain" }',
            'formula.name soup.toml:4:27: no cell is called "drain"',
        ),
        (
            CELLS + 'need = "5 kg EP"\nbuy = { formula = "need + 3 L" }',
            'formula.dimension soup.toml:4:25: "+" meets weight EP on its left and volume on its '
            "right",
        ),
        (
            CELLS + 'a = { formula = "b" }\nb = { formula = "a" }',
            "sheet.cycle soup.toml:3:18: a cell cannot depend on itself: a reads b reads a",
        ),
        (
            CELLS + "Leeks = 1",
            'sheet.name soup.toml:3:9: "Leeks" cannot be the name of a cell '
            '(small letters, digits and "_", parted by points: leeks.need)',
        ),
        (
            CELLS + "leeks.need = 1",
            'sheet.unknown_key soup.toml:3:14: unknown key "need" '
            "(keys: value, text, low, high, source, formula)",
        ),
        (
            CELLS + 'a = { value = 1, formula = "2" }',
            "sheet.two_values soup.toml:3:5: cells a has a formula and a value "
            "(write one of the two)",
        ),
        (
            CELLS + 'a = { value = 1, text = "2" }',
            "sheet.two_values soup.toml:3:5: cells a has two values (value, text, or low, high)",
        ),
        (
            CELLS + "a = { high = 1 }",
            "sheet.missing soup.toml:3:5: cells a has a high without a low "
            "(value, text, or low, high)",
        ),
        (CELLS + "a = 2026-11-20", "sheet.type soup.toml:3:5: cells a is not a number"),
        (
            CELLS + 'a = { text = "x\\u0007" }',
            "sheet.control_character soup.toml:3:15: cells a text holds a control character",
        ),
        (
            CELLS + 'a = 1\n[overrides]\na = { value = 2, who = "me" }',
            "sheet.missing soup.toml:5:5: overrides a has no why",
        ),
        (
            CELLS + 'a = 1\n[overrides]\nb = { value = 2, why = "weighed" }',
            'sheet.unknown soup.toml:5:5: no cell is called "b"',
        ),
        (
            CELLS + 'amount = 1\n[rows.lines.given]\namount = "g"',
            "sheet.taken soup.toml:4:1: amount is a cell already "
            "(a formula of the rows could mean either)",
        ),
        (
            'scalepan_sheet = 1\n[rows.lines.given]\namount = "g"\n[rows.lines.cells]\nleeks = {}',
            "sheet.row soup.toml:5:9: leeks.amount is given no value (it is weight)",
        ),
        (
            'scalepan_sheet = 1\n[rows.lines.given]\namount = "gg"',
            'unit.unknown soup.toml:3:11: unknown unit "gg" (nearest: g, kg, mg)',
        ),
        (
            'scalepan_sheet = 1\n[variants]\nbig = [{ put = "a" }]',
            "sheet.verb soup.toml:3:8: variants big 1 has no verb (verbs: set, redeclare, define, "
            "override, release, remove, rename, add_rows, add_row, remove_row, move_row)",
        ),
        (
            'scalepan_sheet = 1\n[variants]\nbig = [{ define = "a" }]',
            "sheet.missing soup.toml:3:8: variants big 1 has no formula",
        ),
        ("a = " + "[" * 5000, "sheet.syntax soup.toml: brackets nest too deeply"),
        (
            "scalepan_sheet = 1\n" + ".".join(["a"] * 200_000) + " = 1",
            "sheet.syntax soup.toml:2: a name has more than 100 parts",
        ),
        (
            "scalepan_sheet = 1" + "1" * 5000,
            "sheet.syntax soup.toml: a number has too many digits",
        ),
        (
            CELLS + "a = inf",
            "number.float soup.toml:3:5: the Decimal Infinity stands for no exact figure "
            "(write a number)",
        ),
        (
            CELLS + "a = 1e999999999",
            "number.exponent soup.toml:3:5: the exponent of a number is too large "
            "(at most 1000 is read)",
        ),
    ],
)
def test_what_a_file_has_wrong_is_told_with_its_place(text: str, told: str) -> None:
    assert refusal(text) == told


def test_an_older_version_is_brought_up(monkeypatch: pytest.MonkeyPatch) -> None:
    def named_otherwise(data: dict[str, object]) -> dict[str, object]:
        return {"scalepan_sheet": 1, "cells": data["inputs"]}

    monkeypatch.setitem(sheet_reader.MIGRATIONS, 0, named_otherwise)
    sheet = scalepan.parse_sheet("scalepan_sheet = 0\n[inputs]\nportions = 40")
    assert sheet.value("portions").value == 40


def test_what_cannot_be_read_back_is_not_written() -> None:
    sheet = scalepan.Sheet()
    sheet.set("kind", scalepan.Text("night\nsoup"))
    with pytest.raises(scalepan.SheetError) as caught:
        sheet.text()
    assert str(caught.value) == "a text holds a control character: 'night\\nsoup'"
    sheet.set("kind", scalepan.Text("night soup"))
    sheet.set("third", Fraction(1, 10**1500))
    with pytest.raises(scalepan.NumberError) as caught_number:
        sheet.text()
    assert caught_number.value.code == "number.too_many_digits"


def test_a_file_is_written_whole_or_not_at_all(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    path = tmp_path / "soup.toml"
    sheet = scalepan.parse_sheet(NIGHT_SOUP)
    sheet.save(path)
    assert path.read_text(encoding="utf-8") == NIGHT_SOUP
    path.chmod(0o640)
    sheet.set("portions", 60)

    def full(_handle: int) -> None:
        raise OSError(28, "No space left on device")

    with monkeypatch.context() as patch:
        patch.setattr(os, "fsync", full)
        with pytest.raises(scalepan.FileError) as caught:
            sheet.save(path)
    assert str(caught.value) == f"{path}: cannot write the file: No space left on device"
    assert os.listdir(tmp_path) == ["soup.toml"]
    assert path.read_text(encoding="utf-8") == NIGHT_SOUP
    sheet.save(path)
    assert scalepan.read_sheet(path).value("portions").value == 60
    assert path.stat().st_mode & 0o777 == 0o640
    with pytest.raises(scalepan.FileError) as caught:
        sheet.save(tmp_path / "none" / "soup.toml")
    assert caught.value.code == "file.unwritable"
    with pytest.raises(scalepan.FileError):
        sheet.save("soup\0.toml")


# Whatever can be in a sheet comes back.

PRINTABLE = st.text(st.characters(exclude_categories=["C", "Zl", "Zp"]), max_size=12)
NUMBERS = st.fractions(max_denominator=10**6) | st.fractions()
UNITS = st.sampled_from(["kg", "g EP", "EP/AP", "GBP", "GBP/(kg AP)", "mL", "%", "tbsp_us"])
AMOUNTS = st.builds(scalepan.quantity, NUMBERS, st.none() | UNITS)
INTERVALS = st.builds(
    lambda unit, low, more: scalepan.Interval(
        scalepan.quantity(low, unit), None if more is None else scalepan.quantity(low + more, unit)
    ),
    st.sampled_from([None, "kg", "GBP/(kg AP)"]),
    NUMBERS,
    st.none() | st.fractions(min_value=0, max_denominator=1000),
)
VALUES = AMOUNTS | INTERVALS | st.booleans() | PRINTABLE.map(scalepan.Text)
NAMES = st.from_regex(r"[a-z_]{3}[0-9](?:\.[a-z_]{3}[0-9])?", fullmatch=True)


@st.composite
def sheets(draw: st.DrawFn) -> scalepan.Sheet:
    sheet = scalepan.Sheet()
    names = draw(st.lists(NAMES, unique=True, min_size=1, max_size=6))
    for name in names:
        sheet.set(name, draw(VALUES), source=draw(PRINTABLE))
    for name in draw(st.lists(st.sampled_from(names), max_size=3, unique=True)):
        sheet.define(f"same_{name}", name)
    rows = draw(st.lists(NAMES, unique=True, max_size=3))
    given = {"w_g": "g", "w_on": "yes or no", "w_text": "text", "w_n": "plain number"}
    sheet.add_rows("these_rows", given=given)
    for row in rows:
        sheet.add_row(
            "these_rows",
            row,
            {
                "w_g": (scalepan.quantity(draw(NUMBERS), "kg"), draw(PRINTABLE)),
                "w_on": draw(st.booleans()),
                "w_text": scalepan.Text(draw(PRINTABLE)),
                "w_n": scalepan.Formula("2 + 3") if draw(st.booleans()) else draw(NUMBERS),
            },
            before=draw(st.sampled_from(["", *sheet.rows("these_rows")])),
        )
    sheet.define("these_rows.w_more", "w_g * w_n")
    name = draw(st.sampled_from(names))
    why = draw(PRINTABLE.filter(str.strip))
    own = next(given["value"] for _, given in sheet.changes().listed() if given.get("name") == name)
    sheet.override(name, own, why=why, who=draw(PRINTABLE), when=draw(PRINTABLE))
    variant = scalepan.Changes()
    variant.set(name, own, source=why)
    variant.add_rows("others", given=given, formulas={"w_more": "w_g * 2"})
    variant.rename(name, "elsewhere")
    variant.move_row("these_rows", "no_row")
    sheet.variants[draw(PRINTABLE.filter(lambda text: text.isprintable() and text.strip()))] = (
        variant
    )
    return sheet


@settings(max_examples=150)
@given(sheets())
def test_saving_loading_and_saving_again_gives_the_same_bytes(sheet: scalepan.Sheet) -> None:
    text = sheet.text()
    twin = scalepan.parse_sheet(text)
    assert twin.text() == text
    assert sorted(twin.cells()) == sorted(sheet.cells())
    assert twin.columns("these_rows") == sheet.columns("these_rows")
    for name in sheet.cells():
        assert twin.value(name) == sheet.value(name)
        assert str(twin.value(name)) == str(sheet.value(name))
    assert scalepan.sheet_difference(sheet, twin).lines == []


# A damaged or hostile file gives a sheet or one error, and soon.


def sheet_or_error(read: Callable[[], scalepan.Sheet]) -> scalepan.Sheet | scalepan.Error:
    try:
        return read()
    except scalepan.Error as error:
        return error


def expect_sheet_or_error(text: str) -> None:
    begun = time.monotonic()
    outcome = sheet_or_error(lambda: scalepan.parse_sheet(text, file="soup.toml"))
    if isinstance(outcome, scalepan.Error):
        assert outcome.file == "soup.toml"
        assert len(str(outcome)) < 2000
    else:
        assert scalepan.parse_sheet(outcome.text()).text() == outcome.text()
    assert time.monotonic() - begun < 10


PIECES = st.sampled_from(
    [
        *(
            '"',
            "'",
            "[",
            "]",
            "{",
            "}",
            "=",
            ",",
            ".",
            "\n",
            "\\",
            "#",
            "0",
            "-",
            "1e9",
            "\0",
            "\x1b",
        ),
        *('"""', "'''", "[[", "inf", "nan", "true", "2026-11-20", "kg EP", "sum(lines.cost)"),
        *(
            "lines",
            "leeks",
            "leeks.amount",
            "cells",
            "rows",
            "__class__",
            "; import os",
            "1/0",
            "\\u0000",
        ),
    ]
)


@settings(max_examples=400)
@given(st.data())
def test_a_damaged_file_gives_a_sheet_or_one_error(data: st.DataObject) -> None:
    text = NIGHT_SOUP
    for _ in range(data.draw(st.integers(1, 4))):
        at = data.draw(st.integers(0, len(text)))
        kind = data.draw(st.integers(0, 4))
        if kind == 0:
            text = text[:at] + data.draw(PIECES) + text[at:]
        elif kind == 1:
            text = text[:at] + text[at + data.draw(st.integers(1, 30)) :]
        elif kind == 2:
            text = text[:at]
        elif kind == 3:
            lines = text.split("\n")
            one, other = (data.draw(st.integers(0, len(lines) - 1)) for _ in range(2))
            lines[one], lines[other] = lines[other], lines[one]
            text = "\n".join(lines)
        else:
            text = text[:at] + data.draw(st.text(max_size=5)) + text[at:]
    expect_sheet_or_error(text)


@settings(max_examples=200)
@given(st.binary(max_size=200), st.integers(0, len(NIGHT_SOUP)))
def test_damaged_bytes_give_a_sheet_or_one_error(
    tmp_path_factory: pytest.TempPathFactory, damage: bytes, at: int
) -> None:
    data = NIGHT_SOUP.encode()
    path = tmp_path_factory.getbasetemp() / "damaged.toml"
    path.write_bytes(data[:at] + damage + data[at + len(damage) :])
    outcome = sheet_or_error(lambda: scalepan.read_sheet(path))
    assert isinstance(outcome, scalepan.Sheet) or outcome.file == str(path)


@pytest.mark.parametrize(
    "text",
    [
        CELLS + "".join(f'c{i} = {{ formula = "c{i + 1}" }}\n' for i in range(3000)) + "c3000 = 1",
        CELLS
        + "".join(f'c{i} = {{ formula = "c{i + 1}" }}\n' for i in range(3000))
        + 'c3000 = { formula = "c0" }',
        CELLS + 'a = { formula = "' + "(" * 100_000 + '" }',
        CELLS + 'a = { formula = "' + "1+" * 100_000 + '1" }',
        CELLS + "a = " + "9" * 4000,
        CELLS + 'a = { formula = "1 / þ" }\nb = { formula = "a" }',
        CELLS + 'a = "' + "9" * 100_000 + '"',
        CELLS + 'a = "1e1000"\nb = { formula = "a^1000^1000" }',
        CELLS
        + "".join(f'x{i} = {{ formula = "x{i - 1} * x{i - 1}" }}\n' for i in range(1, 40))
        + "x0 = 3",
        CELLS + '"' + "a" * 100_000 + '" = 1',
        CELLS + "\"__import__('os')\" = 1",
        "scalepan_sheet = 1\n" + "".join(f"[rows.r{i}.given]\n" for i in range(2000)),
        "scalepan_sheet = 1\n[rows.r.given]\n" + "".join(f'c{i} = "g"\n' for i in range(3000)),
        "scalepan_sheet = 1\n[variants]\nv = [" + "{ set = 'a', value = 1 }," * 5000 + "]",
        "\ufeff" + NIGHT_SOUP,
        NIGHT_SOUP.replace("\n", "\r\n"),
    ],
    ids=range(16),
)
def test_a_hostile_file_takes_no_long_time(text: str) -> None:
    expect_sheet_or_error(text)
