"""The desk: a local web page on which a coach does the whole job without a terminal."""
