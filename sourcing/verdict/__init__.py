"""Options compared, and the short list of named rules that chooses among them."""
