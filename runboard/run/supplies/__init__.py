"""What is used up: what somebody said of it, and what the log says was used.

Law: a count is absolute and holds from its moment on; what was used since follows from the pieces that are counted, and is never
stored by itself.
"""
