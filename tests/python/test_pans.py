"""Pans in Python: names, sizes as written, own tables, ratios and their errors.

Expected figures are worked out by hand beside each check; the own pans are invented.
"""

from __future__ import annotations

from fractions import Fraction
from pathlib import Path

import pytest
import scalepan
from hypothesis import given
from hypothesis import strategies as st
from scalepan import Pan, pan, pan_ratio, pan_ratio_error, pans, quantity, read_pans

HINT = "(write 30 x 20 x 6 cm, 8 x 2 inch round, or 20 cm square)"


def test_every_bundled_pan_has_a_source_and_a_size_or_a_volume() -> None:
    assert pans()
    for known in pans().values():
        assert known.source
        assert all(entry.source for entry in known.printed)
        assert known.area is not None or known.volume is not None
        assert str(known) == known.name


def test_changing_the_list_changes_no_bundled_pan() -> None:
    pans().clear()
    assert pan("GN 1/1 65").name == "GN 1/1 65"


@pytest.mark.parametrize(
    ("written", "name"),
    [
        ("gn 1/1  65", "GN 1/1 65"),
        ("Steam-table FULL 2-1/2 inch", "steam-table full 2 1/2 inch"),
        ("baking pan 9 × 13 × 2 inch", "baking pan 13 x 9 x 2 inch"),
        ("round baking pan 8 x 1-1/2 inch", "round baking pan 8 x 1 1/2 inch"),
    ],
)
def test_spellings_of_a_name(written: str, name: str) -> None:
    assert pan(written).name == name


@pytest.mark.parametrize(
    ("written", "area", "depth"),
    [
        ("30 x 20 x 6 cm", "600 cm^2", "6 cm"),
        ("30cm x 20cm x 60mm", "600 cm^2", "6 cm"),
        ("300 x 200 mm", "600 cm^2", None),
        ("9 x 13 in", "117 inch^2", None),
        ("15-1/2 x 10 1/2 x 1 inch", "162.75 inch^2", "1 inch"),
        ('8" x 8" x 2"', "64 inch^2", "2 inch"),
        ("20 cm square", "400 cm^2", None),
        ("8 x 2 in. square", "64 inch^2", "2 inch"),
        ("½ x 1 m", "5000 cm^2", None),
    ],
)
def test_sizes_as_written(written: str, area: str, depth: str | None) -> None:
    own = pan(written)
    assert own.area == quantity(area)
    assert own.area_error == quantity("0 cm^2")
    assert own.depth == (None if depth is None else quantity(depth))
    assert (own.name, own.volume, own.source) == (written, None, "size as given")


def test_a_round_pan_keeps_its_area_with_the_bound_of_its_error() -> None:
    own = pan("20 x 5 cm round")
    assert own.depth == quantity("5 cm")
    # d = 20 cm: pi times 100, with pi rounded to 15 decimals, is off by at most 5 in 10^14.
    assert own.area == quantity("314.1592653589793 cm^2")
    assert own.area_error == quantity(Fraction(5, 10**14), "cm^2")


DIAMETERS = st.fractions(min_value=1, max_value=1000, max_denominator=64)


@given(DIAMETERS, DIAMETERS, st.integers(1, 40), st.integers(1, 40))
def test_between_rounds_the_ratio_is_exact(
    new: Fraction, old: Fraction, count_new: int, count_old: int
) -> None:
    pair = (pan(f"{new} cm round"), pan(f"{old} cm round"), count_new, count_old)
    assert pan_ratio(*pair) == Fraction(count_new, count_old) * new**2 / old**2
    assert pan_ratio_error(*pair) == 0


@given(DIAMETERS, DIAMETERS, DIAMETERS)
def test_between_rectangles_the_ratio_is_exact(a: Fraction, b: Fraction, c: Fraction) -> None:
    assert pan_ratio(f"{a} x {b} cm", f"{c} cm square") == a * b / c**2
    assert pan_ratio_error(f"{a} x {b} cm", f"{c} cm square") == 0


# Pi (UCUM [pi]) lies between these.
PI_LOW = Fraction(31415926535897932384, 10**19)
PI_HIGH = Fraction(31415926535897932385, 10**19)


@given(DIAMETERS, DIAMETERS)
def test_between_a_round_pan_and_a_square_the_error_is_bounded(d: Fraction, side: Fraction) -> None:
    there = (f"{d} cm round", f"{side} cm square")
    ratio, error = pan_ratio(*there), pan_ratio_error(*there)
    assert ratio - error <= PI_LOW * d**2 / 4 / side**2
    assert PI_HIGH * d**2 / 4 / side**2 <= ratio + error
    assert error < ratio / 10**15
    back, error = pan_ratio(*reversed(there)), pan_ratio_error(*reversed(there))
    assert back - error <= side**2 / (PI_HIGH * d**2 / 4)
    assert side**2 / (PI_LOW * d**2 / 4) <= back + error


def test_ratios_with_counts_and_by_volume() -> None:
    # 3 x 600 cm2 on 2 x 400 cm2.
    assert pan_ratio("30 x 20 cm", "20 cm square", 3, 2) == Fraction(9, 4)
    # The maker's table: 3.5 L and 7.4 L.
    assert pan_ratio("GN 1/2 65", "GN 1/1 65", 2, 1, "volume") == Fraction(70, 74)
    assert pan_ratio_error("GN 1/2 65", "GN 1/1 65", by="volume") == 0
    assert pan_ratio("30 x 20 cm", "20 cm square", "1 1/2") == Fraction(9, 4)


def test_an_own_volume_goes_before_what_others_say() -> None:
    measured = pan("baking pan 13 x 9 x 2 inch", volume="13 1/2 cup", measures="us")
    assert measured.volume == quantity("13 1/2 cup_us")
    assert measured.printed[0].source == "as given"
    # Time Inc. prints 14 cups, a cookbook 14 to 15.
    assert [entry.volume for entry in measured.beside] == [quantity("14 cup_us")] * 2
    own = pan("30 x 20 x 6 cm", volume=quantity("3.2 L"))
    assert own.volume == quantity("3.2 L")
    assert own.volume.unit == "mL"


def refusal(name: str, volume: str | None = None) -> str:
    with pytest.raises(scalepan.MeasureError) as caught:
        pan(name, volume=volume)
    return f"{caught.value.code}: {caught.value}"


def test_names_that_are_unknown() -> None:
    assert refusal("GN 1/1 60") == (
        'pan.unknown: no pan is called "GN 1/1 60" (nearest: GN 1/1 20, GN 1/1 40, GN 1/1 65; '
        "a pan of your own is written as 30 x 20 x 6 cm)"
    )
    assert refusal("round") == (
        'pan.unknown: no pan is called "round" (a pan of your own is written as 30 x 20 x 6 cm)'
    )


def test_sizes_that_cannot_be() -> None:
    assert refusal("30 x 20 x 6") == f'pan.size: "30 x 20 x 6" has no unit at its end {HINT}'
    assert refusal("30 cm") == f'pan.size: "30 cm" is no size of a pan: one length {HINT}'
    assert refusal("4 x 3 x 2 x 1 cm") == (
        f'pan.size: "4 x 3 x 2 x 1 cm" is no size of a pan: 4 lengths {HINT}'
    )
    assert refusal("8 x 8 x 2 inch round") == (
        f'pan.size: "8 x 8 x 2 inch round" is no size of a pan: 3 lengths {HINT}'
    )
    assert refusal("30 x 20 g") == (
        f"pan.length: a length belongs here, and 30 g is of the kind weight {HINT}"
    )
    assert refusal("30 x 0 cm") == f"pan.length: a pan has no length of 0 cm {HINT}"
    assert refusal("-3 x 4 cm") == f"pan.length: a pan has no length of -3 cm {HINT}"
    assert refusal("30 x 20 x six cm").startswith("amount.unreadable: ")
    assert refusal("20 to 30 x 20 cm").startswith("amount.range: ")


def test_volumes_that_cannot_be() -> None:
    assert refusal("30 x 20 cm", "3 kg") == (
        "pan.volume: a pan holds a volume above zero, and 3 kg is none "
        "(write it as 3.2 L or 14 cup_us)"
    )
    assert refusal("30 x 20 cm", "0 L") == (
        "pan.volume: a pan holds a volume above zero, and 0 L is none "
        "(write it as 3.2 L or 14 cup_us)"
    )


def ratio_refusal(new: str, old: str, count: int = 1, by: str = "area") -> str:
    with pytest.raises(scalepan.MeasureError) as caught:
        pan_ratio(new, old, count, 1, by)
    return f"{caught.value.code}: {caught.value}"


def test_ratios_that_cannot_be() -> None:
    assert ratio_refusal("steam-table 1/2 4 inch", "GN 1/2") == (
        'pan.no_area: the source of "steam-table 1/2 4 inch" gives no size '
        '(measure it and give its size: pan("30 x 20 x 6 cm"))'
    )
    assert ratio_refusal("GN 1/1 65", "GN 2/1", by="volume") == (
        'pan.no_volume: no source says what "GN 2/1" holds, and its size does not tell '
        '(fill it with measured water and give that: pan("GN 2/1", volume="3.2 L"))'
    )
    assert ratio_refusal("GN 1/1", "GN 1/2", count=0) == (
        "pan.count: there are no 0 pans (give a number above zero)"
    )
    assert ratio_refusal("GN 1/1", "GN 1/2", by="weight") == (
        'pan.by: pans are not compared by "weight" (by: area, volume)'
    )


OWN = """pan,length,width,diameter,depth,volume,volume_high,filled,source
deep tray,60 cm,40 cm,,9 cm,18 L,,usable,own measuring
deep tray,,,,,20 L,21 L,rim,maker's sheet
tart ring,,,24 cm,,,,,own measuring
stock bucket,,,,,12 L,,,own measuring
"""


def test_pans_of_your_own(tmp_path: Path) -> None:
    file = tmp_path / "pans.csv"
    file.write_text(OWN, encoding="utf-8")
    own = read_pans(file)
    assert list(own) == ["deep tray", "tart ring", "stock bucket"]
    tray = pan("Deep tray", pans=own)
    assert tray.area == quantity("2400 cm^2")
    assert tray.volume == quantity("18 L")
    assert [(entry.volume, entry.high, entry.filled) for entry in tray.beside] == [
        (quantity("20 L"), quantity("21 L"), "rim")
    ]
    assert own["tart ring"].volume is None
    assert own["stock bucket"].area is None
    assert own["stock bucket"].area_error is None
    # 60 x 40 cm twice on GN 1/1 of 53 x 32.5 cm.
    assert pan_ratio(tray, "GN 1/1", 2) == Fraction(4800 * 10, 53 * 325)


def file_refusal(tmp_path: Path, *rows: str) -> str:
    file = tmp_path / "pans.csv"
    header = "pan,length,width,diameter,depth,volume,volume_high"
    file.write_text("\n".join([header, *rows]), encoding="utf-8")
    with pytest.raises(scalepan.MeasureError) as caught:
        read_pans(file)
    return f"{caught.value.code}: {caught.value}".replace(str(file), "pans.csv")


@pytest.mark.parametrize(
    ("rows", "message"),
    [
        (
            ["tray,60 cm,,,,,"],
            'pan.size: pans.csv:2:1: the size of "tray" is neither length and width nor a '
            "diameter (give length and width, or diameter)",
        ),
        (
            ["tray,60 cm,40 cm,20 cm,,,"],
            'pan.size: pans.csv:2:1: the size of "tray" is neither length and width nor a '
            "diameter (give length and width, or diameter)",
        ),
        (
            ["tray,,,,6 cm,,"],
            'pan.size: pans.csv:2:1: "tray" has neither a size nor a volume '
            "(give length and width, a diameter, or a volume)",
        ),
        ([",60 cm,40 cm,,,,"], "pan.name: pans.csv:2:1: a pan has no name"),
        (
            ["tray,60 cm,40 g,,,,"],
            "pan.length: pans.csv:2:12: a length belongs here, and 40 g is of the kind weight "
            + HINT,
        ),
        (
            ["tray,60 cm,40 cm,,,18 kg,"],
            "pan.volume: pans.csv:2:20: a pan holds a volume above zero, and 18 kg is none "
            "(write it as 3.2 L or 14 cup_us)",
        ),
        (
            ["tray,60 cm,40 cm,,,18 L,17 L"],
            "pan.volume: pans.csv:2:1: a range goes up, and 17 L is below 18 L",
        ),
        (
            ["tray,60 cm,40 cm,,,,17 L"],
            "pan.volume: pans.csv:2:1: a highest volume stands without the volume",
        ),
        (
            ["tray,60 cm,40 cm,,,18 L,", "Tray,60 cm,41 cm,,,17 L,"],
            'pan.twice: pans.csv:3:1: "Tray" is there twice '
            "(a further row of a pan gives another source's volume for the same size)",
        ),
        (
            ["tray,60 cm,40 cm,,,18 L,", "tray,60 cm,40 cm,,,,"],
            'pan.twice: pans.csv:3:1: "tray" is there twice '
            "(a further row of a pan gives another source's volume for the same size)",
        ),
    ],
)
def test_rows_that_cannot_be(tmp_path: Path, rows: list[str], message: str) -> None:
    assert file_refusal(tmp_path, *rows) == message


def test_a_pan_is_a_value() -> None:
    assert pan("30 x 20 cm") == pan("30 x 20 cm")
    assert isinstance(pan("30 x 20 cm"), Pan)
