"""Before a run: questions about what is to be made, each a record that a page asks, a file says and a rule answers.

Law: a question says everything that its answer needs besides the book and at most one file; the same question gives the same
answer. What is doubtful is named in the answer, never left out.
"""
