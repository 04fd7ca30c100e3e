"""What may be: each rule of the shop once. May this load begin here, how many pieces go on it, from when may a tray go on.

Law: Now, the planner, the card, the helper's page and the alarms ask here; none has a rule of its own.
"""
