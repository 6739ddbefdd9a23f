"""Builds the bank of one-shot drum samples that takes are rendered from, out of Debian's sample packages.

Usage: python3 bank.py OUT_FOLDER [RATE_HZ [FOLDER_OF_SUPERSONIC_SAMPLES]]
Needs fluidsynth, ffmpeg, numpy, mido and the sources named in README.md; the environment variable KIT_FOLDERS
names the folder that holds the multi-sample kits. Writes bank.json (one row a
sample: kit, split, voice, level of the layer in dB under the kit's loudest, start, length) and bank.i16 (mono,
22.05 kHz unless another rate is named, signed 16 bit, each sample cut so that its first sample is its physical onset). Nothing of it is shipped.
"""
import json, os, re, subprocess, sys, tempfile
import struct
import numpy as np
import mido
from made_kits import made_kit

RATE = int(sys.argv[2]) if len(sys.argv) > 2 else 22050
SF = '/usr/share/sounds/sf2/'
KIT_FOLDERS = os.environ['KIT_FOLDERS'].rstrip('/') + '/'
GM = {36: 'bass', 35: 'bass', 37: 'sidestick', 38: 'snare', 40: 'snare', 42: 'hihat', 44: 'hihat-foot', 46: 'hihat-open',
      49: 'crash', 57: 'crash', 51: 'ride', 59: 'ride', 50: 'tom-high', 48: 'tom-high', 47: 'tom-mid', 45: 'tom-mid',
      43: 'tom-low', 41: 'tom-low', 33: 'click', 34: 'click', 31: 'click'}
AVL = {36: 'bass', 37: 'sidestick', 38: 'snare', 40: 'rimshot', 42: 'hihat', 44: 'hihat-foot', 46: 'hihat-open',
       49: 'crash', 57: 'crash', 51: 'ride', 60: 'ride', 45: 'tom-high', 41: 'tom-low'}
# name, file, program, map, split
SOUNDFONTS = [('fluid-%s' % n, SF + 'FluidR3_GM.sf2', p, GM, 'train') for n, p in
              [('standard', 0), ('room', 8), ('power', 16), ('jazz', 32), ('electronic', 24), ('808', 25)]]
SOUNDFONTS += [('timgm-%s' % n, SF + 'TimGM6mb.sf2', p, GM, 'train') for n, p in
               [('standard', 0), ('room', 8), ('power', 16), ('jazz', 32), ('electronic', 24), ('808', 25)]]
SOUNDFONTS += [('csound-%s' % n, SF + 'sf_GMbank.sf2', p, GM, 'test') for n, p in [('standard', 0), ('jazz', 32)]]
SOUNDFONTS += [('avl-pearl', SF + 'Black_Pearl_4_LV2.sf2', None, AVL, 'train'),
               ('avl-zeppelin', SF + 'Red_Zeppelin_4_LV2.sf2', None, AVL, 'train')]
# folder, split, [(pattern of the file name, voice)]
KITS = [
    ('BJA_Pacific', 'train', [('^BD_', 'bass'), ('^SN_', 'snare'), ('^SN4_', 'snare'), ('^HH_', 'hihat'), ('^HH2_', 'hihat-open'),
        ('^HH3_', 'hihat-open'), ('^TM_', 'tom-high'), ('^TM2_', 'tom-low'), ('^CB2?_', 'crash'), ('^RD2?_', 'ride')]),
    ('GMRockKit', 'train', [('^Kick', 'bass'), ('^Snare-', 'snare'), ('^SnareRim', 'rimshot'), ('^SideStick', 'sidestick'),
        ('^HatClosed', 'hihat'), ('^HatPedal', 'hihat-foot'), ('^HatOpen', 'hihat-open'), ('^HatSemi', 'hihat-open'),
        ('^Ride', 'ride'), ('^24Ride', 'ride'), ('^Crash', 'crash'), ('^Tom1', 'tom-high'), ('^Tom2', 'tom-mid'), ('^TomFloor', 'tom-low')]),
    ('The Black Pearl 1.0', 'train', [('^PearlKick', 'bass'), ('^PearlSnare-', 'snare'), ('^PearlSnareRim', 'rimshot'),
        ('^PearlSide', 'sidestick'), ('^SabianHatClosed', 'hihat'), ('^SabianHatPedal', 'hihat-foot'), ('^SabianHatOpen', 'hihat-open'),
        ('^SabianHatSemi', 'hihat-open'), ('^PaisteRide', 'ride'), ('^SabianCrash', 'crash'), ('^PearlTom1', 'tom-high'),
        ('^PearlTom2', 'tom-mid'), ('^PearlTomFloor', 'tom-low')]),
    ('ColomboAcousticDrumkit', 'train', [('^bassdrum', 'bass'), ('^snare.*rimshot', 'rimshot'), ('^snare', 'snare'), ('^stick', 'sidestick'),
        ('^hihat-closed', 'hihat'), ('^hihat-(semi-)?open', 'hihat-open'), ('ride\\d', 'ride'), ('crash\\d?\\.', 'crash'),
        ('^tom-hi', 'tom-high'), ('^tom-mid', 'tom-mid'), ('^tom-low', 'tom-low')]),
    ('VariBreaks', 'train', [('Hat \\d Cl', 'hihat'), ('Hat 1 Op', 'hihat-open'), ('Hat 1 Pd', 'hihat-foot'), ('Kick', 'bass'), ('Snare', 'snare'),
        ('Tom Hi', 'tom-high'), ('Tom Mid', 'tom-mid'), ('Tom Low', 'tom-low'), ('Click', 'click')]),
    ('TR808EmulationKit', 'train', [('Hat_Closed', 'hihat'), ('Hat_Open', 'hihat-open'), ('Hat_Pedal', 'hihat-foot'), ('Kick', 'bass'), ('Snare', 'snare'),
        ('Tom_Hi', 'tom-high'), ('Tom_Mid', 'tom-mid'), ('Tom_Low', 'tom-low'), ('Cymbal', 'crash'), ('Clave', 'click')]),
    ('Millo_MultiLayered2', 'dev', [('^bd', 'bass'), ('^hhclosed', 'hihat'), ('^hhopen', 'hihat-open'), ('^hhpedal', 'hihat-foot'), ('^jsnare', 'snare'),
        ('^rsnare', 'snare'), ('^ride', 'ride'), ('^rim', 'sidestick'), ('^crash', 'crash'), ('^tom_', 'tom-high'), ('^floortom', 'tom-low')]),
    ('Millo_MultiLayered3', 'dev', [('^bd', 'bass'), ('^hh_\\d', 'hihat'), ('^ho_', 'hihat-open'), ('^hh_p', 'hihat-foot'), ('^sd', 'snare'),
        ('^sr', 'rimshot'), ('^rc', 'ride'), ('^rs', 'sidestick'), ('^cc', 'crash'), ('^t1', 'tom-high'), ('^t2', 'tom-mid'), ('^ft', 'tom-low')]),
    ('ForzeeStereo', 'test', [('^Kick', 'bass'), ('^Snare-', 'snare'), ('^SnareRim-', 'rimshot'), ('^RimClick', 'sidestick'), ('^HiHatClosed', 'hihat'),
        ('^HiHatFoot', 'hihat-foot'), ('^HiHatOpen', 'hihat-open'), ('^RideBow', 'ride'), ('^Crash18-', 'crash'),
        ('^TomHigh', 'tom-high'), ('^TomMid', 'tom-mid'), ('^TomLow', 'tom-low'), ('^Stick', 'click')]),
]
FREEPATS = '/usr/share/midi/freepats/Drum_000/'
SONIC = [('^bd_(ada|boom|fat|haus|jazz|klub|pure|sone|tek|zome|zum)', 'bass'), ('^drum_bass|drum_heavy_kick', 'bass'), ('^sn_', 'snare'), ('^drum_snare', 'snare'),
         ('^hat_(bdu|cab|cats|gem|gnu|gump|hier|len|metal|raw|sci|snap|star|tap|yosh|zan|zild)', 'hihat'), ('^drum_cymbal_closed', 'hihat'), ('^drum_cymbal_open', 'hihat-open'),
         ('^drum_cymbal_pedal', 'hihat-foot'), ('^drum_cymbal_(hard|soft)', 'crash'), ('^ride_', 'ride'), ('^drum_tom_hi', 'tom-high'), ('^drum_tom_mid', 'tom-mid'), ('^drum_tom_lo', 'tom-low')]
MADE_KITS = 26
LONG = {'ride', 'crash', 'hihat-open'}


def decode(path):
    """Mono float audio of a file at RATE."""
    raw = subprocess.run(['ffmpeg', '-v', 'error', '-i', path, '-f', 'f32le', '-ac', '2', '-ar', str(RATE), '-'],
                         capture_output=True, check=True).stdout
    return np.frombuffer(raw, np.float32).reshape(-1, 2).mean(1)


def cut(x, voice):
    """The sample from its physical onset (first rise over 3 % of the attack's peak) until it has died away."""
    if len(x) < 500 or np.abs(x).max() < 2e-4:
        return None
    head = np.abs(x[: RATE // 2])
    peak = head.max()
    start = int(np.argmax(head > 0.03 * peak))
    back = head[max(0, start - 30): start] > 0.01 * peak
    start = max(0, start - int(back.sum()))
    x = x[start:]
    limit = int(RATE * (3.0 if voice in LONG else 1.2))
    x = x[:limit].copy()
    env = np.abs(x)
    alive = np.nonzero(env > env.max() * 10 ** (-62 / 20))[0][-1] + 1
    x = x[: max(alive, 2000)]
    n = min(len(x) // 3, 2205)
    x[-n:] *= np.linspace(1, 0, n)
    return x


def soundfont(path, program, keys, work):
    """(voice, key, velocity, audio) of every key of one drum bank, at five velocities."""
    out, plan = [], [(k, v) for k in keys for v in (25, 50, 75, 100, 122)]
    mid = mido.MidiFile(ticks_per_beat=480)
    track = mido.MidiTrack(); mid.tracks.append(track)
    if program is not None:
        track.append(mido.Message('program_change', channel=9, program=program, time=0))
    track.append(mido.Message('note_on', channel=9, note=36, velocity=1, time=0))
    track.append(mido.Message('note_off', channel=9, note=36, velocity=0, time=960 * 2))
    for k, v in plan:
        track.append(mido.Message('note_on', channel=9, note=k, velocity=v, time=0))
        track.append(mido.Message('note_off', channel=9, note=k, velocity=0, time=960 * 3))
        track.append(mido.Message('control_change', channel=9, control=120, value=0, time=960))
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


def main(folder, sonic=None):
    os.makedirs(folder, exist_ok=True)
    rows, blob, at, seen = [], [], 0, {}

    def put(kit, split, voice, group, x):
        nonlocal at
        x = cut(x, voice)
        if x is None:
            return
        level = 10 * np.log10(np.mean(x[: RATE // 10] ** 2) + 1e-12)
        peak = np.abs(x).max()
        y = np.round(x / peak * 30000).astype('<i2')
        same = (len(y), y[:4000].tobytes())
        if same not in seen:
            seen[same] = at
            blob.append(y); at += len(y)
        rows.append(dict(kit=kit, split=split, voice=voice, group=group, level=round(float(level), 2), start=seen[same], length=len(y)))

    with tempfile.TemporaryDirectory() as work:
        for kit, path, program, keys, split in SOUNDFONTS:
            last = {}
            for voice, key, velocity, x in soundfont(path, program, keys, work):
                c = cut(x, voice)
                if c is None:
                    continue
                old = last.get(key)
                n = min(len(c), len(old) if old is not None else 0, 8000)
                if n and np.corrcoef(c[:n], old[:n])[0, 1] > 0.999:
                    continue  # the same layer, only louder
                last[key] = c
                put(kit, split, voice, str(key), x)
    for kit, split, names in KITS:
        for name in sorted(os.listdir(KIT_FOLDERS + kit)):
            if not name.lower().endswith(('.wav', '.flac', '.aiff')):
                continue
            voice = next((v for p, v in names if re.search(p, name)), None)
            if voice:
                put(kit, split, voice, re.sub(r'[-_ ]?(\d+|Hardest|Hard|Med|Softest|Soft)\.\w+$', '', name), decode(KIT_FOLDERS + kit + '/' + name))
    for name in sorted(os.listdir(FREEPATS)):
        if name.endswith('.pat') and int(name[:3]) in GM:
            put('freepats', 'train', GM[int(name[:3])], name[:3], patch(FREEPATS + name))
    for name in sorted(os.listdir(sonic)) if sonic else []:
        voice = next((v for p, v in SONIC if re.search(p, name) and name.endswith('.flac')), None)
        if voice:
            put('sonic', 'train', voice, name, decode(sonic + '/' + name))
    for k in range(MADE_KITS):
        rng = np.random.default_rng(1000 + k)
        for voice, x in made_kit(rng, RATE):
            put('made-%02d' % k, 'train', voice, voice, x)
    np.concatenate(blob).tofile(os.path.join(folder, 'bank.i16'))
    json.dump(rows, open(os.path.join(folder, 'bank.json'), 'w'))
    print(len(rows), 'samples', at * 2 / 1e6, 'MB')


main(sys.argv[1], sys.argv[3] if len(sys.argv) > 3 else None)
