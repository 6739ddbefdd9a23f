/** Whether the coach proposes anything to a student. */

/** As the teacher has it: always, not before a day, or never. */
export interface CoachVoice {
  readonly state: 'on' | 'paused' | 'off';
  /** The day from which it proposes again where it is paused, ISO 8601 without a time; null where nobody has said. */
  readonly until: string | null;
}

/** Whether it is silent at a moment. */
export function isCoachSilent({ state, until }: CoachVoice, now: string): boolean {
  if (state === 'paused') return until === null || now.slice(0, 10) < until;
  return state === 'off';
}
