"""What a browser at the sink is given: every act, bath and sentence of a run as plain data.

The page draws from this and walks it alone when the server is gone. No rule of chemistry, no sentence and
no kind of bath is decided in the browser.
"""
