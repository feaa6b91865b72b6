"""Pans against print: their sizes, what sources say they hold, and the geometry beside it.

Sources: EN 631-1:1993 (outer sizes of gastronorm containers) and the litres of a maker's table; an
oven maker's manual (steam-table pans); the pan volumes of Sarah Phillips (2000), Time Inc. (2008),
M. Parrish, Pittsburgh Post-Gazette (2016) and the back matter of a cookbook; S. Q. Field, Culinary
Reactions, ch. 10 (a liquid's depth and surface). A US gallon is 231 cubic inches (NIST Handbook
44, appendix C), so a cup is 14.4375 of them.
"""

from __future__ import annotations

from decimal import ROUND_HALF_UP, Decimal
from fractions import Fraction

import pytest
import scalepan
from scalepan import pan, pan_ratio, pan_ratio_error, pans, quantity
from scalepan.pan_size import PI, PI_ERROR

CUP = Fraction(231, 16)  # cubic inches


def half_up(x: Fraction, places: int) -> str:
    exact = Decimal(x.numerator) / Decimal(x.denominator)
    return str(exact.quantize(Decimal(1).scaleb(-places), ROUND_HALF_UP))


def arctan_of_one_over(n: int) -> tuple[Fraction, Fraction]:
    """Below and above, by the alternating series."""
    total = Fraction(0)
    for k in range(40):
        total += Fraction((-1) ** k, (2 * k + 1) * n ** (2 * k + 1))
    return total, total + Fraction(1, 81 * n**81)


def test_pi_is_rounded_half_up_to_15_decimals() -> None:
    """Machin: pi/4 = 4 arctan(1/5) - arctan(1/239)."""
    low_5, high_5 = arctan_of_one_over(5)
    low_239, high_239 = arctan_of_one_over(239)
    low, high = 4 * (4 * low_5 - high_239), 4 * (4 * high_5 - low_239)
    assert Fraction(3) < low < high < low + Fraction(1, 10**50)
    assert low >= PI - PI_ERROR
    assert high < PI + PI_ERROR
    assert PI * 10**15 % 1 == 0


# EN 631-1:1993 as a maker's table has it; 1/9 is from memory.
GASTRONORM = {
    "2/1": (650, 530),
    "1/1": (530, 325),
    "2/3": (354, 325),
    "1/2": (325, 265),
    "1/3": (325, 176),
    "2/4": (530, 162),
    "1/4": (265, 162),
    "1/6": (176, 162),
    "1/9": (176, 108),
}
# The maker's table, by depth 20, 40, 65, 100, 150, 200 mm.
LITRES = {
    "1/1": ("1.9", "4.5", "7.4", "12.6", "18", "25"),
    "2/3": ("1.25", "3", "5.25", "8", "11.5", ""),
    "1/2": ("0.85", "1.75", "3.5", "5.5", "8.5", "11"),
    "1/3": ("", "1.5", "2.25", "3.5", "5.5", "7.25"),
    "1/4": ("", "", "1.5", "2.5", "3.75", "5.25"),
    "2/4": ("", "", "3.5", "5.5", "", ""),
    "1/6": ("", "", "1", "1.5", "2.25", ""),
}
DEPTHS = (20, 40, 65, 100, 150, 200)


@pytest.mark.parametrize("size", GASTRONORM)
def test_gastronorm_sizes(size: str) -> None:
    length, width = GASTRONORM[size]
    container = pan(f"GN {size}")
    assert container.area == quantity(Fraction(length * width, 100), "cm^2")
    assert container.area_error == quantity("0 cm^2")
    assert container.volume is None
    assert ("from memory" in container.source) == (size == "1/9")


@pytest.mark.parametrize("size", LITRES)
def test_gastronorm_litres(size: str) -> None:
    for depth, litres in zip(DEPTHS, LITRES[size], strict=True):
        name = f"GN {size} {depth}"
        if not litres:
            assert name not in pans()
            continue
        assert pan(name).volume == quantity(f"{litres} L")
        assert pan(name).depth == quantity(f"{depth} mm")
        assert pan(name).area == pan(f"GN {size}").area


def test_a_half_container_has_half_the_area_and_less_than_half_the_litres() -> None:
    assert pan_ratio("GN 1/2", "GN 1/1") == Fraction(1, 2)
    assert pan_ratio("GN 1/2 65", "GN 1/1 65", by="volume") == Fraction(35, 74)


# The manual: usable fluid ounces at 2-1/2, 4 and 6 in.
USABLE = {
    "full": (240, 420, 625),
    "2/3": (175, 294, 435),
    "1/2": (125, 208, 314),
    "1/3": (75, 125, 186),
    "1/4": (55, 95, 140),
    "1/6": (35, 55, 82),
}


@pytest.mark.parametrize("size", USABLE)
def test_steam_table_pans(size: str) -> None:
    for depth, ounces in zip(("2-1/2", "4", "6"), USABLE[size], strict=True):
        table_pan = pan(f"steam-table {size} {depth} inch")
        assert table_pan.volume == quantity(ounces, "fl_oz_us")
        assert table_pan.printed[0].filled == "usable"
        assert (table_pan.area is None) == (size != "full")


def test_a_full_steam_table_pan_overflows_beyond_what_is_usable() -> None:
    """The manual: 12 x 20 in; to overflowing 7-7/8, 13-1/2 and 20 quarts."""
    for depth, quarts in (("2 1/2", "7 7/8"), ("4", "13 1/2"), ("6", "20")):
        full = pan(f"steam-table full {depth} inch")
        (overflowing,) = full.beside
        assert overflowing.filled == "overflowing"
        assert overflowing.volume == quantity(f"{quarts} qt_us")
        assert overflowing.volume > full.printed[0].volume
        assert full.area == quantity("240 inch^2")


# Size, printed cups with their source, and length x width x depth (or the circle) / 14.4375.
PHILLIPS, TIME, POST, BACK = "Phillips", "Time Inc.", "Post-Gazette", "back matter"
BAKING = [
    ("round baking pan 8 x 1 1/2 inch", [("4", PHILLIPS), ("4", POST)], "5.22"),
    ("round baking pan 8 x 2 inch", [("6", PHILLIPS)], "6.96"),
    ("round baking pan 9 x 1 1/2 inch", [("6", PHILLIPS)], "6.61"),
    ("round baking pan 9 x 2 inch", [("8", PHILLIPS)], "8.81"),
    ("round baking pan 10 x 2 inch", [("11", PHILLIPS)], "10.88"),
    ("baking pan 8 x 8 x 1 1/2 inch", [("6", PHILLIPS), ("6", BACK)], "6.65"),
    ("baking pan 8 x 8 x 2 inch", [("8", PHILLIPS), ("8", BACK)], "8.87"),
    ("baking pan 9 x 9 x 1 1/2 inch", [("8", PHILLIPS)], "8.42"),
    ("baking pan 9 x 9 x 2 inch", [("10", BACK)], "11.22"),
    ("baking pan 13 x 9 x 2 inch", [("14", TIME), ("14-15", BACK)], "16.21"),
    ("baking pan 11 x 7 x 2 inch", [("6", POST), ("6", BACK)], "10.67"),
    ("baking pan 15 1/2 x 10 1/2 x 1 inch", [("10", BACK)], "11.27"),
]


def geometry(baking: scalepan.Pan) -> Fraction:
    """Cups of a straight-sided pan of that size, which no pan here claims to hold."""
    assert baking.area is not None
    assert baking.depth is not None
    return (baking.area * baking.depth).to("inch^3").value / CUP


@pytest.mark.parametrize(("name", "printed", "straight"), BAKING)
def test_baking_pans_hold_what_each_source_prints(
    name: str, printed: list[tuple[str, str]], straight: str
) -> None:
    baking = pan(name)
    assert len(baking.printed) == len(printed)
    for (cups, source), entry in zip(printed, baking.printed, strict=True):
        low, _, high = cups.partition("-")
        assert entry.volume == quantity(low, "cup_us")
        assert entry.high == quantity(high or low, "cup_us")
        assert source in entry.source
        assert entry.filled == "rim"
    assert half_up(geometry(baking), 2) == straight


def test_print_is_below_geometry_but_for_one_pan() -> None:
    above = [
        name
        for name, _, _ in BAKING
        if any(entry.high.to("cup_us").value > geometry(pan(name)) for entry in pan(name).printed)
    ]
    assert above == ["round baking pan 10 x 2 inch"]


def test_geometry_is_no_guide_to_what_a_pan_holds() -> None:
    """11 x 7 x 2 in is printed at 6 cups, near to half of its geometry; a size tells no volume."""
    baking = pan("baking pan 11 x 7 x 2 inch")
    assert baking.printed[0].volume.to("cup_us").value / geometry(baking) < Fraction(57, 100)
    assert pan("11 x 7 x 2 inch").volume is None
    assert pan("11 x 7 x 2 inch").area == baking.area


def test_areas_that_keep_the_depth() -> None:
    """9 x 13 on 8 x 8 is 117/64 = 1.828125; a 9 in round is 0.994 of an 8 in square."""
    assert pan_ratio("9 x 13 in", "8 x 8 in") == Fraction(117, 64) == Fraction("1.828125")
    ratio = pan_ratio("9 inch round", "8 inch square")
    assert half_up(ratio, 3) == "0.994"
    error = pan_ratio_error("9 inch round", "8 inch square")
    assert 0 < error < Fraction(1, 10**15)


# S. Q. Field: a quart in a pan 8 in across stands 1.14889975 in deep, two 2.29779949; the
# liquid's whole surface grows from 129 to 158 square inches, by about 1-1/4.
def depth_of(volume: str) -> Fraction:
    area = pan("8 inch round").area
    assert area is not None
    return (quantity(volume, measures="us") / area).to("inch").value


def surface_of(volume: str) -> Fraction:
    """Top and bottom, and the side: 4 V / d."""
    area = pan("8 inch round").area
    assert area is not None
    side = quantity(volume, measures="us") * 4 / quantity("8 inch")
    return (area * 2 + side).to("inch^2").value


def test_the_depth_of_a_liquid_in_a_round_pan() -> None:
    assert half_up(depth_of("1 qt"), 8) == "1.14889975"
    assert half_up(depth_of("2 qt"), 8) == "2.29779949"


def test_the_whole_surface_of_a_liquid_grows_by_less_than_its_volume() -> None:
    assert half_up(surface_of("1 qt"), 0) == "129"
    assert half_up(surface_of("2 qt"), 0) == "158"
    # "About 1-1/4": to the nearest quarter.
    assert half_up(surface_of("2 qt") / surface_of("1 qt") * 4, 0) == "5"
