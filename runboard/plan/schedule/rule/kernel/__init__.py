"""The dispatch rule: one plan from one set of priorities, fast enough to make hundreds while somebody waits.

Law: whole numbers in flat rows, functions and loops, nothing else, so that the same source runs as plain Python on lists
and compiled on arrays, equal to the bit. Only ``compiled`` knows the compiler, numba, and imports it when it is wanted. ``t``
is the problem's rows (``tables``), ``s`` the state of one go (``layout``); names are one to a function over all its modules.
"""
