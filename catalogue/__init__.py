"""What is known: muscles, equipment, kits, exercises, evidence and costs, read from data and checked."""
