"""Money before a run: what a good piece costs, what it should sell for, after how many a tool has paid.

Law: plain arithmetic in decimals. Every line is a quantity times a rate, each rounded as it is shown, and the lines that are shown
add up to the totals that are shown.
"""
