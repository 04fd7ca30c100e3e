"""After a run: where the hours went, what was measured, what happened to a tray.

Law: pure; it imports run/, plan/ and shop/, and nothing else of this project. Moments come in as arguments.
"""
