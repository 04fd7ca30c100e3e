"""The planner beside the floor: a plan at once, a better one when it is found, and changes tried on it.

Law: nobody at a page ever waits for a plan.
"""
