"""Methods, combinations and what is known of them."""
