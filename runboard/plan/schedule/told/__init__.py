"""What is told of a plan: its forecast, what holds it, what it asks of people, and what a change would do.

Law: it reads plans and makes none but to compare them.
"""
