"""runboard: sequences a small shop's batch runs, times its machines and calls people."""

__version__ = "0.1.0"
