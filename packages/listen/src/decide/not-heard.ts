/**
 * What the recording cannot tell, in sentences.
 *
 * Conventions: a voice that is hard to tell in this recording is named, so that its misses are read with care.
 */
import { VOICE_FACTS, type Voice } from '@shedbook/core';
import type { Alignment } from '../align/align.ts';
import type { FormGrid } from '../align/form-grid.ts';
import type { Evidence } from './evidence.ts';
import type { Place } from './places.ts';
import type { Decision } from './strokes.ts';

/** What is looked at. */
export interface NotHeardInput {
  readonly evidence: readonly Evidence[];
  readonly decision: Decision;
  readonly places: readonly Place[];
  readonly askedBpm: number;
  readonly grid: FormGrid;
  readonly alignment: Alignment;
  readonly confidence: number;
}

/** Share of a voice's strokes that may be wrong before its figures are called a guess. */
const BLURRED = 0.3;
const TEMPO_OFF = 0.08;

function label(voice: Voice): string {
  return VOICE_FACTS[voice].label;
}

/** The sentences. */
export function notHeardOf(input: NotHeardInput): readonly string[] {
  const sentences: string[] = [];
  for (const { voice, doubt } of input.evidence) {
    const due = input.places.filter((place) => place.expected.voice === voice).length;
    const heard = input.decision.strokes.filter((stroke) => stroke.voice === voice && stroke.place).length;
    if (due === 0) continue;
    if (heard === 0) {
      sentences.push(
        `The ${label(voice)} was not heard at all: not played, or too soft for this microphone.`,
      );
    } else if (doubt > BLURRED) {
      sentences.push(
        `The ${label(voice)} is hard to tell from the other voices in this recording; its strokes are a guess.`,
      );
    }
  }
  const barSeconds =
    input.alignment.bars.reduce((sum, bar) => sum + bar.barSeconds, 0) / input.alignment.bars.length;
  const bpm = (60 * input.grid.quarters) / barSeconds;
  if (Math.abs(Math.log(bpm / input.askedBpm)) > TEMPO_OFF) {
    sentences.push(
      `It was played at ${Math.round(bpm)} beats a minute, not at ${Math.round(input.askedBpm)}.`,
    );
  }
  if (input.confidence < 0.5)
    sentences.push('Only part of the exercise was recognised; read the figures with care.');
  return sentences;
}
