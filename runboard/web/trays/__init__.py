"""Trays: what happened to one, and its card on paper, ordered, printed or typed in.

Law: as everywhere in web, a view is three moves.
"""
