"""The style of printed pages: black on white on paper, and the colours of the reader on a screen.

Letters are of the families that have the widths of Arial, so that a page breaks in the same places
wherever it is printed. Cells of a row have lines of one height, since browsers that break tables
over sheets do not set the letters of a row on one line otherwise.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from scalepan.display.harmless import MOST, plain, set_apart

if TYPE_CHECKING:
    from collections.abc import Iterable

    from scalepan.printing import Paper, Part

_SIZES = {"A4": "A4", "Letter": "letter"}
_LETTERS = 'Arial,Helvetica,"Liberation Sans",sans-serif'

_EVERYWHERE = (
    (":root", "color-scheme:light dark"),
    ("*", "box-sizing:border-box"),
    (
        "body",
        f"margin:0;background:Canvas;color:CanvasText;font:10pt/1.22 {_LETTERS};"
        "font-variant-numeric:tabular-nums;overflow-wrap:anywhere",
    ),
    ("main", "max-width:48rem;margin:0 auto;padding:1rem"),
    ("h1", "margin:0 0 3pt;font-size:17pt;line-height:1.1"),
    ("h2", "margin:8pt 0 2pt;font-size:11pt"),
    ("h1,h2,thead", "break-after:avoid"),
    ("p", "margin:2.5pt 0;orphans:3;widows:3"),
    ("ul", 'margin:2pt 0;padding-left:9pt;list-style:"\\2013\\a0"'),
    ("li", "orphans:2;widows:2"),
    ("table", "border-collapse:collapse;width:100%;margin:2.5pt 0"),
    ("thead", "display:table-header-group"),
    ("tr", "break-inside:avoid"),
    (
        "th,td",
        "padding:1.5pt 8pt 1.5pt 0;text-align:start;vertical-align:baseline;font-weight:400;"
        "overflow-wrap:break-word;white-space:pre-wrap",
    ),
    ("th:last-child,td:last-child", "padding-right:0"),
    ("thead th", "border-bottom:1pt solid;font-size:8pt;vertical-align:bottom"),
    ("tbody tr+tr td", "border-top:.5pt solid gray"),
    (
        "th.group",
        "padding-top:7pt;font-weight:700;border-bottom:.8pt solid;break-after:avoid;"
        "overflow-wrap:anywhere",
    ),
    ("td.n,th.n", "text-align:right"),
    ("td.n,td.a", "white-space:nowrap"),
    ("td.f,.wild", "overflow-wrap:anywhere"),
    (".facts", "list-style:none;padding:0"),
    (".facts li", "display:inline;margin-right:9pt"),
    (".facts li:first-child", "font-weight:700"),
    (".note", "font-size:8.5pt"),
    (".small", "font-size:7pt;line-height:1.15"),
    (
        ".care",
        "border:1.5pt solid;padding:2.5pt 6pt;margin:5pt 0;font-size:9pt;line-height:1.15;"
        "break-inside:avoid",
    ),
    (".care h2", "margin:0;font-size:10pt"),
    (".care ul,.care p", "margin:1.5pt 0"),
    (".total", "font-size:15pt;font-weight:700"),
    (".sign", "display:flex;gap:10pt;margin-top:6pt;font-size:9pt;break-inside:avoid"),
    (".sign>span", "display:flex;flex:1;gap:4pt;white-space:nowrap"),
    (".sign .line", "flex:1;border-bottom:.6pt solid"),
)
_KITCHEN = (
    (".dish td", "font-size:11.5pt;line-height:13.5pt;padding-top:.7pt;padding-bottom:.6pt"),
    (".dish td.exact", "font-size:9.5pt"),
    (".dish td.amount", "font-weight:700;font-size:12.5pt;text-align:right;padding-right:5pt"),
    (".dish td.short", "white-space:nowrap"),
    (".dish td.amount.short", "width:1%"),
    (".method td", "font-size:10pt;line-height:12pt;padding-bottom:1.3pt;padding-top:1.3pt"),
    (".method td.uses", "font-size:10.5pt;width:33%"),
    (".method td.uses div", "padding-left:9pt;text-indent:-9pt"),
    (".method td.number", "font-weight:700;width:1%"),
    (".label", "break-inside:avoid"),
)
_SHOPPING = (
    (".shopping-page td", "line-height:15pt"),
    (".shopping-page td:first-child", "font-size:11pt"),
    (".packs>div", "display:flex;gap:5pt;font-weight:700;font-size:12pt"),
    (".packs span", "min-width:0"),
    (
        "input",
        "appearance:none;flex:none;width:10pt;height:10pt;margin:2.5pt 0 0;padding:0;"
        "border:1.2pt solid;background:none",
    ),
    ("input:checked", "background:CanvasText"),
)
_ON_PAPER = (
    (":root", "color-scheme:only light"),
    ("body", "background:#fff;color:#000"),
    ("main", "max-width:none;padding:0"),
)
_ON_A_SCREEN = (("main+main", "border-top:1pt solid"),)
_ON_A_NARROW_SCREEN = (("td.a,.dish td.exact.short", "white-space:normal"),)


def _rules(rules: Iterable[tuple[str, str]]) -> str:
    return "".join(f"{where}{{{what}}}\n" for where, what in rules)


def _media(which: str, rules: Iterable[tuple[str, str]]) -> str:
    return f"@media {which}{{\n{_rules(rules)}}}\n"


STYLE = (
    _rules((*_EVERYWHERE, *_KITCHEN, *_SHOPPING))
    + _media("print", _ON_PAPER)
    + _media("screen", _ON_A_SCREEN)
    + _media("screen and (max-width:36rem)", _ON_A_NARROW_SCREEN)
)

_SMALL = f"font:8pt {_LETTERS}"
_ABOVE = f"{_SMALL};vertical-align:bottom;padding-bottom:1.5mm"
_BELOW = f"{_SMALL};vertical-align:top;padding-top:1.5mm"
_COUNT = 'content:"page " counter(page) " of " counter(pages)'


def part_rules(place: int, part: Part, paper: Paper) -> str:
    """The paper of one part, its title at the head of each sheet and the count at the foot."""
    name = f"part{place}"
    boxes = (
        ("@top-left", f"content:{_quoted(part.kind)};{_ABOVE}"),
        ("@top-right", f"content:{_quoted(part.title)};{_ABOVE};white-space:nowrap"),
        ("@bottom-right", f"{_COUNT};{_BELOW}"),
    )
    size = f"size:{_SIZES[paper]};margin:12mm 13mm 11mm;"
    return _rules([(f".{name}", f"page:{name}"), (f"@page {name}", f"{size}\n{_rules(boxes)}")])


def _quoted(text: str) -> str:
    """A text of others as a string of CSS, in which each character is a number."""
    shown = set_apart(plain(text, MOST // 3), _ISOLATE, _END_OF_ISOLATE)
    return '"' + "".join(f"\\{ord(character):06x}" for character in shown) + '"'


# Of the bidirectional algorithm (Unicode UAX #9): where no element can stand.
_ISOLATE, _END_OF_ISOLATE = "\u2068", "\u2069"
