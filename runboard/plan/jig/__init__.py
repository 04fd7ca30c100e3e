"""The jig: places for pieces on a bed, cut and marked, and how it is put back where it was.

Law: lengths are millimetres; x runs to the right and y down from the jig's corner mark, as in its drawing.
"""
