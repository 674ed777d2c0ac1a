"""kettlecast."""
