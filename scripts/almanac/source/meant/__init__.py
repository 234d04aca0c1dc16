"""What somebody meant by what stands where something else belongs: a text for fields or a list, a
field by another name, a field in another's place. Each gives what to write, or "".
"""
