"""A machine program: read as the language says, timed as a machine moves, its places found and put in order.

Law: a program is never rewritten, and what is not known is named with its line, not guessed. Lengths are millimetres, spans
seconds, angles radians. What the language means stands in NISTIR 6556, The NIST RS274/NGC Interpreter, Version 3 (2000).
"""
