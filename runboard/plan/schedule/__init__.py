"""When it will be done, and what comes first: the schedule of everything that is still to be done.

Law: pure, in four rooms: ``problem`` is what must be kept, ``rule`` and ``search`` make plans, ``told`` is what is said of
one. What makes a plan, what bounds one and what checks one know only the problem. Ticks are whole numbers counted from the
moment that a plan is made for.
"""
