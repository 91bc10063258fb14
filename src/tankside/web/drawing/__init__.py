"""Where marks, words and surfaces stand: pure geometry in pixels, drawn by templates/drawing.

Pages hand in numbers and words and get frozen values back; nothing here knows of HTML.
"""
