"""A shop, products and runs to try, all invented here.

Law: the runs are made by people who press, through ``floor`` only; whatever they press keeps every rule.
"""
