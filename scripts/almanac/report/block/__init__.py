"""A block in words, as JSON and as an entry; its wishes, what it lacks, and how it is judged."""
