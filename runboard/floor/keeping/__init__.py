"""Keeping house: copies of the shop, machines that are heard, channels that alerts leave by.

Law: what fails here is said, and stops no press.
"""
