"""What every request passes: the server, the guard, sessions, sizes, errors, the stream, and what all screens need.

Law: nothing here knows a screen.
"""
