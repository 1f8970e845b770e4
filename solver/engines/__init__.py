"""The two engines that the linear model is handed to, and whole models built for them."""
