"""One file per thing a person does that joins two nouns or writes."""
