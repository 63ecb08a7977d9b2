"""Array types used in signatures. Shapes and units stand in each docstring."""

from __future__ import annotations

import numpy as np
import numpy.typing as npt

FloatArray = npt.NDArray[np.float64]
Float32Array = npt.NDArray[np.float32]
IntArray = npt.NDArray[np.int32]
LongArray = npt.NDArray[np.int64]
ByteArray = npt.NDArray[np.uint8]
BoolArray = npt.NDArray[np.bool_]
