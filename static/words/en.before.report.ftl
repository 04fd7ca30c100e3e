# What is said of a machine's program.

before-kind-program = A program’s time
before-about-program = How long it cuts, travels and stops, tool by tool, what it reaches, and every line that is doubtful.
