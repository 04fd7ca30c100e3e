"""What a cutter bites off, and what the shop found good with it.

Law: no table of chip loads is taken for true, since those of makers disagree; a value is good where the shop saw that it is.
"""
