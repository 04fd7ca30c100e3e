"""What is: one pure fold from events to the state, and its records as the page gets them.

Law: the fold never refuses and never reckons with a clock; the same events give the same state in any order.
"""
