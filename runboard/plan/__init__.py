"""Before and meanwhile: how many to start, what it will take, what to do next.

Law: pure. It imports only ``run`` and ``shop``; every moment comes in as an argument, and chance comes from a seed.
"""
