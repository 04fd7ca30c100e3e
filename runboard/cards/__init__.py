"""Travellers and reports on paper.

Law: it imports the pure packages only; a card is drawn from records that it is given. ``model.py`` has the records,
``traveller.py``, ``labels.py`` and ``run_sheet.py`` make them from the state; ``page.py`` and ``pdf.py`` print an order.
"""
