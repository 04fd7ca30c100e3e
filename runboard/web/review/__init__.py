"""Review: the hours of a run, a table of time elements, and people's days.

Law: as everywhere in web, a view is three moves.
"""
