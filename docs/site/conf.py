"""Sphinx's settings: one theme, nothing from the network, no dates that differ by day."""

import re

from pygments.lexers import get_lexer_by_name
from pygments.util import ClassNotFound

project = "Scalepan"
extensions = ["myst_parser"]
myst_enable_extensions = ["colon_fence"]
myst_heading_anchors = 4
exclude_patterns = ["as_they_are"]
smartquotes = False
html_theme = "furo"
html_title = "Scalepan"
html_extra_path = ["../../build/docs/source/as_they_are"]
html_static_path = ["site.css"]
html_css_files = ["site.css"]
html_copy_source = False
html_show_sourcelink = False
html_show_copyright = False
html_show_sphinx = False
pygments_style = "default"
pygments_dark_style = "monokai"
python_display_short_literal_types = True
maximum_signature_line_length = 88
# Each name has a heading of its own; members in every page's contents would take most of the time.
toc_object_entries = False


def plain_where_unknown(app, name, source):
    """Blocks in a language of the pages' own, such as formulas, are shown as plain text."""

    def kept(found):
        try:
            get_lexer_by_name(found[2])
        except ClassNotFound:
            return f"{found[1]}text"
        return found[0]

    source[0] = re.sub(r"(?m)^(`{3,})([a-z]+)$", kept, source[0])


def setup(app):
    app.connect("source-read", plain_where_unknown)
