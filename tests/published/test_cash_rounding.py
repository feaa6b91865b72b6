"""What cash can pay, against printed examples and the published table.

Examples: encyclopaedia, "cash rounding". Steps: Unicode CLDR, supplemental data `<fractions>`, as
Debian's unicode-cldr-core 41 and npm's cldr-core 48.2 have them; ISO 4217 list one (2024-06-25).
"""

from __future__ import annotations

from fractions import Fraction

import pytest
from scalepan import cash_total, quantity


@pytest.mark.parametrize(
    ("bill", "paid"),
    [
        ("20.42 AUD", "20.40 AUD"),  # Australia, to 5 c
        ("20.43 AUD", "20.45 AUD"),
        ("10.02 AUD", "10.00 AUD"),
        ("10.03 AUD", "10.05 AUD"),
        ("1.14 NZD", "1.10 NZD"),  # New Zealand since 2006: 1 to 4 down, 6 to 9 up
        ("1.16 NZD", "1.20 NZD"),
        ("19.97 CAD", "19.95 CAD"),  # Canada since 4 February 2013
        ("19.98 CAD", "20.00 CAD"),
        ("223.20 SEK", "223 SEK"),  # Sweden since 2010: whole krona
    ],
)
def test_bills_of_today(bill: str, paid: str) -> None:
    assert cash_total(bill).paid == quantity(paid)


@pytest.mark.parametrize(
    ("bill", "paid"), [("223.20 SEK", "223.00 SEK"), ("65.40 SEK", "65.50 SEK")]
)
def test_swedish_receipts_from_1992_to_2010(bill: str, paid: str) -> None:
    assert cash_total(bill, step="0.50").paid == quantity(paid)


def test_new_zealand_leaves_the_tie_to_the_shop() -> None:
    assert cash_total("1.15 NZD").paid == quantity("1.20 NZD")
    assert cash_total("1.15 NZD", rounding="half down").paid == quantity("1.10 NZD")


@pytest.mark.parametrize(
    ("currency", "step"),
    [
        # CLDR, in minor units 5, 5 and 50
        *[("CHF", "0.05"), ("CAD", "0.05"), ("DKK", "0.50")],
        # CLDR, cashDigits 0
        *[(code, "1") for code in ("SEK", "NOK", "CZK", "AMD", "COP", "PKR", "TWD")],
        # CLDR 48, cashRounding 5
        ("HUF", "5"),
        # ISO 4217: none, three and two digits
        *[(code, "1") for code in ("JPY", "KRW", "ISK", "CLP", "VND", "XOF")],
        *[(code, "0.001") for code in ("BHD", "JOD", "KWD", "OMR", "TND")],
        *[(code, "0.01") for code in ("EUR", "USD", "GBP")],
    ],
)
def test_the_smallest_amount_of_a_currency(currency: str, step: str) -> None:
    found = cash_total(f"1 {currency}")
    assert found.step == Fraction(step)
    assert found.source


def test_the_total_is_rounded_and_not_its_lines() -> None:
    lines = [quantity("1.02 CHF")] * 3
    total = lines[0] + lines[1] + lines[2]
    assert cash_total(total).paid == quantity("3.05 CHF")
    assert sum(cash_total(line).paid.value for line in lines) == 3
    assert cash_total(total).error == quantity("-0.01 CHF")
