"""Made-up shops whose true times and true constraint are known: an event log as phones would press it, and the truth of what
a relief or a change really moves.

Law: it decides and times everything itself; of the product it knows only the kinds of events and the record of a book.
"""
