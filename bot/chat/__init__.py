"""From a message to a reply: understand, gather, advise, render."""
