"""The dispatch rule: one plan from one set of priorities, fast enough to make hundreds while somebody waits.

Law: whole numbers in records (``shop``), functions and loops, nothing else, so that the same source runs as plain Python on
objects and compiled on NumPy's structured arrays, with equal plans. Only ``compiled`` knows the compiler, numba, and
imports it when it is wanted. A record is changed field by field, never put in another's place: in an array that copies it.
"""
