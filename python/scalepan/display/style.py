"""The one style of all displays, which touches nothing outside them.

It takes its letters and colours from the page around it, so that it is read in light and in dark.
The class stands twice in each rule to go before the rules that notebooks have for any table.
"""

from __future__ import annotations

CLASS = "scalepan"

_RULES = (
    ("", "max-width:60em;overflow-x:auto;color:inherit;background:none;line-height:1.45"),
    (" p, & ul", "margin:.25em 0;max-width:42em;overflow-wrap:break-word"),
    (" p.title", "margin:1.2em 0 .3em;font-weight:600;font-size:1.08em"),
    (" p.figure", "font-size:1.15em;font-variant-numeric:tabular-nums"),
    (" p.note, & small, & thead th", "opacity:.75"),
    (" small small", "opacity:1"),
    (" small", "font-size:.88em;margin-left:.3em"),
    (
        " table",
        "border-collapse:collapse;border:0;margin:.4em 0 .6em;table-layout:auto;font-size:1em;"
        "color:inherit;font-variant-numeric:tabular-nums",
    ),
    (" p.note+table, & table+table", "margin-top:1.4em"),
    (" tr, & tbody tr:nth-child(n)", "background:none;border:0"),
    (
        " td, & th",
        "text-align:start!important;vertical-align:baseline;padding:.12em 1.4em .12em 0;border:0;"
        "font-weight:400;line-height:inherit;white-space:pre-wrap;max-width:26em;"
        "overflow-wrap:break-word",
    ),
    (" td.n, & th.n", "text-align:right!important"),
    (" td.n, & td.a", "white-space:nowrap"),
    (" td.f", "overflow-wrap:anywhere"),
    (
        " thead th",
        "border-bottom:1px solid;vertical-align:bottom;font-size:.9em;white-space:normal;"
        "padding-right:1.556em",
    ),
    (" tbody tr:first-child td", "padding-top:.3em"),
    (" th.group", "padding-top:.6em;font-style:italic"),
    (" [title]", "cursor:help"),
    (" ul", "padding-left:1.2em"),
    (" details ul", "padding-left:2em"),
    (" li", "margin:.15em 0"),
    (" code", "background:none;color:inherit;font-size:.92em;white-space:pre-wrap"),
    (" .care", "border-left:3px solid;padding-left:.9em;margin:1.2em 0 .3em"),
    (" p.title:first-child, &> .care:first-child", "margin-top:0"),
)


def _style() -> str:
    own = f".{CLASS}.{CLASS}"
    return "".join(f"{own}{where.replace('&', own)}{{{what}}}" for where, what in _RULES)


STYLE = _style()
