"""What we have seen of whom: the scouting database and its two doors, directory and book."""
