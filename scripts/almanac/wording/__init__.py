"""What a text asks for, by meaning: whether it asks for what can drown or hurt someone."""
