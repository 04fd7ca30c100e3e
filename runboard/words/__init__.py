"""Facts made sentences, moments, spans and numbers, in each language.

Law: the only place that words anything for a person; every sentence stands in the catalogue, and each fact (a moment, a span,
a number, a length, trays) is written by one rule (``facts.py``, ``sentences.py``). It is given what it words, and knows no
floor and no web.
"""
