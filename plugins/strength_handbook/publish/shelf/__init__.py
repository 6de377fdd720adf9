"""A shelf of ready exercises that travels with the package.

In goes a handbook's folder with its room. `things.py` names what exercises need and finds it in the
room; `taking.py` says what of the shelf this room allows, and copies an exercise with its doors.
The texts lie in `texts/`: complete exercise files in which `$bench` stands for what this room calls
a bench, and `[[75 kg|165 lb]]` for a measure in the room's units.
"""
