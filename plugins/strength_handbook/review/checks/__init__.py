"""The checks, by family. Each is one small function; `catalogue` finds them by itself."""
