"""The worked programs as pages: HTML from our own templates, with plain links between them.

Nothing here knows MkDocs. `site.write_pages` gives the list of all pages; the plugin hands them on,
and `export` writes them to files.
"""
