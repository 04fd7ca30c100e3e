"""Shapes out of drawings (SVG, DXF), as lines in millimetres.

Law: a drawing comes from outside. What it holds is bounded before anything is computed, nothing it names is fetched, and what is
not understood is named.
"""
