"""Inline SVG without scripts: takes numbers, gives text. Everything drawn also stands in words."""
