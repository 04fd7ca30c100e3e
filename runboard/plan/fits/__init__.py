"""Screws, inserts, magnets and slots against the wood: does it fit, does it hold, does it stay inside.

Law: what a maker or a wood decides is said as such, with its source; a strength is information and never a promise. Lengths are
millimetres, forces newtons, moisture a share.
"""
