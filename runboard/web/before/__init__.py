"""Before a run: one page for all kinds of questions.

Law: what a kind asks, answers, says and draws is its own; nothing here knows one by its name.
"""
