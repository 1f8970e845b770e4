"""The commands of `setwright log`."""
