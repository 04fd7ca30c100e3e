"""Plan: products, routes, runs, when a run will be done, and changes tried.

Law: a page reads figures that were made already; it makes no plan.
"""
