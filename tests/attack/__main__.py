"""``python -m tests.attack [NAME …]``: attacks on a real server with a phone beside it; ``… fuzz``: inputs from a seed."""

import sys


def main(arguments: list[str]) -> int:
    if arguments[:1] == ["fuzz"]:
        from tests.attack.fuzzing import main as fuzzing

        return fuzzing(arguments[1:])
    from tests.attack.attacking import main as attacking

    return attacking(arguments)


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
