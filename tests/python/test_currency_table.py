"""The currency table against ISO 4217 list one."""

from __future__ import annotations

import re
from collections import Counter, defaultdict

import pytest
from food_tables import ROOT

CURRENCY = re.compile(r'\{"([A-Z]{3})", (-1|\d), "([^"]+)"\},')


@pytest.fixture(scope="module")
def currencies() -> list[tuple[str, int]]:
    text = (ROOT / "cpp" / "measure" / "currency_table.inc").read_text(encoding="utf-8")
    head, *lines = text.splitlines()
    assert head.startswith("// ISO 4217 list one, published 2024-06-25")
    matches = [CURRENCY.fullmatch(line) for line in lines]
    return [(match[1], int(match[2])) for match in matches if match is not None]


def test_currency_counts(currencies: list[tuple[str, int]]) -> None:
    """ISO 4217 list one of 2024-06-25: 17 without digits, 140 with 2, 7 with 3, 2 with 4."""
    assert Counter(digits for _, digits in currencies) == {0: 17, 2: 140, 3: 7, 4: 2, -1: 13}
    codes = [code for code, _ in currencies]
    assert codes == sorted(set(codes))
    assert len(codes) == 179


def test_currency_digits(currencies: list[tuple[str, int]]) -> None:
    by_digits: dict[int, set[str]] = defaultdict(set)
    for code, digits in currencies:
        by_digits[digits].add(code)
    none = "BIF CLP DJF GNF ISK JPY KMF KRW PYG RWF UGX UYI VND VUV XAF XOF XPF"
    assert by_digits[0] == set(none.split())
    assert by_digits[3] == {"BHD", "IQD", "JOD", "KWD", "LYD", "OMR", "TND"}
    assert by_digits[4] == {"CLF", "UYW"}
    assert {"XAU", "XXX", "XTS", "XDR"} <= by_digits[-1]
    assert {"GBP", "EUR", "USD", "HUF", "IDR"} <= by_digits[2]
