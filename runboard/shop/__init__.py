"""The nouns: rooms, stations, services, people, hours, products, routes, units.

Law: pure. It imports nothing of runboard, reads no clock, and opens no file.
"""
