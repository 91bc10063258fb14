"""Every sentence, as a function of a value and the person's preferences."""
