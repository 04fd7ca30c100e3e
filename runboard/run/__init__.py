"""During: events, the transition table, the fold from events to state, waits, alerts that fall due.

Law: pure. It imports only ``shop``; every moment comes in as an argument or stands in an event.
"""
