"""What a browser asks for: one module a screen, the taps, the state, the stream.

Law: a view reads the request, calls one function of ``floor``, and chooses an answer. No SQL, and no rule of the shop.
"""
