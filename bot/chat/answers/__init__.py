"""What each kind of message does and says: one module per kind, all called by the turn."""
