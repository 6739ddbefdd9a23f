"""Renders planned takes (lessons.mjs) as a student's recording, with the truth beside each.

Usage: node lessons.mjs COUNT SEED | python3 takes.py BANK_44K OUT_FOLDER CONDITION SPLIT [SITUATION]
CONDITION: clean | room | phone | rough (phone with talk, click bleed, clipping, false start).
SPLIT: train | dev | test | own, the kits and rooms that may be used (test kits and the image-source rooms are held back).
SITUATION: bleed10 | bleed20 | bleed30 (the product's own loop plays what is written, so many dB under the take, while one
limb stays out) | limbs (one or two of them) | talk (somebody talks and music plays) | pause (3 s in the middle) |
pad (the comping alone, on a practice pad) | slow (60 bpm) | fast (240 bpm).
Strokes vary as people do: drift, wandering, bias of each limb, jitter, missed, extra and displaced strokes, levels.
Level truth is the K-weighted energy of a stroke's own dry sound over its first 100 ms, as lessons mean levels.
"""
import json, os, subprocess, sys, tempfile
import numpy as np
from scipy.signal import fftconvolve, lfilter, butter, sosfilt
from loudness import k_sections

RATE = 44100
K_SECTIONS = k_sections(RATE)
bank_folder, out, condition, split = sys.argv[1:5]
situation = sys.argv[5] if len(sys.argv) > 5 else ''
every = json.load(open(bank_folder + '/bank.json'))
rows = [r for r in every if r['split'] == split]
audio = np.memmap(bank_folder + '/bank.i16', np.int16, 'r')
KITS = {'train': ['avl-pearl', 'fluid-jazz', 'fluid-standard', 'fluid-room'],
        'dev': ['avl-zeppelin'],
        'test': ['freepats', 'exadrums', 'acoustic-wndw'],
        'own': ['own-ten-dry']}[split]
os.makedirs(out, exist_ok=True)


def instruments(kit, rng, rows=rows):
    """voice → layers from soft to loud."""
    table = {}
    for voice in sorted({r['voice'] for r in rows}):
        own = [r for r in rows if r['voice'] == voice and r['kit'] == kit] or [r for r in rows if r['voice'] == voice]
        groups = sorted({(r['kit'], r['group']) for r in own})
        g = groups[rng.integers(len(groups))]
        table[voice] = sorted([r for r in own if (r['kit'], r['group']) == g], key=lambda r: r['level'])
    return table


def rir(rng):
    if split == 'test':
        return image_source(rng)
    n = int(0.8 * RATE); t = np.arange(n) / RATE
    t60 = rng.uniform(0.2, 0.7)
    tail = rng.normal(size=n) * 10 ** (-3 * t / t60) * (1 - np.exp(-t / 0.01))
    tail = lfilter([1], [1, -0.5], tail); tail /= np.sqrt((tail ** 2).sum())
    h = tail * 10 ** (-rng.uniform(2, 14) / 20)
    for _ in range(8):
        h[int(rng.uniform(0.001, 0.03) * RATE)] += rng.normal() * 0.3
    h[0] = 1
    return h


def image_source(rng):
    """Shoebox room by image sources; direct sound moved to 0."""
    size = rng.uniform([3, 3, 2.3], [7, 6, 3.2]); src = size * rng.uniform(0.25, 0.75, 3); mic = size * rng.uniform(0.2, 0.8, 3)
    if np.linalg.norm(src - mic) < 0.8: mic[0] = (src[0] + 1.2) % size[0]
    beta = rng.uniform(0.55, 0.85); N = 8
    h = np.zeros(int(0.5 * RATE)); d0 = np.linalg.norm(src - mic)
    g = np.arange(-N, N + 1)
    for p in range(8):
        q = np.array([p & 1, (p >> 1) & 1, p >> 2])
        X, Y, Z = np.meshgrid(g, g, g, indexing='ij')
        K = np.stack([X, Y, Z], -1).reshape(-1, 3)
        pos = (1 - 2 * q) * src + 2 * K * size - mic
        d = np.linalg.norm(pos, axis=1)
        refl = np.abs(K - q).sum(1) + np.abs(K).sum(1)
        i = ((d - d0) / 343 * RATE).round().astype(int)
        ok = (i >= 0) & (i < len(h))
        np.add.at(h, i[ok], (beta ** refl[ok]) * d0 / d[ok])
    return lfilter([1, 0], [1, -0.15], h) * 0.85


def performance(plan, rng):
    """Bars of the form looped, with repeats and skips; strokes with their true and written places."""
    target = rng.uniform(28, 55)
    bpm, beats, nbars = plan['bpm'], plan['beatsInBar'], plan['bars']
    by_bar = {}
    for s in plan['strokes']:
        by_bar.setdefault(s['bar'], []).append(s)
    seq, b = [], 1
    while len(seq) * beats * 60 / bpm < target:
        seq.append(b)
        u = rng.random()
        if u < 0.03: b = b          # played again
        elif u < 0.06: b = b + 2    # one left out
        else: b = b + 1
        if b > nbars: b = (b - 1) % nbars + 1
    # tempo: drift and slow wandering
    drift = rng.normal(0, 2.0)  # bpm a minute
    total = len(seq) * beats
    walk = np.cumsum(rng.normal(0, 0.0022, total + 2)); walk -= np.linspace(0, walk[-1], total + 2)
    start = rng.uniform(0.6, 4.0)
    times, t = [], start
    for k in range(total + 1):
        times.append(t)
        t += 60 / (bpm + drift * (t - start) / 60) * (1 + walk[k])
    times.append(t)
    times = np.array(times)
    at = lambda beat: np.interp(beat, np.arange(len(times)), times)
    voices = sorted({s['voice'] for s in plan['strokes']})
    bias = {v: 0.0 if v == plan['lead'] else rng.normal(0, 0.009) for v in voices}
    spread = {v: rng.uniform(0.003, 0.009) for v in voices}
    shift = {v: rng.normal(0, 1.0) for v in voices}
    miss = {v: 0.0 if v == plan['lead'] else rng.choice([0.01, 0.03, 0.08, 0.2]) for v in voices}
    astray = {v: rng.choice([0.0, 0.01, 0.05]) if v in ('snare', 'sidestick', 'bass', 'tom-high') else 0 for v in voices}
    if rng.random() < 0.1 or situation.startswith('bleed'):
        miss[rng.choice([v for v in voices if v != plan['lead']])] = 1.0   # a limb that stays out
    if situation == 'limbs':
        left = rng.choice(voices, min(len(voices), rng.integers(1, 3)), replace=False)
        miss = {v: miss[v] if v in left else 1.0 for v in voices}
    if situation == 'pad': miss = {v: 0.02 if v == plan['comping'] else 1.0 for v in voices}
    if situation == 'pause':
        middle = beats * (len(seq) // 2)
        times[middle:] += 3
    extra = rng.choice([0.0, 0.005, 0.02])
    strokes, missed = [], []
    for i, bar in enumerate(seq):
        for s in by_bar.get(bar, []):
            pos = i * beats + s['beats'] - (bar - 1) * beats
            written = dict(bar=bar, beat=s['beat'], slot=s['slot'], loop=i)
            ideal = at(pos)
            if rng.random() < miss[s['voice']]:
                missed.append(dict(written, voice=s['voice'], t=ideal)); continue
            tt = ideal + bias[s['voice']] + rng.normal(0, spread[s['voice']])
            lv = s['level'] + shift[s['voice']] + rng.normal(0, 1.5)
            if rng.random() < astray[s['voice']]:
                missed.append(dict(written, voice=s['voice'], t=ideal))
                tt = at(pos + rng.choice([-1, 1]) / 3); written = None  # wrong place
            strokes.append(dict(t=float(tt), voice=s['voice'], level=float(lv), written=written, ideal=float(ideal)))
            if rng.random() < extra:
                strokes.append(dict(t=float(at(pos + 1 / 3 if s['slots'] != 4 else pos + 0.25)), voice=rng.choice([v for v in voices if v != plan['lead']]),
                                    level=float(lv - 2), written=None, ideal=None))
    # two strokes of one voice closer than 45 ms are one
    strokes.sort(key=lambda s: s['t']); kept, last = [], {}
    for s in strokes:
        if s['t'] - last.get(s['voice'], -9) > 0.045: kept.append(s); last[s['voice']] = s['t']
    span = times[-2] - times[0]
    return kept, missed, dict(start=float(start), bpm=float(60 * total / span), drift=float(drift), bias=bias, seq=seq, end=float(times[-2]),
                              beats=[float(x) for x in times[:-1]])


def mix(strokes, kit, rng, length, roomy, extra, table=None):
    table = table or instruments(kit, rng)
    far = {v: rir(rng) for v in ('a', 'b', 'c')} if roomy else None
    buses = {k: np.zeros(length) for k in 'abc'}
    place = {}
    usual = {}
    for s in strokes: usual.setdefault(s['voice'], []).append(s['level'])
    usual = {v: np.median(x) for v, x in usual.items()}
    for s in strokes + extra:
        v = s['voice']
        layers = table[v]
        k = int(np.clip(((s['level'] - usual.get(v, s['level'])) / 10 + 0.5 + rng.normal(0, 0.12) + (-0.25 if s['level'] < -10 else 0)) * len(layers), 0, len(layers) - 1))
        r = layers[k]
        x = audio[r['start']: r['start'] + r['length']].astype(np.float64) / 30000
        sp = 2 ** (rng.normal(0, 0.012) / 1)
        n = int(len(x) / sp) - 1
        pos = np.arange(n) * sp + 0
        x = np.interp(pos, np.arange(len(x)), x)
        head = sosfilt(K_SECTIONS, np.pad(x, (0, max(0, 4410 - len(x))))[:4410])
        own = 10 * np.log10(np.mean(head ** 2) + 1e-12)
        x *= 10 ** ((s['level'] - own) / 20)
        a = int(round(s['t'] * RATE))
        if a < 0 or a >= length: continue
        x = x[: length - a]
        buses[place.setdefault(v, 'abc'[rng.integers(3)])][a: a + len(x)] += x
    y = np.zeros(length)
    for k, b in buses.items():
        y += fftconvolve(b, far[k])[:length] if roomy else b
    return y


def loop(plan, truth, rng, length):
    """The product's kit playing what is written, out of a small loudspeaker."""
    strokes, beats = [], plan['beatsInBar']
    for i, bar in enumerate(truth['seq']):
        for s in plan['strokes']:
            if s['bar'] == bar:
                t = np.interp(i * beats + s['beats'] - (bar - 1) * beats, np.arange(len(truth['beats'])), truth['beats'])
                strokes.append(dict(t=float(t) + 0.015, voice=s['voice'], level=s['level']))
    own = [r for r in every if r['kit'] == 'own-set']
    y = mix(strokes, 'own-set', rng, length, True, [], instruments('own-set', rng, own))
    return sosfilt(butter(2, [rng.uniform(120, 350), rng.uniform(6000, 12000)], 'band', fs=RATE, output='sos'), y)


def tunes(truth, rng, length):
    """A plucked bass on the beats and held chords."""
    y = np.zeros(length); t = np.arange(RATE) / RATE
    for k, at in enumerate(truth['beats']):
        for hz, d in [(rng.uniform(45, 110), 0.25)] + ([(rng.uniform(180, 600), 0.8) for _ in range(3)] if k % 4 == 0 else []):
            x = sum(np.sin(2 * np.pi * hz * h * t) / h ** 1.3 for h in range(1, 8)) * np.exp(-t / d) * (1 - np.exp(-t / 0.004))
            a = int(at * RATE); x = x[: length - a]; y[a: a + len(x)] += x
    return y


def taps(rng):
    """A practice pad, struck softly and hard."""
    from made_kits import made_kit
    x = dict(made_kit(np.random.default_rng(90000 + int(rng.integers(1000))), RATE))['pad']
    return x / np.abs(x).max()


def talk(rng):
    given = os.environ.get('TALK')   # a folder of spoken words, where there is no espeak-ng
    if given: return np.fromfile('%s/talk%d.i16' % (given, rng.integers(4)), np.int16).astype(np.float64) / 32768
    words = ['one two three four', 'wait, let me start again', 'okay here we go', 'that was the last triplet']
    with tempfile.NamedTemporaryFile(suffix='.wav') as f:
        subprocess.run(['espeak-ng', '-w', f.name, '-p', str(rng.integers(20, 80)), '-s', '150', words[rng.integers(4)]], check=True, capture_output=True)
        raw = subprocess.run(['ffmpeg', '-nostdin', '-v', 'error', '-i', f.name, '-f', 'f32le', '-ac', '1', '-ar', str(RATE), '-'], capture_output=True, check=True).stdout
    x = np.frombuffer(raw, np.float32).astype(np.float64)
    return x / (np.abs(x).max() + 1e-9)


def gain_control(x, rng):
    e = np.sqrt(lfilter([1 - np.exp(-1 / (0.003 * RATE))], [1, -np.exp(-1 / (0.003 * RATE))], x ** 2))
    tau = rng.uniform(0.05, 0.3)
    slow = lfilter([1 - np.exp(-1 / (tau * RATE))], [1, -np.exp(-1 / (tau * RATE))], e)
    thr = slow.max() * rng.uniform(0.15, 0.5)
    return x * np.maximum(slow / thr, 1) ** -rng.uniform(0.3, 0.7)


def phone(x, rng, rough):
    x = x / np.abs(x).max()
    sos = butter(2, rng.uniform(60, 160), 'high', fs=RATE, output='sos'); x = sosfilt(sos, x)
    sos = butter(3, rng.uniform(7000, 14000), 'low', fs=RATE, output='sos'); x = sosfilt(sos, x)
    x = gain_control(x, rng)
    x = x / np.abs(x).max()
    noise = rng.normal(size=len(x)); noise = lfilter([1], [1, -0.9], noise)
    x = x + noise / noise.std() * np.sqrt((x ** 2).mean()) * 10 ** (-rng.uniform(28, 45) / 20)
    if rough: x = np.clip(x, -rng.uniform(0.4, 0.8), rng.uniform(0.4, 0.8))
    codec = [('libmp3lame', '64k', 'mp3'), ('libopus', '32k', 'ogg'), ('aac', '64k', 'm4a'), ('libopus', '48k', 'webm')][rng.integers(4)]
    return x / np.abs(x).max() * 0.7, codec


def write(name, x, codec=None):
    raw = (x * 0.8 / np.abs(x).max()).astype(np.float32).tobytes()
    base = ['ffmpeg', '-y', '-v', 'error', '-f', 'f32le', '-ar', str(RATE), '-ac', '1', '-i', '-']
    if codec is None:
        subprocess.run(base + ['-c:a', 'pcm_s16le', name + '.wav'], input=raw, check=True)
        return
    coded = name + '.' + codec[2]
    subprocess.run(base + ['-c:a', codec[0], '-b:a', codec[1], coded], input=raw, check=True)
    subprocess.run(['ffmpeg', '-y', '-v', 'error', '-nostdin', '-i', coded, '-ac', '1', '-ar', str(RATE), '-c:a', 'pcm_s16le', name + '.wav'], check=True)
    os.remove(coded)


for line in sys.stdin:
    plan = json.loads(line)
    rng = np.random.default_rng([plan['index'], {'clean': 1, 'room': 2, 'phone': 3, 'rough': 4}[condition], {'train': 1, 'dev': 2, 'test': 3, 'own': 4}[split]])
    if situation in ('slow', 'fast'): plan['bpm'] = plan['lessonBpm'] = {'slow': 60, 'fast': 240}[situation]
    strokes, missed, truth = performance(plan, rng)
    length = int((truth['end'] + rng.uniform(1.5, 3)) * RATE)
    extra, speech = [], None
    beat = 60 / plan['bpm']
    if condition in ('room', 'rough') and rng.random() < 0.5:
        extra += [dict(t=truth['start'] - (4 - k) * beat, voice='click' if any(r['voice'] == 'click' for r in rows) else 'sidestick', level=-4) for k in range(4) if truth['start'] - (4 - k) * beat > 0]
    if condition == 'rough':
        n = int((truth['end'] - truth['start']) / beat)
        if rng.random() < 0.5: extra += [dict(t=b + 0.004, voice='click', level=-24) for b in truth['beats'][:n]]
    kit = KITS[plan['index'] % len(KITS)]
    voices = {r['voice'] for r in rows}
    # a voice that no kit of the split has is left out by the student
    missed += [dict(s['written'], voice=s['voice'], t=s['ideal']) for s in strokes if s['voice'] not in voices and s['written']]
    strokes = [s for s in strokes if s['voice'] in voices]
    extra = [e for e in extra if e['voice'] in voices]
    table = None
    if situation == 'pad':
        x = taps(rng)
        row = dict(start=len(audio), length=len(x), voice=plan['comping'], level=0)
        audio = np.concatenate([audio, np.round(x * 30000).astype(np.int16)])
        table = {**instruments(kit, rng), plan['comping']: [row]}
    y = mix(strokes, kit, rng, length, condition != 'clean', extra, table)
    power = lambda x: np.sqrt((x ** 2).mean()) + 1e-9
    if situation.startswith('bleed'):
        other = loop(plan, truth, rng, length)
        y += other * power(y) / power(other) * 10 ** (-int(situation[5:]) / 20)
    if situation == 'talk':
        other = tunes(truth, rng, length)
        y += other * power(y) / power(other) * 10 ** (-rng.uniform(12, 24) / 20)
        for a in range(int(2 * RATE), length - 3 * RATE, 4 * RATE):
            speech = talk(rng)[:3 * RATE]
            y[a: a + len(speech)] += speech / np.abs(speech).max() * np.abs(y).max() * rng.uniform(0.1, 0.4)
    if condition == 'room':
        y = y / np.abs(y).max()
        y += lfilter([1], [1, -0.95], rng.normal(size=length)) * 10 ** (-rng.uniform(55, 70) / 20)
    if condition == 'rough' and rng.random() < 0.7:
        speech = talk(rng); speech *= np.abs(y).max() * rng.uniform(0.1, 0.4)
        a = int(max(0, truth['end'] + 0.2) * RATE); speech = speech[: length - a]; y[a: a + len(speech)] += speech
    codec = None
    if condition in ('phone', 'rough'): y, codec = phone(y, rng, condition == 'rough')
    name = os.path.join(out, 'take%03d' % plan['index'])
    write(name, y, codec)
    json.dump(dict(plan, kit=kit, condition=condition, situation=situation, split=split, codec=codec, truth=dict(truth, strokes=strokes, missed=missed)), open(name + '.json', 'w'))
