"""Can somebody be hurt, and does the text say so?"""
