"""What to buy: what is there of each supply, what the open runs still use, what runs out in the middle, and what is worn.

Law: what nobody counted is not known, and never reckoned as nothing or as enough.
"""
