"""From generated pages to a site: what the MkDocs plugin and the export have in common.

Plain functions on texts and lists. Nothing here imports MkDocs, so that each can be tried without
building a site.
"""
