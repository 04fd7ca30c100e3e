"""Pieces out of boards and sheets: how many come from one, which boards are used, what is to be bought.

Law: no layout leaves its board or lays one piece on another, and none is called the most without a bound that proves it.
"""
