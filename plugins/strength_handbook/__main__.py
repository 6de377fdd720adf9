"""`python -m strength_handbook` is the command `strength-handbook`."""

from strength_handbook.cli import main

if __name__ == "__main__":
    main(prog_name="strength-handbook")
