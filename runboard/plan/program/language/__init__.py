"""The language of machine programs, line by line: NISTIR 6556, The NIST RS274/NGC Interpreter, Version 3 (2000).

Law: what the report calls an error is named with its line, as a doubt where reading can go on and as a refusal where it cannot;
nothing is guessed in silence. Plain lines are read by ``plain_lines``, the same source compiled or not; every other line, and
every line that could be in doubt, by ``interpreter``. Both give the same moves.
"""
