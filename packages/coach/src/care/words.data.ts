/**
 * What is said about hearing and body. Information, not medical advice.
 * Sources: those of `exposure.ts`; Azar 2020 (Med. Probl. Perform. Art. 35(3), 831 drum-set players): playing-related
 * disorders are common, most often of the upper limb; pauses, warm-up and stopping on pain are common practice.
 */

/** Sentences for the practice page and the take-home pack. */
export const CARE_WORDS = {
  first: 'Local rules and the advice of a licensed practitioner come before anything said here.',
  protect:
    'Drums are loud. Wear ear protection that fits, and keep the volume of the model no louder than you need.',
  ringing: 'If your ears ring or sounds seem dull after playing, stop for today and give them quiet.',
  warmUp: 'Begin slow and soft, and sit so that nothing has to stretch.',
  rest: 'Time for a break: sticks down, stand up, let hands and ears rest.',
  pain: 'Stop when something hurts. Do not play through pain; if it stays or comes back, see a licensed practitioner.',
} as const;
