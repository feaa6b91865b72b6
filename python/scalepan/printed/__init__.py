"""The inside of printed pages: words of the reports, set for paper.

Every name is escaped and keeps its direction to itself. Names are cut with a count where they are
very long; steps of a method, labels and cautions never are, since paper has nothing to point at.
"""
