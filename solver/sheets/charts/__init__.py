"""Charts as SVG in one ink."""
