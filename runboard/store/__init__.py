"""SQLite: the connection, the migrations, the log of events, the shop's book, the moments that fall due.

Law: it imports the pure packages only, every write is one immediate transaction, and no connection crosses threads.
"""
