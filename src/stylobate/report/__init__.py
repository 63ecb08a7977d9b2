"""Results as files and words: result.json, coloured surfaces, the table, the picture. No arithmetic beyond rounding."""
