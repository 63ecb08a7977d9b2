"""Several implants, several scans: what no single site can show."""
