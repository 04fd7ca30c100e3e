"""What a browser asks for: one module a screen, the taps, the state, the stream.

Law: a view reads the request, calls one function of ``floor``, and chooses an answer. No SQL, no rule of the shop, and nothing
of the fold or its lock. The door knows no screen, and no screen another; a template is given finished words.
"""
