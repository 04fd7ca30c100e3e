"""Facts made sentences, moments, spans and numbers, in each language.

Law: the only place that words anything for a person, and every sentence stands in the catalogue.
"""
