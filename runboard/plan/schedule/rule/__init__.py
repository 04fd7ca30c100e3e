"""The dispatch rule: a plan from a set of priorities, at once; and the search for better priorities.

Law: it knows the problem alone, and no solver.
"""
