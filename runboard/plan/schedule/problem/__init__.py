"""What must be kept: people, stations, rooms, hours and the blocks of work that a state leaves, and who keeps a plan to them.

Law: ``nouns`` imports nothing else of the schedule. The checker knows the problem and nothing of what makes a plan.
"""
