"""Looking: what a person's page sees, and what a run looks like afterwards.

Law: looking writes nothing but what was put right before anybody looks.
"""
