"""The sentences of refusals, one file per thing that refuses: by code, and by code of a way on."""
