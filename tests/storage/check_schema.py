"""Checks that every sample matches the schema: check_schema.py SCHEMA SAMPLES_FOLDER."""

import json
import pathlib
import sys

import jsonschema

schema = json.loads(pathlib.Path(sys.argv[1]).read_text(encoding="utf-8"))
samples = sorted(pathlib.Path(sys.argv[2]).glob("*.strokewright"))

jsonschema.Draft202012Validator.check_schema(schema)
validator = jsonschema.Draft202012Validator(schema)
wrong = [
    f"{sample.name}: {error.json_path}: {error.message}"
    for sample in samples
    for error in validator.iter_errors(json.loads(sample.read_text(encoding="utf-8")))
]
if not samples:
    wrong.append("there are no samples")

# A schema that takes everything would pass too.
spoilt = json.loads(samples[0].read_text(encoding="utf-8")) if samples else {}
for engine in spoilt.get("engines", []):
    engine["entries"]["bore_m"] = {"value": "wide", "colour": "red"}
if validator.is_valid(spoilt):
    wrong.append("the schema takes a bore that is no number and a key that is not known")

print("\n".join(wrong) or f"{len(samples)} samples match")
sys.exit(bool(wrong))
