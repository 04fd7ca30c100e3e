"""Changing what the shop has and makes: its book, its runs, their routes, pictures and files.

Law: nothing is half stored; what is wrong is said and leaves all as it was.
"""
