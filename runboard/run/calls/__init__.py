"""What follows from the state and calls people: due moments, how a call climbs, and what brings it or answers it.

Law: a due moment is derived from the state; it can be thrown away and made again.
"""
