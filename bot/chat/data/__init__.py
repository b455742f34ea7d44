"""Data of the conversation: phrases, lexicon, traits and wording."""
