"""The clock that rings when a moment falls due, and the ways an alert leaves the building.

Law: it imports the floor and the pure packages, never the web. Every step says whether it found work.
"""
