"""The tests. The folder says the cost; the name of a test is the rule that it holds."""
