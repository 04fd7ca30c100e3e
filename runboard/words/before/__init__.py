"""What is said of answers to questions before a run, a module a kind of question.

Law: ``said(book, question, answer)`` words an answer once, for page, command and paper alike; nothing is reckoned here.
"""
