"""Makes the pages of the documentation site that are not written by hand."""
