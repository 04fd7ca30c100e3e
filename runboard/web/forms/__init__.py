"""Ordinary forms: what one shows of a JSON record, and the record that a posted one says.

Law: nothing is checked here. The record goes to the one validator, and its problems come back to their fields.
"""
