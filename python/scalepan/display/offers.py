"""Price books, offers, and the whole packs that meet a need."""

from __future__ import annotations

from fractions import Fraction
from itertools import islice
from typing import TYPE_CHECKING, NamedTuple

from scalepan import _core
from scalepan._core import Cover, CoverFunction, CoverStep, Offer, PriceBook, Quantity
from scalepan.command_line.report import money_of, packs_text, told_of
from scalepan.command_line.sections import NOTE, Rows, Section, Table, Texts
from scalepan.display.kinds import Display, display_of, of_sections
from scalepan.errors import Error

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator, Sequence

_MOST_STEPS = 12


@display_of.register
def _(shown: PriceBook) -> Display:
    count = len(shown)
    title = f"{count} offer{'' if count == 1 else 's'}"
    return of_sections([Section(title, (offers_table(shown.offers),))])


@display_of.register
def _(shown: Offer) -> Display:
    return of_sections([Section("", (offers_table([shown]),))])


def offers_table(offers: Sequence[Offer]) -> Table:
    """Without the columns that no offer fills."""
    columns = [column for column in _COLUMNS if any(column.of(offer) for offer in offers)]
    rows = Rows(offers, lambda offer: tuple(column.of(offer) for column in columns))
    right = [place for place, column in enumerate(columns) if column.head == "price"]
    return Table([column.head for column in columns], rows, right, whole="price_book.offers")


class _Column(NamedTuple):
    head: str
    of: Callable[[Offer], str]


def _keeps(offer: Offer) -> str:
    days = f"{offer.keeps_days} days" if offer.keeps_days else "yes"
    return days if offer.keeps else "no"


def _terms(offer: Offer) -> list[str]:
    """As written, and what else bounds or adds to the price."""
    texts = list(offer.terms)
    if offer.least > 1:
        texts.append(f"from {_core.exact_text(offer.least)} on")
    if offer.limit is not None:
        texts.append(f"at most {_core.exact_text(offer.limit)}")
    if offer.tax is not None:
        percent = _core.exact_text(offer.tax * 100)
        texts.append(f"tax {percent} % {'in the price' if offer.tax_included else 'on top'}")
    if offer.deposit:
        texts.append(f"deposit {offer.deposit.told_money}")
    return texts


_COLUMNS = (
    _Column("item", lambda offer: offer.item),
    _Column("pack", lambda offer: offer.pack),
    _Column("sold as", lambda offer: offer.sold_as),
    _Column("price", lambda offer: money_of(offer.price)),
    _Column("keeps", _keeps),
    _Column("shop", lambda offer: offer.shop),
    _Column("date", lambda offer: offer.date),
    _Column("terms", lambda offer: "; ".join(_terms(offer))),
)


@display_of.register
def _(shown: Cover) -> Display:
    row = (packs_text(shown.packs), money_of(shown.price), told_of(shown.leftover))
    return of_sections([Section("", (Table(("packs", "price", "left over"), [row], (1, 2)),))])


@display_of.register
def _(shown: CoverFunction) -> Display:
    try:
        parts = _steps_parts(shown)
    except Error as too_many:
        parts = [Texts((too_many.message,))]
    return of_sections([Section("", parts)])


def _steps_parts(shown: CoverFunction) -> list[Table | Texts]:
    """The first steps, and how they go on. Raises PriceError (``cover.too_many``)."""
    period, most = shown.period, shown.most
    end = most if period is None else period
    assert end is not None
    steps = list(islice(_steps_from_zero(shown, end), _MOST_STEPS))
    header = ("needs above", "up to", "packs", "price", "left at the end")
    body = Table(header, [_step_row(step) for step in steps], (0, 1, 3, 4))
    is_all = not steps or (most is not None and steps[-1].upto >= most)
    notes = [_repeats(shown, end)] if is_all else [_GOES_ON, _repeats(shown, end)]
    return [body, Texts(notes, NOTE)]


_GOES_ON = "… and so on: cover_function.steps(low, high) has them, and .at(need) that of one need"


def _steps_from_zero(shown: CoverFunction, end: Quantity) -> Iterator[CoverStep]:
    """One by one, since there may be very many up to the end."""
    low, little = end * 0, end * Fraction(1, 10**9)
    most = shown.most
    while most is None or low < most:
        high = low + little
        steps = shown.steps(low, high if most is None or high < most else most)
        if not steps:
            return
        yield steps[0]
        low = steps[0].upto


def _step_row(step: CoverStep) -> tuple[str, ...]:
    cover = step.cover
    return (
        *(told_of(step.after), told_of(step.upto), packs_text(cover.packs)),
        *(money_of(cover.price), told_of(cover.leftover)),
    )


def _repeats(shown: CoverFunction, end: Quantity) -> str:
    if shown.period is None:
        return f"no more than {end} can be bought"
    return f"above {shown.repeats_above} the covers repeat by {end}"
