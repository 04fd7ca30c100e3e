"""Presses, from a phone or from paper: taken, known already, or refused with the reason.

Law: every press goes through one way of writing.
"""
