"""A scanner's profile: how its scans drift along the arch, from repeat scans."""

from stylobate.several.drifting.model import Estimate, Profile, drift_of
from stylobate.several.drifting.read import read_profile

__all__ = ["Estimate", "Profile", "drift_of", "read_profile"]
