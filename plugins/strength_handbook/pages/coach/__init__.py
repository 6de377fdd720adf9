"""The coach's drafts: pages that only `mkdocs serve` shows.

The worked program and its findings go in, pages come out. `drafts` lists them all and is the one
to read first; `frame` is what they have in common.
"""
