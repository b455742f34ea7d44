"""The conversation and its channels."""
