"""Builds the bank of one-shot drum samples that takes are rendered from, out of Debian's sample packages.

Usage: python3 bank.py OUT_FOLDER RATE_HZ FOLDER_OF_SUPERSONIC_SAMPLES FOLDER_OF_OWN_KIT FOLDER_OF_ACOUSTIC_KIT FOLDER_OF_EXADRUMS [SPLITS]
Needs fluidsynth, ffmpeg, numpy, scipy, mido and the sources named in README.md. Writes bank.json (one row a
sample: kit, split, voice, level of the layer in dB under the kit's loudest, start, length) and bank.i16 (mono,
at RATE_HZ, signed 16 bit, each sample cut so that its first sample is its physical onset). Nothing of it is shipped.
"""
import json, os, re, subprocess, sys, tempfile
import struct
import numpy as np
import mido
from acoustic import acoustic, place_cymbals
from one_shots import Shelf

RATE = int(sys.argv[2])
SF = '/usr/share/sounds/sf2/'
GM = {36: 'bass', 35: 'bass', 37: 'sidestick', 38: 'snare', 40: 'snare', 42: 'hihat', 44: 'hihat-foot', 46: 'hihat-open',
      49: 'crash', 57: 'crash', 51: 'ride', 59: 'ride', 50: 'tom-high', 48: 'tom-high', 47: 'tom-mid', 45: 'tom-mid',
      43: 'tom-low', 41: 'tom-low', 33: 'click', 34: 'click', 31: 'click'}
AVL = {36: 'bass', 37: 'sidestick', 38: 'snare', 40: 'rimshot', 42: 'hihat', 44: 'hihat-foot', 46: 'hihat-open',
       49: 'crash', 57: 'crash', 51: 'ride', 60: 'ride', 45: 'tom-high', 41: 'tom-low'}
# name, file, program, map, split
SOUNDFONTS = [('fluid-%s' % n, SF + 'FluidR3_GM.sf2', p, GM, 'train') for n, p in
              [('standard', 0), ('room', 8), ('power', 16), ('jazz', 32), ('electronic', 24), ('808', 25)]]
SOUNDFONTS += [('csound', SF + 'sf_GMbank.sf2', 0, GM, 'train')]
SOUNDFONTS += [('timgm-%s' % n, SF + 'TimGM6mb.sf2', p, GM, 'train') for n, p in
               [('standard', 0), ('room', 8), ('power', 16), ('jazz', 32), ('electronic', 24), ('808', 25)]]
SOUNDFONTS += [('avl-pearl', SF + 'Black_Pearl_4_LV2.sf2', None, AVL, 'train'),
               ('avl-zeppelin', SF + 'Red_Zeppelin_4_LV2.sf2', None, AVL, 'dev')]
# what taps with brushes is a voice of its own in the bank, and so is what is drawn over the head
SOUNDFONTS += [('fluid-brush', SF + 'FluidR3_GM.sf2', 40, {38: 'tap', 39: 'tap', 40: 'sweep'}, 'train')]
EXADRUMS = {'BD_Acou_01': 'bass', 'Snr_Acou_01': 'snare', 'HiHat': 'hihat', 'Crash_High': 'crash', 'RideBell': 'ride', 'RideEdge': 'ride',
            'Tom01': 'tom-high', 'Tom03': 'tom-low'}
# whose cymbals are placed in the acoustic kit's room
CYMBALS = dict(train=['avl-pearl', 'fluid-standard', 'fluid-jazz'], test=['freepats', 'exadrums'])
FREEPATS = '/usr/share/midi/freepats/Drum_000/'
SONIC = [('^bd_(ada|boom|fat|haus|jazz|klub|pure|sone|tek|zome|zum)', 'bass'), ('^drum_bass|drum_heavy_kick', 'bass'), ('^sn_', 'snare'), ('^drum_snare', 'snare'),
         ('^hat_(bdu|cab|cats|gem|gnu|gump|hier|len|metal|raw|sci|snap|star|tap|yosh|zan|zild)', 'hihat'), ('^drum_cymbal_closed', 'hihat'), ('^drum_cymbal_open', 'hihat-open'),
         ('^drum_cymbal_pedal', 'hihat-foot'), ('^drum_cymbal_(hard|soft)', 'crash'), ('^ride_', 'ride'), ('^drum_tom_hi', 'tom-high'), ('^drum_tom_mid', 'tom-mid'), ('^drum_tom_lo', 'tom-low')]


def decode(path):
    """Mono float audio of a file at RATE."""
    raw = subprocess.run(['ffmpeg', '-v', 'error', '-i', path, '-f', 'f32le', '-ac', '2', '-ar', str(RATE), '-'],
                         capture_output=True, check=True).stdout
    return np.frombuffer(raw, np.float32).reshape(-1, 2).mean(1)


def soundfont(path, program, keys, work):
    """(voice, key, velocity, audio) of every key of one drum bank, at ten velocities."""
    out, plan = [], [(k, v) for k in keys for v in (12, 25, 38, 50, 62, 75, 88, 100, 112, 124)]
    channel = 0 if program is None else 9
    mid = mido.MidiFile(ticks_per_beat=480)
    track = mido.MidiTrack(); mid.tracks.append(track)
    if program is not None:
        track.append(mido.Message('program_change', channel=channel, program=program, time=0))
    track.append(mido.Message('note_on', channel=channel, note=36, velocity=1, time=0))
    track.append(mido.Message('note_off', channel=channel, note=36, velocity=0, time=960 * 2))
    rest = 0
    for k, v in plan:
        track.append(mido.Message('note_on', channel=channel, note=k, velocity=v, time=rest))
        track.append(mido.Message('note_off', channel=channel, note=k, velocity=0, time=960 * 3))
        track.append(mido.Message('control_change', channel=channel, control=120, value=0, time=840))  # silence well before the next
        rest = 120
    m, w = os.path.join(work, 'a.mid'), os.path.join(work, 'a.wav')
    mid.save(m)
    subprocess.run(['fluidsynth', '-ni', '-g', '0.6', '-R', '0', '-C', '0', '-r', str(RATE), '-F', w, path, m],
                   capture_output=True, check=True)
    x = decode(w)
    for i, (k, v) in enumerate(plan):
        a = int((2 + 4 * i - 0.01) * RATE)  # 120 bpm: 960 ticks are one second
        out.append((keys[k], k, v, x[a: a + int(3.9 * RATE)]))
    return out


def patch(path):
    """Audio of the first sample of a GUS patch file, at RATE."""
    d = open(path, 'rb').read()
    o = 129 + 63 + 47
    size, rate, bits = struct.unpack('<I', d[o + 8:o + 12])[0], struct.unpack('<H', d[o + 20:o + 22])[0], d[o + 55]
    x = np.frombuffer(d[o + 96:o + 96 + size], '<i2' if bits & 1 else 'i1').astype(np.float32) / (32768 if bits & 1 else 128)
    n = int(len(x) * RATE / rate)
    return np.interp(np.arange(n) * rate / RATE, np.arange(len(x)), x).astype(np.float32)


def main(folder, sonic, own, acoustic_kit, exadrums, splits='train,dev,test,own'):
    shelf = Shelf(RATE, splits=splits.split(','))
    with tempfile.TemporaryDirectory() as work:
        for kit, path, program, keys, split in (one for one in SOUNDFONTS if one[4] in shelf.splits):
            last = {}
            for voice, key, velocity, x in soundfont(path, program, keys, work):
                c = shelf.cut(x, voice)
                if c is None:
                    continue
                old = last.get(key)
                n = min(len(c), len(old) if old is not None else 0, 8000)
                if n and np.corrcoef(c[:n], old[:n])[0, 1] > 0.999:
                    continue  # the same layer, only louder
                last[key] = c
                shelf.put(kit, split, voice, str(key), c)
    for name in sorted(os.listdir(FREEPATS)):
        if name.endswith('.pat') and int(name[:3]) in GM:
            voice = GM[int(name[:3])]
            shelf.put('freepats', 'test', voice, name[:3], shelf.cut(patch(FREEPATS + name), voice))
    for name in sorted(os.listdir(sonic)):
        voice = next((v for p, v in SONIC if re.search(p, name) and name.endswith('.flac')), None)
        if voice:
            shelf.put('sonic', 'train', voice, name, shelf.cut(decode(sonic + '/' + name), voice))
    for name in sorted(os.listdir(own)):
        kit, voice, group, _ = name.split('_')
        shelf.put(kit, 'own' if kit.startswith('own-ten') else 'train', voice, group, shelf.cut(np.fromfile(own + '/' + name, '<f4'), voice))
    for name, voice in EXADRUMS.items():
        shelf.put('exadrums', 'test', voice, name, shelf.cut(decode(f'{exadrums}/{name}.wav'), voice))
    place_cymbals(shelf, acoustic(acoustic_kit, decode, shelf), CYMBALS)
    shelf.write(folder)


main(sys.argv[1], *sys.argv[3:8])
