"""Strokes of the recorded acoustic kit, microphone by microphone, and cymbals of other kits placed in its room.

The kit has no ride and no crash. Its room is read off its side stick, the shortest sound: how much of each octave comes
after the direct sound, and how fast that dies away; noise of that shape stands for the room's answer to a dry cymbal.
"""
import os
import numpy as np
from scipy.signal import butter, fftconvolve, sosfilt

VOICE = dict(ks='bass', sc='snare', se='snare', ss='sidestick', ht='hihat', hc='hihat', hl='hihat', hh='hihat-open',
             ho='hihat-open', hf='hihat-foot', th='tom-high', tm='tom-mid', tl='tom-low')
# `wndw` is in no training, the shipped network's included
SPLIT = dict(front='train', oh='train', side='train', mixed='train', wndw='test')
MICROPHONES = ['front', 'oh', 'side', 'wndw']
OCTAVES = [177, 354, 707, 1414, 2828, 5657]
STEPS = [0, 0.012, 0.03, 0.06, 0.12, 0.2, 0.3]
HOPES = dict(hf=0.12)   # what a pedal's way is under before the cymbals meet, as a share of the peak


def bands(x, rate):
    """The signal cut at OCTAVES."""
    edges = [None, *[f for f in OCTAVES if f < 0.45 * rate], None]
    for low, high in zip(edges[:-1], edges[1:]):
        kind = 'low' if low is None else 'high' if high is None else 'band'
        edge = high if low is None else low if high is None else [low, high]
        yield sosfilt(butter(3, edge, kind, fs=rate, output='sos'), x)


def room_of(strokes, rate, rng):
    """Impulse response of the room, its direct sound 1 at 0, from short strokes heard in it."""
    n = int(STEPS[-1] * rate)
    energy = 0
    for x in strokes:
        at = int(np.argmax(np.abs(x) > 0.1 * np.abs(x).max()))
        part = [[(b[at + int(s * rate): at + int(e * rate)] ** 2).sum() for s, e in zip(STEPS[:-1], STEPS[1:])] for b in bands(x, rate)]
        part = np.array(part)
        energy = energy + part / part[:, :1].clip(1e-12)
    energy = energy / len(strokes)
    t = np.arange(n) / rate
    middles = [(s + e) / 2 for s, e in zip(STEPS[1:-1], STEPS[2:])]
    h = 0
    for e, noise in zip(energy, bands(rng.normal(size=n), rate)):
        density = np.log(e[1:] / (np.diff(STEPS[1:]) * rate) + 1e-12)
        envelope = np.exp(0.5 * np.interp(t, middles, density)) * (t > 0.004)
        h = h + noise / (np.sqrt((noise ** 2).mean()) + 1e-9) * envelope
    # what rings after 30 ms is partly the side stick itself: a share of it is left out
    h = 0.6 * h
    h[0] += 1
    return h


def acoustic(folder, decode, shelf):
    """Puts every stroke through every microphone on the shelf, and a mixture of the three that train."""
    rng = np.random.default_rng(5)
    rate, rooms = shelf.rate, {}
    names = sorted(os.listdir(folder + '/front'))
    heard = {m: {name: decode(f'{folder}/{m}/{name}') for name in names} for m in MICROPHONES}
    heard['mixed'] = {name: heard['front'][name] + 0.7 * heard['oh'][name] + 0.7 * heard['side'][name] for name in names}
    for m, strokes in heard.items():
        for name, x in strokes.items():
            shelf.put('acoustic-' + m, SPLIT[m], VOICE[name[:2]], name[:2], shelf.cut(x, VOICE[name[:2]], HOPES.get(name[:2], 0.03)))
        rooms[m] = room_of([x for name, x in strokes.items() if name.startswith('ss')], rate, rng)
    return rooms


def place_cymbals(shelf, rooms, sources):
    """Cymbals of `sources` (split → kits) once more, in the room of each microphone."""
    for m, h in rooms.items():
        for row in [r for r in shelf.rows if r['kit'] in sources[SPLIT[m]] and r['voice'] in ('ride', 'crash')]:
            x = shelf.audio(row) * 10 ** (row['level'] / 20)
            x = fftconvolve(x, h)[: len(x)]
            fade = min(len(x) // 3, 2205)
            x[-fade:] *= np.linspace(1, 0, fade)
            shelf.put('acoustic-' + m, SPLIT[m], row['voice'], row['kit'] + row['group'], x)
