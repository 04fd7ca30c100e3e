"""When it will be done, and what comes first: the schedule of everything that is still to be done.

Law: pure. ``problem`` says what must be kept and imports nothing else of this package; what makes a plan, what bounds one
and what checks one know only the problem. Ticks are whole numbers counted from the moment that a plan is made for.
"""
