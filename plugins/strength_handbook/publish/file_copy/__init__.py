"""A built handbook as a folder that opens from a file, without a server, with its own search."""
