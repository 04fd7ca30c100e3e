"""Now, and what its page asks for: the state, presses, calendar entries, cautions, the wall.

Law: a view is three moves: read the request, call one function of the floor, choose page, part or redirect.
"""
