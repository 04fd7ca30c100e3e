"""Travellers and reports on paper.

Law: it imports the pure packages only; a card is drawn from records that it is given.
"""
