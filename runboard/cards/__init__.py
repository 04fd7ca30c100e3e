"""Travellers and reports on paper.

Law: it imports the pure packages and the words; a card is drawn from records that it is given. ``model.py`` has the records,
``of_a_run.py`` makes them from the state; ``page.py`` and ``pdf.py`` print an order.
"""
