/**
 * Counting aloud: words over the clicks, handed to the browser a little ahead of their time.
 *
 * Conventions: seconds of the audio context. A word begins before its click, so that it is felt on it; the next word
 * takes over where it has not ended.
 * Source: Web Audio API, `AudioBufferSourceNode.start(when, offset, duration)`.
 */
import { SPOKEN_FADE_SECONDS, SPOKEN_GAIN, spokenPlace } from '@shedbook/sound';
import type { LanguageTag } from '@shedbook/words';
import type { Player } from '../player.ts';
import type { LiveSettings } from '../sequencer.ts';
import { fetchSpoken } from './recordings.ts';
import { type CountedWord, wordsAhead } from './words-ahead.ts';

/** Words are handed over so far ahead of their time. */
const AHEAD_SECONDS = 0.5;
/** Milliseconds from one look to the next. */
const LOOK_MS = 60;
/** A word that falls elsewhere by more than this, as after a change of tempo, is handed over anew. */
const SAME_SECONDS = 0.004;

/** What is counted, and in which language. */
export interface Counting extends Pick<LiveSettings, 'click' | 'gap'> {
  readonly language: LanguageTag;
}

/** A word that was handed over. */
interface Handed extends CountedWord {
  readonly beginSeconds: number;
  readonly node: AudioBufferSourceNode;
  readonly gain: GainNode;
}

/** Counts aloud over what a player plays. */
export class SpokenCount {
  readonly #player: Player;
  readonly #recordings = new Map<LanguageTag, Promise<AudioBuffer>>();
  readonly #handed = new Map<string, Handed>();
  #buffer: AudioBuffer | null = null;
  #counting: Counting | null = null;
  #looks: ReturnType<typeof setInterval> | undefined;
  #leave: () => void = () => undefined;

  constructor(player: Player) {
    this.#player = player;
  }

  /** Counts from now on, or otherwise than before; null: no more. What cannot be loaded is not heard. */
  count(counting: Counting | null): void {
    if (counting?.language !== this.#counting?.language) this.#buffer = null;
    this.#counting = counting;
    if (counting) this.#begin(counting.language);
    else this.#stop();
  }

  #begin(language: LanguageTag): void {
    this.#recordingOf(language).then(
      (buffer) => {
        if (this.#counting?.language === language) this.#buffer = buffer;
      },
      () => this.#recordings.delete(language),
    );
    if (this.#looks !== undefined) return;
    this.#looks = setInterval(() => this.#look(), LOOK_MS);
    this.#leave = this.#player.subscribe(() => this.#look());
  }

  #stop(): void {
    clearInterval(this.#looks);
    this.#looks = undefined;
    this.#leave();
    this.#silence();
  }

  #recordingOf(language: LanguageTag): Promise<AudioBuffer> {
    const known = this.#recordings.get(language);
    if (known) return known;
    const loading = fetchSpoken(language).then((file) => this.#player.context().decodeAudioData(file));
    this.#recordings.set(language, loading);
    return loading;
  }

  #silence(): void {
    for (const { node } of this.#handed.values()) node.stop();
    this.#handed.clear();
  }

  /** Hands over what falls soon, and takes back what falls no more where it was said to. */
  #look(): void {
    const heard = this.#player.heard();
    if (!heard || !this.#buffer || !this.#counting) {
      this.#silence();
      return;
    }
    const now = this.#player.context().currentTime;
    const words = wordsAhead(heard, this.#counting, now, now + AHEAD_SECONDS);
    const byClick = new Map(words.map((word) => [word.click, word]));
    for (const handed of this.#handed.values()) {
      if (handed.beginSeconds <= now) continue;
      const found = byClick.get(handed.click);
      if (found && Math.abs(found.atSeconds - handed.atSeconds) < SAME_SECONDS) continue;
      handed.node.stop();
      this.#handed.delete(handed.click);
    }
    for (const word of words) if (!this.#handed.has(word.click)) this.#say(word, now);
  }

  #say(word: CountedWord, now: number): void {
    const place = this.#counting && spokenPlace(this.#counting.language, word.word);
    if (!place) return;
    const { startSeconds, lastsSeconds, feltSeconds } = place;
    const context = this.#player.context();
    const beginSeconds = word.atSeconds - feltSeconds;
    const late = Math.max(0, now - beginSeconds);
    const gain = new GainNode(context, { gain: SPOKEN_GAIN });
    const node = new AudioBufferSourceNode(context, { buffer: this.#buffer });
    node.connect(gain).connect(this.#player.output());
    for (const before of this.#handed.values())
      if (before.atSeconds < word.atSeconds)
        before.gain.gain.setTargetAtTime(0, Math.max(beginSeconds, now), SPOKEN_FADE_SECONDS);
    node.onended = () => {
      if (this.#handed.get(word.click)?.node === node) this.#handed.delete(word.click);
    };
    node.start(Math.max(beginSeconds, now), startSeconds + late, Math.max(0, lastsSeconds - late));
    this.#handed.set(word.click, { ...word, beginSeconds, node, gain });
  }
}
