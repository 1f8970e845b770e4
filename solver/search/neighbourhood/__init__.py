"""Large-neighbourhood search: a part of the week set free and solved again, many times."""
