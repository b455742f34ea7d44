"""Models that read words: keys of features, tables of them, linear scores, and likely entries."""
