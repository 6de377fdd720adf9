"""Are the texts plain, private and true to the trade?"""
