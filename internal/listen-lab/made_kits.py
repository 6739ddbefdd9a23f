"""Made-up kits: simple models of drums and cymbals with random parameters, to widen what training hears.

Usage: python3 made_kits.py BANK_FOLDER RATE_HZ COUNT adds COUNT kits to the training split of a bank.
made_kit(rng, rate) gives (voice, audio) pairs; `pad` is a stick on a practice pad. Modes and decays lie in the soft ranges of drum acoustics handbooks;
nothing here is meant to sound good, only to sound different each time.
"""
import sys
from multiprocessing import Pool
import numpy as np
from one_shots import Shelf

def noise_band(rng, n, rate, low, high, tilt=0.0):
    X = np.fft.rfft(rng.normal(size=n))
    f = np.fft.rfftfreq(n, 1 / rate) + 1e-9
    X *= 1 / (1 + (low / f) ** 6) ** 0.5 / (1 + (f / high) ** 6) ** 0.5 * (f / 3000) ** tilt
    knots = rng.normal(0, 5, 14)
    X *= 10 ** (np.interp(np.log2(f.clip(20)), np.linspace(4.3, 14, 14), knots) / 20)
    x = np.fft.irfft(X, n)
    return x / (np.abs(x).max() + 1e-9)


def envelope(t, attack, decay):
    return (1 - np.exp(-t / max(attack, 1e-5))) * np.exp(-t / decay)


def modes(rng, t, freqs, decays, weights, drop=0.0, drop_time=0.02):
    x = 0
    for f, d, w in zip(freqs, decays, weights):
        phase = 2 * np.pi * f * (t + drop * drop_time * (1 - np.exp(-t / drop_time)))
        x = x + w * np.sin(phase) * np.exp(-t / d)
    return x


def metal(rng, n, rate, low, high, decay, count=60):
    t = np.arange(n) / rate
    f = np.exp(rng.uniform(np.log(low), np.log(high), count))
    return (np.sin(2 * np.pi * f[:, None] * t + rng.uniform(0, 6.28, (count, 1))) * (rng.random((count, 1)) *
            np.exp(-t / (decay * rng.uniform(0.4, 1.6, (count, 1)))))).sum(0) / count ** 0.5


def made_kit(rng, rate):
    u, db = rng.uniform, lambda lo, hi: 10 ** (rng.uniform(lo, hi) / 20)
    short, long = int(0.8 * rate), int(2.4 * rate)
    t, tl = np.arange(short) / rate, np.arange(long) / rate
    click = lambda lo, hi, d: noise_band(rng, short, rate, lo, hi) * np.exp(-t / d)
    out = []
    jazz = u(0, 1) < 0.5   # small drums tuned high and left open, thin dark cymbals, loose hats
    f = u(55, 115) if jazz else u(42, 95)
    ring = u(1.2, 3) if jazz else 1
    for _ in range(2):
        x = modes(rng, t, [f, f * u(1.5, 1.8), f * u(2.1, 2.6)], [u(.05, .35) * ring, u(.03, .12) * ring, .03 * ring], [1, db(-20, -4), db(-26, -8)], u(.1, 1.2), u(.006, .04))
        out.append(('bass', x * (1 - np.exp(-t / u(.0003, .004))) + click(60, u(700, 6000), u(.002, .012)) * db(-34, -8)))
    f = u(190, 360) if jazz else u(150, 270)
    body = lambda: modes(rng, t, [f, f * u(1.6, 1.95), f * u(2.3, 2.8)], [u(.03, .14) * ring, u(.02, .08) * ring, .03], [1, db(-10, 0), db(-16, -4)], u(0, .2), .01)
    wires = lambda: noise_band(rng, short, rate, u(600, 2500), 10500, u(-.5, .3)) * envelope(t, u(.0002, .003), u(.04, .24))
    wet = db(-10, 8)
    for _ in range(2): out.append(('snare', body() * db(-8, 0) + wires() * wet + click(500, 9000, .002) * db(-14, 2)))
    g = u(420, 1300)
    out.append(('rimshot', body() + wires() * wet + modes(rng, t, [g, g * u(1.4, 1.9), g * u(2.2, 3)], [u(.02, .09)] * 3, [1, .7, .5]) * db(-3, 8) + click(500, 10000, .002) * db(0, 8)))
    g = u(380, 1500)
    out.append(('sidestick', modes(rng, t, [g, g * u(1.3, 1.8), g * u(2, 3.2), u(150, 320)], [u(.006, .03), u(.006, .03), u(.004, .02), u(.02, .08)], [1, db(-8, 4), db(-8, 4), db(-24, -6)]) + click(800, 9000, u(.001, .005)) * db(-12, 4)))
    low, high = u(1500, 5000), 10800
    air = lambda n, d, a=.0003: (metal(rng, n, rate, low, high, d) * db(-6, 6) + noise_band(rng, n, rate, low * u(.7, 1.3), high, u(-.4, .4))) * envelope(np.arange(n) / rate, a, d)
    closed = u(.05, .25) if jazz else u(.02, .11)
    if jazz: low = u(700, 2500)
    for _ in range(2): out.append(('hihat', air(short, closed) + click(1000, 10000, .0015) * db(-12, 4)))
    out.append(('hihat-open', air(long, u(.2, 1.1))))
    chick = u(.012, .06)
    for _ in range(2):
        out.append(('hihat-foot', noise_band(rng, short, rate, u(350, 2500), u(5000, 10800), u(-.8, .2)) * envelope(t, u(.0004, .007), chick) +
                    metal(rng, short, rate, u(500, 2500), 9000, chick * 1.4) * db(-14, 3) * (1 - np.exp(-t / .002)) +
                    modes(rng, t, [u(90, 350)], [.03], [1]) * db(-34, -10)))
    base = u(160, 450) if jazz else u(280, 700)
    for _ in range(2):
        ping = metal(rng, long, rate, *((u(900, 2200), u(2800, 6000)) if jazz else (u(1800, 3000), u(4500, 8000))), u(.15, .9), 30) * db(-3, 6)
        wash = noise_band(rng, long, rate, u(400, 1500) if jazz else u(1500, 4000), u(5000, 10800) if jazz else 10800) * envelope(tl, u(.005, .06), u(.4, 2)) * db(-16, 2)
        x = ping + wash + metal(rng, long, rate, base, 2500, u(.3, 1.2), 14) * db(-22, -4)
        x[:short] += click(1500, 10000, u(.0008, .004)) * db(-10, 6)
        out.append(('ride', x))
    out.append(('crash', noise_band(rng, long, rate, u(250, 1500), 10800, u(-.3, .3)) * envelope(tl, u(.001, .02), u(.3, 1.5)) + metal(rng, long, rate, base, 8000, u(.4, 1.5), 50) * db(-10, 4)))
    for name, lo, hi in (('tom-high', 130, 230), ('tom-mid', 95, 165), ('tom-low', 62, 118)):
        f = u(lo, hi) * (u(1, 1.35) if jazz else 1)
        out.append((name, modes(rng, t, [f, f * u(1.5, 1.65), f * u(2.0, 2.3)], [u(.1, .5), u(.05, .2), u(.03, .1)], [1, db(-16, -3), db(-20, -6)], u(0, .35), u(.02, .08)) + click(150, u(1500, 7000), u(.002, .008)) * db(-24, -4)))
    f = u(700, 3200)
    out.append(('click', np.sign(np.sin(2 * np.pi * f * t)) * np.exp(-t / u(.004, .03)) if u(0, 1) < .4 else np.sin(2 * np.pi * f * t) * np.exp(-t / u(.004, .04))))
    f = u(120, 700)
    out.append(('pad', modes(rng, t, [f, f * u(1.6, 2.4)], [u(.004, .03), u(.003, .012)], [1, db(-12, 0)]) + click(300, u(1500, 9000), u(.0008, .006)) * db(-10, 8)))
    # brushes: many wires fall one after another, and are drawn over the head
    fan = lambda: sum(click(u(300, 1500), u(4000, 10800), u(.003, .02)) * (t > late) for late in rng.uniform(0, u(.001, .01), 3))
    for _ in range(2): out.append(('tap', fan() * db(-6, 4) * (1 - np.exp(-t / u(.0002, .003))) + body() * db(-18, 0) + wires() * envelope(t, .0003, u(.02, .12)) * db(-12, 4)))
    swell, lasts = u(.015, .15), u(.15, .7)
    out.append(('sweep', noise_band(rng, short, rate, u(300, 2500), u(4000, 10800), u(-.6, .4)) * np.sin(np.pi / 2 * (t / swell).clip(0, 1)) * np.cos(np.pi / 2 * ((t - swell) / lasts).clip(0, 1)) ** 1.5))
    return out


def numbered(asked):
    return made_kit(np.random.default_rng(1000 + asked[0]), asked[1])


if __name__ == '__main__':
    folder, rate, count = sys.argv[1], int(sys.argv[2]), int(sys.argv[3])
    shelf = Shelf(rate, folder)
    with Pool() as pool:
        for k, kit in enumerate(pool.imap(numbered, ((k, rate) for k in range(count)))):
            for voice, x in kit:
                shelf.put('made-%02d' % k, 'train', voice, voice, shelf.cut(x, voice))
    shelf.write(folder)
