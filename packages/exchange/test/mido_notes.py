"""Prints what mido reads from a MIDI file on standard input, as JSON: an outside reader to compare with."""
import io
import json
import sys

import mido

data = sys.stdin.buffer.read()
file = mido.MidiFile(file=io.BytesIO(data), charset="utf8")
seconds = 0.0
notes = []
tempi = []
meters = []
for message in file:
    seconds += message.time
    if message.type == "note_on" and message.velocity > 0:
        notes.append([seconds, message.channel + 1, message.note, message.velocity])
    elif message.type == "set_tempo":
        tempi.append([seconds, message.tempo])
    elif message.type == "time_signature":
        meters.append([message.numerator, message.denominator, message.clocks_per_click])
tracks = [track.name for track in file.tracks]
print(json.dumps({"notes": notes, "tempi": tempi, "meters": meters, "tracks": tracks, "length": file.length}))
