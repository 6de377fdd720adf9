"""The checks, a folder for each family. Each is one small function; `catalogue` finds them."""
