"""Is everything there that a member needs?"""
