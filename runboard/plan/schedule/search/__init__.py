"""A better plan, and how far any plan could still beat it: the solver's model, bounds, fewer walks.

Law: only a child process imports what imports the solver.
"""
