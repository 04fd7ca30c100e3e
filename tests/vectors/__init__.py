"""Vectors that the server's interpreter of the transition table and the page's are both held to."""
