"""A block: several weeks of training out of one solved week, with lighter weeks, travel, breaks and planned targets."""
