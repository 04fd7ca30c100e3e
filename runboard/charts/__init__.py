"""Charts: plain figures and words that are said already, made SVG in one style.

Law: nothing here knows the shop, the log or a page; whoever asks says what is written on a chart.
"""
