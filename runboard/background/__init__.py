"""Child processes for long work: start, progress, end.

Law: it imports the pure packages only; what a child computes is a plain function of theirs.
"""
