"""A training handbook computed from a gym's own program files.

The flow runs one way: `reading` turns YAML into plain data with positions, `model` gives it types,
`calc` holds the arithmetic, `plan` works the program out, `pages` writes it, and `plugin` hands the
pages to MkDocs. Nothing imports a neighbour to its right, and only `plugin` imports MkDocs.
"""
