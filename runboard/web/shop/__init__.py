"""Shop: the book's own things, its file, copies, alarms, and machines that speak.

Law: as everywhere in web, a view is three moves.
"""
