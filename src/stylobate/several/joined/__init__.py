"""Scans of one mouth that each show some of the sites, joined over teeth and bodies into one (docs/method/join.md)."""
